//! Numbers as they are shown: those of the file, and a few that stand for them.
use gearswing_gear::model::{DEFAULT_INTERNAL_RESISTANCE, Fluid, Gear};
use gearswing_units::Quantity;

use super::access::{AccessError, number, set_number};
use super::path::{Seg::At, Seg::Key, steps};

/// Ending of the path of a tire's circumference, which stands for its diameter.
pub(crate) const CIRCUMFERENCE: &str = "circumference_m";
const DIAMETER: &str = "diameter_m";

/// Path of the diameter for that of the circumference.
pub(crate) fn diameter_of(path: &str) -> Option<String> {
    let stem = path.strip_suffix(CIRCUMFERENCE)?;
    stem.ends_with('.').then(|| format!("{stem}{DIAMETER}"))
}

/// Path of the circumference for that of a tire's diameter.
pub(crate) fn circumference_of(path: &str) -> Option<String> {
    let stem = path.strip_suffix(DIAMETER)?;
    let of_tire = stem.ends_with(".tire.") || stem.ends_with(".former.");
    of_tire.then(|| format!("{stem}{CIRCUMFERENCE}"))
}

/// Whether a field is asked of this gear: a leg on the drive of another has no bore, rod and ends of its
/// own, and one that drives itself alone no ratio.
pub(crate) fn is_asked(gear: &Gear, path: &str) -> bool {
    let own = ["bore_m", "rod_m", "shortest_m", "longest_m"];
    match steps(path).as_deref() {
        Some([Key("legs"), At(leg), Key("actuator"), Key(key)]) if own.contains(key) => {
            gear.driving_leg(*leg) == *leg
        }
        Some([Key("legs"), At(leg), Key("drive_ratio")]) => !gear.drives_alone(*leg),
        _ => true,
    }
}

/// What a number at a path measures; `None` for a text, a choice, or no field.
#[must_use]
pub fn quantity(path: &str) -> Option<Quantity> {
    if diameter_of(path).is_some() {
        return Some(Quantity::Length);
    }
    let field = gearswing_report::fields::field(path)?;
    let quantity = field.quantity()?;
    // a point is two numbers
    let is_point = field.words.kind == gearswing_report::fields::FieldKind::Point;
    (!is_point || field.axis.is_some()).then_some(quantity)
}

/// The number shown at a path: outer `None` = no such number; inner `None` = left empty.
#[must_use]
pub fn shown(gear: &Gear, path: &str) -> Option<Option<f64>> {
    match diameter_of(path) {
        Some(diameter) => number(gear, &diameter).map(|d| d.map(|d| std::f64::consts::PI * d)),
        None => number(gear, path),
    }
}

/// Stores the number shown at a path.
///
/// # Errors
/// As [`set_number`].
pub fn set_shown(gear: &mut Gear, path: &str, value: Option<f64>) -> Result<(), AccessError> {
    match diameter_of(path) {
        Some(diameter) => set_number(gear, &diameter, value.map(|c| c / std::f64::consts::PI)),
        None => set_number(gear, path, value),
    }
}

/// What an empty field stands for: outer `None` = it must be filled; inner `None` = the gear has no
/// figure then.
#[must_use]
pub fn when_empty(gear: &Gear, path: &str) -> Option<Option<f64>> {
    let field = gearswing_report::fields::field(path)?;
    field.words.if_empty?;
    if super::supply::part_number(gear, path).is_some() {
        return Some(None);
    }
    match super::slot::find(gear, path)? {
        super::slot::PlaceRef::Optional(_) => Some(None),
        // the gear file's own defaults
        super::slot::PlaceRef::Number(_) if path == "supply.battery.charge" => Some(Some(1.0)),
        super::slot::PlaceRef::Number(_) if path == "supply.battery.internal_ohm" => {
            Some(Some(DEFAULT_INTERNAL_RESISTANCE))
        }
        super::slot::PlaceRef::Number(_) if path == "fluid.density_kg_m3" => {
            Some(Some(Fluid::default().density))
        }
        super::slot::PlaceRef::Number(_) if path == "supply.accumulator.exponent" => {
            Some(Some(1.4))
        }
        super::slot::PlaceRef::Number(_) if path.ends_with(".discharge") => Some(Some(0.62)),
        super::slot::PlaceRef::Number(_)
            if path.ends_with(".shortened_at")
                || path.ends_with(".up_at_travel")
                || path.ends_with(".drive_ratio") =>
        {
            Some(Some(1.0))
        }
        super::slot::PlaceRef::Number(_) if field.axis.is_none() => Some(Some(0.0)),
        _ => None,
    }
}
