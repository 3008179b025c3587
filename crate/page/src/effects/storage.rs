//! Gear files in the browser's storage. Nothing that another window wrote is overwritten.

use crate::dom::window;
use crate::error::{PageError, Result};
use crate::runtime::Port;
use gearswing_app::msg::{File, Msg};
use gearswing_app::{Few, StoredFile};
use web_sys::Storage;

/// Keys of gear files begin with this.
const FILE_PREFIX: &str = "gearswing.file.";
/// Key of the index of files.
const INDEX_KEY: &str = "gearswing.index";

/// The browser's storage, with what waits to be written.
pub(crate) struct Store {
    storage: Option<Storage>,
    /// Why there is no storage.
    refused: Option<String>,
    /// Last text read or written here, by key.
    seen: Few<String, String>,
    /// Texts to be written, by key.
    waiting: Few<String, String>,
    /// The failure last sent, so that it is sent once.
    failure: Option<String>,
}

impl Store {
    /// Opens the storage; that it is refused is no failure of the page.
    pub(crate) fn open() -> Self {
        let (storage, refused) = match local_storage() {
            Ok(storage) => (Some(storage), None),
            Err(error) => (None, Some(error.to_string())),
        };
        Self {
            storage,
            refused,
            seen: Few::default(),
            waiting: Few::default(),
            failure: None,
        }
    }

    /// Why there is no storage, if so.
    pub(crate) fn refused(&self) -> Option<String> {
        self.refused.clone()
    }

    /// The stored index.
    pub(crate) fn index(&self) -> Option<String> {
        self.read(INDEX_KEY)
    }

    /// All stored gear files, in no order.
    pub(crate) fn files(&mut self) -> Vec<StoredFile> {
        let Some(storage) = &self.storage else {
            return Vec::new();
        };
        let count = storage.length().unwrap_or(0);
        let keys: Vec<String> = (0..count)
            .filter_map(|at| storage.key(at).ok().flatten())
            .filter(|key| key.starts_with(FILE_PREFIX))
            .collect();
        let mut files = Vec::new();
        for key in keys {
            if let Some(text) = self.read(&key) {
                self.seen.insert(key.clone(), text.clone());
                files.push(StoredFile {
                    id: key.trim_start_matches(FILE_PREFIX).to_owned(),
                    text,
                });
            }
        }
        files
    }

    /// Has a gear file written soon.
    pub(crate) fn save(&mut self, port: &Port, id: &str, text: String) {
        if let Some(reason) = self.refused.clone() {
            self.fail(port, reason);
            return;
        }
        self.waiting.insert(format!("{FILE_PREFIX}{id}"), text);
        port.store_soon();
    }

    /// Has the index written soon.
    pub(crate) fn save_index(&mut self, port: &Port, text: String) {
        if self.storage.is_some() {
            self.waiting.insert(INDEX_KEY.to_owned(), text);
            port.store_soon();
        }
    }

    /// Forgets a gear file.
    pub(crate) fn delete(&mut self, id: &str) {
        let key = format!("{FILE_PREFIX}{id}");
        self.waiting.remove(&key);
        self.seen.remove(&key);
        if let Some(storage) = &self.storage {
            crate::error::report(storage.remove_item(&key).map_err(PageError::from));
        }
    }

    /// Another window has written or deleted this gear file.
    pub(crate) fn written_elsewhere(&mut self, port: &Port, key: &str, text: Option<String>) {
        let Some(id) = key.strip_prefix(FILE_PREFIX) else {
            return;
        };
        match text {
            Some(text) => {
                self.seen.insert(key.to_owned(), text.clone());
                // What waits was made before this was known: the state decides anew.
                self.waiting.remove(key);
                port.send(Msg::File(File::StoredElsewhere {
                    id: id.to_owned(),
                    text,
                }));
            }
            None => {
                self.seen.remove(key);
            }
        }
    }

    /// Writes everything that waits.
    pub(crate) fn write_all(&mut self, port: &Port) {
        for (key, text) in std::mem::take(&mut self.waiting) {
            if let Err(error) = self.write(port, &key, text) {
                self.fail(port, error.to_string());
            } else {
                self.failure = None;
            }
        }
    }

    /// Writes one text, unless another window has written there since.
    fn write(&mut self, port: &Port, key: &str, text: String) -> Result<()> {
        let Some(storage) = &self.storage else {
            return Ok(());
        };
        if key != INDEX_KEY {
            let there = storage.get_item(key)?;
            if let Some(there) = there
                && self.seen.get(key) != Some(&there)
            {
                self.written_elsewhere(port, key, Some(there));
                return Ok(());
            }
        }
        storage.set_item(key, &text)?;
        self.seen.insert(key.to_owned(), text);
        Ok(())
    }

    fn read(&self, key: &str) -> Option<String> {
        self.storage.as_ref()?.get_item(key).ok().flatten()
    }

    fn fail(&mut self, port: &Port, reason: String) {
        if self.failure.as_ref() != Some(&reason) {
            self.failure = Some(reason.clone());
            port.send(Msg::File(File::NotStored { reason }));
        }
    }
}

/// The storage. One that is full still reads.
fn local_storage() -> Result<Storage> {
    window()?
        .local_storage()?
        .ok_or(PageError::Missing("storage for pages"))
}
