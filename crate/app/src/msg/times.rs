//! The gear against time.
use crate::scene::ScreenPoint;

/// Something done to the run that is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Times {
    /// Pressed or dragged on its charts.
    Scrub {
        /// Where.
        at: ScreenPoint,
    },
    /// Goes to a time.
    Seek {
        /// Since the gear was selected (s).
        time_s: f64,
    },
    /// Shows the run up or the one down, from its start.
    Select {
        /// Down.
        down: bool,
    },
    /// Works it out for the airplane level on jacks, or with attitude and air as set.
    OnJacks {
        /// On jacks.
        on: bool,
    },
    /// Lets it run in its own time, or stops it.
    Toggle,
}
