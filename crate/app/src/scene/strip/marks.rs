//! Places of the travel that are worth going to: where something touches, where most is needed, where the leg
//! stops.
use gearswing_report::page::notes::leg_at;
use gearswing_report::page::transport::{ScrubMark, mark_words};
use gearswing_solver::numeric::sort_by;
use gearswing_solver::result::{
    ClearanceCurve, Finding, FindingDetail, MechanismEventKind, Motion, PairClearance,
};

use super::curve::curve_of;
use crate::state::{Good, State};
use crate::view::obstacle_name;

/// A place worth going to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct StripMark<'a> {
    /// Where (ratio).
    pub(crate) progress: f64,
    /// What is there.
    pub(crate) what: ScrubMark<'a>,
}

impl StripMark<'_> {
    /// Something is wrong there.
    pub(crate) fn is_bad(&self) -> bool {
        match self.what {
            ScrubMark::Touches(..)
            | ScrubMark::TouchesOwn(..)
            | ScrubMark::Free
            | ScrubMark::Stalls
            | ScrubMark::Stops => true,
            ScrubMark::Tightest(clearance) | ScrubMark::TightestOwn(clearance) => clearance <= 0.0,
            ScrubMark::MostNeeded(..)
            | ScrubMark::LeastMoment
            | ScrubMark::DeadPoint
            | ScrubMark::Seen
            | ScrubMark::Note(_) => false,
        }
    }
}

/// The next mark before or after the place shown, and what is there.
pub(crate) fn next_mark(state: &State, up: bool) -> Option<(f64, String)> {
    let good = state.derived.good(state.session.leg)?;
    let here = state.session.progress;
    let mut marks = strip_marks(state, good).into_iter();
    let found = if up {
        marks.find(|mark| mark.progress > here)
    } else {
        marks.rfind(|mark| mark.progress < here)
    }?;
    Some((found.progress, mark_words(found.what, state.session.units)))
}

/// All marks of the selected leg, from down to up.
pub(crate) fn strip_marks<'a>(state: &'a State, good: &'a Good) -> Vec<StripMark<'a>> {
    let result = &good.result;
    let clearance = &result.clearance;
    let mut marks = Vec::new();
    let mut mark = |progress, what| marks.push(StripMark { progress, what });
    let contacts = clearance.pairs.iter().filter_map(|pair| {
        let name = obstacle_name(good, pair.obstacle);
        let what = ScrubMark::Touches(pair.part, pair.tire, name, pair.obstacle);
        Some((pair.first_contact?.place.progress, what))
    });
    let own = clearance.own.iter().filter_map(|own| {
        let what = ScrubMark::TouchesOwn(own.tire, own.part);
        Some((own.first_contact?.place.progress, what))
    });
    let first = |a: &(f64, _), b: &(f64, _)| a.0.total_cmp(&b.0);
    for (progress, what) in contacts.min_by(first).into_iter().chain(own.min_by(first)) {
        mark(progress, what);
    }
    if let Some((progress, tightest)) = result.findings.iter().find_map(tightest) {
        mark(progress, tightest);
    }
    let governing = clearance.governing.and_then(|row| clearance.pairs.get(row));
    if let Some(progress) = governing.and_then(|pair| free_again(&clearance.curves, pair)) {
        mark(progress, ScrubMark::Free);
    }
    let force = &result.force;
    let most = match state.session.way() {
        Motion::Retract => force.peak,
        Motion::Extend => force.extend_peak.filter(|peak| peak.pressure > 0.0),
    };
    if let Some(peak) = most {
        let what = ScrubMark::MostNeeded(result.force.driven_by, peak.pressure);
        mark(peak.place.progress, what);
    }
    if let Some(least) = result.fall.as_ref().and_then(|fall| fall.least_moment) {
        mark(least.place.progress, ScrubMark::LeastMoment);
    }
    for event in &result.events {
        if event.kind == MechanismEventKind::ActuatorDeadPoint {
            mark(event.place.progress, ScrubMark::DeadPoint);
        }
    }
    if let Some(place) = result.force.stalls_at {
        mark(place.progress, ScrubMark::Stalls);
    }
    if let Some(jam) = result.jams.first() {
        mark(jam.place.progress, ScrubMark::Stops);
    }
    if let Some((_, Ok(seen))) = state.later.stop(state.session.leg) {
        mark(seen.place.progress, ScrubMark::Seen);
    }
    for (at, note) in state.gear().notes.iter().enumerate() {
        if let (Some(progress), true) = (note.progress, leg_at(note) == Some(state.session.leg)) {
            mark(progress, ScrubMark::Note(at + 1));
        }
    }
    sort_by(&mut marks, |a, b| a.progress.total_cmp(&b.progress));
    marks
}

/// Place and clearance of which an answer speaks.
fn tightest<'a>(finding: &Finding) -> Option<(f64, ScrubMark<'a>)> {
    let mark = match finding.detail {
        FindingDetail::Tightest { clearance, .. } => ScrubMark::Tightest(clearance),
        FindingDetail::OwnTightest { clearance, .. } => ScrubMark::TightestOwn(clearance),
        _ => return None,
    };
    Some((finding.place?.progress, mark))
}

/// Where what touches comes free again on the way up, on its curve; `None` where it does not.
fn free_again(curves: &[ClearanceCurve], pair: &PairClearance) -> Option<f64> {
    if pair.tightest.clearance > 0.0 {
        return None;
    }
    let curve = curve_of(curves, pair)?;
    let deepest = pair.tightest.place.progress;
    curve.points.windows(2).find_map(|two| {
        let [a, b] = two else { return None };
        let comes_free = b.progress > deepest && a.clearance <= 0.0 && b.clearance > 0.0;
        comes_free.then(|| {
            let share = a.clearance / (a.clearance - b.clearance);
            a.progress + share * (b.progress - a.progress)
        })
    })
}
