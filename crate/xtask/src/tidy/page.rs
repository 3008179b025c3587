//! What the browser loads: no foreign address, no way for text to become markup or code.

use super::finding::{Finding, TextFile};

/// Names of formats, never fetched.
const NAMES_ONLY: &str = "www.w3.org/";

/// Ways to turn text into markup or code, in JavaScript and in the bindings.
const SINKS: &[&str] = &[
    "innerHTML",
    "outerHTML",
    "insertAdjacentHTML",
    "set_inner_html",
    "set_outer_html",
    "insert_adjacent_html",
    "setHTMLUnsafe",
    "set_html_unsafe",
    "createContextualFragment",
    "create_contextual_fragment",
    "parseFromString",
    "parse_from_string",
    "document.write",
    "srcdoc",
    "eval(",
    "new Function",
    "js_sys::Function::new",
    "javascript:",
];

/// Addresses that leave the page's own directory.
const NOT_RELATIVE: &[&str] = &[
    "href=\"/",
    "src=\"/",
    "url(/",
    "url(\"/",
    "from \"/",
    "import(\"/",
    "fetch(\"/",
];

/// These rules on one file, when the browser gets it.
pub(crate) fn check(file: &TextFile, found: &mut Vec<Finding>) {
    if !file.path.starts_with("www/") && !file.path.starts_with("crate/page/") {
        return;
    }
    for (index, line) in file.text.lines().enumerate() {
        for scheme in ["http://", "https://", "ws://", "wss://"] {
            let foreign = line
                .match_indices(scheme)
                .any(|(at, _)| !line[at + scheme.len()..].starts_with(NAMES_ONLY));
            if foreign {
                found.push(Finding::line(file, index, "names a foreign address"));
            }
        }
        for sink in SINKS.iter().filter(|sink| line.contains(**sink)) {
            found.push(Finding::line(
                file,
                index,
                format!("{sink} turns text into markup or code"),
            ));
        }
        for start in NOT_RELATIVE.iter().filter(|start| line.contains(**start)) {
            found.push(Finding::line(
                file,
                index,
                format!("{start} is not a relative address"),
            ));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::finding::count_in;
    use super::*;

    fn count(path: &str, text: &str) -> usize {
        count_in(check, path, text)
    }

    #[test]
    fn each_rule_finds_its_case() {
        assert_eq!(
            count("www/a.svg", "xmlns=\"http://www.w3.org/2000/svg\""),
            0
        );
        assert_eq!(count("www/a.html", "<a href=\"https://example.org\">"), 1);
        assert_eq!(count("www/a.js", "fetch('wss://example.org')"), 1);
        assert_eq!(count("www/a.html", "<script src=\"/a.js\">"), 1);
        assert_eq!(
            count("www/a.html", "<script src=\"//example.org/a.js\">"),
            1
        );
        assert_eq!(count("crate/page/src/a.rs", "node.set_inner_html(text)"), 1);
        assert_eq!(count("crate/units/src/a.rs", "// https://example.org"), 0);
    }
}
