//! The detail: what the answer in hand turns on, at a larger scale, wherever the cursor stands.
//!
//! A is the tightest gap, B the knee at gear down with its offset over center, C the actuator at the most that is
//! needed, with its moment arm (letters as drafting gives them, ISO 128).
use gearswing_gear::model::{AttachTo, Brace, Point};
use gearswing_solver::kinematics::Pose;
use gearswing_solver::result::{Place, Question, Tightest};

use super::drawing::own_leg;
use super::labels::Placer;
use super::strip::followed;
use super::{Pen, Role, Scene, ScreenPoint, Viewport, dimension, leg, now, paper_of, well};
use crate::state::{Circles, Good, State};

/// Least of the airplane that is seen around the place (m): 0.4 in.
const LEAST_RADIUS: f64 = 0.010_16;
/// The same at a knee, whose links are seen (m): 0.9 in.
const LEAST_AT_KNEE: f64 = 0.022_86;
/// Of the gap, overlap or offset so many times are seen (ratio).
const GAPS: f64 = 2.0;
/// Of the moment arm so much is seen to either side of its middle (ratio).
const ARMS: f64 = 0.8;
/// The answers, in the order of the letters on paper.
pub(crate) const ANSWERS: [Question; 3] = [Question::Clears, Question::Locks, Question::Driven];
/// Least radius of its circle in the drawing (CSS px).
const CIRCLE_PX: f64 = 11.0;

/// What a detail shows.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Shows {
    /// The tightest gap, or the deepest overlap.
    Gap(Tightest),
    /// The knee, and how far it stands over center (m); negative: it is not to go over, and folds on.
    Knee {
        /// Offset (m).
        offset: f64,
    },
    /// The lever of the actuator.
    Arm {
        /// About the fixed pivot of the part that it works on (m).
        arm: f64,
        /// That is the upper brace link, not the leg.
        on_link: bool,
    },
}

/// What the detail shows, and where.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Detail {
    pub(crate) shows: Shows,
    /// The place of the path at which it is seen.
    pub(crate) place: Place,
    /// Ends of the dimension in it (m).
    ends: [Point; 2],
    /// Seen around their middle (m).
    radius: f64,
}

impl Detail {
    fn new(shows: Shows, place: Place, ends: [Point; 2]) -> Self {
        let (times, least) = match shows {
            Shows::Gap(_) => (GAPS, LEAST_RADIUS),
            Shows::Knee { .. } => (GAPS, LEAST_AT_KNEE),
            Shows::Arm { .. } => (ARMS, LEAST_RADIUS),
        };
        let radius = (times * (ends[1] - ends[0]).norm()).max(least);
        Self {
            shows,
            place,
            ends,
            radius,
        }
    }

    /// Its letter.
    pub(crate) fn letter(&self) -> &'static str {
        match self.shows {
            Shows::Gap(_) => "A",
            Shows::Knee { .. } => "B",
            Shows::Arm { .. } => "C",
        }
    }

    /// The answer that it belongs to.
    pub(crate) fn question(&self) -> Question {
        match self.shows {
            Shows::Gap(_) => Question::Clears,
            Shows::Knee { .. } => Question::Locks,
            Shows::Arm { .. } => Question::Driven,
        }
    }

    /// It shows an overlap; knee and lever are judged in words.
    pub(crate) fn is_bad(&self) -> bool {
        match self.shows {
            Shows::Gap(tightest) => tightest.clearance <= 0.0,
            Shows::Knee { .. } | Shows::Arm { .. } => false,
        }
    }

    fn centre(&self) -> Point {
        let [a, b] = self.ends;
        a + (b - a) * 0.5
    }
}

/// The detail of an answer of a leg; `None` where it has none.
pub(crate) fn detail_of(good: &Good, question: Question) -> Option<Detail> {
    match question {
        Question::Clears => gap(good),
        Question::Driven => arm(good),
        Question::Locks => knee(good),
    }
}

/// The detail of the answer in hand, or of the first one where that has none.
pub(crate) fn detail_now(state: &State, good: &Good) -> Option<Detail> {
    let own = followed(state).and_then(|question| detail_of(good, question));
    own.or_else(|| gap(good))
}

/// Those that have a circle in the drawing.
pub(super) fn circled(state: &State, good: &Good) -> Vec<Detail> {
    match state.session.circles {
        Circles::InHand => detail_now(state, good).into_iter().collect(),
        Circles::All => ANSWERS
            .into_iter()
            .filter_map(|question| detail_of(good, question))
            .collect(),
        Circles::None => Vec::new(),
    }
}

fn gap(good: &Good) -> Option<Detail> {
    let clearance = &good.result.clearance;
    let governing = || Some(clearance.pairs.get(clearance.governing?)?.tightest);
    let own = own_leg(good).map(|own| own.tightest);
    let tightest = own.or_else(governing)?;
    let ends = [tightest.on_part, tightest.on_obstacle];
    Some(Detail::new(Shows::Gap(tightest), tightest.place, ends))
}

/// The knee of a folding brace at gear down, and the line between the brace's end pins beside it.
fn knee(good: &Good) -> Option<Detail> {
    let Brace::Folding(brace) = &good.leg.brace else {
        return None;
    };
    let offset = good.result.lock.over_centre?;
    let pose = good.pose(good.range().0)?;
    let foot = foot_of(brace.knee, brace.airframe_pivot, brace.leg_attach)?;
    let ends = [foot, brace.knee];
    Some(Detail::new(Shows::Knee { offset }, pose.place, ends))
}

/// The actuator at the most that is needed to retract, with its lever about the fixed pivot of the part that it
/// works on; a lower link has none.
fn arm(good: &Good) -> Option<Detail> {
    let (pivot, on_link) = match (good.leg.actuator.attach_to, &good.leg.brace) {
        (AttachTo::Leg, _) => (good.leg.trunnion, false),
        (AttachTo::UpperLink, Brace::Folding(brace)) => (brace.airframe_pivot, true),
        _ => return None,
    };
    let peak = good.result.force.peak?;
    let pose = good.pose(peak.place.progress)?;
    let foot = foot_of(pivot, good.leg.actuator.mount, pose.actuator_attach)?;
    let arm = (foot - pivot).norm();
    Some(Detail::new(
        Shows::Arm { arm, on_link },
        pose.place,
        [pivot, foot],
    ))
}

/// Foot of the perpendicular from a point to the line through two others; `None` where they are one.
fn foot_of(from: Point, a: Point, b: Point) -> Option<Point> {
    let along = (b - a).try_normalize(0.0)?;
    Some(a + along * (from - a).dot(&along))
}

/// How many times larger the detail is than the drawing (ratio).
pub(crate) fn magnified(state: &State, detail: &Detail) -> f64 {
    viewport(state, detail).scale() / paper_of(state).viewport.scale()
}

fn viewport(state: &State, detail: &Detail) -> Viewport {
    let size_px = state.session.detail_px;
    Viewport::new(
        detail.centre(),
        0.5 * size_px / detail.radius,
        (size_px, size_px),
    )
}

/// The detail of the selected leg; empty where there is none.
#[must_use]
pub fn detail(state: &State) -> Scene {
    let found = state
        .derived
        .good(state.session.leg)
        .and_then(|good| detail_now(state, good));
    match found {
        Some(found) => drawn(state, &found),
        None => empty(state),
    }
}

fn empty(state: &State) -> Scene {
    let size_px = state.session.detail_px;
    Scene {
        width_px: size_px,
        height_px: size_px,
        ..Scene::default()
    }
}

/// A detail of the selected leg.
pub(crate) fn drawn(state: &State, found: &Detail) -> Scene {
    let mut scene = empty(state);
    let derived = state.derived.leg(state.session.leg);
    let Some(good) = derived.and_then(|leg| leg.good.as_ref()) else {
        return scene;
    };
    let Some(here) = now(good, found.place.progress) else {
        return scene;
    };
    let mut pen = Pen::new(viewport(state, found));
    well::well(&mut pen, &good.leg);
    pen.faded = derived.is_some_and(|leg| leg.faded());
    let outlines = leg::outlines(&good.leg, &here.pose);
    leg::standing(&mut pen, &outlines);
    match found.shows {
        Shows::Gap(_) => {}
        Shows::Knee { .. } => line_of(&mut pen, good, &here.pose),
        Shows::Arm { .. } => {
            pen.line(
                Role::CentreLine,
                good.leg.actuator.mount,
                here.pose.actuator_attach,
            );
            leg::pins(&mut pen, &leg::joints(&good.leg, &here.pose));
        }
    }
    if !pen.faded {
        dimension::contacts(&mut pen, &good.leg, &outlines, &here.clearances);
        dimension::between(&mut pen, found.ends, found.is_bad());
    }
    scene.marks = pen.marks;
    scene
}

/// The line between the brace's end pins, and the middles of the links.
fn line_of(pen: &mut Pen, good: &Good, pose: &Pose) {
    if let (Brace::Folding(brace), Some(attach), Some(knee)) =
        (&good.leg.brace, pose.brace_attach, pose.knee)
    {
        let pivot = brace.airframe_pivot;
        pen.line(Role::CentreLine, pivot, attach);
        for end in [pivot, attach] {
            pen.line(Role::PointPath, end, knee);
        }
        let at = pen.view.to_screen(knee);
        pen.circle_px(Role::Joint, at, 4.5, false);
    }
}

/// The circle in the drawing around what the detail shows.
pub(crate) fn circle(pen: &mut Pen, found: &Detail) {
    let centre = pen.view.to_screen(found.centre());
    let radius_px = (found.radius * pen.view.scale()).max(CIRCLE_PX);
    pen.circle_px(Role::Governing, centre, radius_px, false);
}

/// Its letter, beside the circle where nothing else is written.
pub(crate) fn letter(pen: &mut Pen, placer: &mut Placer, found: &Detail) {
    let centre = pen.view.to_screen(found.centre());
    let off = 0.7 * (found.radius * pen.view.scale()).max(CIRCLE_PX);
    let at = ScreenPoint {
        x_px: centre.x_px + off,
        y_px: centre.y_px + off,
    };
    placer.label(pen, Role::Governing, at, found.letter());
}
