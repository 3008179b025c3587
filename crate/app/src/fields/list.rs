//! Entries of lists by path: points of outlines, rows of tables, obstacles, legs, the previous tire.
use gearswing_gear::field::{first_spring, mirror_leg};
use gearswing_gear::model::{Gear, Obstacle, Point, Shape, Shortening, ShorteningRow, Vector};
use gearswing_report::page::names::{NEW_PIECE, NEW_SPRING, SIDES};

use super::access::points_mut;
use super::path::{Seg::At, Seg::Key, entry, steps};

/// Where a new piece of structure goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Middle (m).
    pub middle: Point,
    /// Half of its side (m).
    pub half: f64,
}

/// Number of entries of a list; `None` when there is no list at that path.
#[must_use]
pub fn len(gear: &Gear, path: &str) -> Option<usize> {
    if let Some(points) = super::access::points(gear, path) {
        return Some(points.len());
    }
    match steps(path)?.as_slice() {
        [Key("legs")] => Some(gear.legs.len()),
        [Key("legs"), At(leg), Key("well")] => Some(gear.legs.get(*leg)?.well.len()),
        [Key("legs"), At(leg), Key("springs")] => Some(gear.legs.get(*leg)?.springs.len()),
        [
            Key("legs"),
            At(leg),
            Key("strut"),
            Key("shortening"),
            Key("with_travel"),
            Key("table"),
        ] => match &gear.legs.get(*leg)?.strut.shortening {
            Shortening::WithTravel { table } => Some(table.len()),
            _ => None,
        },
        _ => None,
    }
}

/// Adds an entry behind the one at `path`, or at the end of the list at `path`; gives its path.
pub fn add(gear: &mut Gear, path: &str, room: Room) -> Option<String> {
    let (list, behind) = match len(gear, path) {
        Some(count) => (path, count.checked_sub(1)),
        None => {
            let (list, at) = entry(path)?;
            (at < len(gear, list)?).then_some((list, Some(at)))?
        }
    };
    let mut at = behind.map_or(0, |at| at + 1);
    if let Some(points) = points_mut(gear, list) {
        let point = match (
            behind.and_then(|i| points.get(i)),
            points.get(at).or(points.first()),
        ) {
            (Some(a), Some(b)) if a != b => a + (b - a) * 0.5,
            (Some(a), _) => a + Vector::new(room.half, 0.0),
            (None, _) => room.middle,
        };
        points.insert(at, point);
    } else {
        match steps(list)?.as_slice() {
            [Key("legs")] => {
                let mut leg = gear.legs.get(behind?)?.clone();
                leg.name = free_name(&leg.name, gear.legs.iter().map(|leg| leg.name.as_str()));
                gear.legs.insert(at, leg);
            }
            [Key("legs"), At(leg), Key("well")] => {
                let well = &mut gear.legs.get_mut(*leg)?.well;
                let name = free_name(NEW_PIECE, well.iter().map(|o| o.name.as_str()));
                let corner = |x: f64, y: f64| room.middle + Vector::new(x, y) * room.half;
                let points = vec![
                    corner(-1.0, -1.0),
                    corner(1.0, -1.0),
                    corner(1.0, 1.0),
                    corner(-1.0, 1.0),
                ];
                well.insert(
                    at,
                    Obstacle {
                        name,
                        shape: Shape::Solid { points },
                        required_clearance: None,
                        ignores: Vec::new(),
                    },
                );
            }
            [Key("legs"), At(leg), Key("springs")] => {
                let leg = gear.legs.get_mut(*leg)?;
                let name = free_name(NEW_SPRING, leg.springs.iter().map(|s| s.name.as_str()));
                let spring = first_spring(leg, name);
                leg.springs.insert(at, spring);
            }
            [Key("legs"), At(leg), Key("strut"), ..] => {
                let Shortening::WithTravel { table } =
                    &mut gear.legs.get_mut(*leg)?.strut.shortening
                else {
                    return None;
                };
                at = new_row_at(table, behind);
                let row = new_row(table, at);
                table.insert(at, row);
            }
            _ => return None,
        }
    }
    follow(gear, list, at, false);
    Some(format!("{list}[{at}]"))
}

/// Where more than an entry has come or gone: notes go with their leg, told by its name, and from a list of another
/// length to the leg; one whose leg is gone hangs on the gear.
pub(crate) fn keep_notes(before: &Gear, gear: &mut Gear) {
    let mut notes = std::mem::take(&mut gear.notes);
    for note in &mut notes {
        let Some(leg) = super::path::leg_of(&note.on) else {
            continue;
        };
        let name = before.legs.get(leg).map(|leg| leg.name.as_str());
        let same_name = || {
            let mut legs = gear.legs.iter();
            legs.position(|other| Some(other.name.as_str()) == name)
        };
        let now = if before.legs.len() == gear.legs.len() {
            Some(leg)
        } else {
            same_name()
        };
        let rest = note.on.split_once(']').map_or("", |(_, rest)| rest);
        note.on = match now {
            None => String::new(),
            Some(now) if is_as_long(before, leg, gear, now, rest) => format!("legs[{now}]{rest}"),
            Some(now) => format!("legs[{now}]"),
        };
        if now.is_none() {
            note.progress = None;
        }
    }
    gear.notes = notes;
}

/// Whether every list on the way to what stands at `rest` of a leg is as long before and now.
fn is_as_long(before: &Gear, leg: usize, gear: &Gear, now: usize, rest: &str) -> bool {
    let mut lists = rest.match_indices('[').map(|(end, _)| &rest[..end]);
    lists.all(|list| {
        len(before, &format!("legs[{leg}]{list}")) == len(gear, &format!("legs[{now}]{list}"))
    })
}

/// Notes stay on the entries on which they hang.
fn follow(gear: &mut Gear, list: &str, at: usize, gone: bool) {
    for note in &mut gear.notes {
        note.follow(list, at, gone);
    }
}

/// Adds the image of a leg in a mirror behind it; gives its path. What is "left" in its name is "right" then.
pub fn add_mirror_image(gear: &mut Gear, leg: usize) -> Option<String> {
    let mut image = gear.legs.get(leg)?.clone();
    let name = other_side(&image.name);
    image.name = free_name(&name, gear.legs.iter().map(|leg| leg.name.as_str()));
    let at = leg + 1;
    gear.legs.insert(at, image);
    follow(gear, "legs", at, false);
    mirror_leg(gear, at);
    Some(format!("legs[{at}]"))
}

/// A name with its sides exchanged.
fn other_side(name: &str) -> String {
    for (a, b) in SIDES.into_iter().flat_map(|(a, b)| [(a, b), (b, a)]) {
        if name.contains(a) {
            return name.replace(a, b);
        }
    }
    name.to_owned()
}

/// Where a row of the shortening table goes: behind the one asked for, but before a last one at up, for
/// there is no travel beyond it.
fn new_row_at(table: &[ShorteningRow], behind: Option<usize>) -> usize {
    let at = behind.map_or(0, |at| at + 1);
    match table.last() {
        Some(last) if at == table.len() && last.travel >= 1.0 => at - 1,
        _ => at,
    }
}

/// A row half-way between its neighbors; at up behind the last one, at gear down before the first.
fn new_row(table: &[ShorteningRow], at: usize) -> ShorteningRow {
    let before = at.checked_sub(1).and_then(|at| table.get(at));
    match (before, table.get(at)) {
        (Some(a), Some(b)) => ShorteningRow {
            travel: (a.travel + b.travel) / 2.0,
            amount: (a.amount + b.amount) / 2.0,
        },
        (Some(a), None) => ShorteningRow {
            travel: 1.0,
            amount: a.amount,
        },
        (None, _) => ShorteningRow {
            travel: 0.0,
            amount: 0.0,
        },
    }
}

/// Takes an entry out of its list; `None` = there is no such entry, or it is the last leg: nothing changed.
pub fn remove(gear: &mut Gear, path: &str) -> Option<()> {
    let (list, at) = entry(path)?;
    if at >= len(gear, list)? {
        return None;
    }
    take_out(gear, list, at)?;
    follow(gear, list, at, true);
    Some(())
}

fn take_out(gear: &mut Gear, list: &str, at: usize) -> Option<()> {
    if let Some(points) = points_mut(gear, list) {
        points.remove(at);
        return Some(());
    }
    match steps(list)?.as_slice() {
        [Key("legs")] if gear.legs.len() > 1 => {
            gear.legs.remove(at);
        }
        [Key("legs"), At(leg), Key("well")] => {
            gear.legs.get_mut(*leg)?.well.remove(at);
        }
        [Key("legs"), At(leg), Key("springs")] => {
            gear.legs.get_mut(*leg)?.springs.remove(at);
        }
        [Key("legs"), At(leg), Key("strut"), ..] => {
            let Shortening::WithTravel { table } = &mut gear.legs.get_mut(*leg)?.strut.shortening
            else {
                return None;
            };
            table.remove(at);
        }
        _ => return None,
    }
    Some(())
}

/// `name` with the lowest number behind it that makes it differ from all others.
pub(crate) fn free_name<'n>(name: &str, others: impl Iterator<Item = &'n str>) -> String {
    let others: Vec<&str> = others.collect();
    if !others.contains(&name) {
        return name.to_owned();
    }
    let stem = match name.rsplit_once(' ') {
        Some((stem, number)) if number.parse::<u32>().is_ok() => stem,
        _ => name,
    };
    // one more try than there are names: one of them is free
    (2..=others.len() + 2)
        .map(|number| format!("{stem} {number}"))
        .find(|name| !others.contains(&name.as_str()))
        .unwrap_or_else(|| name.to_owned())
}
