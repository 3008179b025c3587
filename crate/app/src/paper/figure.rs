//! The drawings on paper: of a leg at its worst place, at a round scale, and the detail beside it.
use gearswing_gear::model::Vector;
use gearswing_report::page::paper as words;
use gearswing_solver::result::Finding;

use super::svg::{Node, picture};
use crate::scene::{self, Paper, Viewport, bounds, worst};
use crate::state::{Circles, Hover, State};
use crate::view;

/// Pixels of a meter on paper: CSS has 96 in an inch.
const PX_PER_M: f64 = 96.0 / 0.0254;

/// Room for a drawing on Letter and A4 alike, margins taken off (CSS px): 178 by 150 mm.
const ROOM_PX: (f64, f64) = (672.0, 567.0);
/// Kept free around what is drawn, and below it for scale bar and arrow (CSS px).
const EDGE_PX: f64 = 14.0;
const FOOT_PX: f64 = 60.0;

/// Most height of a picture that has no scale (CSS px).
const PAGE_PX: f64 = 760.0;

/// Scales that a rule has, or can be reckoned with in the head.
const SCALES: [f64; 10] = [1.0, 2.0, 4.0, 5.0, 8.0, 10.0, 12.0, 15.0, 20.0, 50.0];

/// Side of the detail (CSS px).
const DETAIL_PX: f64 = 200.0;

/// A picture with what stands under it.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// As SVG.
    pub picture: Node,
    /// What stands under it.
    pub caption: String,
}

/// The state as it is looked at for the drawing of a leg on paper, at a place or at its worst one; and the scale.
fn looked_at(state: &State, leg: usize, progress: Option<f64>) -> Option<(State, f64)> {
    let mut on_paper = state.clone();
    let session = &mut on_paper.session;
    session.leg = leg;
    session.selection = None;
    session.snapped = None;
    session.hover = Hover::Off;
    session.circles = Circles::All;
    // what is compared with is told in words
    on_paper.before = Default::default();
    let session = &mut on_paper.session;
    session.drawing_size_px = ROOM_PX;
    session.curves_width_px = ROOM_PX.0;
    session.detail_px = DETAIL_PX;
    // what is of an earlier state is no record of this one
    let good = on_paper.derived.leg(leg)?.current()?;
    let place = worst(&good.result.findings).and_then(|finding: &Finding| finding.place);
    let worst = place.map_or(good.range().0, |place| place.progress);
    session.progress = progress.unwrap_or(worst);
    let all = bounds(&good.leg, Some(good));
    let size = all.high - all.low;
    let room = (
        (ROOM_PX.0 - 2.0 * EDGE_PX) / PX_PER_M,
        (ROOM_PX.1 - EDGE_PX - FOOT_PX) / PX_PER_M,
    );
    let fits = |scale: &f64| size.x <= scale * room.0 && size.y <= scale * room.1;
    let scale = SCALES.into_iter().find(fits).unwrap_or(100.0);
    let down = 0.5 * (FOOT_PX - EDGE_PX) / PX_PER_M * scale;
    let middle = all.low + size * 0.5 - Vector::new(0.0, down);
    let viewport = Viewport::new(middle, PX_PER_M / scale, ROOM_PX);
    let fitted = false;
    on_paper
        .session
        .papers
        .insert(leg, Paper { viewport, fitted });
    Some((on_paper, scale))
}

/// The pictures of a leg.
pub(super) struct Figures {
    /// At its worst place, at a round scale.
    pub(super) drawing: Figure,
    /// What its answers turn on, larger.
    pub(super) details: Vec<Figure>,
    /// Over travel.
    pub(super) curves: Figure,
}

/// Those of a leg; none where it cannot be worked out.
pub(super) fn figures(state: &State, leg: usize) -> Option<Figures> {
    let (on_paper, scale) = looked_at(state, leg, None)?;
    let drawing = of(
        &scene::drawing(&on_paper),
        words::drawing_caption(&state.leg_title(leg), scale),
    );
    let mut details = Vec::new();
    for question in scene::ANSWERS {
        let good = on_paper.derived.good(leg);
        let Some(detail) = good.and_then(|good| scene::detail_of(good, question)) else {
            continue;
        };
        let ratio = scene::magnified(&on_paper, &detail) / scale;
        let text = view::detail_text(&on_paper, &detail);
        details.push(of(
            &scene::drawn_detail(&on_paper, &detail),
            words::detail_caption(detail.letter(), ratio, &text.travel, &text.value),
        ));
    }
    Some(Figures {
        drawing,
        details,
        curves: on_a_page(&scene::curves(&on_paper)),
    })
}

/// The drawing of the leg in hand as a file of its own; `None` of a leg that cannot be worked out.
#[must_use]
pub fn drawing_svg(state: &State) -> Option<String> {
    alone(looked_at(state, state.session.leg, Some(state.session.progress))?.0)
}

/// The drawing of a leg at its worst place and at a round scale, as a file of its own; `None` of a leg that cannot
/// be worked out.
#[must_use]
pub fn leg_svg(state: &State, leg: usize) -> Option<String> {
    alone(looked_at(state, leg, None)?.0)
}

/// A drawing that stands without its details, and has no circles that lead to them.
fn alone(mut on_paper: State) -> Option<String> {
    on_paper.session.circles = Circles::None;
    Some(picture(&scene::drawing(&on_paper), 1.0).to_text())
}

/// A picture at its own size.
fn of(scene: &scene::Scene, caption: String) -> Figure {
    Figure {
        picture: picture(scene, 1.0),
        caption,
    }
}

/// One that has no scale, made smaller where it would not stand on a page with its heading.
fn on_a_page(scene: &scene::Scene) -> Figure {
    let share = (PAGE_PX / scene.height_px).min(1.0);
    Figure {
        picture: picture(scene, share),
        caption: String::new(),
    }
}
