//! Reading and changing the value at a path.
use super::info::{Access, Empty, Kind, Mut, Ref};
use super::{Axis, Field, Path, opened};
use crate::model::{Gear, Leg, Point, Shortening, ShorteningRow};
use std::fmt;

/// Why a value was not stored; nothing changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotStored {
    /// This gear has no such value.
    NoValue,
    /// Not a finite number.
    NotFinite,
}

impl fmt::Display for NotStored {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NoValue => "this gear has no such value",
            Self::NotFinite => "not a finite number",
        })
    }
}

impl std::error::Error for NotStored {}

/// Rows of the shortening table.
pub(super) fn rows(leg: &Leg) -> &[ShorteningRow] {
    match &leg.strut.shortening {
        Shortening::WithTravel { table } => table,
        _ => &[],
    }
}

fn rows_mut(leg: &mut Leg) -> &mut [ShorteningRow] {
    match &mut leg.strut.shortening {
        Shortening::WithTravel { table } => table,
        _ => &mut [],
    }
}

impl Path {
    /// Whether it is asked of this gear: a leg on the drive of another has no bore, rod and ends of its own, and
    /// one that drives itself alone no ratio.
    #[must_use]
    pub fn is_asked(self, gear: &Gear) -> bool {
        match self.field {
            Field::Bore | Field::Rod | Field::RetractedLength | Field::ExtendedLength => {
                gear.driving_leg(self.leg) == self.leg
            }
            Field::DriveRatio => !gear.drives_alone(self.leg),
            _ => true,
        }
    }

    fn read(self, gear: &Gear) -> Option<Ref<'_>> {
        let leg = gear.legs.get(self.leg);
        match &self.field.info().access {
            Access::Gear(via) => (via.read)(gear),
            Access::Leg(via) => (via.read)(leg?),
            Access::Row(via) => (via.read)(rows(leg?).get(self.entry)?),
            Access::Spring(via) => (via.read)(leg?.springs.get(self.entry)?),
            Access::Obstacle(via) => (via.read)(leg?.well.get(self.entry)?),
        }
    }

    pub(super) fn write(self, gear: &mut Gear) -> Option<Mut<'_>> {
        let access = &self.field.info().access;
        if let Access::Gear(via) = access {
            return (via.write)(gear);
        }
        let leg = gear.legs.get_mut(self.leg)?;
        match access {
            Access::Gear(_) => None,
            Access::Leg(via) => (via.write)(leg),
            Access::Row(via) => (via.write)(rows_mut(leg).get_mut(self.entry)?),
            Access::Spring(via) => (via.write)(leg.springs.get_mut(self.entry)?),
            Access::Obstacle(via) => (via.write)(leg.well.get_mut(self.entry)?),
        }
    }

    /// Whether its number comes with a part that may be left out, and goes with it.
    fn opens(self) -> bool {
        let kind = self.field.info().kind;
        matches!(
            kind,
            Kind::Number {
                empty: Empty::PartAbsent,
                ..
            }
        )
    }

    /// The number or coordinate: outer `None` = this gear has no such one; inner `None` = left empty.
    #[must_use]
    pub fn number(self, gear: &Gear) -> Option<Option<f64>> {
        if let Some(axis) = self.axis {
            let point = self.point().at(gear)?;
            return Some(Some(match axis {
                Axis::X => point.x,
                Axis::Y => point.y,
            }));
        }
        match self.read(gear) {
            Some(Ref::Number(value)) => Some(Some(*value)),
            Some(Ref::Optional(value)) => Some(*value),
            Some(_) => None,
            None if self.opens() => opened::has_room(self, gear).then_some(None),
            None => None,
        }
    }

    /// Stores a number or a coordinate; `None` leaves it empty.
    ///
    /// # Errors
    /// No such value in this gear, a number that is not finite, or one that cannot be empty.
    pub fn set_number(self, gear: &mut Gear, value: Option<f64>) -> Result<(), NotStored> {
        if value.is_some_and(|value| !value.is_finite()) {
            return Err(NotStored::NotFinite);
        }
        if let Some(axis) = self.axis {
            let (Some(value), Some(point)) = (value, self.point().at_mut(gear)) else {
                return Err(NotStored::NoValue);
            };
            match axis {
                Axis::X => point.x = value,
                Axis::Y => point.y = value,
            }
            return Ok(());
        }
        if self.opens() {
            return opened::set(self, gear, value).ok_or(NotStored::NoValue);
        }
        match (self.write(gear), value) {
            (Some(Mut::Number(place)), Some(value)) => *place = value,
            (Some(Mut::Optional(place)), value) => *place = value,
            _ => return Err(NotStored::NoValue),
        }
        Ok(())
    }

    /// The text.
    #[must_use]
    pub fn text(self, gear: &Gear) -> Option<&str> {
        match self.read(gear)? {
            Ref::Text(text) => Some(text),
            _ => None,
        }
    }

    /// Stores a text.
    ///
    /// # Errors
    /// No such text in this gear.
    pub fn set_text(self, gear: &mut Gear, text: &str) -> Result<(), NotStored> {
        match self.write(gear) {
            Some(Mut::Text(place)) => text.clone_into(place),
            _ => return Err(NotStored::NoValue),
        }
        Ok(())
    }

    /// The point, or a point of an outline (m).
    #[must_use]
    pub fn at(self, gear: &Gear) -> Option<Point> {
        match (self.read(gear)?, self.item, self.axis) {
            (Ref::Point(point), None, None) => Some(*point),
            (Ref::Outline(points), Some(item), None) => points.get(item).copied(),
            _ => None,
        }
    }

    pub(super) fn at_mut(self, gear: &mut Gear) -> Option<&mut Point> {
        match (self.write(gear)?, self.item, self.axis) {
            (Mut::Point(point), None, None) => Some(point),
            (Mut::Outline(points), Some(item), None) => points.get_mut(item),
            _ => None,
        }
    }

    /// Stores a point (m).
    ///
    /// # Errors
    /// No such point in this gear, or a coordinate that is not finite.
    pub fn set_point(self, gear: &mut Gear, value: Point) -> Result<(), NotStored> {
        if !(value.x.is_finite() && value.y.is_finite()) {
            return Err(NotStored::NotFinite);
        }
        *self.at_mut(gear).ok_or(NotStored::NoValue)? = value;
        Ok(())
    }

    /// The points of an outline (m).
    #[must_use]
    pub fn outline(self, gear: &Gear) -> Option<&[Point]> {
        match self.read(gear)? {
            Ref::Outline(points) if self.item.is_none() => Some(points),
            _ => None,
        }
    }

    /// The points of an outline, to be changed (m).
    pub fn outline_mut(self, gear: &mut Gear) -> Option<&mut Vec<Point>> {
        match self.write(gear)? {
            Mut::Outline(points) if self.item.is_none() => Some(points),
            _ => None,
        }
    }
}
