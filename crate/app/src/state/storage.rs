//! Texts that the browser stores: the index of files, and each file with what is typed in it.
//!
//! A stored file is some lines of its own and, behind a line `---`, the gear file as it would be
//! exported; so a person can get at it by hand. Both texts begin with their kind and version.

use gearswing_gearfile::read_number;
use gearswing_report::page::storage::{StoredFault, stored_fault};
use gearswing_units::UnitChoice;
use litemap::LiteMap;

use super::files::Origin;
use super::session::{Draft, Theme};
use super::whole::State;

const FILE_HEAD: &str = "gearswing stored file";
const INDEX_HEAD: &str = "gearswing index";
const VERSION: u32 = 1;
const BEHIND: &str = "---\n";
const NEXT_STEP: &str = "next step|";
const TAKES_ALONG: &str = "takes_along";

/// A stored file, taken apart.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Stored {
    pub(crate) drafts: LiteMap<String, Draft>,
    /// Number of the next step of its history; 0 = it has none.
    pub(crate) next_step: u64,
    /// A moved trunnion takes its leg and the well along.
    pub(crate) takes_along: bool,
    pub(crate) gear_text: String,
}

/// The index, taken apart.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Index {
    pub(crate) open: Option<String>,
    pub(crate) units: UnitChoice,
    pub(crate) theme: Theme,
    pub(crate) order: Vec<String>,
    /// The person knows that the browser may clear what it keeps.
    pub(crate) told_clearing: bool,
    /// Address at which others have the page, where the person has put one in.
    pub(crate) home: Option<String>,
}

/// One line whatever is in it.
pub(super) fn escaped(text: &str) -> String {
    text.replace('\\', "\\\\")
        .replace('\n', "\\n")
        .replace('\r', "\\r")
}

pub(super) fn unescaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut chars = text.chars();
    while let Some(c) = chars.next() {
        match (c, c == '\\') {
            (_, true) => match chars.next() {
                Some('n') => out.push('\n'),
                Some('r') => out.push('\r'),
                Some(other) => out.push(other),
                None => {}
            },
            (c, false) => out.push(c),
        }
    }
    out
}

impl Stored {
    /// The text to store.
    pub(crate) fn to_text(&self) -> String {
        write_file(self)
    }
}

/// Key of the own file that is open, or was before what is looked at.
fn own_id(state: &State) -> Option<&str> {
    match (state.origin(), &state.files.parked) {
        (Origin::Link, Some(parked)) => parked.origin.stored_id(),
        _ => state.files.open_id(),
    }
}

/// The index of the files of `state`.
pub(crate) fn index_text(state: &State) -> String {
    write_index(&Index {
        // what somebody has sent is not what the next start opens
        open: own_id(state).map(str::to_owned),
        units: state.session.units,
        theme: state.session.theme,
        order: state.files.entries.iter().map(|e| e.id.clone()).collect(),
        told_clearing: state.files.told_clearing,
        home: state.files.typed_home.clone(),
    })
}

fn write_file(stored: &Stored) -> String {
    let mut text = format!("{FILE_HEAD} {VERSION}\n");
    for (path, draft) in &stored.drafts {
        let state = if draft.committed { "entered" } else { "typing" };
        text.push_str(&format!(
            "{state}|{}|{}|{}|{}\n",
            draft.units,
            draft.over.map_or_else(String::new, |over| over.to_string()),
            escaped(path),
            escaped(&draft.text)
        ));
    }
    if stored.next_step > 0 {
        text.push_str(&format!("{NEXT_STEP}{}\n", stored.next_step));
    }
    if stored.takes_along {
        text.push_str(TAKES_ALONG);
        text.push('\n');
    }
    text.push_str(BEHIND);
    text.push_str(&stored.gear_text);
    text
}

/// Takes a stored file apart; a bare gear file is taken as it is.
pub(crate) fn read_file(text: &str) -> Result<Stored, String> {
    if text.trim_start().starts_with('{') {
        return Ok(Stored {
            gear_text: text.to_owned(),
            ..Stored::default()
        });
    }
    check_head(text, FILE_HEAD)?;
    let (head, gear_text) = text
        .split_once(&format!("\n{BEHIND}"))
        .ok_or_else(|| stored_fault(StoredFault::CutOff))?;
    let mut stored = Stored {
        gear_text: gear_text.to_owned(),
        ..Stored::default()
    };
    for line in head.lines().skip(1) {
        if let Some(number) = line.strip_prefix(NEXT_STEP) {
            stored.next_step = number.parse().unwrap_or_default();
            continue;
        }
        stored.takes_along |= line == TAKES_ALONG;
        let mut parts = line.splitn(5, '|');
        if let (Some(state), Some(units), Some(over), Some(path), Some(draft)) = (
            parts.next(),
            parts.next(),
            parts.next(),
            parts.next(),
            parts.next(),
        ) {
            stored.drafts.insert(
                unescaped(path),
                Draft {
                    text: unescaped(draft),
                    units: units.parse().unwrap_or_default(),
                    over: read_number(over),
                    committed: state == "entered",
                },
            );
        }
    }
    Ok(stored)
}

fn write_index(index: &Index) -> String {
    let mut text = format!(
        "{INDEX_HEAD} {VERSION}\nunits {}\ntheme {}\n",
        index.units,
        index.theme.as_str()
    );
    if let Some(open) = &index.open {
        text.push_str(&format!("open {open}\n"));
    }
    if index.told_clearing {
        text.push_str("told clearing\n");
    }
    if let Some(home) = &index.home {
        text.push_str(&["home", &escaped(home)].join(" "));
        text.push('\n');
    }
    for id in &index.order {
        text.push_str(&format!("file {id}\n"));
    }
    text
}

pub(crate) fn read_index(text: &str) -> Result<Index, String> {
    check_head(text, INDEX_HEAD)?;
    let mut index = Index::default();
    for line in text.lines().skip(1) {
        match line.split_once(' ') {
            Some(("units", key)) => index.units = key.parse().unwrap_or_default(),
            Some(("theme", key)) => index.theme = Theme::of_key(key).unwrap_or_default(),
            Some(("open", id)) => index.open = Some(id.to_owned()),
            Some(("told", "clearing")) => index.told_clearing = true,
            Some(("home", home)) => index.home = Some(unescaped(home)),
            Some(("file", id)) => index.order.push(id.to_owned()),
            _ => {}
        }
    }
    Ok(index)
}

fn check_head(text: &str, head: &str) -> Result<(), String> {
    let first = text.lines().next().unwrap_or_default();
    let version = first
        .strip_prefix(head)
        .ok_or_else(|| stored_fault(StoredFault::Foreign))?;
    match version.trim().parse::<u32>() {
        Ok(VERSION) => Ok(()),
        Ok(newer) => Err(stored_fault(StoredFault::Newer(newer, VERSION))),
        Err(_) => Err(stored_fault(StoredFault::Damaged)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn drafts_come_back() {
        let mut stored = Stored {
            gear_text: "{\n---\n}".to_owned(),
            next_step: 41,
            takes_along: true,
            ..Stored::default()
        };
        for (path, text) in [("a[0]", "3/8"), ("note", "one\ntwo\\n|x\r"), ("b", "")] {
            stored.drafts.insert(
                path.to_owned(),
                Draft {
                    text: text.to_owned(),
                    units: UnitChoice::METRIC,
                    over: (text.len() > 1).then_some(0.1 + 0.2),
                    committed: text.is_empty(),
                },
            );
        }
        assert_eq!(read_file(&write_file(&stored)), Ok(stored));
    }

    #[test]
    fn an_index_comes_back() {
        let index = Index {
            open: Some("g2".to_owned()),
            units: UnitChoice::METRIC,
            theme: Theme::Dark,
            order: vec!["g1".to_owned(), "g2".to_owned()],
            told_clearing: true,
            home: Some("https://example.org/gear/".to_owned()),
        };
        assert_eq!(read_index(&write_index(&index)), Ok(index));
    }

    #[test]
    fn damaged_texts_say_so() {
        assert!(read_file("").is_err());
        assert!(read_file("gearswing stored file 1\n").is_err());
        assert!(
            read_index("gearswing index 9\n")
                .unwrap_err()
                .contains("newer")
        );
        assert!(read_index("x").is_err());
        assert!(read_file("{}").is_ok());
    }
}
