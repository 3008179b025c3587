//! The list of fields is that of the gear file, and its words read well.
use std::collections::BTreeSet;

use gearswing_gear::field::{Axis, Empty, Field, Group, Kind, Path};
use gearswing_gear::model::{
    Acts, AttachTo, Basis, BatteryKind, BatterySize, Body, BodyEnd, Brace, Folds, GasLaw, Gear,
    Grown, KneeGiven, MovingPart, PointsFrom, Shape, Shortening, SpringJoint, UnlockedBy, View,
};
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

use super::{group_title, label, path_words, words};
use crate::sample::{full_gear, full_gears};

/// Every leaf of a JSON value with its path as the gear file's reader writes it.
fn leaves(value: &Value, path: &str, into: &mut Vec<(String, Value)>) {
    match value {
        Value::Object(map) => {
            for (key, value) in map {
                let dot = if path.is_empty() { "" } else { "." };
                leaves(value, &format!("{path}{dot}{key}"), into);
            }
        }
        Value::Array(items) => {
            for (index, value) in items.iter().enumerate() {
                leaves(value, &format!("{path}[{index}]"), into);
            }
        }
        leaf => into.push((path.to_owned(), leaf.clone())),
    }
}

#[test]
fn every_value_of_a_full_gear_is_a_field_and_every_field_is_a_value() {
    let mut values = Vec::new();
    for gear in full_gears() {
        leaves(&serde_json::to_value(gear).unwrap(), "", &mut values);
    }
    let mut seen = BTreeSet::new();
    for (text, value) in &values {
        let path: Path = text.parse().unwrap_or_else(|_| panic!("no field {text}"));
        let kind = path.field.info().kind;
        let fits = match kind {
            Kind::Number { .. } => value.is_number(),
            Kind::Point | Kind::Outline => value.is_number() && path.axis.is_some(),
            Kind::Text => value.is_string(),
            Kind::Choice(keys) | Kind::Set(keys) => {
                value.as_str().is_some_and(|key| keys.contains(&key))
            }
        };
        assert!(fits, "{text} holds {value}, the list says {kind:?}");
        seen.insert(path.field);
    }
    // choices with data of their own are keys, not leaves
    let held = |field: &Field| {
        let key = format!("{}.", field.info().key);
        matches!(field.info().kind, Kind::Choice(_))
            && seen.iter().any(|other| other.info().key.starts_with(&key))
    };
    let missing: Vec<_> = Field::ALL
        .iter()
        .filter(|field| !seen.contains(field) && !held(field))
        .collect();
    assert_eq!(missing, Vec::<&Field>::new());
}

#[test]
fn a_number_counts_as_the_list_says_when_it_is_left_out() {
    for gear in full_gears() {
        let mut values = Vec::new();
        let whole = serde_json::to_value(&gear).unwrap();
        leaves(&whole, "", &mut values);
        for (text, _) in values {
            let path: Path = text.parse().unwrap();
            let Kind::Number { empty, .. } = path.field.info().kind else {
                continue;
            };
            let mut without = whole.clone();
            let pointer = format!("/{}", text.replace(['.', '['], "/").replace(']', ""));
            let (parent, key) = pointer.rsplit_once('/').unwrap();
            let parent = without.pointer_mut(parent).unwrap();
            parent.as_object_mut().unwrap().remove(key).unwrap();
            let read = serde_json::from_value::<Gear>(without);
            let counts = read.ok().and_then(|gear| path.number(&gear));
            let said = match empty {
                // a person fills it in, even where a file may leave it out
                Empty::Never => continue,
                Empty::PartAbsent => None,
                Empty::Is(value) => Some(Some(value)),
                Empty::Absent => Some(None),
            };
            assert_eq!(counts, said, "{text}");
        }
    }
}

#[test]
fn every_number_has_the_quantity_of_its_key() {
    use gearswing_units::Quantity as Q;
    for field in Field::ALL {
        let info = field.info();
        let key = info.key.trim_end_matches("[]");
        let by_key: &[Q] = match () {
            () if key.ends_with("_kg_m3") => &[Q::Density],
            () if key.ends_with("_kg_m2") => &[Q::Inertia],
            () if key.ends_with("_m3_s") => &[Q::Flow],
            () if key.ends_with("_m3") => &[Q::Volume],
            () if key.ends_with("_m_s") => &[Q::Speed, Q::StrokeSpeed],
            () if key.ends_with("_at_down_n_m") || key.ends_with(".couple_n_m") => &[Q::Moment],
            () if key.ends_with("_n_m") => &[Q::Stiffness],
            () if key.ends_with("_n_m_rad") => &[Q::TorsionalStiffness],
            () if key.ends_with(".friction") || key.ends_with(".exponent") => &[Q::Ratio],
            () if key.ends_with("_m2") => &[Q::DragArea, Q::Area],
            () if key.ends_with("_s") => &[Q::Time],
            () if key.ends_with("_v") => &[Q::Voltage],
            () if key.ends_with("_a") => &[Q::Current],
            () if key.ends_with("_ohm") => &[Q::Resistance],
            () if key.ends_with("_pitch_m") => &[Q::Pitch],
            () if key.ends_with("_m") => &[Q::Length, Q::Hole],
            () if key.ends_with("_rad") => &[Q::Angle],
            () if key.ends_with("_kg") => &[Q::Mass],
            () if key.ends_with("_pa") => &[Q::Pressure],
            () if key.ends_with("_n") => &[Q::Force],
            () if key.ends_with("_coefficient") => &[Q::Ratio],
            () => &[Q::Travel, Q::LoadFactor, Q::Ratio],
        };
        match info.quantity() {
            Some(quantity) => assert!(by_key.contains(&quantity), "{key}"),
            None => assert_eq!(by_key.len(), 3, "{key} has a unit but no quantity"),
        }
    }
}

#[test]
fn every_field_reads_well() {
    for field in Field::ALL {
        let (key, words) = (field.info().key, words(*field));
        for text in [words.help, words.label, words.name] {
            assert!(!text.trim().is_empty() && text.trim() == text, "{key}");
        }
        assert!(words.help.ends_with('.'), "{key}");
        assert!(words.label.starts_with(char::is_uppercase), "{key}");
        assert!(!words.name.ends_with('.'), "{key}");
        let options: Vec<_> = words.choices.iter().map(|option| option.key).collect();
        match field.info().kind {
            Kind::Choice(keys) | Kind::Set(keys) => assert_eq!(options, keys, "{key}"),
            Kind::Number { empty, .. } => {
                assert_eq!(empty == Empty::Never, words.if_empty.is_none(), "{key}");
            }
            Kind::Point | Kind::Outline | Kind::Text => assert_eq!(options, [""; 0], "{key}"),
        }
    }
    let titles: BTreeSet<_> = Group::ALL.into_iter().map(group_title).collect();
    assert_eq!(titles.len(), Group::ALL.len());
}

/// Keys of a choice or set, by its key in the file.
fn keys(text: &str) -> &'static [&'static str] {
    let path: Path = text.parse().unwrap();
    match path.field.info().kind {
        Kind::Choice(keys) | Kind::Set(keys) => keys,
        other => panic!("{text} is {other:?}"),
    }
}

fn check_keys<T: DeserializeOwned>(pattern: &str, count: usize) {
    let keys = keys(pattern);
    assert_eq!(keys.len(), count, "{pattern}");
    for key in keys {
        assert!(
            serde_json::from_value::<T>(json!(key)).is_ok(),
            "{pattern}: {key}"
        );
    }
}

#[test]
fn every_choice_is_one_of_the_model() {
    check_keys::<View>("legs[0].view", 2);
    check_keys::<AttachTo>("legs[0].actuator.attach_to", 3);
    check_keys::<BodyEnd>("legs[0].actuator.body_at", 2);
    check_keys::<Basis>("legs[0].wheel.tire.basis", 4);
    check_keys::<Basis>("legs[0].wheel.tire.grown.given.basis", 4);
    check_keys::<Folds>("legs[0].brace.folding.folds", 2);
    check_keys::<UnlockedBy>("legs[0].brace.folding.unlocked_by", 2);
    check_keys::<KneeGiven>("legs[0].brace.folding.knee_given", 2);
    let spring = "legs[0].springs[0].kind";
    check_keys::<Body>(&format!("{spring}.linear.first.body"), 5);
    check_keys::<Body>(&format!("{spring}.gas.second.body"), 5);
    check_keys::<Acts>(&format!("{spring}.linear.acts"), 3);
    check_keys::<SpringJoint>(&format!("{spring}.torsion.joint"), 4);
    check_keys::<MovingPart>("legs[0].well[0].ignores[0]", 9);
    check_keys::<BatteryKind>("supply.battery.kind", 2);
    check_keys::<BatterySize>("supply.battery.size", 2);
    assert_eq!(keys("supply.source").len(), 4);
    for (key, gear) in keys("supply.source").iter().skip(1).zip(full_gears()) {
        let source = serde_json::to_value(gear).unwrap()["supply"]["source"].clone();
        assert!(source == *key || source[key].is_object(), "{key} {source}");
    }
    // Choices with data of their own: the key alone says which data are missing, if any.
    let gear = serde_json::to_value(full_gear()).unwrap();
    let legs = gear["legs"].as_array().unwrap();
    assert_eq!(keys("legs[0].brace"), ["none", "folding", "sliding"]);
    assert!(serde_json::from_value::<Brace>(json!("none")).is_ok());
    assert!(serde_json::from_value::<Brace>(legs[0]["brace"].clone()).is_ok());
    assert_eq!(
        legs[0]["brace"].as_object().unwrap().keys().next().unwrap(),
        "folding"
    );
    assert_eq!(
        legs[1]["brace"].as_object().unwrap().keys().next().unwrap(),
        "sliding"
    );
    assert_eq!(
        keys("legs[0].strut.shortening"),
        ["none", "before_swing", "with_travel"]
    );
    assert!(serde_json::from_value::<Shortening>(json!("none")).is_ok());
    assert!(legs[0]["strut"]["shortening"]["with_travel"].is_object());
    assert!(legs[1]["strut"]["shortening"]["before_swing"].is_object());
    assert_eq!(keys("legs[0].wheel.tire.grown"), ["by_rule", "given"]);
    assert!(serde_json::from_value::<Grown>(json!("by_rule")).is_ok());
    assert!(legs[0]["wheel"]["tire"]["grown"]["given"].is_object());
    assert_eq!(
        keys("legs[0].springs[0].kind"),
        ["linear", "gas", "torsion"]
    );
    for (index, key) in ["linear", "linear", "gas", "torsion"].iter().enumerate() {
        assert!(legs[0]["springs"][index]["kind"][key].is_object());
    }
    assert_eq!(
        keys("legs[0].springs[0].kind.linear.set"),
        ["free_length", "force_at_down"]
    );
    for (index, key) in ["free_length", "force_at_down"].iter().enumerate() {
        assert!(legs[0]["springs"][index]["kind"]["linear"]["set"][key].is_object());
    }
    assert_eq!(
        keys("legs[0].springs[0].kind.gas.law"),
        ["linear", "polytropic"]
    );
    assert!(serde_json::from_value::<GasLaw>(json!("linear")).is_ok());
    assert!(legs[0]["springs"][2]["kind"]["gas"]["law"]["polytropic"].is_object());
    assert_eq!(keys("legs[0].well[1].shape"), ["solid", "surface"]);
    for (index, key) in ["solid", "surface"].iter().enumerate() {
        let shape = &legs[0]["well"][index]["shape"];
        assert!(shape[key].is_object());
        assert!(serde_json::from_value::<Shape>(shape.clone()).is_ok());
    }
}

#[test]
fn paths_in_words() {
    let gear = Gear {
        points_from: PointsFrom::Airplane,
        ..full_gear()
    };
    for (path, words) in [
        (
            "legs[0].actuator.rod_m",
            "right main, actuator rod diameter",
        ),
        ("legs[1].trunnion_m", "nose, trunnion P"),
        ("legs[1].trunnion_m[1]", "nose, trunnion P, up"),
        (
            "legs[0].well[0].shape.solid.points_m[2][0]",
            "right main, Bay rib, corner 3, to the left wing",
        ),
        (
            "legs[0].well[1].shape.surface.points_m",
            "right main, Upper skin, outline",
        ),
        (
            "legs[0].body.outline_m[3]",
            "right main, outline of the leg, point 4",
        ),
        (
            "legs[0].strut.shortening.with_travel.table[1].travel",
            "right main, travel in the shortening table, row 2",
        ),
        ("legs[7].wheel.mass_kg", "leg 8, mass of the wheel"),
        ("supply.available_pressure_pa", "available pressure"),
        ("legs[0].actuator", "right main, actuator"),
        ("legs[1].brace.sliding", "nose, brace"),
        (
            "legs[0].strut.shortening.with_travel.table",
            "right main, shortening table",
        ),
        ("legs[1]", "nose"),
        ("legs", "legs"),
        ("legs[0].color", "legs[0].color"),
        ("legs[x].name", "legs[x].name"),
        ("", "the file"),
    ] {
        assert_eq!(path_words(path, &gear), words);
    }
}

#[test]
fn labels() {
    let mut gear = gearswing_gearfile::DEMO.gear().unwrap();
    let of_leg = |leg| Field::Trunnion.of_leg(leg).axis(Axis::X);
    let knee = |leg, axis| Field::Knee.of_leg(leg).axis(axis);
    gear.points_from = gearswing_gear::model::PointsFrom::Trunnion;
    assert_eq!(label(knee(2, Axis::X), &gear), "Knee K, inboard");
    assert_eq!(label(knee(0, Axis::X), &gear), "Knee K, aft");
    assert_eq!(label(knee(0, Axis::Y), &gear), "Knee K, up");
    assert_eq!(label(of_leg(2), &gear), "Trunnion P, out");
    assert_eq!(label(of_leg(0), &gear), "Trunnion P, aft");
    gear.points_from = gearswing_gear::model::PointsFrom::Airplane;
    let corner = Field::SolidPoints.of_entry(0, 0).item(2).axis(Axis::Y);
    assert_eq!(label(corner, &gear), "Corner 3, up");
    assert_eq!(
        label(Field::Trunnion.path().axis(Axis::X), &gear),
        "Trunnion P, aft"
    );
}
