//! Kept states as a file and a link hold them: what differs from the gear itself.
//!
//! Values stand by the paths of their fields, as `"legs[1].actuator.bore_m": 0.03`. Where that does not give the
//! state back to the last bit, as with other legs, the legs or the whole gear stand there.
use std::borrow::Cow;
use std::collections::BTreeMap;
use std::sync::Arc;

use gearswing_gear::field::{Path, Value, value_paths};
use gearswing_gear::model::{Gear, Kept, Leg, Point};
use serde::{Deserialize, Serialize};

use crate::file::{ContentFault, OpenError};

/// One kept state.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct KeptText<'g> {
    /// What the person calls it.
    name: String,
    /// Numbers and coordinates, SI.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    numbers: BTreeMap<String, f64>,
    /// Numbers that are left empty.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    empty: Vec<String>,
    /// Texts, keys of the options taken, and those of sets with blanks between.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    texts: BTreeMap<String, String>,
    /// Outlines (m).
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    points: BTreeMap<String, Vec<Point>>,
    /// All legs, where they are not those of the gear.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    legs: Option<Cow<'g, [Leg]>>,
    /// The whole state, where nothing less holds it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    gear: Option<Cow<'g, Gear>>,
}

/// The kept states of a gear, as they are written.
pub(crate) fn kept_texts(gear: &Gear) -> Vec<KeptText<'_>> {
    gear.kept
        .iter()
        .map(|kept| KeptText::of(kept, gear))
        .collect()
}

/// Gives a gear the states that were read with it.
///
/// # Errors
/// A path that the gear does not have, a value that it cannot take, or a state to compare with that is not there.
pub(crate) fn keep(
    gear: &mut Gear,
    texts: Vec<KeptText<'_>>,
    before: Option<usize>,
) -> Result<(), OpenError> {
    let kept = texts.into_iter().enumerate();
    let kept: Result<Vec<Kept>, OpenError> = kept
        .map(|(at, text)| {
            text.read(gear)
                .map_err(|path| fault(&format!("kept[{at}]{path}")))
        })
        .collect();
    let kept = kept?;
    if before.is_some_and(|before| before >= kept.len()) {
        return Err(fault("before"));
    }
    gear.kept = kept;
    gear.before = before;
    Ok(())
}

fn fault(path: &str) -> OpenError {
    OpenError::Field {
        path: path.to_owned(),
        what: ContentFault::NoSuchPlace,
        line: 1,
        column: 1,
    }
}

fn is_same(value: &Value, other: &Value) -> bool {
    match (value, other) {
        // 0 and -0 are two
        (Value::Number(a), Value::Number(b)) => a.to_bits() == b.to_bits(),
        (Value::Points(a), Value::Points(b)) => bits(a) == bits(b),
        _ => value == other,
    }
}

fn bits(points: &[Point]) -> Vec<[u64; 2]> {
    let bits = |point: &Point| [point.x.to_bits(), point.y.to_bits()];
    points.iter().map(bits).collect()
}

impl<'g> KeptText<'g> {
    fn of(kept: &'g Kept, gear: &Gear) -> Self {
        let state: &Gear = &kept.gear;
        let mut text = Self {
            name: kept.name.clone(),
            ..Self::default()
        };
        if state.legs.len() != gear.legs.len() {
            text.legs = Some(Cow::Borrowed(&state.legs));
        }
        text.take_values(gear, state);
        if !text.holds(state, gear) {
            text.legs = Some(Cow::Borrowed(&state.legs));
            text.take_values(gear, state);
        }
        if !text.holds(state, gear) {
            text = Self {
                name: kept.name.clone(),
                gear: Some(Cow::Borrowed(state)),
                ..Self::default()
            };
        }
        text
    }

    /// Takes what differs, but for what stands in legs that are taken whole.
    fn take_values(&mut self, gear: &Gear, state: &Gear) {
        self.numbers.clear();
        self.empty.clear();
        self.texts.clear();
        self.points.clear();
        for path in value_paths(state) {
            if self.legs.is_some() && path.field.is_of_leg() {
                continue;
            }
            let Some(value) = path.value(state) else {
                continue;
            };
            if path.value(gear).is_some_and(|own| is_same(&own, &value)) {
                continue;
            }
            let at = path.to_string();
            match value {
                Value::Number(number) => {
                    self.numbers.insert(at, number);
                }
                Value::Empty => self.empty.push(at),
                Value::Text(text) => {
                    self.texts.insert(at, text);
                }
                Value::Points(points) => {
                    self.points.insert(at, points);
                }
            }
        }
    }

    fn holds(&self, state: &Gear, gear: &Gear) -> bool {
        self.clone()
            .read(gear)
            .is_ok_and(|kept| *kept.gear == *state)
    }

    /// The state, from the gear that it was told against.
    ///
    /// # Errors
    /// The path within this text that is not understood.
    fn read(self, gear: &Gear) -> Result<Kept, String> {
        if let Some(whole) = self.gear {
            return Ok(Kept::of(&whole, self.name));
        }
        let mut state = gear.clone();
        if let Some(legs) = self.legs {
            state.legs = legs.into_owned();
        }
        let texts = self.texts.into_iter();
        set_all(
            &mut state,
            "texts",
            texts.map(|(at, text)| (at, Value::Text(text))),
        )?;
        let empty = self.empty.into_iter();
        set_all(&mut state, "empty", empty.map(|at| (at, Value::Empty)))?;
        let numbers = self.numbers.into_iter();
        set_all(
            &mut state,
            "numbers",
            numbers.map(|(at, number)| (at, Value::Number(number))),
        )?;
        let points = self.points.into_iter();
        set_all(
            &mut state,
            "points",
            points.map(|(at, points)| (at, Value::Points(points))),
        )?;
        Ok(Kept {
            name: self.name,
            gear: Arc::new(Gear {
                kept: Vec::new(),
                before: None,
                ..state
            }),
        })
    }
}

/// Lets values stand in a state in the order of the list of fields: a choice before what it brings along.
fn set_all(
    state: &mut Gear,
    key: &str,
    values: impl Iterator<Item = (String, Value)>,
) -> Result<(), String> {
    let mut known: Vec<(Path, String, Value)> = Vec::new();
    for (at, value) in values {
        match at.parse() {
            Ok(path) => known.push((path, at, value)),
            Err(_) => return Err(format!(".{key}.{at}")),
        }
    }
    known.sort_by_key(|(path, ..)| *path);
    for (path, at, value) in known {
        path.set(state, &value)
            .map_err(|_| format!(".{key}.{at}"))?;
    }
    Ok(())
}

#[cfg(test)]
mod tests;
