//! Drawing and curves as lists of marks in CSS pixels.

/// Curves over travel.
mod curves;
/// The drawing of the selected leg.
mod drawing;
/// Marks, roles and handles.
mod mark;

pub use curves::curves;
pub use drawing::drawing;
pub use mark::{Anchor, Handle, Mark, Role, Scene, ScreenPoint, Shape};
