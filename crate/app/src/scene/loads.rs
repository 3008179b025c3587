//! Forces at the pins at the place shown, as arrows. All of them are the result's own.
use gearswing_gear::model::{Brace, Point, Vector};
use gearswing_report::page::loads as words;
use gearswing_report::page::names::short;
use gearswing_solver::kinematics::Pose;
use gearswing_solver::numeric::sort_by;
use gearswing_solver::result::{Station, StationForce};
use gearswing_units::UnitChoice;

use super::labels::Placer;
use super::scale::{force_bar, force_bar_text};
use super::{Now, Pen, Role, ScreenPoint};
use crate::state::Good;

/// Length of the arrow of a force that few places of the path exceed, as a share of the canvas'
/// shorter side, and its bounds (CSS px).
const LONG_SHARE: f64 = 0.2;
const LONG_PX: (f64, f64) = (50.0, 110.0);
/// Share of the places whose greatest force is drawn in full (ratio): near a dead point forces grow
/// beyond all bounds.
const IN_FULL: f64 = 0.95;
/// An arrow is no longer than so many times the long one; longer ones are broken.
const LONGEST: f64 = 1.5;
/// A shorter arrow is not drawn, its number is (CSS px).
const SHORTEST_PX: f64 = 5.0;
/// Head of an arrow: length and half of its width (CSS px).
const HEAD_PX: (f64, f64) = (12.0, 4.0);

/// The force on the moving part at a pin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Load {
    /// Short name of the pin.
    pub(crate) name: &'static str,
    /// Pin (m).
    pub(crate) at: Point,
    /// Force (N): of the airframe at P, B0 and A0, of the brace at B1, of the actuator's thrust at
    /// A1.
    pub(crate) force: Vector,
}

/// The forces of a place, holding the leg still without friction.
pub(crate) fn loads(good: &Good, pose: &Pose, force: &StationForce) -> Vec<Load> {
    let leg = &good.leg;
    let reactions = &force.reactions;
    let mut found = Vec::with_capacity(5);
    let mut add = |name, at: Option<Point>, force: Option<Vector>| {
        if let (Some(at), Some(force)) = (at, force) {
            found.push(Load { name, at, force });
        }
    };
    let pivot = match &leg.brace {
        Brace::None => None,
        Brace::Folding(brace) => Some(brace.airframe_pivot),
        Brace::Sliding(brace) => Some(brace.airframe_pivot),
    };
    add(
        short::TRUNNION,
        Some(leg.trunnion),
        Some(reactions.trunnion),
    );
    add(short::BRACE_PIVOT, pivot, reactions.brace_pivot);
    add(
        short::BRACE_ATTACH,
        pose.brace_attach,
        reactions.brace_attach,
    );
    add(
        short::ACTUATOR_MOUNT,
        Some(leg.actuator.mount),
        Some(reactions.mount),
    );
    let along = (pose.actuator_attach - leg.actuator.mount).try_normalize(0.0);
    add(
        short::ACTUATOR_ATTACH,
        Some(pose.actuator_attach),
        along.map(|along| along * force.holding),
    );
    found
}

/// Scale of the arrows of a leg (N/px), the same over the whole path; none without any force.
pub(crate) fn scale(good: &Good, size_px: (f64, f64)) -> Option<f64> {
    let greatest = |station: &Station| {
        let force = station.force.as_ref()?;
        let reactions = &force.reactions;
        [
            Some(reactions.trunnion),
            reactions.brace_pivot,
            reactions.brace_attach,
            Some(reactions.mount),
        ]
        .into_iter()
        .flatten()
        .map(|force| force.norm())
        .reduce(f64::max)
    };
    let mut forces: Vec<f64> = good.result.stations.iter().filter_map(greatest).collect();
    sort_by(&mut forces, f64::total_cmp);
    let place = IN_FULL * forces.len().saturating_sub(1) as f64;
    let long = forces.get(place.round() as usize)?;
    let scale = long / long_px(size_px);
    (scale.is_finite() && scale > 0.0).then_some(scale)
}

fn long_px(size_px: (f64, f64)) -> f64 {
    (LONG_SHARE * size_px.0.min(size_px.1)).clamp(LONG_PX.0, LONG_PX.1)
}

/// Arrows with their tails at the pins, and what they measure.
pub(crate) struct Arrows {
    loads: Vec<(Load, ScreenPoint)>,
}

/// Draws the arrows and the scale they have, or that of one pin alone, which has its number.
pub(crate) fn arrows(
    pen: &mut Pen,
    good: &Good,
    here: &Now,
    only: Option<&str>,
    units: UnitChoice,
) -> Arrows {
    let size_px = pen.view.size_px();
    let found = here.loads.as_ref().zip(scale(good, size_px));
    let Some((force, scale)) = found else {
        if only.is_none() {
            force_bar_text(pen, words::NONE_HERE);
        }
        return Arrows { loads: Vec::new() };
    };
    if only.is_none() {
        force_bar(pen, units, scale, HEAD_PX, words::HELD);
    }
    let longest = LONGEST * long_px(size_px);
    let loads = loads(good, &here.pose, force)
        .into_iter()
        .filter(|load| only.is_none_or(|name| name == load.name))
        .map(|load| match only {
            None => load,
            // alone it is what the airframe has to carry
            Some(_) => Load {
                name: words::ON_MOUNT,
                force: -load.force,
                ..load
            },
        })
        .map(|load| {
            let tip = arrow(pen, load, scale, longest);
            (load, tip)
        })
        .collect();
    Arrows { loads }
}

/// One arrow; gives its tip.
fn arrow(pen: &mut Pen, load: Load, scale: f64, longest: f64) -> ScreenPoint {
    let from = pen.view.to_screen(load.at);
    let newtons = load.force.norm();
    let full = newtons / scale;
    // written so that a force that is no number is not drawn
    if !(full >= SHORTEST_PX && full.is_finite()) {
        return from;
    }
    let length = full.min(longest);
    let (ux, uy) = (load.force.x / newtons, -load.force.y / newtons);
    let along = |by: f64, aside: f64| ScreenPoint {
        x_px: from.x_px + ux * by - uy * aside,
        y_px: from.y_px + uy * by + ux * aside,
    };
    let tip = along(length, 0.0);
    let head = (HEAD_PX.0.min(length), HEAD_PX.1);
    let neck = length - head.0;
    if full > longest {
        // the drafting sign of a length cut short
        let middle = neck / 2.0;
        pen.line_px(Role::Load, from, along(middle - 3.0, 0.0));
        pen.line_px(Role::Load, along(middle + 3.0, 0.0), along(neck, 0.0));
        for by in [middle - 3.0, middle + 3.0] {
            pen.line_px(Role::Load, along(by - 3.0, -6.0), along(by + 3.0, 6.0));
        }
    } else if neck > 0.0 {
        pen.line_px(Role::Load, from, along(neck, 0.0));
    }
    pen.head_px(Role::Load, from, tip, head);
    tip
}

impl Arrows {
    /// The numbers, beside the tips.
    pub(crate) fn texts(&self, pen: &mut Pen, placer: &mut Placer, units: UnitChoice) {
        for (load, tip) in &self.loads {
            let text = words::load_words(load.name, load.force, units);
            placer.label(pen, Role::Load, *tip, &text);
        }
    }
}
