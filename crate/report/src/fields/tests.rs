//! The table has words for every field that a gear file can have, and no others.
use std::collections::BTreeSet;

use gearswing_solver::model::{
    Acts, AttachTo, Basis, BatteryKind, BatterySize, Body, BodyEnd, Brace, Folds, GasLaw, Grown,
    MovingPart, Shape, Shortening, SpringJoint, UnlockedBy, View,
};
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

use super::{Axis, FieldKind, Group, field, field_words, path_words, table};
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
fn every_field_of_a_full_gear_has_words_and_every_row_is_a_field() {
    let mut fields = Vec::new();
    for gear in full_gears() {
        leaves(&serde_json::to_value(gear).unwrap(), "", &mut fields);
    }
    let mut seen = BTreeSet::new();
    for (path, value) in &fields {
        let field = field(path).unwrap_or_else(|| panic!("no words for {path}"));
        let fits = match field.words.kind {
            FieldKind::Number(_) => value.is_number() && field.axis.is_none(),
            FieldKind::Point => value.is_number() && field.axis.is_some(),
            FieldKind::Text => value.is_string(),
            FieldKind::Choice(choices) | FieldKind::Set(choices) => choices
                .iter()
                .any(|choice| Some(choice.key) == value.as_str()),
        };
        assert!(
            fits,
            "{path} holds {value}, its row says {:?}",
            field.words.kind
        );
        assert_eq!(field.leg.is_some(), field.group().is_of_leg(), "{path}");
        seen.insert(field.words.pattern);
    }
    // The kinds of brace, shape, growth and shortening are keys, not leaves.
    seen.insert(field_words("supply.source").unwrap().pattern);
    seen.insert(field_words("legs[0].seen_stop").unwrap().pattern);
    for tag in [
        "brace",
        "strut.shortening",
        "wheel.tire.grown",
        "well[].shape",
        "springs[].kind",
        "springs[].kind.linear.set",
        "springs[].kind.gas.law",
    ] {
        seen.insert(
            field_words(&format!("legs[0].{}", tag.replace("[]", "[0]")))
                .unwrap()
                .pattern,
        );
    }
    let rows: BTreeSet<_> = table().map(|words| words.pattern).collect();
    assert_eq!(rows, seen);
    assert_eq!(rows.len(), table().count(), "a pattern stands twice");
}

#[test]
fn every_number_has_the_quantity_of_its_key() {
    use gearswing_units::Quantity as Q;
    for words in table() {
        let pattern = words.pattern.trim_end_matches("[]");
        let by_key: &[Q] = match () {
            () if pattern.ends_with("_kg_m3") => &[Q::Density],
            () if pattern.ends_with("_kg_m2") => &[Q::Inertia],
            () if pattern.ends_with("_m3_s") => &[Q::Flow],
            () if pattern.ends_with("_m3") => &[Q::Volume],
            () if pattern.ends_with("_m_s") => &[Q::Speed, Q::StrokeSpeed],
            () if pattern.ends_with("_at_down_n_m") || pattern.ends_with(".couple_n_m") => {
                &[Q::Moment]
            }
            () if pattern.ends_with("_n_m") => &[Q::Stiffness],
            () if pattern.ends_with("_n_m_rad") => &[Q::TorsionalStiffness],
            () if pattern.ends_with(".friction") || pattern.ends_with(".exponent") => &[Q::Ratio],
            () if pattern.ends_with("_m2") => &[Q::DragArea, Q::Area],
            () if pattern.ends_with("_s") => &[Q::Time],
            () if pattern.ends_with("_v") => &[Q::Voltage],
            () if pattern.ends_with("_a") => &[Q::Current],
            () if pattern.ends_with("_ohm") => &[Q::Resistance],
            () if pattern.ends_with("_m") => &[Q::Length, Q::Hole],
            () if pattern.ends_with("_rad") => &[Q::Angle],
            () if pattern.ends_with("_kg") => &[Q::Mass],
            () if pattern.ends_with("_pa") => &[Q::Pressure],
            () if pattern.ends_with("_n") => &[Q::Force],
            () if pattern.ends_with("_coefficient") => &[Q::Ratio],
            () => &[Q::Travel, Q::LoadFactor, Q::Ratio],
        };
        assert_eq!(
            words.quantity().is_some(),
            words.range().is_some(),
            "range of {}",
            words.pattern
        );
        if let Some(quantity) = words.quantity() {
            assert!(by_key.contains(&quantity), "{}", words.pattern);
        } else {
            assert_eq!(
                by_key.len(),
                3,
                "{} has a unit but no quantity",
                words.pattern
            );
        }
    }
}

#[test]
fn every_row_reads_well() {
    for words in table() {
        for text in [words.help, words.label, words.name] {
            assert!(
                !text.trim().is_empty() && text.trim() == text,
                "{}",
                words.pattern
            );
        }
        assert!(words.help.ends_with('.'), "{}", words.pattern);
        assert!(
            words.label.starts_with(char::is_uppercase),
            "{}",
            words.pattern
        );
        assert!(!words.name.ends_with('.'), "{}", words.pattern);
    }
    let titles: BTreeSet<_> = Group::ALL.iter().map(|group| group.title()).collect();
    assert_eq!(titles.len(), Group::ALL.len());
}

fn keys(pattern: &str) -> Vec<&'static str> {
    match field_words(pattern).unwrap().kind {
        FieldKind::Choice(choices) | FieldKind::Set(choices) => {
            choices.iter().map(|choice| choice.key).collect()
        }
        other => panic!("{pattern} is {other:?}"),
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
    check_keys::<Basis>("legs[0].wheel.former.grown.given.basis", 4);
    check_keys::<Folds>("legs[0].brace.folding.folds", 2);
    check_keys::<UnlockedBy>("legs[0].brace.folding.unlocked_by", 2);
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
    let gear = full_gear();
    for (path, words) in [
        (
            "legs[0].actuator.rod_m",
            "right main, actuator rod diameter",
        ),
        ("legs[1].trunnion_m", "nose, trunnion P"),
        ("legs[1].trunnion_m[1]", "nose, trunnion P, y"),
        (
            "legs[0].well[0].shape.solid.points_m[2][0]",
            "right main, Bay rib, corner 3, x",
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
        (
            "legs[0].wheel.former.diameter_m",
            "right main, previous tire: overall diameter of the tire",
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
    let point = field("legs[0].well[0].shape.solid.points_m[2][1]").unwrap();
    assert_eq!(point.label(), "Corner 3, y");
    assert_eq!(
        (point.obstacle, point.item, point.axis),
        (Some(0), Some(2), Some(Axis::Y))
    );
    assert_eq!(
        field("legs[0].trunnion_m[0]").unwrap().label(),
        "Trunnion P, x"
    );
    assert_eq!(field("legs[0].trunnion_m[2]"), None);
    assert_eq!(
        field("legs[0].wheel.former.size").unwrap().group(),
        Group::FormerTire
    );
    assert_eq!(field("legs[0].trunnion_m[0][0]"), None);
}
