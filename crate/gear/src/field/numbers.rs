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

/// The path of a number, or those of a point's coordinates; none of what is no number.
fn coordinates(path: Path) -> Vec<Path> {
    match path.field.info().kind {
        Kind::Number { .. } => vec![path],
        Kind::Point | Kind::Outline => [Axis::X, Axis::Y].map(|axis| path.axis(axis)).to_vec(),
        Kind::Text | Kind::Choice(_) | Kind::Set(_) => Vec::new(),
    }
}

/// The first fault of a number or of a point's coordinates.
fn first_fault(gear: &Gear, path: Path) -> Option<NumberFault> {
    let range = path.field.info().range()?;
    coordinates(path).into_iter().find_map(|path| {
        let value = path.number(gear)??;
        (!range.holds(value)).then_some(NumberFault {
            path,
            value: range.measure(value),
            range,
        })
    })
}

/// How many times a field stands in the gear, or in that leg of it.
pub(super) fn entries(gear: &Gear, field: Field, leg: usize) -> usize {
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

/// Where a field stands in the gear, or in that leg of it, the points of an outline one by one. Lists and
/// outlines longer than `most` are not gone through.
fn places(gear: &Gear, field: Field, leg: usize, most: usize) -> impl Iterator<Item = Path> {
    let count = entries(gear, field, leg);
    let paths = (0..count).map(move |entry| field.of_entry(leg, entry));
    let paths = paths.take(if count > most { 0 } else { count });
    let is_outline = matches!(field.info().kind, Kind::Outline);
    paths.flat_map(move |path| {
        let points = match is_outline {
            true => path.outline(gear).map_or(0, <[_]>::len),
            false => 1,
        };
        let items = if is_outline && points > most {
            0
        } else {
            points
        };
        (0..items).map(move |item| match is_outline {
            true => path.item(item),
            false => path,
        })
    })
}

/// Where a field stands in that leg, the points of an outline one by one.
pub(super) fn places_of(gear: &Gear, field: Field, leg: usize) -> Vec<Path> {
    places(gear, field, leg, usize::MAX).collect()
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
    let fields = Field::ALL.iter().copied();
    fields
        .filter(|field| field.is_of_leg() == leg.is_some())
        .filter(|field| wanted(*field) && field.info().range().is_some())
        .flat_map(|field| places(gear, field, leg.unwrap_or(0), most))
        .filter_map(|path| first_fault(gear, path))
        .collect()
}

/// The first number that is not finite, in the order of the list: no file has a word for it.
#[must_use]
pub fn not_finite(gear: &Gear) -> Option<Path> {
    let of = |leg: usize, field: Field| {
        let paths = places(gear, field, leg, usize::MAX);
        paths.flat_map(coordinates).find(|path| {
            let value = path.number(gear).flatten();
            value.is_some_and(|value| !value.is_finite())
        })
    };
    let (of_legs, of_gear): (Vec<Field>, Vec<Field>) = Field::ALL
        .iter()
        .copied()
        .partition(|field| field.is_of_leg());
    let in_gear = of_gear.into_iter().find_map(|field| of(0, field));
    in_gear.or_else(|| {
        let mut legs = 0..gear.legs.len();
        legs.find_map(|leg| of_legs.iter().find_map(|field| of(leg, *field)))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::field::info::Mut;

    /// Gears in which every number of a file occurs. By way of a file, for they are of the crate as others use
    /// it, and not as it is tested.
    fn full() -> [Gear; 3] {
        gearswing_samples::full::full_gears()
            .map(|gear| serde_json::from_value(serde_json::to_value(gear).unwrap()).unwrap())
    }

    fn spoil(gear: &mut Gear, path: Path, bad: f64) {
        if let Some(axis) = path.axis {
            let point = path.point().at_mut(gear).unwrap();
            match axis {
                Axis::X => point.x = bad,
                Axis::Y => point.y = bad,
            }
            return;
        }
        match path.write(gear) {
            Some(Mut::Number(place)) => *place = bad,
            Some(Mut::Optional(place)) => *place = Some(bad),
            _ => unreachable!("{path}"),
        }
    }

    #[test]
    fn one_number_that_is_not_finite_is_found_wherever_it_stands() {
        let mut found = 0;
        let mut seen = Vec::new();
        for sound in full() {
            assert_eq!(not_finite(&sound), None);
            let legs = 0..sound.legs.len();
            let paths = Field::ALL.iter().flat_map(|field| {
                let legs = if field.is_of_leg() {
                    legs.clone()
                } else {
                    0..1
                };
                legs.flat_map(|leg| places(&sound, *field, leg, usize::MAX))
            });
            for path in paths.flat_map(coordinates) {
                if path.number(&sound).flatten().is_none() {
                    continue;
                }
                seen.push(path.field);
                for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                    let mut gear = sound.clone();
                    spoil(&mut gear, path, bad);
                    assert_eq!(not_finite(&gear), Some(path), "{path}");
                    found += 1;
                }
            }
        }
        assert!(found > 1_000, "{found}");
        let missed: Vec<_> = Field::ALL
            .iter()
            .filter(|field| {
                matches!(
                    field.info().kind,
                    Kind::Number { .. } | Kind::Point | Kind::Outline
                )
            })
            .filter(|field| !seen.contains(field))
            .collect();
        assert!(missed.is_empty(), "{missed:?}");
    }
}
