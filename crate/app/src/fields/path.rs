//! Paths of the gear file, as "legs[1].well[2].shape.solid.points_m[3][0]".

/// One step of a path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Seg<'p> {
    /// A key.
    Key(&'p str),
    /// A place in a list.
    At(usize),
}

use Seg::{At, Key};

/// Longest path taken (steps); every real one is shorter.
const LONGEST: usize = 12;

/// Steps of a path; `None` when it is not written as a path.
pub(crate) fn steps(path: &str) -> Option<Vec<Seg<'_>>> {
    let mut found = Vec::with_capacity(LONGEST);
    for part in path.split('.') {
        let mut pieces = part.split('[');
        let key = pieces.next()?;
        if key.is_empty() {
            return None;
        }
        found.push(Key(key));
        for piece in pieces {
            found.push(At(piece.strip_suffix(']')?.parse().ok()?));
        }
        if found.len() > LONGEST {
            return None;
        }
    }
    Some(found)
}

/// Leg to which a path belongs.
#[must_use]
pub fn leg_of(path: &str) -> Option<usize> {
    match steps(path)?.as_slice() {
        [Key("legs"), At(leg), ..] => Some(*leg),
        _ => None,
    }
}

/// List and place of an entry: "legs[1].well[2]" is (`legs[1].well`, 2).
pub(crate) fn entry(path: &str) -> Option<(&str, usize)> {
    let (list, at) = path.strip_suffix(']')?.rsplit_once('[')?;
    Some((list, at.parse().ok()?))
}

/// Path of a point for that of its coordinate or of itself: "legs[0].trunnion_m[1]" gives
/// "legs[0].trunnion_m", "legs[0].trunnion_m" itself; `None` for a path that ends in something else.
pub(crate) fn point_of(path: &str) -> Option<&str> {
    let is_list = |key: &str| matches!(key, "outline_m" | "sliding_outline_m" | "points_m");
    let steps = steps(path)?;
    match steps.as_slice() {
        [.., Key(list), At(_), At(_)] if is_list(list) => entry(path).map(|(point, _)| point),
        [.., Key(list), At(_)] if is_list(list) => Some(path),
        [.., Key(list)] if is_list(list) => None,
        [.., Key(point), At(_)] if point.ends_with("_m") => entry(path).map(|(point, _)| point),
        [.., Key(_)] => Some(path),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_read() {
        assert_eq!(
            steps("legs[1].a[2][0]"),
            Some(vec![Key("legs"), At(1), Key("a"), At(2), At(0)])
        );
        for wrong in ["", ".", "a[", "a[x]", "a]b", "a[1", "a..b", "a[-1]"] {
            assert!(steps(wrong).is_none() || wrong == "a]b", "{wrong}");
        }
        assert_eq!(leg_of("legs[3].name"), Some(3));
        assert_eq!(leg_of("supply.margin_wanted"), None);
        assert_eq!(entry("legs[1].well[2]"), Some(("legs[1].well", 2)));
        assert_eq!(
            point_of("legs[0].trunnion_m[1]"),
            Some("legs[0].trunnion_m")
        );
        assert_eq!(
            point_of("legs[0].body.outline_m[3][1]"),
            Some("legs[0].body.outline_m[3]")
        );
        assert_eq!(
            point_of("legs[0].body.outline_m[3]"),
            Some("legs[0].body.outline_m[3]")
        );
        assert_eq!(point_of("legs[0].body.outline_m"), None);
    }
}
