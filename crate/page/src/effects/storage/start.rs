//! What the page finds at its start: opens the database, takes over what lies beside it, reads.

use super::batch::{DELETED, FILE, INDEX, by_key, steps_prefix};
use super::database::{self, Database, Transaction, after, text, texts};
use super::old::{self, Held, Taking, take_over};
use super::store::Store;
use crate::dom::window;
use crate::error::{PageError, Result, report};
use gearswing_app::StoredFile;
use gearswing_app::words::browser::lacks;
use litemap::LiteMap;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// Keys of what was taken over begin with this.
const TAKEN: &str = "taken/";

/// Longest wait for the database (ms); then the page starts without it and says so.
const LONGEST_WAIT_MS: i32 = 5_000;

/// What was found: the store to go on with, index, files, and why nothing can be stored, if so.
pub(crate) struct Found {
    /// To go on with.
    pub(crate) store: Store,
    /// The stored index.
    pub(crate) index: Option<String>,
    /// All stored gear files, in no order.
    pub(crate) files: Vec<StoredFile>,
    /// Why there is no storage.
    pub(crate) refused: Option<String>,
}

/// Who waits for what is found; called once.
type Waiting = Rc<RefCell<Option<Box<dyn FnOnce(Found)>>>>;

/// Reads everything that is stored and calls `then`; that storage is refused is no failure of the
/// page: what lies in the simple storage can still be read and saved by hand.
pub(crate) fn open(then: impl FnOnce(Found) + 'static) -> Result<()> {
    let waiting: Waiting = Rc::new(RefCell::new(Some(Box::new(then))));
    let late = waiting.clone();
    let give_up = Closure::once_into_js(move || {
        refuse(&late, &PageError::Missing(lacks::ANSWER));
    });
    window()?.set_timeout_with_callback_and_timeout_and_arguments_0(
        give_up.unchecked_ref(),
        LONGEST_WAIT_MS,
    )?;
    let to = waiting.clone();
    let asked = database::open(move |opened| {
        let begun = opened.and_then(|database| read(database, to.clone()));
        if let Err(error) = begun {
            refuse(&to, &error);
        }
    });
    if let Err(error) = asked {
        refuse(&waiting, &error);
    }
    Ok(())
}

fn answer(waiting: &Waiting, found: Found) {
    let then = waiting.borrow_mut().take();
    if let Some(then) = then {
        then(found);
    }
}

fn refuse(waiting: &Waiting, error: &PageError) {
    let mut held = Held::default();
    take_over(&mut held, &old::read());
    let found = Found {
        store: Store::new(None, LiteMap::default()),
        index: held.index,
        files: files(&held.files),
        refused: Some(error.to_string()),
    };
    answer(waiting, found);
}

fn files(files: &LiteMap<String, String>) -> Vec<StoredFile> {
    let all = files.iter();
    all.map(|(id, text)| StoredFile {
        id: id.clone(),
        text: text.clone(),
    })
    .collect()
}

/// Reads, takes over and answers, all in one transaction: two windows that start together do not
/// take over twice.
fn read(database: Database, to: Waiting) -> Result<()> {
    let transaction = database.begin()?;
    let index = transaction.get(INDEX)?;
    let stored = transaction.all(FILE)?;
    let deleted = transaction.all(DELETED)?;
    let taken = transaction.all(TAKEN)?;
    let last = taken.1.clone();
    let writing = transaction.clone();
    let failed = to.clone();
    after(&last, move |read| {
        let held = read.and_then(|()| {
            Ok(Held {
                index: text(&index)?,
                files: by_key(texts(&stored, FILE)?.into_iter()),
                taken: by_key(texts(&taken, TAKEN)?.into_iter()),
            })
        });
        let done = held.and_then(|mut held| {
            for (id, _) in texts(&deleted, DELETED)? {
                if !held.files.contains_key(&id) {
                    writing.delete_all(&steps_prefix(&id))?;
                }
                writing.delete(&format!("{DELETED}{id}"))?;
            }
            let old = old::read();
            let taking = take_over(&mut held, &old);
            write(&writing, &taking)?;
            Ok((held, old))
        });
        match done {
            Err(error) => {
                writing.abort();
                refuse(&failed, &error);
            }
            Ok((held, old)) => {
                // the simple storage lets go of it only when the database has it on the disk
                writing.ended(move |ended| match ended {
                    Ok(()) => old::remove(&old),
                    Err(error) => report(Err(error)),
                });
                let found = Found {
                    files: files(&held.files),
                    index: held.index,
                    store: Store::new(Some(database), held.files),
                    refused: None,
                };
                answer(&failed, found);
            }
        }
    });
    Ok(())
}

fn write(transaction: &Transaction, taking: &Taking) -> Result<()> {
    if taking.is_empty() {
        return Ok(());
    }
    for (id, file) in &taking.files {
        file.send(transaction, id)?;
    }
    if let Some(index) = &taking.index {
        transaction.put(INDEX, index)?;
    }
    for (key, text) in &taking.taken {
        transaction.put(&format!("{TAKEN}{key}"), text)?;
    }
    for key in &taking.forgotten {
        transaction.delete(&format!("{TAKEN}{key}"))?;
    }
    Ok(())
}
