//! Detail A: the worst place of the whole swing at a larger scale, wherever the cursor stands.
use gearswing_gear::model::Point;
use gearswing_solver::result::Tightest;

use super::drawing::own_leg;
use super::{Anchor, Pen, Role, Scene, ScreenPoint, Viewport, dimension, leg, now, paper_of, well};
use crate::state::{Good, State};

/// Least of the airplane that is seen around the place (m): 0.4 in.
const LEAST_RADIUS: f64 = 0.010_16;
/// Of the gap or overlap so many times are seen (ratio).
const GAPS: f64 = 2.0;
/// Letter of the detail.
const LETTER: &str = "A";
/// Least radius of its circle in the drawing, and how far its letter stands off (CSS px).
const CIRCLE_PX: f64 = 11.0;
const LETTER_OFF_PX: f64 = 10.0;

/// What the detail shows.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Detail {
    /// The tightest gap, or the deepest overlap.
    pub(crate) tightest: Tightest,
    /// Middle of it (m).
    centre: Point,
    /// Seen around it (m).
    radius: f64,
}

/// The place that the detail of a leg shows: that of the first answer; `None` where there is nothing to check.
pub(crate) fn detail_of(good: &Good) -> Option<Detail> {
    let clearance = &good.result.clearance;
    let governing = || Some(clearance.pairs.get(clearance.governing?)?.tightest);
    let own = own_leg(good).map(|(tightest, _)| tightest);
    let tightest = own.or_else(governing)?;
    let gap = tightest.on_obstacle - tightest.on_part;
    Some(Detail {
        tightest,
        centre: tightest.on_part + gap * 0.5,
        radius: (GAPS * gap.norm()).max(LEAST_RADIUS),
    })
}

/// How many times larger the detail is than the drawing (ratio).
pub(crate) fn magnified(state: &State, detail: &Detail) -> f64 {
    viewport(state, detail).scale() / paper_of(state).viewport.scale()
}

fn viewport(state: &State, detail: &Detail) -> Viewport {
    let size_px = state.session.detail_px;
    Viewport::new(
        detail.centre,
        0.5 * size_px / detail.radius,
        (size_px, size_px),
    )
}

/// The detail of the selected leg; empty where there is none.
#[must_use]
pub fn detail(state: &State) -> Scene {
    let size_px = state.session.detail_px;
    let mut scene = Scene {
        width_px: size_px,
        height_px: size_px,
        ..Scene::default()
    };
    let derived = state.derived.leg(state.session.leg);
    let Some(good) = derived.and_then(|leg| leg.good.as_ref()) else {
        return scene;
    };
    let found = detail_of(good);
    let here = found.and_then(|found| now(good, found.tightest.place.progress));
    let (Some(found), Some(here)) = (found, here) else {
        return scene;
    };
    let mut pen = Pen::new(viewport(state, &found));
    well::well(&mut pen, &good.leg);
    pen.faded = derived.is_some_and(|leg| leg.faded());
    let outlines = leg::outlines(&good.leg, &here.pose);
    leg::standing(&mut pen, &outlines);
    if !pen.faded {
        dimension::contacts(&mut pen, &good.leg, &outlines, &here.clearances);
        dimension::dimension(&mut pen, &found.tightest);
    }
    scene.marks = pen.marks;
    scene
}

/// The circle in the drawing, with its letter, around what the detail shows.
pub(crate) fn circle(pen: &mut Pen, good: &Good) {
    let Some(found) = detail_of(good) else {
        return;
    };
    let centre = pen.view.to_screen(found.centre);
    let radius_px = (found.radius * pen.view.scale()).max(CIRCLE_PX);
    pen.circle_px(Role::Governing, centre, radius_px, false);
    let off = radius_px + LETTER_OFF_PX;
    let at = ScreenPoint {
        x_px: centre.x_px + 0.8 * off,
        y_px: centre.y_px + 0.7 * off,
    };
    let letter = LETTER.to_owned();
    pen.text(Role::Governing, at, letter, Anchor::Middle);
}
