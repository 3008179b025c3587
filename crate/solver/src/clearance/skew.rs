//! How much a clearance worked out in the drawn plane may be too good where trunnion or wheel is
//! not square to it.
//!
//! The trunnion axis is off the normal of the plane by δ, the wheel's spin axis at gear down off its
//! drawn direction by γ. With R = D/2 − r, W = w/2 − r (r the shoulder radius), ρ the distance of
//! the tire's middle from the trunnion, m the swing (at most half a turn):
//! - two turns by φ about axes δ apart differ by a turn of at most ε_δ = 4·asin(sin(m/2)·sin(δ/2));
//!   the spin axis is off its drawn direction by at most ε = ε_δ + γ;
//! - *silhouette* S: a round-shouldered tire reaches h(u) = r + R·√(1 − c²) + W·c in a direction u
//!   that makes c = |cosine| with its spin axis. Edge on (front view) the drawn reach grows the most
//!   where u is the spin axis itself: R·sin s − W·(1 − cos s), s = min(ε, atan2(R, W)). As a disc
//!   (side view) it grows by W·sin s − R·(1 − cos s), s = min(ε, atan2(W, R)). Edge on, u may be square
//!   to the spin axis too, where it grows as a disc does: of a tire that is wider than high, more. The
//!   larger counts;
//! - *path* T: the middle leaves its drawn place in the plane by at most
//!   ρ·[(1 − cos ε_δ) + k·(1 − cos δ)], k = sin m for a swing below a quarter turn, else 1;
//! - along the trunnion the middle moves by at most ρ·sin ε_δ, and the two formulas of S change
//!   places.
//!
//! The bound is this program's own; a test holds it against tires turned in three dimensions.
use std::f64::consts::{FRAC_PI_2, PI};

use crate::model::{Leg, Shortening, View};
use crate::result::{SkewLoss, SkewLosses, TireState};
use crate::tires::{TireSize, TireSizes};

use super::rig::Rig;

/// Skew that is told of where none is measured (rad): 3°.
pub const TOLD_SKEW: f64 = PI / 60.0;

/// What the skews given take off the clearances of the wheel, and what those not given might.
#[must_use]
pub fn skew_losses(leg: &Leg, sizes: &TireSizes) -> SkewLosses {
    let beside = &leg.out_of_plane;
    losses(leg, sizes, (beside.trunnion_skew, beside.wheel_skew))
}

/// As drawn: nothing is taken off.
pub(super) fn as_drawn(leg: &Leg, sizes: &TireSizes) -> SkewLosses {
    losses(leg, sizes, (None, None))
}

fn losses(
    leg: &Leg,
    sizes: &TireSizes,
    (trunnion, wheel): (Option<f64>, Option<f64>),
) -> SkewLosses {
    let loss = |size: &TireSize, trunnion: f64, wheel: f64| loss(leg, size, trunnion, wheel);
    // what is not measured takes nothing off; what it might is told
    let given = |size| loss(size, trunnion.unwrap_or(0.0), wheel.unwrap_or(0.0));
    let told = match (trunnion, wheel) {
        (Some(_), Some(_)) => None,
        (None, wheel) => Some(loss(&sizes.grown, TOLD_SKEW, wheel.unwrap_or(0.0))),
        (Some(trunnion), None) => Some(loss(&sizes.grown, trunnion, TOLD_SKEW)),
    };
    let grown = given(&sizes.grown);
    SkewLosses {
        trunnion,
        wheel,
        new: given(&sizes.new),
        grown,
        told: told.map(|told| SkewLoss {
            to_well: told.to_well - grown.to_well,
            along_trunnion: told.along_trunnion - grown.along_trunnion,
            to_own_leg: told.to_own_leg - grown.to_own_leg,
        }),
    }
}

impl SkewLosses {
    /// Those of one tire size.
    #[must_use]
    pub fn of(&self, tire: TireState) -> &SkewLoss {
        match tire {
            TireState::New => &self.new,
            TireState::Grown => &self.grown,
        }
    }
}

fn loss(leg: &Leg, size: &TireSize, trunnion: f64, wheel: f64) -> SkewLoss {
    let least = size.diameter.min(size.width);
    let r = size.shoulder_radius.clamp(0.0, 0.5 * least);
    let (disc, half) = (0.5 * size.diameter - r, 0.5 * size.width - r);
    let turn = leg.swing_up.abs().min(PI);
    let swung = 4.0 * ((0.5 * turn).sin() * (0.5 * trunnion).sin()).asin();
    let off = (swung + wheel).min(FRAC_PI_2);
    let edge_on = |off: f64| grows(disc, half, off).max(grows(half, disc, off));
    let as_disc = |off: f64| grows(half, disc, off);
    let (seen, beside): (&dyn Fn(f64) -> f64, &dyn Fn(f64) -> f64) = match leg.view {
        View::Front => (&edge_on, &as_disc),
        View::Side => (&as_disc, &edge_on),
    };
    let reach = reach(leg);
    let part = if turn < FRAC_PI_2 { turn.sin() } else { 1.0 };
    let path = reach * ((1.0 - swung.cos()) + part * (1.0 - trunnion.cos()));
    SkewLoss {
        to_well: seen(off) + path,
        along_trunnion: reach * swung.min(FRAC_PI_2).sin() + beside(off),
        to_own_leg: seen(wheel),
    }
}

/// Largest growth of a·sin + b·cos of an angle when it turns by up to `off` from 0 (m).
fn grows(a: f64, b: f64, off: f64) -> f64 {
    let turn = off.min(a.atan2(b));
    a * turn.sin() - b * (1.0 - turn.cos())
}

/// Largest distance of the tire's middle from the trunnion, extended or shortened (m).
fn reach(leg: &Leg) -> f64 {
    let slide = Rig::new(leg).slide;
    let at = |amount: f64| (leg.strut.axle + slide * amount - leg.trunnion).norm();
    match &leg.strut.shortening {
        Shortening::None => at(0.0),
        Shortening::BeforeSwing { amount } => at(0.0).max(at(*amount)),
        Shortening::WithTravel { table } => table
            .iter()
            .map(|row| at(row.amount))
            .fold(at(0.0), f64::max),
    }
}
