//! Every cause, reading and check has its sentence, with its numbers in the units chosen.
use gearswing_gear::model::{HowFar, Joint, MovingPart, SeenStop};
use gearswing_solver::faults::check_stop;
use gearswing_solver::result::{
    Check, Demand, Explanation, Finds, Fit, JamCause, NextCheck, Phase, Place, ReadingFit,
    StopCause, StopExplained, TireState,
};
use gearswing_solver::stop::StopError;
use gearswing_units::UnitChoice;

use super::sentence::reading_words;
use super::*;
use crate::sample::full_gear;

fn causes() -> Vec<(StopCause, &'static [&'static str])> {
    let (obstacle, part, tire) = (0, MovingPart::Wheel, Some(TireState::Grown));
    vec![
        (
            StopCause::Touches {
                obstacle,
                part,
                tire,
                clearance: -0.0021,
            },
            &["grown tire", "Bay rib", "interfere by 2.1 mm"],
        ),
        (
            StopCause::Touches {
                obstacle: 1,
                part: MovingPart::LowerLink,
                tire: None,
                clearance: 0.0012,
            },
            &[
                "lower brace link",
                "Upper skin",
                "clearance there is 1.2 mm",
            ],
        ),
        (
            StopCause::StrutLong {
                missing: 0.02,
                amount: 0.05,
                obstacle,
                part,
                tire,
            },
            &["20.0 mm short", "50.0 mm", "Bay rib"],
        ),
        (
            StopCause::ForceShort {
                needed: Demand::Pressure(5e6),
                available: Demand::Pressure(4e6),
            },
            &["needs 50.0 bar", "moves 40.0 bar at most"],
        ),
        (
            StopCause::ForceShort {
                needed: Demand::Force(500.0),
                available: Demand::Force(400.0),
            },
            &["needs 500 N", "moves 400 N at most"],
        ),
        (
            StopCause::BatteryLow {
                open_circuit: 11.0,
                or_less: true,
                file: 12.6,
            },
            &["11.0 V or less", "12.6 V"],
        ),
        (StopCause::BatteryResists { extra: 0.03 }, &["0.03"]),
        (StopCause::AtItsEnd, &["end of its own way"]),
        (
            StopCause::StrutStays {
                needed: Demand::Pressure(2e6),
            },
            &["strut-shortening cylinder needs 20.0 bar"],
        ),
        (StopCause::BadContact { extra: 0.02 }, &["0.02"]),
        (
            StopCause::SourceWeak {
                gives: Demand::Pressure(2e6),
                or_less: false,
                file: Demand::Pressure(3e6),
            },
            &["20.0 bar,", "30.0 bar"],
        ),
        (
            StopCause::Friction {
                extra_thrust: 300.0,
                or_more: true,
                extra_moment: Some(20.0),
                pin_factor: Some(2.5),
            },
            &["300 N or more", "20.0 N·m", "2.5"],
        ),
        (StopCause::HeldThere { thrust: 150.0 }, &["150 N"]),
        (
            StopCause::Binds {
                joint: Joint::Trunnion,
            },
            &["trunnion"],
        ),
        (StopCause::ActuatorEnds { left: 0.003 }, &["3.0 mm left"]),
        (
            StopCause::Jams {
                cause: JamCause::BraceTooShort {
                    reach: 0.5,
                    span: 0.51,
                },
            },
            &["10.0 mm too short"],
        ),
        (
            StopCause::SwitchEarly {
                travel: 0.9,
                file: 1.0,
            },
            &["90.0 %", "100.0 %", "switch"],
        ),
        (
            StopCause::PressureSwitchLow {
                opens: 3e6,
                file: 6e6,
            },
            &["30.0 bar", "60.0 bar"],
        ),
    ]
}

#[test]
fn every_cause_has_its_numbers() {
    let gear = full_gear();
    let stopped = Stopped {
        gear: &gear,
        leg: 0,
        units: UnitChoice::METRIC,
    };
    for (cause, parts) in causes() {
        let text = cause_sentence(&stopped, &cause);
        println!("{text}");
        assert!(text.ends_with('.'), "{text}");
        for part in parts {
            assert!(text.contains(part), "{text} lacks {part}");
        }
    }
}

#[test]
fn readings_say_what_is_asked_and_what_was_seen() {
    let gear = full_gear();
    let stopped = Stopped {
        gear: &gear,
        leg: 0,
        units: UnitChoice::METRIC,
    };
    let say = |reading| reading_words(&stopped, &reading, 0.02);
    assert_eq!(
        say(ReadingFit::HowFar {
            asked: None,
            seen: 0.9,
            off: 0.0
        }),
        "stands at 90.0 %, chosen to fit"
    );
    // half a percent is a quarter of the ± of the place: what is off more is not the place
    let place = |off| {
        say(ReadingFit::HowFar {
            asked: Some(0.875),
            seen: 0.88,
            off,
        })
    };
    assert_eq!(
        place(0.49),
        "to stand at 87.5 % and not before, seen at 88.0 %: 0.5 % off, 0.2 times its ±"
    );
    assert_eq!(
        place(3.73),
        "to stand at 87.5 %, seen at 88.0 %: 0.5 % off; and by drawing and loads it would have stood elsewhere: in all 1.9 times its ±"
    );
    assert_eq!(
        say(ReadingFit::Pressure {
            asked: 3e6,
            seen: 2.5e6,
            off: 2.04
        }),
        "gauge 30.0 bar, read 25.0 bar: 5.00 bar off, 1.0 times its ±"
    );
    assert_eq!(
        say(ReadingFit::Pump {
            asked: true,
            seen: false,
            off: 3.03
        }),
        "pump runs on, had stopped: disagrees"
    );
    assert!(
        say(ReadingFit::Voltage {
            asked: 11.0,
            seen: 2.0,
            off: 220.0
        })
        .ends_with("9.0 V off, more than 100 times its ±")
    );
}

fn explanation(cause: StopCause, fit: Fit, score: f64) -> Explanation {
    Explanation {
        cause,
        fit,
        readings: Vec::new(),
        may_trip: false,
        chi_squared: score,
        fitted: 0,
        score,
    }
}

#[test]
fn the_lead_never_says_more_than_the_numbers_carry() {
    let gear = full_gear();
    let stopped = Stopped {
        gear: &gear,
        leg: 0,
        units: UnitChoice::METRIC,
    };
    let mut found = StopExplained {
        place: Place {
            phase: Phase::Swing,
            progress: 0.9,
            travel: 0.9,
            swing: 1.3,
        },
        travel_within: 0.02,
        explanations: vec![
            explanation(StopCause::HeldThere { thrust: 1.0 }, Fit::Fits, 1.0),
            explanation(StopCause::BadContact { extra: 0.1 }, Fit::Fits, 2.0),
        ],
        told_apart: false,
        next_check: None,
        makes: Demand::Pressure(7e6),
        rest_voltage: Some(12.6),
    };
    let lead = stop_lead(&stopped, &found);
    assert!(lead.starts_with("The right main stood at 90.0 %"), "{lead}");
    assert!(lead.contains("does not tell"), "{lead}");
    let next = NextCheck {
        check: Check::MotorVolts,
        if_first: Finds::Voltage(10.0),
        second: 1,
        if_second: Finds::Voltage(8.0),
    };
    let text = check_sentence(&stopped, &next);
    assert!(
        text.contains("about 10.0 V speaks for no. 1") && text.contains("for no. 2"),
        "{text}"
    );
    found.told_apart = true;
    assert!(stop_lead(&stopped, &found).contains("stay possible"));
    for one in &mut found.explanations {
        one.fit = Fit::RuledOut;
    }
    assert!(stop_lead(&stopped, &found).contains("None of the explanations"));
}

#[test]
fn what_cannot_be_explained_says_why() {
    let gear = full_gear();
    let stopped = Stopped {
        gear: &gear,
        leg: 0,
        units: UnitChoice::METRIC,
    };
    let text = stop_error_text(
        &stopped,
        &StopError::Ambiguous {
            seen: 0.5,
            first: 0.2,
            second: 0.7,
        },
    );
    assert!(text.contains("20.0 %") && text.contains("70.0 %"), "{text}");
    let text = stop_error_text(
        &stopped,
        &StopError::BeyondSwing {
            seen: 3.0,
            swing: 1.5,
        },
    );
    assert!(text.contains("whole swing"), "{text}");
    let text = stop_error_text(&stopped, &StopError::SaysNothing { seen: 0.5 });
    assert!(text.contains("500") && text.contains("elsewhere"), "{text}");
    let text = stop_error_text(
        &stopped,
        &StopError::NotOnTheWay {
            seen: 5.0,
            nearest: 0.9,
            travel: 0.0,
        },
    );
    assert!(text.contains("nearest is 900"), "{text}");
    let text = stop_error_text(&stopped, &StopError::HowFarNotEntered);
    assert!(text.contains("enter how far"), "{text}");
    let mut wrong = gear.clone();
    for leg in &mut wrong.legs {
        leg.seen_stop = Some(SeenStop {
            pressure: Some(-1e9),
            ..SeenStop::at(HowFar::Travel {
                travel: Some(2.0),
                within: 0.02,
            })
        });
    }
    let faults = check_stop(&wrong, 0).unwrap_err();
    assert_eq!(faults.0.len(), 2);
    let text = stop_error_text(&stopped, &StopError::Faults(faults));
    for part in ["travel seen: 200", "pressure read: "] {
        assert!(text.contains(part), "{text}");
    }
}
