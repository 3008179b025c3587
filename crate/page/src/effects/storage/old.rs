//! The simple storage of pages: gear files that earlier versions kept there, and what a page that was
//! left could not wait to see on the disk.
//!
//! Both are taken over into the database once. The browser writes this storage late, also when
//! something is taken out; so the database remembers what it has taken over.

use super::batch::FileBatch;
use super::left::Left;
use crate::dom::window;
use crate::error::{PageError, Result, report};
use gearswing_app::words::browser::lacks;
use litemap::LiteMap;
use web_sys::Storage;

/// Keys of gear files of earlier versions begin with this.
const FILE: &str = "gearswing.file.";
/// Key of the index of earlier versions.
const INDEX: &str = "gearswing.index";
/// Keys of what was left begin with this.
const LEFT: &str = "gearswing.left.";
/// Key of the index that was left.
const LEFT_INDEX: &str = "gearswing.left-index";

/// What the database holds, as far as it matters here.
#[derive(Debug, Default)]
pub(super) struct Held {
    /// Gear files by their own key.
    pub(super) files: LiteMap<String, String>,
    pub(super) index: Option<String>,
    /// What was taken over before, by its key in the simple storage.
    pub(super) taken: LiteMap<String, String>,
}

/// What is to be written so that everything is taken over.
#[derive(Debug, Default, PartialEq)]
pub(super) struct Taking {
    /// Gear files, by their own key, with what was left of their history.
    pub(super) files: Vec<(String, FileBatch)>,
    pub(super) index: Option<String>,
    /// To be remembered.
    pub(super) taken: Vec<(String, String)>,
    /// Need not be remembered any more.
    pub(super) forgotten: Vec<String>,
}

impl Taking {
    /// There is nothing to write.
    pub(super) fn is_empty(&self) -> bool {
        *self == Self::default()
    }
}

/// The simple storage, if this browser has it.
fn storage() -> Result<Storage> {
    window()?
        .local_storage()?
        .ok_or(PageError::Missing(lacks::SIMPLE_STORAGE))
}

/// Everything of this program in the simple storage.
pub(super) fn read() -> Vec<(String, String)> {
    let Ok(storage) = storage() else {
        return Vec::new();
    };
    let count = storage.length().unwrap_or(0);
    let keys: Vec<String> = (0..count)
        .filter_map(|at| storage.key(at).ok().flatten())
        .filter(|key| {
            key.starts_with(FILE) || key.starts_with(LEFT) || key == INDEX || key == LEFT_INDEX
        })
        .collect();
    keys.into_iter()
        .filter_map(|key| {
            let text = storage.get_item(&key).ok().flatten()?;
            Some((key, text))
        })
        .collect()
}

/// Takes out what has been taken over, unless another window has written there since.
pub(super) fn remove(all: &[(String, String)]) {
    let Ok(storage) = storage() else { return };
    for (key, text) in all {
        if storage.get_item(key).ok().flatten().as_ref() == Some(text) {
            report(storage.remove_item(key).map_err(PageError::from));
        }
    }
}

/// Leaves a gear file for the next start.
pub(super) fn leave(id: &str, left: &Left) -> Result<()> {
    storage()?.set_item(&format!("{LEFT}{id}"), &left.written())?;
    Ok(())
}

/// Takes back what was left of a file, and the index: they are on the disk now.
pub(super) fn unleave(id: &str) {
    let Ok(storage) = storage() else { return };
    for key in [&format!("{LEFT}{id}"), LEFT_INDEX] {
        report(storage.remove_item(key).map_err(PageError::from));
    }
}

/// Leaves the index for the next start.
pub(super) fn leave_index(text: &str) -> Result<()> {
    storage()?.set_item(LEFT_INDEX, text)?;
    Ok(())
}

/// A key that no file has.
fn free_id(files: &LiteMap<String, String>) -> String {
    let numbers = files
        .keys()
        .filter_map(|id| id.strip_prefix('g')?.parse::<u64>().ok());
    format!("g{}", numbers.max().unwrap_or(0).saturating_add(1))
}

/// Puts what the simple storage has (`all`) into what the database holds. No file takes the place of
/// another: what differs from a stored file becomes one of its own.
pub(super) fn take_over(held: &mut Held, all: &[(String, String)]) -> Taking {
    let mut taking = Taking::default();
    for (key, text) in all {
        if held.taken.get(key) == Some(text) {
            continue;
        }
        if key == INDEX {
            if held.index.is_none() {
                held.index = Some(text.clone());
                taking.index = Some(text.clone());
            }
        } else if key == LEFT_INDEX {
            held.index = Some(text.clone());
            taking.index = Some(text.clone());
        } else if let Some(id) = key.strip_prefix(FILE) {
            put(held, &mut taking, id, Left::of(text));
        } else if let Some(id) = key.strip_prefix(LEFT) {
            // one that is cut off is kept as it is
            let left = Left::read(text).unwrap_or_else(|| Left::of(text));
            put(held, &mut taking, id, left);
        }
        held.taken.insert(key.clone(), text.clone());
        taking.taken.push((key.clone(), text.clone()));
    }
    for key in held.taken.keys() {
        if !all.iter().any(|(there, _)| there == key) {
            taking.forgotten.push(key.clone());
        }
    }
    taking
}

fn put(held: &mut Held, taking: &mut Taking, id: &str, left: Left) {
    let Left { over, mut file } = left;
    let Some(text) = file.text.clone() else {
        return;
    };
    let id = match held.files.get(id) {
        Some(there) if *there == text && file.steps.is_empty() => return,
        Some(there) if *there != text && !over.contains(there) => {
            // its history belongs to the file that stands there
            file = Left::of(&text).file;
            free_id(&held.files)
        }
        _ => id.to_owned(),
    };
    held.files.insert(id.clone(), text);
    taking.files.push((id, file));
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pair(key: &str, text: &str) -> (String, String) {
        (key.to_owned(), text.to_owned())
    }

    fn texts(taking: &Taking) -> Vec<(String, String)> {
        let texts = taking.files.iter();
        texts
            .map(|(id, file)| (id.clone(), file.text.clone().unwrap()))
            .collect()
    }

    /// What the database holds after the writing.
    fn written(held: &mut Held, taking: &Taking) {
        for (id, text) in texts(taking) {
            held.files.insert(id, text);
        }
        for key in &taking.forgotten {
            held.taken.remove(key);
        }
    }

    #[test]
    fn old_files_are_taken_over_once_whatever_the_browser_forgets() {
        let old = [
            pair("gearswing.file.g1", "one"),
            pair("gearswing.file.g2", "two"),
            pair("gearswing.index", "order"),
        ];
        let mut held = Held::default();
        let taking = take_over(&mut held, &old);
        assert_eq!(texts(&taking), [pair("g1", "one"), pair("g2", "two")]);
        assert_eq!(held.index.as_deref(), Some("order"));
        written(&mut held, &taking);
        // the person goes on; the browser was killed before it had taken the old ones out
        held.files.insert("g1".to_owned(), "changed".to_owned());
        held.index = Some("newer".to_owned());
        let taking = take_over(&mut held, &old);
        assert!(taking.is_empty(), "{taking:?}");
        // now they are gone
        let taking = take_over(&mut held, &[]);
        assert_eq!(taking.forgotten.len(), 3);
        written(&mut held, &taking);
        assert!(take_over(&mut held, &[]).is_empty());
        assert_eq!(held.files.get("g1").map(String::as_str), Some("changed"));
    }

    #[test]
    fn an_old_file_never_takes_the_place_of_another() {
        let mut held = Held::default();
        held.files.insert("g1".to_owned(), "new".to_owned());
        let taking = take_over(&mut held, &[pair("gearswing.file.g1", "old")]);
        assert_eq!(texts(&taking), [pair("g2", "old")]);
        assert_eq!(held.files.get("g1").map(String::as_str), Some("new"));
    }

    #[test]
    fn what_was_left_takes_the_place_of_what_it_was_made_from_only() {
        let left = |over: &[&str], steps: &[(u64, Option<&str>)]| {
            let mut left = Left::of("last");
            left.over = over.iter().map(|text| (*text).to_owned()).collect();
            for (number, text) in steps {
                left.file.steps.insert(*number, text.map(str::to_owned));
            }
            pair("gearswing.left.g1", &left.written())
        };
        let both = ["before", "under way"];
        for (there, over, files) in [
            (Some("before"), &both[..1], vec![pair("g1", "last")]),
            (Some("before"), &both, vec![pair("g1", "last")]),
            (Some("under way"), &both, vec![pair("g1", "last")]),
            (Some("last"), &both, vec![]),
            (Some("of another window"), &both, vec![pair("g2", "last")]),
            (Some("of another window"), &[], vec![pair("g2", "last")]),
            (None, &both, vec![pair("g1", "last")]),
            (None, &[], vec![pair("g1", "last")]),
        ] {
            let mut held = Held::default();
            if let Some(there) = there {
                held.files.insert("g1".to_owned(), there.to_owned());
            }
            let taking = take_over(&mut held, &[left(over, &[])]);
            assert_eq!(texts(&taking), files, "{there:?} {over:?}");
        }
        // the history goes with its own file, written or not, and with no other
        let steps = [(1, None), (2, Some("two"))];
        for (there, id, taken) in [
            ("before", "g1", 2),
            ("last", "g1", 2),
            ("of another window", "g2", 0),
        ] {
            let mut held = Held::default();
            held.files.insert("g1".to_owned(), there.to_owned());
            let taking = take_over(&mut held, &[left(&both, &steps)]);
            assert_eq!(texts(&taking), [pair(id, "last")], "{there}");
            assert_eq!(taking.files[0].1.steps.len(), taken, "{there}");
        }
        // cut off
        let mut held = Held::default();
        let taking = take_over(&mut held, &[pair("gearswing.left.g1", "99\nab")]);
        assert_eq!(texts(&taking), [pair("g1", "99\nab")]);
    }
}
