//! Curves over travel: charts under each other, one axis, one cursor.

/// One axis for all charts, and back from a pixel.
mod axis;
/// The charts of a leg as data.
mod charts;
/// Charts put on the canvas.
mod draw;
/// What stands around the charts.
mod frame;

pub(crate) use axis::progress_at;
pub use draw::curves;
