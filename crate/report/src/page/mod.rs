//! Every word of the page that is not about a result alone: labels, lines, notices, part by part.
//!
//! The page lays out, this says: each function takes the data that decides the words.

/// Answers of the legs and their faults.
pub mod answers;
/// What the browser lacks or refuses.
pub mod browser;
/// States kept to compare with, and what differs from them.
pub mod changes;
/// The charts of a leg.
pub mod curves;
/// The drawing and its points.
pub mod drawing;
/// Rows of fields, and what can be done to them.
pub mod fields;
/// Files: opened, taken in, given out, deleted.
pub mod files;
/// The top of the page.
pub mod header;
/// Steps of the history, undone and redone.
pub mod history;
/// The keys.
pub mod keys;
/// What each type of line means.
pub mod line_key;
/// Links.
pub mod link;
/// Load arrows.
pub mod loads;
/// Moving parts, pieces and places by their names.
pub mod names;
/// What somebody says about a gear.
pub mod notes;
/// Moving a point by steps.
pub mod nudge;
/// Two legs that are each other's image in a mirror.
pub mod pairs;
/// What stands on paper.
pub mod paper;
/// Numbers at the cursor.
pub mod readout;
/// Groups of fields.
pub mod sections;
/// Sheets beside the drawing.
pub mod sheets;
/// What explains a stop.
pub mod stopped;
/// Keeping the work in the browser.
pub mod storage;
/// How far the actuator reaches.
pub mod stroke;
/// The short text of each group while it is closed.
pub mod summary;
/// The gear against time.
pub mod times;
/// Play and scrub.
pub mod transport;
/// Numbers worked out from the fields.
pub mod worked;
/// Working out, and giving it up.
pub mod working;
