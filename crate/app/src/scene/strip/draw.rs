//! The strip put on its canvas: the curve, the marks above it, the axis of travel, the cursor.
use gearswing_gear::model::Point;
use gearswing_report::page::curves as words;

use super::curve::{StripCurve, curve, followed, same_curve};
use super::frame::{Frame, INSIDE_PX, NAME_PX, TRAVEL_PX, at, draw_marks};
use super::marks::{StripMark, strip_marks};
use crate::msg::PointerKind;
use crate::scene::curves::{Across, put_run, value_at};
use crate::scene::pen::{SMALL_TEXT_PX, TEXT_PX, fitted_text};
use crate::scene::{Anchor, Pen, Role, Scene, ScreenPoint, Viewport};
use crate::state::{Good, State};

/// A mark takes hold of a pointer from this far (CSS px).
const HOLD_MOUSE_PX: f64 = 4.0;
const HOLD_TOUCH_PX: f64 = 12.0;
/// Room between two lines of hatching (CSS px).
const HATCH_PX: f64 = 8.0;
/// Height of the cursor's ring (CSS px).
const RING_PX: f64 = 8.0;

/// The place of the path under a pointer on the strip; a mark near it takes hold of one that `holds` to marks.
pub(crate) fn strip_progress(state: &State, holds: Option<PointerKind>, x_px: f64) -> Option<f64> {
    let good = state.derived.good(state.session.leg)?;
    let axis = Frame::of(good, state.session.strip_size_px).axis;
    let hold = match holds {
        Some(PointerKind::Touch) => HOLD_TOUCH_PX,
        Some(PointerKind::Mouse | PointerKind::Pen) => HOLD_MOUSE_PX,
        None => -1.0,
    };
    let off = |mark: &StripMark| (axis.x_px(mark.progress) - x_px).abs();
    let marks = strip_marks(state, good).into_iter();
    let near = marks
        .filter(|mark| off(mark) <= hold)
        .min_by(|a, b| off(a).total_cmp(&off(b)));
    let progress = near.map_or_else(|| axis.progress(x_px), |mark| mark.progress);
    let (first, last) = good.range();
    progress.is_finite().then(|| progress.clamp(first, last))
}

/// The strip of the selected leg.
#[must_use]
pub fn strip(state: &State) -> Scene {
    let size = state.session.strip_size_px;
    let mut scene = Scene {
        width_px: size.0,
        height_px: size.1,
        ..Scene::default()
    };
    let derived = state.derived.leg(state.session.leg);
    let Some(good) = derived.and_then(|leg| leg.good.as_ref()) else {
        return scene;
    };
    let frame = Frame::of(good, size);
    // pixels throughout: the viewport is only the canvas
    let mut pen = Pen::new(Viewport::new(Point::new(0.0, 0.0), 100.0, size));
    pen.faded = derived.is_some_and(|leg| leg.faded());
    travel_axis(&mut pen, good, &frame);
    let way = state.session.way();
    let found = followed(state).map(|question| curve(good, question, way));
    let scale = found.as_ref().map(|curve| Scale::of(curve, &frame));
    let before = state.before.leg(state.gear(), state.session.leg);
    if let (Some((_, _, before)), Some(scale), Some(found), Some(question)) =
        (before, &scale, &found, followed(state))
    {
        for piece in same_curve(before, (question, way), found).iter().flatten() {
            runs(&mut pen, Role::Before, piece, scale, &frame);
        }
    }
    if let (Some(curve), Some(scale)) = (&found, &scale) {
        draw_curve(&mut pen, good, curve, scale, &frame);
    }
    draw_marks(
        &mut pen,
        &strip_marks(state, good),
        &frame,
        state.session.units,
    );
    let still = pen.marks.len();
    let (first, last) = good.range();
    let here = state.session.progress.clamp(first, last);
    let value = found
        .as_ref()
        .and_then(|curve| value_at(&curve.pieces, here));
    let y_px = match (&scale, value) {
        (Some(scale), Some(value)) => scale.y_px(value),
        (Some(_), None) => frame.top,
        (None, _) => 0.5 * (frame.top + frame.bottom),
    };
    cursor(&mut pen, frame.axis.x_px(here), y_px, &frame);
    scene.marks = pen.marks;
    scene.breaks = vec![still];
    scene
}

/// Value axis of the strip.
struct Scale {
    low: f64,
    high: f64,
    top: f64,
    height: f64,
}

impl Scale {
    fn of(curve: &StripCurve, frame: &Frame) -> Self {
        let both = || curve.pieces.iter().chain(&curve.other_way);
        let values = || both().flatten().map(|point| point.1);
        let level = curve.level.map_or(0.0, |level| level.1);
        let most = values().fold(level.max(0.0), f64::max);
        let low = values().fold(0.0, f64::min).max(-curve.ceiling);
        let high = most.min(curve.ceiling);
        let span = if high > low { high - low } else { 1.0 };
        Self {
            low: low - 0.08 * span,
            high: high.max(low + span),
            top: frame.top,
            height: frame.bottom - frame.top,
        }
    }

    /// Height of a value, held to the strip.
    fn y_px(&self, value: f64) -> f64 {
        let value = value.clamp(self.low, self.high);
        self.top + self.height * (self.high - value) / (self.high - self.low)
    }
}

/// Numbers of travel below, and what comes before the swing.
fn travel_axis(pen: &mut Pen, good: &Good, frame: &Frame) {
    let Frame {
        axis, bottom, size, ..
    } = frame;
    let (left, right) = (axis.left_px(), axis.right_px());
    let y_px = size.1 - 0.5 * TRAVEL_PX + 2.0;
    let every = if frame.is_wide() { 2 } else { 4 };
    for i in (0..=10).step_by(every) {
        let travel = f64::from(i) / 10.0;
        let progress = good.linkage().progress_at_travel(travel);
        let x_px = axis.x_px(progress.clamp(good.range().0, 1.0));
        pen.line_px(Role::Axis, at(x_px, *bottom), at(x_px, bottom + 4.0));
        let last = i == 10;
        let text = words::travel_tick(i * 10, last || !frame.is_wide() && i == 8);
        pen.text(Role::AxisText, at(x_px, y_px), text, Anchor::Middle);
    }
    if !frame.is_wide() {
        let place = at(size.0 - 4.0, y_px);
        pen.text(
            Role::AxisText,
            place,
            words::travel_tick(100, true),
            Anchor::End,
        );
    }
    let zero = axis.x_px(0.0);
    if good.range().0 < 0.0 {
        pen.line_px(Role::GridMajor, at(zero, frame.top), at(zero, *bottom));
        if frame.is_wide() {
            let room = zero - 14.0;
            let text = fitted_text(words::BEFORE_SWING, SMALL_TEXT_PX, room);
            pen.text(Role::AxisText, at(zero - 12.0, y_px), text, Anchor::End);
        }
    }
    if !good.result.jams.is_empty() {
        // where it can't go
        let end = axis.x_px(good.range().1);
        hatch(pen, Role::ContactHatch, (end, right), (frame.top, *bottom));
    }
    pen.line_px(Role::Axis, at(left, *bottom), at(right, *bottom));
}

fn draw_curve(pen: &mut Pen, good: &Good, curve: &StripCurve, scale: &Scale, frame: &Frame) {
    let axis = &frame.axis;
    let (left, right) = (axis.left_px(), axis.right_px());
    name(pen, curve, frame);
    if curve.contact_below_zero {
        for (from, to) in below_zero(&curve.pieces) {
            let span = (axis.x_px(from), axis.x_px(to));
            hatch(pen, Role::ContactHatch, span, (frame.top, frame.bottom));
        }
    }
    let zero = scale.y_px(0.0);
    pen.line_px(Role::Axis, at(left, zero), at(right, zero));
    if frame.is_wide() {
        pen.text(
            Role::AxisText,
            at(left - 6.0, zero),
            "0".to_owned(),
            Anchor::End,
        );
    }
    if let Some((role, value)) = curve.level
        && value <= scale.high
    {
        let y_px = scale.y_px(value);
        pen.line_px(role, at(left, y_px), at(right, y_px));
    }
    for piece in &curve.other_way {
        runs(pen, Role::OtherWay, piece, scale, frame);
    }
    let mut from = good.range().0;
    for piece in &curve.pieces {
        if let (Some(first), Some(last)) = (piece.first(), piece.last()) {
            // no value of a clearance is one beyond reach; of a push, one that nothing moves
            if curve.contact_below_zero {
                above(pen, (from, first.0), frame);
            }
            from = last.0;
        }
        runs(pen, curve.role, piece, scale, frame);
    }
    if curve.contact_below_zero {
        above(pen, (from, good.range().1), frame);
    }
}

/// The pieces of a curve within the scale; what is above it runs dotted along the top.
fn runs(pen: &mut Pen, role: Role, piece: &[(f64, f64)], scale: &Scale, frame: &Frame) {
    let mut run: Vec<ScreenPoint> = Vec::with_capacity(piece.len());
    let mut before: Option<(f64, f64)> = None;
    let mut left_at: Option<f64> = None;
    // only the state and the way in hand tell what is above
    let above = |pen: &mut Pen, span: (f64, f64)| {
        if !matches!(role, Role::Before | Role::OtherWay) {
            above(pen, span, frame);
        }
    };
    for &(progress, value) in piece {
        let is_in = value <= scale.high;
        if let Some((p0, v0)) = before
            && (v0 <= scale.high) != is_in
        {
            let crosses = p0 + (progress - p0) * (scale.high - v0) / (value - v0);
            run.push(at(frame.axis.x_px(crosses), scale.y_px(scale.high)));
            if is_in {
                if let Some(from) = left_at.take() {
                    above(pen, (from, crosses));
                }
            } else {
                put_run(pen, role, &mut run);
                left_at = Some(crosses);
            }
        } else if before.is_none() && !is_in {
            left_at = Some(progress);
        }
        if is_in {
            run.push(at(frame.axis.x_px(progress), scale.y_px(value)));
        }
        before = Some((progress, value));
    }
    if let (Some(from), Some((to, _))) = (left_at, before) {
        above(pen, (from, to));
    }
    put_run(pen, role, &mut run);
}

/// A stretch that lies above the scale.
fn above(pen: &mut Pen, (from, to): (f64, f64), frame: &Frame) {
    let (a, b) = (frame.axis.x_px(from), frame.axis.x_px(to));
    if b - a > 1.0 {
        pen.line_px(Role::CurveParts, at(a, frame.top), at(b, frame.top));
    }
}

/// Stretches of a curve below zero.
fn below_zero(pieces: &[Vec<(f64, f64)>]) -> Vec<(f64, f64)> {
    let mut found: Vec<(f64, f64)> = Vec::new();
    for piece in pieces {
        let mut from = None;
        for pair in piece.windows(2) {
            let [(p0, v0), (p1, v1)] = *pair else {
                continue;
            };
            let crosses = || p0 + (p1 - p0) * v0 / (v0 - v1);
            if from.is_none() && v0 <= 0.0 {
                from = Some(p0);
            }
            if from.is_none() && v1 <= 0.0 {
                from = Some(crosses());
            }
            if v1 > 0.0
                && let Some(start) = from.take()
            {
                found.push((start, crosses()));
            }
        }
        if let (Some(start), Some(last)) = (from, piece.last()) {
            found.push((start, last.0));
        }
    }
    found
}

/// Lines under 45° between two places over a height.
fn hatch(pen: &mut Pen, role: Role, (left, right): (f64, f64), (top, bottom): (f64, f64)) {
    let high = bottom - top;
    let count = ((right - left + high) / HATCH_PX)
        .floor()
        .clamp(0.0, 2_000.0) as usize;
    for i in 1..=count {
        let foot = left - high + i as f64 * HATCH_PX;
        let (from, to) = (foot.max(left), (foot + high).min(right));
        if from < to {
            let y = |x: f64| bottom - (x - foot);
            pen.line_px(role, at(from, y(from)), at(to, y(to)));
        }
    }
}

/// What the curve is.
fn name(pen: &mut Pen, curve: &StripCurve, frame: &Frame) {
    if frame.is_wide() {
        let room = NAME_PX - 30.0;
        let name = fitted_text(&curve.name, TEXT_PX, room);
        pen.text(
            Role::Governing,
            at(12.0, frame.top + 8.0),
            name,
            Anchor::Start,
        );
        let of = fitted_text(&curve.of, SMALL_TEXT_PX, NAME_PX - 16.0);
        pen.text(
            Role::AxisText,
            at(12.0, frame.top + 25.0),
            of,
            Anchor::Start,
        );
    } else {
        let place = at(INSIDE_PX + 2.0, frame.top + 12.0);
        pen.text(Role::AxisText, place, curve.name.clone(), Anchor::Start);
    }
}

fn cursor(pen: &mut Pen, x_px: f64, y_px: f64, frame: &Frame) {
    pen.line_px(
        Role::Moving,
        at(x_px, frame.top - 4.0),
        at(x_px, frame.bottom + 4.0),
    );
    let centre = at(x_px, y_px.clamp(frame.top + 2.0, frame.bottom - 2.0));
    pen.circle_px(Role::Joint, centre, RING_PX, true);
}
