//! Rules that any source file is held to.

use super::finding::{Finding, TextFile};

/// Longest file, tests included.
const MOST_LINES: usize = 400;

/// Files that may be longer, each with its reason.
const LONGER: &[(&str, &str)] = &[];

/// Never in Rust: a test that doesn't run or passes by failing, work left open.
/// In pieces, so that this list doesn't find itself.
const UNFINISHED: &[&str] = &[
    concat!("#[", "ignore"),
    concat!("should", "_panic"),
    concat!("to", "do!("),
    concat!("unimple", "mented!("),
];

/// Never anywhere: places that exist on one machine only.
const PLACES: &[&str] = &[
    concat!("/ho", "me/"),
    concat!("/ro", "ot/"),
    concat!("/Us", "ers/"),
    concat!("/wo", "rk/"),
    concat!("/tm", "p/"),
    concat!("C:", "\\"),
];

/// Never anywhere, in any case.
const WORDS: &[&str] = &[concat!("trans", "cript")];

/// All of these rules on one file.
pub(crate) fn check(file: &TextFile, found: &mut Vec<Finding>) {
    length(file, found);
    words(file, found);
    if file.extension() == "rs" {
        rust(file, found);
    }
}

/// Exemptions that aren't needed any more.
pub(crate) fn stale_exemptions(files: &[TextFile], found: &mut Vec<Finding>) {
    for (path, _) in LONGER {
        let longer =
            |file: &&TextFile| file.path == *path && file.text.lines().count() > MOST_LINES;
        if files.iter().find(longer).is_none() {
            found.push(Finding::at(
                path,
                "is exempt from the length rule without need",
            ));
        }
    }
}

fn length(file: &TextFile, found: &mut Vec<Finding>) {
    let lines = file.text.lines().count();
    let counted = matches!(file.extension(), "rs" | "js" | "css" | "html" | "py");
    let exempt = LONGER.iter().any(|(path, _)| *path == file.path);
    if counted && lines > MOST_LINES && !exempt {
        found.push(Finding::at(
            &file.path,
            format!("has {lines} lines; split it, {MOST_LINES} is the most"),
        ));
    }
}

fn words(file: &TextFile, found: &mut Vec<Finding>) {
    if file.path == "Cargo.lock" {
        return;
    }
    for (index, line) in file.text.lines().enumerate() {
        for place in PLACES.iter().filter(|place| line.contains(**place)) {
            found.push(Finding::line(
                file,
                index,
                format!("names a place on one machine: {place}"),
            ));
        }
        let lower = line.to_lowercase();
        for word in WORDS.iter().filter(|word| lower.contains(**word)) {
            found.push(Finding::line(
                file,
                index,
                format!("the word '{word}' doesn't belong here"),
            ));
        }
    }
}

fn rust(file: &TextFile, found: &mut Vec<Finding>) {
    if !file.text.starts_with("//!") {
        found.push(Finding::at(
            &file.path,
            "its first line must be a //! line with its purpose",
        ));
    }
    let module_list = file.path.ends_with("/mod.rs");
    for (index, line) in file.text.lines().enumerate() {
        for word in UNFINISHED.iter().filter(|word| line.contains(**word)) {
            found.push(Finding::line(
                file,
                index,
                format!("{word} is not for finished code"),
            ));
        }
        if module_list && is_item(line) {
            found.push(Finding::line(
                file,
                index,
                "a mod.rs holds documentation, mod and pub use only",
            ));
        }
    }
}

/// Whether a line begins an item with content of its own.
fn is_item(line: &str) -> bool {
    let mut words = line
        .split_whitespace()
        .skip_while(|word| word.starts_with("pub"));
    matches!(
        words.next(),
        Some(
            "fn" | "struct"
                | "enum"
                | "impl"
                | "trait"
                | "const"
                | "static"
                | "type"
                | "async"
                | "unsafe"
        )
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(path: &str, text: &str) -> Vec<String> {
        let mut found = Vec::new();
        let file = TextFile {
            path: path.into(),
            text: text.into(),
        };
        check(&file, &mut found);
        found.iter().map(ToString::to_string).collect()
    }

    #[test]
    fn good_file_has_no_finding() {
        assert!(found("crate/a/src/b.rs", "//! B.\n\nfn b() {}\n").is_empty());
        assert!(
            found(
                "crate/a/src/mod.rs",
                "//! A.\n\n/// B.\nmod b;\npub use b::B;\n"
            )
            .is_empty()
        );
    }

    #[test]
    fn each_rule_finds_its_case() {
        let long = format!("//! A.\n{}", "\n".repeat(MOST_LINES));
        let cases = [
            ("a.rs", "fn a() {}\n".to_owned(), "a.rs: its first line"),
            ("a.rs", long.clone(), "a.rs: has 401 lines"),
            ("a.css", long, "a.css: has 401 lines"),
            (
                "a.rs",
                format!("//! A.\n{}]\n", UNFINISHED[0]),
                "a.rs:2: #[",
            ),
            (
                "a.rs",
                format!("//! A.\n{}\n", UNFINISHED[1]),
                "a.rs:2: should",
            ),
            (
                "a.rs",
                format!("//! A.\n{})\n", UNFINISHED[2]),
                "a.rs:2: to",
            ),
            (
                "a/mod.rs",
                "//! A.\npub(crate) struct A;\n".into(),
                "a/mod.rs:2: a mod.rs",
            ),
            (
                "a.md",
                format!("see {}me/x\n", PLACES[0]),
                "a.md:1: names a place",
            ),
            (
                "a.md",
                format!("the {}\n", WORDS[0].to_uppercase()),
                "a.md:1: the word",
            ),
        ];
        for (path, text, expected) in cases {
            let found = found(path, &text);
            assert_eq!(found.len(), 1, "{expected}: {found:?}");
            assert!(found[0].starts_with(expected), "{expected}: {found:?}");
        }
    }
}
