//! Numbers that are not finite or out of their ranges: what is told of a field is what is enforced.
use super::info::{Access, Kind};
use super::place::rows;
use super::{Axis, Field, Path, Range};
use crate::model::Gear;

/// A number that cannot be used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NumberFault {
    /// Where it stands.
    pub path: Path,
    /// The number, as it is held against its range.
    pub value: f64,
    /// What it may be.
    pub range: Range,
}

/// The first fault of a number or of a point's coordinates.
fn first_fault(gear: &Gear, path: Path) -> Option<NumberFault> {
    let range = path.field.info().range()?;
    let one = |path: Path| {
        let value = path.number(gear)??;
        (!range.holds(value)).then_some(NumberFault {
            path,
            value: range.measure(value),
            range,
        })
    };
    match path.field.info().kind {
        Kind::Number { .. } => one(path),
        Kind::Point | Kind::Outline => {
            let axes = [Axis::X, Axis::Y].into_iter();
            axes.map(|axis| path.axis(axis)).find_map(one)
        }
        Kind::Text | Kind::Choice(_) | Kind::Set(_) => None,
    }
}

/// How many times a field stands in the gear, or in that leg of it.
fn entries(gear: &Gear, field: Field, leg: usize) -> usize {
    let access = &field.info().access;
    if let Access::Gear(_) = access {
        return 1;
    }
    let Some(leg) = gear.legs.get(leg) else {
        return 0;
    };
    match access {
        Access::Gear(_) | Access::Leg(_) => 1,
        Access::Spring(_) => leg.springs.len(),
        Access::Obstacle(_) => leg.well.len(),
        Access::Row(_) => rows(leg).len(),
    }
}

/// Every number of the wanted fields, of the gear itself (`leg` = `None`) or of one leg, that cannot be
/// used, in the order of the list. Lists and outlines longer than `most` are not gone through.
#[must_use]
pub fn number_faults(
    gear: &Gear,
    leg: Option<usize>,
    most: usize,
    wanted: impl Fn(Field) -> bool,
) -> Vec<NumberFault> {
    let mut faults = Vec::new();
    let fields = Field::ALL.iter().copied();
    for field in fields.filter(|field| field.is_of_leg() == leg.is_some()) {
        let info = field.info();
        if !wanted(field) || info.range().is_none() {
            continue;
        }
        let leg = leg.unwrap_or(0);
        let count = entries(gear, field, leg);
        if count > most {
            continue;
        }
        for entry in 0..count {
            let path = field.of_entry(leg, entry);
            if matches!(info.kind, Kind::Outline) {
                let points = path.outline(gear).map_or(0, <[_]>::len);
                let items = if points > most { 0 } else { points };
                faults.extend((0..items).filter_map(|item| first_fault(gear, path.item(item))));
            } else {
                faults.extend(first_fault(gear, path));
            }
        }
    }
    faults
}
