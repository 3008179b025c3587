//! Links.
use crate::name::name_words;

/// The link that a gear has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Link<'a> {
    /// Its length (characters).
    Ready(usize),
    /// Its length, and the most that messages carry (characters).
    TooLong(usize, usize),
    /// There is none, and why.
    Refused(&'a str),
}

/// Beside the press that copies the link.
#[must_use]
pub fn link_line(link: Link) -> String {
    match link {
        Link::Ready(length) => format!("{length} characters"),
        Link::TooLong(length, most) => format!(
            "{length} characters: more than the {most} that messages carry. Send the gear file."
        ),
        Link::Refused(reason) => format!("no link: {reason}"),
    }
}

/// The link was copied, with so many entries that could not be read and are not in it; it may lead to this
/// computer only.
#[must_use]
pub fn copied(unread: usize, here_only: bool) -> String {
    let left_out = match unread {
        0 => "",
        1 => " One entry that could not be read is not in it: the number from before is.",
        _ => " Entries that could not be read are not in it: the numbers from before are.",
    };
    let who = if here_only {
        "It leads to the page on this computer: whoever has the page elsewhere pastes it there, under “Link”. To anybody else send the gear file."
    } else {
        "Whoever opens it sees this gear, this leg and this place."
    };
    format!("The link is on the clipboard. {who}{left_out}")
}

/// The link was not copied, and why.
#[must_use]
pub fn not_copied(reason: &str) -> String {
    format!(
        "The link could not be put on the clipboard: {reason}. It stands in the address line: copy it from there."
    )
}

/// There is no link, and why.
#[must_use]
pub fn no_link(reason: &str) -> String {
    format!("There is no link for this gear: {reason}.")
}

/// The link is too long to be sent: its length, and the most that is safe (characters).
#[must_use]
pub fn too_long(length: usize, most: usize) -> String {
    format!(
        "The link would have {length} characters; many mail and message programs cut it at {most}. Send the gear file instead."
    )
}

/// Gives the file out in place of a link.
pub const SAVE_FILE: &str = "Save the gear file";

/// Nothing was pasted.
pub const PASTE_FIRST: &str = "Paste a link into the field first.";

/// The link cannot be opened, and why.
#[must_use]
pub fn not_opened(reason: &str) -> String {
    format!(
        "The link is not opened: {reason}. Ask for it again, or for the gear file. Your own work is as it was."
    )
}

/// What stands over the page while the content of a link is open.
#[must_use]
pub fn banner(gear: &str) -> String {
    format!(
        "From a link: “{}”. It is not among your files; your own work is as it was. A change here keeps it as a file of its own.",
        name_words(gear)
    )
}

/// Keeps the content of a link.
pub const KEEP: &str = "Keep as a new file";

/// Leaves it.
pub const LEAVE: &str = "Back to my own";

/// The content of a link has become a file.
#[must_use]
pub fn kept_as(name: &str) -> String {
    format!(
        "What the link brought is now a file of its own: “{}”. Your other files are as they were.",
        name_words(name)
    )
}
