//! Forces: loads, actuator thrust by virtual work, reactions by free bodies, pressures.

/// Equilibrium of every body on its own.
mod free_body;
/// Weights and air loads in the plane of the leg.
mod loads;
/// Thrust to pressure, and the worst places.
mod pressure;

pub use free_body::{FreeBodies, free_bodies};
pub(crate) use loads::attach_velocity;
pub use loads::{Loads, STANDARD_GRAVITY, dynamic_pressure, gravity, wind};
pub(crate) use pressure::{areas, place_of};
pub use pressure::{force_result, station_force};

#[cfg(test)]
mod tests;
