//! What waits to be written, the newest of each key.

use super::database::Transaction;
use crate::error::Result;
use gearswing_app::StoredStep;
use litemap::LiteMap;

/// Keys of gear files begin with this.
pub(super) const FILE: &str = "file/";
/// Keys of steps begin with this, the file's own key and a slash.
const STEP: &str = "step/";
/// Keys of files that were deleted begin with this; their steps stay until the next start.
pub(super) const DELETED: &str = "deleted/";
/// Key of the index of files.
pub(super) const INDEX: &str = "index";

/// Key of a gear file.
pub(super) fn file_key(id: &str) -> String {
    format!("{FILE}{id}")
}

/// What the keys of a file's steps begin with.
pub(super) fn steps_prefix(id: &str) -> String {
    format!("{STEP}{id}/")
}

/// Key of a step: in the order of the numbers.
fn step_key(id: &str, number: u64) -> String {
    format!("{STEP}{id}/{number:016}")
}

/// What is to be written of one file.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct FileBatch {
    /// Its text; `None` = as it is stored.
    pub(super) text: Option<String>,
    /// It is to be taken out.
    pub(super) deleted: bool,
    /// Steps stored before are of another file.
    pub(super) fresh: bool,
    /// Steps by their number; `None` = to be taken out.
    pub(super) steps: LiteMap<u64, Option<String>>,
}

/// What is to be written in one transaction.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Batch {
    pub(super) files: LiteMap<String, FileBatch>,
    pub(super) index: Option<String>,
    /// What to answer with when it is on the disk.
    pub(super) ticket: Option<u64>,
}

impl FileBatch {
    /// Hands it to the browser.
    pub(super) fn send(&self, transaction: &Transaction, id: &str) -> Result<()> {
        let mark = format!("{DELETED}{id}");
        if self.deleted {
            transaction.delete(&file_key(id))?;
            transaction.put(&mark, "")?;
        }
        if let Some(text) = &self.text {
            transaction.put(&file_key(id), text)?;
            transaction.delete(&mark)?;
        }
        if self.fresh {
            transaction.delete_all(&steps_prefix(id))?;
        }
        for (number, step) in &self.steps {
            let key = step_key(id, *number);
            match step {
                Some(text) => transaction.put(&key, text)?,
                None => transaction.delete(&key)?,
            }
        }
        Ok(())
    }
}

impl Batch {
    /// Nothing waits.
    pub(super) fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    fn file(&mut self, id: &str) -> &mut FileBatch {
        self.files.entry(id.to_owned()).or_default()
    }

    /// A file's text.
    pub(super) fn save(&mut self, id: &str, text: String) {
        let file = self.file(id);
        file.text = Some(text);
        file.deleted = false;
    }

    /// Steps of a file.
    pub(super) fn save_steps(
        &mut self,
        id: &str,
        fresh: bool,
        put: Vec<StoredStep>,
        gone: Vec<u64>,
    ) {
        let file = self.file(id);
        if fresh {
            file.fresh = true;
            file.steps.clear();
        }
        for number in gone {
            file.steps.insert(number, None);
        }
        for step in put {
            file.steps.insert(step.number, Some(step.text));
        }
    }

    /// A file is to be forgotten.
    pub(super) fn delete(&mut self, id: &str) {
        let file = self.file(id);
        file.text = None;
        file.deleted = true;
    }

    /// Puts what came later over this.
    pub(super) fn overlay(&mut self, later: Self) {
        for (id, later) in later.files {
            let file = self.file(&id);
            if later.fresh {
                file.fresh = true;
                file.steps.clear();
            }
            for (number, text) in later.steps {
                file.steps.insert(number, text);
            }
            if later.text.is_some() || later.deleted {
                file.text = later.text;
                file.deleted = later.deleted;
            }
        }
        self.index = later.index.or(self.index.take());
        self.ticket = later.ticket.max(self.ticket);
    }
}

/// A map of these, put in one after the other: a sort of each kind of pair would make the page a kilobyte larger.
pub(super) fn by_key<K: Ord, V>(all: impl Iterator<Item = (K, V)>) -> LiteMap<K, V> {
    let mut map = LiteMap::new();
    for (key, value) in all {
        map.insert(key, value);
    }
    map
}

#[cfg(test)]
mod tests {
    use super::*;

    fn step(number: u64, text: &str) -> StoredStep {
        StoredStep {
            number,
            text: text.to_owned(),
        }
    }

    #[test]
    fn the_newest_of_each_counts() {
        let mut first = Batch::default();
        assert!(first.is_empty());
        first.save("g1", "old".to_owned());
        first.save_steps("g1", true, vec![step(1, "a"), step(2, "b")], vec![]);
        first.index = Some("one".to_owned());
        first.ticket = Some(3);
        let mut later = Batch::default();
        later.save("g1", "new".to_owned());
        later.save_steps("g1", false, vec![step(3, "c")], vec![2]);
        later.delete("g2");
        later.ticket = Some(4);
        first.overlay(later);
        let file = first.files.get("g1").unwrap();
        assert_eq!(file.text.as_deref(), Some("new"));
        assert!(file.fresh && !file.deleted);
        let steps: Vec<_> = file
            .steps
            .iter()
            .map(|(n, text)| (*n, text.is_some()))
            .collect();
        assert_eq!(steps, [(1, true), (2, false), (3, true)]);
        assert!(first.files.get("g2").unwrap().deleted);
        assert_eq!(
            (first.index.as_deref(), first.ticket),
            (Some("one"), Some(4))
        );
    }

    #[test]
    fn what_is_brought_back_is_not_deleted_and_the_other_way_round() {
        let mut batch = Batch::default();
        batch.delete("g1");
        batch.save("g1", "x".to_owned());
        assert!(!batch.files.get("g1").unwrap().deleted);
        let mut later = Batch::default();
        later.delete("g1");
        batch.overlay(later);
        let file = batch.files.get("g1").unwrap();
        assert!(file.deleted && file.text.is_none());
    }

    #[test]
    fn steps_stand_in_the_order_of_their_numbers() {
        let keys = [1, 9, 10, 99, 100, u64::from(u32::MAX)].map(|n| step_key("g1", n));
        assert!(keys.windows(2).all(|two| two[0] < two[1]));
        assert!(keys.iter().all(|key| key.starts_with(&steps_prefix("g1"))));
        assert!(!step_key("g10", 1).starts_with(&steps_prefix("g1")));
    }
}
