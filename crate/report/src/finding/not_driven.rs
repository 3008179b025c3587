//! Can it be driven? What nothing drives, whatever the pressure, in words.
use gearswing_gear::model::{AttachTo, Joint};
use gearswing_solver::result::{Finding, LoadCase, Motion};
use gearswing_units::Quantity;

use super::answer::AnswerText;
use super::available::{available, way_of};
use super::driven::others;
use crate::cases::{in_case, joint_words, motion_words};
use crate::subject::Subject;
use crate::text::capital_first;

/// Where a finding holds, with a blank before it; empty where it has no place.
fn behind(subject: &Subject, finding: &Finding) -> String {
    let place = finding.place.as_ref();
    place.map_or_else(String::new, |place| format!(" {}", subject.at(place)))
}

pub(super) fn binds(
    subject: &Subject,
    finding: &Finding,
    joint: Joint,
    (motion, case): (Motion, LoadCase),
) -> AnswerText {
    let place = behind(subject, finding);
    let case = match case {
        LoadCase::AsSet => String::new(),
        case => format!(", {},", in_case(case)),
    };
    AnswerText::new(
        format!(
            "{} bind{place}{case} while {}: friction there, most of it at the {}, grows faster than the actuator force, so nothing moves the leg.",
            subject.own("pins"),
            motion_words(motion),
            joint_words(joint)
        ),
        [
            "Check radius and friction of that pin: a dry or tight bushing can bind where a greased one moves.",
            "Move the actuator's mount or attach point so that it has more arm at this place.",
        ],
    )
}

pub(super) fn partner_stands(subject: &Subject, finding: &Finding, leg: usize) -> AnswerText {
    let place = behind(subject, finding);
    let other = others(subject, &[leg]);
    AnswerText::new(
        format!(
            "{} is on one drive with {other}, which nothing moves{place}: the drive stops both there.",
            capital_first(&subject.the_leg())
        ),
        ["Look at the answers of that leg first: what frees it frees this one."],
    )
}

pub(super) fn dead_point(subject: &Subject, finding: &Finding) -> AnswerText {
    let place = behind(subject, finding);
    AnswerText::new(
        format!(
            "{} loses its arm{place}: no actuator force moves the leg there.",
            subject.own("actuator")
        ),
        [
            "Move the actuator's mount or attach point so that its line stays clear of the pivot all the way.",
        ],
    )
}

pub(super) fn strut_jack(subject: &Subject, needed: f64, most: f64) -> AnswerText {
    let say = |si| subject.say(Quantity::Pressure, si);
    AnswerText::new(
        format!(
            "{} needs {}; {}.",
            subject.own("strut-shortening cylinder"),
            say(needed),
            available(subject, way_of(subject, most), most)
        ),
        [
            "Read the gauge while the strut moves, and check the cylinder's figures against its maker's data.",
        ],
    )
}

pub(super) fn stage_valve(subject: &Subject, opens: f64, most: f64) -> AnswerText {
    let say = |si| subject.say(Quantity::Pressure, si);
    AnswerText::new(
        format!(
            "{}, which holds the swing back until the strut is short, opens at {}; {}.",
            subject.own("stage valve"),
            say(opens),
            available(subject, way_of(subject, most), most)
        ),
        ["Check the figure of the valve against its maker's data before changing either."],
    )
}

pub(super) fn cannot_unlock(subject: &Subject) -> AnswerText {
    let on_leg = subject
        .model()
        .is_some_and(|leg| leg.actuator.attach_to == AttachTo::Leg);
    let why = if on_leg {
        "it works on the leg, and a locked knee does not give way to the leg"
    } else {
        "pressed to retract, it drives the knee further into its lock"
    };
    AnswerText::new(
        format!(
            "{} can't bring the knee back through the straight line: {why}.",
            subject.own("actuator")
        ),
        [
            "Say so if a separate unlock device (actuator, hook, cable) unlocks the knee.",
            "Or let the actuator work on a brace link, so that it pulls the knee through first.",
        ],
    )
}
