//! Charts put on the canvas.
use gearswing_gear::model::Point;
use gearswing_units::UnitChoice;

use super::axis::{Across, PathAxis};
use super::charts::{Chart, Series, charts};
use super::frame;
use crate::scene::pen::{SMALL_TEXT_PX, fitted_text, text_width_px};
use crate::scene::scale::{axis_number, round_step};
use crate::scene::{Anchor, Mark, Pen, Role, Scene, ScreenPoint, Shape, Viewport};
use crate::state::State;

/// Room over a chart for its title (CSS px).
pub(super) const TITLE_PX: f64 = 44.0;
/// Room under the last chart for the axis (CSS px).
pub(super) const FOOT_PX: f64 = 42.0;

/// Name of what lies below zero clearance.
const CONTACT: &str = gearswing_report::page::curves::CONTACT;

/// The curves of the selected leg.
#[must_use]
pub fn curves(state: &State) -> Scene {
    let session = &state.session;
    let width_px = session.curves_width_px;
    let derived = state.derived.leg(session.leg);
    let Some(good) = derived.and_then(|leg| leg.good.as_ref()) else {
        return Scene {
            width_px,
            height_px: 0.0,
            ..Scene::default()
        };
    };
    let before = state.before.leg(state.gear(), session.leg);
    let mut charts = charts(good, before.map(|(_, _, before)| before));
    let axis = PathAxis::new(good.range().0, width_px);
    make_room(&mut charts, &axis, width_px);
    let height_px = charts.iter().map(|c| c.height_px + TITLE_PX).sum::<f64>() + FOOT_PX;
    // pixels throughout: the viewport is only the canvas
    let canvas = Viewport::new(Point::new(0.0, 0.0), 100.0, (width_px, height_px));
    let mut pen = Pen::new(canvas);
    pen.faded = derived.is_some_and(|leg| leg.faded());
    let spans = spans(&charts, 0.0);
    for (chart, (top, _)) in charts.iter().zip(&spans) {
        draw_chart(
            &mut pen,
            chart,
            &axis,
            *top,
            session.progress,
            session.units,
        );
    }
    frame::path_axis(&mut pen, good, &axis, &spans);
    frame::ends(&mut pen, good, &axis, &spans);
    let x_px = axis.x_px(session.progress.clamp(good.range().0, good.range().1));
    frame::upright(&mut pen, Role::Cursor, x_px, &spans);
    under_cursor((width_px, height_px), pen.marks)
}

/// Makes charts as high as the names at the ends of their curves ask for.
pub(super) fn make_room(charts: &mut [Chart], axis: &impl Across, width_px: f64) {
    for chart in charts {
        let levels = chart.levels.iter().map(|level| level.name.as_str());
        let series = chart.series.iter().map(|series| series.name.as_str());
        let contact = chart.contact_below_zero.then_some(CONTACT);
        let names = levels.chain(series).chain(contact);
        let names = frame::height_of_names(names, width_px, axis.right_px());
        chart.height_px = chart.height_px.max(names);
    }
}

/// Upper and lower edges of charts under each other.
pub(super) fn spans(charts: &[Chart], mut top: f64) -> Vec<(f64, f64)> {
    let mut found = Vec::with_capacity(charts.len());
    for chart in charts {
        found.push((top + TITLE_PX, top + TITLE_PX + chart.height_px));
        top += TITLE_PX + chart.height_px;
    }
    found
}

/// A scene with what the cursor moves on top.
pub(super) fn under_cursor((width_px, height_px): (f64, f64), mut marks: Vec<Mark>) -> Scene {
    let cursor: Vec<Mark> = marks
        .extract_if(.., |mark| mark.role == Role::Cursor)
        .collect();
    let still = marks.len();
    marks.extend(cursor);
    Scene {
        width_px,
        height_px,
        marks,
        breaks: vec![still],
        handles: Vec::new(),
    }
}

/// Value axis of one chart.
struct Scale {
    low: f64,
    high: f64,
    top: f64,
    height: f64,
}

impl Scale {
    fn y_px(&self, value: f64) -> f64 {
        self.top + self.height * (self.high - value) / (self.high - self.low)
    }
}

/// Least and largest of what a chart shows, with some air.
fn scale(chart: &Chart, top: f64) -> Scale {
    let points = chart.series.iter().flat_map(|s| s.pieces.iter().flatten());
    let (mut low, mut high) = (0.0_f64, 0.0_f64);
    for (_, value) in points {
        low = low.min(*value);
        high = high.max(*value);
    }
    for level in &chart.levels {
        if level.value.is_finite() {
            high = high.max(level.value);
        }
    }
    high = high.min(chart.ceiling);
    low = low.max(-chart.ceiling);
    let span = high - low;
    let (low, high) = if span > 0.0 {
        let under = if low < 0.0 { low - 0.08 * span } else { low };
        (under, high + 0.06 * span)
    } else {
        (low - 1.0, high + 1.0)
    };
    Scale {
        low,
        high,
        top,
        height: chart.height_px,
    }
}

pub(super) fn draw_chart(
    pen: &mut Pen,
    chart: &Chart,
    axis: &impl Across,
    top: f64,
    progress: f64,
    units: UnitChoice,
) {
    let scale = scale(chart, top);
    let (left, right) = (axis.left_px(), axis.right_px());
    let width_px = pen.view.size_px().0;
    let unit = chart.quantity.unit_label(units);
    let title = format!("{}, {unit}", chart.title);
    let at = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
    pen.text(
        Role::Label,
        at(4.0, top - 28.0),
        fitted_text(&title, crate::scene::pen::TEXT_PX, width_px - 8.0),
        Anchor::Start,
    );
    let key_left = 4.0 + text_width_px(&title, crate::scene::pen::TEXT_PX) + 16.0;
    if width_px - key_left > text_width_px(&chart.key, SMALL_TEXT_PX) {
        pen.text(
            Role::AxisText,
            at(key_left, top - 28.0),
            chart.key.clone(),
            Anchor::Start,
        );
    } else {
        let key = fitted_text(&chart.key, SMALL_TEXT_PX, width_px - 8.0);
        pen.text(Role::AxisText, at(4.0, top - 13.0), key, Anchor::Start);
    }
    value_axis(pen, chart, axis, &scale, units);
    if chart.contact_below_zero && scale.low < 0.0 {
        contact_zone(pen, axis, &scale);
    }
    for level in &chart.levels {
        if level.value >= scale.low && level.value <= scale.high {
            let y_px = scale.y_px(level.value);
            pen.line_px(level.role, at(left, y_px), at(right, y_px));
        }
    }
    let mut names: Vec<(f64, String, Role)> = Vec::new();
    if chart.contact_below_zero && scale.low < 0.0 {
        let middle = 0.5 * (scale.y_px(0.0) + scale.top + scale.height);
        names.push((middle, CONTACT.to_owned(), Role::ContactHatch));
    }
    for level in &chart.levels {
        if level.value <= scale.high {
            names.push((scale.y_px(level.value), level.name.clone(), level.role));
        }
    }
    for series in &chart.series {
        let end = draw_series(pen, series, axis, &scale);
        if let (Some(y_px), false) = (end, series.name.is_empty()) {
            names.push((y_px, series.name.clone(), series.role));
        }
        if let Some(value) = value_at(&series.pieces, progress)
            && value >= scale.low
            && value <= scale.high
        {
            let dot = at(axis.x_px(progress), scale.y_px(value));
            pen.circle_px(Role::Cursor, dot, 3.5, false);
        }
    }
    frame::end_names(pen, names, right, scale.top, scale.height);
}

/// Numbers and lines of the value axis.
fn value_axis(pen: &mut Pen, chart: &Chart, axis: &impl Across, scale: &Scale, units: UnitChoice) {
    let (left, right) = (axis.left_px(), axis.right_px());
    let shown = |si: f64| chart.quantity.from_si(units, si);
    let (low, high) = (shown(scale.low), shown(scale.high));
    let ends = |step: f64| ((low / step).ceil() as i64, (high / step).floor() as i64);
    let mut step = round_step((high - low) / (chart.height_px / 30.0));
    let (mut first, mut last) = ends(step);
    if first == last {
        // one number tells no scale
        step = round_step((high - low) / (chart.height_px / 15.0));
        (first, last) = ends(step);
    }
    for i in first..=last.min(first.saturating_add(40)) {
        let value = i as f64 * step;
        let y_px = scale.top + scale.height * (high - value) / (high - low);
        let role = if i == 0 { Role::Axis } else { Role::Grid };
        let at = |x_px: f64| ScreenPoint { x_px, y_px };
        pen.line_px(role, at(left), at(right));
        pen.text(
            Role::AxisText,
            at(left - 6.0),
            axis_number(value, step),
            Anchor::End,
        );
    }
    let at = |y_px: f64| ScreenPoint { x_px: left, y_px };
    pen.line_px(Role::Axis, at(scale.top), at(scale.top + scale.height));
}

/// Hatches what lies below zero clearance.
fn contact_zone(pen: &mut Pen, axis: &impl Across, scale: &Scale) {
    let (left, right) = (axis.left_px(), axis.right_px());
    let (top, bottom) = (scale.y_px(0.0), scale.top + scale.height);
    let deep = bottom - top;
    let gap = 9.0;
    let count = ((right - left + deep) / gap).floor().clamp(0.0, 4_000.0) as usize;
    for i in 1..count {
        // 45° lines from the lower edge up to the right, held between left and right
        let foot = left - deep + i as f64 * gap;
        let (from, to) = (foot.max(left), (foot + deep).min(right));
        if from < to {
            let y = |x: f64| bottom - (x - foot);
            pen.line_px(
                Role::ContactHatch,
                ScreenPoint {
                    x_px: from,
                    y_px: y(from),
                },
                ScreenPoint {
                    x_px: to,
                    y_px: y(to),
                },
            );
        }
    }
}

/// Draws a curve, cut at the ends of the scale; gives the height of its last point.
fn draw_series(pen: &mut Pen, series: &Series, axis: &impl Across, scale: &Scale) -> Option<f64> {
    let mut end = None;
    for piece in &series.pieces {
        let mut run: Vec<ScreenPoint> = Vec::with_capacity(piece.len());
        let inside = |value: f64| value >= scale.low && value <= scale.high;
        let mut before: Option<(f64, f64)> = None;
        for (progress, value) in piece {
            if let Some((p0, v0)) = before
                && inside(v0) != inside(*value)
            {
                // where it leaves or enters the chart
                let edge = if v0.max(*value) > scale.high {
                    scale.high
                } else {
                    scale.low
                };
                let share = (edge - v0) / (value - v0);
                let p = p0 + (progress - p0) * share;
                run.push(ScreenPoint {
                    x_px: axis.x_px(p),
                    y_px: scale.y_px(edge),
                });
                if inside(v0) {
                    put_run(pen, series.role, &mut run);
                }
            }
            if inside(*value) {
                run.push(ScreenPoint {
                    x_px: axis.x_px(*progress),
                    y_px: scale.y_px(*value),
                });
            }
            before = Some((*progress, *value));
        }
        if let Some(last) = run.last() {
            end = Some(last.y_px);
        } else if let Some((_, value)) = piece.last() {
            end = Some(scale.y_px(value.clamp(scale.low, scale.high)));
        }
        put_run(pen, series.role, &mut run);
    }
    end
}

pub(in crate::scene) fn put_run(pen: &mut Pen, role: Role, run: &mut Vec<ScreenPoint>) {
    let points = std::mem::take(run);
    if points.len() > 1 {
        pen.put(
            role,
            Shape::Path {
                points,
                closed: false,
                filled: false,
            },
        );
    }
}

/// Value of a curve at a place, straight between its points.
pub(in crate::scene) fn value_at(pieces: &[Vec<(f64, f64)>], progress: f64) -> Option<f64> {
    for piece in pieces {
        // of two values at one place the later, as the numbers beside it
        let above = piece.partition_point(|(p, _)| *p <= progress);
        let a = piece.get(above.saturating_sub(1));
        let b = piece.get(above).or(a.filter(|(p, _)| *p == progress));
        if let (Some((pa, va)), Some((pb, vb))) = (a, b)
            && *pa <= progress
        {
            let width = pb - pa;
            let share = if width > 0.0 {
                (progress - pa) / width
            } else {
                0.0
            };
            return Some(va + (vb - va) * share);
        }
    }
    None
}
