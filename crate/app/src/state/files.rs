//! Gear files: what is stored, what is open, and where it came from.
use super::document::Document;
use super::session::{Draft, Paper};
use super::steps::KeptSteps;
use super::storage::read_file;
use litemap::LiteMap;

use gearswing_gear::model::{Gear, GearId};
use gearswing_gearfile::read;
use gearswing_report::open_error_text;
use gearswing_report::page::files::unnamed;
use gearswing_report::page::link::Own;

/// Where the open document came from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Origin {
    /// A stored file.
    Stored(String),
    /// The demo, not stored until something is typed or moved.
    Demo,
    /// A link, not stored until it is kept or changed.
    Link,
}

impl Origin {
    /// Key of the file that it is.
    pub(crate) fn stored_id(&self) -> Option<&str> {
        match self {
            Self::Stored(id) => Some(id),
            Self::Demo | Self::Link => None,
        }
    }
}

/// A stored file.
#[derive(Clone, Debug)]
pub(crate) struct Entry {
    pub(crate) id: String,
    pub(crate) name: String,
    /// What is stored.
    pub(crate) text: String,
    /// Why it cannot be read; it is kept as it is.
    pub(crate) broken: Option<String>,
    /// Its document with history, while another one is open.
    pub(crate) aside: Option<Document>,
    /// What is stored of its history.
    pub(crate) steps: KeptSteps,
}

impl Entry {
    /// A file that is made here; its text comes with the next store.
    pub(crate) fn made(id: String, name: String) -> Self {
        Self {
            id,
            name,
            text: String::new(),
            broken: None,
            aside: None,
            steps: KeptSteps::none(),
        }
    }

    /// A text that was stored, whether it can be read or not.
    pub(crate) fn stored(id: String, text: String) -> Self {
        let opened = read_file(&text)
            .and_then(|stored| read(&stored.gear_text).map_err(|error| open_error_text(&error)));
        let (name, broken) = match opened {
            Ok(gear) => (gear.name, None),
            Err(reason) => (unnamed(&id), Some(reason)),
        };
        Self {
            name,
            text,
            broken,
            steps: KeptSteps::unread(),
            ..Self::made(id, String::new())
        }
    }
}

/// Own work while a link's content is open.
#[derive(Clone, Debug)]
pub(crate) struct Parked {
    pub(crate) origin: Origin,
    pub(crate) document: Document,
    pub(crate) leg: usize,
    pub(crate) progress: f64,
    pub(crate) takes_along: bool,
    pub(crate) drafts: LiteMap<String, Draft>,
    pub(crate) papers: LiteMap<usize, Paper>,
}

/// The own file of the gear that somebody has sent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct OwnFile {
    /// Key of the file.
    pub(crate) id: String,
    /// Its name.
    pub(crate) name: String,
    /// How it stands to what was sent.
    pub(crate) how: Own,
}

/// The link for the document as it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum LinkState {
    /// Length of the whole link (characters).
    Ready(usize),
    /// Too long to be sent safely: its length (characters).
    TooLong(usize),
    /// There is none, and why.
    Refused(String),
}

/// All gear files.
#[derive(Clone, Debug)]
pub(crate) struct Files {
    pub(crate) entries: Vec<Entry>,
    pub(crate) origin: Origin,
    pub(crate) parked: Option<Parked>,
    /// The own file of the same gear.
    pub(crate) own: Option<OwnFile>,
    /// The gear as a link brought it.
    pub(crate) received: Option<Gear>,
    pub(crate) deleted: Vec<Entry>,
    /// Address of the page.
    pub(crate) address: String,
    /// Address at which others have the page; empty = none is known.
    pub(crate) home: String,
    /// The same, where the person has put it in or taken it out.
    pub(crate) typed_home: Option<String>,
    pub(crate) link: LinkState,
    /// The mark for the next gear that needs one.
    pub(crate) spare_id: Option<GearId>,
    /// Why the browser does not store, if it does not.
    pub(crate) refused: Option<String>,
    /// The notice about what is not stored.
    pub(crate) refusal: Option<u64>,
    /// Number of the last of what was asked to be stored, and of what is on the disk.
    pub(crate) asked: u64,
    pub(crate) kept: u64,
    /// The browser was asked not to clear what it keeps, since the page was opened.
    pub(crate) asked_to_stay: bool,
    /// The person was told that the browser may clear it all the same.
    pub(crate) told_clearing: bool,
    /// The file whose stored history is to be read.
    pub(crate) wants_steps: Option<String>,
    /// The index as last stored.
    pub(crate) index_text: String,
    /// Rises with every document opened or changed.
    pub(crate) revisions: u64,
}

impl Files {
    pub(crate) fn new(address: String) -> Self {
        Self {
            entries: Vec::new(),
            origin: Origin::Demo,
            parked: None,
            own: None,
            received: None,
            deleted: Vec::new(),
            address,
            home: String::new(),
            typed_home: None,
            link: LinkState::Ready(0),
            spare_id: None,
            refused: None,
            refusal: None,
            asked: 0,
            kept: 0,
            asked_to_stay: false,
            told_clearing: false,
            wants_steps: None,
            index_text: String::new(),
            revisions: 0,
        }
    }

    /// What is put in front of a link.
    pub(crate) fn link_address(&self) -> &str {
        match self.home.as_str() {
            "" => &self.address,
            home => home,
        }
    }

    pub(crate) fn entry(&self, id: &str) -> Option<&Entry> {
        self.entries.iter().find(|entry| entry.id == id)
    }

    pub(crate) fn entry_mut(&mut self, id: &str) -> Option<&mut Entry> {
        self.entries.iter_mut().find(|entry| entry.id == id)
    }

    /// Key of the open file, if it is stored.
    pub(crate) fn open_id(&self) -> Option<&str> {
        self.origin.stored_id()
    }

    /// A key that no file has or had.
    pub(crate) fn free_id(&self) -> String {
        let last = self
            .entries
            .iter()
            .chain(&self.deleted)
            .filter_map(|entry| entry.id.strip_prefix('g')?.parse::<u64>().ok())
            .max()
            .unwrap_or(0);
        format!("g{}", last.saturating_add(1))
    }

    /// `name`, numbered if a file has it already.
    pub(crate) fn free_name(&self, name: &str) -> String {
        crate::fields::free_name(name, self.entries.iter().map(|e| e.name.as_str()))
    }
}
