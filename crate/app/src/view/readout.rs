//! The numbers at the cursor, and the text equivalent of the drawing from the same data.
use gearswing_gear::model::MovingPart;
use gearswing_report::{jam_text, name_words};
use gearswing_solver::TireChoice;
use gearswing_solver::result::{DrivenBy, Phase, TireState};
use gearswing_units::{Quantity, UnitChoice, format, format_signed};

use super::answers::subject;
use super::loads::loads_text;
use super::page::{CurvesText, DrawingText, PointerStyle, ReadoutRow};
use super::summary::spring_text;
use crate::scene::{self, Now, NowClearance, NowForce};
use crate::state::{Gesture, Good, State};

/// A moving part in words.
pub(crate) fn part_text(part: MovingPart, tire: Option<TireState>) -> &'static str {
    match (part, tire) {
        (MovingPart::Wheel, Some(TireState::Grown)) => "grown tire",
        (MovingPart::Wheel, _) => "new tire",
        (MovingPart::LegBody, _) => "upper leg",
        (MovingPart::SlidingStrut, _) => "lower strut",
        (MovingPart::UpperLink, _) => "upper brace link",
        (MovingPart::LowerLink, _) => "lower brace link",
        (MovingPart::LinkArm, _) => "arm of the brace link",
        (MovingPart::SlidingBrace, _) => "telescoping brace",
        (MovingPart::ActuatorBody, _) => "actuator barrel",
        (MovingPart::ActuatorRod, _) => "actuator rod",
    }
}

/// Name of a piece of structure.
pub(crate) fn obstacle_text(good: &Good, index: usize) -> String {
    let name = good
        .leg
        .well
        .get(index)
        .map_or_else(String::new, |o| name_words(&o.name));
    if name.is_empty() {
        format!("piece {} of the well", index + 1)
    } else {
        name
    }
}

/// Where on the path this is.
pub(crate) fn place_text(now: &Now, units: UnitChoice) -> String {
    let place = now.pose.place;
    match place.phase {
        Phase::Shorten => "down, the strut is shortening".to_owned(),
        Phase::Unlock => "before the swing, the knee between its lock and the line".to_owned(),
        Phase::Swing => format!(
            "{} of travel, swung {}",
            format(Quantity::Travel, units, place.travel),
            format(Quantity::Angle, units, place.swing.abs())
        ),
    }
}

fn clearance_value(now: &NowClearance, units: UnitChoice) -> String {
    let clearance = now.at.tightest.clearance;
    if clearance < 0.0 {
        format!(
            "{} of interference",
            format(Quantity::Length, units, -clearance)
        )
    } else {
        format(Quantity::Length, units, clearance)
    }
}

fn nearest<'n>(now: &'n Now, which: &dyn Fn(&NowClearance) -> bool) -> Option<&'n NowClearance> {
    now.clearances
        .iter()
        .filter(|c| which(c))
        .min_by(|a, b| a.at.tightest.clearance.total_cmp(&b.at.tightest.clearance))
}

/// Numbers at the cursor.
pub(crate) fn readout(state: &State) -> Vec<ReadoutRow> {
    let index = state.session.leg;
    let Some(good) = state.derived.good(index) else {
        return Vec::new();
    };
    let Some(now) = scene::now(good, state.session.progress) else {
        return Vec::new();
    };
    let former = state
        .derived
        .leg(index)
        .and_then(|leg| leg.former.as_ref())
        .and_then(|former| Some((former, scene::now(former, state.session.progress)?)));
    let units = state.session.units;
    let mut rows = Vec::with_capacity(12);
    let mut add = |label: String, value: String, former: Option<String>, bad: bool| {
        rows.push(ReadoutRow {
            label,
            value,
            former,
            bad,
        });
    };
    let say = |quantity, si| format(quantity, units, si);
    add("Place".to_owned(), place_text(&now, units), None, false);
    if now.unresolved {
        let none = "not resolved at this place".to_owned();
        add("Clearances".to_owned(), none, None, true);
    }
    for tire in [Some(TireState::New), Some(TireState::Grown), None] {
        let which = |c: &NowClearance| c.at.tire == tire;
        let Some(near) = nearest(&now, &which) else {
            continue;
        };
        let label = format!(
            "Nearest to the {}: {}",
            match tire {
                None => part_text(near.at.part, None),
                some => part_text(MovingPart::Wheel, some),
            },
            obstacle_text(good, near.at.obstacle)
        );
        let with_former = tire.and_then(|_| {
            let (good, now) = former.as_ref()?;
            let near = nearest(now, &which)?;
            Some(format!(
                "{} ({})",
                clearance_value(near, units),
                obstacle_text(good, near.at.obstacle)
            ))
        });
        add(
            label,
            clearance_value(near, units),
            with_former,
            near.spare() < 0.0,
        );
    }
    let available = good.result.force.available_pressure;
    let fluid = good.result.force.driven_by == DrivenBy::Fluid;
    for (motion, get) in [
        (
            "retract",
            (|now| now.retract) as fn(&Now) -> Option<NowForce>,
        ),
        ("extend", |now| now.extend),
    ] {
        let Some(force) = get(&now) else {
            continue;
        };
        let was = former.as_ref().and_then(|(_, now)| get(now));
        add(
            format!("Actuator force to {motion}, friction included"),
            say(Quantity::Force, force.effort),
            was.map(|f| say(Quantity::Force, f.effort)),
            !fluid && force.pressure > available,
        );
        if !fluid {
            continue;
        }
        add(
            format!("Pressure needed to {motion}"),
            say(Quantity::Pressure, force.pressure),
            was.map(|f| say(Quantity::Pressure, f.pressure)),
            force.pressure > available,
        );
    }
    if let Some(held) = &now.loads {
        // what the arrows show
        add(
            "Actuator force held still, without friction".to_owned(),
            say(Quantity::Force, held.holding.abs()),
            None,
            false,
        );
    }
    let margin = now.retract.map(|f| (available - f.pressure) / available);
    if let Some(margin) = margin.filter(|margin| margin.is_finite()) {
        add(
            format!(
                "To spare of the {} available to retract",
                if fluid { "pressure" } else { "force" }
            ),
            format_signed(Quantity::Travel, units, margin),
            None,
            margin < 0.0,
        );
    }
    add(
        "Actuator length".to_owned(),
        say(Quantity::Length, now.pose.actuator_length),
        None,
        false,
    );
    add(
        "Moment arm".to_owned(),
        now.moment_arm.map_or_else(
            || "none: dead point".to_owned(),
            |arm| say(Quantity::Length, arm.abs()),
        ),
        None,
        false,
    );
    if let Some(angle) = now.transmission {
        add(
            "Transmission angle at the knee".to_owned(),
            say(Quantity::Angle, angle),
            None,
            false,
        );
    }
    if let Some(fold) = now.fold {
        add(
            "Knee from the straight line".to_owned(),
            say(Quantity::Angle, fold),
            None,
            false,
        );
    }
    if now.pose.shortening > 0.0 {
        add(
            "Strut shortened by".to_owned(),
            say(Quantity::Length, now.pose.shortening),
            None,
            false,
        );
    }
    rows
}

/// Name of a leg for a heading.
pub(crate) fn leg_title(state: &State) -> String {
    let index = state.session.leg;
    match state.gear().legs.get(index) {
        Some(leg) if !leg.name.trim().is_empty() => name_words(&leg.name),
        _ => format!("Leg {}", index + 1),
    }
}

/// Text around the drawing.
pub(crate) fn drawing_text(state: &State) -> DrawingText {
    let units = state.session.units;
    let index = state.session.leg;
    let leg = state.derived.leg(index);
    let faded = leg.is_some_and(crate::state::LegDerived::faded);
    let mut description = Vec::new();
    let mut place = String::new();
    if let Some(model) = state.gear().legs.get(index) {
        description.push(match model.view {
            gearswing_gear::model::View::Side => {
                "Seen from the airplane's left: right is aft.".to_owned()
            }
            gearswing_gear::model::View::Front => {
                "Seen from ahead: right is the airplane's left wing.".to_owned()
            }
        });
    }
    if faded {
        description
            .push("The model has a fault: this is its last good state, shown faded.".to_owned());
    }
    if let Some(good) = state.derived.good(index)
        && let Some(now) = scene::now(good, state.session.progress)
    {
        place = place_text(&now, units);
        let axle = scene::point_text(now.pose.axle, units);
        description.push(format!("The leg is at {place}; axle at {axle}."));
        if let Some(near) = now.clearances.first() {
            description.push(format!(
                "Tightest here: {} to {}, {} (required: {}).",
                part_text(near.at.part, near.at.tire),
                obstacle_text(good, near.at.obstacle),
                clearance_value(near, units),
                format(Quantity::Length, units, near.requirement.clearance)
            ));
        }
        let touching = now
            .clearances
            .iter()
            .filter(|c| c.at.tightest.clearance < 0.0);
        let names: Vec<String> = touching
            .map(|c| {
                let (part, tire) = (c.at.part, c.at.tire);
                format!(
                    "{} in {}",
                    part_text(part, tire),
                    obstacle_text(good, c.at.obstacle)
                )
            })
            .collect();
        if !names.is_empty() {
            description.push(format!("Contact: {}.", names.join("; ")));
        }
        if state.session.loads && !faded {
            description.push(loads_text(good, &now, units));
        }
        let about = subject(state.gear(), index, good, TireChoice::Fitted, units);
        for jam in &good.result.jams {
            description.push(format!(
                "The leg stops at {} of travel: {}.",
                format(Quantity::Travel, units, jam.place.travel),
                jam_text(&about, jam.cause)
            ));
        }
        let names: Vec<String> = (0..good.leg.well.len())
            .map(|i| obstacle_text(good, i))
            .collect();
        if !names.is_empty() {
            description.push(format!("In the well: {}.", names.join(", ")));
        }
        let names: Vec<String> = good
            .leg
            .springs
            .iter()
            .map(|spring| {
                let name = name_words(&spring.name);
                let name = match name.as_str() {
                    "" => "spring",
                    name => name,
                };
                format!("{name} ({})", spring_text(&spring.kind, units))
            })
            .collect();
        if !names.is_empty() {
            description.push(format!("Springs: {}.", names.join(", ")));
        }
    }
    let title = leg_title(state);
    DrawingText {
        label: if place.is_empty() {
            title
        } else {
            format!("{title}, {place}")
        },
        description,
        drag_text: state.session.drag_text.clone(),
        pointer: match (&state.session.gesture, &state.session.hover) {
            (Gesture::Idle, Some(_)) => PointerStyle::OverHandle,
            (Gesture::Idle, None) => PointerStyle::Open,
            _ => PointerStyle::Moving,
        },
        faded,
    }
}

/// Text around the curves.
pub(crate) fn curves_text(state: &State) -> CurvesText {
    let units = state.session.units;
    let index = state.session.leg;
    let mut description = Vec::new();
    if let Some(good) = state.derived.good(index) {
        let pairs = &good.result.clearance.pairs;
        // the wheel, and of the other parts the nearest to each piece
        let told = pairs.iter().filter(|pair| {
            pair.tire.is_some()
                || pairs
                    .iter()
                    .filter(|other| other.obstacle == pair.obstacle && other.tire.is_none())
                    .all(|other| other.tightest.clearance >= pair.tightest.clearance)
        });
        for pair in told {
            let tightest = pair.tightest;
            description.push(format!(
                "{} to {}: at the tightest {}, at {} of travel (required: {}).",
                part_text(pair.part, pair.tire),
                obstacle_text(good, pair.obstacle),
                format_signed(Quantity::Length, units, tightest.clearance),
                format(Quantity::Travel, units, tightest.place.travel),
                format(Quantity::Length, units, pair.requirement.clearance)
            ));
        }
        let force = &good.result.force;
        let (what, quantity) = match force.driven_by {
            DrivenBy::Fluid => ("pressure", Quantity::Pressure),
            DrivenBy::Electricity => ("force", Quantity::Force),
        };
        for (motion, peak) in [("retract", force.peak), ("extend", force.extend_peak)] {
            let Some(peak) = peak else { continue };
            if peak.pressure <= 0.0 {
                description.push(format!("No {what} is needed to {motion}."));
                continue;
            }
            description.push(format!(
                "Most {what} needed to {motion}: {} at {} of travel; available: {}.",
                format(quantity, units, peak.pressure),
                format(Quantity::Travel, units, peak.place.travel),
                format(quantity, units, force.available_pressure)
            ));
        }
    }
    CurvesText {
        label: format!("{} over travel", leg_title(state)),
        description,
    }
}
