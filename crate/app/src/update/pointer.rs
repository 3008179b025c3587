//! Mouse, pen and touch: moving points, moving and zooming the paper, the cursor of the curves.
use gearswing_gear::field::{stored_point, told_point};
use gearswing_gear::model::Point;
use gearswing_report::Stand;
use gearswing_report::page::drawing as words;
use gearswing_report::page::history::{Step, step_words};
use gearswing_report::page::sheets::Sheet;
use gearswing_report::page::stroke::SLIDES;
use gearswing_units::{Quantity, UnitChoice, UnitSystem};

use crate::effect::Effect;
use crate::fields;
use crate::msg::{CurvePointer, Pointer, PointerKind};
use crate::scene::{self, Paper, ScreenPoint, Viewport};
use crate::state::{Act, Gesture, Hover, Pressed, Snapped, State};

/// A press that moves less than this is none (CSS px).
const STILL_PX: f64 = 3.0;
/// A finger takes a handle from this far (CSS px).
const TOUCH_RADIUS_PX: f64 = 26.0;
/// Wheel travel that doubles the scale (CSS px).
const WHEEL_DOUBLE_PX: f64 = 360.0;

pub(super) fn pointer(state: &mut State, msg: Pointer) -> Vec<Effect> {
    match msg {
        Pointer::Down { id, kind, at, .. } => {
            if finite(at) {
                return down(state, Pressed { id, at }, kind);
            }
        }
        Pointer::Move {
            id,
            kind,
            at,
            modifiers,
        } => {
            if finite(at) {
                moved(state, Pressed { id, at }, kind, modifiers.ctrl);
            }
        }
        Pointer::Up { id, .. } | Pointer::Cancel { id } => up(state, id),
        Pointer::Leave => state.session.hover = Hover::Off,
        Pointer::Wheel { at, delta_px } => {
            let factor = (-delta_px.clamp(-400.0, 400.0) / WHEEL_DOUBLE_PX).exp2();
            zoom_at(state, at, factor);
        }
        Pointer::Pinch { at, factor } => zoom_at(state, at, factor.clamp(0.2, 5.0)),
    }
    Vec::new()
}

pub(super) fn curve_pointer(state: &mut State, msg: CurvePointer) -> Vec<Effect> {
    if let CurvePointer::Scrub { at } = msg
        && let Some(progress) = scene::progress_at(state, at)
    {
        state.session.playing = None;
        state.session.progress = progress;
    }
    Vec::new()
}

fn finite(at: ScreenPoint) -> bool {
    at.x_px.is_finite() && at.y_px.is_finite()
}

impl State {
    /// Changes the paper of the selected leg; from now on it is the person's.
    pub(crate) fn move_paper(&mut self, change: impl FnOnce(Viewport) -> Viewport) {
        let viewport = change(scene::paper_of(self).viewport);
        let paper = Paper {
            viewport,
            fitted: false,
        };
        self.session.papers.insert(self.session.leg, paper);
    }

    /// Ends whatever the pointers are doing; a drag ends as if released.
    pub(crate) fn end_gesture(&mut self) {
        if matches!(self.session.gesture, Gesture::Drag { .. }) {
            self.document.close();
        }
        self.session.gesture = Gesture::Idle;
        self.session.snapped = None;
        self.session.drag_text.clear();
    }

    /// Notes how the leg in hand stands before a point of it is moved.
    pub(crate) fn note_stand(&mut self) {
        let good = self.derived.good(self.session.leg);
        self.session.stood = good.map(|good| Stand::of(&good.result));
    }

    /// Selects a point or field and opens its group.
    pub(crate) fn select(&mut self, path: &str) {
        if self.session.selection.as_deref() != Some(path) {
            self.leave_steps();
            self.session.drag_text.clear();
            self.document.close();
            self.session.selection = Some(path.to_owned());
        }
        if let Some(group) = crate::view::group_of(self.gear(), path) {
            self.session.open_group = Some(group);
        }
    }
}

pub(super) fn zoom_at(state: &mut State, at: ScreenPoint, factor: f64) {
    if finite(at) && factor.is_finite() && factor > 0.0 {
        state.move_paper(|view| view.zoomed(at, factor));
    }
}

fn distance(a: ScreenPoint, b: ScreenPoint) -> f64 {
    (a.x_px - b.x_px).hypot(a.y_px - b.y_px)
}

/// The handle that a pointer takes: the selected one if it is within reach, else the nearest.
fn hit(state: &State, at: ScreenPoint, kind: PointerKind) -> Option<scene::Handle> {
    let reach = |handle: &scene::Handle| match kind {
        PointerKind::Touch => handle.radius_px.max(TOUCH_RADIUS_PX),
        PointerKind::Mouse | PointerKind::Pen => handle.radius_px,
    };
    scene::handles(state)
        .into_iter()
        .filter(|handle| distance(handle.at, at) <= reach(handle))
        .min_by(|a, b| {
            let near = |h: &scene::Handle| distance(h.at, at) - if h.selected { 6.0 } else { 0.0 };
            near(a).total_cmp(&near(b))
        })
}

fn down(state: &mut State, pressed: Pressed, kind: PointerKind) -> Vec<Effect> {
    match state.session.gesture.clone() {
        Gesture::Pan(first) if first.id != pressed.id => {
            state.session.gesture = Gesture::Pinch(first, pressed);
            return Vec::new();
        }
        Gesture::Drag {
            pressed: first,
            moved: false,
            ..
        } if first.id != pressed.id => {
            state.end_gesture();
            state.session.gesture = Gesture::Pinch(first, pressed);
            return Vec::new();
        }
        Gesture::Pinch(..) | Gesture::Drag { moved: true, .. } => return Vec::new(),
        Gesture::Idle | Gesture::Pan(_) | Gesture::Drag { .. } => state.end_gesture(),
    }
    let Some(handle) = hit(state, pressed.at, kind) else {
        state.session.gesture = Gesture::Pan(pressed);
        return Vec::new();
    };
    state.session.playing = None;
    state.select(&handle.id);
    if !handle.movable {
        return to_down(state, &handle.id);
    }
    // the paper must not move under the pointer while the leg changes
    let paper = scene::paper_of(state);
    state.session.papers.insert(state.session.leg, paper);
    let under = paper.viewport.to_model(pressed.at);
    let point = paper.viewport.to_model(handle.at);
    state.note_stand();
    state.session.by_touch = kind == PointerKind::Touch;
    state.session.gesture = Gesture::Drag {
        pressed,
        path: handle.id,
        offset: (point.x - under.x, point.y - under.y),
        moved: false,
    };
    Vec::new()
}

/// A point of the brace is set with the gear down: there the leg goes.
pub(super) fn to_down(state: &mut State, path: &str) -> Vec<Effect> {
    if let Some(good) = state.derived.good(state.session.leg) {
        state.session.progress = good.range().0;
    }
    let name = scene::point_name(state.gear(), path);
    let text = words::leg_put_down(&name);
    state.session.drag_text.clone_from(&text);
    vec![Effect::Announce { text }]
}

fn moved(state: &mut State, now: Pressed, kind: PointerKind, ctrl: bool) {
    match state.session.gesture.clone() {
        Gesture::Idle => {
            state.session.hover = match hit(state, now.at, kind) {
                Some(_) => Hover::Point,
                None => Hover::Drawing,
            };
        }
        Gesture::Pan(last) if last.id == now.id => {
            state.move_paper(|view| view.panned(last.at, now.at));
            state.session.gesture = Gesture::Pan(now);
        }
        Gesture::Pinch(a, b) => {
            let (a2, b2) = if now.id == a.id {
                (now, b)
            } else if now.id == b.id {
                (a, now)
            } else {
                return;
            };
            let middle = |a: Pressed, b: Pressed| ScreenPoint {
                x_px: (a.at.x_px + b.at.x_px) / 2.0,
                y_px: (a.at.y_px + b.at.y_px) / 2.0,
            };
            let spread = distance(a.at, b.at).max(8.0);
            let factor = (distance(a2.at, b2.at).max(8.0) / spread).clamp(0.2, 5.0);
            let (from, to) = (middle(a, b), middle(a2, b2));
            state.move_paper(|view| view.panned(from, to).zoomed(to, factor));
            state.session.gesture = Gesture::Pinch(a2, b2);
        }
        Gesture::Drag {
            pressed,
            path,
            offset,
            moved,
        } if pressed.id == now.id => {
            if !moved && distance(pressed.at, now.at) < STILL_PX {
                return;
            }
            state.session.gesture = Gesture::Drag {
                pressed,
                path: path.clone(),
                offset,
                moved: true,
            };
            drag(state, &path, now.at, offset, ctrl);
        }
        Gesture::Pan(_) | Gesture::Drag { .. } => {}
    }
}

/// Moves a point under the pointer.
fn drag(state: &mut State, path: &str, at: ScreenPoint, offset: (f64, f64), ctrl: bool) {
    let Some(grip) = scene::grips(state.gear(), state.session.leg)
        .into_iter()
        .find(|grip| grip.path == path)
    else {
        return state.end_gesture();
    };
    let view = scene::paper_of(state).viewport;
    let under = view.to_model(at);
    let place = Point::new(under.x + offset.0, under.y + offset.1);
    let stance = scene::stance_of(state);
    let (Some(target), Some(place_of)) = (stance.unplace(grip.carrier, place), fields::path(path))
    else {
        return;
    };
    let units = state.session.units;
    // round as it is told
    let told = told_point(state.gear(), place_of, target);
    let target = stored_point(state.gear(), place_of, even(told, units));
    let slides = state.session.slide && !ctrl;
    let along = scene::stroke(state).filter(|_| slides);
    let snapped = if let Some(point) = along.and_then(|stroke| stroke.along(target)) {
        Some(Snapped {
            point,
            to: Vec::new(),
            text: SLIDES.to_owned(),
        })
    } else if ctrl || state.session.snap_off {
        None
    } else {
        super::snap::snap(state, &grip, &stance, target, view.scale())
    };
    let point = snapped.as_ref().map_or(target, |snapped| snapped.point);
    let name = words::point_name(state.gear(), place_of);
    let mut text = words::point_at(state.gear(), place_of, point, units);
    if let Some(snapped) = &snapped {
        text = format!("{text}, {}", snapped.text);
    }
    state.session.drag_text = text;
    state.session.snapped = snapped;
    let act = Act::going_on(format!("drag:{path}"), step_words(Step::Move { of: &name }));
    state.edit_place(act, path, |gear| fields::set_point(gear, path, point).ok());
}

/// A point brought to the last place that the units show: a drag is no finer.
fn even(point: Point, units: UnitChoice) -> Point {
    let per_unit = match units.system {
        UnitSystem::Inch => 100.0,
        UnitSystem::Metric => 10.0,
    };
    let even = |si: f64| {
        let shown = (Quantity::Length.from_si(units, si) * per_unit).round() / per_unit;
        Quantity::Length.to_si(units, shown)
    };
    Point::new(even(point.x), even(point.y))
}

fn up(state: &mut State, id: i32) {
    match &state.session.gesture {
        Gesture::Pinch(a, b) if a.id == id || b.id == id => {
            let left = if a.id == id { *b } else { *a };
            state.session.gesture = Gesture::Pan(left);
        }
        Gesture::Drag {
            pressed,
            moved,
            path,
            ..
        } if pressed.id == id => {
            let (moved, path) = (*moved, path.clone());
            state.end_gesture();
            if !moved {
                state.take_sheet(Sheet::Measurements);
            }
            // a finger is coarse: it is followed by steps
            state.session.stepped = state.session.by_touch.then_some(path);
        }
        Gesture::Pan(pressed) if pressed.id == id => {
            state.end_gesture();
        }
        _ => {}
    }
}
