//! Does it clear? The tightest place of the well in words.
use gearswing_gear::field::previous_tire;
use gearswing_gear::model::{Grown, MovingPart};
use gearswing_solver::numeric::sort_by;
use gearswing_solver::result::{Finding, PairClearance, TireState, Verdict};

use super::answer::AnswerText;
use super::beside::{interference, own_too_near, tire_itself};
use crate::name::name_words;
use crate::subject::{Subject, obstacle_words, part_name};

/// Other places named after the governing one; the rest are counted.
const OTHERS_NAMED: usize = 3;

pub(super) fn tightest(
    subject: &Subject,
    finding: &Finding,
    pair: usize,
    clearance: f64,
    spare: f64,
) -> AnswerText {
    let Some(pair) = subject.result.clearance.pairs.get(pair) else {
        // The row is missing only when a result was put together wrongly; the number still holds.
        return AnswerText::new(
            format!(
                "{} is {}, {} against what is required.",
                subject.own("tightest clearance"),
                subject.length(clearance),
                subject.signed(gearswing_units::Quantity::Length, spare)
            ),
            [],
        );
    };
    let mut sentence = if is_contact(finding.verdict, clearance) {
        contact(subject, pair, clearance)
    } else if spare < 0.0 {
        too_near(subject, pair, clearance, spare)
    } else {
        clear(subject, pair, clearance, spare)
    };
    sentence.push_str(&tire_itself(subject));
    sentence.push_str(&others(subject, Some(pair)));
    sentence.push_str(&only_to_jam(subject));
    let try_next = if is_contact(finding.verdict, clearance) || spare < 0.0 {
        what_to_try(subject, pair)
    } else {
        vec![
            "Prove it on jacks: swing slowly and look at this place, with the tire at full pressure."
                .to_owned(),
        ]
    };
    AnswerText { sentence, try_next }
}

pub(super) fn nothing_in_well(subject: &Subject) -> AnswerText {
    AnswerText::new(
        format!(
            "No structure is drawn around {}, so there is nothing to check its clearance against.",
            subject.the_leg()
        ),
        ["Measure the well and draw its skins, ribs and boxes, the nearest ones first."],
    )
}

fn is_contact(verdict: Verdict, clearance: f64) -> bool {
    verdict == Verdict::Bad || clearance <= 0.0
}

fn contact(subject: &Subject, pair: &PairClearance, clearance: f64) -> String {
    let who = who(subject, pair);
    let what = obstacle_words(&pair.obstacle_name, pair.obstacle);
    let place = &pair.tightest.place;
    let deepest = subject.at(place);
    let when = state_words(pair.tire);
    let depth = interference(subject, clearance, -lacking(subject, pair));
    // Where contact begins, unless it would be printed as the same place.
    let first = pair
        .first_contact
        .map(|contact| subject.at(&contact.place))
        .filter(|first| *first != deepest);
    match first {
        None => format!("{who} touches {what} {deepest}{when}: {depth}."),
        Some(first) => {
            format!("{who} touches {what}{when}, first {first}. It is deepest {deepest}: {depth}.")
        }
    }
}

fn too_near(subject: &Subject, pair: &PairClearance, clearance: f64, spare: f64) -> String {
    format!(
        "{} comes within {} of {} {}{}; {} is required, so {} is missing.",
        who(subject, pair),
        subject.size(clearance),
        obstacle_words(&pair.obstacle_name, pair.obstacle),
        subject.at(&pair.tightest.place),
        state_words(pair.tire),
        subject.length(pair.requirement.clearance),
        subject.size(-spare),
    )
}

fn clear(subject: &Subject, pair: &PairClearance, clearance: f64, spare: f64) -> String {
    let spare = if spare > 0.0 {
        format!("{} more than required", subject.size(spare))
    } else {
        "just what is required".to_owned()
    };
    format!(
        "on {} nothing touches. Tightest is the {} at {} {}{}: {}, {spare}.",
        subject.the_leg(),
        part_name(pair.part),
        obstacle_words(&pair.obstacle_name, pair.obstacle),
        subject.at(&pair.tightest.place),
        state_words(pair.tire),
        subject.size(clearance),
    )
}

/// A part of the leg, to begin a sentence.
fn who(subject: &Subject, pair: &PairClearance) -> String {
    subject.own(part_name(pair.part))
}

fn state_words(tire: Option<TireState>) -> &'static str {
    match tire {
        Some(TireState::Grown) => " when it has grown",
        Some(TireState::New) => " as fitted new",
        None => "",
    }
}

/// Other parts that touch, or come too near, besides the governing pair.
pub(super) fn others(subject: &Subject, governing: Option<&PairClearance>) -> String {
    let is_same =
        |a: &PairClearance, b: &PairClearance| a.obstacle == b.obstacle && a.part == b.part;
    let mut worst: Vec<&PairClearance> = Vec::new();
    for pair in &subject.result.clearance.pairs {
        if governing.is_some_and(|row| is_same(pair, row)) || pair.spare() >= 0.0 {
            continue;
        }
        match worst.iter_mut().find(|known| is_same(known, pair)) {
            Some(known) if pair.tightest.clearance < known.tightest.clearance => *known = pair,
            Some(_) => {}
            None => worst.push(pair),
        }
    }
    sort_by(&mut worst, |a, b| {
        a.tightest.clearance.total_cmp(&b.tightest.clearance)
    });
    let mut names: Vec<(bool, String)> = worst
        .into_iter()
        .map(|pair| {
            let what = obstacle_words(&pair.obstacle_name, pair.obstacle);
            let name = format!("{} at {what}", part_name(pair.part));
            (pair.tightest.clearance <= 0.0, name)
        })
        .collect();
    names.extend(own_too_near(subject, governing.is_some()));
    let (touching, near): (Vec<_>, Vec<_>) = names.into_iter().partition(|(touches, _)| *touches);
    format!(
        "{}{}",
        named(" Also touching", &touching),
        named(" Also nearer than required", &near)
    )
}

fn named(lead: &str, names: &[(bool, String)]) -> String {
    if names.is_empty() {
        return String::new();
    }
    let mut list: Vec<String> = names
        .iter()
        .take(OTHERS_NAMED)
        .map(|(_, name)| name.clone())
        .collect();
    if let Some(more) = names
        .len()
        .checked_sub(OTHERS_NAMED)
        .filter(|more| *more > 0)
    {
        list.push(format!("{more} more"));
    }
    format!("{lead}: {}.", list.join(", "))
}

/// The tightest place on the way up to a stop.
pub(super) fn before_stop(subject: &Subject) -> String {
    let clearance = &subject.result.clearance;
    let pair = clearance.governing.and_then(|row| clearance.pairs.get(row));
    pair.map_or_else(String::new, |pair| {
        let place = format!(
            " Up to there the tightest place is the {} at {} {}{}: {}.",
            part_name(pair.part),
            obstacle_words(&pair.obstacle_name, pair.obstacle),
            subject.at(&pair.tightest.place),
            state_words(pair.tire),
            subject.length(pair.tightest.clearance),
        );
        place + &tire_itself(subject)
    })
}

pub(super) fn only_to_jam(subject: &Subject) -> String {
    subject.result.jams.first().map_or_else(String::new, |jam| {
        format!(
            " Only the way up to the stop {} is checked.",
            subject.at(&jam.place)
        )
    })
}

fn what_to_try(subject: &Subject, pair: &PairClearance) -> Vec<String> {
    let what = obstacle_words(&pair.obstacle_name, pair.obstacle);
    let mut steps = vec![format!(
        "Measure this place first, on jacks: is {what} drawn where it stands, and the {} as it is?",
        part_name(pair.part)
    )];
    if pair.part == MovingPart::Wheel {
        if let Some(previous) = previous_tire(subject.gear, subject.leg) {
            let size = name_words(&previous.size);
            let size = if size.is_empty() {
                size
            } else {
                format!(" ({size})")
            };
            steps.push(format!("Compare with the previous tire{size}."));
        }
        let by_rule = subject
            .model()
            .is_some_and(|leg| leg.wheel.tire.grown == Grown::ByRule);
        if by_rule && pair.tire == Some(TireState::Grown) {
            steps.push(
                "Put in the tire maker's largest size in service, or measure a tire that has grown: the formula of the growth rule is from memory."
                    .to_owned(),
            );
        }
        steps.push(
            "Try a smaller tire, or a strut that shortens more before it goes in.".to_owned(),
        );
    } else {
        steps.push(format!(
            "Try another place or shape for the {}.",
            part_name(pair.part)
        ));
    }
    steps.push(format!(
        "Or trim {} off {what} there, to keep every required clearance, if the maker approves it.",
        subject.size(lacking(subject, pair))
    ));
    steps
}

/// The most that is lacking of what is required at the structure of a pair (m): what the new tire lacks there may be
/// more than what the grown one does, which touches.
fn lacking(subject: &Subject, pair: &PairClearance) -> f64 {
    let all = subject.result.clearance.pairs.iter();
    let there = all.filter(|other| other.obstacle == pair.obstacle);
    there.map(|other| -other.spare()).fold(0.0, f64::max)
}
