//! Units beside the solver's numbers, sources beside published values.

use super::finding::{Finding, TextFile};

/// Where every public number needs its unit.
const NUMBERS: &[&str] = &["crate/gear/src/model/", "crate/solver/src/result/"];

/// Where every file names where its values are from.
const PUBLISHED: &str = "tests/published/";

/// SI units that may stand in brackets, alone or multiplied, divided and raised; a number without one is a `ratio`.
const UNITS: &[&str] = &[
    "m", "kg", "N", "Pa", "s", "rad", "J", "W", "Hz", "K", "V", "A", "Ω", "1", "ratio",
];

/// These rules on one file.
pub(crate) fn check(file: &TextFile, found: &mut Vec<Finding>) {
    if file.path.starts_with(PUBLISHED) && !file.text.contains("Source:") {
        found.push(Finding::at(
            &file.path,
            "names no source; write 'Source:' with title and page",
        ));
    }
    if NUMBERS.iter().any(|room| file.path.starts_with(room)) {
        units(file, found);
    }
}

fn units(file: &TextFile, found: &mut Vec<Finding>) {
    let mut documentation = String::new();
    for (index, line) in file.text.lines().enumerate() {
        let line = line.trim();
        if let Some(text) = line.strip_prefix("///") {
            documentation.push_str(text);
            documentation.push('\n');
            continue;
        }
        if let Some(name) = number_field(line)
            && !has_unit(&documentation)
        {
            found.push(Finding::line(
                file,
                index,
                format!("{name} has no unit like (m) in its documentation"),
            ));
        }
        // Attributes of several lines stand between the documentation and its field.
        if line.ends_with([',', '}', ';']) && is_field_or_end(line) {
            documentation.clear();
        }
    }
}

/// The name of a public field that holds f64 numbers.
fn number_field(line: &str) -> Option<&str> {
    let (name, kind) = line.strip_prefix("pub ")?.split_once(": ")?;
    let plain = name.chars().all(|c| c.is_ascii_alphanumeric() || c == '_');
    (plain && kind.contains("f64")).then_some(name)
}

fn is_field_or_end(line: &str) -> bool {
    line.starts_with("pub ") || line.starts_with('}')
}

/// Whether some bracket holds a unit.
fn has_unit(documentation: &str) -> bool {
    documentation
        .split('(')
        .skip(1)
        .filter_map(|rest| rest.split_once(')'))
        .any(|(inside, _)| is_unit(inside))
}

fn is_unit(text: &str) -> bool {
    !text.is_empty()
        && text.split(['·', '/', '*', ' ']).all(|factor| {
            let name = match factor.trim_end_matches(['²', '³', '^', '2', '3', '4']) {
                "" => factor,
                name => name,
            };
            UNITS.contains(&name)
        })
}

#[cfg(test)]
mod tests {
    use super::super::finding::count_in;
    use super::*;

    fn count(path: &str, text: &str) -> usize {
        count_in(check, path, text)
    }

    #[test]
    fn units_are_told_from_other_brackets() {
        for unit in [
            "m", "rad", "ratio", "1/s", "kg/m³", "kg/m3", "N·m", "m/s", "m²", "V", "A", "Ω",
        ] {
            assert!(is_unit(unit), "{unit}");
        }
        for other in ["", "`Leg`", "0, 1", "mm", "psi", "see above"] {
            assert!(!is_unit(other), "{other}");
        }
    }

    #[test]
    fn each_number_needs_its_own_unit() {
        let path = "crate/gear/src/model/a.rs";
        let good = "/// Bore (m).\n#[serde(\n    rename = \"bore_m\",\n)]\npub bore: f64,\n";
        assert_eq!(count(path, good), 0);
        assert_eq!(count(path, &format!("{good}pub rod: f64,\n")), 1);
        assert_eq!(
            count(path, "/// Bore of (`Leg`).\npub bore: Option<f64>,\n"),
            1
        );
        assert_eq!(count(path, "/// Ends (m).\npub ends: [f64; 2],\n"), 0);
        assert_eq!(count("crate/app/src/a.rs", "pub bore: f64,\n"), 0);
    }

    #[test]
    fn published_values_need_a_source() {
        assert_eq!(count("tests/published/a.csv", "1,2\n"), 1);
        assert_eq!(
            count("tests/published/a.csv", "# Source: a handbook, p. 3\n1,2\n"),
            0
        );
    }
}
