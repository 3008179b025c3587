//! Over-centre knee, telescopic brace or no brace at gear down.
use crate::kinematics::{Linkage, Pose, quarter};
use crate::model::{Brace, FoldingBrace, Folds, Leg, Vector, View};
use crate::result::{AxleLoad, AxleLoadEffect, AxlePush, Lock, LockKind};
use crate::statics::Loads;

/// The down lock of a checked leg. `gravity` is the weight of a kilogram in the leg's plane (N/kg),
/// `wind` the air load of one square metre of drag area at the gear speed (N/m2).
#[must_use]
pub fn lock_of(leg: &Leg, linkage: &Linkage, gravity: Vector, wind: Option<Vector>) -> Lock {
    let mut lock = Lock {
        kind: LockKind::NoBrace,
        over_centre: None,
        past_centre: None,
        over_centre_less_play: None,
        axle_loads: Vec::new(),
        ground_load: None,
        knee_push: None,
        knee_push_at_gear_speed: None,
        end_gap: None,
    };
    match &leg.brace {
        Brace::None => {}
        Brace::Sliding(brace) => {
            let length = (brace.leg_attach - brace.airframe_pivot).norm();
            lock.kind = LockKind::SlidingBrace;
            lock.end_gap = Some(
                (brace.longest - length)
                    .min(length - brace.shortest)
                    .max(0.0),
            );
        }
        Brace::Folding(brace) => {
            let past = if brace.folds == Folds::ThroughCentre {
                1.0
            } else {
                -1.0
            };
            lock.kind = if past > 0.0 {
                LockKind::OverCentre
            } else {
                LockKind::FoldsOn
            };
            let line = brace.leg_attach - brace.airframe_pivot;
            let (upper, lower) = (
                brace.knee - brace.airframe_pivot,
                brace.leg_attach - brace.knee,
            );
            lock.over_centre = Some(past * (line.perp(&upper) / line.norm()).abs());
            lock.past_centre = Some(past * upper.perp(&lower).abs().atan2(upper.dot(&lower)));
            if lock.kind == LockKind::OverCentre
                && let Ok(pose) = linkage.pose(-1.0)
            {
                // at gear down the strut is extended, whatever shortens it later
                let pose = Pose {
                    shortening: 0.0,
                    axle: leg.strut.axle,
                    ..pose
                };
                let held = Held {
                    leg,
                    linkage,
                    brace,
                    pose,
                };
                lock.over_centre_less_play = lock
                    .over_centre
                    .zip(leg.fall.knee_play)
                    .map(|(offset, play)| offset - play);
                lock.axle_loads = held.axle_loads();
                lock.ground_load = held.axle_load(Vector::y());
                lock.knee_push = held.knee_push(gravity, Vector::zeros());
                lock.knee_push_at_gear_speed = wind.and_then(|wind| held.knee_push(gravity, wind));
            }
        }
    }
    lock
}

/// An over-centre knee on its stop at gear down.
struct Held<'a> {
    leg: &'a Leg,
    linkage: &'a Linkage,
    brace: &'a FoldingBrace,
    pose: Pose,
}

impl Held<'_> {
    /// Speed of the knee square to the line B0–B1, positive in the unlocking direction, at the pose's
    /// rates. Negative where the swing asked for is one in which the brace cannot fold.
    fn knee_speed(&self) -> Option<f64> {
        let line = self.brace.leg_attach - self.brace.airframe_pivot;
        let arm = self.brace.knee - self.brace.airframe_pivot;
        let to_line = quarter(line) * (-line.perp(&arm).signum() / line.norm());
        let speed = (quarter(arm) * self.pose.rates.upper).dot(&to_line);
        (speed != 0.0).then_some(speed)
    }

    /// Push into the stop for each newton in a direction at the axle.
    fn axle_load(&self, direction: Vector) -> Option<AxleLoadEffect> {
        let arm = self.pose.axle - self.linkage.trunnion();
        let speed = (quarter(arm) * self.pose.rates.swing).dot(&direction);
        Some(AxleLoadEffect {
            into_lock: -speed / self.knee_speed()?,
        })
    }

    /// Level loads in the plane of the view.
    fn axle_loads(&self) -> Vec<AxleLoad> {
        let named = match self.leg.view {
            View::Side => [
                (AxlePush::DragAft, 1.0),
                (AxlePush::SpringBackForward, -1.0),
            ],
            View::Front => [(AxlePush::SideLeft, 1.0), (AxlePush::SideRight, -1.0)],
        };
        named
            .into_iter()
            .filter_map(|(direction, sign)| {
                let effect = self.axle_load(Vector::x() * sign)?;
                Some(AxleLoad { direction, effect })
            })
            .collect()
    }

    /// Push at the knee that takes it off its stop against the dead weight and the air (N).
    fn knee_push(&self, gravity: Vector, wind: Vector) -> Option<f64> {
        let loads = Loads::new(self.leg, self.linkage, &self.pose, gravity, wind);
        Some(-loads.power(self.leg, self.linkage, &self.pose) / self.knee_speed()?)
    }
}
