//! The data in groups, only the chosen one open.
use gearswing_gear::field::{self, Axis, Group, Kind, Path, image_of};
use gearswing_gear::model::{Gear, Leg, Source, View};
use gearswing_report::page::sections::{
    Deed, Section, deed_label, section_alert, section_help, section_title,
};

use super::page::{Action, FieldGroup, FieldRow};
use super::rows::{circumference, knee_rows, row, size_row, unread, worked_row};
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
                Group::Seen => super::sheets::SEEN,
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
    fn of(at: &str) -> Option<Self> {
        let stored = fields::stands_for(at);
        if let Some(path) = fields::path(stored.as_deref().unwrap_or(at)) {
            return Some(Self::of_field(path.field, path.entry));
        }
        if at.ends_with("].well") {
            return Some(Self::Well);
        }
        if at.ends_with("].springs") {
            return Some(Self::Springs);
        }
        match fields::entry(at) {
            Some((list, entry)) if list.ends_with("].well") => Some(Self::Obstacle(entry)),
            Some((list, entry)) if list.ends_with("].springs") => Some(Self::Spring(entry)),
            _ if fields::leg_of(at).is_some() => Some(Self::Group(Group::Leg)),
            _ => None,
        }
    }

    fn of_field(field: field::Field, entry: usize) -> Self {
        match (field, field.info().group) {
            (field::Field::BodyOutline, _) => Self::Outline,
            (field::Field::SlidingOutline, _) => Self::Sliding,
            (_, Group::Well) => Self::Obstacle(entry),
            (_, Group::Springs) => Self::Spring(entry),
            (_, group) => Self::Group(group),
        }
    }

    /// Whether a field is shown in this part.
    fn holds(&self, field: field::Field) -> bool {
        let entry = match self {
            Self::Obstacle(at) | Self::Spring(at) => *at,
            _ => 0,
        };
        *self == Self::of_field(field, entry)
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

/// What was seen of the selected leg where it stopped short, open; `None` without a leg.
pub(crate) fn seen(state: &State) -> Option<FieldGroup> {
    let leg = state.session.leg;
    state.gear().legs.get(leg)?;
    let part = Part::Group(Group::Seen);
    Some(FieldGroup {
        open: true,
        rows: rows(state, leg, &part),
        ..group(state, leg, &part)
    })
}

fn group(state: &State, leg: usize, part: &Part) -> FieldGroup {
    let id = part.id();
    let open = state.session.open_group.as_deref() == Some(id.as_str());
    let in_part = |path: &str| {
        Part::of(path).as_ref() == Some(part)
            && fields::leg_of(path).is_none_or(|owner| owner == leg)
    };
    let section = section(state, leg, part);
    FieldGroup {
        title: section_title(section),
        summary: summary(state, leg, &id),
        open,
        alert: alert(state, in_part),
        marked: state.session.selection.as_deref().is_some_and(in_part),
        help: section_help(section).to_owned(),
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
    section_alert(unread, faults.any(|fault| in_part(&fault.path)))
}

/// A part as it is worded.
fn section<'a>(state: &'a State, leg: usize, part: &Part) -> Section<'a> {
    let model = state.gear().legs.get(leg);
    match part {
        Part::Group(group) => Section::Group(*group),
        Part::Outline => Section::Outline,
        Part::Sliding => Section::Sliding,
        Part::Well => Section::Well,
        Part::Springs => Section::Springs,
        Part::Spring(at) => {
            let spring = model.and_then(|leg| leg.springs.get(*at));
            Section::Spring(spring.map_or("", |spring| &spring.name), *at)
        }
        Part::Obstacle(at) => {
            let piece = model.and_then(|leg| leg.well.get(*at));
            Section::Piece(piece.map_or("", |piece| &piece.name), *at)
        }
    }
}

/// The rows of a part, in the order of the list of fields.
fn rows(state: &State, leg: usize, part: &Part) -> Vec<FieldRow> {
    let mut found = Vec::new();
    for field in field::Field::ALL {
        let instead = *field == field::Field::Knee && fields::is_measured(state.gear(), leg);
        if instead && part.holds(*field) {
            found.extend(knee_rows(state, leg));
            continue;
        }
        for path in paths(state.gear(), *field, leg, part) {
            found.extend(row(state, path));
        }
        match field {
            field::Field::TireSize if part.holds(*field) => {
                found.extend(tire_table(state, leg));
            }
            field::Field::Axle if part.holds(*field) => found.extend(size_row(state, leg)),
            field::Field::TireDiameter if part.holds(*field) => {
                found.extend(circumference(state, field.of_leg(leg)));
            }
            _ => {}
        }
    }
    found.extend(
        worked::rows(state, leg, &part.id())
            .into_iter()
            .map(|(path, number, value)| worked_row(path, number, value)),
    );
    found
}

/// Paths of all values that a field has within a part.
fn paths(gear: &Gear, field: field::Field, leg: usize, part: &Part) -> Vec<Path> {
    if !part.holds(field) {
        return Vec::new();
    }
    let path = match part {
        Part::Obstacle(at) | Part::Spring(at) => field.of_entry(leg, *at),
        _ if field.is_of_leg() => field.of_leg(leg),
        _ => field.path(),
    };
    let both = |point: Path| [point.axis(Axis::X), point.axis(Axis::Y)];
    match field.info().kind {
        Kind::Point => both(path).to_vec(),
        Kind::Outline => {
            let points = path.outline(gear).map_or(0, <[_]>::len);
            (0..points).flat_map(|at| both(path.item(at))).collect()
        }
        // rows of a table
        _ if field.is_of_entry() && matches!(part, Part::Group(_)) => (0..)
            .map(|at| field.of_entry(leg, at))
            .take_while(|path| path.number(gear).is_some())
            .collect(),
        _ => vec![path],
    }
}

fn actions(state: &State, leg: usize, part: &Part) -> Vec<Action> {
    let action = |id: String, deed: Deed, msg: Field| Action {
        id,
        label: deed_label(deed).to_owned(),
        hint: String::new(),
        enabled: true,
        msg: Msg::Field(msg),
    };
    let add = |path: String, deed: Deed| action(format!("add.{path}"), deed, Field::Add { path });
    let remove =
        |path: String, deed: Deed| action(format!("remove.{path}"), deed, Field::Remove { path });
    let model = state.gear().legs.get(leg);
    match part {
        Part::Group(Group::Leg) => {
            let mut all = vec![add(format!("legs[{leg}]"), Deed::AddLeg)];
            // seen from the side, the other main gear is the same
            if model.is_some_and(|model| model.view == View::Front) {
                all.push(action(
                    format!("mirror.{leg}"),
                    Deed::AddMirrorImage,
                    Field::AddMirrorImage { leg },
                ));
            }
            if state.gear().legs.len() > 1 {
                all.push(remove(format!("legs[{leg}]"), Deed::RemoveLeg));
            }
            all.push(action(
                format!("turn.{leg}"),
                Deed::TurnSwing,
                Field::TurnSwing { leg },
            ));
            if image_of(state.gear(), leg).is_some() {
                let on = state.session.alike == Some(true);
                let follow = None;
                all.push(action(
                    "alike".to_owned(),
                    Deed::Alike(on),
                    Field::Alike { on: !on, follow },
                ));
            }
            let on = state.session.takes_along;
            all.push(action(
                "along".to_owned(),
                Deed::TakeAlong(on),
                Field::TakeAlong { on: !on },
            ));
            all
        }
        Part::Group(Group::Wheel) => vec![action(
            format!("keep_tire.{leg}"),
            Deed::KeepTire,
            Field::KeepTire { leg },
        )],
        Part::Well => vec![add(format!("legs[{leg}].well"), Deed::AddPiece)],
        Part::Obstacle(at) => {
            let path = format!("legs[{leg}].well[{at}]");
            vec![remove(path, Deed::RemovePiece)]
        }
        Part::Springs => vec![add(format!("legs[{leg}].springs"), Deed::AddSpring)],
        Part::Spring(at) => {
            let path = format!("legs[{leg}].springs[{at}]");
            vec![remove(path, Deed::RemoveSpring)]
        }
        Part::Outline => vec![add(format!("legs[{leg}].body.outline_m"), Deed::AddPoint)],
        Part::Sliding => {
            let path = format!("legs[{leg}].strut.sliding_outline_m");
            vec![add(path, Deed::AddPoint)]
        }
        Part::Group(_) => Vec::new(),
    }
}
