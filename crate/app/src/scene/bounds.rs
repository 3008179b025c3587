//! What a leg and its well take up, for fitting the drawing.
use gearswing_gear::model::{Leg, Point};
use gearswing_solver::result::Question;

use super::drawing::own_leg_governs;
use super::{Paper, PosedLeg, Viewport, now};
use crate::state::{Good, State};

/// A box that grows.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Bounds {
    pub(crate) low: Point,
    pub(crate) high: Point,
}

impl Bounds {
    fn around(p: Point) -> Self {
        Self { low: p, high: p }
    }

    fn take(&mut self, p: Point) {
        if p.x.is_finite() && p.y.is_finite() {
            self.low = Point::new(self.low.x.min(p.x), self.low.y.min(p.y));
            self.high = Point::new(self.high.x.max(p.x), self.high.y.max(p.y));
        }
    }

    fn take_circle(&mut self, p: Point, radius: f64) {
        self.take(Point::new(p.x - radius, p.y - radius));
        self.take(Point::new(p.x + radius, p.y + radius));
    }
}

/// Everything of a leg from down to up, and its well.
pub(crate) fn bounds(leg: &Leg, good: Option<&Good>) -> Bounds {
    let mut bounds = Bounds::around(leg.trunnion);
    let size = gearswing_solver::tires::grown_size(&leg.wheel.tire);
    let radius = 0.5 * size.diameter.max(leg.wheel.tire.diameter).clamp(0.0, 5.0);
    bounds.take_circle(leg.strut.axle, radius);
    for p in leg.body.outline.iter().chain(&leg.strut.sliding_outline) {
        bounds.take(*p);
    }
    for p in leg.well.iter().flat_map(|o| o.shape.points()) {
        bounds.take(*p);
    }
    bounds.take(leg.actuator.mount);
    bounds.take(leg.actuator.attach);
    match &leg.brace {
        gearswing_gear::model::Brace::None => {}
        gearswing_gear::model::Brace::Folding(b) => {
            bounds.take(b.airframe_pivot);
            bounds.take(b.knee);
        }
        gearswing_gear::model::Brace::Sliding(b) => bounds.take(b.airframe_pivot),
    }
    for station in good
        .iter()
        .flat_map(|good| good.result.stations.iter().step_by(24))
    {
        bounds.take_circle(station.axle, radius);
        if let Some(knee) = station.knee {
            bounds.take(knee);
        }
    }
    if let Some(station) = good.and_then(|good| good.result.stations.last()) {
        bounds.take_circle(station.axle, radius);
    }
    bounds
}

/// The paper of the selected leg: as the person has moved it, or fitted.
pub(crate) fn paper_of(state: &State) -> Paper {
    let size = state.session.drawing_size_px;
    match state.session.papers.get(&state.session.leg) {
        Some(paper) if !paper.fitted || paper.viewport.size_px() == size => *paper,
        _ => fitted(state),
    }
}

/// The paper that shows all of the selected leg.
pub(crate) fn fitted(state: &State) -> Paper {
    let size = state.session.drawing_size_px;
    let viewport = match state.gear().legs.get(state.session.leg) {
        Some(leg) => {
            let bounds = bounds(leg, state.derived.good(state.session.leg));
            Viewport::fit(bounds.low, bounds.high, size)
        }
        None => Viewport::new(Point::new(0.0, 0.0), 200.0, size),
    };
    Paper {
        viewport,
        fitted: true,
    }
}

/// A gap is drawn so long where an answer's place is shown (CSS px).
const GAP_PX: f64 = 40.0;
/// So much at least is seen around it (m).
const LEAST_SEEN: f64 = 0.06;

/// The paper on which the place of an answer is seen: all of the selected leg, and close enough to
/// tell the tightest gap there where the answer speaks of one.
pub(crate) fn paper_at(state: &State, question: Question) -> Paper {
    let whole = fitted(state);
    let gap = (question == Question::Clears)
        .then(|| {
            let good = state.derived.good(state.session.leg)?;
            let here = now(good, state.session.progress)?;
            let own = own_leg_governs(good, here.pose.place.progress).map(|(at, _)| at);
            let near = own.or_else(|| Some(here.clearances.first()?.at.tightest))?;
            Some((near.on_part, near.on_obstacle))
        })
        .flatten();
    let Some((part, obstacle)) = gap else {
        return whole;
    };
    let middle = part + (obstacle - part) * 0.5;
    let long = (obstacle - part).norm();
    let viewport = whole.viewport.closer(middle, long, GAP_PX, LEAST_SEEN);
    if viewport.scale() > whole.viewport.scale() {
        Paper {
            viewport,
            fitted: false,
        }
    } else {
        whole
    }
}

/// The selected leg at its place of the path, as last worked out.
pub(crate) fn stance_of(state: &State) -> PosedLeg {
    let good = state.derived.good(state.session.leg);
    let leg = state.gear().legs.get(state.session.leg);
    match (good, leg) {
        (Some(good), _) => {
            PosedLeg::new(&good.leg, good.pose(state.session.progress), good.range().0)
        }
        (None, Some(leg)) => PosedLeg::new(leg, None, 0.0),
        (None, None) => PosedLeg::still(),
    }
}
