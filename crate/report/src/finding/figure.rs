//! The number of an answer as a table shows it.
use gearswing_gear::model::EmergencyWay;
use gearswing_solver::result::{Fall, Finding, FindingDetail, Question, Verdict};
use gearswing_units::Quantity;

use super::spare::times;
use super::way_down;
use crate::subject::{Subject, negative_told};

/// The head of a question's column.
#[must_use]
pub fn question_head(question: Question) -> &'static str {
    match question {
        Question::Clears => "Clears?",
        Question::Driven => "Driven?",
        Question::Locks => "Locks?",
    }
}

/// The number of an answer in no more than some letters: of a clearance what it has over what is required, or lacks of
/// it; negative where something touches, or a force is short; a word where no number tells.
#[must_use]
pub fn finding_figure(subject: &Subject, finding: &Finding) -> String {
    let units = subject.units;
    let length = |si: f64| negative_told(Quantity::Length, units, si);
    if finding.verdict == Verdict::NotShown {
        return "look".to_owned();
    }
    match &finding.detail {
        FindingDetail::Jammed { .. } => "stops".to_owned(),
        FindingDetail::Tightest { clearance, .. }
        | FindingDetail::OwnTightest { clearance, .. }
        | FindingDetail::RoomTightest { clearance, .. } => {
            over_required(subject, &finding.detail).unwrap_or_else(|| length(*clearance))
        }
        FindingDetail::Pressure { margin, .. } if margin.is_finite() && *margin >= 0.0 => {
            format!("{:.0} % spare", 100.0 * margin)
        }
        FindingDetail::Pressure {
            needed, available, ..
        } => negative_told(subject.drive(), units, available - needed),
        FindingDetail::Binds { .. } => "pins bind".to_owned(),
        FindingDetail::PartnerStands { .. } => "other leg".to_owned(),
        FindingDetail::DeadPoint => "dead point".to_owned(),
        FindingDetail::CannotUnlock => "locked".to_owned(),
        FindingDetail::StrutJack { needed, available } => {
            negative_told(Quantity::Pressure, units, available - needed)
        }
        FindingDetail::StageValve { opens, available } => {
            negative_told(Quantity::Pressure, units, available - opens)
        }
        FindingDetail::NothingInWell | FindingDetail::NoBrace => "look".to_owned(),
        FindingDetail::OverCentre { .. }
        | FindingDetail::NotOverCentre { .. }
        | FindingDetail::ExcursionStopped { .. }
        | FindingDetail::SlidingBrace { .. } => lock(subject, finding),
    }
}

/// By how much a clearance is more than required, or less; `None` where it touches or nothing is required, and of
/// what is no clearance. As long as
/// nothing touches it is the least of all places, whatever is required at each: a larger tire never has more of it.
pub(super) fn over_required(subject: &Subject, detail: &FindingDetail) -> Option<String> {
    let (FindingDetail::Tightest {
        clearance, spare, ..
    }
    | FindingDetail::OwnTightest {
        clearance, spare, ..
    }
    | FindingDetail::RoomTightest {
        clearance, spare, ..
    }) = detail
    else {
        return None;
    };
    let asked = *clearance > 0.0 && clearance != spare;
    let word = if *spare < 0.0 { "short" } else { "spare" };
    asked.then(|| format!("{} {word}", subject.size(spare.abs())))
}

/// How many times the friction given the leg comes down against, where that is what counts; else what the lock has,
/// or what keeps the leg from it.
pub(super) fn lock(subject: &Subject, finding: &Finding) -> String {
    let good = finding.verdict == Verdict::Good;
    if !good && way_down::short(subject, finding.verdict).is_some() {
        return "way down".to_owned();
    }
    let fall = subject.result.fall.as_ref();
    let falls_alone = subject
        .result
        .way_down
        .is_none_or(|down| down.way != EmergencyWay::HandPump);
    if !good && falls_alone && fall.is_some_and(Fall::fails) {
        return "no fall".to_owned();
    }
    let required = subject.gear.friction_times();
    if let Some(factor) = fall.and_then(|fall| fall.friction_factor)
        && (good || factor < required)
    {
        return times(factor, required);
    }
    if let Some(tried) = fall.and_then(|fall| fall.friction_factor_tried)
        && good
    {
        return times(tried, required);
    }
    let length = |si: f64| negative_told(Quantity::Length, subject.units, si);
    match &finding.detail {
        FindingDetail::OverCentre { knee_push, .. } if *knee_push <= 0.0 => {
            negative_told(Quantity::Force, subject.units, *knee_push)
        }
        FindingDetail::OverCentre { offset, .. } | FindingDetail::NotOverCentre { offset } => {
            length(*offset)
        }
        FindingDetail::ExcursionStopped { at_axle, .. } => length(-at_axle),
        FindingDetail::SlidingBrace { end_gap } => length(*end_gap),
        _ => String::new(),
    }
}
