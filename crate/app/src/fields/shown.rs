//! Numbers as they are shown: those of the file, and a few that stand for them.
use gearswing_gear::field::{Empty, Field, Kind, NotStored, Path, stored, told};
use gearswing_gear::model::{Basis, Gear};
use gearswing_solver::result::{Assumption, TireState};
use gearswing_solver::tires::size_assumptions;
use gearswing_units::Quantity;

use super::access::{number, path};
use super::knee::{keep_links, measure, measure_of, set_measure};
use super::size::{set_size, size, size_of};

/// Ending of the path of a tire's circumference, which stands for its diameter.
const CIRCUMFERENCE: &str = "circumference_m";
const DIAMETER: &str = "diameter_m";

/// Path of the field of the file that a number which is only shown stands for.
pub(crate) fn stands_for(path: &str) -> Option<String> {
    let knee = || measure_of(path).map(|(leg, _)| Field::Knee.of_leg(leg).to_string());
    let size = || size_of(path).map(|leg| Field::Axle.of_leg(leg).to_string());
    diameter_of(path).or_else(knee).or_else(size)
}

/// Path of the diameter for that of the circumference.
fn diameter_of(path: &str) -> Option<String> {
    let stem = path.strip_suffix(CIRCUMFERENCE)?;
    stem.ends_with('.').then(|| format!("{stem}{DIAMETER}"))
}

/// Path of the circumference for that of a tire's diameter.
pub(crate) fn circumference_of(path: &str) -> Option<String> {
    let stem = path.strip_suffix(DIAMETER)?;
    stem.ends_with(".tire.")
        .then(|| format!("{stem}{CIRCUMFERENCE}"))
}

/// What a number at a path measures; `None` for a text, a choice, or no field.
#[must_use]
pub fn quantity(at: &str) -> Option<Quantity> {
    if diameter_of(at).is_some() || measure_of(at).is_some() || size_of(at).is_some() {
        return Some(Quantity::Length);
    }
    let path = path(at)?;
    // a point is two numbers
    let is_number = matches!(path.field.info().kind, Kind::Number { .. }) || path.axis.is_some();
    path.field.info().quantity().filter(|_| is_number)
}

/// The number shown at a path: outer `None` = no such number; inner `None` = left empty.
#[must_use]
pub fn shown(gear: &Gear, path: &str) -> Option<Option<f64>> {
    if let Some((leg, which)) = measure_of(path) {
        return measure(gear, leg, which).map(Some);
    }
    if let Some(leg) = size_of(path) {
        return size(gear, leg).map(Some);
    }
    match diameter_of(path) {
        Some(diameter) => number(gear, &diameter).map(|d| d.map(|d| std::f64::consts::PI * d)),
        None => {
            let at = self::path(path)?;
            let number = at.number(gear)?;
            Some(number.map(|stored| told(gear, at, stored)))
        }
    }
}

/// Stores the number shown at a path.
///
/// # Errors
/// As [`Path::set_number`].
pub fn set_shown(gear: &mut Gear, path: &str, value: Option<f64>) -> Result<(), NotStored> {
    if let Some((leg, which)) = measure_of(path) {
        return set_measure(gear, leg, which, value.ok_or(NotStored::NoValue)?);
    }
    if let Some(leg) = size_of(path) {
        return set_size(gear, leg, value.ok_or(NotStored::NoValue)?);
    }
    if let Some(diameter) = diameter_of(path) {
        return set_shown(gear, &diameter, value.map(|c| c / std::f64::consts::PI));
    }
    let at = self::path(path).ok_or(NotStored::NoValue)?;
    let value = value.map(|told| stored(gear, at, told));
    keep_links(gear, at, |gear| at.set_number(gear, value))?;
    leave_table(gear, at);
    Ok(())
}

/// A tire whose size was typed is no longer one of the table.
fn leave_table(gear: &mut Gear, at: Path) {
    let wheel = gear.legs.get_mut(at.leg).map(|leg| &mut leg.wheel);
    let tire = match at.field {
        Field::TireDiameter | Field::TireWidth => wheel.map(|wheel| &mut wheel.tire),
        _ => None,
    };
    if let Some(tire) = tire
        && tire.basis == Basis::Table
        && size_assumptions(tire, TireState::New) == [Assumption::TireUnstated]
    {
        tire.basis = Basis::Unstated;
    }
}

/// What an empty field stands for: outer `None` = it must be filled; inner `None` = the gear has no
/// figure then.
#[must_use]
pub fn when_empty(at: &str) -> Option<Option<f64>> {
    match path(at)?.field.info().kind {
        Kind::Number { empty, .. } => match empty {
            Empty::Never => None,
            Empty::Is(value) => Some(Some(value)),
            Empty::Absent | Empty::PartAbsent => Some(None),
        },
        Kind::Point | Kind::Outline | Kind::Text | Kind::Choice(_) | Kind::Set(_) => None,
    }
}
