//! One pose of a leg and its rates.
use crate::model::{Point, Vector};
use crate::result::{Phase, Place};

use super::linkage::{AttachLinkage, BraceLinkage, FoldingLinkage, Linkage, Miss, Unlock};
use super::{circle_circle, path::swing_fraction};

/// Where everything is at one place of the path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Where on the path.
    pub place: Place,
    /// Cosine of the swing (ratio).
    pub cos: f64,
    /// Sine of the swing (ratio).
    pub sin: f64,
    /// Shortening of the strut (m).
    pub shortening: f64,
    /// Axle W (m).
    pub axle: Point,
    /// Knee K of a folding brace (m).
    pub knee: Option<Point>,
    /// Brace attach B1 on the leg (m).
    pub brace_attach: Option<Point>,
    /// Actuator attach A1 (m).
    pub actuator_attach: Point,
    /// Actuator length pin to pin (m).
    pub actuator_length: f64,
    /// Rates along the path, toward up.
    pub rates: Rates,
}

impl Pose {
    /// Turns a vector fixed in the leg at gear down into this pose.
    #[must_use]
    pub fn turn(&self, local: Vector) -> Vector {
        Vector::new(
            self.cos * local.x - self.sin * local.y,
            self.sin * local.x + self.cos * local.y,
        )
    }

    /// Turns a vector of this pose back to gear down.
    #[must_use]
    pub fn turn_back(&self, vector: Vector) -> Vector {
        Vector::new(
            self.cos * vector.x + self.sin * vector.y,
            self.cos * vector.y - self.sin * vector.x,
        )
    }

    /// dℓ/dφ (m/rad); `None` where the leg stands still while the knee moves.
    #[must_use]
    pub fn moment_arm(&self) -> Option<f64> {
        (self.rates.swing.abs() > Rates::STILL).then(|| self.rates.actuator / self.rates.swing)
    }
}

/// Velocities of one pose per unit of a common, unnamed parameter that rises toward up.
///
/// They stay finite at every toggle: only their ratios mean anything, as dℓ/dφ =
/// `actuator / swing`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rates {
    /// Leg about the trunnion, dφ (rad).
    pub swing: f64,
    /// Upper link about B0 (rad).
    pub upper: f64,
    /// Lower link (rad).
    pub lower: f64,
    /// Shortening of the strut, dc (m).
    pub slide: f64,
    /// Actuator length, dℓ (m).
    pub actuator: f64,
}

impl Rates {
    /// A leg that turns by less than this stands still (rad); the largest rate of a pose is about 1.
    pub const STILL: f64 = 1e-9;
}

/// A vector turned left by a quarter turn: the velocity of its tip at unit rate.
pub(crate) fn quarter(v: Vector) -> Vector {
    Vector::new(-v.y, v.x)
}

impl Linkage {
    /// The pose at `progress` (clamped to the path).
    ///
    /// # Errors
    /// [`Miss`] where the brace cannot be assembled.
    pub fn pose(&self, progress: f64) -> Result<Pose, Miss> {
        let progress = progress.clamp(self.path.start(), self.path.end());
        let (phase, fraction) = self.path.phase_at(progress);
        match phase {
            Phase::Shorten => {
                let amount = self.shortening_at(0.0).0;
                let mut pose = self.assemble(phase, progress, 0.0, Some(0.0), amount * fraction)?;
                pose.rates = Rates {
                    swing: 0.0,
                    upper: 0.0,
                    lower: 0.0,
                    slide: 1.0,
                    actuator: 0.0,
                };
                Ok(pose)
            }
            Phase::Unlock => {
                let swing = self.unlock_swing(fraction)?;
                self.assemble(
                    phase,
                    progress,
                    swing,
                    Some(fraction),
                    self.shortening_at(0.0).0,
                )
            }
            Phase::Swing => {
                let swing = match self.swing_straight() {
                    Some(straight) => {
                        straight + (self.swing_up - straight) * swing_fraction(fraction)
                    }
                    None => self.swing_up * fraction,
                };
                let travel = swing / self.swing_up + 0.0; // never −0
                // two circles that touch place the straight knee to half the figures only: the upper
                // link's own direction keeps them all
                let straight = (self.path.unlocks && fraction == 0.0).then_some(1.0);
                let shortening = self.shortening_at(travel).0;
                self.assemble(phase, progress, swing, straight, shortening)
            }
        }
    }

    /// Swing while the upper link has turned by `fraction` of its way to the straight pose (rad).
    fn unlock_swing(&self, fraction: f64) -> Result<f64, Miss> {
        let BraceLinkage::Folding(brace) = &self.brace else {
            return Ok(0.0);
        };
        let Some(unlock) = &brace.unlock else {
            return Ok(0.0);
        };
        if fraction == 0.0 {
            return Ok(0.0);
        }
        let knee = unlock_knee(brace, unlock, fraction);
        let radius = brace.attach.norm();
        let attach = circle_circle(
            self.trunnion,
            radius,
            knee,
            brace.lower_length,
            unlock.attach_side,
        )
        .ok_or_else(|| {
            let span = (knee - self.trunnion).norm();
            Miss(
                (span - radius - brace.lower_length)
                    .max((radius - brace.lower_length).abs() - span),
            )
        })?;
        let arm = attach - self.trunnion;
        Ok(brace.attach.perp(&arm).atan2(brace.attach.dot(&arm)))
    }

    /// `unlock`: fraction of the unlocking way, 1 straight; `None` = swinging, the knee on its fold side.
    fn assemble(
        &self,
        phase: Phase,
        progress: f64,
        swing: f64,
        unlock: Option<f64>,
        shortening: f64,
    ) -> Result<Pose, Miss> {
        let (sin, cos) = swing.sin_cos();
        let turn = |v: Vector| Vector::new(cos * v.x - sin * v.y, sin * v.x + cos * v.y);
        let travel = swing / self.swing_up + 0.0; // never −0
        let mut rates = Rates {
            swing: self.swing_up.signum(),
            upper: 0.0,
            lower: 0.0,
            slide: 0.0,
            actuator: 0.0,
        };
        let (mut knee, mut attach) = (None, None);
        match &self.brace {
            BraceLinkage::None => {}
            BraceLinkage::Sliding(brace) => attach = Some(self.trunnion + turn(brace.attach)),
            BraceLinkage::Folding(brace) => {
                let b1 = self.trunnion + turn(brace.attach);
                let k = match (unlock, &brace.unlock) {
                    (Some(fraction), Some(way)) => unlock_knee(brace, way, fraction),
                    (Some(_), None) => brace.knee_down,
                    (None, _) => brace.knee(b1)?,
                };
                let (upper, lower) = (k - brace.pivot, b1 - k);
                let arm = b1 - self.trunnion;
                // null vector of the loop's two velocity equations; it vanishes nowhere but where
                // all three bars are in one line
                let sign = brace.sense;
                rates.upper = -sign * lower.perp(&arm);
                rates.lower = sign * upper.perp(&arm);
                // with the knee straight the leg stands still, whatever the rounding of the pins
                rates.swing = if unlock == Some(1.0) && brace.unlock.is_some() {
                    0.0
                } else {
                    sign * upper.perp(&lower)
                };
                (knee, attach) = (Some(k), Some(b1));
            }
        }
        rates.slide = self.sliding(phase, travel, rates.swing);
        let (actuator_attach, velocity) = self.attach_motion(&rates, turn, knee, attach);
        let axis = actuator_attach - self.actuator_mount;
        let actuator_length = axis.norm();
        rates.actuator = axis.dot(&velocity) / actuator_length;
        Ok(Pose {
            place: Place {
                phase,
                progress,
                travel,
                swing,
            },
            cos,
            sin,
            shortening,
            axle: self.trunnion + turn(self.axle + self.slide_direction * shortening),
            knee,
            brace_attach: attach,
            actuator_attach,
            actuator_length,
            rates,
        })
    }

    /// What shortens the strut with a rate of the swing, or with how fast that changes.
    pub(super) fn sliding(&self, phase: Phase, travel: f64, swing: f64) -> f64 {
        match phase {
            Phase::Swing => self.shortening_at(travel).1 / self.swing_up * swing,
            Phase::Unlock | Phase::Shorten => 0.0,
        }
    }

    /// Position and velocity of A1.
    fn attach_motion(
        &self,
        rates: &Rates,
        turn: impl Fn(Vector) -> Vector,
        knee: Option<Point>,
        attach: Option<Point>,
    ) -> (Point, Vector) {
        match (self.actuator_attach, &self.brace, knee, attach) {
            (AttachLinkage::UpperLink(local), BraceLinkage::Folding(brace), Some(k), _) => {
                let arm = out_of_axes(local, k - brace.pivot, brace.upper_length);
                (brace.pivot + arm, quarter(arm) * rates.upper)
            }
            (AttachLinkage::LowerLink(local), BraceLinkage::Folding(brace), Some(k), Some(b1)) => {
                let arm = out_of_axes(local, b1 - k, brace.lower_length);
                let knee_velocity = quarter(k - brace.pivot) * rates.upper;
                (k + arm, knee_velocity + quarter(arm) * rates.lower)
            }
            (
                AttachLinkage::Leg(local)
                | AttachLinkage::UpperLink(local)
                | AttachLinkage::LowerLink(local),
                ..,
            ) => {
                let arm = turn(local);
                (self.trunnion + arm, quarter(arm) * rates.swing)
            }
        }
    }
}

impl FoldingLinkage {
    /// The knee on its fold side for B1 at `attach`.
    pub(crate) fn knee(&self, attach: Point) -> Result<Point, Miss> {
        circle_circle(
            self.pivot,
            self.upper_length,
            attach,
            self.lower_length,
            self.fold_side,
        )
        .ok_or_else(|| {
            let span = (attach - self.pivot).norm();
            let reach = self.upper_length + self.lower_length;
            let least = (self.upper_length - self.lower_length).abs();
            Miss((span - reach).max(least - span))
        })
    }
}

/// The knee with the upper link turned by `fraction` of its way to the straight pose.
fn unlock_knee(brace: &FoldingLinkage, unlock: &Unlock, fraction: f64) -> Point {
    if fraction == 0.0 {
        return brace.knee_down;
    }
    let (sin, cos) = (unlock.upper_down + fraction * unlock.upper_turn).sin_cos();
    brace.pivot + Vector::new(cos, sin) * brace.upper_length
}

/// A point given along and left of a bar, back in airframe axes.
fn out_of_axes(local: Vector, bar: Vector, length: f64) -> Vector {
    (bar * local.x + quarter(bar) * local.y) / length
}
