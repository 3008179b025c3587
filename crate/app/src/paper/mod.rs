//! What stands on paper: the drawing as vectors at a round scale, and everything else as blocks that whoever
//! prints them only has to set.

/// Without a browser.
mod alone;
/// The link for a phone.
mod code;
/// The drawings at their scales.
mod figure;
/// The whole form.
mod form;
/// A scene as SVG.
mod svg;

pub use alone::worked_out;
pub use figure::{Figure, drawing_svg, leg_svg};
pub use form::{Block, form};
pub use svg::{NAMESPACE, Node, escaped};
