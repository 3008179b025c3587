//! Forces: loads, actuator thrust by virtual work, reactions by free bodies, pressures.

/// Most that the source makes.
mod available;
/// Equilibrium of every body on its own.
mod balance;
/// Forces and couples on the bodies.
mod body_loads;
/// Load cases side by side.
mod cases;
/// Fluid or motor in an actuator.
mod drive;
/// Four linear equations.
mod eliminate;
/// Friction of the pins.
mod friction;
/// All loads of a pose gathered on its bodies.
mod gathered;
/// What every station of a leg is worked out from.
mod leg_loads;
/// Weights and air loads in the plane of the leg.
mod loads;
/// Friction of the pins of a leg that moves by itself.
mod moving_pins;
/// Legs that share a drive or a battery.
mod partners;
/// What the pins of a leg are at every pose.
mod pin_set;
/// Thrust to pressure, and the worst places.
mod pressure;
/// Springs.
mod springs;
/// Where the pressure ceases to suffice.
mod stalls;
/// Friction of the pins at the stations before one.
mod warm;

pub use crate::kinematics::placed;
pub(crate) use available::available;
pub use balance::{FreeBodies, free_bodies};
pub use body_loads::{BodyLoads, Wrench, pin_rates};
pub(crate) use cases::Comparison;
pub use cases::{AIR_LOAD_SPEED, case_conditions};
pub(crate) use drive::{Drive, Face, areas};
pub(crate) use leg_loads::LegLoads;
pub(crate) use loads::attach_velocity;
pub use loads::{Loads, STANDARD_GRAVITY, dynamic_pressure, gravity, weight_and_wind, wind};
pub(crate) use moving_pins::{InMotion, MovingPins};
pub(crate) use partners::Partners;
pub(crate) use pin_set::PinSet;
pub(crate) use pressure::force_result;
pub use pressure::{NoForce, force_at, station_force};
pub(crate) use pressure::{PoseLoads, place_of};
pub use springs::{gas_push, linear_pull, spring_energy, spring_loads, torsion_moment};
pub(crate) use warm::Warm;

#[cfg(test)]
mod tests;
