//! The whole gear at one time, and its charts against time: one axis, one cursor.
use gearswing_gear::model::{Gear, Point};
use gearswing_report::indication_words;
use gearswing_report::page::times as words;
use gearswing_solver::result::{LegSample, Run};

use super::axis::{Across, ends_px};
use super::draw::{FOOT_PX, TITLE_PX, draw_chart, make_room, spans, under_cursor};
use super::frame;
use super::times_charts::charts;
use crate::scene::bounds::bounds;
use crate::scene::pen::{SMALL_TEXT_PX, fitted_text, text_width_px};
use crate::scene::scale::{axis_number, round_step};
use crate::scene::{Anchor, Mark, Pen, Role, Scene, ScreenPoint, Shape, Viewport, leg, well};
use crate::state::{State, leg_at, progress_at_time};

/// Height of the legs side by side (CSS px).
const LEGS_PX: f64 = 170.0;
/// Height of a row of switches (CSS px).
const ROW_PX: f64 = 18.0;

/// Axis of time.
struct TimeAxis {
    left_px: f64,
    right_px: f64,
    time_s: f64,
}

impl TimeAxis {
    fn new(run: &Run, width_px: f64) -> Self {
        let (left_px, right_px) = ends_px(width_px);
        Self {
            left_px,
            right_px,
            time_s: run.time.max(1e-3),
        }
    }
}

impl Across for TimeAxis {
    fn left_px(&self) -> f64 {
        self.left_px
    }

    fn right_px(&self) -> f64 {
        self.right_px
    }

    fn x_px(&self, at: f64) -> f64 {
        self.left_px + at / self.time_s * (self.right_px - self.left_px)
    }
}

/// The time under a place of the charts (s).
pub(crate) fn time_at(state: &State, at: ScreenPoint) -> Option<f64> {
    let run = state
        .later
        .run(state.session.clock.on_jacks, state.session.clock.down)?;
    let axis = TimeAxis::new(run, state.session.curves_width_px);
    let share = (at.x_px - axis.left_px) / (axis.right_px - axis.left_px);
    share
        .is_finite()
        .then(|| share.clamp(0.0, 1.0) * axis.time_s.min(run.time))
}

/// The legs at the time looked at, over the charts of the run; nothing without a run.
#[must_use]
pub fn times(state: &State) -> Scene {
    let session = &state.session;
    let width_px = session.curves_width_px;
    let run = state.later.run(session.clock.on_jacks, session.clock.down);
    let Some(run) = run.filter(|_| !state.times_are_coming()) else {
        return Scene {
            width_px,
            ..Scene::default()
        };
    };
    let gear = state.gear();
    let mut charts = charts(gear, run);
    let axis = TimeAxis::new(run, width_px);
    make_room(&mut charts, &axis, width_px);
    let rows = switch_rows(gear);
    let chart_px: f64 = charts.iter().map(|c| c.height_px + TITLE_PX).sum();
    let rows_px = TITLE_PX + ROW_PX * (rows.len() + gear.legs.len()) as f64;
    let height_px = LEGS_PX + chart_px + rows_px + FOOT_PX;
    // pixels throughout: the viewport is only the canvas
    let canvas = Viewport::new(Point::new(0.0, 0.0), 100.0, (width_px, height_px));
    let mut pen = Pen::new(canvas);
    let time_s = session.clock.at_s.unwrap_or(0.0).min(run.time);
    let mut spans = spans(&charts, LEGS_PX);
    for (chart, (top, _)) in charts.iter().zip(&spans) {
        draw_chart(&mut pen, chart, &axis, *top, time_s, session.units);
    }
    switches(&mut pen, gear, run, &rows, &axis, &mut spans);
    time_axis(&mut pen, &axis, LEGS_PX + chart_px + rows_px);
    frame::upright(&mut pen, Role::Cursor, axis.x_px(time_s), &spans);
    let mut scene = under_cursor((width_px, height_px), std::mem::take(&mut pen.marks));
    legs(&mut pen, state, run, time_s);
    scene.breaks.push(scene.marks.len());
    scene.marks.append(&mut pen.marks);
    scene
}

/// Every leg in its own plane, side by side, with what is shown for it.
fn legs(pen: &mut Pen, state: &State, run: &Run, time_s: f64) {
    let count = state.gear().legs.len().max(1);
    let cell_px = pen.view.size_px().0 / count as f64;
    for (at, model) in state.gear().legs.iter().enumerate() {
        let left_px = cell_px * at as f64;
        let good = state.derived.good(at);
        let around = bounds(model, good);
        let room = (cell_px, LEGS_PX - 44.0);
        let mut cell = Pen::new(Viewport::fit(around.low, around.high, room));
        well::well(&mut cell, model);
        let pose = good.and_then(|good| good.pose(progress_at_time(run, at, time_s)?));
        if let (Some(good), Some(pose)) = (good, pose) {
            leg::standing(&mut cell, &leg::outlines(&good.leg, &pose));
        }
        pen.marks
            .extend(cell.marks.into_iter().map(|mark| moved(mark, left_px)));
        let shown =
            leg_at(run, at, time_s).map_or("", |sample| indication_words(sample.indication));
        let room_px = cell_px - 8.0;
        let (first, second) = in_two(shown, room_px);
        for (role, text, y_px) in [
            (Role::Label, model.name.as_str(), LEGS_PX - 30.0),
            (Role::AxisText, first, LEGS_PX - 15.0),
            (Role::AxisText, second, LEGS_PX - 1.0),
        ] {
            let text = fitted_text(text, SMALL_TEXT_PX, room_px);
            let x_px = left_px + 0.5 * cell_px;
            pen.text(role, ScreenPoint { x_px, y_px }, text, Anchor::Middle);
        }
    }
}

/// A text in two lines where it finds no room on one.
fn in_two(text: &str, room_px: f64) -> (&str, &str) {
    if text_width_px(text, SMALL_TEXT_PX) <= room_px {
        return (text, "");
    }
    text.rsplit_once(' ').unwrap_or((text, ""))
}

/// A mark farther to the right.
fn moved(mut mark: Mark, by_px: f64) -> Mark {
    match &mut mark.shape {
        Shape::Path { points, .. } => points.iter_mut().for_each(|p| p.x_px += by_px),
        Shape::Circle { centre, .. } => centre.x_px += by_px,
        Shape::Text { at, .. } => at.x_px += by_px,
    }
    mark
}

/// A switch of a leg: leg, which one, whether it is closed.
type SwitchRow = (usize, words::Switch, fn(&LegSample) -> bool);

fn switch_rows(gear: &Gear) -> Vec<SwitchRow> {
    use gearswing_gear::model::Shortening;
    let mut rows: Vec<SwitchRow> = Vec::new();
    for (at, leg) in gear.legs.iter().enumerate() {
        if matches!(leg.strut.shortening, Shortening::BeforeSwing { .. }) {
            rows.push((at, words::Switch::Shortened, |s| s.shortened));
        }
        rows.push((at, words::Switch::Down, |s| s.down));
        rows.push((at, words::Switch::Up, |s| s.up));
    }
    rows
}

/// The switches leg by leg, a line for each where it is made, under the charts; their rows go to the
/// spans of the charts.
fn switches(
    pen: &mut Pen,
    gear: &Gear,
    run: &Run,
    rows: &[SwitchRow],
    axis: &TimeAxis,
    spans: &mut Vec<(f64, f64)>,
) {
    let at = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
    let top = spans.last().map_or(LEGS_PX, |span| span.1);
    let title = words::SWITCHES.to_owned();
    pen.text(Role::Label, at(4.0, top + 14.0), title, Anchor::Start);
    let mut y_px = top + TITLE_PX - 6.0;
    let mut before = None;
    for (leg, switch, made) in rows {
        if before.replace(*leg) != Some(*leg) {
            let room = axis.right_px - axis.left_px;
            let of = gear.legs.get(*leg).map_or("", |leg| leg.name.as_str());
            let text = fitted_text(of, SMALL_TEXT_PX, room);
            pen.text(Role::AxisText, at(axis.left_px, y_px), text, Anchor::Start);
            y_px += ROW_PX;
        }
        pen.line_px(Role::Grid, at(axis.left_px, y_px), at(axis.right_px, y_px));
        for pair in run.moving().windows(2) {
            let [a, b] = pair else { continue };
            if a.legs.get(*leg).is_some_and(made) && b.time > a.time {
                let (from, to) = (axis.x_px(a.time), axis.x_px(b.time));
                join(pen, at(from, y_px), at(to, y_px));
            }
        }
        if let Some(last) = run.moving().last()
            && last.legs.get(*leg).is_some_and(made)
        {
            let x_px = axis.x_px(last.time);
            pen.circle_px(Role::CurveNeeded, at(x_px, y_px), 3.0, true);
        }
        let beside = at(axis.right_px + 11.0, y_px);
        let name = words::switch_words(*switch).to_owned();
        pen.text(Role::AxisText, beside, name, Anchor::Start);
        spans.push((y_px - 0.5 * ROW_PX, y_px + 0.5 * ROW_PX));
        y_px += ROW_PX;
    }
}

/// A piece of a level line, joined to the one before it where that ends there.
fn join(pen: &mut Pen, from: ScreenPoint, to: ScreenPoint) {
    if let Some(Mark {
        role: Role::CurveNeeded,
        shape: Shape::Path { points, .. },
    }) = pen.marks.last_mut()
        && let [_, end] = points.as_mut_slice()
        && *end == from
    {
        *end = to;
        return;
    }
    pen.line_px(Role::CurveNeeded, from, to);
}

/// Ticks and numbers of time.
fn time_axis(pen: &mut Pen, axis: &TimeAxis, y_px: f64) {
    let at = |x_px: f64, y_px: f64| ScreenPoint { x_px, y_px };
    pen.line_px(Role::Axis, at(axis.left_px, y_px), at(axis.right_px, y_px));
    let step = round_step(axis.time_s / ((axis.right_px - axis.left_px) / 70.0).max(1.0));
    let last = (axis.time_s / step).floor().clamp(0.0, 100.0) as u32;
    for i in 0..=last {
        let time = f64::from(i) * step;
        let x_px = axis.x_px(time);
        pen.line_px(Role::Axis, at(x_px, y_px), at(x_px, y_px + 5.0));
        let number = axis_number(time, step);
        pen.text(
            Role::AxisText,
            at(x_px, y_px + 14.0),
            number,
            Anchor::Middle,
        );
    }
    pen.text(
        Role::AxisText,
        at(axis.right_px, y_px + 30.0),
        words::time_axis(),
        Anchor::End,
    );
}
