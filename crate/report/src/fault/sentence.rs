//! A fault of a model in words: which part, which number, and what would be valid.
use gearswing_gear::model::Gear;
use gearswing_solver::faults::{Fault, FaultKind};
use gearswing_units::{
    NO_VALUE, Quantity, UnitChoice, format_field, format_figures, parse, si_range_text,
};

use super::unresolved::unresolved_words;
use crate::fields::{name, path_words};
use crate::text::capital_first;
use gearswing_gear::field::{Field, Path};

/// One fault as a sentence, as "Right main, actuator rod diameter: 1.2 in; it must be less than
/// 1.1 in, the actuator bore."
#[must_use]
pub fn fault_text(fault: &Fault, gear: &Gear, units: UnitChoice) -> String {
    let what = path_words(&fault.path, gear);
    capital_first(&format!("{what}: {}.", kind_text(fault, gear, units)))
}

fn kind_text(fault: &Fault, gear: &Gear, units: UnitChoice) -> String {
    let quantity = quantity_of(&fault.path);
    let say = |si: f64, apart: &dyn Fn(f64) -> bool| typed(quantity, units, si, apart);
    let length = |si: f64| figures(Some(Quantity::Length), units, si, WORKED_OUT);
    match &fault.kind {
        FaultKind::NotFinite => "this is not a number that can be worked with".to_owned(),
        FaultKind::OutOfRange { value, min, max } => {
            let valid = range(quantity, units, *min, *max);
            let either_way = field_of(&fault.path)
                .and_then(|field| field.info().range())
                .is_some_and(|range| range.either_way);
            let (either, size) = if either_way { (", either way", -1.0) } else { ("", 1.0) };
            let outside = |shown: f64| !(*min..=*max).contains(&shown) && !(*min..=*max).contains(&(size * shown));
            format!("{} is not possible; valid is {valid}{either}", say(*value, &outside))
        }
        FaultKind::NotBelow {
            value,
            other,
            limit,
        } => format!(
            "{} must be less than the {}, which is {}",
            say(*value, &|shown| shown >= *limit),
            other_words(&fault.path, other, gear),
            say(*limit, &|shown| shown <= *value)
        ),
        FaultKind::Coincident {
            other,
            distance,
            least,
        } => format!(
            "it lies {} from the {}; they must be {} apart or more",
            length(*distance),
            other_words(&fault.path, other, gear),
            length(*least)
        ),
        FaultKind::LengthAtDown {
            length: at_down,
            shortest,
            longest,
        } => format!(
            "with the gear down it would be {} long, pin to pin; valid is {} to {}, its end lengths",
            length(*at_down),
            length(*shortest),
            length(*longest)
        ),
        FaultKind::SelfCrossing { edge, other_edge } => format!(
            "the outline crosses itself: edge {edge} and edge {other_edge} (edge 1 goes from point 1 to point 2). Put the points in order round the part"
        ),
        FaultKind::TooFewPoints { count, needed } => {
            format!("it has {}; {needed} are needed", counted(*count, "point"))
        }
        FaultKind::TooMany { count, allowed } => {
            format!("there are {count}; no more than {allowed} can be worked with")
        }
        FaultKind::RepeatedPoint { point } => {
            format!("point {point} lies on its neighbor; remove one of the two")
        }
        FaultKind::NoArea => "the outline encloses no area; give its corners in order".to_owned(),
        FaultKind::NotRising { row } => {
            format!("the travel of row {row} must be more than that of the row before")
        }
        FaultKind::NotReached { reaches } => format!(
            "the leg does not come so far: it comes to {} of travel. See what stops it, or put in less",
            figures(Some(Quantity::Travel), units, *reaches, WORKED_OUT)
        ),
        FaultKind::NoLegs => "there is no leg; a gear needs one at least".to_owned(),
        FaultKind::LengthOnTheWay {
            length: at_worst,
            travel,
            shortest,
            longest,
        } => format!(
            "at {} of travel it would be {} long; valid is {} to {}, its end lengths",
            figures(Some(Quantity::Travel), units, *travel, WORKED_OUT),
            length(*at_worst),
            length(*shortest),
            length(*longest)
        ),
        FaultKind::SameBody => {
            "both ends are fixed to the same part, so the spring can do nothing; fix one end to another part".to_owned()
        }
        FaultKind::NoSuchJoint => {
            "this leg has no such joint; take one that its brace has, or the trunnion".to_owned()
        }
        FaultKind::NeedsFoldingBrace if fault.path.contains(".springs[") => {
            "the spring is to be fixed to a brace link, but this brace does not fold; fix it to another part, or give a folding brace".to_owned()
        }
        FaultKind::NeedsFoldingBrace => {
            "the actuator is to drive a brace link, but this brace does not fold; let it drive the leg, or give a folding brace".to_owned()
        }
        FaultKind::CannotStraighten {
            reach,
            largest_span,
        } => format!(
            "the knee can never come straight: both links together are {}, but brace pivot and brace attach are never more than {} apart. Shorten a link, or say that the knee keeps folding the same way (not over center)",
            length(*reach),
            length(*largest_span)
        ),
        FaultKind::StraightensPastDeadPoint => {
            "on its way to the straight line the knee comes into one line with the trunnion and the brace attach, where the leg could turn either way; move the brace attach or the knee so that this does not happen between locked and straight".to_owned()
        }
        FaultKind::Missing => {
            "the supply is by electric actuators, but this leg has no figures for one".to_owned()
        }
        FaultKind::Unresolved { error } => format!(
            "whether it clears could not be worked out with certainty ({}); do not take it as clear",
            unresolved_words(error, fault.leg.and_then(|leg| gear.legs.get(leg)), units)
        ),
        FaultKind::KneeOnLine => {
            "the knee stands on the straight line between its ends; move it to the side where it rests when locked".to_owned()
        }
    }
}

/// The quantity of a field; `None` for a part.
/// The field that a fault is of; `None` where it is of a part.
fn field_of(path: &str) -> Option<Field> {
    let path: Path = path.parse().ok()?;
    Some(path.field)
}

fn quantity_of(path: &str) -> Option<Quantity> {
    field_of(path)?.info().quantity()
}

/// Figures of a value that a person typed: enough that it does not round into the valid range.
const TYPED: i32 = 6;
/// Figures of a value that was worked out.
const WORKED_OUT: i32 = 4;

/// A value as its field shows it, with its unit; with more figures where what is shown would be no fault.
fn typed(
    quantity: Option<Quantity>,
    units: UnitChoice,
    si: f64,
    is_fault: &dyn Fn(f64) -> bool,
) -> String {
    if let Some(quantity) = quantity
        && si.is_finite()
    {
        let number = format_field(quantity, units, si);
        if parse(quantity, units, &number).is_ok_and(|shown| is_fault(shown.si)) {
            return quantity.unit(units).with_number(&number.replace('-', "−"));
        }
    }
    figures(quantity, units, si, TYPED)
}

/// A value with its unit, to so many figures, no zeros at the end.
fn figures(quantity: Option<Quantity>, units: UnitChoice, si: f64, figures: i32) -> String {
    if !si.is_finite() {
        return NO_VALUE.to_owned();
    }
    let number = |quantity| format_figures(quantity, units, si, figures).replace('-', "−");
    match quantity {
        Some(quantity) => quantity.unit(units).with_number(&number(quantity)),
        None => number(Quantity::Ratio),
    }
}

fn range(quantity: Option<Quantity>, units: UnitChoice, min: f64, max: f64) -> String {
    match quantity {
        Some(quantity) => si_range_text(quantity, units, min, max),
        None => si_range_text(Quantity::Ratio, units, min, max),
    }
}

/// Another field, without the leg's name when it belongs to the same leg.
fn other_words(path: &str, other: &str, gear: &Gear) -> String {
    let leg_of = |path: Path| path.field.is_of_leg().then_some(path.leg);
    match (path.parse::<Path>(), other.parse::<Path>()) {
        (Ok(path), Ok(other)) if leg_of(path) == leg_of(other) => name(other),
        _ => path_words(other, gear),
    }
}

fn counted(count: usize, noun: &str) -> String {
    if count == 1 {
        format!("1 {noun}")
    } else {
        format!("{count} {noun}s")
    }
}
