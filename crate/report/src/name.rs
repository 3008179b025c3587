//! Names that a person typed, made safe to stand in a sentence, a message or a cell.

/// Longest name in a sentence (characters); a longer one is cut.
const LONGEST_NAME: usize = 40;

/// Longest name of a file in a message (characters); of a longer one the end is shown.
const LONGEST_FILE: usize = 120;

/// Longest message (characters): fifteen lines of a terminal, less than any screen.
const LONGEST_MESSAGE: usize = 1_200;

/// How much of the end of a message stays where its middle is cut (characters).
const END_OF_MESSAGE: usize = 300;

/// First strong isolate: what follows has its own direction.
const ISOLATE: char = '\u{2068}';

/// Pop directional isolate: the end of it.
const END_ISOLATE: char = '\u{2069}';

/// A person's text as one line that is safe to print: control and direction-changing characters
/// become spaces, and runs of space one.
#[must_use]
pub fn clean(text: &str) -> String {
    let clean: String = text
        .chars()
        .map(|c| if is_unprintable(c) { ' ' } else { c })
        .collect();
    clean.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A name as it may stand in any sentence or label: cleaned, cut where it is long, and isolated
/// where it has letters from right to left, so that the words around it keep their order.
#[must_use]
pub fn name_words(name: &str) -> String {
    isolated(short_name(name))
}

/// As [`name_words`], without the isolation; for names whose letters are to be looked at.
pub(crate) fn short_name(name: &str) -> String {
    let mut line = clean(name);
    if let Some((cut, _)) = line.char_indices().nth(LONGEST_NAME) {
        line.truncate(cut);
        line.truncate(line.trim_end().len());
        line.push('…');
    }
    line
}

/// The name of a file within a message; a long one shows its end.
#[must_use]
pub fn file_words(file: &str) -> String {
    let line = clean(file);
    let count = line.chars().count();
    if count <= LONGEST_FILE {
        return isolated(line);
    }
    let end: String = line.chars().skip(count - LONGEST_FILE).collect();
    isolated(format!("…{}", end.trim_start()))
}

/// A message that fits a screen: one that is too long loses its middle.
#[must_use]
pub fn brief(text: &str) -> String {
    let count = text.chars().count();
    if count <= LONGEST_MESSAGE {
        return text.to_owned();
    }
    let start: String = text
        .chars()
        .take(LONGEST_MESSAGE - END_OF_MESSAGE)
        .collect();
    let end: String = text.chars().skip(count - END_OF_MESSAGE).collect();
    format!("{} … {}", start.trim_end(), end.trim_start())
}

/// A text as one cell of a CSV table. A spreadsheet takes a text that begins with one of these signs
/// for a formula: an apostrophe before it keeps it a text (common practice); a plain number stays.
pub(crate) fn cell(text: &str) -> String {
    let mut text = clean(text);
    if text.starts_with(FORMULA_SIGNS) && text.parse::<f64>().is_err() {
        text.insert(0, '\'');
    }
    if text.contains([',', '"']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text
    }
}

/// Signs that begin a formula, in their wide forms too; tab and line ends never come so far.
const FORMULA_SIGNS: [char; 8] = ['=', '+', '-', '@', '＝', '＋', '－', '＠'];

pub(crate) fn isolated(text: String) -> String {
    if text.chars().any(is_right_to_left) {
        format!("{ISOLATE}{text}{END_ISOLATE}")
    } else {
        text
    }
}

/// Whether a text begins with the start of an isolated name.
pub(crate) fn after_isolate(text: &str) -> usize {
    if text.starts_with(ISOLATE) {
        ISOLATE.len_utf8()
    } else {
        0
    }
}

/// Blocks of letters and digits from right to left, those yet without a letter included (Unicode,
/// DerivedBidiClass.txt, default classes R and AL).
fn is_right_to_left(c: char) -> bool {
    matches!(c, '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdcf}' | '\u{fdf0}'..='\u{fdff}' | '\u{fe70}'..='\u{feff}'
        | '\u{10800}'..='\u{10fff}' | '\u{1e800}'..='\u{1efff}')
}

/// Controls (C0, C1), and characters that are not seen but turn, join or hide text: bidirectional
/// controls, zero-width characters, line separators, annotations, tags.
fn is_unprintable(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}'
            | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}' | '\u{feff}'
            | '\u{fff9}'..='\u{fffb}' | '\u{e0000}'..='\u{e007f}')
}

#[cfg(test)]
mod tests {
    use unicode_bidi::{BidiClass, BidiInfo, Level, bidi_class};

    use super::*;
    use crate::text::{own, the_leg};

    /// As a screen shows a line whose direction is left to right (Unicode Standard Annex 9, by the
    /// crate unicode-bidi).
    fn shown(line: &str) -> String {
        let info = BidiInfo::new(line, Some(Level::ltr()));
        let paragraph = info.paragraphs.first().unwrap();
        info.reorder_line(paragraph, paragraph.range.clone())
            .into_owned()
    }

    /// A name in Hebrew letters, one with an override to the left, one with an open embedding.
    const TURNING: [&str; 4] = [
        "\u{5d0}\u{5d1}\u{5d2} 12",
        "Left \u{202e}main",
        "12 \u{627}\u{628} (3)",
        "\u{2067}gear",
    ];

    #[test]
    fn a_name_never_turns_the_words_around_it() {
        for name in TURNING {
            for line in [
                format!("{}, 12.5 mm left", name_words(name)),
                format!(
                    "{} touches {} at 78.0 % of travel",
                    the_leg(name, 0),
                    name_words(name)
                ),
                format!("{} needs 812 psi", own(name, 0, "actuator")),
            ] {
                let shown = shown(&line);
                let seen = |words: &str| shown.contains(words);
                assert!(
                    seen(", 12.5 mm left")
                        || seen(" at 78.0 % of travel")
                        || seen(" needs 812 psi"),
                    "{line:?} is shown as {shown:?}"
                );
            }
        }
        // without isolation the number moves to the other side of the name
        let bare = format!("{}, 12.5 mm left", TURNING[0]);
        assert!(!shown(&bare).contains(", 12.5 mm left"));
    }

    /// Every character that the standard's data class as right to left is known here, and none that
    /// it classes as left to right.
    #[test]
    fn right_to_left_letters_are_those_of_the_standard() {
        for c in '\0'..=char::MAX {
            match bidi_class(c) {
                BidiClass::R | BidiClass::AL | BidiClass::AN if c != '\u{200f}' => {
                    // two digits of other scripts' number signs stand outside the blocks
                    assert!(is_right_to_left(c) || c == '\u{61c}', "{:x}", u32::from(c));
                }
                BidiClass::L => assert!(!is_right_to_left(c), "{:x}", u32::from(c)),
                BidiClass::LRE
                | BidiClass::RLE
                | BidiClass::LRO
                | BidiClass::RLO
                | BidiClass::PDF
                | BidiClass::LRI
                | BidiClass::RLI
                | BidiClass::FSI
                | BidiClass::PDI => assert!(is_unprintable(c), "{:x}", u32::from(c)),
                _ => {}
            }
        }
    }

    #[test]
    fn long_names_and_messages_are_cut() {
        let long = "a".repeat(100_000);
        assert_eq!(name_words(&long).chars().count(), LONGEST_NAME + 1);
        assert!(name_words(&long).ends_with('…'));
        assert_eq!(
            name_words("Root rib with repair angle"),
            "Root rib with repair angle"
        );
        let message = brief(&format!("unknown field `{long}` (line 1, column 9)"));
        assert!(message.chars().count() <= LONGEST_MESSAGE + 3);
        assert!(message.starts_with("unknown field") && message.ends_with("(line 1, column 9)"));
        assert_eq!(
            file_words(&format!("/a/{long}/gear.json")).chars().count(),
            LONGEST_FILE + 1
        );
        assert!(file_words(&format!("/a/{long}/gear.json")).ends_with("/gear.json"));
    }

    /// What a spreadsheet takes for a formula stays a text, and numbers stay numbers.
    #[test]
    fn cells_are_no_formulas() {
        for (text, cell_text) in [
            ("=1+2", "'=1+2"),
            ("@SUM(A1)", "'@SUM(A1)"),
            ("+1 555", "'+1 555"),
            ("\t=cmd", "'=cmd"),
            ("\r\n-x,y", "\"'-x,y\""),
            ("－x", "'－x"),
            ("-12.5", "-12.5"),
            ("+3e2", "+3e2"),
            ("Left main", "Left main"),
            ("say \"=1\"", "\"say \"\"=1\"\"\""),
        ] {
            assert_eq!(cell(text), cell_text, "{text:?}");
        }
    }
}
