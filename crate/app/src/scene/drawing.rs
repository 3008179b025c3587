//! The drawing of the selected leg at its place on the path.
use gearswing_report::page::names::short;
use gearswing_report::page::sheets::Sheet;
use gearswing_report::page::transport::{ScrubMark, mark_short};
use gearswing_solver::result::{
    FindingDetail, MechanismEventKind, OwnClearance, Tightest, TireState,
};

use super::labels::Placer;
use super::{
    Carrier, Handle, Pen, PosedLeg, Role, Scene, ScreenPoint, Shape, detail, dimension, drag_label,
    grips, handles, leg, loads, now, paper_of, scale, springs, stance_of, stroke, well,
};
use crate::state::{Good, Hover, State};

/// Structure has its names from this height of the drawing on (CSS px).
const NAMED_FROM_PX: f64 = 280.0;
/// A drawing lower than this is a band, in which nothing is written but what is pointed at (CSS px).
const BAND_PX: f64 = 128.0;
/// Least drawing with room for the names of everything (CSS px).
const ROOMY_PX: (f64, f64) = (480.0, 280.0);

/// The drawing.
#[must_use]
pub fn drawing(state: &State) -> Scene {
    let view = paper_of(state).viewport;
    let session = &state.session;
    let mut pen = Pen::new(view);
    let derived = state.derived.leg(session.leg);
    let faded = derived.is_some_and(|leg| leg.faded());
    if let Some(model) = state.gear().legs.get(session.leg) {
        // structure is drawn as it is in the document: its corners are what is dragged
        well::well(&mut pen, model);
    }
    pen.faded = faded;
    let good = derived.and_then(|leg| leg.good.as_ref());
    let current = good.filter(|_| !faded);
    let circled = current.map_or_else(Vec::new, |good| detail::circled(state, good));
    if let Some(good) = good {
        ways(&mut pen, good);
    }
    for found in &circled {
        detail::circle(&mut pen, found);
    }
    let still = pen.marks.len();
    let placer = good.map(|good| result(&mut pen, state, good));
    pen.faded = false;
    let mut placer = placer.unwrap_or_else(|| Placer::new(&pen.marks, view.size_px()));
    if let Some(model) = state.gear().legs.get(session.leg) {
        let only = if is_roomy(pen.view.size_px()) {
            None
        } else {
            good.and_then(governing_obstacle)
        };
        // where there is no place for them they would stand on what is looked at
        if view.size_px().1 >= NAMED_FROM_PX {
            well::names(&mut pen, &mut placer, model, only);
        }
    }
    let is_band = view.size_px().1 < BAND_PX;
    for found in circled.iter().filter(|_| !is_band) {
        detail::letter(&mut pen, &mut placer, found);
    }
    let named = if is_roomy(view.size_px()) { 4 } else { 2 };
    stroke::arcs(&mut pen, &mut placer, state, named);
    let handles = handles(state);
    if points_count(state) {
        handle_marks(&mut pen, &handles);
    }
    snap_marks(&mut pen, state);
    flags(&mut pen, &mut placer, state, &handles);
    let has_detail = current.is_some_and(|good| detail::detail_now(state, good).is_some());
    if !is_band {
        scale::scale_bar(&mut pen, session.units);
        if let Some(model) = state.gear().legs.get(session.leg) {
            scale::way(&mut pen, model);
        }
    }
    drag_label::label(&mut pen, state, &handles, has_detail, still);
    let (width_px, height_px) = view.size_px();
    Scene {
        width_px,
        height_px,
        marks: pen.marks,
        breaks: vec![still],
        handles,
    }
}

/// Whether a drawing has room for the names of everything; on a smaller one stand those that the answer speaks of.
fn is_roomy((width_px, height_px): (f64, f64)) -> bool {
    width_px >= ROOMY_PX.0 && height_px >= ROOMY_PX.1
}

/// Whether points are what is looked for: a drawing that is only looked at is one without their marks, and where it is
/// small without their letters.
fn points_count(state: &State) -> bool {
    let session = &state.session;
    session.hover != Hover::Off
        || session.selection.is_some()
        || session.sheet == Sheet::Measurements
}

/// The piece of structure with the least to spare.
fn governing_obstacle(good: &Good) -> Option<usize> {
    let clearance = &good.result.clearance;
    Some(clearance.pairs.get(clearance.governing?)?.obstacle)
}

/// Where the leg comes past, and where it ends.
fn ways(pen: &mut Pen, good: &Good) {
    let clearance = &good.result.clearance;
    let swept = clearance.wheel_envelope.iter();
    for polyline in swept.chain(&clearance.leg_envelope) {
        pen.path(Role::Envelope, polyline, false);
    }
    leg::ghosts(pen, good);
}

/// What comes out of the result at the place shown.
fn result(pen: &mut Pen, state: &State, good: &Good) -> Placer {
    let session = &state.session;
    let size = pen.view.size_px();
    let Some(here) = now(good, session.progress) else {
        return Placer::new(&pen.marks, size);
    };
    let outlines = leg::outlines(&good.leg, &here.pose);
    leg::standing(pen, &outlines);
    // over what stands, whose parts would cover it
    if let Some((_, _, before)) = state.before.leg(state.gear(), session.leg) {
        leg::before(pen, before, session.progress);
    }
    leg::centre_lines(pen, good, &here.pose);
    let named_springs = springs::springs(pen, good, &here.pose);
    let joints = leg::joints(&good.leg, &here.pose);
    leg::pins(pen, &joints);
    for event in &good.result.events {
        if event.kind == MechanismEventKind::ActuatorDeadPoint {
            let at = pen.view.to_screen(event.point);
            pen.circle_px(Role::Leader, at, 7.0, false);
        }
    }
    if !pen.faded {
        dimension::contacts(pen, &good.leg, &outlines, &here.clearances);
    }
    // what the mount has to carry is told while an end of the actuator is in hand
    let only = (!session.loads).then_some(short::ACTUATOR_MOUNT);
    let is_told = (session.loads || stroke::stroke(state).is_some()) && !pen.faded;
    let arrows = is_told.then(|| loads::arrows(pen, good, &here, only, session.units));
    let own = own_leg_governs(good, here.pose.place.progress);
    let near = own.map(|(tightest, tire)| (tightest, Some(tire)));
    let of_well = || {
        here.clearances
            .first()
            .map(|near| (near.at.tightest, near.at.tire))
    };
    let near = near.or_else(of_well);
    if let Some((near, _)) = &near {
        dimension::dimension(pen, near);
    }
    let mut placer = Placer::new(&pen.marks, size);
    if let Some((near, tire)) = near.as_ref().filter(|_| size.1 >= BAND_PX) {
        dimension::dimension_text(pen, &mut placer, near, *tire, session.units);
    }
    let mut named: Vec<ScreenPoint> = Vec::new();
    let lettered = is_roomy(size) || points_count(state);
    for joint in joints.iter().filter(|_| lettered) {
        let at = pen.view.to_screen(joint.at);
        // joints in one place share the first one's label
        let is_new = named
            .iter()
            .all(|other| (other.x_px - at.x_px).hypot(other.y_px - at.y_px) > 3.0);
        if is_new {
            placer.label(pen, Role::Label, at, joint.name);
            named.push(at);
        }
    }
    if is_roomy(size) {
        springs::names(pen, &mut placer, &named_springs);
    }
    if let Some(arrows) = arrows {
        arrows.texts(pen, &mut placer, session.units);
    }
    placer
}

/// The gap between the tire and its own leg, where the first answer speaks of it.
pub(super) fn own_leg(good: &Good) -> Option<&OwnClearance> {
    let FindingDetail::OwnTightest { row, .. } = good.result.findings.first()?.detail else {
        return None;
    };
    good.result.clearance.own.get(row)
}

/// The same, where it speaks of it here.
pub(super) fn own_leg_governs(good: &Good, progress: f64) -> Option<(Tightest, TireState)> {
    let own = own_leg(good).filter(|own| own.tightest.place.progress == progress)?;
    Some((own.tightest, own.tire))
}

fn handle_marks(pen: &mut Pen, handles: &[Handle]) {
    for handle in handles {
        let role = if handle.selected {
            Role::HandleSelected
        } else {
            Role::Handle
        };
        let half = if handle.selected { 5.0 } else { 3.0 };
        let corner = |x: f64, y: f64| ScreenPoint {
            x_px: handle.at.x_px + x * half,
            y_px: handle.at.y_px + y * half,
        };
        pen.put(
            role,
            Shape::Path {
                points: vec![
                    corner(-1.0, -1.0),
                    corner(1.0, -1.0),
                    corner(1.0, 1.0),
                    corner(-1.0, 1.0),
                ],
                closed: true,
                filled: handle.selected,
            },
        );
    }
}

/// The numbers of the notes that hang on points.
fn flags(pen: &mut Pen, placer: &mut Placer, state: &State, handles: &[Handle]) {
    for (at, note) in state.gear().notes.iter().enumerate() {
        if let Some(point) = handles.iter().find(|handle| handle.id == note.on) {
            placer.label(
                pen,
                Role::Governing,
                point.at,
                &mark_short(ScrubMark::Note(at + 1), state.session.units),
            );
        }
    }
}

/// Lines to what the dragged point has snapped to.
fn snap_marks(pen: &mut Pen, state: &State) {
    let Some(snapped) = &state.session.snapped else {
        return;
    };
    let selected = state.session.selection.as_deref();
    let carrier = grips(state.gear(), state.session.leg)
        .into_iter()
        .find(|grip| Some(grip.path.as_str()) == selected)
        .map_or(Carrier::Airframe, |grip| grip.carrier);
    let stance: PosedLeg = stance_of(state);
    let at = stance.place(carrier, snapped.point);
    for to in &snapped.to {
        let to = stance.place(carrier, *to);
        pen.line(Role::Snap, at, to);
        let to = pen.view.to_screen(to);
        pen.circle_px(Role::Snap, to, 7.0, false);
    }
}
