//! Finding the link text in what was pasted: whole addresses, wrapped lines, marks put around it.
use super::code::MARK;

/// What stands before a link text in an address; mail filters write `#` as `%23`, some twice.
const BEFORE: [&str; 3] = ["#", "%23", "%2523"];

/// The characters of the link text, and perhaps some more after it.
///
/// Takes what follows the last of [`BEFORE`] that a link's mark follows, else what follows the
/// last one at all, else everything. Blanks, line breaks and angle brackets (of quoted mail) are
/// taken out anywhere, other signs that are no part of a link text at the end only.
pub(super) fn strip(pasted: &str) -> String {
    let kept: String = pasted.chars().filter(|&c| !is_put_in(c)).collect();
    let mut last = None;
    let mut marked = None;
    for before in BEFORE {
        for (at, _) in kept.match_indices(before) {
            let from = at + before.len();
            last = last.max(Some(from));
            if kept.get(from..).is_some_and(|t| t.starts_with(MARK)) {
                marked = marked.max(Some(from));
            }
        }
    }
    let from = marked.or(last).unwrap_or(0);
    kept.get(from..)
        .unwrap_or_default()
        .trim_start_matches(['"', '\'', '(', '[', '*', '`'])
        .trim_end_matches(|c: char| !c.is_ascii_alphanumeric() && c != '-' && c != '_')
        .to_owned()
}

/// Signs that mail programs and quoting put in.
fn is_put_in(c: char) -> bool {
    c.is_whitespace()
        || matches!(
            c,
            '<' | '>' | '\u{ad}' | '\u{200b}'..='\u{200d}' | '\u{2060}' | '\u{feff}'
        )
}
