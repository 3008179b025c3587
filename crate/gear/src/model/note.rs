//! What somebody says about a gear, for those who open its file or link.
use serde::{Deserialize, Serialize};

/// Most notes that can be added to a gear.
pub const MOST_NOTES: usize = 5;

/// A note; text only, and no answer rests on it.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Note {
    /// What is said.
    pub text: String,
    /// Who says so.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub by: String,
    /// On what it hangs: the path of a number, a point or a leg, as `legs[1].actuator.mount_m`; empty = on the gear.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub on: String,
    /// With the path of a leg: at this place of its way (ratio).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub progress: Option<f64>,
}

impl Note {
    /// Follows a list whose entry `at` was added, or (`gone`) removed: paths into it lead to the same entry as before.
    /// A note on the entry that is gone hangs on the gear then.
    pub fn follow(&mut self, list: &str, at: usize, gone: bool) {
        self.on = renumbered(&self.on, list, at, gone).unwrap_or_default();
        if self.on.is_empty() {
            self.progress = None;
        }
    }
}

/// A path after the entry `at` of a list was added, or (`gone`) removed: it leads to the same entry as before. `None` =
/// that entry is gone.
#[must_use]
pub fn renumbered(path: &str, list: &str, at: usize, gone: bool) -> Option<String> {
    let entry = path.strip_prefix(list).and_then(|rest| {
        let (index, rest) = rest.strip_prefix('[')?.split_once(']')?;
        Some((index.parse::<usize>().ok()?, rest))
    });
    let index = match entry {
        Some((index, _)) if gone && index == at => return None,
        Some((index, _)) if gone && index > at => index - 1,
        Some((index, _)) if !gone && index >= at => index + 1,
        _ => return Some(path.to_owned()),
    };
    entry.map(|(_, rest)| format!("{list}[{index}]{rest}"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn followed(on: &str, list: &str, at: usize, gone: bool) -> String {
        let mut note = Note {
            on: on.to_owned(),
            ..Note::default()
        };
        note.follow(list, at, gone);
        note.on
    }

    #[test]
    fn a_note_stays_on_its_entry() {
        let mount = "legs[2].actuator.mount_m";
        assert_eq!(followed(mount, "legs", 0, true), "legs[1].actuator.mount_m");
        assert_eq!(followed(mount, "legs", 2, true), "");
        assert_eq!(followed(mount, "legs", 3, true), mount);
        assert_eq!(
            followed(mount, "legs", 2, false),
            "legs[3].actuator.mount_m"
        );
        assert_eq!(followed(mount, "legs[2].well", 0, true), mount);
        let corner = "legs[2].well[1].shape.solid.points_m[3]";
        assert_eq!(
            followed(corner, "legs[2].well", 0, false),
            "legs[2].well[2].shape.solid.points_m[3]"
        );
        assert_eq!(followed("", "legs", 0, true), "");
    }
}
