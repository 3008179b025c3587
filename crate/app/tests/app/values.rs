//! What numbers look like in their fields, what an emptied field stands for, and which limits are told.
use gearswing_app::fields;
use gearswing_app::msg::{self, Msg};
use gearswing_app::view::{FieldKind, FieldRow};
use gearswing_gear::field::{Axis, Field, Kind, Path};
use gearswing_gear::model::Gear;
use gearswing_gearfile::{DEMO, STARTERS, read, to_text};
use gearswing_report::fields::words;
use gearswing_solver::faults::{FaultKind, check_gear, check_stop};
use gearswing_units::{Quantity, UnitChoice, UnitSystem, parse};

use crate::fields::all_rows;
use crate::support::Desk;

fn opened(key: &str, units: UnitChoice) -> Desk {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::Units(units)));
    if key != "demo" {
        desk.send(Msg::File(msg::File::New {
            starter: key.to_owned(),
        }));
    }
    desk
}

/// Figures of a number without zeros at its ends.
fn figures(text: &str) -> usize {
    let digits: String = text.chars().filter(char::is_ascii_digit).collect();
    let digits = digits.trim_start_matches('0');
    let whole = !text.contains('.');
    let digits = if whole {
        digits.trim_end_matches('0')
    } else {
        digits
    };
    digits.len()
}

/// Lengths in inches are whole, sixteenths, or decimals to a thousandth; in millimeters whole or tenths.
fn is_round(row: &FieldRow, units: UnitChoice) -> bool {
    let text = row.value.as_str();
    let decimals = text.split_once('.').map_or(0, |(_, part)| part.len());
    let quantity = fields::quantity(&row.path).unwrap();
    match (quantity, units.system) {
        (Quantity::Length, UnitSystem::Inch) => match text.split_once('/') {
            Some((_, of)) => ["2", "4", "8", "16"].contains(&of),
            None => decimals <= 2,
        },
        (Quantity::Length, UnitSystem::Metric) => decimals <= 1,
        // an inch's hundredth of a hole, and the air of the standard atmosphere, 1.225 kg/m³
        (Quantity::Hole | Quantity::Density, _) => figures(text) <= 4,
        _ => figures(text) <= 3 || !text.contains('.'),
    }
}

#[test]
fn starters_and_demo_are_round_in_the_units_in_hand() {
    let sets = STARTERS.iter().flat_map(|starter| {
        let of = |units| (starter.key, units);
        [of(UnitChoice::INCH), of(UnitChoice::METRIC)]
    });
    let demo = [("demo", UnitChoice::INCH), ("demo", UnitChoice::METRIC)];
    for (key, units) in sets.chain(demo) {
        let mut desk = opened(key, units);
        let mut seen = 0;
        for row in all_rows(&mut desk) {
            if row.kind != FieldKind::Number || row.value.is_empty() {
                continue;
            }
            // worked out from the diameter, or from the pins; a row of the size table is what it is
            let path = &row.path;
            if path.ends_with("er_length_m")
                || path.ends_with("knee_offset_m")
                || path.ends_with("trunnion_to_axle_m")
            {
                continue;
            }
            let of_table = path.contains(".wheel.") && key != "demo";
            if path.ends_with("circumference_m") || of_table {
                continue;
            }
            assert!(is_round(&row, units), "{key} {path} {}", row.value);
            // no figure of a length is left out where the numbers are of these units
            let of_these = key != "demo" || units.system == UnitSystem::Inch;
            if of_these && fields::quantity(path) == Some(Quantity::Length) {
                let shown = parse(Quantity::Length, units, &row.value).unwrap().si;
                let stored = fields::shown(desk.state.gear(), path).flatten();
                // told from the trunnion it is a difference
                let apart = stored.map_or(f64::INFINITY, |stored| (shown - stored).abs());
                assert!(apart < 1e-12, "{key} {path} {}", row.value);
            }
            seen += 1;
        }
        assert!(seen > 40, "{key} {seen}");
    }
}

#[test]
fn a_starter_has_the_numbers_of_the_units_in_hand() {
    let inch = opened("folding_front", UnitChoice::INCH).gear();
    let mm = opened("folding_front", UnitChoice::METRIC).gear();
    assert_eq!(inch.legs[0].trunnion.x, 1.524);
    assert_eq!(mm.legs[0].trunnion.x, 1.5);
}

#[test]
fn showing_and_entering_what_is_shown_changes_no_number() {
    for (key, units) in [
        ("sliding_front", UnitChoice::INCH),
        ("no_brace_side", UnitChoice::METRIC),
    ] {
        let mut desk = opened(key, units);
        let before = desk.gear();
        let texts = |desk: &mut Desk| -> Vec<String> {
            all_rows(desk).into_iter().map(|row| row.value).collect()
        };
        let first = texts(&mut desk);
        for other in [units.other_system(), units] {
            desk.send(Msg::View(msg::View::Units(other)));
            for row in all_rows(&mut desk) {
                if row.kind != FieldKind::Number || row.value.is_empty() {
                    continue;
                }
                desk.enter(&row.path, &row.value);
                desk.enter(&row.path, &format!(" {} ", row.value));
            }
            assert_eq!(desk.gear(), before, "{key}");
        }
        assert_eq!(texts(&mut desk), first, "{key}");
    }
}

/// Gears that have every field of the table between them.
fn gears() -> Vec<Gear> {
    let demo = DEMO.gear().unwrap();
    let spring = "legs[0].springs[0].kind";
    let set = "legs[0].springs[0].kind.linear.set";
    let law = "legs[0].springs[0].kind.gas.law";
    let seen = "legs[0].seen_stop";
    let choices: [&[(&str, &str)]; 11] = [
        &[("supply.source", "hand_pump")],
        &[("supply.source", "electric_actuators")],
        &[("legs[0].strut.shortening", "with_travel")],
        &[("legs[0].wheel.tire.grown", "given")],
        &[(spring, "linear"), (set, "force_at_down")],
        &[(spring, "linear"), (set, "free_length")],
        &[(spring, "gas"), (law, "polytropic")],
        &[(seen, "travel")],
        &[(seen, "angle")],
        &[(seen, "actuator_pins")],
        &[(seen, "axle_from")],
    ];
    let mut gears = vec![demo.clone()];
    for choices in choices {
        let mut gear = demo.clone();
        for (path, option) in choices {
            // what stands already is no change
            if fields::chosen(&gear, path) != Some(*option) {
                fields::choose(&mut gear, path, option).unwrap();
            }
        }
        gears.push(gear);
    }
    let mut stored = demo;
    fields::set_shown(&mut stored, "supply.accumulator.gas_volume_m3", Some(5e-4)).unwrap();
    fields::set_shown(&mut stored, "legs[0].drive.jack.area_m2", Some(3e-4)).unwrap();
    gears.push(stored);
    gears.extend(STARTERS.iter().map(|starter| starter.gear().unwrap()));
    gears
}

/// Gears that have a field, with its path.
fn having(gears: &[Gear], field: Field) -> Vec<(&Gear, Path)> {
    let find = |gear| {
        let places = field.places(2, 1).into_iter();
        let paths = places.map(|path| match field.info().kind {
            Kind::Point => path.axis(Axis::X),
            Kind::Outline => path.item(0).axis(Axis::X),
            _ => path,
        });
        let mut there = paths.filter(|path| path.number(gear).is_some());
        Some((gear, there.next()?))
    };
    gears.iter().filter_map(find).collect()
}

/// What the words of an empty field stand for: a figure, or nothing at all.
fn stands_for(words: &str) -> Option<f64> {
    let zero = [
        "taken as weightless",
        "none, 0",
        "none",
        "the wheel stands upright",
        "no back pressure",
        "no air load on the wheel",
        "no air load on the leg",
        "with the lock engaged",
    ];
    let one = [
        "fully charged",
        "fully shortened",
        "all the way up",
        "1, both move alike",
    ];
    match words {
        words if zero.contains(&words) => Some(0.0),
        words if one.contains(&words) => Some(1.0),
        "0.62, a sharp edge" => Some(0.62),
        "860 kg/m³, red mineral fluid" => Some(860.0),
        "10 mΩ, common practice" => Some(0.01),
        "1.4, nitrogen without heat exchange" => Some(1.4),
        _ => None,
    }
}

/// The text of a gear file without one key.
fn without(text: &str, path: &str) -> String {
    let mut file: serde_json::Value = serde_json::from_str(text).unwrap();
    let (part, key) = path.rsplit_once('.').unwrap_or(("", path));
    let pointer = part.replace(['.', '['], "/").replace(']', "");
    let pointer = if part.is_empty() {
        "/gear".to_owned()
    } else {
        format!("/gear/{pointer}")
    };
    if let Some(object) = file.pointer_mut(&pointer) {
        object.as_object_mut().unwrap().remove(key);
    }
    file.to_string()
}

/// Every field that may be empty: what stands in it then is what its words say, what the gear file takes
/// for a key that is left out, and what the model takes without a fault.
#[test]
fn an_emptied_field_takes_the_default_that_it_shows() {
    let gears = gears();
    let mut emptied = 0;
    for &field in Field::ALL {
        if !matches!(field.info().kind, Kind::Number { .. }) {
            continue;
        }
        let there = having(&gears, field);
        assert!(!there.is_empty(), "no gear has {}", field.info().key);
        for (gear, path) in there {
            let path = path.to_string();
            let default = fields::when_empty(&path);
            let Some(shown) = words(field).if_empty else {
                assert_eq!(default, None, "{path} is emptied without a word");
                continue;
            };
            let default = default.unwrap_or_else(|| panic!("{path} shows “{shown}”, stays filled"));
            let mut changed = gear.clone();
            fields::set_shown(&mut changed, &path, default).unwrap();
            let stored = fields::shown(&changed, &path).unwrap();
            let figure = stands_for(shown);
            // a key that may be left out is kept apart from a 0
            match stored {
                Some(stored) => assert_eq!(Some(stored), figure, "{path} shows “{shown}”"),
                None => assert!(figure.is_none_or(|f| f == 0.0 || shown.contains(&f.to_string()))),
            }
            let is_first_of_part = path.ends_with(".hole_m")
                || path.ends_with(".area_m2")
                || path.ends_with(".gas_volume_m3");
            if !is_first_of_part {
                let left_out = read(&without(&to_text(gear).unwrap(), &path)).unwrap();
                assert_eq!(left_out.without_kept(), changed.without_kept(), "{path}");
            }
            let new = |gear: &Gear| check_gear(gear).err().map_or(0, |faults| faults.0.len());
            assert!(
                new(&changed) <= new(gear),
                "{path} {:?}",
                check_gear(&changed)
            );
            emptied += 1;
        }
    }
    assert!(emptied > 300, "{emptied}");
}

/// Without the pressures that it needs a strut-shortening cylinder is no cylinder: they stay.
#[test]
fn what_must_be_filled_is_not_emptied() {
    let mut desk = Desk::demo();
    let path = "legs[1].drive.jack.shorten_pa";
    let before = desk.gear();
    desk.enter(path, "");
    assert_eq!(desk.gear(), before);
    let row = desk.row(path);
    assert!(row.error.is_some() && row.if_empty.is_empty());
    // a coordinate too, though its whole outline may be left out
    let corner = desk.row("legs[1].body.outline_m[0][0]");
    assert_eq!(corner.if_empty, "");
    // the cylinder goes with its area
    desk.enter("legs[1].drive.jack.area_m2", "");
    assert_eq!(desk.gear().legs[1].drive.strut_jack, None);
}

/// A pitch is not rounded by tenths: 28 threads per inch are 0.907 mm a turn, and 1.25 mm (M8 of ISO 261,
/// from memory) are 0.0492 in.
#[test]
fn a_thread_keeps_its_pitch() {
    let path = "legs[1].actuator.rod_end_pitch_m";
    for (typed, entered, seen, text) in [
        (UnitChoice::INCH, "1/28", UnitChoice::METRIC, "0.907"),
        (UnitChoice::METRIC, "1.25", UnitChoice::INCH, "0.0492"),
    ] {
        let mut desk = opened("demo", typed);
        desk.enter(path, entered);
        desk.send(Msg::View(msg::View::Units(seen)));
        assert_eq!(desk.row(path).value, text);
    }
}

/// “0.004 to 780 in” as least and most, in SI, with the next figures beyond.
fn told_limits(range: &str, quantity: Quantity, units: UnitChoice) -> [[f64; 2]; 2] {
    let range = range.trim_end_matches(", either way").replace('−', "-");
    let unit = quantity.unit_label(units);
    let range = range.strip_suffix(unit).unwrap_or(&range).trim();
    let (least, most) = range.split_once(" to ").unwrap();
    let si = |text: &str| parse(quantity, units, text).unwrap().si;
    let beyond = |text: &str, way: f64| {
        let number: f64 = text.parse().unwrap();
        let decimals = text.split_once('.').map_or(0, |(_, part)| part.len());
        let step = match figures(text) {
            0 => 1.0,
            // the second figure of a limit that is told with two
            1 | 2 => 10_f64.powf(number.abs().log10().floor() - 1.0),
            _ => 10_f64.powi(-i32::try_from(decimals).unwrap()),
        };
        quantity.to_si(units, number + way * step)
    };
    [
        [si(least), beyond(least, -1.0)],
        [si(most), beyond(most, 1.0)],
    ]
}

#[test]
fn limits_hold_as_the_help_tells_them() {
    let gears = gears();
    let mut tried = 0;
    for units in [UnitChoice::INCH, UnitChoice::METRIC] {
        for &field in Field::ALL {
            let info = field.info();
            let (Some(range), Some(quantity)) = (info.range(), info.quantity()) else {
                continue;
            };
            let there = having(&gears, field);
            let (gear, path) = there.first().unwrap();
            let told = gearswing_units::si_range_text(quantity, units, range.min, range.max);
            for [limit, beyond] in told_limits(&told, quantity, units) {
                for (value, is_valid) in [(limit, true), (beyond, false)] {
                    let mut gear = (*gear).clone();
                    path.set_number(&mut gear, Some(value)).unwrap();
                    let stops = (0..gear.legs.len()).map(|leg| check_stop(&gear, leg));
                    let checked = std::iter::once(check_gear(&gear)).chain(stops);
                    let mut faults = checked.filter_map(Result::err).flat_map(|f| f.0);
                    let refused = faults.any(|fault| {
                        path.to_string().starts_with(&fault.path)
                            && matches!(
                                fault.kind,
                                FaultKind::OutOfRange { min, max, .. }
                                    if min == range.min && max == range.max
                            )
                    });
                    assert_eq!(refused, !is_valid, "{path}: {told}, {value}");
                    tried += 1;
                }
            }
        }
    }
    assert!(tried > 600, "{tried}");
}
