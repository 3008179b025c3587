//! A line now and then on long work: to a terminal, or when there are several files.
use std::io::IsTerminal as _;
use std::time::{Duration, Instant};

use crate::say;

/// Work shorter than this says nothing.
const QUIET: Duration = Duration::from_secs(1);
/// Least time between two lines.
const BETWEEN: Duration = Duration::from_secs(2);

/// Progress through the files.
pub(crate) struct Progress {
    files: usize,
    is_shown: bool,
    began: Instant,
    said: Option<Instant>,
}

impl Progress {
    pub(crate) fn new(files: usize) -> Self {
        Self {
            files,
            is_shown: files > 1 || std::io::stderr().is_terminal(),
            began: Instant::now(),
            said: None,
        }
    }

    /// Before a file or a leg is worked on; `done` files are finished.
    pub(crate) fn at(&mut self, done: usize, name: &str) {
        let now = Instant::now();
        let is_due = now.duration_since(self.began) >= QUIET
            && self
                .said
                .is_none_or(|said| now.duration_since(said) >= BETWEEN);
        if self.is_shown && is_due {
            self.said = Some(now);
            say(&format!("{done} of {} files done, now {name}", self.files));
        }
    }
}
