//! Steps of the history, undone and redone.

/// A step, as it stands behind "Undo".
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step<'a> {
    /// A field was changed.
    Change {
        /// Name of the field within a sentence.
        of: &'a str,
    },
    /// A point was moved.
    Move {
        /// Name of the point.
        of: &'a str,
    },
    /// An entry was added.
    Add {
        /// Name of the list.
        to: &'a str,
    },
    /// An entry was removed.
    Remove {
        /// Its name.
        of: &'a str,
    },
    /// A tire was taken from the table of sizes.
    TakeTire {
        /// Its size.
        size: &'a str,
    },
    /// An entry was made that is not taken.
    Entry {
        /// Name of the field within a sentence.
        of: &'a str,
    },
    /// The tire was kept as the previous one.
    KeepTire,
    /// The gear file got another name.
    Rename,
    /// The state was kept to compare with.
    Keep,
    /// A kept state got another name.
    RenameKept,
    /// A note was written.
    Note,
    /// All changes from the state compared with were taken back.
    TakeAllBack,
}

/// A step in words.
#[must_use]
pub fn step_words(step: Step) -> String {
    match step {
        Step::Change { of } => format!("change of {of}"),
        Step::Move { of } => format!("move of {of}"),
        Step::Add { to } => format!("adding to {to}"),
        Step::Remove { of } => format!("removal of {of}"),
        Step::TakeTire { size } => format!("taking of tire size {size}"),
        Step::Entry { of } => format!("entry at {of}"),
        Step::KeepTire => "keeping of the tire as the previous one".to_owned(),
        Step::Rename => "new name of the gear file".to_owned(),
        Step::Keep => "keeping to compare".to_owned(),
        Step::RenameKept => "new name of a kept state".to_owned(),
        Step::Note => "a note".to_owned(),
        Step::TakeAllBack => "all as in the kept state".to_owned(),
    }
}

/// What would be undone next.
#[must_use]
pub fn undo_hint(step: &str) -> String {
    format!("Undo: {step}")
}

/// What would be redone next.
#[must_use]
pub fn redo_hint(step: &str) -> String {
    format!("Redo: {step}")
}

/// A step was undone, spoken.
#[must_use]
pub fn undone(step: &str) -> String {
    format!("Undone: {step}.")
}

/// A step was redone, spoken.
#[must_use]
pub fn redone(step: &str) -> String {
    format!("Redone: {step}.")
}

/// A stored step cannot be read.
pub const STEPS_LOST: &str =
    "This step and those before it cannot be read any more. The gear is as it was.";
