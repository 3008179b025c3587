//! Forces and couples on the bodies of a leg, beside its weights and air loads.
use super::loads::{attach_velocity, cross_rate};
use crate::kinematics::{Linkage, Pose, quarter};
use crate::model::{AttachTo, Brace, Leg, Point, Vector};

/// Force and moment on one body.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Wrench {
    /// Force (N).
    pub force: Vector,
    /// Moment about the trunnion, counter-clockwise positive (N·m).
    pub moment: f64,
}

impl Wrench {
    /// Adds a force at a point.
    pub(crate) fn push(&mut self, trunnion: Point, at: Point, force: Vector) {
        self.force += force;
        self.moment += (at - trunnion).perp(&force);
    }

    /// Moment about another point (N·m).
    pub(crate) fn about(&self, trunnion: Point, point: Point) -> f64 {
        self.moment + (trunnion - point).perp(&self.force)
    }
}

/// Forces and couples on every body: springs, friction of the pins.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct BodyLoads {
    /// On the upper leg.
    pub leg: Wrench,
    /// On what slides with the axle.
    pub sliding: Wrench,
    /// On the upper link.
    pub upper: Wrench,
    /// On the lower link.
    pub lower: Wrench,
    /// Couple on a telescopic brace (N·m).
    pub brace: f64,
    /// Couple on the actuator (N·m).
    pub actuator: f64,
}

impl BodyLoads {
    /// Couples of the pins: `moments` (N·m) in the order of [`crate::model::Joint::ALL`], each on
    /// the part away from the airframe (lower link at the knee, brace at B1, actuator at A1), its
    /// reverse on the other.
    #[must_use]
    pub fn of_pins(leg: &Leg, moments: &[f64; 6]) -> Self {
        let [trunnion, pivot, knee, attach, mount, driven] = *moments;
        let mut on = Self::default();
        on.leg.moment += trunnion;
        match leg.brace {
            Brace::None => {}
            Brace::Sliding(_) => {
                on.brace += pivot + attach;
                on.leg.moment -= attach;
            }
            Brace::Folding(_) => {
                on.upper.moment += pivot - knee;
                on.lower.moment += knee + attach;
                on.leg.moment -= attach;
            }
        }
        on.actuator += mount + driven;
        match leg.actuator.attach_to {
            AttachTo::Leg => on.leg.moment -= driven,
            AttachTo::UpperLink => on.upper.moment -= driven,
            AttachTo::LowerLink => on.lower.moment -= driven,
        }
        on
    }

    /// Power at the rates of the pose [N·m per unit of the common parameter].
    #[must_use]
    pub fn power(&self, leg: &Leg, linkage: &Linkage, pose: &Pose) -> f64 {
        let rates = &pose.rates;
        let trunnion = linkage.trunnion();
        let along = pose.turn(linkage.slide_direction());
        let mut power = rates.swing * (self.leg.moment + self.sliding.moment)
            + rates.slide * along.dot(&self.sliding.force);
        if let (Brace::Folding(brace), Some(knee)) = (&leg.brace, pose.knee) {
            let pivot = brace.airframe_pivot;
            power += rates.upper * self.upper.about(trunnion, pivot);
            power += (quarter(knee - pivot) * rates.upper).dot(&self.lower.force);
            power += rates.lower * self.lower.about(trunnion, knee);
        }
        // few loads are couples on these
        if self.brace == 0.0 && self.actuator == 0.0 {
            return power;
        }
        let turn = member_rates(leg, linkage, pose);
        power + turn.brace * self.brace + turn.actuator * self.actuator
    }
}

/// Rates of turn of the parts between two pins, per unit of the common parameter (rad).
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct MemberRates {
    /// Telescopic brace.
    pub(crate) brace: f64,
    /// Actuator.
    pub(crate) actuator: f64,
}

pub(crate) fn member_rates(leg: &Leg, linkage: &Linkage, pose: &Pose) -> MemberRates {
    let brace = match (&leg.brace, pose.brace_attach) {
        (Brace::Sliding(brace), Some(attach)) => {
            let velocity = quarter(attach - linkage.trunnion()) * pose.rates.swing;
            cross_rate(attach - brace.airframe_pivot, velocity)
        }
        _ => 0.0,
    };
    MemberRates {
        brace,
        actuator: cross_rate(
            pose.actuator_attach - leg.actuator.mount,
            attach_velocity(leg, linkage, pose),
        ),
    }
}

/// Rates at which the two parts at each pin turn against each other, per unit of the common
/// parameter (rad), in the order of [`crate::model::Joint::ALL`] and with the signs of
/// [`BodyLoads::of_pins`]; 0 where there is no such pin.
#[must_use]
pub fn pin_rates(leg: &Leg, linkage: &Linkage, pose: &Pose) -> [f64; 6] {
    let rates = &pose.rates;
    let turn = member_rates(leg, linkage, pose);
    let (pivot, knee, attach) = match leg.brace {
        Brace::None => (0.0, 0.0, 0.0),
        Brace::Sliding(_) => (turn.brace, 0.0, turn.brace - rates.swing),
        Brace::Folding(_) => (
            rates.upper,
            rates.lower - rates.upper,
            rates.lower - rates.swing,
        ),
    };
    let carrier = match leg.actuator.attach_to {
        AttachTo::Leg => rates.swing,
        AttachTo::UpperLink => rates.upper,
        AttachTo::LowerLink => rates.lower,
    };
    [
        rates.swing,
        pivot,
        knee,
        attach,
        turn.actuator,
        turn.actuator - carrier,
    ]
}
