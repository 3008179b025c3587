//! A leg made ready for solving.
use crate::model::Leg;
use crate::result::Jam;

use super::{Path, Pose};

/// A leg made ready for solving: lengths, leg-fixed vectors, path.
#[derive(Clone, Debug)]
pub struct Linkage {
    path: Path,
}

/// A pose that cannot be assembled: by how much it misses [m].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Miss(pub f64);

impl Linkage {
    /// Prepares a leg that has passed [`crate::faults::check_leg`].
    #[must_use]
    pub fn new(leg: &Leg) -> Self {
        let _ = leg;
        Self {
            path: Path {
                shortens: false,
                unlocks: false,
            },
        }
    }

    /// The path.
    #[must_use]
    pub fn path(&self) -> Path {
        self.path
    }

    /// Progress at which the leg stops, and why; empty when it comes up.
    #[must_use]
    pub fn jams(&self) -> &[Jam] {
        &[]
    }

    /// The pose at `progress` (clamped to the path).
    ///
    /// # Errors
    /// [`Miss`] where the brace cannot be assembled.
    pub fn pose(&self, progress: f64) -> Result<Pose, Miss> {
        let _ = progress;
        Err(Miss(0.0))
    }
}
