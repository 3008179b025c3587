//! Fall without pressure: does the leg come down to its lock by itself, when, and what is left.
//!
//! One coordinate x runs from up (0) to the lock. Along it the rates of all parts stay finite, at a
//! straight knee too: it is the common parameter of [`crate::kinematics::Rates`], counted from up.
//! With M the inertia, N the net push at rest, D the damping of the orifice and F the friction that the
//! motion adds to that of the pins at rest, all at the rates of a pose:
//!
//! ```text
//!   M·dv/dt + ½·M'(x)·v² = N(x) − D(x, v) − F(x)·v²,    dx/dt = v
//! ```
//!
//! Source: Lagrange's equation for one degree of freedom, any text on the dynamics of machinery. The
//! functions of x are tables, worked out once for a leg, so that one fall costs less than a clearance.

/// The way in one case, and the equation of motion.
mod course;
/// One fall: its events.
mod drop;
/// Energy of motion over the way.
mod energies;
/// Everything about the fall of one leg.
mod fall_of;
/// What all parts resist a motion with, and their kinetic energy.
pub(crate) mod inertia;
/// How far it can be driven: airspeed, friction.
mod limits;
/// What it has to spare.
mod margin;
/// Pins that rub in the fall.
mod rub;
/// Functions of one variable as cubic splines.
mod table;
/// The way from up to the lock, tabled.
mod way;

pub use fall_of::fall_of;

#[cfg(test)]
mod tests;
#[cfg(test)]
mod tests_limits;
#[cfg(test)]
mod tests_sprung;
#[cfg(test)]
mod tests_stood;
