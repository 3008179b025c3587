//! Tire sizes, growth in service, clearances asked for.
//!
//! What is from memory or common practice says so here and in the assumptions of a result; a
//! figure that the user measured or took from the maker's data always wins over both.

/// What a tire's figures and a clearance asked for rest on.
mod basis;
/// Size of a tire as new and as grown in service.
mod growth;
/// Clearance asked for, and whose figure it is.
mod required;
/// Table of standard sizes.
mod sizes;
/// Reader of the table's text.
mod table;

pub use basis::{clearance_assumption, size_assumptions};
pub use growth::{
    GROWN_WIDTH_FACTOR, TireSize, TireSizes, grown_size, lateral_allowance, new_size,
};
pub use required::{
    DEFAULT_OWN_GROWN, DEFAULT_OWN_NEW, DEFAULT_PARTS, DEFAULT_TIRE_GROWN, DEFAULT_TIRE_NEW,
    default_clearance, own_requirement, requirement, room_requirement,
};
pub use sizes::{
    Confidence, SHOULDER_PER_WIDTH, SizeRow, Trust, find_size, rows_of_size, shoulder_radius, sizes,
};
pub use table::{TableError, parse_table};
