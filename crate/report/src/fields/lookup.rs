//! From a path of the gear file to its words.
use std::fmt::Write as _;

use gearswing_solver::model::Gear;
use gearswing_units::Quantity;

use super::words::Group;
use super::{
    FieldKind, FieldWords, actuator, brace, drive, fall, gear, leg, seen, springs, strut, supply,
    well, wheel,
};
use crate::name::{brief, clean};
use crate::subject::{obstacle_words, spring_words};
use crate::text::leg_name;

/// A coordinate of a point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axis {
    /// x, to the right as drawn.
    X,
    /// y, up.
    Y,
}

impl Axis {
    /// "x" or "y".
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Self::X => "x",
            Self::Y => "y",
        }
    }
}

/// One field of one gear: its words and which of its like it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Field {
    /// Its words.
    pub words: &'static FieldWords,
    /// Leg, as index.
    pub leg: Option<usize>,
    /// Piece of the well, as index.
    pub obstacle: Option<usize>,
    /// Spring, as index.
    pub spring: Option<usize>,
    /// Point of an outline or row of a table, as index.
    pub item: Option<usize>,
    /// The coordinate, where the path goes down to one.
    pub axis: Option<Axis>,
    /// Whether it is of the tire fitted before.
    pub is_former: bool,
}

impl Field {
    /// Group it is shown in.
    #[must_use]
    pub fn group(&self) -> Group {
        if self.is_former {
            Group::FormerTire
        } else {
            self.words.group
        }
    }

    /// The quantity of its number, `None` for texts and choices.
    #[must_use]
    pub fn quantity(&self) -> Option<Quantity> {
        self.words.quantity()
    }

    /// Label within its group, as "Trunnion P, x" or "Corner 3, y".
    #[must_use]
    pub fn label(&self) -> String {
        let mut label = self.words.label.to_owned();
        self.append_item(&mut label);
        label
    }

    /// Name within a sentence, as "actuator rod diameter" or "previous tire: tire size".
    #[must_use]
    pub fn name(&self) -> String {
        let mut name = String::new();
        if self.is_former {
            name.push_str("previous tire: ");
        }
        name.push_str(match (self.words.kind, self.words.group, self.item) {
            (FieldKind::Point, Group::Well, None) => "outline",
            _ => self.words.name,
        });
        self.append_item(&mut name);
        name
    }

    fn append_item(&self, text: &mut String) {
        if let Some(item) = self.item {
            let noun = match (self.words.kind, self.words.group) {
                (FieldKind::Point, Group::Well) => "",
                (FieldKind::Point, _) => ", point",
                _ => ", row",
            };
            let _ = write!(text, "{noun} {}", item.saturating_add(1));
        }
        if let Some(axis) = self.axis {
            let _ = write!(text, ", {}", axis.as_str());
        }
    }
}

/// Every row, in the order to show them.
pub fn table() -> impl Iterator<Item = &'static FieldWords> {
    [
        gear::FILE,
        gear::CONDITIONS,
        supply::SUPPLY,
        gear::FLUID,
        gear::EMERGENCY,
        gear::CLEARANCE,
        leg::LEG,
        strut::STRUT,
        wheel::WHEEL,
        brace::BRACE,
        actuator::ACTUATOR,
        springs::SPRINGS,
        springs::PINS,
        drive::DRIVE,
        leg::AIR,
        fall::FALL,
        well::WELL,
        seen::SEEN,
    ]
    .into_iter()
    .flatten()
}

/// The words of a path as "legs[1].actuator.rod_m"; `None` when no such field exists. A coordinate
/// ("legs[0].trunnion_m[1]") gives the words of its point, a whole outline ("legs[0].body.outline_m")
/// those of its points, and the previous tire shares those of the fitted one.
#[must_use]
pub fn field_words(path: &str) -> Option<&'static FieldWords> {
    field(path).map(|field| field.words)
}

/// The field of a path; `None` when no such field exists.
#[must_use]
pub fn field(path: &str) -> Option<Field> {
    let (mut pattern, mut indices) = parted(path)?;
    let is_former = pattern.contains(".wheel.former");
    if is_former {
        pattern = pattern.replacen(".wheel.former", ".wheel.tire", 1);
    }
    let find = |pattern: &str| table().find(|words| words.pattern == pattern);
    let mut axis = None;
    let mut words = find(&pattern);
    if words.is_none() {
        if let Some(point) = pattern.strip_suffix("[]") {
            words = find(point).filter(|words| words.kind == FieldKind::Point);
            axis = match indices.pop() {
                Some(0) => Some(Axis::X),
                Some(1) => Some(Axis::Y),
                _ => return None,
            };
        } else {
            // A whole outline or list: the words of its items.
            words = find(&format!("{pattern}[]"));
        }
    }
    let words = words?;
    let mut rest = indices.into_iter();
    let leg = if words.pattern.starts_with("legs[]") {
        rest.next()
    } else {
        None
    };
    let mut of_list = |list: &str| {
        if words.pattern.starts_with(list) {
            rest.next()
        } else {
            None
        }
    };
    let obstacle = of_list("legs[].well[]");
    let spring = of_list("legs[].springs[]");
    Some(Field {
        words,
        leg,
        obstacle,
        spring,
        item: rest.next(),
        axis,
        is_former,
    })
}

/// The pattern of a path and its indices; `None` when a bracket does not hold an index.
fn parted(path: &str) -> Option<(String, Vec<usize>)> {
    let mut pattern = String::with_capacity(path.len());
    let mut indices = Vec::new();
    let mut rest = path;
    while let Some((before, after)) = rest.split_once('[') {
        let (index, after) = after.split_once(']')?;
        indices.push(index.parse().ok()?);
        pattern.push_str(before);
        pattern.push_str("[]");
        rest = after;
    }
    pattern.push_str(rest);
    Some((pattern, indices))
}

/// A path in words, as "right main, actuator rod diameter" or "right main, Bay rib, corner 3, x".
#[must_use]
pub fn path_words(path: &str, gear: &Gear) -> String {
    let Some(field) = field(path) else {
        return part_path_words(path, gear);
    };
    let mut parts = Vec::new();
    let leg = field.leg.and_then(|index| gear.legs.get(index));
    if let Some(index) = field.leg {
        parts.push(leg.map_or_else(
            || format!("leg {}", index.saturating_add(1)),
            |leg| leg_name(&leg.name, index),
        ));
    }
    if let Some(index) = field.obstacle {
        let name = leg
            .and_then(|leg| leg.well.get(index))
            .map_or("", |o| &o.name);
        parts.push(obstacle_words(name, index));
    }
    if let Some(index) = field.spring {
        let name = leg
            .and_then(|leg| leg.springs.get(index))
            .map_or("", |spring| &spring.name);
        parts.push(spring_words(name, index));
    }
    parts.push(field.name());
    parts.join(", ")
}

/// Parts that hold several fields, by the end of their pattern.
const PARTS: &[(&str, &str)] = &[
    (".actuator", "actuator"),
    (".air", "drag areas"),
    (".battery", "battery"),
    (".body", "upper leg"),
    (".drive", "lines and switches"),
    (".electric", "electric actuator"),
    (".fall", "free fall and lock"),
    (".folding", "brace"),
    (".folding.lower", "lower brace link"),
    (".folding.upper", "upper brace link"),
    (".former", "previous tire"),
    (".accumulator", "accumulator"),
    (".hand_pump", "hand pump"),
    (".motor_pump", "pump on a DC motor"),
    (".orifice_down", "orifice down"),
    (".orifice_up", "orifice up"),
    (".pins", "pins"),
    (".shape.solid", "outline"),
    (".shape.surface", "outline"),
    (".sliding", "brace"),
    (".springs", "springs"),
    (".seen_stop", "stopped short"),
    (".how_far", "stopped short"),
    (".strut", "shock strut"),
    (".jack", "strut-shortening cylinder"),
    (".switches", "switches"),
    (".table", "shortening table"),
    (".tire", "tire"),
    (".well", "wheel well"),
    (".wheel", "wheel"),
    ("clearance_rule", "required clearances"),
    ("conditions", "attitude and air"),
    ("fluid", "hydraulic fluid"),
    ("supply", "hydraulic supply"),
];

/// A path that is no field: a part, a leg, or a typing error in a file.
fn part_path_words(path: &str, gear: &Gear) -> String {
    let Some((pattern, indices)) = parted(path) else {
        return brief(&clean(path));
    };
    let longest = PARTS
        .iter()
        .filter(|(end, _)| pattern.ends_with(end))
        .max_by_key(|(end, _)| end.len());
    let leg = indices.first().filter(|_| pattern.starts_with("legs[]"));
    let leg = leg.map(|&index| {
        let name = gear.legs.get(index).map_or("", |leg| &leg.name);
        leg_name(name, index)
    });
    if pattern == "legs[].well[]" {
        let piece = indices.get(1).copied().unwrap_or(0);
        let legs = indices.first().and_then(|&index| gear.legs.get(index));
        let name = legs
            .and_then(|leg| leg.well.get(piece))
            .map_or("", |o| &o.name);
        let piece = obstacle_words(name, piece);
        return format!("{}, {piece}", leg.unwrap_or_default());
    }
    if pattern.starts_with("legs[].springs[]") {
        let at = indices.get(1).copied().unwrap_or(0);
        let legs = indices.first().and_then(|&index| gear.legs.get(index));
        let name = legs
            .and_then(|leg| leg.springs.get(at))
            .map_or("", |spring| &spring.name);
        let spring = spring_words(name, at);
        return format!("{}, {spring}", leg.unwrap_or_default());
    }
    let part = match (longest, pattern.as_str()) {
        (Some((_, words)), _) => (*words).to_owned(),
        (None, "legs[]") => return leg.unwrap_or_default(),
        (None, "legs") => "legs".to_owned(),
        (None, "" | ".") => "the file".to_owned(),
        (None, _) => return brief(&clean(path)),
    };
    match leg {
        Some(leg) => format!("{leg}, {part}"),
        None => part,
    }
}
