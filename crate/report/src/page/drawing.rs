//! The drawing and its points.
use crate::text::capital_first;
use gearswing_gear::field::{Axis, Field, Group, Path, Told, Toward, told_point};
use gearswing_gear::model::{Gear, Leg, MovingPart, Point, View};
use gearswing_solver::result::{JamCause, Place, TireState};
use gearswing_units::{Quantity, UnitChoice, format};

use super::names::{clearance_words, part_words, travel_words};
use super::summary::spring_summary;
use crate::fields::label;
use crate::finding::jam_text;
use crate::name::name_words;
use crate::subject::{Subject, obstacle_words};

/// How the drawing is to be seen.
#[must_use]
pub fn view_sentence(view: View) -> &'static str {
    match view {
        View::Side => "Seen from the airplane's left: right is aft.",
        View::Front => "Seen from ahead: right is the airplane's left wing.",
    }
}

/// At the arrow of the drawing.
pub const AFT: &str = "aft";

/// At the arrow of the drawing.
pub const OUTBOARD: &str = "outboard";

/// After the leg's name in the title of the drawing: from where it is seen, and where the leg stands.
#[must_use]
pub fn title_rest(seen: &str, place: &str) -> String {
    [seen, place]
        .iter()
        .filter(|part| !part.is_empty())
        .map(|part| format!(", {part}"))
        .collect()
}

/// Under the detail: its letter, how many times larger it is than the drawing, and at which travel.
#[must_use]
pub fn detail_caption(letter: &str, magnified: f64, travel: &str) -> String {
    if magnified >= 10.0 {
        format!("{letter}, {magnified:.0} × the drawing, at {travel}")
    } else {
        format!("{letter}, {magnified:.1} × the drawing, at {travel}")
    }
}

/// The knee in its detail: how far it stands over center (m); negative where it is not to go over.
#[must_use]
pub fn knee_words(offset: f64, units: UnitChoice) -> String {
    let value = format(Quantity::Length, units, offset.abs());
    if offset > 0.0 {
        format!("{value} over center")
    } else {
        format!("{value} from straight")
    }
}

/// The lever of the actuator in its detail (m), about the trunnion or about the pivot of the brace.
#[must_use]
pub fn arm_words(arm: f64, on_link: bool, units: UnitChoice) -> String {
    let about = if on_link { "brace pivot" } else { "trunnion" };
    let value = format(Quantity::Length, units, arm);
    format!("arm {value} about the {about}")
}

/// From where the drawing is seen, for its title.
#[must_use]
pub fn seen_from(view: View) -> &'static str {
    match view {
        View::Side => "seen from the left",
        View::Front => "seen from ahead",
    }
}

/// In the description of a drawing of an earlier state.
pub const FADED: &str = "The model has a fault: this is its last good state, shown faded.";

/// Over a drawing of an earlier state, with the fault that keeps it there.
#[must_use]
pub fn faded_line(fault: &str) -> String {
    format!("Faded: the last model that could be worked out. {fault}")
}

/// Name of the drawing: the leg, and where it stands if it does.
#[must_use]
pub fn drawing_label(leg: &str, place: &str) -> String {
    if place.is_empty() {
        leg.to_owned()
    } else {
        format!("{leg}, {place}")
    }
}

/// Where the leg and its axle are.
#[must_use]
pub fn stands_sentence(
    gear: &Gear,
    leg: usize,
    place: &str,
    axle: Point,
    units: UnitChoice,
) -> String {
    let axle = point_at(gear, Field::Axle.of_leg(leg), axle, units);
    format!("The leg is at {place}. {axle}.")
}

/// The clearance of a part to a piece of structure at one place.
#[derive(Clone, Copy, Debug)]
pub struct Near<'a> {
    /// Moving part.
    pub part: MovingPart,
    /// Tire size, for the wheel only.
    pub tire: Option<TireState>,
    /// Name of the piece of structure as typed, and its index.
    pub obstacle: (&'a str, usize),
    /// Clearance (m).
    pub clearance: f64,
    /// What is required (m).
    pub required: f64,
}

impl Near<'_> {
    fn part(&self) -> &'static str {
        part_words(self.part, self.tire)
    }

    fn obstacle(&self) -> String {
        obstacle_words(self.obstacle.0, self.obstacle.1)
    }
}

/// The tightest clearance at the place shown.
#[must_use]
pub fn tightest_sentence(near: &Near, units: UnitChoice) -> String {
    format!(
        "Tightest here: {} to {}, {} (required: {}).",
        near.part(),
        near.obstacle(),
        clearance_words(near.clearance, units),
        format(Quantity::Length, units, near.required)
    )
}

/// What touches at the place shown; `None` = nothing does.
#[must_use]
pub fn contact_sentence(touching: &[Near]) -> Option<String> {
    let said = touching
        .iter()
        .map(|near| format!("{} in {}", near.part(), near.obstacle()));
    let said: Vec<String> = said.collect();
    (!said.is_empty()).then(|| format!("Contact: {}.", said.join("; ")))
}

/// Where a leg stops before up, and why.
#[must_use]
pub fn stop_sentence(subject: &Subject, place: &Place, cause: JamCause) -> String {
    format!(
        "The leg stops at {} of travel: {}.",
        format(Quantity::Travel, subject.units, place.travel),
        jam_text(subject, cause)
    )
}

/// Where a leg stops before up, in a few words.
#[must_use]
pub fn stops_at(place: &Place, units: UnitChoice) -> String {
    format!("the leg stops at {}", travel_words(place, units))
}

/// What is in the well; `None` = nothing.
#[must_use]
pub fn well_sentence(leg: &Leg) -> Option<String> {
    let names = leg.well.iter().enumerate();
    let names: Vec<String> = names
        .map(|(at, piece)| obstacle_words(&piece.name, at))
        .collect();
    (!names.is_empty()).then(|| format!("In the well: {}.", names.join(", ")))
}

/// The springs of a leg; `None` = there are none.
#[must_use]
pub fn springs_sentence(leg: &Leg, units: UnitChoice) -> Option<String> {
    let said = leg.springs.iter().map(|spring| {
        let name = name_words(&spring.name);
        let name = match name.as_str() {
            "" => "spring",
            name => name,
        };
        format!("{name} ({})", spring_summary(&spring.kind, units))
    });
    let said: Vec<String> = said.collect();
    (!said.is_empty()).then(|| format!("Springs: {}.", said.join(", ")))
}

/// At the dimension of the tightest place.
#[must_use]
pub fn dimension_words(clearance: f64, tire: Option<TireState>, units: UnitChoice) -> String {
    let length = format(Quantity::Length, units, clearance.abs());
    let of = match tire {
        None => "",
        Some(TireState::New) => ", new",
        Some(TireState::Grown) => ", grown",
    };
    if clearance < 0.0 {
        format!("interference {length}{of}")
    } else {
        format!("{length}{of}")
    }
}

/// What a screen reader calls a point of the drawing.
pub const POINT_ROLE: &str = "point of the drawing";

/// A point, as "x 1.20 in, y −3.00 in".
#[must_use]
pub fn point_words(point: Point, units: UnitChoice) -> String {
    let say = |si| format(Quantity::Length, units, si);
    format!("x {}, y {}", say(point.x), say(point.y))
}

/// Name of a point within its leg, as "Trunnion P" or "Bay rib, corner 3".
#[must_use]
pub fn point_name(gear: &Gear, path: Path) -> String {
    let label = label(path.point(), gear);
    let leg = gear.legs.get(path.leg);
    let name = match path.field.info().group {
        Group::Well => leg
            .and_then(|leg| leg.well.get(path.entry))
            .map(|piece| &piece.name),
        Group::Springs => leg
            .and_then(|leg| leg.springs.get(path.entry))
            .map(|spring| &spring.name),
        _ => None,
    };
    match name.map(|name| name_words(name)) {
        Some(name) if !name.is_empty() => format!("{name}, {}", label.to_ascii_lowercase()),
        _ => label,
    }
}

/// A point with its name, as it stands or is moved (m, as stored).
#[must_use]
pub fn point_at(gear: &Gear, path: Path, point: Point, units: UnitChoice) -> String {
    let name = point_name(gear, path);
    let Some(across) = Told::of(gear, path.point().axis(Axis::X)) else {
        return format!("{name}: {}", point_words(point, units));
    };
    let told = told_point(gear, path, point);
    let say = |si, ahead, behind| {
        let toward = if si < 0.0 { behind } else { ahead };
        format!("{} {toward}", format(Quantity::Length, units, f64::abs(si)))
    };
    let (ahead, behind) = match across.toward {
        Toward::Aft => ("aft", "forward"),
        Toward::LeftWing => ("to the left wing", "to the right wing"),
        Toward::Inboard | Toward::Up => ("inboard", "outboard"),
        // beyond the center line: on the other side of it
        Toward::Outboard => ("out", "across"),
    };
    let (x, y) = (say(told.x, ahead, behind), say(told.y, "up", "down"));
    match (across.from_trunnion, across.toward) {
        (true, _) => format!("{name}: {x}, {y} from the trunnion"),
        (false, Toward::Aft) => format!("{name}: {x}, {y} of the file's zero"),
        (false, _) => format!("{name}: {x} from the center line, {y}"),
    }
}

/// A point that is moved, and how the leg stands then.
#[must_use]
pub fn moved_words(point: &str, stand: &str) -> String {
    if stand.is_empty() {
        point.to_owned()
    } else {
        format!("{point}. {}", capital_first(stand))
    }
}

/// The label of a point; those of the brace can be moved with the gear down only.
#[must_use]
pub fn handle_label(point: String, movable: bool) -> String {
    let mut label = point;
    if !movable {
        label.push_str("; is set with the gear down");
    }
    label
}

/// A point of the brace was taken while the leg was not down.
#[must_use]
pub fn leg_put_down(name: &str) -> String {
    format!("{name} is set with the gear down. The leg is down now: move the point.")
}

/// A drag was given up.
pub const POINT_BACK: &str = "The point is back where it was.";

/// What a dragged point has caught on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Caught {
    /// Another point.
    On,
    /// The level line through another point.
    Level,
    /// The upright line through another point.
    Plumb,
}

/// What a dragged point has caught on, by the name of the other point.
#[must_use]
pub fn caught_words(caught: Caught, other: &str) -> String {
    match caught {
        Caught::On => format!("on {other}"),
        Caught::Level => format!("level with {other}"),
        Caught::Plumb => format!("plumb with {other}"),
    }
}
