//! Files: opened, taken in, given out, deleted.
use gearswing_gearfile::ExampleKind;

use super::names::seen_words;
use crate::name::name_words;

/// Opens a file.
pub const OPEN: &str = "Open";

/// Deletes a file.
pub const DELETE: &str = "Delete";

/// Gives out the text of a file that cannot be read.
pub const SAVE_TEXT: &str = "Save its text";

/// What a new file can start from.
#[must_use]
pub fn example_title(kind: ExampleKind) -> String {
    let (brace, view) = match kind {
        ExampleKind::Demo => return "The demo".to_owned(),
        ExampleKind::Folding(view) => ("Folding brace", view),
        ExampleKind::Sliding(view) => ("Telescoping brace", view),
        ExampleKind::NoBrace(view) => ("No brace", view),
    };
    format!("{brace}, {}", seen_words(view))
}

/// What is done to a file, in full.
#[must_use]
pub fn act_on(label: &str, file: &str) -> String {
    format!("{label} “{}”", name_words(file))
}

/// A stored file whose name cannot be read, by its key.
#[must_use]
pub fn unnamed(id: &str) -> String {
    format!("File {id}")
}

/// Name under which a list of files that cannot be read is kept.
pub const KEPT_LIST: &str = "Kept list of files";

/// The demo stands open though there are files.
pub const OWN_FILES: &str = "This is the demo. Your own files are kept: open them under “File”.";

/// The list of files cannot be read, and is kept under a key.
#[must_use]
pub fn list_unreadable(reason: &str, id: &str) -> String {
    format!(
        "The list of your gear files cannot be read: {reason}. It is kept under “{id}”; the files themselves are listed below."
    )
}

/// A stored file cannot be opened.
#[must_use]
pub fn stored_unreadable(id: &str, reason: &str) -> String {
    format!("The stored file “{id}” cannot be opened: {reason}. It is kept as it is.")
}

/// The file that was to be opened cannot be.
#[must_use]
pub fn not_opened(reason: &str) -> String {
    format!("This file cannot be opened: {reason}. It is kept as it is.")
}

/// The demo cannot be opened.
#[must_use]
pub fn demo_unreadable(reason: &str) -> String {
    format!("The demo cannot be opened: {reason}.")
}

/// An example cannot be opened.
#[must_use]
pub fn example_unreadable(reason: &str) -> String {
    format!("This example cannot be opened: {reason}.")
}

/// A file of the person's disk cannot be read.
#[must_use]
pub fn unreadable(file: &str, reason: &str) -> String {
    let file = name_words(file);
    format!("“{file}” cannot be read: {reason}. Nothing has changed.")
}

/// A file of the person's disk is too large: its size and the most that is read (MB).
#[must_use]
pub fn too_large(size_mb: f64, most_mb: f64) -> String {
    format!("it has {size_mb:.1} MB, and no more than {most_mb} MB are read")
}

/// A file of the person's disk has no text.
pub const NO_TEXT: &str = "it holds no text";

/// A file was taken in, under the name that it is kept by.
#[must_use]
pub fn imported(file: &str, name: &str) -> String {
    format!(
        "“{}” is imported as “{}”. Your other files are as they were.",
        name_words(file),
        name_words(name)
    )
}

/// A file was not taken in.
#[must_use]
pub fn not_imported(file: &str, reason: &str) -> String {
    let file = name_words(file);
    format!("“{file}” is not imported: {reason}. Your own files are as they were.")
}

/// Several files were taken in out of one, of which some cannot be read.
#[must_use]
pub fn several_imported(file: &str, count: usize, unread: usize) -> String {
    let file = name_words(file);
    let files = if count == 1 {
        "1 file"
    } else {
        &format!("{count} files")
    };
    let rest = match unread {
        0 => String::new(),
        1 => " One of them cannot be read; it is listed and kept as it is.".to_owned(),
        n => format!(" {n} of them cannot be read; they are listed and kept as they are."),
    };
    format!("{files} imported from “{file}”. Your other files are as they were.{rest}")
}

/// The file cannot be given out.
#[must_use]
pub fn not_exported(reason: &str) -> String {
    format!("The gear file cannot be exported: {reason}.")
}

/// The files cannot be given out together.
#[must_use]
pub fn all_not_exported(reason: &str) -> String {
    format!("The files cannot be exported: {reason}.")
}

/// A file was deleted.
#[must_use]
pub fn deleted(name: &str) -> String {
    format!(
        "“{}” is deleted. It can be brought back until you leave this page.",
        name_words(name)
    )
}

/// Brings it back.
pub const BRING_BACK: &str = "Bring it back";

/// Another window has changed the open file, which was as it was stored.
pub const CHANGED_ELSEWHERE: &str =
    "This file was changed in another window; the change is shown here.";

/// Another window has changed the open file, which was changed here too.
pub const CHANGED_IN_BOTH: &str = "This file was changed in another window. What you have here goes on as a file of its own; both are in the list.";
