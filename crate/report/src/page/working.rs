//! Working out, and giving it up.
use crate::name::clean;

/// What is being worked out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Work {
    /// The legs, of which so many are left.
    Legs(usize),
    /// Nothing yet of what comes after the legs: they have just been worked out.
    Next,
    /// The gear against time.
    Times,
    /// What explains a stop.
    Stops,
}

/// What is being worked out, as a line; empty where nothing is to be told.
#[must_use]
pub fn working_line(work: Work) -> String {
    match work {
        Work::Legs(0 | 1) => "Working out the legs …".to_owned(),
        Work::Legs(left) => format!("Working out the legs, {left} left …"),
        // it is there with the next frame, or told with it
        Work::Next => String::new(),
        Work::Times => "Working out the gear against time …".to_owned(),
        Work::Stops => "Working out what explains the stop …".to_owned(),
    }
}

/// The person has given it up.
pub const GIVEN_UP: &str = "Working out was given up. Answers that are not worked out are shown faded, as of an earlier state, or are missing. It begins again with the next change.";

/// What comes after the answers (the gear against time, what explains a stop) does not come; why, as the browser says it.
#[must_use]
pub fn failed(reason: &str) -> String {
    format!(
        "The gear against time, and what explains a stop, could not be worked out: {}",
        clean(reason)
    )
}

/// The script that works it out did not come.
#[must_use]
pub fn no_worker(script: &str) -> String {
    format!("{script} did not load; it is fetched when it is first needed. Is there a network?")
}

/// It was answered by a module of another build than the page's.
pub const TWO_BUILDS: &str = "Parts of two versions of the page have met: load it again.";

/// Its answer could not be read.
pub const UNREADABLE: &str = "The answer could not be read: load the page again.";

/// Goes on with it after all.
pub const WORK_OUT: &str = "Work it out";
