//! What stands around the charts: names at the ends of lines, the axis of travel, the end of the way.
use super::axis::{Across, PathAxis};
use gearswing_report::page::curves as words;
use gearswing_solver::numeric::sort_by;

use crate::scene::pen::{SMALL_TEXT_PX, fitted_text, text_width_px};
use crate::scene::{Anchor, Pen, Role, ScreenPoint};
use crate::state::Good;

/// Height of a line of a name (CSS px).
const LINE_PX: f64 = 13.0;
/// Room between two names (CSS px).
const BETWEEN_PX: f64 = 2.0;
/// Most lines of a name.
const MOST_LINES: usize = 3;

/// Room for the letters of names right of the charts (CSS px).
fn names_px(width_px: f64, right: f64) -> f64 {
    width_px - right - 12.0
}

/// A name in lines of a width; what is left over is cut with an ellipsis.
fn lines(name: &str, room_px: f64) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    for word in name.split_whitespace() {
        let full = found.len() == MOST_LINES;
        match found.last_mut() {
            Some(line)
                if full || text_width_px(&format!("{line} {word}"), SMALL_TEXT_PX) <= room_px =>
            {
                line.push(' ');
                line.push_str(word);
            }
            _ => found.push(word.to_owned()),
        }
    }
    for line in &mut found {
        *line = fitted_text(line, SMALL_TEXT_PX, room_px);
    }
    found
}

/// Height of names under each other (CSS px).
pub(super) fn height_of_names<'n>(
    names: impl Iterator<Item = &'n str>,
    width_px: f64,
    right: f64,
) -> f64 {
    let room_px = names_px(width_px, right);
    names
        .map(|name| LINE_PX * lines(name, room_px).len() as f64 + BETWEEN_PX)
        .sum()
}

/// One name: its lines, and where its top is.
struct Name {
    lines: Vec<String>,
    role: Role,
    /// Height of the end of its curve.
    end_px: f64,
    top_px: f64,
}

impl Name {
    fn height_px(&self) -> f64 {
        LINE_PX * self.lines.len() as f64 + BETWEEN_PX
    }
}

/// Names at the ends of the lines, moved apart; those that find no room are left out.
pub(super) fn end_names(
    pen: &mut Pen,
    mut names: Vec<(f64, String, Role)>,
    right: f64,
    top: f64,
    height: f64,
) {
    sort_by(&mut names, |a, b| a.0.total_cmp(&b.0));
    names.dedup_by(|b, a| a.1 == b.1 && (a.0 - b.0).abs() < LINE_PX);
    let room_px = names_px(pen.view.size_px().0, right);
    let (top, bottom) = (top - 7.0, top + height + 7.0);
    let mut left_px = bottom - top;
    let mut placed: Vec<Name> = Vec::new();
    let mut floor = top;
    for (end_px, name, role) in names {
        let mut name = Name {
            lines: lines(&name, room_px),
            role,
            end_px,
            top_px: 0.0,
        };
        left_px -= name.height_px();
        if left_px < 0.0 {
            break;
        }
        name.top_px = (end_px - 0.5 * LINE_PX).max(floor);
        floor = name.top_px + name.height_px();
        placed.push(name);
    }
    let mut ceiling = bottom;
    for name in placed.iter_mut().rev() {
        name.top_px = name.top_px.min(ceiling - name.height_px());
        ceiling = name.top_px;
    }
    for name in placed {
        let at = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
        let first = name.top_px + 0.5 * LINE_PX;
        let end = name.end_px.clamp(top, bottom);
        pen.line_px(name.role, at(right, end), at(right + 8.0, first));
        for (row, line) in name.lines.into_iter().enumerate() {
            let place = at(right + 11.0, first + LINE_PX * row as f64);
            pen.text(Role::AxisText, place, line, Anchor::Start);
        }
    }
}

/// An upright line through charts, given by their upper and lower edges: not over what stands between.
pub(super) fn upright(pen: &mut Pen, role: Role, x_px: f64, spans: &[(f64, f64)]) {
    for (top, bottom) in spans {
        let at = |y_px: f64| ScreenPoint { x_px, y_px };
        pen.line_px(role, at(*top), at(*bottom));
    }
}

/// Ticks of travel under the last chart, and the phases before the swing.
pub(super) fn path_axis(pen: &mut Pen, good: &Good, axis: &PathAxis, spans: &[(f64, f64)]) {
    let y_px = spans.last().map_or(0.0, |span| span.1);
    let at = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
    let (left, right) = (axis.left_px(), axis.right_px());
    pen.line_px(Role::Axis, at(left, y_px), at(right, y_px));
    let wide = right - left > 260.0;
    let every = if wide { 1 } else { 5 };
    for i in (0..=10).step_by(every) {
        let travel = f64::from(i) / 10.0;
        let x_px = axis.x_px(
            good.linkage()
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
        words::travel_axis(wide).to_owned(),
        Anchor::End,
    );
    let start = good.range().0;
    if start < 0.0 {
        upright(pen, Role::GridMajor, axis.x_px(0.0), spans);
        pen.text(
            Role::AxisText,
            at(left, y_px + 30.0),
            words::BEFORE_SWING.to_owned(),
            Anchor::Start,
        );
    }
}

/// Where the leg stops: the curves end there and say so.
pub(super) fn ends(pen: &mut Pen, good: &Good, axis: &PathAxis, spans: &[(f64, f64)]) {
    if good.result.jams.is_empty() {
        return;
    }
    let x_px = axis.x_px(good.range().1);
    upright(pen, Role::CurveEnd, x_px, spans);
    let text = words::LEG_STOPS.to_owned();
    let anchor = if x_px > 0.6 * axis.right_px() {
        Anchor::End
    } else {
        Anchor::Start
    };
    let off = if anchor == Anchor::End { -6.0 } else { 6.0 };
    let place = ScreenPoint {
        x_px: x_px + off,
        y_px: spans.first().map_or(0.0, |span| span.0) + 10.0,
    };
    pen.text(Role::Contact, place, text, anchor);
}
