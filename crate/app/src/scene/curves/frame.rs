//! What stands around the charts: names at the ends of lines, the axis of travel, the end of the way.
use super::axis::{Across, PathAxis};
use gearswing_solver::numeric::sort_short;

use crate::scene::pen::{SMALL_TEXT_PX, fitted_text};
use crate::scene::{Anchor, Pen, Role, ScreenPoint};
use crate::state::Good;

/// Least distance of names at the ends of lines [CSS px].
const NAME_GAP_PX: f64 = 15.0;

/// Names at the ends of the lines, moved apart; those that find no room are left out.
pub(super) fn end_names(
    pen: &mut Pen,
    mut names: Vec<(f64, String, Role)>,
    right: f64,
    top: f64,
    height: f64,
) {
    sort_short(&mut names, |a, b| a.0.total_cmp(&b.0));
    names.dedup_by(|b, a| a.1 == b.1 && (a.0 - b.0).abs() < NAME_GAP_PX);
    let most = ((height / NAME_GAP_PX).floor() as usize + 1).max(1);
    names.truncate(most);
    let (top, bottom) = (top - 2.0, top + height + 2.0);
    let mut places: Vec<f64> = names.iter().map(|(y, ..)| y.clamp(top, bottom)).collect();
    let mut floor = top;
    for place in &mut places {
        *place = place.max(floor);
        floor = *place + NAME_GAP_PX;
    }
    let mut ceiling = bottom;
    for place in places.iter_mut().rev() {
        *place = place.min(ceiling);
        ceiling = *place - NAME_GAP_PX;
    }
    let width_px = pen.view.size_px().0 - right - 12.0;
    for ((y, name, role), place) in names.into_iter().zip(places) {
        let at = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
        pen.line_px(
            role,
            at(right, y.clamp(top, bottom)),
            at(right + 8.0, place),
        );
        let text = fitted_text(&name, SMALL_TEXT_PX, width_px);
        pen.text(Role::AxisText, at(right + 11.0, place), text, Anchor::Start);
    }
}

/// Ticks of travel under the last chart, and the phases before the swing.
pub(super) fn path_axis(pen: &mut Pen, good: &Good, axis: &PathAxis, y_px: f64, top_px: f64) {
    let at = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
    let (left, right) = (axis.left_px(), axis.right_px());
    pen.line_px(Role::Axis, at(left, y_px), at(right, y_px));
    let wide = right - left > 260.0;
    let every = if wide { 1 } else { 5 };
    for i in (0..=10).step_by(every) {
        let travel = f64::from(i) / 10.0;
        let x_px = axis.x_px(
            good.linkage
                .progress_at_travel(travel)
                .clamp(good.range().0, 1.0),
        );
        pen.line_px(Role::Axis, at(x_px, y_px), at(x_px, y_px + 5.0));
        if i % 2 == 0 || i % 5 == 0 && !wide {
            pen.text(
                Role::AxisText,
                at(x_px, y_px + 14.0),
                format!("{}", i * 10),
                Anchor::Middle,
            );
        }
    }
    pen.text(
        Role::AxisText,
        at(right, y_px + 30.0),
        if wide {
            "travel, % (0 down, 100 up)"
        } else {
            "travel, %"
        }
        .to_owned(),
        Anchor::End,
    );
    let start = good.range().0;
    if start < 0.0 {
        let x_px = axis.x_px(0.0);
        pen.line_px(Role::GridMajor, at(x_px, top_px), at(x_px, y_px));
        pen.text(
            Role::AxisText,
            at(left, y_px + 30.0),
            "before the swing".to_owned(),
            Anchor::Start,
        );
    }
}

/// Where the leg stops: the curves end there and say so.
pub(super) fn ends(pen: &mut Pen, good: &Good, axis: &PathAxis, bottom: f64, top_px: f64) {
    if good.result.jams.is_empty() {
        return;
    }
    let x_px = axis.x_px(good.range().1);
    let at = |y_px: f64| ScreenPoint { x_px, y_px };
    pen.line_px(Role::CurveEnd, at(top_px), at(bottom));
    let text = "the leg stops here".to_owned();
    let anchor = if x_px > 0.6 * axis.right_px() {
        Anchor::End
    } else {
        Anchor::Start
    };
    let off = if anchor == Anchor::End { -6.0 } else { 6.0 };
    let place = ScreenPoint {
        x_px: x_px + off,
        y_px: top_px + 10.0,
    };
    pen.text(Role::Contact, place, text, anchor);
}
