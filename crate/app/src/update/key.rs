//! Keys on the drawing and its handles.
use gearswing_gear::field::{Axis, stored, told};
use gearswing_gear::model::{Point, Vector};
use gearswing_report::page::drawing as words;
use gearswing_report::page::history::{Step, step_words};
use gearswing_units::{Quantity, StepSize};

use crate::effect::Effect;
use crate::fields;
use crate::msg::{Direction, Field, Key};
use crate::scene::{self, ScreenPoint};
use crate::state::{Act, Gesture, State};

/// The paper moves by this much with an arrow (CSS px).
const PAN_PX: f64 = 48.0;

pub(super) fn key(state: &mut State, msg: Key) -> Vec<Effect> {
    match msg {
        Key::Nudge {
            handle,
            direction,
            size,
        } => nudge(state, &handle, direction, size),
        Key::Pan { direction } => {
            let (x, y) = arrow(direction);
            let by = ScreenPoint {
                x_px: -x * PAN_PX,
                y_px: y * PAN_PX,
            };
            state.move_paper(|view| view.panned(ScreenPoint::default(), by));
            Vec::new()
        }
        Key::Remove { handle } => super::field::field(state, Field::Remove { path: handle }),
        Key::Insert { handle } => super::field::field(state, Field::Add { path: handle }),
        Key::Escape => escape(state),
    }
}

fn arrow(direction: Direction) -> (f64, f64) {
    match direction {
        Direction::Left => (-1.0, 0.0),
        Direction::Right => (1.0, 0.0),
        Direction::Up => (0.0, 1.0),
        Direction::Down => (0.0, -1.0),
    }
}

/// Moves a point by a step, as the leg stands.
pub(super) fn nudge(
    state: &mut State,
    path: &str,
    direction: Direction,
    size: StepSize,
) -> Vec<Effect> {
    let grip = scene::grips(state.gear(), state.session.leg)
        .into_iter()
        .find(|grip| grip.path == path);
    let (Some(grip), Some(at)) = (grip, fields::path(path)) else {
        return Vec::new();
    };
    state.end_gesture_unless_idle();
    state.session.playing = None;
    state.select(path);
    let stance = scene::stance_of(state);
    if grip.carrier.is_of_brace() && !stance.is_down() {
        return super::pointer::to_down(state, path);
    }
    let (x, y) = arrow(direction);
    // the axis of the given point that comes nearest to the arrow as the leg stands
    let turned = stance.turn_back(grip.carrier, Vector::new(x, y));
    // in steps of what is told
    let step = |axis: Axis, along: f64, old: f64| {
        if along == 0.0 {
            return old;
        }
        let at = at.axis(axis);
        let [from, beyond] = [old, old + along].map(|place| told(state.gear(), at, place));
        let next = Quantity::Length.nudged(state.session.units, from, size, beyond > from);
        stored(state.gear(), at, next)
    };
    let point = if turned.x.abs() >= turned.y.abs() {
        Point::new(step(Axis::X, turned.x, grip.point.x), grip.point.y)
    } else {
        Point::new(grip.point.x, step(Axis::Y, turned.y, grip.point.y))
    };
    let point = match scene::stroke(state).filter(|_| state.session.slide) {
        Some(stroke) => {
            let steps = Quantity::Length.step(state.session.units);
            match stroke.step_along(turned, steps.of(size)) {
                Some(point) => point,
                None => return Vec::new(),
            }
        }
        None => point,
    };
    let name = words::point_name(state.gear(), at);
    let text = words::point_at(state.gear(), at, point, state.session.units);
    state.session.drag_text.clone_from(&text);
    let key = format!("arrows:{path}");
    if state.document.open_act() != Some(key.as_str()) {
        state.note_stand();
    }
    let act = Act::going_on(key, step_words(Step::Move { of: &name }));
    state.edit_place(act, path, |gear| fields::set_point(gear, path, point).ok());
    vec![Effect::Announce { text }]
}

impl State {
    fn end_gesture_unless_idle(&mut self) {
        if self.session.gesture != Gesture::Idle {
            self.end_gesture();
        }
    }
}

fn escape(state: &mut State) -> Vec<Effect> {
    if matches!(state.session.gesture, Gesture::Drag { .. }) {
        let gave_up = state
            .document
            .open_act()
            .is_some_and(|key| key.starts_with("drag:"))
            && state.document.give_up();
        state.end_gesture();
        if gave_up && state.files.open_id().is_some() {
            // what was stored while it was dragged
            state.touch();
        } else if gave_up {
            // nothing of one's own has come of it
            state.unsaved = false;
        }
        let text = words::POINT_BACK.to_owned();
        return if gave_up {
            vec![Effect::Announce { text }]
        } else {
            Vec::new()
        };
    }
    state.end_gesture();
    state.leave_steps();
    if state.session.playing.take().is_none() {
        state.document.close();
        state.session.selection = None;
    }
    Vec::new()
}
