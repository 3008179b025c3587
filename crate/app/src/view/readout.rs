//! The numbers at the cursor, and the text equivalent of the drawing from the same data.
use gearswing_report::finding_line;
use gearswing_report::page::curves;
use gearswing_report::page::drawing::{self, Near};
use gearswing_report::page::names::{clearance_words, obstacle_words, place_words, travel_short};
use gearswing_report::page::readout::{self as words, Number, number_label};
use gearswing_solver::result::{DrivenBy, Motion, TireState, Verdict};
use gearswing_units::{Quantity, UnitChoice, format, format_signed};

use super::answers::subject;
use super::dragged::drag_text;
use super::loads::loads_text;
use super::page::{CurvesText, DetailText, DrawingText, PointerStyle, ReadoutRow};
use crate::scene::{self, Detail, Now, NowClearance, Shows};
use crate::state::{Gesture, Good, Hover, State};

/// Name of a piece of structure, as typed.
pub(crate) fn obstacle_name(good: &Good, index: usize) -> &str {
    good.leg.well.get(index).map_or("", |piece| &piece.name)
}

/// Name of a piece of structure within a sentence.
pub(crate) fn obstacle_text(good: &Good, index: usize) -> String {
    obstacle_words(obstacle_name(good, index), index)
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
    let before = state.before.leg(state.gear(), index);
    let before = before
        .and_then(|(_, _, before)| Some((before, scene::now(before, state.session.progress)?)));
    let units = state.session.units;
    let mut rows = Vec::with_capacity(12);
    let mut add = |number: Number, value: String, before: Option<String>, bad: bool| {
        rows.push(ReadoutRow {
            label: number_label(number),
            value,
            before,
            bad,
        });
    };
    let say = |quantity, si| format(quantity, units, si);
    let place = place_words(&now.pose.place, units);
    add(Number::Place, place, None, false);
    if now.unresolved {
        let none = words::NOT_RESOLVED.to_owned();
        add(Number::Clearances, none, None, true);
    }
    for tire in [Some(TireState::New), Some(TireState::Grown), None] {
        let which = |c: &NowClearance| c.at.tire == tire;
        let Some(near) = nearest(&now, &which) else {
            continue;
        };
        let obstacle = obstacle_text(good, near.at.obstacle);
        let with_before = tire.and_then(|_| {
            let (good, now) = before.as_ref()?;
            let near = nearest(now, &which)?;
            Some(words::with_obstacle(
                &clearance_value(near, units),
                &obstacle_text(good, near.at.obstacle),
            ))
        });
        add(
            Number::Nearest(near.at.part, tire, &obstacle),
            clearance_value(near, units),
            with_before,
            near.spare() < 0.0,
        );
    }
    let available = good.result.force.available_pressure;
    let driven_by = good.result.force.driven_by;
    let fluid = driven_by == DrivenBy::Fluid;
    for motion in [Motion::Retract, Motion::Extend] {
        let get = |now: &Now| match motion {
            Motion::Retract => now.retract,
            Motion::Extend => now.extend,
        };
        let Some(force) = get(&now) else {
            continue;
        };
        // a pressure is no force
        let same = before
            .as_ref()
            .filter(|(before, _)| before.result.force.driven_by == driven_by);
        let was = same.and_then(|(_, now)| get(now));
        add(
            Number::Force(motion),
            say(Quantity::Force, force.effort),
            was.map(|f| say(Quantity::Force, f.effort)),
            !fluid && force.pressure > available,
        );
        if !fluid {
            continue;
        }
        add(
            Number::Pressure(motion),
            say(Quantity::Pressure, force.pressure),
            was.map(|f| say(Quantity::Pressure, f.pressure)),
            force.pressure > available,
        );
    }
    if let Some(held) = &now.loads {
        // what the arrows show
        let held = say(Quantity::Force, held.holding.abs());
        add(Number::Held, held, None, false);
    }
    let margin = now.retract.map(|f| (available - f.pressure) / available);
    if let Some(margin) = margin.filter(|margin| margin.is_finite()) {
        let spare = format_signed(Quantity::Travel, units, margin);
        add(Number::Spare(driven_by), spare, None, margin < 0.0);
    }
    let length = say(Quantity::Length, now.pose.actuator_length);
    add(Number::ActuatorLength, length, None, false);
    let arm = now.moment_arm.map_or_else(
        || words::DEAD_POINT.to_owned(),
        |arm| say(Quantity::Length, arm.abs()),
    );
    add(Number::MomentArm, arm, None, false);
    if let Some(angle) = now.transmission {
        let angle = say(Quantity::Angle, angle);
        add(Number::Transmission, angle, None, false);
    }
    if let Some(fold) = now.fold {
        add(Number::Fold, say(Quantity::Angle, fold), None, false);
    }
    if now.pose.shortening > 0.0 {
        let shortening = say(Quantity::Length, now.pose.shortening);
        add(Number::Shortening, shortening, None, false);
    }
    rows
}

fn clearance_value(now: &NowClearance, units: UnitChoice) -> String {
    clearance_words(now.at.tightest.clearance, units)
}

/// Name of the leg that is shown, for a heading.
pub(crate) fn shown_leg(state: &State) -> String {
    state.leg_title(state.session.leg)
}

/// A clearance as it is worded.
fn near<'a>(good: &'a Good, now: &NowClearance) -> Near<'a> {
    Near {
        part: now.at.part,
        tire: now.at.tire,
        obstacle: (obstacle_name(good, now.at.obstacle), now.at.obstacle),
        clearance: now.at.tightest.clearance,
        required: now.requirement.clearance,
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
        description.push(drawing::view_sentence(model.view).to_owned());
    }
    if faded {
        description.push(drawing::FADED.to_owned());
    }
    if let Some(good) = state.derived.good(index)
        && let Some(now) = scene::now(good, state.session.progress)
    {
        place = place_words(&now.pose.place, units);
        let axle = now.pose.axle;
        let stands = drawing::stands_sentence(state.gear(), index, &place, axle, units);
        description.push(stands);
        if let Some(tightest) = now.clearances.first() {
            let tightest = near(good, tightest);
            description.push(drawing::tightest_sentence(&tightest, units));
        }
        let touching: Vec<Near> = now
            .clearances
            .iter()
            .filter(|c| c.at.tightest.clearance < 0.0)
            .map(|c| near(good, c))
            .collect();
        description.extend(drawing::contact_sentence(&touching));
        if state.session.loads && !faded {
            description.push(loads_text(good, &now, units));
        }
        let about = subject(state.gear(), index, good, units);
        for jam in &good.result.jams {
            description.push(drawing::stop_sentence(&about, &jam.place, jam.cause));
        }
        description.extend(drawing::well_sentence(&good.leg));
        description.extend(drawing::springs_sentence(&good.leg, units));
    }
    DrawingText {
        label: drawing::drawing_label(&shown_leg(state), &place),
        seen: state
            .gear()
            .legs
            .get(index)
            .map_or_else(String::new, |leg| drawing::seen_from(leg.view).to_owned()),
        worst: worst(state),
        detail: detail(state),
        description,
        drag_text: drag_text(state),
        pointer: match (&state.session.gesture, state.session.hover) {
            (Gesture::Idle, Hover::Point) => PointerStyle::OverHandle,
            (Gesture::Idle, _) => PointerStyle::Open,
            _ => PointerStyle::Moving,
        },
        faded,
    }
}

/// What stands under the detail; there is none of an earlier state.
fn detail(state: &State) -> Option<DetailText> {
    let good = state.derived.leg(state.session.leg)?.current()?;
    Some(detail_text(state, &scene::detail_now(state, good)?))
}

/// What stands under a detail of the leg in hand.
pub(crate) fn detail_text(state: &State, found: &Detail) -> DetailText {
    let units = state.session.units;
    let travel = travel_short(&found.place, units);
    let enlarged = scene::magnified(state, found);
    DetailText {
        caption: drawing::detail_caption(found.letter(), enlarged, &travel),
        travel,
        value: match found.shows {
            Shows::Gap(tightest) => clearance_words(tightest.clearance, units),
            Shows::Knee { offset } => drawing::knee_words(offset, units),
            Shows::Arm { arm, on_link } => drawing::arm_words(arm, on_link, units),
        },
        bad: found.is_bad(),
        question: found.question(),
    }
}

/// The worst answer of the selected leg in a line.
fn worst(state: &State) -> Option<(Verdict, String)> {
    let index = state.session.leg;
    let good = state.derived.good(index)?;
    let finding = scene::worst(&good.result.findings)?;
    let units = state.session.units;
    let about = subject(state.gear(), index, good, units);
    Some((finding.verdict, finding_line(&about, finding)))
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
        description.extend(told.map(|pair| curves::clearance_sentence(pair, units)));
        let force = &good.result.force;
        let motions = [Motion::Retract, Motion::Extend];
        for (motion, peak) in motions.into_iter().zip([force.peak, force.extend_peak]) {
            description.extend(peak.map(|peak| {
                let available = force.available_pressure;
                curves::need_sentence(force.driven_by, motion, &peak, available, units)
            }));
        }
    }
    CurvesText {
        label: curves::over_travel(&shown_leg(state)),
        description,
    }
}
