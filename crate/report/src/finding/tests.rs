//! Sentences of every kind of answer.
use std::fmt::Write as _;

use gearswing_gear::model::{Gear, Grown, Kept, MovingPart, PREVIOUS_TIRE};
use gearswing_solver::result::{
    Assumption, Caution, FindingDetail, Jam, JamCause, LoadCase, Motion, Phase, Place, Question,
    TireState, Verdict,
};
use gearswing_units::UnitChoice;

use super::{FindingText, finding_text};
use crate::sample::{finding, full_gear, pair, place, result, subject};

const METRIC: UnitChoice = UnitChoice::METRIC;

fn page(text: &FindingText) -> String {
    let mut page = format!("{} {}\n{}\n", text.question, text.verdict, text.sentence);
    for governing in &text.governs {
        let mark = governing.mark.map_or("", |mark| mark.as_str());
        let _ = writeln!(page, "rests on [{mark}] {}", governing.text);
    }
    for caution in &text.cautions {
        let _ = writeln!(page, "caution: {caution}");
    }
    for step in &text.try_next {
        let _ = writeln!(page, "try: {step}");
    }
    page
}

/// The sentence of an answer of the sample result.
fn sentence(question: Question, verdict: Verdict, detail: FindingDetail) -> String {
    let (gear, result) = (full_gear(), result());
    let subject = subject(&gear, &result, METRIC);
    finding_text(&subject, &finding(question, verdict, detail)).sentence
}

#[test]
fn whole_answers_in_both_systems() {
    let (mut gear, result) = (full_gear(), result());
    gear.legs[0].wheel.tire.grown = Grown::ByRule;
    for (name, units) in [("inch", UnitChoice::INCH), ("metric", METRIC)] {
        let subject = subject(&gear, &result, units);
        let pages: Vec<_> = result
            .findings
            .iter()
            .map(|finding| page(&finding_text(&subject, finding)))
            .collect();
        insta::assert_snapshot!(format!("answers_{name}"), pages.join("\n"));
    }
}

#[test]
fn contact_names_part_place_and_depth() {
    let gear = full_gear();
    let result = result();
    let subject = subject(&gear, &result, METRIC);
    assert_eq!(
        finding_text(&subject, &result.findings[0]).sentence,
        "The right main's tire touches Bay rib when it has grown, first at 71.2 % of travel. \
         It is deepest at 78.0 % of travel: 6.3 mm of interference; to keep all that is required there, 11.5 mm. The tire itself, to Bay rib at 78.0 % of travel: 1.2 mm (12.7 mm required) as fitted new, 6.3 mm of interference when it has grown."
    );
}

#[test]
fn every_clearance_sentence() {
    let gear = full_gear();
    let mut lines = String::new();
    let wheel = MovingPart::Wheel;
    for (verdict, pairs, leg_name) in [
        (
            Verdict::Marginal,
            vec![pair(wheel, Some(TireState::New), 0.004, 0.0127)],
            "Nose",
        ),
        (
            Verdict::Good,
            vec![pair(wheel, Some(TireState::Grown), 0.0152, 0.003)],
            "LH gear",
        ),
        (
            Verdict::Good,
            vec![pair(MovingPart::ActuatorBody, None, 0.003, 0.003)],
            "",
        ),
        (
            Verdict::Bad,
            vec![pair(wheel, Some(TireState::Grown), -0.00001, 0.003)],
            "Main",
        ),
        (
            Verdict::Bad,
            vec![
                pair(wheel, Some(TireState::New), -0.001, 0.0127),
                pair(wheel, Some(TireState::Grown), -0.008, 0.003),
                pair(MovingPart::LowerLink, None, -0.002, 0.003),
                pair(MovingPart::LegBody, None, 0.001, 0.003),
            ],
            "\u{202e}Right\u{7} main\n",
        ),
    ] {
        let mut result = result();
        leg_name.clone_into(&mut result.name);
        result.clearance.pairs = pairs;
        let worst = usize::from(result.clearance.pairs.len() > 1);
        let pair = &result.clearance.pairs[worst];
        let detail = FindingDetail::Tightest {
            pair: worst,
            clearance: pair.tightest.clearance,
            spare: pair.spare(),
        };
        let text = finding_text(
            &subject(&gear, &result, METRIC),
            &finding(Question::Clears, verdict, detail),
        );
        let _ = writeln!(lines, "{}: {}", text.verdict, text.sentence);
    }
    let nothing = sentence(
        Question::Clears,
        Verdict::NotShown,
        FindingDetail::NothingInWell,
    );
    lines.push_str(&nothing);
    insta::assert_snapshot!(lines);
}

#[test]
fn a_jam_says_why_and_that_the_rest_is_not_checked() {
    let causes = [
        JamCause::BraceTooShort {
            reach: 0.412,
            span: 0.4203,
        },
        JamCause::BraceTooLong {
            least: 0.2,
            span: 0.19,
        },
        JamCause::SlidingBraceEndsLong {
            longest: 0.7,
            asked: 0.71,
        },
        JamCause::SlidingBraceEndsShort {
            shortest: 0.4,
            asked: 0.39,
        },
        JamCause::ActuatorEndsLong {
            longest: 0.58,
            asked: 0.59,
        },
        JamCause::ActuatorEndsShort {
            shortest: 0.37,
            asked: 0.3699,
        },
    ];
    let lines: Vec<_> = causes
        .map(|cause| {
            sentence(
                Question::Driven,
                Verdict::Bad,
                FindingDetail::Jammed { cause },
            )
        })
        .to_vec();
    insta::assert_snapshot!(lines.join("\n"));

    let gear = full_gear();
    let mut result = result();
    result.jams.push(Jam {
        place: place(0.62),
        cause: causes[0],
    });
    let text = finding_text(&subject(&gear, &result, METRIC), &result.findings[0]);
    assert!(
        text.sentence
            .ends_with("Only the way up to the stop at 62.0 % of travel is checked.")
    );
}

#[test]
fn every_drive_and_lock_sentence() {
    use Question::{Driven, Locks};
    let bad = FindingDetail::Pressure {
        case: LoadCase::AsSet,
        motion: Motion::Retract,
        needed: 8.0e6,
        available: 6.9e6,
        margin: -0.16,
        required: 0.1,
        mount_load: 2900.0,
    };
    let tight = FindingDetail::Pressure {
        case: LoadCase::AsSet,
        motion: Motion::Retract,
        needed: 6.6e6,
        available: 6.9e6,
        margin: 0.0435,
        required: 0.1,
        mount_load: 2400.0,
    };
    let in_a_turn = FindingDetail::Pressure {
        case: LoadCase::Turn,
        motion: Motion::Retract,
        needed: 8.4e6,
        available: 6.9e6,
        margin: -0.217,
        required: 0.1,
        mount_load: 3100.0,
    };
    let extending = FindingDetail::Pressure {
        case: LoadCase::AsSet,
        motion: Motion::Extend,
        needed: 7.0e6,
        available: 6.9e6,
        margin: -0.0145,
        required: 0.1,
        mount_load: 2900.0,
    };
    let lock = |ground_into_lock, knee_push| FindingDetail::OverCentre {
        offset: 0.0004,
        ground_into_lock,
        knee_push,
    };
    let lines = [
        sentence(Driven, Verdict::Bad, bad),
        sentence(Driven, Verdict::Marginal, tight),
        sentence(Driven, Verdict::Bad, in_a_turn),
        sentence(Driven, Verdict::Bad, extending),
        sentence(Driven, Verdict::Bad, FindingDetail::DeadPoint),
        sentence(Driven, Verdict::Bad, FindingDetail::CannotUnlock),
        sentence(
            Driven,
            Verdict::Bad,
            FindingDetail::StrutJack {
                needed: 8e6,
                available: 6.9e6,
            },
        ),
        sentence(
            Driven,
            Verdict::Bad,
            FindingDetail::StageValve {
                opens: 8e6,
                available: 6.9e6,
            },
        ),
        sentence(Locks, Verdict::Bad, lock(-0.03, 12.0)),
        sentence(Locks, Verdict::Marginal, lock(0.03, -5.0)),
        sentence(Locks, Verdict::Marginal, lock(0.0, 0.0)),
        sentence(Locks, Verdict::Marginal, lock(0.03, 2.0)),
        sentence(
            Locks,
            Verdict::Bad,
            FindingDetail::NotOverCentre { offset: -0.0012 },
        ),
        sentence(
            Locks,
            Verdict::Bad,
            FindingDetail::NotOverCentre { offset: 0.0 },
        ),
        sentence(
            Locks,
            Verdict::Bad,
            FindingDetail::ExcursionStopped {
                at_axle: 0.0042,
                allowed: 0.002,
            },
        ),
        sentence(
            Locks,
            Verdict::NotShown,
            FindingDetail::SlidingBrace { end_gap: 0.0002 },
        ),
        sentence(
            Locks,
            Verdict::NotShown,
            FindingDetail::SlidingBrace { end_gap: 0.0 },
        ),
        sentence(
            Locks,
            Verdict::Bad,
            FindingDetail::SlidingBrace { end_gap: 0.012 },
        ),
        sentence(Locks, Verdict::NotShown, FindingDetail::NoBrace),
        sentence(
            Question::Clears,
            Verdict::Bad,
            FindingDetail::Jammed {
                cause: JamCause::BraceTooShort {
                    reach: 0.4,
                    span: 0.41,
                },
            },
        ),
    ];
    insta::assert_snapshot!(lines.join("\n"));
}

#[test]
fn every_assumption_and_caution() {
    let (gear, result) = (full_gear(), result());
    let mut finding = result.findings[0].clone();
    finding.assumptions = vec![
        Assumption::GrowthRuleFromMemory,
        Assumption::TireSizeFromMemory,
        Assumption::TireSizePublished,
        Assumption::TireMeasured,
        Assumption::TireMaker,
        Assumption::TireUnstated,
        Assumption::ClearanceCommonPractice,
        Assumption::ClearanceUser,
        Assumption::MarginCommonPractice,
        Assumption::MarginWithoutFriction,
        Assumption::MarginUser,
        Assumption::NoPinFriction,
        Assumption::FrontViewAir,
        Assumption::SeparateUnlock,
        Assumption::DeadWeightOnly,
        Assumption::OverCentreCommonPractice,
        Assumption::ContactCleared,
        Assumption::LatchNotModelled,
    ];
    finding.cautions = vec![
        Caution::MovingLeg,
        Caution::Pressure,
        Caution::Trimming,
        Caution::TireApproval,
        Caution::Unlocked,
        Caution::MountStrength,
    ];
    let text = finding_text(&subject(&gear, &result, METRIC), &finding);
    insta::assert_snapshot!(page(&text));
}

#[test]
fn places_in_words() {
    let (gear, mut result) = (full_gear(), result());
    let over_centre = result.clone();
    result.excursion = None;
    let straight = subject(&gear, &over_centre, METRIC).at(&place(0.0));
    assert_eq!(straight, "with the knee on the straight line");
    let subject = subject(&gear, &result, METRIC);
    let at = |phase, travel| {
        subject.at(&Place {
            phase,
            ..place(travel)
        })
    };
    assert_eq!(at(Phase::Swing, 0.0), "with the gear down");
    assert_eq!(at(Phase::Swing, 0.001), "at 0.1 % of travel");
    assert_eq!(at(Phase::Swing, 0.9996), "with the gear up");
    assert_eq!(
        at(Phase::Shorten, 0.0),
        "while the strut shortens, before the swing"
    );
    assert_eq!(
        at(Phase::Unlock, -0.002),
        "while the knee passes the straight line"
    );
}

#[test]
fn a_small_size_never_reads_as_zero() {
    let (gear, result) = (full_gear(), result());
    let metric = subject(&gear, &result, METRIC);
    let inch = subject(&gear, &result, UnitChoice::INCH);
    assert_eq!(metric.size(1e-5), "less than 0.1 mm");
    assert_eq!(inch.size(1e-5), "less than 0.01 in");
    assert_eq!(metric.size(0.0), "0.0 mm");
    assert_eq!(metric.size(0.00016), "0.2 mm");
}

#[test]
fn the_previous_tire_is_named() {
    let (mut gear, result) = (full_gear(), result());
    let asks = |gear: &Gear| {
        let subject = subject(gear, &result, METRIC);
        let steps = finding_text(&subject, &result.findings[0]).try_next;
        steps
            .into_iter()
            .find(|step| step.contains("previous tire"))
    };
    assert_eq!(asks(&gear), None);
    let mut before = gear.clone();
    before.legs[0].wheel.tire.size = "5.00-5".to_owned();
    gear.kept.push(Kept::of(&before, PREVIOUS_TIRE.to_owned()));
    assert_eq!(
        asks(&gear).as_deref(),
        Some("Compare with the previous tire (5.00-5).")
    );
}
