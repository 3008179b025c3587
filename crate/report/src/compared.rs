//! What differs between two states of a gear, in words.
use crate::fields::{ChoiceWords, path_words, words};
use crate::name::name_words;
use crate::text::{capital_first, leg_name};
use gearswing_gear::field::{Change, Field, Kind, Path, Place, Value, told, told_point};
use gearswing_gear::model::{Gear, Point};
use gearswing_units::{Quantity, UnitChoice, format, format_field};

/// A difference in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ChangeText {
    /// Where, as "Left main, actuator bore".
    pub place: String,
    /// What stood there before.
    pub before: String,
    /// What stands there now.
    pub now: String,
}

/// Where a gear differs from a state before it, as "Left main, actuator bore".
#[must_use]
pub fn changed_place(place: Place, gear: &Gear) -> String {
    let words = match place {
        Place::Legs => "legs".to_owned(),
        Place::Field(path) => path_words(&path.to_string(), gear),
        Place::List(path) => {
            let name = gear.legs.get(path.leg).map_or("", |leg| &leg.name);
            format!("{}, {}", leg_name(name, path.leg), list_words(path.field))
        }
    };
    capital_first(&words)
}

/// A difference of the gear from a state before it.
#[must_use]
pub fn change_text(change: &Change, gear: &Gear, units: UnitChoice) -> ChangeText {
    let said = |value: &Value| match change.place {
        Place::Legs => match value {
            Value::Text(names) => name_words(names),
            _ => String::new(),
        },
        Place::List(_) => counted(value),
        Place::Field(path) => value_words(path, value, gear, units),
    };
    let (mut before, mut now) = (said(&change.before), said(&change.now));
    if let (Place::Field(path), Value::Number(was), Value::Number(is)) =
        (change.place, &change.before, &change.now)
        && before == now
    {
        // less apart than a field shows
        let fine = |stored: f64| finely(path, units, told(gear, path, stored));
        (before, now) = (fine(*was), fine(*is));
    }
    if let (Place::Field(path), Value::Number(was), Value::Number(is)) =
        (change.place, &change.before, &change.now)
        && path.field == Field::SwingUp
        && was * is < 0.0
    {
        now.push_str(", the other way");
    }
    ChangeText {
        place: changed_place(change.place, gear),
        before,
        now,
    }
}

/// A number with all figures that may tell it from another.
fn finely(path: Path, units: UnitChoice, si: f64) -> String {
    let quantity = path.field.info().quantity().unwrap_or(Quantity::Ratio);
    let unit = quantity.unit(units);
    unit.with_number(&unit.from_si(si).to_string())
}

/// A list, or a part that a leg may be without.
fn list_words(first: Field) -> &'static str {
    match first {
        Field::RowTravel => "rows of the shortening table",
        Field::SpringName => "springs",
        Field::ObstacleName => "pieces of the well",
        _ => "electric actuator",
    }
}

fn counted(value: &Value) -> String {
    match value {
        Value::Number(0.0) => "none".to_owned(),
        Value::Number(count) => format!("{count:.0}"),
        Value::Empty | Value::Text(_) | Value::Points(_) => String::new(),
    }
}

/// A value at a path of a gear; points as they are told there.
pub(crate) fn value_words(path: Path, value: &Value, gear: &Gear, units: UnitChoice) -> String {
    let info = path.field.info();
    let quantity = info.quantity().unwrap_or(Quantity::Ratio);
    match (value, info.kind) {
        (Value::Number(number), _) => typed(quantity, units, told(gear, path, *number)),
        (Value::Empty, _) => "empty".to_owned(),
        (Value::Text(key), Kind::Choice(_)) => option_words(path.field, key),
        (Value::Text(keys), Kind::Set(_)) if keys.is_empty() => "none".to_owned(),
        (Value::Text(keys), Kind::Set(_)) => {
            let all = keys.split(' ').map(|key| option_words(path.field, key));
            all.collect::<Vec<_>>().join(", ")
        }
        (Value::Text(text), _) if text.is_empty() => "empty".to_owned(),
        (Value::Text(text), _) => name_words(text),
        (Value::Points(points), _) => {
            let told = |point: &Point| told_point(gear, path, *point);
            points_words(&points.iter().map(told).collect::<Vec<_>>(), units)
        }
    }
}

fn option_words(field: Field, key: &str) -> String {
    let of = |option: &&ChoiceWords| option.key == key;
    let found = words(field).choices.iter().find(of);
    found.map_or(key, |option| option.label).to_owned()
}

/// Points one after the other, in the unit that stands behind the last.
fn points_words(points: &[Point], units: UnitChoice) -> String {
    if points.is_empty() {
        return "no points".to_owned();
    }
    let figure = |number: f64| format_field(Quantity::Length, units, number);
    let pair = |point: &Point| format!("{}, {}", figure(point.x), figure(point.y));
    let all: Vec<String> = points.iter().map(pair).collect();
    Quantity::Length.unit(units).with_number(&all.join("; "))
}

/// A number with its unit as its field has it: "7/8 in", not rounded as an answer is.
/// Digits of a number that somebody may have typed, at most.
const LONGEST_TYPED: usize = 12;

fn typed(quantity: Quantity, units: UnitChoice, si: f64) -> String {
    let number = format_field(quantity, units, si);
    // nobody has typed so many digits: it was worked out
    if number.len() > LONGEST_TYPED {
        return format(quantity, units, si);
    }
    quantity.unit(units).with_number(&number)
}

#[cfg(test)]
mod tests {
    use super::*;
    use gearswing_gear::field::changes;
    use gearswing_gearfile::DEMO;
    use gearswing_units::UnitChoice;

    #[test]
    fn says_where_and_from_what_to_what() {
        let before = DEMO.gear().unwrap();
        let mut now = before.clone();
        now.legs[1].actuator.mount.y = 0.0254 * 5.75;
        now.legs[0].actuator.bore = 0.03;
        now.legs[2].well.pop();
        let said: Vec<_> = changes(&now, &before)
            .iter()
            .map(|change| change_text(change, &now, UnitChoice::METRIC))
            .collect();
        let places: Vec<_> = said.iter().map(|text| text.place.as_str()).collect();
        assert_eq!(
            places,
            [
                "Nose, actuator bore",
                "Left main, actuator mount A0, up",
                "Right main, pieces of the well"
            ]
        );
        assert_eq!(said[0].now, "30 mm");
        assert_eq!(said[1].now, "146.05 mm");
        assert_eq!(
            said[2].before.parse::<usize>().unwrap(),
            before.legs[2].well.len()
        );
    }

    /// No difference goes without words for what stood there.
    #[test]
    fn every_value_has_words() {
        for gear in gearswing_samples::full::full_gears() {
            for path in gearswing_gear::field::value_paths(&gear) {
                let Some(value) = path.value(&gear) else {
                    continue;
                };
                let text = value_words(path, &value, &gear, UnitChoice::METRIC);
                assert!(!text.is_empty(), "{path}");
                if let (Kind::Choice(_), Value::Text(key)) = (path.field.info().kind, &value) {
                    assert!(text != *key || !key.contains('_'), "{path}: {key}");
                }
            }
        }
    }
}
