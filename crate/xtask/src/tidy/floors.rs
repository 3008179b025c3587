//! Rooms of the solver stand on each other: what is written in one uses those below it only.

use super::finding::{Finding, TextFile};

/// Where the rooms are.
const SOLVER: &str = "crate/solver/src/";

/// The rooms, from the ground up. What comes out (`result`) is data only, and is known to all.
const ROOMS: &[&str] = &[
    "numeric",
    "result",
    "hydraulics",
    "kinematics",
    "tires",
    "clearance",
    "faults",
    "prepared",
    "statics",
    "lock",
    "fall",
    "supply",
    "stop",
    "answer",
    "solve",
];

/// This rule on one file.
pub(crate) fn check(file: &TextFile, found: &mut Vec<Finding>) {
    let Some(inside) = file.path.strip_prefix(SOLVER) else {
        return;
    };
    let room = inside.split(['/', '.']).next().unwrap_or_default();
    if inside == "lib.rs" || is_test(inside) {
        return;
    }
    let Some(floor) = floor(room) else {
        found.push(Finding::at(
            &file.path,
            "has no floor among the rooms of the solver",
        ));
        return;
    };
    for (index, line) in file.text.lines().enumerate() {
        // tests at the end of a file may use what they like
        if line.trim() == "#[cfg(test)]" && file.text.lines().nth(index + 1) == Some("mod tests {")
        {
            break;
        }
        if line.trim_start().starts_with("//") {
            continue;
        }
        for used in line.split("crate::").skip(1) {
            let used: String = used
                .chars()
                .take_while(|c| c.is_ascii_lowercase() || *c == '_')
                .collect();
            if self::floor(&used).is_some_and(|other| other > floor) {
                found.push(Finding::line(
                    file,
                    index,
                    format!("{room} uses {used}, which stands above it"),
                ));
            }
        }
    }
}

fn floor(room: &str) -> Option<usize> {
    ROOMS.iter().position(|known| *known == room)
}

fn is_test(inside: &str) -> bool {
    inside
        .split('/')
        .any(|part| part.starts_with("tests") || part == "test")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(path: &str, text: &str) -> usize {
        let mut found = Vec::new();
        let file = TextFile {
            path: path.into(),
            text: text.into(),
        };
        check(&file, &mut found);
        found.len()
    }

    #[test]
    fn no_arrow_runs_back_up() {
        let fall = "crate/solver/src/fall/drop.rs";
        assert_eq!(count(fall, "use crate::statics::Ready;\n"), 0);
        assert_eq!(count(fall, "use crate::supply::Pump;\n"), 1);
        assert_eq!(count(fall, "let x = crate::stop::y(crate::solve::z);\n"), 2);
        assert_eq!(count(fall, "/// See [`crate::supply`].\n"), 0);
        assert_eq!(
            count(
                fall,
                "#[cfg(test)]\nmod tests {\n    use crate::supply::a;\n}\n"
            ),
            0
        );
        assert_eq!(
            count("crate/solver/src/fall/tests_a.rs", "use crate::supply::a;"),
            0
        );
        assert_eq!(count("crate/solver/src/solve.rs", "use crate::stop::a;"), 0);
        assert_eq!(count("crate/solver/src/attic.rs", ""), 1);
        assert_eq!(
            count("crate/report/src/fault.rs", "use crate::solve::a;"),
            0
        );
    }
}
