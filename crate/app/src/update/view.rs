//! What is looked at.
use gearswing_report::page::nudge::step_size;
use gearswing_report::page::sheets::{Height, Sheet};
use gearswing_solver::result::Question;

use crate::effect::Effect;
use crate::msg::{Direction, View};
use crate::scene::{self, ScreenPoint};
use crate::state::{Hover, State};

/// Largest canvas side taken (CSS px).
const LARGEST_PX: f64 = 16_384.0;

pub(super) fn view(state: &mut State, msg: View) -> Vec<Effect> {
    match msg {
        View::SelectLeg { leg } if leg == state.session.leg => state.take_sheet(Sheet::Answers),
        View::SelectLeg { leg } => state.select_leg(leg),
        View::Sheet(sheet) => state.take_sheet(sheet),
        View::SheetPull { up } => {
            state.session.sheet_height = state.session.sheet_height.pulled(up);
        }
        View::SheetHeight => state.session.sheet_height = state.session.sheet_height.next(),
        View::GoTo { leg, question } => return go_to(state, leg, question),
        View::GoToStop { leg } => go_to_stop(state, leg),
        View::Fit => {
            let paper = scene::fitted(state);
            state.session.papers.insert(state.session.leg, paper);
        }
        View::Zoom { factor } => {
            let about = zoomed_about(state);
            super::pointer::zoom_at(state, about, factor.clamp(0.1, 10.0));
        }
        View::Units(units) => {
            state.session.units = units;
            state.session.drag_text.clear();
        }
        View::Theme(theme) => {
            state.session.theme = theme;
            return vec![Effect::SetTheme(theme)];
        }
        View::ToggleGroup { id } => {
            let open = state.session.open_group.as_deref() == Some(id.as_str());
            state.session.open_group = (!open).then_some(id);
        }
        View::DrawingSize {
            width_px,
            height_px,
        } => drawing_size(state, width_px, height_px),
        View::CurvesSize { width_px } => {
            if width_px.is_finite() {
                state.session.curves_width_px = width_px.clamp(1.0, LARGEST_PX);
            }
        }
        View::StripSize {
            width_px,
            height_px,
        } => {
            if let Some(size) = held_size(width_px, height_px) {
                state.session.strip_size_px = size;
            }
        }
        View::DetailSize { side_px } => {
            if let Some((side_px, _)) = held_size(side_px, side_px) {
                state.session.detail_px = side_px;
            }
        }
        View::FocusHandle { id: Some(id) } => {
            let exists = scene::grips(state.gear(), state.session.leg)
                .iter()
                .any(|grip| grip.path == id);
            if exists {
                state.select(&id);
            }
        }
        View::FocusHandle { id: None } => state.document.close(),
        View::Snap { on } => state.session.snap_off = !on,
        View::Step { direction } => return step(state, direction),
        View::FineSteps { on } => state.session.fine_steps = on,
        View::StepsDone => state.leave_steps(),
        View::Slide { on } => state.session.slide = on,
        View::Loads { on } => state.session.loads = on,
        View::Dismiss { id } => state.session.notices.dismiss(id),
        View::GiveUp => return state.give_up(),
        View::WorkOut => state.work_out(),
    }
    Vec::new()
}

/// What stays where it is while a button zooms: the selected point if it is seen, else the middle.
fn zoomed_about(state: &State) -> ScreenPoint {
    let view = scene::paper_of(state).viewport;
    let (width, height) = view.size_px();
    scene::handles(state)
        .into_iter()
        .find(|handle| handle.selected && view.shows(handle.at))
        .map_or(
            ScreenPoint {
                x_px: width / 2.0,
                y_px: height / 2.0,
            },
            |handle| handle.at,
        )
}

/// The point that a finger has let go, by a step.
fn step(state: &mut State, direction: Direction) -> Vec<Effect> {
    let Some(path) = state.stepped().map(str::to_owned) else {
        return Vec::new();
    };
    let size = step_size(state.session.fine_steps);
    super::key::nudge(state, &path, direction, size)
}

fn go_to_stop(state: &mut State, leg: usize) {
    if let Some((_, Ok(found))) = state.later.stop(leg) {
        let progress = found.place.progress;
        state.select_leg(leg);
        state.session.playing = None;
        state.session.progress = progress;
    }
}

impl State {
    /// The point that is moved by steps: as long as it is there, selected, and on the leg in hand.
    pub(crate) fn stepped(&self) -> Option<&str> {
        let session = &self.session;
        let path = session.stepped.as_deref()?;
        let is_in_hand = session.selection.as_deref() == Some(path)
            && crate::fields::leg_of(path) == Some(session.leg)
            && crate::fields::point(self.gear(), path).is_some();
        is_in_hand.then_some(path)
    }

    /// The point that was moved by steps is left.
    pub(crate) fn leave_steps(&mut self) {
        if self.session.stepped.take().is_some() {
            self.document.close();
            self.session.drag_text.clear();
        }
    }

    /// Takes a sheet in hand, high enough to read it.
    pub(crate) fn take_sheet(&mut self, sheet: Sheet) {
        self.session.sheet = sheet;
        if self.session.sheet_height == Height::Low {
            self.session.sheet_height = Height::Middle;
        }
    }

    /// Shows another leg at its own end of the path.
    pub(crate) fn select_leg(&mut self, leg: usize) {
        if leg >= self.gear().legs.len() || leg == self.session.leg {
            return;
        }
        self.end_gesture();
        self.document.close();
        self.session.playing = None;
        self.session.hover = Hover::Off;
        self.session.leg = leg;
        let selection = self.session.selection.as_deref();
        if selection.is_some_and(|path| crate::fields::leg_of(path).is_some_and(|l| l != leg)) {
            self.session.selection = None;
        }
        if let Some(good) = self.derived.good(leg) {
            let (first, last) = good.range();
            self.session.progress = self.session.progress.clamp(first, last);
        }
    }
}

fn go_to(state: &mut State, leg: usize, question: Question) -> Vec<Effect> {
    state.select_leg(leg);
    state.session.playing = None;
    state.take_sheet(Sheet::Answers);
    state.session.strip = Some(question);
    let Some(good) = state.derived.good(state.session.leg) else {
        return Vec::new();
    };
    let found = good
        .result
        .findings
        .iter()
        .find(|finding| finding.question == question);
    let Some(finding) = found else {
        return Vec::new();
    };
    let text = crate::view::finding_sentence(state, good, finding);
    if let Some(place) = finding.place {
        let (first, last) = good.range();
        state.session.progress = place.progress.clamp(first, last);
        // From here on the place is looked at, not what was selected before.
        state.end_gesture();
        state.document.close();
        state.session.selection = None;
        let paper = scene::paper_at(state, question);
        state.session.papers.insert(state.session.leg, paper);
    }
    vec![Effect::Announce { text }]
}

/// A canvas size within what is taken (CSS px).
fn held_size(width_px: f64, height_px: f64) -> Option<(f64, f64)> {
    let held = |px: f64| px.is_finite().then(|| px.clamp(1.0, LARGEST_PX));
    Some((held(width_px)?, held(height_px)?))
}

fn drawing_size(state: &mut State, width_px: f64, height_px: f64) {
    let Some(size) = held_size(width_px, height_px) else {
        return;
    };
    if state.session.drawing_size_px == size {
        return;
    }
    state.session.drawing_size_px = size;
    for (_, paper) in &mut state.session.papers {
        if !paper.fitted {
            paper.viewport = paper.viewport.resized(size);
        }
    }
    state.session.papers.retain(|_, paper| !paper.fitted);
}
