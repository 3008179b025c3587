//! Retract arc, clearance, actuator force and down lock of a landing-gear leg.
//!
//! Pure: no IO, no clock, no globals, no unit other than SI, no screen. Read the modules in this
//! order: [`gearswing_gear::model`] (what is given), [`faults`] (what makes it unusable), [`kinematics`] (where
//! everything is), [`clearance`], [`statics`], [`lock`], [`supply`], and [`result`] (what comes out).
//!
//! ```text
//!            y up                      φ  swing about the trunnion P, 0 down, φ_up up
//!            |                         τ  travel φ/φ_up
//!            |   B0 o--- upper         c  shortening of the strut
//!            |            \ K          ℓ  actuator length A0–A1
//!   P o------|-----.       \
//!     |  A0 o======o A1     \ lower
//!     |            |         \
//!     |  strut     '----------o B1
//!    (W) axle
//!     +--------------------------------> x right (side view: aft; front view: left wing)
//! ```

pub mod clearance;
pub mod fall;
pub mod faults;
pub mod hydraulics;
pub mod kinematics;
pub mod lock;
pub mod numeric;
pub mod result;
pub mod statics;
pub mod stop;
pub mod supply;
pub mod tires;

use gearswing_gear::{field, model};

/// The three answers.
mod answer;
#[cfg(test)]
mod sample;
/// One call for a whole leg.
mod solve;

pub use answer::{
    LATCH_GAP, LEAST_AFTER_PLAY, LEAST_KNEE_PUSH, LEAST_OVER_CENTRE, PRINTED_OVER_CENTER,
};
pub use solve::{Options, TireChoice, solve_gear, solve_leg};
