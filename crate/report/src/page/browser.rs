//! What the browser lacks or refuses, and what the page lacks.

/// Something that a browser may lack, or withhold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// An answer from its storage in good time.
    Answer,
    /// A canvas to draw on.
    Canvas,
    /// The styles that an element has in the end.
    ComputedStyle,
    /// The older way to copy.
    CopyCommand,
    /// Leave to copy by it.
    CopyLeave,
    /// A database.
    Database,
    /// A page.
    Document,
    /// The program's state, which is in use.
    FreeCore,
    /// Queries about the screen.
    MediaQueries,
    /// The body of the page.
    PageBody,
    /// A promise.
    Promise,
    /// The root of the page.
    Root,
    /// The simple storage.
    SimpleStorage,
    /// A color of the style sheet, by its name there.
    StyleValue(&'static str),
    /// A window.
    Window,
}

/// That a browser lacks something, as a clause.
#[must_use]
pub fn missing(what: Missing) -> String {
    let what = match what {
        Missing::Answer => "answer from its storage",
        Missing::Canvas => "two-dimensional canvas",
        Missing::ComputedStyle => "computed style",
        Missing::CopyCommand => "copy command",
        Missing::CopyLeave => "way to copy without being asked",
        Missing::Database => "database for pages",
        Missing::Document => "document",
        Missing::FreeCore => "free core at a frame",
        Missing::MediaQueries => "media queries",
        Missing::PageBody => "page body",
        Missing::Promise => "promise",
        Missing::Root => "root element",
        Missing::SimpleStorage => "storage for pages",
        Missing::StyleValue(name) => name,
        Missing::Window => "window",
    };
    format!("this browser has no {what}")
}

/// The page lacks an element, or it is of another kind.
#[must_use]
pub fn no_element(id: &str) -> String {
    format!("the page has no fitting element \"{id}\"")
}

/// Why the browser did not store something, where it is for us to say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotStored {
    /// The disk, or the share of it that the page has, is full.
    NoRoom,
    /// It ended before it was done.
    BrokenOff,
}

/// Why the browser did not store something, as a clause.
#[must_use]
pub fn not_stored(why: NotStored) -> &'static str {
    match why {
        NotStored::NoRoom => "there is no room left for it",
        NotStored::BrokenOff => "it was broken off",
    }
}
