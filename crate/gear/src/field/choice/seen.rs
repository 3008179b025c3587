//! What was seen on the jacks: noting how far a leg came makes room for the readings.
use crate::model::{Direction, HowFar, Leg, PumpSeen, SeenStop, Vector};

keys! {
    selected, Direction: Direction::Up => "up", Direction::Down => "down";
    pump, PumpSeen: PumpSeen::NotNoticed => "not_noticed", PumpSeen::Running => "running",
        PumpSeen::Stopped => "stopped";
}

/// How far the leg was said to come.
pub(super) fn chosen(leg: &Leg) -> &'static str {
    match leg.seen_stop.as_ref().map(|seen| &seen.how_far) {
        None => "none",
        Some(HowFar::Travel { .. }) => "travel",
        Some(HowFar::Angle { .. }) => "angle",
        Some(HowFar::ActuatorPins { .. }) => "actuator_pins",
        Some(HowFar::AxleFrom { .. }) => "axle_from",
    }
}

/// Says it another way, or not at all; `None` = there is no such one.
pub(super) fn choose(leg: &mut Leg, option: &str) -> Option<()> {
    if option == "none" {
        leg.seen_stop = None;
        return Some(());
    }
    let how_far = first(leg, option)?;
    match &mut leg.seen_stop {
        Some(seen) => seen.how_far = how_far,
        empty => *empty = Some(SeenStop::at(how_far)),
    }
    Some(())
}

/// A new way to say how far: the same place between travel and angle, nothing read otherwise.
fn first(leg: &Leg, option: &str) -> Option<HowFar> {
    let swing = leg.swing_up.abs();
    let seen = leg.seen_stop.as_ref();
    let travel = seen.and_then(|seen| seen.travel(swing));
    Some(match option {
        "travel" => HowFar::Travel {
            travel,
            within: 0.02,
        },
        "angle" => HowFar::Angle {
            angle: travel.map(|travel| travel * swing),
            within: 0.02,
        },
        "actuator_pins" => HowFar::ActuatorPins {
            distance: None,
            within: 0.003,
        },
        "axle_from" => HowFar::AxleFrom {
            from: leg.trunnion + Vector::new(0.5, 0.0),
            distance: None,
            within: 0.003,
        },
        _ => return None,
    })
}
