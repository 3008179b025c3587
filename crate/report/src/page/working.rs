//! Working out, and giving it up.

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

/// Goes on with it after all.
pub const WORK_OUT: &str = "Work it out";
