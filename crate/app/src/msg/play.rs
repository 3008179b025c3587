//! The played swing and the scrub.
use crate::state::Speed;

/// Something done to the play.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Play {
    /// Starts or stops.
    Toggle,
    /// Takes a way in hand.
    Way {
        /// That down.
        down: bool,
    },
    /// Chooses the speed.
    Speed(Speed),
    /// Goes to a place on the path.
    Scrub {
        /// As in `Station::progress` (ratio).
        progress: f64,
    },
    /// Goes to the next mark of the strip.
    Mark {
        /// Toward up.
        up: bool,
    },
    /// Goes a small step along the path.
    Step {
        /// Toward up.
        up: bool,
    },
    /// The person's system asks for less motion, or no longer.
    ReducedMotion {
        /// On or off.
        on: bool,
    },
}
