//! What was seen on the jacks, by path; noting how far a leg came makes room for the readings.
use gearswing_gear::model::{Direction, HowFar, Leg, Point, PumpSeen, SeenStop, Vector};
use gearswing_solver::kinematics::Linkage;

use super::path::{Seg, Seg::Key};
use super::slot::{PlaceMut, PlaceRef, in_point, in_point_mut};

macro_rules! places {
    ($place:ident, $seen:ident, $coordinate:ident, $($m:tt)?) => {
        /// Follows a path within what was seen.
        pub(super) fn $seen<'g>(s: &'g $($m)? SeenStop, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            use $place::{Number, Optional};
            Some(match rest {
                [Key("how_far"), Key(kind), rest @ ..] => {
                    match (&$($m)? s.how_far, *kind, rest) {
                        (HowFar::Travel { travel, .. }, "travel", [Key("travel")]) => Optional(travel),
                        (HowFar::Travel { within, .. }, "travel", [Key("travel_within")])
                        | (HowFar::Angle { within, .. }, "angle", [Key("angle_within_rad")])
                        | (
                            HowFar::ActuatorPins { within, .. },
                            "actuator_pins",
                            [Key("pins_within_m")],
                        )
                        | (HowFar::AxleFrom { within, .. }, "axle_from", [Key("axle_within_m")]) => {
                            Number(within)
                        }
                        (HowFar::Angle { angle, .. }, "angle", [Key("angle_rad")]) => Optional(angle),
                        (
                            HowFar::ActuatorPins { distance, .. },
                            "actuator_pins",
                            [Key("pins_apart_m")],
                        )
                        | (HowFar::AxleFrom { distance, .. }, "axle_from", [Key("axle_apart_m")]) => {
                            Optional(distance)
                        }
                        (HowFar::AxleFrom { from, .. }, "axle_from", [Key("from_m"), rest @ ..]) => {
                            return $coordinate(from, rest);
                        }
                        _ => return None,
                    }
                }
                [Key("gauge_pa")] => Optional(&$($m)? s.pressure),
                [Key("gauge_within_pa")] => Number(&$($m)? s.pressure_within),
                [Key("posts_v")] => Optional(&$($m)? s.voltage),
                [Key("posts_within_v")] => Number(&$($m)? s.voltage_within),
                [Key("drawing_within_m")] => Number(&$($m)? s.drawing_within),
                [Key("forces_within")] => Number(&$($m)? s.forces_within),
                _ => return None,
            })
        }
    };
}

places!(PlaceRef, in_seen, in_point,);
places!(PlaceMut, in_seen_mut, in_point_mut, mut);

/// Option taken at a path behind "seen_stop".
pub(super) fn chosen(leg: &Leg, rest: &[Seg<'_>]) -> Option<&'static str> {
    let seen = leg.seen_stop.as_ref();
    Some(match rest {
        [] => match seen.map(|seen| &seen.how_far) {
            None => "none",
            Some(HowFar::Travel { .. }) => "travel",
            Some(HowFar::Angle { .. }) => "angle",
            Some(HowFar::ActuatorPins { .. }) => "actuator_pins",
            Some(HowFar::AxleFrom { .. }) => "axle_from",
        },
        [Key("selected")] => match seen?.selected {
            Direction::Up => "up",
            Direction::Down => "down",
        },
        [Key("pump")] => match seen?.pump {
            PumpSeen::NotNoticed => "not_noticed",
            PumpSeen::Running => "running",
            PumpSeen::Stopped => "stopped",
        },
        _ => return None,
    })
}

/// Takes an option; `None` = there is no such one.
pub(super) fn choose(leg: &mut Leg, rest: &[Seg<'_>], option: &str) -> Option<()> {
    match rest {
        [] if option == "none" => leg.seen_stop = None,
        [] => {
            let how_far = first(leg, option)?;
            match &mut leg.seen_stop {
                Some(seen) => seen.how_far = how_far,
                empty => *empty = Some(SeenStop::at(how_far)),
            }
        }
        [Key("selected")] => {
            leg.seen_stop.as_mut()?.selected = match option {
                "up" => Direction::Up,
                "down" => Direction::Down,
                _ => return None,
            }
        }
        [Key("pump")] => {
            leg.seen_stop.as_mut()?.pump = match option {
                "not_noticed" => PumpSeen::NotNoticed,
                "running" => PumpSeen::Running,
                "stopped" => PumpSeen::Stopped,
                _ => return None,
            }
        }
        _ => return None,
    }
    Some(())
}

/// A new way to say how far: the same place where one was entered, nothing otherwise.
fn first(leg: &Leg, option: &str) -> Option<HowFar> {
    let linkage = Linkage::new(leg);
    let travel = match leg.seen_stop.as_ref().map(|seen| &seen.how_far) {
        Some(HowFar::Travel { travel, .. }) => *travel,
        Some(HowFar::Angle { angle, .. }) => angle.map(|angle| angle / leg.swing_up.abs()),
        _ => None,
    };
    let travel = travel.filter(|travel| (0.0..=1.0).contains(travel));
    let pose = travel.and_then(|travel| linkage.pose(linkage.progress_at_travel(travel)).ok());
    let from: Point = leg.trunnion + Vector::new(0.5, 0.0);
    Some(match option {
        "travel" => HowFar::Travel {
            travel,
            within: 0.02,
        },
        "angle" => HowFar::Angle {
            angle: travel.map(|travel| travel * leg.swing_up.abs()),
            within: 0.02,
        },
        "actuator_pins" => HowFar::ActuatorPins {
            distance: pose.map(|pose| pose.actuator_length),
            within: 0.003,
        },
        "axle_from" => HowFar::AxleFrom {
            from,
            distance: pose.map(|pose| (pose.axle - from).norm()),
            within: 0.003,
        },
        _ => return None,
    })
}
