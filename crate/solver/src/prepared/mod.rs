//! Legs made ready once for everything that is worked out of them: answers, run against time, what stopped
//! a leg, drawing.
mod gear;
/// What is worked out once.
mod kept;
mod leg;
/// What a leg's path, clearances, forces and fall rest on.
mod rests_on;

pub use gear::PreparedGear;
pub use leg::PreparedLeg;
pub(crate) use leg::{FallOf, Forces, ForcesOf, STATIONS};
