//! States of a gear that are kept to compare with.
use std::sync::Arc;

use super::Gear;

/// Most states that a gear keeps.
pub const MOST_KEPT: usize = 20;

/// A state of the gear as it was when it was kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// What the person calls it, as "old tires".
    pub name: String,
    /// It is somebody else's, come by a link or a file.
    pub sent: bool,
    /// The gear in that state; it keeps none itself.
    pub gear: Arc<Gear>,
}

impl Kept {
    /// Keeps a gear as it is.
    #[must_use]
    pub fn of(gear: &Gear, name: String) -> Self {
        Self {
            name,
            sent: false,
            gear: Arc::new(gear.without_kept()),
        }
    }
}
