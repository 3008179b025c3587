//! What is known.

/// What is looked at, typed and selected.
mod session;
/// What the page finds at its start.
mod start;

pub use session::{Session, Speed, Theme};
pub use start::{Start, StoredFile};

use crate::effect::Effect;

/// Everything.
#[derive(Clone, Debug)]
pub struct State {
    /// What is looked at, typed and selected.
    pub session: Session,
}

impl State {
    /// The state at the start, with what has to be done first.
    #[must_use]
    pub fn new(start: Start) -> (Self, Vec<Effect>) {
        let session = Session {
            reduced_motion: start.reduced_motion,
            ..Session::default()
        };
        (Self { session }, Vec::new())
    }
}
