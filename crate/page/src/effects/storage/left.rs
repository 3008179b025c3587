//! What a page that ends leaves of a gear file, as one text.
//!
//! The first line has the lengths: of the texts that the file may take the place of, and, behind a
//! semicolon, of the steps of its history. The texts follow in the same order, the file's own last.

use super::batch::FileBatch;

/// Stands for steps that are of another file, among the lengths.
const FRESH: &str = "fresh";

/// A gear file that was not seen on the disk before the page ended.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Left {
    /// It is to take the place of none but these: one of them is stored by then.
    pub(super) over: Vec<String>,
    /// Its text, and what is to be changed in its history.
    pub(super) file: FileBatch,
}

impl Left {
    /// A text alone.
    pub(super) fn of(text: &str) -> Self {
        let mut left = Self::default();
        left.file.text = Some(text.to_owned());
        left
    }

    /// As one text.
    pub(super) fn written(&self) -> String {
        let lengths: Vec<String> = self
            .over
            .iter()
            .map(|over| over.len().to_string())
            .collect();
        let mut marks = Vec::new();
        if self.file.fresh {
            marks.push(FRESH.to_owned());
        }
        for (number, step) in &self.file.steps {
            marks.push(match step {
                Some(text) => format!("{number}:{}", text.len()),
                None => format!("{number}:"),
            });
        }
        let mut written = lengths.join(",");
        if !marks.is_empty() {
            written = format!("{written};{}", marks.join(","));
        }
        written.push('\n');
        written.extend(self.over.iter().map(String::as_str));
        written.extend(self.file.steps.values().filter_map(Option::as_deref));
        written.extend(self.file.text.as_deref());
        written
    }

    /// Reads it back; `None` when it is cut off or of another kind.
    pub(super) fn read(written: &str) -> Option<Self> {
        let (first, mut rest) = written.split_once('\n')?;
        let (lengths, marks) = first.split_once(';').unwrap_or((first, ""));
        let mut next = |length: &str| {
            let (one, behind) = rest.split_at_checked(length.parse().ok()?)?;
            rest = behind;
            Some(one.to_owned())
        };
        let mut left = Self::default();
        for length in lengths.split(',').filter(|length| !length.is_empty()) {
            left.over.push(next(length)?);
        }
        for mark in marks.split(',').filter(|mark| !mark.is_empty()) {
            if mark == FRESH {
                left.file.fresh = true;
                continue;
            }
            let (number, length) = mark.split_once(':')?;
            let step = if length.is_empty() {
                None
            } else {
                Some(next(length)?)
            };
            left.file.steps.insert(number.parse().ok()?, step);
        }
        left.file.text = Some(rest.to_owned());
        Some(left)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn example() -> Left {
        let mut left = Left::of("the gear\nitself");
        left.over = vec!["before".to_owned(), "größer".to_owned()];
        let steps = &mut left.file.steps;
        steps.insert(3, None);
        steps.insert(4, Some("undo\nname\n{}".to_owned()));
        steps.insert(5, Some(String::new()));
        left
    }

    #[test]
    fn what_is_written_is_read_back() {
        let mut fresh = example();
        fresh.file.fresh = true;
        let mut alone = Left::of("text");
        alone.file.fresh = true;
        for left in [Left::of(""), Left::of("text;\n1"), example(), fresh, alone] {
            assert_eq!(Left::read(&left.written()).as_ref(), Some(&left));
        }
    }

    #[test]
    fn the_form_of_earlier_versions_is_read() {
        let left = Left::read("3,2\noneabtext").unwrap();
        assert_eq!(left.over, ["one", "ab"]);
        assert_eq!(left.file.text.as_deref(), Some("text"));
        assert!(!left.file.fresh && left.file.steps.is_empty());
    }

    #[test]
    fn a_damaged_one_is_none() {
        let whole = example().written();
        let head = whole.find('\n').unwrap();
        let texts = whole.len() - "the gear\nitself".len();
        for end in (0..texts).filter(|end| whole.is_char_boundary(*end)) {
            assert_eq!(Left::read(&whole[..end]), None, "{end} of {head}");
        }
        for text in ["", "9\nab", "x\nab", "1;2\nab", "1;a:1\nab", "1;1:z\nab"] {
            assert_eq!(Left::read(text), None, "{text:?}");
        }
    }
}
