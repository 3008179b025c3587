//! Virtual work against free bodies, energy, springs, friction.

/// Single poses by hand.
mod by_hand;
/// What each load case counts on.
mod cases;
/// Friction of the pins against closed forms.
mod friction;
/// Spring laws and their energy.
mod springs;
/// Where the pressure ceases to suffice.
mod stalls;
/// Sums over a stroke.
mod sums;
/// Legs and springs of every kind.
mod support;
/// Virtual work, equilibrium, energy.
mod work;

use support::{legs, pins, springs as springs_of, windy};
