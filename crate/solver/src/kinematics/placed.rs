//! Points fixed to the bodies of a leg.
use super::{Linkage, Pose, quarter};
use crate::model::{Body, Brace, Leg, Point, SpringEnd, Vector};

/// Where a point fixed to a body at gear down is at a pose (m).
#[must_use]
pub fn placed(leg: &Leg, linkage: &Linkage, pose: &Pose, end: &SpringEnd) -> Point {
    let trunnion = linkage.trunnion();
    let with_leg = || trunnion + pose.turn(end.point - trunnion);
    match (end.body, &leg.brace, pose.knee, pose.brace_attach) {
        (Body::Airframe, ..) => end.point,
        (Body::SlidingStrut, ..) => {
            with_leg() + pose.turn(linkage.slide_direction()) * pose.shortening
        }
        (Body::UpperLink, Brace::Folding(b), Some(knee), _) => {
            let pivot = b.airframe_pivot;
            pivot + turned(end.point - pivot, b.knee - pivot, knee - pivot)
        }
        (Body::LowerLink, Brace::Folding(b), Some(knee), Some(attach)) => {
            knee + turned(end.point - b.knee, b.leg_attach - b.knee, attach - knee)
        }
        (Body::Leg | Body::UpperLink | Body::LowerLink, ..) => with_leg(),
    }
}

/// `arm` turned as a bar that was `down` and is now `now`.
fn turned(arm: Vector, down: Vector, now: Vector) -> Vector {
    let square = down.norm_squared();
    let (cos, sin) = (down.dot(&now) / square, down.perp(&now) / square);
    arm * cos + quarter(arm) * sin
}
