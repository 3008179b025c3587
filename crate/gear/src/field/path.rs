//! Paths: a field, and which of its like.
use super::Field;
use super::info::{Access, Kind};
use std::fmt;
use std::str::FromStr;

/// A coordinate of a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Axis {
    /// x, to the right as drawn.
    X,
    /// y, up.
    Y,
}

/// One value of one gear: a field, the leg, the entry of a list, the point of an outline and the
/// coordinate. Indices that the field has not are 0 or `None`.
///
/// Written as in the gear file, `legs[1].well[2].shape.solid.points_m[3][0]`; an outline or a set
/// without a point is the whole of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Path {
    /// Leg, as index.
    pub leg: usize,
    /// The field.
    pub field: Field,
    /// Spring, piece of the well or row of the shortening table, as index.
    pub entry: usize,
    /// Point of an outline or option of a set, as index.
    pub item: Option<usize>,
    /// Coordinate of a point.
    pub axis: Option<Axis>,
}

/// A text that is no path of a gear file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoPath;

impl Field {
    /// The field of the gear itself, or of its first leg, spring, piece of structure.
    #[must_use]
    pub fn path(self) -> Path {
        Path {
            leg: 0,
            field: self,
            entry: 0,
            item: None,
            axis: None,
        }
    }

    /// The field of a leg.
    #[must_use]
    pub fn of_leg(self, leg: usize) -> Path {
        Path { leg, ..self.path() }
    }

    /// The field of an entry of a list of a leg: of a spring, a piece of structure, a row.
    #[must_use]
    pub fn of_entry(self, leg: usize, entry: usize) -> Path {
        Path {
            entry,
            ..self.of_leg(leg)
        }
    }

    /// Every place where it may stand in a gear of so many legs, each with so many entries in its lists.
    #[must_use]
    pub fn places(self, legs: usize, entries: usize) -> Vec<Path> {
        let legs = if self.is_of_leg() { legs } else { 1 };
        let entries = if self.is_of_entry() { entries } else { 1 };
        (0..legs)
            .flat_map(|leg| (0..entries).map(move |entry| self.of_entry(leg, entry)))
            .collect()
    }

    /// Whether it belongs to a leg.
    #[must_use]
    pub fn is_of_leg(self) -> bool {
        !matches!(self.info().access, Access::Gear(_))
    }

    /// Whether it belongs to an entry of a list of a leg.
    #[must_use]
    pub fn is_of_entry(self) -> bool {
        !matches!(self.info().access, Access::Gear(_) | Access::Leg(_))
    }

    fn is_list(self) -> bool {
        matches!(self.info().kind, Kind::Outline | Kind::Set(_))
    }
}

impl Path {
    /// A point of an outline.
    #[must_use]
    pub fn item(self, item: usize) -> Self {
        Self {
            item: Some(item),
            ..self
        }
    }

    /// A coordinate of a point.
    #[must_use]
    pub fn axis(self, axis: Axis) -> Self {
        Self {
            axis: Some(axis),
            ..self
        }
    }

    /// The point of a coordinate, or the path itself.
    #[must_use]
    pub fn point(self) -> Self {
        Self { axis: None, ..self }
    }
}

impl fmt::Display for Path {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let field = self.field;
        let mut key = field.info().key;
        if field.is_list() {
            key = key.strip_suffix("[]").unwrap_or(key);
        }
        let mut indices = [self.leg, self.entry].into_iter();
        for (at, part) in key.split("[]").enumerate() {
            if at > 0
                && let Some(index) = indices.next()
            {
                write!(f, "[{index}]")?;
            }
            f.write_str(part)?;
        }
        if let Some(item) = self.item {
            write!(f, "[{item}]")?;
        }
        match self.axis {
            Some(Axis::X) => f.write_str("[0]"),
            Some(Axis::Y) => f.write_str("[1]"),
            None => Ok(()),
        }
    }
}

/// Whether a path fits a key, whose indices are taken into `indices`; what is left behind it.
fn fit<'p>(path: &'p str, key: &str, indices: &mut [usize; 2]) -> Option<&'p str> {
    let mut rest = path;
    let mut places = indices.iter_mut();
    for (at, part) in key.split("[]").enumerate() {
        if at > 0 {
            let (index, behind) = index(rest)?;
            *places.next()? = index;
            rest = behind;
        }
        rest = rest.strip_prefix(part)?;
    }
    Some(rest)
}

/// An index at the beginning of a text, and what is left.
fn index(text: &str) -> Option<(usize, &str)> {
    let (index, rest) = text.strip_prefix('[')?.split_once(']')?;
    let is_plain = index.bytes().all(|figure| figure.is_ascii_digit());
    is_plain.then_some(())?;
    Some((index.parse().ok()?, rest))
}

fn axis(text: &str) -> Option<Option<Axis>> {
    match text {
        "" => Some(None),
        "[0]" => Some(Some(Axis::X)),
        "[1]" => Some(Some(Axis::Y)),
        _ => None,
    }
}

/// A path of this field, if the text is one.
fn read(field: Field, text: &str) -> Option<Path> {
    let mut key = field.info().key;
    if field.is_list() {
        key = key.strip_suffix("[]")?;
    }
    let mut indices = [0; 2];
    let rest = fit(text, key, &mut indices)?;
    let mut path = field.of_entry(indices[0], indices[1]);
    match field.info().kind {
        Kind::Point => path.axis = axis(rest)?,
        Kind::Outline | Kind::Set(_) if !rest.is_empty() => {
            let (item, rest) = index(rest)?;
            path.item = Some(item);
            if matches!(field.info().kind, Kind::Outline) {
                path.axis = axis(rest)?;
            } else if !rest.is_empty() {
                return None;
            }
        }
        _ if rest.is_empty() => {}
        _ => return None,
    }
    Some(path)
}

impl FromStr for Path {
    type Err = NoPath;

    fn from_str(text: &str) -> Result<Self, NoPath> {
        Field::ALL
            .iter()
            .find_map(|field| read(*field, text))
            .ok_or(NoPath)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_path_is_read_back() {
        for field in Field::ALL {
            let mut paths = vec![field.path()];
            if field.is_of_leg() {
                paths.push(field.of_leg(3));
            }
            if field.is_of_entry() {
                paths.push(field.of_entry(1, 12));
            }
            match field.info().kind {
                Kind::Point => paths.push(paths[0].axis(Axis::Y)),
                Kind::Outline => {
                    paths.push(paths[0].item(4));
                    paths.push(paths[0].item(0).axis(Axis::X));
                }
                Kind::Set(_) => paths.push(paths[0].item(2)),
                Kind::Number { .. } | Kind::Text | Kind::Choice(_) => {}
            }
            for path in paths {
                let text = path.to_string();
                assert_eq!(text.parse(), Ok(path), "{text}");
            }
        }
        let corner = Field::SolidPoints.of_entry(1, 2).item(3).axis(Axis::X);
        assert_eq!(
            corner.to_string(),
            "legs[1].well[2].shape.solid.points_m[3][0]"
        );
    }

    #[test]
    fn what_is_no_path_is_refused() {
        for text in [
            "",
            ".",
            "legs",
            "legs[0]",
            "legs[0].colour",
            "legs[x].name",
            "legs[+1].name",
            "legs[].name",
            "legs[0].name[0]",
            "legs[0].name ",
            "legs[0].trunnion_m[2]",
            "legs[0].trunnion_m[0][0]",
            "legs[0].well[0].ignores[0][0]",
            "legs[99999999999999999999].name",
        ] {
            assert_eq!(text.parse::<Path>(), Err(NoPath), "{text}");
        }
    }

    #[test]
    fn no_key_stands_twice() {
        let mut keys: Vec<_> = Field::ALL.iter().map(|field| field.info().key).collect();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), Field::ALL.len());
        assert!(
            Field::ALL
                .iter()
                .enumerate()
                .all(|(at, f)| *f as usize == at)
        );
    }

    #[test]
    fn fields_of_a_leg_stand_in_its_groups() {
        for field in Field::ALL {
            let info = field.info();
            assert_eq!(info.group.is_of_leg(), field.is_of_leg(), "{}", info.key);
            assert_eq!(info.key.starts_with("legs[]"), field.is_of_leg());
        }
    }
}
