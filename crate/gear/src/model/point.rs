//! Points, vectors, and what may be left out of a file.

/// A point in airframe axes (m).
pub type Point = nalgebra::Point2<f64>;
/// A vector in airframe axes; its unit is that of the quantity it stands for.
pub type Vector = nalgebra::Vector2<f64>;

pub(crate) fn is_zero(value: &f64) -> bool {
    *value == 0.0
}
