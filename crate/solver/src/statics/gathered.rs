//! All loads of a pose gathered on its free bodies.
use super::{BodyLoads, Loads};
use crate::kinematics::{Linkage, Pose, quarter};
use crate::model::{AttachTo, Brace, Leg, Point, Vector};

/// Moment of `force` at `at` about `about` (N·m), counter-clockwise positive.
fn moment(at: Point, about: Point, force: Vector) -> f64 {
    (at - about).perp(&force)
}

/// 1 for the part that the actuator drives, 0 for the others.
#[derive(Clone, Copy, Debug)]
pub(super) struct Carries {
    pub(super) leg: f64,
    pub(super) upper: f64,
    pub(super) lower: f64,
}

/// The bodies of a leg at one pose.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bodies<'a> {
    pub(super) leg: &'a Leg,
    pub(super) pose: &'a Pose,
    pub(super) carries: Carries,
    trunnion: Point,
    /// Direction A0 to A1.
    axis: Vector,
    /// Direction in which the strut shortens, and dc/dφ (m).
    slide: (Vector, f64),
}

/// Loads on the bodies of a pose: linear in what makes them.
#[derive(Clone, Copy, Debug)]
pub(super) struct Gathered {
    /// Force of the actuator on the part that it drives.
    pub(super) push: Vector,
    /// Outside force on the actuator.
    pub(super) actuator: Vector,
    /// Outside force on the leg, the braces' end forces left out.
    pub(super) leg: Vector,
    /// Outside force on the upper link, or on a telescopic brace.
    pub(super) upper: Vector,
    /// Outside force on the lower link.
    pub(super) lower: Vector,
    /// Force of a telescopic brace on the leg: it carries nothing along itself while it slides.
    pub(super) brace_end: Vector,
    /// Moments on upper link about B0, lower link about B1, leg about P, the knee's force left out
    /// (N·m); without a folding brace all stand in the last.
    pub(super) moments: [f64; 3],
}

impl Gathered {
    /// Adds these loads times a factor.
    pub(super) fn add(&mut self, other: &Self, factor: f64) {
        self.push += other.push * factor;
        self.actuator += other.actuator * factor;
        self.leg += other.leg * factor;
        self.upper += other.upper * factor;
        self.lower += other.lower * factor;
        self.brace_end += other.brace_end * factor;
        for (moment, more) in self.moments.iter_mut().zip(other.moments) {
            *moment += more * factor;
        }
    }
}

impl<'a> Bodies<'a> {
    pub(super) fn new(leg: &'a Leg, linkage: &Linkage, pose: &'a Pose) -> Self {
        let ratio = if pose.rates.swing == 0.0 {
            0.0
        } else {
            pose.rates.slide / pose.rates.swing
        };
        let carries = |on: AttachTo| f64::from(u8::from(leg.actuator.attach_to == on));
        Self {
            leg,
            pose,
            carries: Carries {
                leg: carries(AttachTo::Leg),
                upper: carries(AttachTo::UpperLink),
                lower: carries(AttachTo::LowerLink),
            },
            trunnion: linkage.trunnion(),
            axis: (pose.actuator_attach - leg.actuator.mount) / pose.actuator_length,
            slide: (pose.turn(linkage.slide_direction()), ratio),
        }
    }

    /// B0 to knee, B1 to knee, P to B1 of a folding brace.
    pub(super) fn arms(&self) -> Option<[Vector; 3]> {
        match (&self.leg.brace, self.pose.knee, self.pose.brace_attach) {
            (Brace::Folding(brace), Some(knee), Some(attach)) => Some([
                knee - brace.airframe_pivot,
                knee - attach,
                attach - self.trunnion,
            ]),
            _ => None,
        }
    }

    /// Gathers loads, further ones, and a thrust (N). A strut shortened by the swing hands the load
    /// along it to the leg's drive as a couple.
    pub(super) fn gather(&self, loads: &Loads, more: &BodyLoads, thrust: f64) -> Gathered {
        let (trunnion, pose) = (self.trunnion, self.pose);
        let at = pose.actuator_attach;
        let s = &loads.springs;
        let sliding = loads.wheel.1 + s.sliding.force + more.sliding.force;
        let on_leg = moment(loads.body.0, trunnion, loads.body.1)
            + moment(loads.wheel.0, trunnion, loads.wheel.1)
            + moment(loads.leg_air.0, trunnion, loads.leg_air.1)
            + self.slide.0.dot(&sliding) * self.slide.1
            + s.leg.moment
            + more.leg.moment
            + s.sliding.moment
            + more.sliding.moment;
        // a couple on the actuator is carried by forces across it at its pins
        let across = quarter(self.axis) * ((s.actuator + more.actuator) / pose.actuator_length);
        let mut on = Gathered {
            push: self.axis * thrust + loads.actuator[1] + across,
            actuator: loads.actuator[0] + loads.actuator[1],
            leg: loads.body.1 + loads.leg_air.1 + s.leg.force + more.leg.force + sliding,
            upper: loads.upper[0] + loads.upper[1] + s.upper.force + more.upper.force,
            lower: loads.lower[0] + loads.lower[1] + s.lower.force + more.lower.force,
            brace_end: Vector::zeros(),
            moments: [0.0; 3],
        };
        match (&self.leg.brace, pose.knee, pose.brace_attach) {
            (Brace::Folding(brace), Some(knee), Some(attach)) => {
                let pivot = brace.airframe_pivot;
                let carries = self.carries;
                let passed_on = on.lower + on.push * carries.lower;
                on.moments = [
                    moment(knee, pivot, loads.upper[1])
                        + carries.upper * moment(at, pivot, on.push)
                        + s.upper.about(trunnion, pivot)
                        + more.upper.about(trunnion, pivot),
                    moment(knee, attach, loads.lower[0])
                        + carries.lower * moment(at, attach, on.push)
                        + s.lower.about(trunnion, attach)
                        + more.lower.about(trunnion, attach),
                    on_leg
                        + (attach - trunnion).perp(&passed_on)
                        + carries.leg * moment(at, trunnion, on.push),
                ];
            }
            _ => {
                let mut about_trunnion = on_leg + moment(at, trunnion, on.push);
                if let (Brace::Sliding(brace), Some(attach)) = (&self.leg.brace, pose.brace_attach)
                {
                    // a couple on the brace is carried by forces across it
                    let span = attach - brace.airframe_pivot;
                    let couple = (s.brace + more.brace) / span.norm_squared();
                    on.brace_end = loads.upper[1] + quarter(span) * couple;
                    about_trunnion += moment(attach, trunnion, on.brace_end);
                }
                on.moments = [0.0, 0.0, about_trunnion];
            }
        }
        on
    }
}
