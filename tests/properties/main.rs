//! Properties that hold for every leg, on random legs of every kind: brace, actuator, view, shortening.
//! The legs are the same on every run; a failure names its leg.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a check that cannot run must fail"
)]

/// Mirrored, moved, turned, larger, heavier.
mod alike;
/// Clearance against sampled distances of a general-purpose library.
mod clearance;
/// Lengths of links.
mod closure;
/// A larger tire has less room.
mod growth;
/// Numbers that make no sense.
mod hostile;
/// What the down lock rests on.
mod lock;
/// What a fall has to spare, by a second evaluation.
mod margins;
/// What a change leaves of a gear made ready.
mod prepared;
/// From up to down instead of from down to up.
mod reversed;
/// Random gears on random sources, against time.
mod runs;
/// Trunnions and wheels that are not square to the drawn plane.
mod skew;
/// Springs and rubbing pins.
mod sprung;
/// Gear file and link.
mod stored;
/// Work, energy, equilibrium, pressure.
mod work;
