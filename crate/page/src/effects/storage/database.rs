//! The browser's database: one store of values by key.

use crate::dom::window;
use crate::error::{PageError, Result};
use crate::runtime::panic;
use gearswing_app::words::browser::{BROKEN_OFF, NO_ROOM, lacks};
use js_sys::{Array, Function, Object, Reflect};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    DomException, Event, IdbDatabase, IdbKeyRange, IdbObjectStore, IdbOpenDbRequest, IdbRequest,
    IdbTransaction,
};

/// Name of the database.
const NAME: &str = "gearswing";
/// Version of what it holds.
const VERSION: u32 = 1;
/// The one store in it.
const STORE: &str = "kept";

/// An open database.
#[derive(Clone)]
pub(super) struct Database {
    database: IdbDatabase,
}

/// A transaction on its store: all of it comes about, or nothing.
#[derive(Clone)]
pub(super) struct Transaction {
    transaction: IdbTransaction,
    store: IdbObjectStore,
}

/// Opens the database, makes it where there is none, and calls `then`.
pub(super) fn open(then: impl FnOnce(Result<Database>) + 'static) -> Result<()> {
    let factory = window()?
        .indexed_db()?
        .ok_or(PageError::Missing(lacks::DATABASE))?;
    let request = factory.open_with_u32(NAME, VERSION)?;
    let making = request.clone();
    // comes at most once, before the others
    let upgrade = Closure::once_into_js(move || {
        let made = result::<IdbDatabase>(&making)
            .and_then(|database| Ok(database.create_object_store(STORE)?));
        crate::error::report(made.map(|_| ()));
    });
    request.set_onupgradeneeded(Some(upgrade.unchecked_ref()));
    let asked: IdbOpenDbRequest = request.clone();
    after(&request, move |done| {
        then(done.and_then(|()| {
            let database: IdbDatabase = result(&asked)?;
            // a newer version of the page, or the browser's own clearing, need not wait for this one
            let closing = database.clone();
            let close = Closure::<dyn FnMut()>::new(move || closing.close());
            database.set_onversionchange(Some(close.as_ref().unchecked_ref()));
            // one for each time that the database is opened
            close.forget();
            Ok(Database { database })
        }));
    });
    Ok(())
}

impl Database {
    /// Begins a transaction that writes; its end says that it is on the disk.
    pub(super) fn begin(&self) -> Result<Transaction> {
        // The bindings have the durability among what is not settled yet; where the browser does not
        // know it, it is not looked at.
        let options = Object::new();
        Reflect::set(&options, &"durability".into(), &"strict".into())?;
        let begin: Function = Reflect::get(&self.database, &"transaction".into())?.dyn_into()?;
        let begun = begin.call3(&self.database, &STORE.into(), &"readwrite".into(), &options)?;
        Transaction::of(begun.dyn_into()?)
    }

    /// Begins a transaction that only reads.
    pub(super) fn begin_to_read(&self) -> Result<Transaction> {
        Transaction::of(self.database.transaction_with_str(STORE)?)
    }
}

impl Transaction {
    fn of(transaction: IdbTransaction) -> Result<Self> {
        let store = transaction.object_store(STORE)?;
        Ok(Self { transaction, store })
    }

    /// Asks for the value of a key.
    pub(super) fn get(&self, key: &str) -> Result<IdbRequest> {
        Ok(self.store.get(&key.into())?)
    }

    /// Asks for the keys that begin with `prefix`, and for their values, both in the order of the keys.
    pub(super) fn all(&self, prefix: &str) -> Result<(IdbRequest, IdbRequest)> {
        let range: JsValue = range(prefix)?.into();
        Ok((
            self.store.get_all_keys_with_key(&range)?,
            self.store.get_all_with_key(&range)?,
        ))
    }

    /// Has a value written.
    pub(super) fn put(&self, key: &str, text: &str) -> Result<()> {
        self.store.put_with_key(&text.into(), &key.into())?;
        Ok(())
    }

    /// Has a key taken out.
    pub(super) fn delete(&self, key: &str) -> Result<()> {
        self.store.delete(&key.into())?;
        Ok(())
    }

    /// Has all keys taken out that begin with `prefix`.
    pub(super) fn delete_all(&self, prefix: &str) -> Result<()> {
        let range: JsValue = range(prefix)?.into();
        self.store.delete(&range)?;
        Ok(())
    }

    /// Gives it up.
    pub(super) fn abort(&self) {
        // one that has ended by itself has nothing to give up
        let _ = self.transaction.abort();
    }

    /// Calls `then` when all of it is on the disk, or nothing is.
    pub(super) fn ended(&self, then: impl FnOnce(Result<()>) + 'static) {
        let transaction = self.transaction.clone();
        let end = Closure::once_into_js(move |event: Event| {
            if panic::happened() {
                return;
            }
            then(if event.type_() == "complete" {
                Ok(())
            } else {
                Err(why(transaction.error()))
            });
        });
        let end: &Function = end.unchecked_ref();
        self.transaction.set_oncomplete(Some(end));
        self.transaction.set_onabort(Some(end));
    }
}

/// Calls `then` when a request has been answered.
pub(super) fn after(request: &IdbRequest, then: impl FnOnce(Result<()>) + 'static) {
    let asked = request.clone();
    let end = Closure::once_into_js(move |event: Event| {
        if panic::happened() {
            return;
        }
        then(if event.type_() == "success" {
            Ok(())
        } else {
            Err(why(asked.error().ok().flatten()))
        });
    });
    let end: &Function = end.unchecked_ref();
    request.set_onsuccess(Some(end));
    request.set_onerror(Some(end));
}

/// The answer of a request that succeeded.
fn result<T: JsCast>(request: &IdbRequest) -> Result<T> {
    Ok(request.result()?.dyn_into()?)
}

/// The text that a request found; `None` = there is none.
pub(super) fn text(request: &IdbRequest) -> Result<Option<String>> {
    Ok(request.result()?.as_string())
}

/// Keys, without the prefix, and texts that two requests found.
pub(super) fn texts(
    (keys, values): &(IdbRequest, IdbRequest),
    prefix: &str,
) -> Result<Vec<(String, String)>> {
    let (keys, values): (Array, Array) = (result(keys)?, result(values)?);
    let name = |key: JsValue| key.as_string()?.strip_prefix(prefix).map(str::to_owned);
    let both = keys.iter().zip(values.iter());
    Ok(both
        .filter_map(|(key, value)| Some((name(key)?, value.as_string()?)))
        .collect())
}

fn range(prefix: &str) -> Result<IdbKeyRange> {
    Ok(IdbKeyRange::bound(
        &prefix.into(),
        &format!("{prefix}\u{ffff}").into(),
    )?)
}

fn why(error: Option<DomException>) -> PageError {
    match error {
        Some(error) if error.name() == "QuotaExceededError" => {
            PageError::Storage(NO_ROOM.to_owned())
        }
        Some(error) if !error.message().is_empty() => PageError::Storage(error.message()),
        Some(error) => PageError::Storage(error.name()),
        None => PageError::Storage(BROKEN_OFF.to_owned()),
    }
}
