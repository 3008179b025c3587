//! Numbers at the cursor.
use gearswing_gear::model::MovingPart;
use gearswing_solver::result::{DrivenBy, Motion, TireState};

use super::names::part_words;
use crate::cases::motion_verb;

/// A number at the cursor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Number<'a> {
    /// Where the leg stands.
    Place,
    /// Clearances that could not be worked out.
    Clearances,
    /// The tire, or the part that is nearest of the others, and the piece of structure in words.
    Nearest(MovingPart, Option<TireState>, &'a str),
    /// Actuator force in a motion.
    Force(Motion),
    /// Pressure needed in a motion.
    Pressure(Motion),
    /// Actuator force while the leg is held.
    Held,
    /// What is left of the pressure or force.
    Spare(DrivenBy),
    /// Length of the actuator.
    ActuatorLength,
    /// Its moment arm.
    MomentArm,
    /// Transmission angle.
    Transmission,
    /// The knee from the straight line.
    Fold,
    /// Shortening of the strut.
    Shortening,
}

/// The label of a number.
#[must_use]
pub fn number_label(number: Number) -> String {
    match number {
        Number::Place => "Place",
        Number::Clearances => "Clearances",
        Number::Nearest(part, tire, obstacle) => {
            return format!("Nearest to the {}: {obstacle}", part_words(part, tire));
        }
        Number::Force(motion) => {
            return format!(
                "Actuator force to {}, friction included",
                motion_verb(motion)
            );
        }
        Number::Pressure(motion) => return format!("Pressure needed to {}", motion_verb(motion)),
        Number::Held => "Actuator force held still, without friction",
        Number::Spare(DrivenBy::Fluid) => "To spare of the pressure available to retract",
        Number::Spare(DrivenBy::Electricity) => "To spare of the force available to retract",
        Number::ActuatorLength => "Actuator length",
        Number::MomentArm => "Moment arm",
        Number::Transmission => "Transmission angle at the knee",
        Number::Fold => "Knee from the straight line",
        Number::Shortening => "Strut shortened by",
    }
    .to_owned()
}

/// In place of clearances that could not be worked out.
pub const NOT_RESOLVED: &str = "not resolved at this place";

/// In place of a moment arm.
pub const DEAD_POINT: &str = "none: dead point";

/// A clearance with the piece of structure that it is to.
#[must_use]
pub fn with_obstacle(clearance: &str, obstacle: &str) -> String {
    format!("{clearance} ({obstacle})")
}
