//! Numbers, texts and points by path.
use std::fmt;

use super::slot::{PlaceMut, PlaceRef, find, find_mut};
use super::supply;
use gearswing_gear::model::{Gear, Point};

/// A path that leads to nothing of the asked kind, or a number that cannot be stored.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AccessError {
    /// No such field in this gear.
    NoField(String),
    /// Not a finite number.
    NotFinite,
}

impl fmt::Display for AccessError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoField(path) => write!(f, "there is no field {path}"),
            Self::NotFinite => f.write_str("not a finite number"),
        }
    }
}

impl std::error::Error for AccessError {}

/// The number at a path: outer `None` = no such number; inner `None` = left empty.
#[must_use]
pub fn number(gear: &Gear, path: &str) -> Option<Option<f64>> {
    if let Some(first) = supply::part_number(gear, path) {
        return Some(first);
    }
    match find(gear, path)? {
        PlaceRef::Number(value) => Some(Some(*value)),
        PlaceRef::Optional(value) => Some(*value),
        PlaceRef::Text(_) | PlaceRef::Point(_) | PlaceRef::Points(_) => None,
    }
}

/// Stores a number; `None` leaves an optional one empty.
///
/// # Errors
/// No such field, a number that is not finite, or a field that cannot be empty.
pub fn set_number(gear: &mut Gear, path: &str, value: Option<f64>) -> Result<(), AccessError> {
    if value.is_some_and(|value| !value.is_finite()) {
        return Err(AccessError::NotFinite);
    }
    if supply::set_part_number(gear, path, value).is_some() {
        return Ok(());
    }
    match (find_mut(gear, path), value) {
        (Some(PlaceMut::Number(place)), Some(value)) => *place = value,
        (Some(PlaceMut::Optional(place)), value) => *place = value,
        _ => return Err(AccessError::NoField(path.to_owned())),
    }
    Ok(())
}

/// The text at a path.
#[must_use]
pub fn text<'g>(gear: &'g Gear, path: &str) -> Option<&'g str> {
    match find(gear, path)? {
        PlaceRef::Text(text) => Some(text),
        _ => None,
    }
}

/// Stores a text.
///
/// # Errors
/// No such field.
pub fn set_text(gear: &mut Gear, path: &str, text: &str) -> Result<(), AccessError> {
    match find_mut(gear, path) {
        Some(PlaceMut::Text(place)) => text.clone_into(place),
        _ => return Err(AccessError::NoField(path.to_owned())),
    }
    Ok(())
}

/// The point at a path [m].
#[must_use]
pub fn point(gear: &Gear, path: &str) -> Option<Point> {
    match find(gear, path)? {
        PlaceRef::Point(point) => Some(*point),
        _ => None,
    }
}

/// Stores a point [m].
///
/// # Errors
/// No such field, or a coordinate that is not finite.
pub fn set_point(gear: &mut Gear, path: &str, value: Point) -> Result<(), AccessError> {
    if !(value.x.is_finite() && value.y.is_finite()) {
        return Err(AccessError::NotFinite);
    }
    match find_mut(gear, path) {
        Some(PlaceMut::Point(place)) => *place = value,
        _ => return Err(AccessError::NoField(path.to_owned())),
    }
    Ok(())
}

/// The points of an outline at a path [m].
#[must_use]
pub fn points<'g>(gear: &'g Gear, path: &str) -> Option<&'g [Point]> {
    match find(gear, path)? {
        PlaceRef::Points(points) => Some(points),
        _ => None,
    }
}

pub(crate) fn points_mut<'g>(gear: &'g mut Gear, path: &str) -> Option<&'g mut Vec<Point>> {
    match find_mut(gear, path)? {
        PlaceMut::Points(points) => Some(points),
        _ => None,
    }
}
