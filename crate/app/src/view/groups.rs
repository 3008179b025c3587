//! The data in groups, only the chosen one open.
use gearswing_gear::model::{Gear, Leg, Source};
use gearswing_report::fields::{FieldKind as Kind, Group, field, table};
use gearswing_report::name_words;

use super::page::{Action, FieldGroup, FieldRow};
use super::rows::{circumference, row, unread, worked_out};
use super::summary::summary;
use super::tire_table::tire_table;
use super::worked;
use crate::fields;
use crate::msg::{Field, Msg};
use crate::state::State;

/// One group of fields of the selected leg, or of the gear.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Part {
    /// A group of the field table.
    Group(Group),
    /// Outline of the upper leg.
    Outline,
    /// Outline of the sliding part.
    Sliding,
    /// List of the structure in the well.
    Well,
    /// One piece of structure.
    Obstacle(usize),
    /// List of the springs.
    Springs,
    /// One spring.
    Spring(usize),
}

impl Part {
    fn id(&self) -> String {
        match self {
            Self::Group(group) => match group {
                Group::File => "file",
                Group::Conditions => "conditions",
                Group::Supply => "supply",
                Group::Battery => "battery",
                Group::Accumulator => "accumulator",
                Group::Clearance => "clearance",
                Group::Leg => "leg",
                Group::Strut => "strut",
                Group::Wheel => "wheel",
                Group::FormerTire => "former",
                Group::Brace => "brace",
                Group::Actuator => "actuator",
                Group::Lines => "lines",
                Group::Motor => "motor",
                Group::Switches => "switches",
                Group::Springs => "springs",
                Group::Pins => "pins",
                Group::Air => "air",
                Group::Fall => "fall",
                Group::Well => "well",
                Group::Seen => "seen",
            }
            .to_owned(),
            Self::Outline => "outline".to_owned(),
            Self::Sliding => "sliding".to_owned(),
            Self::Well => "well".to_owned(),
            Self::Obstacle(at) => format!("well.{at}"),
            Self::Springs => "springs".to_owned(),
            Self::Spring(at) => format!("spring.{at}"),
        }
    }

    /// The part to which a path belongs.
    fn of(path: &str) -> Option<Self> {
        let path = path
            .strip_suffix(fields::CIRCUMFERENCE)
            .map_or_else(|| path.to_owned(), |stem| format!("{stem}diameter_m"));
        if path.contains(".body.outline_m") {
            return Some(Self::Outline);
        }
        if path.contains(".strut.sliding_outline_m") {
            return Some(Self::Sliding);
        }
        if let Some(rest) = path.split_once("].well[").map(|(_, rest)| rest) {
            return rest.split(']').next()?.parse().ok().map(Self::Obstacle);
        }
        if path.ends_with("].well") {
            return Some(Self::Well);
        }
        if let Some((_, rest)) = path.split_once("].springs[") {
            return rest.split(']').next()?.parse().ok().map(Self::Spring);
        }
        if path.ends_with("].springs") {
            return Some(Self::Springs);
        }
        match field(&path) {
            Some(field) => Some(Self::Group(field.group())),
            None if fields::leg_of(&path).is_some() => Some(Self::Group(Group::Leg)),
            None => None,
        }
    }
}

/// Key of the group in which a path stands.
pub(crate) fn group_of(gear: &Gear, path: &str) -> Option<String> {
    if fields::leg_of(path).is_some_and(|leg| leg >= gear.legs.len()) {
        return None;
    }
    Part::of(path).map(|part| part.id())
}

/// The groups of the selected leg, then those of the whole gear.
pub(crate) fn groups(state: &State) -> Vec<FieldGroup> {
    let leg = state.session.leg;
    let obstacles = state.gear().legs.get(leg).map_or(0, |leg| leg.well.len());
    let mut parts = vec![
        Part::Group(Group::Leg),
        Part::Group(Group::Wheel),
        Part::Group(Group::FormerTire),
        Part::Group(Group::Strut),
        Part::Group(Group::Brace),
        Part::Group(Group::Actuator),
        Part::Group(Group::Lines),
        Part::Group(Group::Motor),
        Part::Group(Group::Switches),
        Part::Springs,
    ];
    let springs = state
        .gear()
        .legs
        .get(leg)
        .map_or(0, |leg| leg.springs.len());
    parts.extend((0..springs).map(Part::Spring));
    parts.extend([Part::Group(Group::Pins), Part::Well]);
    parts.extend((0..obstacles).map(Part::Obstacle));
    parts.extend([
        Part::Outline,
        Part::Sliding,
        Part::Group(Group::Air),
        Part::Group(Group::Fall),
        Part::Group(Group::Seen),
        Part::Group(Group::Clearance),
        Part::Group(Group::Supply),
        Part::Group(Group::Battery),
        Part::Group(Group::Accumulator),
        Part::Group(Group::Conditions),
        Part::Group(Group::File),
    ]);
    let has_motor = |leg: &Leg| leg.drive.electric.is_some();
    if !state.gear().legs.get(leg).is_some_and(has_motor) {
        parts.retain(|part| *part != Part::Group(Group::Motor));
    }
    // without fluid they say nothing, unless a fault in them is to be found
    if matches!(state.gear().supply.source, Source::ElectricActuators) {
        let of_fluid = |part: &Part| matches!(part, Part::Group(Group::Lines | Group::Accumulator));
        parts.retain(|part| !of_fluid(part) || !group(state, leg, part).alert.is_empty());
    }
    if state.gear().legs.is_empty() {
        parts.retain(|part| matches!(part, Part::Group(group) if !group.is_of_leg()));
    }
    parts.iter().map(|part| group(state, leg, part)).collect()
}

fn group(state: &State, leg: usize, part: &Part) -> FieldGroup {
    let id = part.id();
    let open = state.session.open_group.as_deref() == Some(id.as_str());
    let in_part = |path: &str| {
        Part::of(path).as_ref() == Some(part)
            && fields::leg_of(path).is_none_or(|owner| owner == leg)
    };
    FieldGroup {
        title: title(state, leg, part),
        summary: summary(state, leg, &id),
        open,
        alert: alert(state, in_part),
        marked: state.session.selection.as_deref().is_some_and(in_part),
        help: help(part),
        rows: if open {
            rows(state, leg, part)
        } else {
            Vec::new()
        },
        actions: actions(state, leg, part),
        id,
    }
}

/// What is wrong within a part, for its head.
fn alert(state: &State, in_part: impl Fn(&str) -> bool) -> String {
    let unread = unread(state).filter(|(path, _)| in_part(path)).count();
    let mut faults = state.derived.all_faults();
    match unread {
        1 => "1 entry can't be read".to_owned(),
        2.. => format!("{unread} entries can't be read"),
        0 if faults.any(|fault| in_part(&fault.path)) => "a fault in here".to_owned(),
        0 => String::new(),
    }
}

fn title(state: &State, leg: usize, part: &Part) -> String {
    match part {
        Part::Group(group) => group.title().to_owned(),
        Part::Outline => "Outline of the leg".to_owned(),
        Part::Sliding => "Outline of the sliding part".to_owned(),
        Part::Well => "Wheel well".to_owned(),
        Part::Springs => "Springs".to_owned(),
        Part::Spring(at) => {
            let name = state
                .gear()
                .legs
                .get(leg)
                .and_then(|leg| leg.springs.get(*at))
                .map_or_else(String::new, |spring| name_words(&spring.name));
            if name.is_empty() {
                format!("Spring {}", at + 1)
            } else {
                name
            }
        }
        Part::Obstacle(at) => {
            let name = state
                .gear()
                .legs
                .get(leg)
                .and_then(|leg| leg.well.get(*at))
                .map_or_else(String::new, |obstacle| name_words(&obstacle.name));
            if name.is_empty() {
                format!("Piece {} of the well", at + 1)
            } else {
                name
            }
        }
    }
}

fn help(part: &Part) -> String {
    match part {
        Part::Well => "Each piece of structure near the arc, cut by the plane of the swing: ribs, spars, skin, hoses. Drag its corners in the drawing or type them here.",
        Part::Outline => "What turns with the leg above the sliding part, as drawn in the plane of the swing.",
        Part::Sliding => "What slides with the axle: lower tube, fork.",
        Part::Springs => "Down-lock springs, assist springs, gas struts, cords. A new one has no force until you put it in.",
        Part::Group(Group::Seen) => "A leg that stopped short on the jacks. What may explain it then stands under the curves.",
        Part::Group(Group::Pins) => "Friction of each joint: radius times coefficient times its load, against the motion. Empty pins turn freely.",
        Part::Group(_) | Part::Obstacle(_) | Part::Spring(_) => "",
    }
    .to_owned()
}

/// Paths of the rows of a part, in the order of the field table.
fn rows(state: &State, leg: usize, part: &Part) -> Vec<FieldRow> {
    let gear = state.gear();
    let mut found = Vec::new();
    for words in table() {
        let mut pattern = words.pattern.replacen("legs[]", &format!("legs[{leg}]"), 1);
        if let Part::Obstacle(at) = part {
            pattern = pattern.replacen(".well[]", &format!(".well[{at}]"), 1);
        }
        if let Part::Spring(at) = part {
            pattern = pattern.replacen(".springs[]", &format!(".springs[{at}]"), 1);
        }
        if *part == Part::Group(Group::FormerTire) {
            pattern = pattern.replacen(".wheel.tire", ".wheel.former", 1);
        }
        if let (Kind::Set(_), Some(set)) = (words.kind, pattern.strip_suffix("[]")) {
            pattern = set.to_owned();
        }
        for path in expanded(gear, &pattern) {
            if Part::of(&path).as_ref() != Some(part) {
                continue;
            }
            let ends: &[&str] = match words.kind {
                Kind::Point => &["[0]", "[1]"],
                _ => &[""],
            };
            found.extend(
                ends.iter()
                    .filter_map(|end| row(state, &format!("{path}{end}"))),
            );
            if path.ends_with(".tire.size") || path.ends_with(".former.size") {
                found.extend(tire_table(state, leg, part));
            }
            if path.ends_with("tire.diameter_m") || path.ends_with("former.diameter_m") {
                found.extend(circumference(state, &path));
            }
        }
    }
    found.extend(
        worked::rows(state, leg, &part.id())
            .into_iter()
            .map(|(path, label, value, help)| worked_out(path, label, value, help)),
    );
    found
}

/// A pattern whose last list is still open, for every entry of that list.
fn expanded(gear: &Gear, pattern: &str) -> Vec<String> {
    match pattern.split_once("[]") {
        None => vec![pattern.to_owned()],
        Some((list, rest)) => {
            let count = fields::len(gear, list).unwrap_or(0);
            (0..count).map(|at| format!("{list}[{at}]{rest}")).collect()
        }
    }
}

fn actions(state: &State, leg: usize, part: &Part) -> Vec<Action> {
    let action = |id: String, label: &str, msg: Field| Action {
        id,
        label: label.to_owned(),
        hint: String::new(),
        enabled: true,
        msg: Msg::Field(msg),
    };
    let add = |path: String, label: &str| action(format!("add.{path}"), label, Field::Add { path });
    let remove =
        |path: String, label: &str| action(format!("remove.{path}"), label, Field::Remove { path });
    let model = state.gear().legs.get(leg);
    match part {
        Part::Group(Group::Leg) => {
            let mut all = vec![add(format!("legs[{leg}]"), "Add a leg like this one")];
            if state.gear().legs.len() > 1 {
                all.push(remove(format!("legs[{leg}]"), "Remove this leg"));
            }
            all
        }
        Part::Group(Group::Wheel) => vec![action(
            format!("keep_former.{leg}"),
            "Keep this tire as the previous one",
            Field::KeepAsFormer { leg },
        )],
        Part::Group(Group::FormerTire) if model.is_some_and(|m| m.wheel.former.is_some()) => {
            vec![remove(
                format!("legs[{leg}].wheel.former"),
                "Remove the previous tire",
            )]
        }
        Part::Well => vec![add(format!("legs[{leg}].well"), "Add a piece of structure")],
        Part::Obstacle(at) => {
            let path = format!("legs[{leg}].well[{at}]");
            vec![remove(path, "Remove this piece")]
        }
        Part::Springs => vec![add(format!("legs[{leg}].springs"), "Add a spring")],
        Part::Spring(at) => {
            let path = format!("legs[{leg}].springs[{at}]");
            vec![remove(path, "Remove this spring")]
        }
        Part::Outline => vec![add(format!("legs[{leg}].body.outline_m"), "Add a point")],
        Part::Sliding => {
            vec![add(
                format!("legs[{leg}].strut.sliding_outline_m"),
                "Add a point",
            )]
        }
        Part::Group(_) => Vec::new(),
    }
}
