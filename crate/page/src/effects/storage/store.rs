//! Reading and writing of gear files while the page runs.

use super::batch::{Batch, INDEX, by_key, file_key, steps_prefix};
use super::change::Change;
use super::database::{self, Database, Transaction, after, text, texts};
use super::left::Left;
use super::old;
use crate::dom::window;
use crate::error::{PageError, Result, report};
use crate::runtime::Port;
use gearswing_app::StoredStep;
use gearswing_app::msg::{File, Msg};
use gearswing_app::words::browser::BROKEN_OFF;
use js_sys::Array;
use litemap::LiteMap;
use wasm_bindgen::JsValue;
use web_sys::{BroadcastChannel, IdbRequest};

/// Name of the channel on which windows tell each other what they have written.
const CHANNEL: &str = "gearswing";

/// Least time from the begin of a write to the next (ms): a drag does not write at every move.
const BETWEEN_MS: f64 = 200.0;

/// Wait before a write that failed is tried again (ms).
const AGAIN_MS: f64 = 2_000.0;

/// The browser's storage, with what waits to be written.
pub(crate) struct Store {
    database: Option<Database>,
    /// The database is being opened again.
    opening: bool,
    /// Last text read or written here of each file.
    seen: LiteMap<String, String>,
    /// To be written with the next transaction.
    waiting: Batch,
    /// In the transaction that is under way.
    flying: Option<Flight>,
    /// Files that were left for the next start; taken back once they are on the disk.
    left: Vec<String>,
    /// When the last write began (ms).
    begun_ms: f64,
    channel: Option<BroadcastChannel>,
}

/// A transaction under way.
struct Flight {
    batch: Batch,
    /// The texts that its files may take the place of.
    over: LiteMap<String, String>,
    /// Everything is handed to the browser.
    sent: bool,
    /// Files that another window has written, with their texts there; nothing of them is written.
    foreign: Vec<(String, String)>,
}

impl Store {
    /// A store over a database and what was read from it.
    pub(super) fn new(database: Option<Database>, seen: LiteMap<String, String>) -> Self {
        Self {
            database,
            opening: false,
            seen,
            waiting: Batch::default(),
            flying: None,
            left: Vec::new(),
            begun_ms: f64::NEG_INFINITY,
            channel: BroadcastChannel::new(CHANNEL).ok(),
        }
    }

    /// Has something written soon.
    pub(crate) fn change(&mut self, port: &Port, change: Change) {
        let waiting = &mut self.waiting;
        match change {
            Change::File { id, text } => waiting.save(&id, text),
            Change::Steps {
                id,
                fresh,
                put,
                gone,
            } => waiting.save_steps(&id, fresh, put, gone),
            Change::Delete { id } => waiting.delete(&id),
            Change::Index { text } => waiting.index = Some(text),
            Change::Ticket(ticket) => {
                waiting.ticket = Some(ticket);
                // what goes with it has come before
                self.write_soon(port);
            }
        }
    }

    /// Begins to write at once, or when the last write is over and not too close.
    fn write_soon(&mut self, port: &Port) {
        let since = now_ms() - self.begun_ms;
        if since >= BETWEEN_MS {
            self.write(port);
        } else {
            port.store_in(BETWEEN_MS - since);
        }
    }

    /// Writes what waits, unless something is under way: then it follows.
    pub(crate) fn write(&mut self, port: &Port) {
        if self.flying.is_some() || self.waiting.is_empty() || self.opening {
            return;
        }
        self.begun_ms = now_ms();
        match self.database.as_ref().map(Database::begin) {
            Some(Ok(transaction)) => self.write_in(port, transaction),
            // closed by the browser, or for a newer version of the page
            None | Some(Err(_)) => self.open_again(port),
        }
    }

    /// Writes what waits in a transaction that has begun.
    fn write_in(&mut self, port: &Port, transaction: Transaction) {
        let batch = std::mem::take(&mut self.waiting);
        let files = batch.files.iter();
        let over = files.filter_map(|(id, _)| Some((id.clone(), self.seen.get(id)?.clone())));
        self.flying = Some(Flight {
            over: by_key(over),
            batch,
            sent: false,
            foreign: Vec::new(),
        });
        if let Err(error) = self.ask(port, transaction) {
            self.landed(port, Err(error));
        }
    }

    /// Asks what is stored of the files that are to be written.
    fn ask(&self, port: &Port, transaction: Transaction) -> Result<()> {
        let to = port.clone();
        transaction.ended(move |ended| {
            to.with_store(|store| store.landed(&to, ended));
        });
        let files = self
            .flying
            .iter()
            .flat_map(|flight| flight.batch.files.iter());
        let mut asked: Vec<(String, IdbRequest)> = Vec::new();
        for (id, _) in files {
            asked.push((id.clone(), transaction.get(&file_key(id))?));
        }
        let last = match asked.last() {
            Some((_, last)) => last.clone(),
            None => transaction.get(INDEX)?,
        };
        let to = port.clone();
        after(&last, move |answered| {
            to.with_store(|store| {
                let sent = answered.and_then(|()| store.send(&transaction, &asked));
                if let Err(error) = sent {
                    report(Err(error));
                    // its end is told like any other
                    transaction.abort();
                }
            });
        });
        Ok(())
    }

    /// Hands everything to the browser but what another window has written since it was read here.
    fn send(&mut self, transaction: &Transaction, asked: &[(String, IdbRequest)]) -> Result<()> {
        let Some(flight) = &mut self.flying else {
            return Ok(());
        };
        for (id, request) in asked {
            let Some(file) = flight.batch.files.get(id) else {
                continue;
            };
            let there = text(request)?;
            if let Some(there) = there
                && flight.over.get(id) != Some(&there)
                && file.text.as_ref() != Some(&there)
            {
                flight.foreign.push((id.clone(), there));
                continue;
            }
            file.send(transaction, id)?;
        }
        if let Some(index) = &flight.batch.index {
            transaction.put(INDEX, index)?;
        }
        flight.sent = true;
        Ok(())
    }

    /// A transaction has ended: everything of it is on the disk, or nothing.
    fn landed(&mut self, port: &Port, ended: Result<()>) {
        let Some(flight) = self.flying.take() else {
            return;
        };
        let ended = match ended {
            Ok(()) if !flight.sent => Err(PageError::Storage(BROKEN_OFF.to_owned())),
            other => other,
        };
        if let Err(error) = ended {
            let mut batch = flight.batch;
            batch.overlay(std::mem::take(&mut self.waiting));
            self.waiting = batch;
            port.send(Msg::File(File::NotStored {
                reason: error.to_string(),
            }));
            port.store_in(AGAIN_MS);
            return;
        }
        // the page has not ended after all
        if self.waiting.is_empty() {
            for id in self.left.drain(..) {
                old::unleave(&id);
            }
        }
        let mut written = Vec::new();
        for (id, file) in flight.batch.files {
            let foreign = flight.foreign.iter().find(|(foreign, _)| *foreign == id);
            if let Some((_, text)) = foreign {
                self.found(port, &id, text, file.text);
            } else if let Some(text) = file.text {
                self.seen.insert(id.clone(), text);
                written.push(id);
            } else if file.deleted {
                self.seen.remove(&id);
            }
        }
        self.tell(&written);
        if let Some(ticket) = flight.batch.ticket {
            port.send(Msg::File(File::Kept { ticket }));
        }
        if !self.waiting.is_empty() {
            self.write_soon(port);
        }
    }

    /// Where other windows tell what they have written. It is the one on which this window tells, for a
    /// second one would hear it.
    pub(crate) fn channel(&self) -> Option<BroadcastChannel> {
        self.channel.clone()
    }

    /// Tells other windows what was written.
    fn tell(&self, written: &[String]) {
        if let Some(channel) = &self.channel
            && !written.is_empty()
        {
            let ids: Array = written.iter().map(|id| JsValue::from_str(id)).collect();
            report(channel.post_message(&ids).map_err(PageError::from));
        }
    }

    /// Another window says that it has written these files.
    pub(crate) fn written_elsewhere(&self, port: &Port, ids: &Array) {
        for id in ids.iter().filter_map(|id| id.as_string()) {
            report(self.look(port, id));
        }
    }

    /// Reads what another window has written.
    fn look(&self, port: &Port, id: String) -> Result<()> {
        let Some(database) = &self.database else {
            return Ok(());
        };
        let request = database.begin_to_read()?.get(&file_key(&id))?;
        let (to, asked) = (port.clone(), request.clone());
        after(&request, move |read| {
            match read.and_then(|()| text(&asked)) {
                Ok(Some(there)) => to.with_store(|store| {
                    let flying = store.flying.as_ref();
                    let own = flying.and_then(|flight| flight.batch.files.get(&id)?.text.clone());
                    store.found(&to, &id, &there, own);
                }),
                Ok(None) => {}
                Err(error) => report(Err(error)),
            }
        });
        Ok(())
    }

    /// What another window has stored under a key where this one was to store `own`. What waits was made
    /// before this was known: the state decides anew.
    fn found(&mut self, port: &Port, id: &str, there: &str, own: Option<String>) {
        if self.seen.get(id).is_some_and(|seen| seen == there) || own.as_deref() == Some(there) {
            return;
        }
        self.seen.insert(id.to_owned(), there.to_owned());
        let waiting = self.waiting.files.remove(id).and_then(|file| file.text);
        if let Some(text) = waiting.or(own) {
            port.send(Msg::File(File::NotWritten {
                id: id.to_owned(),
                text,
            }));
        }
        port.send(Msg::File(File::StoredElsewhere {
            id: id.to_owned(),
            text: there.to_owned(),
        }));
    }

    /// Reads the history of a file and sends it.
    pub(crate) fn load_steps(&self, port: &Port, id: String) -> Result<()> {
        let Some(database) = &self.database else {
            return Ok(());
        };
        let prefix = steps_prefix(&id);
        let asked = database.begin_to_read()?.all(&prefix)?;
        let to = port.clone();
        let last = asked.1.clone();
        after(&last, move |read| {
            match read.and_then(|()| texts(&asked, &prefix)) {
                Ok(found) => {
                    let steps = found.into_iter().filter_map(|(number, text)| {
                        let number = number.parse().ok()?;
                        Some(StoredStep { number, text })
                    });
                    let steps = steps.collect();
                    to.send(Msg::File(File::Steps { id, steps }));
                }
                Err(error) => report(Err(error)),
            }
        });
        Ok(())
    }

    /// The database is gone, or never came: tries once more.
    fn open_again(&mut self, port: &Port) {
        self.opening = true;
        let to = port.clone();
        let asked = database::open(move |opened| {
            to.with_store(|store| {
                store.opening = false;
                match opened {
                    Ok(database) => {
                        let begun = database.begin();
                        store.database = Some(database);
                        match begun {
                            Ok(transaction) if !store.waiting.is_empty() => {
                                store.write_in(&to, transaction);
                            }
                            Ok(_) => {}
                            // opened anew and still of no use: that is told, and tried later
                            Err(error) => store.not_opened(&to, &error),
                        }
                    }
                    Err(error) => store.not_opened(&to, &error),
                }
            });
        });
        if let Err(error) = asked {
            self.opening = false;
            self.not_opened(port, &error);
        }
    }

    fn not_opened(&self, port: &Port, error: &PageError) {
        port.send(Msg::File(File::NotStored {
            reason: error.to_string(),
        }));
        port.store_in(AGAIN_MS);
    }

    /// The page may end before a transaction does: what is not on the disk yet is left where it can
    /// be written at once, and taken over at the next start.
    pub(crate) fn leave(&mut self) {
        let flying = self.flying.as_ref().map(|flight| &flight.batch);
        let mut all = flying.cloned().unwrap_or_default();
        all.overlay(self.waiting.clone());
        for (id, file) in all.files {
            if file.text.is_none() {
                continue;
            }
            let under_way = flying.and_then(|batch| batch.files.get(&id)?.text.clone());
            let over = self.seen.get(&id).cloned().into_iter().chain(under_way);
            let mut left = Left {
                over: over.collect(),
                file,
            };
            if old::leave(&id, &left).is_err() {
                // too long: without its history
                left.file.steps.clear();
                report(old::leave(&id, &left));
            }
            self.left.push(id);
        }
        if let Some(index) = &all.index {
            report(old::leave_index(index));
        }
    }
}

/// Time of the page's own clock (ms).
fn now_ms() -> f64 {
    let clock = window().ok().and_then(|window| window.performance());
    clock.map_or(0.0, |clock| clock.now())
}
