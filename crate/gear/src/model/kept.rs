//! States of a gear that are kept to compare with.
use std::sync::Arc;

use super::Gear;

/// Most states that a gear keeps.
pub const MOST_KEPT: usize = 20;

/// Name of the state that has the tires which were fitted before.
pub const PREVIOUS_TIRE: &str = "previous tire";

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

impl Gear {
    /// The state with the tires that were fitted before, by index.
    #[must_use]
    pub fn previous(&self) -> Option<usize> {
        self.kept.iter().position(|kept| kept.name == PREVIOUS_TIRE)
    }
}
