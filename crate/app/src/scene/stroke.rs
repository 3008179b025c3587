//! How far the actuator reaches: where an end of it that is in hand can be, for the leg to come down and up.
use gearswing_gear::field::Field;
use gearswing_gear::model::{AttachTo, Leg, Point, Vector};
use gearswing_report::page::stroke::{Bound, bound_words};
use gearswing_solver::numeric::sort_by;

use super::labels::Placer;
use super::{Carrier, Pen, PosedLeg, Role, ScreenPoint, stance_of};
use crate::fields;
use crate::state::{Good, State};

/// Length of half an arc as a share of the canvas' shorter side (ratio).
const HALF_SHARE: f64 = 0.2;
/// Places of the way at which what is left of the stroke is looked up: between two of them the length changes by less
/// than is told.
const PLACES: usize = 181;
/// Least share of an arrow that goes along an arc, for a step along it (ratio).
const LEAST_ALONG: f64 = 0.2;
/// Pieces that half of an arc is drawn in.
const PIECES: usize = 16;

/// An end of the actuator that is in hand, and the other end as the part that carries the first one sees it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Stroke<'a> {
    leg: &'a Leg,
    /// What was worked out for it.
    good: &'a Good,
    /// The part that the actuator is attached to.
    part: Carrier,
    /// The part that carries the end in hand.
    carrier: Carrier,
    /// The end in hand, given at gear down (m).
    held: Point,
    /// The other end with the leg down, and up if it comes so far (m).
    others: [Option<Point>; 2],
    /// Retracted and extended, pin to pin (m).
    lengths: [f64; 2],
    /// What a turn of the rod end makes it longer (m).
    pub(crate) pitch: Option<f64>,
}

/// What is left of the stroke over the whole way, the least (m); negative = it does not reach.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Left {
    /// At the extended end.
    pub(crate) extended: f64,
    /// At the retracted end.
    pub(crate) retracted: f64,
}

/// Places at which it is just extended or just retracted, with the leg down or up.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Arc {
    centre: Point,
    radius: f64,
    pub(crate) bound: Bound,
}

/// The place of a circle that is nearest to a point; `None` in its center.
fn nearest_on(centre: Point, radius: f64, to: Point) -> Option<Point> {
    Some(centre + (to - centre).try_normalize(0.0)? * radius)
}

/// An arm turned by an angle (rad), positive from x to y.
fn turned(arm: Vector, angle: f64) -> Vector {
    let (sin, cos) = angle.sin_cos();
    Vector::new(arm.x * cos - arm.y * sin, arm.x * sin + arm.y * cos)
}

/// The stroke for the point that is selected; `None` where it is no end of the actuator.
pub(crate) fn stroke(state: &State) -> Option<Stroke<'_>> {
    let path = fields::path(fields::point_of(state.session.selection.as_deref()?)?)?;
    let leg = state.gear().legs.get(state.session.leg)?;
    if path.leg != state.session.leg {
        return None;
    }
    let good = state.derived.good(state.session.leg)?;
    if !moves_as(good, leg) {
        return None;
    }
    let actuator = &leg.actuator;
    let part = match actuator.attach_to {
        AttachTo::Leg => Carrier::Leg,
        AttachTo::UpperLink => Carrier::UpperLink,
        AttachTo::LowerLink => Carrier::LowerLink,
    };
    let (carrier, held) = match path.field {
        Field::ActuatorMount => (Carrier::Airframe, actuator.mount),
        Field::ActuatorAttach => (part, actuator.attach),
        _ => return None,
    };
    let mut stroke = Stroke {
        leg,
        good,
        part,
        carrier,
        held,
        others: [None; 2],
        lengths: [actuator.shortest, actuator.longest],
        pitch: actuator.rod_end_pitch,
    };
    stroke.others = [good.range().0, 1.0].map(|progress| stroke.other(progress));
    stroke.others[0].map(|_| stroke)
}

/// Whether a leg moves as the one that was worked out last: all but its actuator is the same.
fn moves_as(good: &Good, leg: &Leg) -> bool {
    good.leg.trunnion == leg.trunnion
        && good.leg.swing_up == leg.swing_up
        && good.leg.brace == leg.brace
        && good.leg.strut == leg.strut
}

impl Stroke<'_> {
    /// The other end at a place of the travel (m); `None` where the leg does not come.
    fn other(&self, progress: f64) -> Option<Point> {
        let pose = self.good.linkage().pose(progress).ok()?;
        let stance = PosedLeg::new(self.leg, Some(pose), self.good.range().0);
        let actuator = &self.leg.actuator;
        Some(if self.carrier == Carrier::Airframe {
            stance.place(self.part, actuator.attach)
        } else {
            stance.carried(self.part, actuator.mount)
        })
    }

    /// All arcs: with the leg down and up, extended and retracted.
    pub(crate) fn arcs(&self) -> impl Iterator<Item = Arc> {
        let [retracted, extended] = self.lengths;
        let others = self.others.into_iter().zip([false, true]);
        others.flat_map(move |(other, is_up)| {
            let both = [(retracted, false), (extended, true)];
            both.into_iter().filter_map(move |(radius, is_extended)| {
                Some(Arc {
                    centre: other?,
                    radius,
                    bound: Bound { is_extended, is_up },
                })
            })
        })
    }

    /// What is left of the stroke where the end in hand is, over the whole way.
    pub(crate) fn left(&self) -> Left {
        let start = self.good.range().0;
        let way = (0..PLACES).filter_map(|at| {
            let share = at as f64 / (PLACES - 1) as f64;
            self.other(start + share * (1.0 - start))
        });
        let lengths = way.map(|other| (self.held - other).norm());
        let (least, most) = lengths.fold((f64::INFINITY, 0.0_f64), |(least, most), length| {
            (least.min(length), most.max(length))
        });
        let [shortest, longest] = self.lengths;
        Left {
            extended: longest - most,
            retracted: least - shortest,
        }
    }

    /// The place nearest to a point on an arc within reach of it.
    pub(crate) fn caught(&self, target: Point, reach: f64) -> Option<(Point, Bound)> {
        let near = self.arcs().filter_map(|arc| {
            let on = nearest_on(arc.centre, arc.radius, target)?;
            Some(((on - target).norm(), on, arc.bound))
        });
        let nearest = near.min_by(|(a, ..), (b, ..)| a.total_cmp(b))?;
        (nearest.0 <= reach).then_some((nearest.1, nearest.2))
    }

    /// The place that is a step (m) along that arc from the end in hand, toward an arrow; `None` where the arc goes
    /// neither way of it.
    pub(crate) fn step_along(&self, toward: Vector, step: f64) -> Option<Point> {
        let centre = self.others[0]?;
        let out = self.held - centre;
        let radius = out.norm();
        let along = Vector::new(-out.y, out.x).dot(&toward) / radius;
        // nearly square to the arrow: a press would go a way that nobody meant
        if along.abs() < LEAST_ALONG {
            return None;
        }
        Some(centre + turned(out, along.signum() * step / radius))
    }

    /// The place nearest to a point at which the actuator is as long with the leg down as it is now.
    pub(crate) fn along(&self, target: Point) -> Option<Point> {
        let centre = self.others[0]?;
        nearest_on(centre, (self.held - centre).norm(), target)
    }
}

/// Draws the arcs, each around the end in hand, and names so many of them, the nearest first.
pub(crate) fn arcs(pen: &mut Pen, placer: &mut Placer, state: &State, named: usize) {
    let Some(stroke) = stroke(state) else { return };
    let stance = stance_of(state);
    let (width, height) = pen.view.size_px();
    let long = HALF_SHARE * width.min(height) / pen.view.scale();
    let mut arcs: Vec<Arc> = stroke.arcs().collect();
    let far = |arc: &Arc| ((stroke.held - arc.centre).norm() - arc.radius).abs();
    sort_by(&mut arcs, |a, b| far(a).total_cmp(&far(b)));
    for (at, arc) in arcs.into_iter().enumerate() {
        let out = stroke.held - arc.centre;
        let (Some(out), true) = (out.try_normalize(0.0), arc.radius > 0.0) else {
            continue;
        };
        let half = (long / arc.radius).min(std::f64::consts::PI);
        let point = |at: usize| {
            let angle = half * (at as f64 / PIECES as f64 - 1.0);
            stance.place(stroke.carrier, arc.centre + turned(out, angle) * arc.radius)
        };
        let points: Vec<Point> = (0..=2 * PIECES).map(point).collect();
        pen.path(Role::Reach, &points, false);
        if let Some(end) = end_in_sight(pen, &points).filter(|_| at < named) {
            placer.label(pen, Role::Label, end, bound_words(arc.bound));
        }
    }
}

/// An end of a line that is on the canvas, the upper one of two.
fn end_in_sight(pen: &Pen, points: &[Point]) -> Option<ScreenPoint> {
    let ends = [points.first()?, points.last()?];
    let ends = ends.map(|end| pen.view.to_screen(*end));
    let seen = ends.into_iter().filter(|end| pen.view.shows(*end));
    seen.min_by(|a, b| a.y_px.total_cmp(&b.y_px))
}
