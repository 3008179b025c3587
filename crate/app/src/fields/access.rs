//! Numbers, texts and points by path.
use gearswing_gear::field::{NotStored, Path};
use gearswing_gear::model::{Gear, Point};

use super::knee::keep_links;

/// The field that a text names.
pub(crate) fn path(text: &str) -> Option<Path> {
    text.parse().ok()
}

/// The number at a path: outer `None` = no such number; inner `None` = left empty.
#[must_use]
pub fn number(gear: &Gear, at: &str) -> Option<Option<f64>> {
    path(at)?.number(gear)
}

/// The text at a path.
#[must_use]
pub fn text<'g>(gear: &'g Gear, at: &str) -> Option<&'g str> {
    path(at)?.text(gear)
}

/// Stores a text.
///
/// # Errors
/// No such field.
pub fn set_text(gear: &mut Gear, at: &str, text: &str) -> Result<(), NotStored> {
    path(at).ok_or(NotStored::NoValue)?.set_text(gear, text)
}

/// The point at a path (m).
#[must_use]
pub fn point(gear: &Gear, at: &str) -> Option<Point> {
    path(at)?.at(gear)
}

/// Stores a point (m).
///
/// # Errors
/// No such field, or a coordinate that is not finite.
pub fn set_point(gear: &mut Gear, at: &str, value: Point) -> Result<(), NotStored> {
    let at = path(at).ok_or(NotStored::NoValue)?;
    keep_links(gear, at, |gear| at.set_point(gear, value))
}

/// The points of an outline at a path (m).
#[must_use]
pub fn points<'g>(gear: &'g Gear, at: &str) -> Option<&'g [Point]> {
    path(at)?.outline(gear)
}

pub(crate) fn points_mut<'g>(gear: &'g mut Gear, at: &str) -> Option<&'g mut Vec<Point>> {
    path(at)?.outline_mut(gear)
}
