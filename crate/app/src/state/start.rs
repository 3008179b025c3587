//! What the page finds at its start.
use gearswing_report::Program;

/// One stored gear file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoredFile {
    /// Key of the file.
    pub id: String,
    /// What was stored under it.
    pub text: String,
}

/// One stored step of a file's history.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoredStep {
    /// Its number; steps of a file are stored and read in the order of their numbers.
    pub number: u64,
    /// What was stored under it.
    pub text: String,
}

/// What the page finds at its start.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Start {
    /// The build that runs.
    pub program: Program<'static>,
    /// The stored index of files, if there is one.
    pub index: Option<String>,
    /// All stored files.
    pub files: Vec<StoredFile>,
    /// Fragment of the address without `#`, if there is one.
    pub fragment: Option<String>,
    /// The fragment stands in the page itself, which is a file that somebody has saved with a gear in it.
    pub given: bool,
    /// Eight bytes of chance, for the first gear that is to get a mark.
    pub chance: Option<[u8; 8]>,
    /// Address of the page without fragment, to put in front of a link.
    pub address: String,
    /// Address at which the page lives for others, as it was built with; empty = none was named.
    pub home: String,
    /// What was looked at before a reload, as [`super::State::looking`] has told it.
    pub looking: Option<String>,
    /// The person's system asks for less motion.
    pub reduced_motion: bool,
    /// The browser will not store anything, in its words.
    pub storage_refused: Option<String>,
}
