//! Kept states as a file and a link hold them: what differs from the gear itself.
//!
//! Values stand with the paths of their fields, as `{"at": "legs[1].actuator.bore_m", "number": 0.03}`. Where that does not give the
//! state back to the last bit, as with other legs, the legs or the whole gear stand there.
use std::borrow::Cow;

use gearswing_gear::field::{Path, Value, value_paths};
use gearswing_gear::model::{Gear, Kept, Leg, MOST_KEPT, MOST_NOTES, PREVIOUS_TIRE, Point};
use gearswing_solver::numeric::sort_by;
use serde::{Deserialize, Serialize};

use crate::file::{ContentFault, OpenError};

/// One kept state.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct KeptText<'g> {
    /// What the person calls it.
    name: String,
    /// It is somebody else's.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    sent: bool,
    /// What stands elsewhere than in the gear, or is another there.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    values: Vec<ValueText>,
    /// All legs, where they are not those of the gear.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    legs: Option<Cow<'g, [Leg]>>,
    /// The whole state, where nothing less holds it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    gear: Option<Cow<'g, Gear>>,
}

/// A value and where it stands; one of no kind is a number that is left empty.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct ValueText {
    /// Path of its field.
    at: String,
    /// A number or coordinate, SI.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    number: Option<f64>,
    /// A text, the key of the option taken, or those of a set with blanks between.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    text: Option<String>,
    /// An outline (m).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    points: Option<Vec<Point>>,
}

impl ValueText {
    fn of(at: Path, value: Value) -> Self {
        let mut text = Self {
            at: at.to_string(),
            ..Self::default()
        };
        match value {
            Value::Number(number) => text.number = Some(number),
            Value::Empty => {}
            Value::Text(words) => text.text = Some(words),
            Value::Points(points) => text.points = Some(points),
        }
        text
    }

    /// `None` where it says more than one thing.
    fn value(&self) -> Option<Value> {
        match (self.number, &self.text, &self.points) {
            (Some(number), None, None) => Some(Value::Number(number)),
            (None, Some(text), None) => Some(Value::Text(text.clone())),
            (None, None, Some(points)) => Some(Value::Points(points.clone())),
            (None, None, None) => Some(Value::Empty),
            _ => None,
        }
    }
}

/// A gear and its kept states as they are written: a lone state that has nothing but other tires stands at the wheels,
/// as in every version.
pub(crate) fn told(gear: &Gear) -> (Cow<'_, Gear>, Vec<KeptText<'_>>) {
    if let Some(at_wheels) = at_wheels(gear) {
        return (Cow::Owned(at_wheels), Vec::new());
    }
    let base = gear.without_kept();
    let kept = gear.kept.iter().map(|kept| KeptText::of(kept, &base));
    (Cow::Borrowed(gear), kept.collect())
}

/// The gear with the tires of its only kept state at its wheels, where that gives the state back.
fn at_wheels(gear: &Gear) -> Option<Gear> {
    let ([kept], None) = (gear.kept.as_slice(), gear.before) else {
        return None;
    };
    let mut told = Gear {
        kept: Vec::new(),
        ..gear.clone()
    };
    for (leg, was) in told.legs.iter_mut().zip(&kept.gear.legs) {
        let tire = &was.wheel.tire;
        leg.wheel.former = (leg.wheel.tire != *tire).then(|| tire.clone());
    }
    let mut back = told.clone();
    let state = previous(&mut back)?;
    (state == *kept).then_some(told)
}

/// Takes the tires that were fitted before from the wheels, as a state of their own.
fn previous(gear: &mut Gear) -> Option<Kept> {
    let mut state = gear.without_kept();
    let mut is_one = false;
    for (leg, state) in gear.legs.iter_mut().zip(&mut state.legs) {
        state.wheel.former = None;
        if let Some(tire) = leg.wheel.former.take() {
            state.wheel.tire = tire;
            is_one = true;
        }
    }
    is_one.then(|| Kept::of(&state, PREVIOUS_TIRE.to_owned()))
}

/// Gives a gear the states that were read with it.
///
/// # Errors
/// More states than are kept, or four times as many notes as can be added, a path that the gear does not have or that stands twice, a value that it cannot take, or
/// a state to compare with that is not there.
pub(crate) fn keep(
    gear: &mut Gear,
    texts: Vec<KeptText<'_>>,
    before: Option<usize>,
) -> Result<(), OpenError> {
    // the previous tire may come to what else is kept
    if texts.len() > MOST_KEPT + 1 {
        return Err(fault("kept"));
    }
    let previous = previous(gear);
    // more than can be added, but no more than can be read
    if gear.notes.len() > 4 * MOST_NOTES {
        return Err(fault("notes"));
    }
    let base = gear.without_kept();
    let kept = texts.into_iter().enumerate();
    let kept: Result<Vec<Kept>, OpenError> = kept
        .map(|(at, text)| {
            text.read(&base)
                .map_err(|path| fault(&format!("kept[{at}]{path}")))
        })
        .collect();
    let kept = kept?;
    if before.is_some_and(|before| before >= kept.len()) {
        return Err(fault("before"));
    }
    gear.kept = kept;
    if let Some(mut previous) = previous {
        let known = gear.previous().and_then(|at| gear.kept.get(at));
        // a state that somebody has called so stays what it is
        if known.is_some_and(|known| known.gear != previous.gear) {
            previous.name = format!("{PREVIOUS_TIRE} 2");
        }
        if known.is_none_or(|known| known.gear != previous.gear) {
            gear.kept.push(previous);
        }
    }
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
        let named = || Self {
            name: kept.name.clone(),
            sent: kept.sent,
            ..Self::default()
        };
        let mut text = named();
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
                gear: Some(Cow::Borrowed(state)),
                ..named()
            };
        }
        text
    }

    /// Takes what differs, but for what stands in legs that are taken whole.
    fn take_values(&mut self, gear: &Gear, state: &Gear) {
        self.values.clear();
        for path in value_paths(state) {
            if self.legs.is_some() && path.field.is_of_leg() {
                continue;
            }
            let Some(value) = path.value(state) else {
                continue;
            };
            let own = path.value(gear);
            if !own.is_some_and(|own| is_same(&own, &value)) {
                self.values.push(ValueText::of(path, value));
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
            let mut whole = whole.into_owned();
            previous(&mut whole);
            return Ok(Kept {
                sent: self.sent,
                ..Kept::of(&whole, self.name)
            });
        }
        let mut state = gear.clone();
        if let Some(legs) = self.legs {
            state.legs = legs.into_owned();
            previous(&mut state);
        }
        set_all(&mut state, &self.values)?;
        Ok(Kept {
            sent: self.sent,
            ..Kept::of(&state, self.name)
        })
    }
}

/// Lets values stand in a state in the order of the list of fields: a choice before what it brings along.
fn set_all(state: &mut Gear, values: &[ValueText]) -> Result<(), String> {
    let mut known: Vec<(Path, Value)> = Vec::with_capacity(values.len());
    let fault = |at: &str| format!(".values.{at}");
    // what older versions told of the tire before that of a kept state
    let is_of_former = |text: &ValueText| text.at.contains("].wheel.former.");
    for text in values.iter().filter(|text| !is_of_former(text)) {
        let (Ok(path), Some(value)) = (text.at.parse::<Path>(), text.value()) else {
            return Err(fault(&text.at));
        };
        known.push((path, value));
    }
    sort_by(&mut known, |(a, _), (b, _)| a.cmp(b));
    for pair in known.windows(2) {
        if let [(path, _), (next, _)] = pair
            && path == next
        {
            return Err(fault(&path.to_string()));
        }
    }
    for (path, value) in known {
        path.set(state, &value)
            .map_err(|_| fault(&path.to_string()))?;
    }
    Ok(())
}
