//! What was seen on the jacks, said another way.
use gearswing_gear::model::{HowFar, Leg};
use gearswing_solver::kinematics::Linkage;

/// Stores the distance that belongs to a travel, where a distance is asked for now.
pub(super) fn store_distance(leg: &mut Leg, travel: f64) {
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
