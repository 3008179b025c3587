//! In what two states of a gear differ, and how one is taken back.
use super::info::{Empty, Group, Kind};
use super::numbers::entries;
use super::value::{paths_of_gear, paths_of_leg, value_paths};
use super::{Axis, Field, Path, Value};
use crate::model::{Gear, Tire};
use std::borrow::Cow;

/// Where two states differ.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// Which legs there are.
    Legs,
    /// A value that both have; of an outline with as many points in both, one coordinate.
    Field(Path),
    /// How many entries a list of a leg has, told by the first field of an entry.
    List(Path),
}

/// One difference between two states.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// Where.
    pub place: Place,
    /// What stood there before; of a list the number of its entries, of the legs their names.
    pub before: Value,
    /// What stands there now.
    pub now: Value,
}

/// The first field of an entry of each list of a leg, and of each part that a leg may be without.
const LISTS: [Field; 4] = [
    Field::RowTravel,
    Field::SpringName,
    Field::ObstacleName,
    Field::FreeSpeed,
];

/// How many entries one of these lists of a leg has.
fn length(gear: &Gear, list: Field, leg: usize) -> usize {
    let Some(of) = gear.legs.get(leg) else {
        return 0;
    };
    match list {
        Field::FreeSpeed => usize::from(of.drive.electric.is_some()),
        _ => entries(gear, list, leg),
    }
}

/// The names of all legs.
fn names(gear: &Gear) -> Value {
    let names = gear.legs.iter().map(|leg| leg.name.as_str());
    Value::Text(names.collect::<Vec<_>>().join(", "))
}

fn count(entries: usize) -> Value {
    // a list is shorter than 2^32
    Value::Number(f64::from(u32::try_from(entries).unwrap_or(u32::MAX)))
}

/// The other state with its legs in the order of this one, told by their names where there are more or fewer of
/// them; a leg that it does not have stands as it is in this one.
fn aligned<'g>(now: &Gear, before: &'g Gear) -> Cow<'g, Gear> {
    if now.legs.len() == before.legs.len() {
        return Cow::Borrowed(before);
    }
    let legs = now.legs.iter().enumerate();
    let same = |at: usize| before.legs.get(same_leg(now, before, at)?);
    let legs = legs.map(|(at, leg)| same(at).unwrap_or(leg).clone());
    Cow::Owned(Gear {
        legs: legs.collect(),
        ..before.clone()
    })
}

/// The leg of the state before that a leg is held against: the one in its place, or of its name where there are more
/// or fewer legs.
#[must_use]
pub fn leg_before(now: &Gear, before: &Gear, leg: usize) -> Option<usize> {
    if now.legs.len() == before.legs.len() {
        return (leg < now.legs.len()).then_some(leg);
    }
    same_leg(now, before, leg)
}

/// The tire that was fitted to a leg before; `None` where it is the same, or none is known.
#[must_use]
pub fn previous_tire(gear: &Gear, leg: usize) -> Option<&Tire> {
    let before = &gear.kept.get(gear.previous()?)?.gear;
    let at = leg_before(gear, before, leg)?;
    let tire = &before.legs.get(at)?.wheel.tire;
    (*tire != gear.legs.get(leg)?.wheel.tire).then_some(tire)
}

/// The leg of another gear that has the same name; of several, the one that has as many of them before it.
fn same_leg(gear: &Gear, other: &Gear, leg: usize) -> Option<usize> {
    let name = &gear.legs.get(leg)?.name;
    let nth = gear
        .legs
        .iter()
        .take(leg)
        .filter(|before| before.name == *name)
        .count();
    let all = other.legs.iter().enumerate();
    let mut same = all.filter(|(_, leg)| leg.name == *name).map(|(at, _)| at);
    same.nth(nth)
}

/// Whether a path belongs to a list that has more or fewer entries in the other state.
fn is_of_other_length(path: Path, now: &Gear, before: &Gear) -> bool {
    path.field.is_of_entry()
        && entries(now, path.field, path.leg) != entries(before, path.field, path.leg)
}

/// All differences of the present state from one before, leg by leg in the order of the list of fields. What only
/// one of them has, since a choice or a list differs, is told by that choice or list; names and notes of the gear
/// itself are none.
#[must_use]
pub fn changes(now: &Gear, before: &Gear) -> Vec<Change> {
    let mut all = Vec::new();
    if now.legs.len() != before.legs.len() {
        all.push(Change {
            place: Place::Legs,
            before: names(before),
            now: names(now),
        });
    }
    let before = &aligned(now, before);
    for path in paths_of_gear() {
        at_path(path, now, before, &mut all);
    }
    for leg in 0..now.legs.len() {
        for path in paths_of_leg(now, leg) {
            at_path(path, now, before, &mut all);
        }
        let lists = LISTS.iter();
        all.extend(lists.filter_map(|list| list_change(*list, leg, now, before)));
    }
    all
}

/// The differences at a path, of an outline with as many points in both those of its points.
fn at_path(path: Path, now: &Gear, before: &Gear, all: &mut Vec<Change>) {
    // nor is how the place of a knee is told
    let is_told = path.field.info().group != Group::File && path.field != Field::KneeGiven;
    if !is_told || is_of_other_length(path, now, before) {
        return;
    }
    match (path.value(now), path.value(before)) {
        (Some(Value::Points(points)), Some(Value::Points(others)))
            if points.len() == others.len() =>
        {
            for item in 0..points.len() {
                for axis in [Axis::X, Axis::Y] {
                    all.extend(change(path.item(item).axis(axis), now, before));
                }
            }
        }
        _ => all.extend(change(path, now, before)),
    }
}

fn list_change(list: Field, leg: usize, now: &Gear, before: &Gear) -> Option<Change> {
    let (own, was) = (length(now, list, leg), length(before, list, leg));
    // a table that only one of them has belongs to a choice
    let chosen = |gear| Field::Shortening.of_leg(leg).chosen(gear);
    let told = list != Field::RowTravel || chosen(now) == chosen(before);
    (own != was && told).then(|| Change {
        place: Place::List(list.of_leg(leg)),
        before: count(was),
        now: count(own),
    })
}

fn change(path: Path, now: &Gear, before: &Gear) -> Option<Change> {
    let (value, was) = (path.value(now)?, path.value(before)?);
    (value != was).then_some(Change {
        place: Place::Field(path),
        before: was,
        now: value,
    })
}

/// Lets a place of the gear be as it was before; `None` = it has no such place, and nothing changed.
pub fn take_back(place: Place, gear: &mut Gear, before: &Gear) -> Option<()> {
    match place {
        Place::Legs => {
            let legs = before.legs.iter().enumerate();
            let known = |at: usize| gear.legs.get(same_leg(before, gear, at)?);
            let legs = legs.map(|(at, leg)| known(at).unwrap_or(leg).clone());
            gear.legs = legs.collect();
        }
        Place::List(path) => {
            let other = aligned(gear, before);
            let (own, was) = (gear.legs.get_mut(path.leg)?, other.legs.get(path.leg)?);
            match path.field {
                Field::SpringName => was.springs.clone_into(&mut own.springs),
                Field::ObstacleName => was.well.clone_into(&mut own.well),
                Field::FreeSpeed => own.drive.electric = was.drive.electric,
                Field::RowTravel => was.strut.shortening.clone_into(&mut own.strut.shortening),
                _ => return None,
            }
        }
        Place::Field(path) => {
            let other = aligned(gear, before);
            let mut changed = gear.clone();
            path.set(&mut changed, &path.value(&other)?).ok()?;
            if path.field == Field::Shortening {
                // its table comes whole
                let was = &other.legs.get(path.leg)?.strut.shortening;
                was.clone_into(&mut changed.legs.get_mut(path.leg)?.strut.shortening);
            } else if brings_others(path) {
                comes_with(&mut changed, gear, &other);
            }
            *gear = changed;
        }
    }
    Some(())
}

/// Whether other values come with one: with another choice, or with the first number of a part.
fn brings_others(path: Path) -> bool {
    match path.field.info().kind {
        Kind::Choice(_) => true,
        Kind::Number { empty, .. } => empty == Empty::PartAbsent,
        Kind::Point | Kind::Outline | Kind::Text | Kind::Set(_) => false,
    }
}

/// What a choice has brought along is as it was before.
fn comes_with(changed: &mut Gear, without: &Gear, before: &Gear) {
    for path in value_paths(changed) {
        if path.value(without).is_none()
            && let Some(value) = path.value(before)
            && path.value(changed).is_some()
        {
            // a choice within a choice brings its own along, later in the list
            let _ = path.set(changed, &value);
        }
    }
}
