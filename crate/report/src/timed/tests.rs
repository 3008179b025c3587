//! What is said of a gear against time, for runs put together by hand.
use gearswing_gear::model::{Joint, MovingPart, Source};
use gearswing_solver::result::{
    Breaker, Cycle, Direction, EnergyBudget, FluidBudget, Indication, LegSample, LoadCase, Phase,
    Place, Refill, Run, RunEnd, RunEvent, RunEventKind, Sample, Stall, StallCause,
};
use gearswing_solver::supply::SupplyError;
use gearswing_units::UnitChoice;

use super::{
    Timed, down_title, events_text, run_missing, run_sentence, run_sentences, stall_sentence,
    supply_error_text, times_csv_head, times_csv_rows,
};
use crate::sample::{full_gear, place};

fn event(time: f64, leg: Option<usize>, kind: RunEventKind) -> RunEvent {
    RunEvent {
        time,
        leg,
        kind,
        place: leg.map(|_| place(time / 8.0)),
        pressure: Some(2.5e6),
    }
}

fn stall(cause: StallCause) -> Stall {
    Stall {
        leg: 0,
        place: place(0.42),
        cause,
    }
}

fn causes() -> [StallCause; 8] {
    let pressure = |volts_short,
                    [relief_too_low, switch_too_low]: [bool; 2],
                    needed,
                    thrust_over| StallCause::Pressure {
        needed,
        available: 2.8e6,
        thrust_over,
        volts_short,
        relief_too_low,
        switch_too_low,
    };
    [
        pressure(Some(0.84), [false, false], 3.02e6, Some(117.0)),
        pressure(None, [true, false], 3.02e6, None),
        pressure(None, [true, true], 3.02e6, Some(117.0)),
        pressure(None, [false, false], 2.0e6, Some(117.0)),
        StallCause::Force {
            needed: 1333.0,
            available: 1100.0,
            volts_short: 1.6,
        },
        StallCause::EndOfWay,
        StallCause::Touches {
            part: MovingPart::Wheel,
            obstacle: 0,
        },
        StallCause::Binds {
            joint: Joint::ActuatorAttach,
        },
    ]
}

fn run() -> Run {
    let leg = |travel, up| LegSample {
        place: place(travel),
        shortened_share: 1.0,
        shortened: true,
        up,
        down: false,
        indication: if up {
            Indication::Up
        } else {
            Indication::InTransit
        },
    };
    Run {
        direction: Direction::Up,
        end: RunEnd::Stalled,
        time: 7.126,
        events: vec![
            event(0.0, None, RunEventKind::Selected),
            event(1.5, Some(0), RunEventKind::StrutDone),
            event(4.0, Some(1), RunEventKind::UpMade),
            event(7.126, Some(0), RunEventKind::Stalled),
        ],
        samples: vec![
            Sample {
                time: 0.0,
                pressure: Some(1e6),
                flow: Some(3e-5),
                current: None,
                bus_voltage: Some(12.4),
                legs: vec![leg(0.0, false), leg(0.25, false)],
            },
            Sample {
                time: 7.126,
                pressure: Some(2.5e6),
                flow: Some(0.0),
                current: Some(52.0),
                bus_voltage: Some(11.9),
                legs: vec![leg(0.42, false), leg(1.0, true)],
            },
        ],
        fluid: FluidBudget {
            pumped: 2.4e-4,
            drawn: 1e-5,
            swept: 2.2e-4,
            relieved: 3e-5,
            accumulator: 2e-5,
        },
        energy: EnergyBudget {
            battery: 3600.0,
            wires: 900.0,
            ..EnergyBudget::default()
        },
        largest_current: Some(62.0),
        breaker: Some(Breaker {
            rating: 60.0,
            passed: true,
        }),
        stalls: vec![stall(causes()[0])],
        largest_pressure: Some(2.8e6),
        strokes: None,
        refill: None,
    }
}

#[test]
fn every_sentence() {
    let gear = full_gear();
    let timed = Timed {
        gear: &gear,
        units: UnitChoice::INCH,
    };
    let mut lines = Vec::new();
    for direction in [Direction::Up, Direction::Down] {
        for end in [
            RunEnd::Complete,
            RunEnd::SwitchedOff,
            RunEnd::PressureSwitch,
            RunEnd::Stalled,
        ] {
            let run = Run {
                direction,
                end,
                ..run()
            };
            lines.push(run_sentence(&timed, &run));
        }
    }
    for cause in causes() {
        lines.push(stall_sentence(&timed, &run(), &stall(cause)));
    }
    lines.extend(run_sentences(&timed, &run()));
    for error in [
        SupplyError::NoFlow { voltage: -1.5 },
        SupplyError::NothingMoves {
            selected: Direction::Down,
            needed: 1.2e6,
            available: 5e5,
        },
        SupplyError::NoStroke,
        SupplyError::TooManySteps {
            time: 2.0,
            steps: 100_000,
        },
    ] {
        lines.push(supply_error_text(&timed, &error));
    }
    assert!(lines.iter().all(|line| line.ends_with('.')));
    insta::assert_snapshot!(lines.join("\n"));
    let mut electric = full_gear();
    electric.supply.source = Source::ElectricActuators;
    let timed = Timed {
        gear: &electric,
        units: UnitChoice::METRIC,
    };
    let error = SupplyError::NothingMoves {
        selected: Direction::Up,
        needed: 1200.0,
        available: 500.0,
    };
    assert!(supply_error_text(&timed, &error).contains("1200 N"));
}

#[test]
fn table_of_events() {
    let gear = full_gear();
    let timed = Timed {
        gear: &gear,
        units: UnitChoice::METRIC,
    };
    insta::assert_snapshot!(events_text(&timed, &run()));
}

#[test]
fn csv_has_a_value_for_every_head_and_reads_back() {
    let mut gear = full_gear();
    gear.legs[0].name = "Right, main".to_owned();
    let cycle = Cycle {
        case: LoadCase::AsSet,
        up: Some(run()),
        up_error: None,
        down: Some(Run {
            direction: Direction::Down,
            ..run()
        }),
        down_error: None,
    };
    let head = times_csv_head();
    let heads: Vec<_> = head.trim().split(',').collect();
    let rows = times_csv_rows("a.json", &gear, &cycle);
    assert_eq!(rows.lines().count(), 2 * 2 * 2);
    for line in rows.lines() {
        let cells: Vec<_> = line
            .replace("\"Right, main\"", "Right")
            .split(',')
            .map(str::to_owned)
            .collect();
        assert_eq!(cells.len(), heads.len(), "{line}");
    }
    let last: Vec<_> = rows.lines().nth(3).unwrap().split(',').collect();
    let cell = |name: &str| last[heads.iter().position(|head| *head == name).unwrap()];
    assert_eq!(cell("selected"), "up");
    assert_eq!(cell("time_s").parse::<f64>().unwrap(), 7.126);
    assert_eq!(cell("flow_m3_s").parse::<f64>().unwrap(), 0.0);
    assert_eq!(cell("travel"), "1.0");
    assert_eq!((cell("up_switch"), cell("down_switch")), ("1", "0"));
    assert_eq!(cell("indication"), "up");
    assert!(rows.lines().next().unwrap().contains(",3e-5,,12.4,"));
}

#[test]
fn a_down_switch_that_makes_before_the_lock_is_told() {
    let gear = full_gear();
    let timed = Timed {
        gear: &gear,
        units: UnitChoice::METRIC,
    };
    let told = |home: f64| {
        let down = Run {
            direction: Direction::Down,
            end: RunEnd::Complete,
            events: vec![
                event(0.4, Some(0), RunEventKind::DownMade),
                event(home, Some(0), RunEventKind::SwingDone),
            ],
            stalls: Vec::new(),
            ..run()
        };
        let said = run_sentences(&timed, &down);
        said.iter()
            .any(|text| text.contains("before the lock is engaged"))
    };
    assert!(told(0.5));
    assert!(!told(0.4));
}

#[test]
fn a_way_down_that_fails_leaves_the_way_up() {
    let gear = full_gear();
    let timed = Timed {
        gear: &gear,
        units: UnitChoice::METRIC,
    };
    let mut cycle = Cycle {
        case: LoadCase::AsSet,
        up: Some(run()),
        up_error: None,
        down: None,
        down_error: Some(SupplyError::NothingMoves {
            selected: Direction::Down,
            needed: 1.2e6,
            available: 5e5,
        }),
    };
    let missing = run_missing(&timed, &cycle, Direction::Down);
    assert!(missing.starts_with("Selected down, nothing moves"));
    let stalls = &mut cycle.up.as_mut().unwrap().stalls;
    let stall = stalls.pop().unwrap();
    assert_eq!(down_title(&cycle), "Down, from every leg up");
    let stopped = Stall {
        cause: StallCause::EndOfWay,
        ..stall
    };
    for (stall, title) in [(stall, "as if every leg"), (stopped, "as far up as")] {
        cycle.up.as_mut().unwrap().stalls = vec![stall];
        assert!(down_title(&cycle).contains(title));
    }
    cycle.up = None;
    assert!(down_title(&cycle).contains("as if every leg"));
}

#[test]
fn what_comes_after_the_legs_is_told() {
    let mut gear = full_gear();
    let told = |gear: &_, run: &Run| {
        let timed = Timed {
            gear,
            units: UnitChoice::METRIC,
        };
        run_sentences(&timed, run).join("\n")
    };
    let mut after = Run {
        end: RunEnd::Complete,
        stalls: Vec::new(),
        strokes: Some(46.2),
        refill: Some(Refill {
            time: 21.0,
            pressure: 6.5e6,
            battery: 18_000.0,
        }),
        ..run()
    };
    after
        .events
        .push(event(21.0, None, RunEventKind::PressureSwitch));
    let said = told(&gear, &after);
    assert!(said.contains("47 strokes of the hand pump."), "{said}");
    assert!(
        said.contains("until its pressure switch stops it at 65.0 bar"),
        "{said}"
    );
    assert!(said.contains("5.00 Wh of the energy"), "{said}");
    // nothing fills it: what is left is told
    after.refill = None;
    after.strokes = Some(1.0);
    let charged = gear.supply.accumulator.as_ref().map(|gas| gas.charged);
    let said = told(&gear, &after);
    assert!(said.contains("1 stroke of the hand pump."), "{said}");
    assert!(
        said.contains("The accumulator is left at 25.0 bar"),
        "{said}"
    );
    assert!(charged.is_some_and(|charged| charged > 2.6e6));
    gear.supply.accumulator = None;
    assert!(!told(&gear, &after).contains("accumulator is left"));
}

#[test]
fn a_light_that_is_on_out_of_the_lock_is_told() {
    let gear = full_gear();
    let timed = Timed {
        gear: &gear,
        units: UnitChoice::METRIC,
    };
    let mut run = run();
    let told = |run: &Run| run_sentences(&timed, run).join("\n");
    assert!(!told(&run).contains("before the lock is engaged"));
    let last = run.samples.last_mut().unwrap();
    last.legs[0].place = Place {
        phase: Phase::Unlock,
        progress: -0.5,
        travel: -0.001,
        swing: -0.001,
    };
    last.legs[0].down = true;
    let said = told(&run);
    assert!(
        said.contains("shows down and locked before the lock is engaged"),
        "{said}"
    );
    run.samples.last_mut().unwrap().legs[0].place.progress = -1.0;
    assert!(!told(&run).contains("before the lock is engaged"));
}

#[test]
fn a_leg_ahead_of_its_fluid_is_told() {
    let gear = full_gear();
    let timed = Timed {
        gear: &gear,
        units: UnitChoice::METRIC,
    };
    let mut run = run();
    run.events
        .push(event(4.0, Some(0), RunEventKind::FluidLags));
    let said = run_sentences(&timed, &run).join("\n");
    assert!(
        said.contains("at 50.0 % of travel its load begins to pull it ahead"),
        "{said}"
    );
}
