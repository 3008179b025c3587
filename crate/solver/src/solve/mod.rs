//! One call for a whole leg.

/// A fall without power.
mod fall;
/// Forces over the swing.
mod forces;
/// Answers to all questions.
mod leg;
/// How finely.
mod options;

#[cfg(test)]
mod tests;

pub use leg::{solve_gear, solve_leg, solve_prepared};
pub use options::Options;
