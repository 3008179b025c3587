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

/// What the crate hands on at its top, and of which room.
const HANDED_ON: &[(&[&str], &str)] = &[
    (&["PreparedGear", "PreparedLeg"], "prepared"),
    (
        &["solve_gear", "solve_leg", "solve_prepared", "Options"],
        "solve",
    ),
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
    let mut grouped = String::new();
    for (index, line) in file.text.lines().enumerate() {
        // tests at the end of a file may use what they like
        if line.trim() == "#[cfg(test)]" && file.text.lines().nth(index + 1) == Some("mod tests {")
        {
            break;
        }
        if line.trim_start().starts_with("//") {
            continue;
        }
        // a group may go over several lines
        let begins = line.contains("crate::{");
        if begins || !grouped.is_empty() {
            grouped.push_str(line);
            if grouped.matches('{').count() > grouped.matches('}').count() {
                continue;
            }
        }
        let group = std::mem::take(&mut grouped);
        let text = if group.is_empty() { line } else { &group };
        for used in used_in(text) {
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

/// What a line names of the crate: rooms, or what the crate hands on of them.
fn used_in(line: &str) -> Vec<String> {
    let word = |text: &str| -> String {
        let text = text.trim_start();
        text.chars()
            .take_while(|c| c.is_ascii_alphanumeric() || *c == '_')
            .collect()
    };
    let mut used = Vec::new();
    for rest in line.split("crate::").skip(1) {
        let Some(group) = rest.strip_prefix('{') else {
            used.push(word(rest));
            continue;
        };
        let mut depth = 0;
        let mut begins = true;
        for (at, c) in group.char_indices() {
            match c {
                '{' => depth += 1,
                '}' if depth == 0 => break,
                '}' => depth -= 1,
                ',' if depth == 0 => begins = true,
                c if begins && !c.is_whitespace() => {
                    used.push(word(&group[at..]));
                    begins = false;
                }
                _ => {}
            }
        }
    }
    used
}

/// Floor of a room, or of what the crate hands on of one.
fn floor(name: &str) -> Option<usize> {
    let handed_on = |(names, _): &&(&[&str], &str)| names.contains(&name);
    let room = HANDED_ON
        .iter()
        .find(handed_on)
        .map_or(name, |(_, room)| room);
    ROOMS.iter().position(|known| *known == room)
}

fn is_test(inside: &str) -> bool {
    inside
        .split('/')
        .any(|part| part.starts_with("tests") || part == "test")
}

#[cfg(test)]
mod tests {
    use super::super::finding::count_in;
    use super::*;

    fn count(path: &str, text: &str) -> usize {
        count_in(check, path, text)
    }

    #[test]
    fn no_arrow_runs_back_up() {
        let fall = "crate/solver/src/fall/drop.rs";
        assert_eq!(count(fall, "use crate::statics::LegLoads;\n"), 0);
        assert_eq!(count(fall, "use crate::supply::Pump;\n"), 1);
        assert_eq!(count(fall, "let x = crate::stop::y(crate::solve::z);\n"), 2);
        assert_eq!(count(fall, "/// See [`crate::supply`].\n"), 0);
        assert_eq!(
            count(
                fall,
                "use crate::{statics::LegLoads, supply, stop::{a, b}};\n"
            ),
            2
        );
        assert_eq!(
            count(fall, "use crate::{\n    statics,\n    supply,\n};\n"),
            1
        );
        assert_eq!(count(fall, "let x = crate::solve_leg(a);\n"), 1);
        assert_eq!(count(fall, "use crate::PreparedGear;\n"), 0);
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
        assert_eq!(
            count("crate/solver/src/solve/leg.rs", "use crate::stop::a;"),
            0
        );
        assert_eq!(count("crate/solver/src/attic.rs", ""), 1);
        assert_eq!(
            count("crate/report/src/fault.rs", "use crate::solve::a;"),
            0
        );
    }
}
