//! What the browser lacks or refuses, and what the page lacks.

/// Things that a browser may lack, or withhold.
pub mod lacks {
    /// An answer from its storage in good time.
    pub const ANSWER: &str = "answer from its storage";
    /// A canvas to draw on.
    pub const CANVAS: &str = "two-dimensional canvas";
    /// The styles that an element has in the end.
    pub const COMPUTED_STYLE: &str = "computed style";
    /// The older way to copy.
    pub const COPY_COMMAND: &str = "copy command";
    /// Leave to copy by it.
    pub const COPY_LEAVE: &str = "way to copy without being asked";
    /// A database.
    pub const DATABASE: &str = "database for pages";
    /// A page.
    pub const DOCUMENT: &str = "document";
    /// The program's state, while it is in use.
    pub const FREE_CORE: &str = "free core at a frame";
    /// Queries about the screen.
    pub const MEDIA_QUERIES: &str = "media queries";
    /// The body of the page.
    pub const PAGE_BODY: &str = "page body";
    /// A promise.
    pub const PROMISE: &str = "promise";
    /// The root of the page.
    pub const ROOT: &str = "root element";
    /// The simple storage.
    pub const SIMPLE_STORAGE: &str = "storage for pages";
    /// A window.
    pub const WINDOW: &str = "window";
}

/// That a browser lacks something, as a clause.
#[must_use]
pub fn missing(what: &str) -> String {
    format!("this browser has no {what}")
}

/// The page lacks an element, or it is of another kind.
#[must_use]
pub fn no_element(id: &str) -> String {
    format!("the page has no fitting element \"{id}\"")
}

/// Why the browser did not store something: the disk, or the share of it that the page has, is full.
pub const NO_ROOM: &str = "there is no room left for it";

/// Why the browser did not store something: it ended before it was done.
pub const BROKEN_OFF: &str = "it was broken off";
