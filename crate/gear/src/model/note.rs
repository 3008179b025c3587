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
        let Some(rest) = self.on.strip_prefix(list) else {
            return;
        };
        let Some((index, rest)) = rest.strip_prefix('[').and_then(|rest| rest.split_once(']'))
        else {
            return;
        };
        let Ok(index) = index.parse::<usize>() else {
            return;
        };
        let index = match (gone, index.cmp(&at)) {
            (_, std::cmp::Ordering::Less) => return,
            (true, std::cmp::Ordering::Equal) => {
                self.on.clear();
                self.progress = None;
                return;
            }
            (true, std::cmp::Ordering::Greater) => index - 1,
            (false, _) => index + 1,
        };
        self.on = format!("{list}[{index}]{rest}");
    }
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
