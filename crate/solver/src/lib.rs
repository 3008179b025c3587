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
//!
//! # From a gear file to an answer
//!
//! ```
//! use gearswing_solver::result::{Question, Verdict};
//! use gearswing_solver::{Options, solve_leg};
//!
//! let gear = gearswing_gearfile::read(gearswing_gearfile::DEMO.text)?;
//! let result = solve_leg(&gear, 0, &Options::default())?;
//! // the three questions, always in this order
//! let asked: Vec<Question> = result.findings.iter().map(|finding| finding.question).collect();
//! assert_eq!(asked, [Question::Clears, Question::Driven, Question::Locks]);
//! // an answer agrees with what it rests on: this leg touches nothing and comes up
//! assert_ne!(result.findings[0].verdict, Verdict::Bad);
//! assert!(!result.clearance.touches() && result.jams.is_empty());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! The folder `examples` has whole programs: the answers for a file, what a change would do, and the gear
//! against time.

pub mod clearance;
pub mod fall;
pub mod faults;
pub mod hydraulics;
pub mod kinematics;
pub mod lock;
pub mod numeric;
pub mod prepared;
pub mod result;
pub mod statics;
pub mod stop;
pub mod supply;
pub mod tires;

use gearswing_gear::{field, model};

/// The three answers.
mod answer;
/// One call for a whole leg.
mod solve;

pub use answer::{
    LATCH_GAP, LEAST_AFTER_PLAY, LEAST_KNEE_PUSH, LEAST_OVER_CENTRE, PRINTED_OVER_CENTER,
};
pub use prepared::{PreparedGear, PreparedLeg};
pub use solve::{Options, solve_gear, solve_leg, solve_prepared};
