//! The gear of one airplane as it is stored, shared and solved.
//!
//! Every position is given at gear down in airframe axes, in meters: x right, y up, angles
//! counter-clockwise. A side view is seen from the airplane's left (x points aft); a front view
//! is seen from ahead (x points to the airplane's left wing). File keys carry their unit.

/// Linear hydraulic actuator.
mod actuator;
/// Drag or side brace: folding, sliding or none.
mod brace;
/// What the answers are asked for: attitude, air, load factor.
mod conditions;
/// What drives one leg besides its actuator: orifices, strut jack, motor, switches.
mod drive;
/// The way down without the normal power.
mod emergency;
/// Inputs of free fall and lock.
mod fall;
/// Hydraulic fluid.
mod fluid;
/// Which friction of a leg is given.
mod friction;
/// The airplane: legs, conditions, supply and clearance rule.
mod gear;
/// Which airplane's gear it is.
mod id;
/// States kept to compare with.
mod kept;
/// One leg with all its parts.
mod leg;
/// What somebody says about a gear.
mod note;
/// Pins of the joints.
mod pin;
/// Points and vectors.
mod point;
/// A leg that stopped on the jacks.
mod seen;
/// Skew to the drawn plane, and room along the trunnion.
mod skew;
/// Springs.
mod spring;
/// Shock strut and its shortening.
mod strut;
/// What moves the gear: pressure, pump, battery.
mod supply;
/// Structure around the retracting leg.
mod well;
/// Wheel and tire.
mod wheel;

pub use actuator::{Actuator, AttachTo, BodyEnd, SEAL_BREAK_OUT};
pub use brace::{Brace, FoldingBrace, Folds, KneeGiven, Link, SlidingBrace, UnlockedBy};
pub use conditions::{
    ClearanceRule, Conditions, DEFAULT_CLIMB_PITCH, DEFAULT_TURN_LOAD_FACTOR, SEA_LEVEL_DENSITY,
};
pub use drive::{Drive, ElectricActuator, LineOrifice, StrutJack, Switches};
pub use emergency::{EmergencyWay, FRICTION_TIMES_REQUIRED};
pub use fall::{FallData, SHARP_EDGE};
pub use fluid::{Fluid, MINERAL_FLUID_DENSITY};
pub use friction::FrictionTyped;
pub use gear::Gear;
pub use id::GearId;
pub use kept::{Kept, MOST_KEPT, PREVIOUS_TIRE};
pub use leg::{Leg, LegAir, LegBody, View};
pub use note::{MOST_NOTES, Note, renumbered};
pub use pin::{Joint, MOST_PIN_FRICTION, PIN_BREAK_OUT, Pin, Pins};
pub(crate) use point::is_zero;
pub use point::{Point, PointsFrom, Vector};
pub use seen::{
    DEFAULT_DRAWING_WITHIN, DEFAULT_FORCES_WITHIN, DEFAULT_PRESSURE_WITHIN, DEFAULT_VOLTAGE_WITHIN,
    Direction, HowFar, PumpSeen, SeenStop,
};
pub use skew::{OutOfPlane, OwnLeg};
pub use spring::{
    Acts, Body, GasLaw, GasSpring, LinearSpring, Spring, SpringEnd, SpringJoint, SpringKind,
    SpringSet, TorsionSpring,
};
pub use strut::{Shortening, ShorteningRow, Strut};
pub use supply::{
    Accumulator, Battery, BatteryKind, BatterySize, DEFAULT_EXPONENT, DEFAULT_INTERNAL_RESISTANCE,
    DEFAULT_MARGIN_WANTED, HandPump, MARGIN_WITHOUT_FRICTION, MotorPump, Source, Supply,
};
pub use well::{MovingPart, Obstacle, Shape};
pub use wheel::{Basis, Grown, Tire, Wheel};
