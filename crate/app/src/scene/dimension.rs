//! The tightest place as a dimension line, and contacts.
use gearswing_gear::model::{Leg, Point};
use gearswing_report::page::drawing::dimension_words;
use gearswing_solver::clearance::PlacedOutline;
use gearswing_solver::result::{Tightest, TireState};
use gearswing_units::UnitChoice;

use super::hatch::{behind, hatch_common};
use super::labels::Placer;
use super::leg::outline_of;
use super::ring::ring;
use super::{NowClearance, Pen, Role, ScreenPoint};

/// A dimension shorter than this has its arrows outside (CSS px).
const SHORT_PX: f64 = 26.0;
/// Length of an arrow's tail that stands outside (CSS px).
const TAIL_PX: f64 = 20.0;

/// Hatches what the touching parts share with the structure.
pub(crate) fn contacts(
    pen: &mut Pen,
    leg: &Leg,
    outlines: &[PlacedOutline],
    clearances: &[NowClearance],
) {
    for touching in clearances.iter().filter(|c| c.at.tightest.clearance < 0.0) {
        let Some(outline) = outline_of(outlines, touching.at.part, touching.at.tire) else {
            continue;
        };
        let Some(obstacle) = leg.well.get(touching.at.obstacle) else {
            continue;
        };
        let part = ring(outline);
        let points = obstacle.shape.points();
        if obstacle.shape.is_closed() {
            hatch_common(pen, Role::ContactHatch, &part, points);
            pen.path(Role::Contact, points, true);
        } else {
            // as deep as the contact goes, and a little more
            let depth = 1.2 * -touching.at.tightest.clearance;
            for ground in behind(points, depth) {
                hatch_common(pen, Role::ContactHatch, &part, &ground);
            }
            pen.path(Role::Contact, points, false);
        }
    }
}

/// The dimension at the place with the least to spare.
pub(crate) fn dimension(pen: &mut Pen, tightest: &Tightest) {
    let ends = [tightest.on_part, tightest.on_obstacle];
    between(pen, ends, tightest.clearance < 0.0);
}

/// A dimension between two points, as of something `bad` or not.
pub(crate) fn between(pen: &mut Pen, [a, b]: [Point; 2], bad: bool) {
    let a = pen.view.to_screen(a);
    let b = pen.view.to_screen(b);
    let length = (b.x_px - a.x_px).hypot(b.y_px - a.y_px);
    if length < 1e-6 {
        pen.circle_px(Role::Dimension, a, 3.0, false);
        return;
    }
    let along = |from: ScreenPoint, by: f64| ScreenPoint {
        x_px: from.x_px + (b.x_px - a.x_px) / length * by,
        y_px: from.y_px + (b.y_px - a.y_px) / length * by,
    };
    let role = if bad { Role::Contact } else { Role::Dimension };
    if length >= SHORT_PX {
        pen.line_px(role, a, b);
        pen.arrow_px(role, a, b);
        pen.arrow_px(role, b, a);
    } else {
        pen.line_px(role, a, b);
        let (before, after) = (along(a, -TAIL_PX), along(b, TAIL_PX));
        pen.line_px(role, before, a);
        pen.line_px(role, after, b);
        pen.arrow_px(role, before, a);
        pen.arrow_px(role, after, b);
    }
}

/// The number of the dimension.
pub(crate) fn dimension_text(
    pen: &mut Pen,
    placer: &mut Placer,
    tightest: &Tightest,
    tire: Option<TireState>,
    units: UnitChoice,
) {
    let text = dimension_words(tightest.clearance, tire, units);
    let a = pen.view.to_screen(tightest.on_part);
    let b = pen.view.to_screen(tightest.on_obstacle);
    placer.label(pen, Role::DimensionText, middle(a, b), &text);
}

fn middle(a: ScreenPoint, b: ScreenPoint) -> ScreenPoint {
    ScreenPoint {
        x_px: (a.x_px + b.x_px) / 2.0,
        y_px: (a.y_px + b.y_px) / 2.0,
    }
}
