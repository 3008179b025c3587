//! Why a clearance could not be certified, as a clause: which part, to what, and where on the way.
use gearswing_gear::model::Leg;
use gearswing_solver::clearance::ClearanceError;
use gearswing_units::{Quantity, UnitChoice, format};

use crate::subject::{obstacle_words, part_name};

/// Why a clearance of `leg` could not be certified.
pub(super) fn unresolved_words(
    error: &ClearanceError,
    leg: Option<&Leg>,
    units: UnitChoice,
) -> String {
    let length = |si: f64| format(Quantity::Length, units, si);
    match *error {
        ClearanceError::NoPath => "the leg has no way to check".to_owned(),
        ClearanceError::Options { .. } => {
            "the accuracy or the stations asked for cannot be worked with".to_owned()
        }
        ClearanceError::NotAssembled { progress, miss } => format!(
            "{} the leg does not come together, by {}",
            at_progress(progress, units),
            length(miss)
        ),
        ClearanceError::NotFollowed { from, to } => {
            format!("the motion cannot be followed {}", between(from, to, units))
        }
        ClearanceError::NothingToCheck { part } => format!(
            "the {} or what it is held against has no outline",
            part_name(part)
        ),
        ClearanceError::OwnUnresolved { part, from, to } => format!(
            "the tire to its own {}, {}",
            part_name(part),
            between(from, to, units)
        ),
        ClearanceError::Unresolved {
            part,
            obstacle,
            from,
            to,
        } => {
            let piece = leg.and_then(|leg| leg.well.get(obstacle));
            format!(
                "the {} to {}, {}",
                part_name(part),
                obstacle_words(piece.map_or("", |piece| &piece.name), obstacle),
                between(from, to, units)
            )
        }
    }
}

/// A place of the way by its progress, which is negative before the swing.
fn at_progress(progress: f64, units: UnitChoice) -> String {
    if progress < 0.0 {
        "before the swing".to_owned()
    } else {
        format!(
            "at {} of the swing",
            format(Quantity::Travel, units, progress)
        )
    }
}

/// A part of the way by its progress; one that is shorter than what is printed is one place.
fn between(from: f64, to: f64, units: UnitChoice) -> String {
    let say = |progress: f64| format(Quantity::Travel, units, progress);
    if to <= 0.0 || (from >= 0.0 && say(from) == say(to)) {
        at_progress(from, units)
    } else if from < 0.0 {
        format!("from before the swing to {} of it", say(to))
    } else {
        format!("between {} and {} of the swing", say(from), say(to))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample::full_gear;
    use gearswing_gear::model::MovingPart;

    fn said(error: ClearanceError) -> String {
        let gear = full_gear();
        unresolved_words(&error, gear.legs.first(), UnitChoice::METRIC)
    }

    #[test]
    fn part_piece_and_place_are_named() {
        let unresolved = |obstacle, from, to| {
            said(ClearanceError::Unresolved {
                part: MovingPart::LowerLink,
                obstacle,
                from,
                to,
            })
        };
        let piece = full_gear().legs[0].well[0].name.clone();
        assert_eq!(
            unresolved(0, 0.25, 0.5),
            format!("the lower brace link to {piece}, between 25.0 % and 50.0 % of the swing")
        );
        assert!(
            unresolved(99, 0.25, 0.25).ends_with("piece 100 of the well, at 25.0 % of the swing")
        );
        assert!(unresolved(0, 0.25, 0.2501).ends_with(", at 25.0 % of the swing"));
        assert!(unresolved(0, -1.0, -0.5).ends_with(", before the swing"));
        assert!(unresolved(0, -1.0, 0.5).ends_with(", from before the swing to 50.0 % of it"));
        let own = said(ClearanceError::OwnUnresolved {
            part: MovingPart::ActuatorRod,
            from: 0.5,
            to: 0.75,
        });
        let place = "between 50.0 % and 75.0 % of the swing";
        assert_eq!(own, format!("the tire to its own actuator rod, {place}"));
    }

    #[test]
    fn the_others_say_what_failed() {
        for (error, words) in [
            (ClearanceError::NoPath, "no way"),
            (
                ClearanceError::Options {
                    accuracy: 1e-3,
                    curve_stride: 4,
                },
                "accuracy or the stations",
            ),
            (
                ClearanceError::NotAssembled {
                    progress: 0.5,
                    miss: 0.01,
                },
                "at 50.0 % of the swing the leg does not come together, by 10.0 mm",
            ),
            (
                ClearanceError::NotFollowed { from: 0.1, to: 0.2 },
                "followed between 10.0 % and 20.0 % of the swing",
            ),
            (
                ClearanceError::NothingToCheck {
                    part: MovingPart::LegBody,
                },
                "the upper leg or what it is held against",
            ),
        ] {
            let said = said(error);
            assert!(said.contains(words), "{said}");
        }
    }
}
