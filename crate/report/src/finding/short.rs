//! The number of an answer in a few words.
use gearswing_gear::model::{EmergencyWay, Source};
use gearswing_solver::result::{
    FallOutcome, Finding, FindingDetail, LoadCase, Question, Unpowered, Verdict,
};
use gearswing_units::Quantity;

use super::answer::{question_text, verdict_text};
use super::figure::{lock, over_required};
use super::locks::is_little;
use super::way_down;
use crate::cases::in_case;
use crate::subject::Subject;

/// The number of an answer in a few words: what makes it a no, where it is one. What a table shows of it is in it.
#[must_use]
pub fn finding_short(subject: &Subject, finding: &Finding) -> String {
    let short = number(subject, finding);
    let also = match &finding.detail {
        FindingDetail::OverCentre { .. } | FindingDetail::SlidingBrace { .. } => {
            let figure = lock(subject, finding);
            figure.ends_with("times").then(|| figure + " its friction")
        }
        _ if finding.verdict == Verdict::NotShown => None,
        detail => over_required(subject, detail),
    };
    match also {
        Some(also) => format!("{short}, {also}"),
        None => short,
    }
}

fn number(subject: &Subject, finding: &Finding) -> String {
    let length = |si| subject.say(Quantity::Length, si);
    if finding.question == Question::Locks
        && finding.verdict != Verdict::Good
        && let Some(why) = way_down::short(subject, finding.verdict)
    {
        return why;
    }
    if finding.verdict == Verdict::NotShown
        && let Some(look) = needs_a_look(&finding.detail)
    {
        return look.to_owned();
    }
    let falls_alone = subject
        .result
        .way_down
        .is_none_or(|down| down.way != EmergencyWay::HandPump);
    if finding.question == Question::Locks
        && finding.verdict != Verdict::Good
        && falls_alone
        && let Some(fails) = fall_fails(subject)
    {
        return fails;
    }
    match &finding.detail {
        FindingDetail::Jammed { cause } => format!("stops, {} short", length(cause.miss())),
        FindingDetail::Tightest { clearance, .. } if *clearance < 0.0 => {
            format!("{} of interference", length(-clearance))
        }
        FindingDetail::OwnTightest { clearance, .. } if *clearance <= 0.0 => {
            format!("{} into its own leg", length(-clearance))
        }
        FindingDetail::OwnTightest { clearance, .. } => {
            format!("{} to its own leg", length(*clearance))
        }
        FindingDetail::RoomTightest { clearance, .. } if *clearance <= 0.0 => {
            format!("{} too little room", length(-clearance))
        }
        FindingDetail::RoomTightest { clearance, .. } => {
            format!("{} along the trunnion", length(*clearance))
        }
        FindingDetail::Tightest { clearance, .. } => format!("{} clear", length(*clearance)),
        FindingDetail::NothingInWell => "needs a look at the well".to_owned(),
        FindingDetail::Pressure {
            needed,
            available,
            margin,
            ..
        } if *margin < 0.0 && *available <= 0.0 => {
            let what = match subject.gear.supply.source {
                Source::ConstantPressure => "accumulator too small",
                _ => "nothing drives it",
            };
            format!("{}, {what}", subject.say(subject.drive(), *needed))
        }
        FindingDetail::Pressure {
            case,
            needed,
            available,
            margin,
            ..
        } if *margin < 0.0 => {
            let lack = subject.say(subject.drive(), needed - available);
            match case {
                LoadCase::AsSet => format!("{lack} short"),
                case => format!("{lack} short {}", in_case(*case)),
            }
        }
        FindingDetail::Pressure { margin, .. } => {
            format!("{} to spare", subject.signed(Quantity::Travel, *margin))
        }
        FindingDetail::Binds { .. } => "pins bind".to_owned(),
        FindingDetail::PartnerStands { .. } => "another leg stops it".to_owned(),
        FindingDetail::DeadPoint => "dead point".to_owned(),
        FindingDetail::CannotUnlock => "does not unlock".to_owned(),
        FindingDetail::StrutJack { .. } => "strut does not shorten".to_owned(),
        FindingDetail::StageValve { .. } => "valve stays shut".to_owned(),
        FindingDetail::OverCentre { knee_push, .. } if *knee_push <= 0.0 => format!(
            "pushed off its stop, {}",
            subject.say(Quantity::Force, -knee_push)
        ),
        FindingDetail::OverCentre { knee_push, .. } if is_little(*knee_push) => {
            format!("knee held by {}", subject.say(Quantity::Force, *knee_push))
        }
        FindingDetail::OverCentre { offset, .. } => format!("{} over center", length(*offset)),
        FindingDetail::NotOverCentre { offset } => {
            format!("{} short of center", length(-offset))
        }
        FindingDetail::ExcursionStopped { at_axle, .. } => {
            format!("{} of overtravel needed", length(*at_axle))
        }
        FindingDetail::SlidingBrace { end_gap } => format!("{} from its end", length(*end_gap)),
        FindingDetail::NoBrace => "no brace".to_owned(),
    }
}

/// An answer in one line: the question, how it stands, and its number.
#[must_use]
pub fn finding_line(subject: &Subject, finding: &Finding) -> String {
    format!(
        "{} {}: {}",
        question_text(finding.question),
        verdict_text(finding.question, finding.verdict),
        finding_short(subject, finding)
    )
}

/// What has to be looked at where the model can't show the answer.
fn needs_a_look(detail: &FindingDetail) -> Option<&'static str> {
    match detail {
        FindingDetail::NothingInWell => Some("needs a look at the well"),
        FindingDetail::SlidingBrace { .. } => Some("needs a look at the latch"),
        FindingDetail::NoBrace | FindingDetail::NotOverCentre { .. } => {
            Some("needs a look at what locks it")
        }
        FindingDetail::OverCentre { .. } => Some("needs a look at the lock spring"),
        FindingDetail::Tightest { .. }
        | FindingDetail::OwnTightest { .. }
        | FindingDetail::RoomTightest { .. } => Some("needs a look at tire and leg"),
        _ => None,
    }
}

/// Where a fall without pressure ends short of down.
fn fall_fails(subject: &Subject) -> Option<String> {
    let travel = |travel| subject.say(Quantity::Travel, travel);
    let fall = subject.result.fall?;
    match fall.outcome {
        FallOutcome::ReachesLock(_) if fall.actuator == Unpowered::Released => {
            Some("falls if released".to_owned())
        }
        FallOutcome::ReachesLock(_) if fall.by_speed_alone() => {
            Some("falls by its speed alone".to_owned())
        }
        FallOutcome::ReachesLock(_) | FallOutcome::NotFollowed { .. } => None,
        FallOutcome::StopsShort { place, .. } => {
            Some(format!("falls only to {}", travel(place.travel)))
        }
        FallOutcome::StaysUp => Some("does not start down".to_owned()),
        FallOutcome::Creeps { place, .. } => Some(format!("creeps at {}", travel(place.travel))),
    }
}
