//! Phases of the path and how progress maps to swing.
use crate::result::Phase;

/// The way of a leg from down and locked to up, as one number: *progress*.
///
/// The swing runs over progress 0 … 1. Before it come, where the leg has them, the unlocking of an
/// over-center knee and the shortening of the strut, one unit each, so that progress begins at
/// −1 or −2.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Path {
    pub(crate) shortens: bool,
    pub(crate) unlocks: bool,
}

impl Path {
    /// Progress at down and locked (ratio): 0, −1 or −2.
    #[must_use]
    pub fn start(&self) -> f64 {
        -(f64::from(u8::from(self.shortens)) + f64::from(u8::from(self.unlocks)))
    }

    /// Progress at up (ratio).
    #[must_use]
    pub fn end(&self) -> f64 {
        1.0
    }

    /// Phases of this path in order, with the progress where each begins (ratio).
    pub fn phases(&self) -> impl Iterator<Item = (Phase, f64)> + use<> {
        let unlock = self.unlocks.then_some((Phase::Unlock, -1.0));
        let shorten = self.shortens.then_some((Phase::Shorten, self.start()));
        [shorten, unlock, Some((Phase::Swing, 0.0))]
            .into_iter()
            .flatten()
    }

    /// Phase at `progress` (clamped) and the fraction of it that is done (ratio).
    #[must_use]
    pub fn phase_at(&self, progress: f64) -> (Phase, f64) {
        let s = progress.clamp(self.start(), self.end());
        if s >= 0.0 {
            (Phase::Swing, s)
        } else if self.unlocks && s >= -1.0 {
            (Phase::Unlock, s + 1.0)
        } else {
            (Phase::Shorten, s - self.start())
        }
    }
}

/// Softness of the start of a swing that leaves a straight knee (ratio).
const SOFT: f64 = 0.05;

/// Share of the swing that is done at `fraction` of the swing phase, for a leg that leaves a
/// straight knee (ratio).
///
/// There φ turns back and the knee's angle goes with the square root of the swing; this map starts
/// with the square of the fraction, so that all rates per progress stay finite, and is nearly
/// straight afterward.
pub(crate) fn swing_fraction(fraction: f64) -> f64 {
    (1.0 + SOFT) * fraction * fraction / (fraction + SOFT)
}

/// Inverse of [`swing_fraction`] (ratio).
pub(crate) fn progress_of_share(share: f64) -> f64 {
    let half = 0.5 * share.max(0.0) / (1.0 + SOFT);
    half + (half * half + 2.0 * half * SOFT).sqrt()
}
