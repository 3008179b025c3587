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

/// Whom the address that is put in front of a link reaches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// Who sits at this computer.
    Machine,
    /// Who is in the same network.
    Network,
    /// Everybody, as far as the address tells.
    Everywhere,
}

/// Over the ways to send a gear: whom a link does not reach; empty where it reaches everybody.
#[must_use]
pub fn reach_line(reach: Reach, address: &str) -> String {
    let host = address.split("://").last().unwrap_or_default();
    let host = host.split('/').next().unwrap_or_default();
    match reach {
        Reach::Machine if host.is_empty() => {
            "This page is a file on this computer: a link to it opens nowhere else.".to_owned()
        }
        Reach::Machine => {
            format!(
                "The address of this page, {host}, leads to this computer: a link to it opens nowhere else."
            )
        }
        Reach::Network => {
            format!(
                "The address of this page, {host}, leads to a computer in this network: a link to it opens nowhere else."
            )
        }
        Reach::Everywhere => String::new(),
    }
}

/// What copies the link, or the code where a link leads to this computer only.
#[must_use]
pub fn copy_words(reach: Reach) -> &'static str {
    match reach {
        Reach::Machine => "Copy the code",
        Reach::Network | Reach::Everywhere => "Copy the link",
    }
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

/// The link was copied, with so many entries that could not be read and are not in it; or its code, where a link
/// leads to this computer only.
#[must_use]
pub fn copied(unread: usize, reach: Reach) -> String {
    let left_out = match unread {
        0 => "",
        1 => " One entry that could not be read is not in it: the number from before is.",
        _ => " Entries that could not be read are not in it: the numbers from before are.",
    };
    let copied = match reach {
        Reach::Machine => {
            "The code is on the clipboard. Whoever has the page pastes it there, under “Link”."
        }
        Reach::Network => {
            "The link is on the clipboard. Whoever opens it in this network sees this gear, this leg and this place."
        }
        Reach::Everywhere => {
            "The link is on the clipboard. Whoever opens it sees this gear, this leg and this place."
        }
    };
    format!("{copied}{left_out}")
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
        "The link would have {length} characters; many mail and message programs cut it at {most}. Send one HTML file or the gear file instead."
    )
}

/// Gives out the page with the gear in it.
pub const SAVE_ONE_FILE: &str = "Save as one HTML file";

/// The page with the gear in it could not be made, and why.
#[must_use]
pub fn not_one_file(reason: &str) -> String {
    format!(
        "The page could not be saved as one file: {reason}. The gear file and the code hold the same gear."
    )
}

/// The typed text is no address of a page.
pub const NO_ADDRESS: &str = "An address of a page begins with http:// or https:// and has no blanks in it. The one from before stays.";

/// A newer version of the page has been fetched.
pub const NEWER_WAITS: &str =
    "A newer version of this page is ready. Your work is stored and comes along.";

/// Goes over to it.
pub const TAKE_NEWER: &str = "Load it";

/// A link of a version that a page of another, older one does not read.
#[must_use]
pub fn looking_for_newer(version: u64, known: u64) -> String {
    format!(
        "The link is not opened yet: it was made by a newer version ({version}); this page is version {known}. It looks for its newer version and opens the link with it; until then the link stays in the address line. Your own work is as it was."
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

/// How the own file stands to what somebody has sent.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Own {
    /// It is of the same gear.
    Same,
    /// What was sent answers it as it is now.
    AsItIs,
    /// What was sent answers it as it was.
    Changed,
    /// Its legs have the same names and places.
    Seems,
}

/// What stands over the page while the content of a link is open.
#[must_use]
pub fn banner(gear: &str, said: Option<&str>, own: Option<(Own, &str)>) -> String {
    let said = said.map_or_else(String::new, |said| format!("{said} "));
    let own = own.map_or_else(String::new, |(how, name)| {
        let name = name_words(name);
        match how {
            Own::Same => format!(" It is another version of your file “{name}”."),
            Own::AsItIs => format!(" It was made from your file “{name}” as that is now."),
            Own::Changed => {
                format!(" It was made from your file “{name}”, which has changed since.")
            }
            Own::Seems => format!(" It seems to be another version of your file “{name}”."),
        }
    });
    format!(
        "{said}Sent to you: “{}”.{own} What was sent is not among your files; your own work is as it was. A change here keeps it as a file of its own.",
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
        "What was sent is now a file of its own: “{}”. Your other files are as they were.",
        name_words(name)
    )
}
