//! Curves over travel: charts under each other, one axis, one cursor.

/// One axis for all charts, and back from a pixel.
mod axis;
/// The charts of a leg as data.
mod charts;
/// Charts put on the canvas.
mod draw;
/// What stands around the charts.
mod frame;
/// The gear against time.
mod times;
/// The charts of a run as data.
mod times_charts;

pub(crate) use axis::progress_at;
pub(in crate::scene) use axis::{Across, PathAxis};
pub(super) use charts::{clearance_series, series};
pub use draw::curves;
pub(super) use draw::{put_run, value_at};
pub(crate) use times::time_at;
pub use times::times;
