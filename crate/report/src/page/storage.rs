//! Keeping the work in the browser.

/// The work is not stored, and why.
#[must_use]
pub fn not_kept(reason: &str) -> String {
    format!(
        "Your work is not kept in this browser: {reason}. Export it before you leave the page. Storing is tried again and again."
    )
}

/// The work is stored again.
pub const KEPT_AGAIN: &str = "Storing works again: your work is kept in this browser.";

/// The browser may clear what it keeps.
pub const MAY_BE_CLEARED: &str = "This browser does not promise to keep your files: it may clear them when its disk is full or the page is not visited for long. Export what you cannot do without.";

/// The last change is not stored, and why.
#[must_use]
pub fn change_not_stored(reason: &str) -> String {
    format!("The last change is not stored: {reason}.")
}

/// What is wrong with a stored text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StoredFault {
    /// It ends before the gear file begins.
    CutOff,
    /// It does not begin as texts of this program do.
    Foreign,
    /// It is of a newer format: its number, and that which this program reads.
    Newer(u32, u32),
    /// Its format cannot be read.
    Damaged,
}

/// What is wrong with a stored text, as a clause.
#[must_use]
pub fn stored_fault(fault: StoredFault) -> String {
    match fault {
        StoredFault::CutOff => "the stored text is cut off".to_owned(),
        StoredFault::Foreign => "the stored text is not of this program".to_owned(),
        StoredFault::Newer(newer, known) => format!(
            "stored by a newer version of this program (format {newer}; this one reads {known})"
        ),
        StoredFault::Damaged => "the stored text is damaged".to_owned(),
    }
}
