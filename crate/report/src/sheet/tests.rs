//! The whole report, and the JSON of the same results.
use gearswing_gear::model::Point;
use gearswing_solver::faults::{Fault, FaultKind, Faults};
use gearswing_solver::result::{Jam, JamCause, MechanismEvent, MechanismEventKind};
use gearswing_units::UnitChoice;
use serde_json::Value;

use super::{ReportOptions, report_text};
use crate::answered::{Answered, LegAnswer, Outcome};
use crate::sample::{full_gear, place, result};
use crate::{Program, result_json};

const PROGRAM: Program = Program {
    version: "1.2.3",
    commit: Some("12ab34cd"),
    changed: false,
};

fn fault(leg: Option<usize>, path: &str) -> Fault {
    Fault {
        leg,
        path: path.to_owned(),
        kind: FaultKind::OutOfRange {
            value: -1.0,
            min: 0.0,
            max: f64::INFINITY,
        },
    }
}

fn faulty() -> Faults {
    Faults(vec![
        fault(None, "conditions.air_density_kg_m3"),
        fault(Some(1), "legs[1].wheel.mass_kg"),
    ])
}

fn stopped() -> gearswing_solver::result::LegResult {
    let mut result = result();
    let cause = JamCause::ActuatorEndsShort {
        shortest: 0.37,
        asked: 0.361,
    };
    result.jams.push(Jam {
        place: place(0.62),
        cause,
    });
    result.events.push(MechanismEvent {
        place: place(0.4),
        kind: MechanismEventKind::KneeFolded,
        point: Point::origin(),
    });
    result
}

#[test]
fn whole_report() {
    let mut gear = full_gear();
    gear.note = "Measured on the hangar floor,\nwheels at full pressure.\u{1b}[31m".to_owned();
    let legs: Vec<LegAnswer> = vec![(0, Ok(result())), (1, Err(faulty()))];
    let answered = Answered {
        program: PROGRAM,
        file: "meadow.json",
        gear: &gear,
        legs: &legs,
        previous: false,
        cycle: None,
        stops: &[],
        units: UnitChoice::INCH,
    };
    let text = report_text(&answered, ReportOptions { station_rows: 5 });
    assert!(text.lines().all(|line| !line.contains('\u{1b}')));
    insta::assert_snapshot!(text);
}

#[test]
fn a_stopped_leg_and_the_former_tire() {
    let gear = full_gear();
    let legs: Vec<LegAnswer> = vec![(0, Ok(stopped()))];
    let answered = Answered {
        program: PROGRAM,
        file: "meadow.json",
        gear: &gear,
        legs: &legs,
        previous: true,
        cycle: None,
        stops: &[],
        units: UnitChoice::METRIC,
    };
    let text = report_text(&answered, ReportOptions { station_rows: 0 });
    for wanted in [
        "Answers for the gear as it was kept with the previous tire.",
        "Stops at 62.0 % of travel: the actuator runs out of stroke, 9.0 mm too long",
        "The brace links lie on each other at 40.0 % of travel.",
        ", tire 6.00-6 440.0 mm by 160.0 mm",
    ] {
        let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flat.contains(wanted), "{wanted}\n{text}");
    }
    assert!(!text.contains("Stations"));
}

#[test]
fn outcome_is_the_worst_leg() {
    let gear = full_gear();
    let outcome = |legs: &[LegAnswer]| {
        Answered {
            program: PROGRAM,
            file: "",
            gear: &gear,
            legs,
            previous: false,
            cycle: None,
            stops: &[],
            units: UnitChoice::INCH,
        }
        .outcome()
    };
    let mut good = result();
    good.findings.remove(0);
    let mut stopped = stopped();
    stopped.findings.clear();
    assert_eq!(outcome(&[(0, Ok(good.clone()))]), Outcome::Good);
    assert_eq!(
        outcome(&[(0, Ok(good.clone())), (1, Ok(result()))]),
        Outcome::Bad
    );
    assert_eq!(outcome(&[(0, Ok(stopped))]), Outcome::Bad);
    assert_eq!(
        outcome(&[(0, Ok(good)), (1, Err(faulty()))]),
        Outcome::Unusable
    );
    assert_eq!(outcome(&[]), Outcome::Unusable);
}

#[test]
fn json_holds_the_result_itself_and_the_sentences() {
    let gear = full_gear();
    let legs: Vec<LegAnswer> = vec![(0, Ok(result())), (1, Err(faulty()))];
    let answered = Answered {
        program: PROGRAM,
        file: "meadow.json",
        gear: &gear,
        legs: &legs,
        previous: false,
        cycle: None,
        stops: &[],
        units: UnitChoice::METRIC,
    };
    let json: Value = serde_json::from_str(&result_json(&answered).unwrap()).unwrap();
    assert_eq!(json["format"], "gearswing-result");
    assert_eq!(json["version"], 2);
    assert_eq!(json["program"]["version"], "1.2.3");
    assert_eq!(json["program"]["commit"], "12ab34cd");
    assert_eq!(json["program"]["changed"], false);
    assert_eq!(json["file"], "meadow.json");
    let first = &json["legs"][0];
    assert_eq!(first["leg"], "Right main");
    assert_eq!(first["result"], serde_json::to_value(result()).unwrap());
    assert_eq!(first["words"].as_array().unwrap().len(), 3);
    assert_eq!(first["words"][0]["verdict"], "No");
    let second = &json["legs"][1];
    assert_eq!(second["leg"], "Nose");
    assert_eq!(second["faults"][1]["path"], "legs[1].wheel.mass_kg");
    assert_eq!(
        second["faults"][1]["sentence"],
        "Nose, mass of the wheel: −1 kg is not possible; valid is 0 kg or more."
    );
}
