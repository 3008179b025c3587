//! Paths of the gear file in words.
use super::of_field::words;
use crate::name::{brief, clean};
use crate::subject::{obstacle_words, spring_words};
use crate::text::leg_name;
use gearswing_gear::field::{Axis, Field, Group, Kind, Path, Told, Toward};
use gearswing_gear::model::Gear;
use std::fmt::Write as _;

/// Label of a field within its group, as "Trunnion P, out" or "Corner 3, up".
#[must_use]
pub fn label(path: Path, gear: &Gear) -> String {
    let mut label = words(path.field).label.to_owned();
    append_item(path, &mut label);
    label.push_str(axis_words(path, gear));
    label
}

/// A coordinate of a point, behind its name; nothing for what is none.
fn axis_words(path: Path, gear: &Gear) -> &'static str {
    match (Told::of(gear, path).map(|told| told.toward), path.axis) {
        (_, None) => "",
        (Some(Toward::Inboard), _) => ", inboard",
        (Some(Toward::Outboard), _) => ", out",
        (Some(Toward::LeftWing), _) => ", to the left wing",
        (Some(Toward::Aft), _) => ", aft",
        (Some(Toward::Up), _) => ", up",
        (None, Some(Axis::X)) => ", x",
        (None, Some(Axis::Y)) => ", y",
    }
}

/// Name of a field within a sentence, as "actuator rod diameter".
#[must_use]
pub fn name(path: Path) -> String {
    let mut name = String::new();
    let info = path.field.info();
    name.push_str(match (info.kind, info.group, path.item) {
        (Kind::Outline, Group::Well, None) => "outline",
        _ => words(path.field).name,
    });
    append_item(path, &mut name);
    name
}

fn append_item(path: Path, text: &mut String) {
    let info = path.field.info();
    let row = matches!(path.field, Field::RowTravel | Field::RowAmount);
    let item = if row { Some(path.entry) } else { path.item };
    if let Some(item) = item {
        let noun = match (info.kind, info.group) {
            (Kind::Outline, Group::Well) => "",
            (Kind::Outline, _) => ", point",
            _ => ", row",
        };
        let _ = write!(text, "{noun} {}", item.saturating_add(1));
    }
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

/// A path in words, as "right main, actuator rod diameter" or "right main, Bay rib, corner 3, out".
#[must_use]
pub fn path_words(text: &str, gear: &Gear) -> String {
    let Ok(path) = text.parse::<Path>() else {
        return part_path_words(text, gear);
    };
    let mut parts = Vec::new();
    if path.field.is_of_leg() {
        let leg = gear.legs.get(path.leg);
        parts.push(leg.map_or_else(
            || format!("leg {}", path.leg.saturating_add(1)),
            |leg| leg_name(&leg.name, path.leg),
        ));
        let at = path.entry;
        match path.field.info().group {
            Group::Well => {
                let obstacle = leg.and_then(|leg| leg.well.get(at));
                parts.push(obstacle_words(obstacle.map_or("", |o| &o.name), at));
            }
            Group::Springs => {
                let spring = leg.and_then(|leg| leg.springs.get(at));
                parts.push(spring_words(spring.map_or("", |s| &s.name), at));
            }
            _ => {}
        }
    }
    parts.push(name(path) + axis_words(path, gear));
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
    (".upper_length_m", "length of the upper brace link"),
    (".lower_length_m", "length of the lower brace link"),
    (".knee_offset_m", "how far the knee stands off the line"),
    (".circumference_m", "circumference of the tire"),
    (".trunnion_to_axle_m", "size of the leg"),
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
