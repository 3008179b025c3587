//! What stands at a path, whatever its kind.
use super::info::Kind;
use super::{Axis, Field, NotStored, Path};
use crate::model::{Gear, Point};

/// What stands at a path.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A number or coordinate, SI.
    Number(f64),
    /// A number that is left empty.
    Empty,
    /// A text, the key of the option taken, or those of a set with a blank between.
    Text(String),
    /// The points of an outline (m).
    Points(Vec<Point>),
}

impl Path {
    /// What stands there; `None` = this gear has no such place.
    #[must_use]
    pub fn value(self, gear: &Gear) -> Option<Value> {
        match self.field.info().kind {
            Kind::Text => self.text(gear).map(|text| Value::Text(text.to_owned())),
            Kind::Choice(_) => self.chosen(gear).map(|key| Value::Text(key.to_owned())),
            Kind::Set(all) => self.switched_on(gear).map(|on| {
                // a file may name them in any order, and twice
                let keys = all.iter().copied().filter(|key| on.contains(key));
                Value::Text(keys.collect::<Vec<_>>().join(" "))
            }),
            Kind::Outline if self.axis.is_none() => self
                .outline(gear)
                .map(|points| Value::Points(points.to_vec())),
            Kind::Number { .. } | Kind::Point | Kind::Outline => self
                .number(gear)
                .map(|number| number.map_or(Value::Empty, Value::Number)),
        }
    }

    /// Lets a value stand there.
    ///
    /// # Errors
    /// This gear has no such place, or the place no such value.
    pub fn set(self, gear: &mut Gear, value: &Value) -> Result<(), NotStored> {
        match (value, self.field.info().kind) {
            (Value::Number(number), _) => self.set_number(gear, Some(*number)),
            (Value::Empty, _) => self.set_number(gear, None),
            (Value::Text(text), Kind::Text) => self.set_text(gear, text),
            (Value::Text(key), Kind::Choice(_)) => self.choose(gear, key).ok_or(NotStored::NoValue),
            (Value::Text(keys), Kind::Set(all)) => {
                let on: Vec<&str> = keys.split_whitespace().collect();
                let known = on.iter().all(|key| all.contains(key));
                let mut switched = all
                    .iter()
                    .map(|key| self.switch(gear, key, on.contains(key)));
                if known && switched.all(|done| done.is_some()) {
                    Ok(())
                } else {
                    Err(NotStored::NoValue)
                }
            }
            (Value::Points(points), _) => {
                if points
                    .iter()
                    .any(|point| !(point.x.is_finite() && point.y.is_finite()))
                {
                    return Err(NotStored::NotFinite);
                }
                points.clone_into(self.outline_mut(gear).ok_or(NotStored::NoValue)?);
                Ok(())
            }
            (Value::Text(_), _) => Err(NotStored::NoValue),
        }
    }
}

/// Every place of the gear or of its legs at which a value stands or may stand, leg by leg in the order of the list:
/// points as their coordinates, outlines whole.
#[must_use]
pub fn value_paths(gear: &Gear) -> Vec<Path> {
    let mut all = paths_of_gear();
    for leg in 0..gear.legs.len() {
        all.extend(paths_of_leg(gear, leg));
    }
    all
}

/// Those of the gear itself.
pub(super) fn paths_of_gear() -> Vec<Path> {
    let fields = Field::ALL.iter().filter(|field| !field.is_of_leg());
    fields.flat_map(|field| places(field.path())).collect()
}

/// Those of a leg.
pub(super) fn paths_of_leg(gear: &Gear, leg: usize) -> Vec<Path> {
    let fields = Field::ALL.iter().filter(|field| field.is_of_leg());
    let entries = |field: &Field| 0..super::numbers::entries(gear, *field, leg);
    fields
        .flat_map(|field| entries(field).map(move |entry| field.of_entry(leg, entry)))
        .flat_map(places)
        .collect()
}

/// A place, or those of the coordinates of a point.
fn places(path: Path) -> Vec<Path> {
    match path.field.info().kind {
        Kind::Point => [Axis::X, Axis::Y].map(|axis| path.axis(axis)).to_vec(),
        _ => vec![path],
    }
}
