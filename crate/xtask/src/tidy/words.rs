//! Words for people stand in `crate/report`: not in what lays them out, nor in what hands them on.

use super::finding::{Finding, TextFile};
use super::literal::literals;
use std::collections::BTreeSet;

/// Rooms without words of their own.
const WORDLESS: &[&str] = &["crate/app/src/", "crate/page/src/"];

/// Where the names of classes come from.
const STYLES: &str = "www/";

/// Texts that look like words and are none: no person reads them.
struct Known {
    /// File in which they stand.
    file: &'static str,
    /// What they are.
    what: &'static str,
    /// The literals as written.
    texts: &'static [&'static str],
}

const KNOWN: &[Known] = &[
    Known {
        file: "crate/app/src/state/storage.rs",
        what: "format of what the browser stores",
        texts: &[
            "gearswing stored file",
            "gearswing index",
            "next step|",
            "{INDEX_HEAD} {VERSION}\\nunits {}\\ntheme {}\\n",
            "open {open}\\n",
            "told clearing\\n",
            "file {id}\\n",
        ],
    },
    Known {
        file: "crate/page/src/effects/storage/database.rs",
        what: "error as the browser names it",
        texts: &["QuotaExceededError"],
    },
    Known {
        file: "crate/page/src/effects/theme.rs",
        what: "media query",
        texts: &["(prefers-color-scheme: dark)"],
    },
    Known {
        file: "crate/page/src/input/window.rs",
        what: "media query",
        texts: &[
            "(prefers-reduced-motion: reduce)",
            "(resolution: {ratio}dppx)",
        ],
    },
    Known {
        file: "crate/page/src/input/fields.rs",
        what: "key as the browser names it",
        texts: &["Enter", "Escape", "ArrowUp", "ArrowDown"],
    },
    Known {
        file: "crate/page/src/input/stops.rs",
        what: "key as the browser names it",
        texts: &["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"],
    },
    Known {
        file: "crate/page/src/input/keys.rs",
        what: "key as the browser names it",
        texts: &[
            "ArrowLeft",
            "ArrowRight",
            "ArrowUp",
            "ArrowDown",
            "Delete",
            "Backspace",
            "Enter",
            "Insert",
            "Home",
            "Escape",
        ],
    },
    Known {
        file: "crate/page/src/input/hold.rs",
        what: "selector",
        texts: &["canvas, input[type=range]"],
    },
    Known {
        file: "crate/page/src/panels/steady.rs",
        what: "selector",
        texts: &["#sheet, .drop-body"],
    },
    Known {
        file: "crate/page/src/panels/answers.rs",
        what: "classes, the first without a style",
        texts: &["faults plain-list"],
    },
    Known {
        file: "crate/page/src/panels/field.rs",
        what: "identifiers of elements",
        texts: &["{id}-error {id}-echo {id}-help"],
    },
    Known {
        file: "crate/page/src/paint/theme.rs",
        what: "font of a canvas",
        texts: &["{weight}{size_px}px {}"],
    },
    Known {
        file: "crate/page/src/input/scrub.rs",
        what: "line of the browser's console",
        texts: &["pointer not captured"],
    },
    Known {
        file: "crate/page/src/runtime/solving.rs",
        what: "mark on the browser's timeline",
        texts: &["solving begins"],
    },
];

/// Names of the classes of all style sheets.
pub(crate) fn classes(files: &[TextFile]) -> BTreeSet<String> {
    let styles = files
        .iter()
        .filter(|file| file.path.starts_with(STYLES) && file.extension() == "css");
    styles
        .flat_map(|file| file.text.split('.').skip(1))
        .map(|rest| {
            let end = rest.find(|c: char| !c.is_ascii_alphanumeric() && c != '-' && c != '_');
            rest[..end.unwrap_or(rest.len())].to_owned()
        })
        .collect()
}

/// The rule on one file.
pub(crate) fn check(file: &TextFile, classes: &BTreeSet<String>, found: &mut Vec<Finding>) {
    if !is_wordless(file) {
        return;
    }
    let known = KNOWN.iter().filter(|known| known.file == file.path);
    let known: Vec<&str> = known.flat_map(|known| known.texts).copied().collect();
    for (line, text) in literals(shipped(&file.text)) {
        let is_class_list = text.split_whitespace().all(|name| classes.contains(name));
        if looks_like_words(text) && !is_class_list && !known.contains(&text) {
            found.push(Finding::line(
                file,
                line,
                format!("\"{text}\" reads like words for people; they belong in crate/report"),
            ));
        }
    }
}

/// Exceptions that aren't needed any more.
pub(crate) fn stale_exceptions(files: &[TextFile], found: &mut Vec<Finding>) {
    for known in KNOWN {
        let there = files.iter().find(|file| file.path == known.file);
        for text in known.texts {
            let is_there = there.is_some_and(|file| {
                literals(shipped(&file.text)).any(|(_, literal)| literal == *text)
            });
            if !is_there || !looks_like_words(text) {
                let what = known.what;
                found.push(Finding::at(
                    known.file,
                    format!("\"{text}\" ({what}) is excepted from the rule on words without need"),
                ));
            }
        }
    }
}

fn is_wordless(file: &TextFile) -> bool {
    file.extension() == "rs"
        && !file.path.ends_with("/tests.rs")
        && WORDLESS.iter().any(|room| file.path.starts_with(room))
}

/// The part of a source file before its tests.
fn shipped(text: &str) -> &str {
    text.split("\n#[cfg(test)]\nmod tests {")
        .next()
        .unwrap_or(text)
}

/// Whether a literal reads like words for people: a word of two letters or more beside a space, or a
/// first letter that is a capital with small ones behind it. What stands in braces is filled in.
fn looks_like_words(literal: &str) -> bool {
    let text = without_braces(literal)
        .replace("\\n", " ")
        .replace("\\\"", "\"");
    let mut letters = text.chars().skip_while(|c| !c.is_alphanumeric());
    let capital = letters.next().is_some_and(char::is_uppercase)
        && letters.next().is_some_and(char::is_lowercase);
    let is_word = |part: &str| part.chars().filter(|c| c.is_alphabetic()).count() > 1;
    let spaced = text.contains(' ') && text.split(' ').any(is_word);
    capital || spaced
}

/// A format without what is filled in.
fn without_braces(format: &str) -> String {
    let mut depth = 0_usize;
    let mut text = String::new();
    for c in format.chars() {
        match c {
            '{' => depth += 1,
            '}' => depth = depth.saturating_sub(1),
            c if depth == 0 => text.push(c),
            _ => {}
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(path: &str, text: &str) -> Vec<String> {
        let file = |path: &str, text: &str| TextFile {
            path: path.into(),
            text: text.into(),
        };
        let style = file("www/style.css", ".quiet, p.small { margin: 0.5em }\n");
        let mut found = Vec::new();
        check(&file(path, text), &classes(&[style]), &mut found);
        found.iter().map(ToString::to_string).collect()
    }

    #[test]
    fn planted_words_are_refused() {
        for words in [
            "The leg stops here.",
            "the leg stops here",
            "Open",
            "{count} pieces",
            "change of {name}",
            "“{}” is kept",
            "no link: {reason}",
            "(Empty)",
            "quiet leg",
        ] {
            let planted = format!("//! A.\n\nfn a() -> String {{\n    format!(\"{words}\")\n}}\n");
            for room in ["crate/app/src/view/a.rs", "crate/page/src/a.rs"] {
                let found = found(room, &planted);
                assert_eq!(found.len(), 1, "{words}: {found:?}");
                assert!(found[0].starts_with(&format!("{room}:4: ")), "{found:?}");
            }
            assert!(found("crate/report/src/a.rs", &planted).is_empty());
        }
    }

    #[test]
    fn keys_classes_and_comments_are_none() {
        for other in [
            "data-handle",
            "legs[{leg}].well[{at}]",
            "{x_px:.1}px",
            "quiet small",
            "P",
            "B0",
            "{state}|{}|{}",
            "{text}, {more}",
            "km/h",
            "",
            " ",
        ] {
            let text =
                format!("//! A. It is so.\n\nfn a() {{\n    b(\"{other}\"); // Or not.\n}}\n");
            assert!(found("crate/app/src/a.rs", &text).is_empty(), "{other}");
        }
        let reason = "//! A.\n#[allow(x, reason = \"a lint is wrong here\")]\nfn a() {}\n";
        assert!(found("crate/app/src/a.rs", reason).is_empty());
        let test = "//! A.\n\n#[cfg(test)]\nmod tests {\n    const A: &str = \"it is so\";\n}\n";
        assert!(found("crate/app/src/a.rs", test).is_empty());
    }

    #[test]
    fn exceptions_name_what_they_are() {
        let mut found = Vec::new();
        stale_exceptions(&[], &mut found);
        let texts: usize = KNOWN.iter().map(|known| known.texts.len()).sum();
        assert_eq!(found.len(), texts, "without any file all are stale");
        assert!(KNOWN.iter().all(|known| !known.what.is_empty()));
    }
}
