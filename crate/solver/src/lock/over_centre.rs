//! Over-center knee, telescopic brace or no brace at gear down.
use super::{Centre, DownLock, LoadedKnee};
use crate::kinematics::{Linkage, Pose, quarter};
use crate::model::{Brace, FoldingBrace, Folds, Leg, Vector, View};
use crate::result::{AxleLoad, AxleLoadEffect, AxlePush};
use crate::statics::Loads;

/// The down lock of a checked leg. `gravity` is the weight of a kilogram in the leg's plane (N/kg),
/// `wind` the air load of one square meter of drag area at the gear speed (N/m2).
#[must_use]
pub fn lock_of(leg: &Leg, linkage: &Linkage, gravity: Vector, wind: Option<Vector>) -> DownLock {
    match &leg.brace {
        Brace::None => DownLock::NoBrace,
        Brace::Sliding(brace) => {
            let length = (brace.leg_attach - brace.airframe_pivot).norm();
            let gap = (brace.longest - length).min(length - brace.shortest);
            let end_gap = if gap <= 0.0 { 0.0 } else { gap };
            DownLock::SlidingBrace { end_gap }
        }
        Brace::Folding(brace) if brace.folds != Folds::ThroughCentre => {
            DownLock::FoldsOn(centre(brace, -1.0))
        }
        Brace::Folding(brace) => {
            let centre = centre(brace, 1.0);
            let held = linkage.pose(-1.0).ok().map(|pose| Held {
                leg,
                linkage,
                brace,
                // at gear down the strut is extended, whatever shortens it later
                pose: Pose {
                    shortening: 0.0,
                    axle: leg.strut.axle,
                    ..pose
                },
            });
            DownLock::OverCentre {
                centre,
                less_play: held
                    .as_ref()
                    .and(leg.fall.knee_play)
                    .map(|play| centre.offset - play),
                knee: held.and_then(|held| held.loaded(gravity, wind)),
            }
        }
    }
}

/// Where the knee stands at down; `past` is the sign of an offset over center.
fn centre(brace: &FoldingBrace, past: f64) -> Centre {
    let line = brace.leg_attach - brace.airframe_pivot;
    let (upper, lower) = (
        brace.knee - brace.airframe_pivot,
        brace.leg_attach - brace.knee,
    );
    Centre {
        offset: past * (line.perp(&upper) / line.norm()).abs(),
        past: past * upper.perp(&lower).abs().atan2(upper.dot(&lower)),
    }
}

/// An over-center knee on its stop at gear down.
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

    /// What acts on it; `None` where the leg moves without it.
    fn loaded(&self, gravity: Vector, wind: Option<Vector>) -> Option<LoadedKnee> {
        let speed = self.knee_speed()?;
        Some(LoadedKnee {
            ground_load: self.axle_load(speed, Vector::y()),
            axle_loads: self.axle_loads(speed),
            push: self.push(speed, gravity, Vector::zeros()),
            push_at_gear_speed: wind.map(|wind| self.push(speed, gravity, wind)),
        })
    }

    /// Push into the stop for each newton in a direction at the axle.
    fn axle_load(&self, knee_speed: f64, direction: Vector) -> AxleLoadEffect {
        let arm = self.pose.axle - self.linkage.trunnion();
        let speed = (quarter(arm) * self.pose.rates.swing).dot(&direction);
        AxleLoadEffect {
            into_lock: -speed / knee_speed,
        }
    }

    /// Level loads in the plane of the view.
    fn axle_loads(&self, knee_speed: f64) -> Vec<AxleLoad> {
        let named = match self.leg.view {
            View::Side => [
                (AxlePush::DragAft, 1.0),
                (AxlePush::SpringBackForward, -1.0),
            ],
            View::Front => [(AxlePush::SideLeft, 1.0), (AxlePush::SideRight, -1.0)],
        };
        let load = |(direction, sign)| AxleLoad {
            direction,
            effect: self.axle_load(knee_speed, Vector::x() * sign),
        };
        named.map(load).to_vec()
    }

    /// Push at the knee that takes it off its stop against the dead weight and the air (N).
    fn push(&self, knee_speed: f64, gravity: Vector, wind: Vector) -> f64 {
        let loads = Loads::new(self.leg, self.linkage, &self.pose, gravity, wind);
        -loads.power(self.leg, self.linkage, &self.pose) / knee_speed
    }
}
