//! What was seen on the jacks, said another way.
use gearswing_gear::model::{HowFar, Leg};
use gearswing_solver::kinematics::Linkage;

/// Travel that was read, where the reading gives it.
pub(super) fn travel(leg: &Leg) -> Option<f64> {
    let travel = match &leg.seen_stop.as_ref()?.how_far {
        HowFar::Travel { travel, .. } => *travel,
        HowFar::Angle { angle, .. } => angle.map(|angle| angle / leg.swing_up.abs()),
        HowFar::ActuatorPins { .. } | HowFar::AxleFrom { .. } => None,
    };
    travel.filter(|travel| (0.0..=1.0).contains(travel))
}

/// Puts in the distance that belongs to a travel, where a distance is asked for now.
pub(super) fn put_distance(leg: &mut Leg, travel: f64) {
    let linkage = Linkage::new(leg);
    let Ok(pose) = linkage.pose(linkage.progress_at_travel(travel)) else {
        return;
    };
    match leg.seen_stop.as_mut().map(|seen| &mut seen.how_far) {
        Some(HowFar::ActuatorPins { distance, .. }) => *distance = Some(pose.actuator_length),
        Some(HowFar::AxleFrom { from, distance, .. }) => {
            *distance = Some((pose.axle - *from).norm());
        }
        _ => {}
    }
}
