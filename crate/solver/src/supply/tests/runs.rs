//! Cylinders under known loads, against closed forms.
use super::super::SupplyOptions;
use super::super::curve::Curve;
use super::super::leg::Moving;
use super::super::leg_stages::LegStages;
use super::super::run::Going;
use super::super::stage::Stage;
use super::super::state::Power;
use crate::hydraulics::{Line, Pump};
use crate::model::{HandPump, MotorPump, Source, Supply};
use crate::result::{Direction, Phase, Place, Run, RunEnd, RunEvent, RunEventKind, StallCause};
use crate::statics::Face;

const PISTON: f64 = 1e-3;

/// One stroke of `extent` against a load over the fluid.
pub(super) fn track(extent: f64, conductance: f64, load: impl Fn(f64) -> f64) -> LegStages {
    let place = |travel| Place {
        phase: Phase::Swing,
        progress: travel,
        travel,
        swing: travel,
    };
    let points = (0..=100).map(|at| {
        let fluid = extent * f64::from(at) / 100.0;
        (fluid, load(fluid))
    });
    LegStages {
        stages: vec![Stage {
            is_strut: false,
            part: 1.0,
            extent,
            face: Face::Fluid { area: PISTON },
            opens_at: 0.0,
            starts_against: f64::NEG_INFINITY,
            load: Curve::new(points),
            line: Line {
                conductance,
                ratio: 1.0,
                both_ways: false,
            },
            least: f64::NEG_INFINITY,
            places: vec![[0.0, 0.0, 0.0, 0.0], [extent, 1.0, 1.0, 1.0]],
        }],
        from: place(0.0),
        to: place(1.0),
        locked_until: 0.0,
        short_of_up: false,
        blocked: None,
    }
}

pub(super) fn run(supply: &Supply, tracks: Vec<LegStages>) -> Run {
    going(supply, tracks).run().unwrap()
}

/// A run before its first step.
pub(super) fn going(supply: &Supply, tracks: Vec<LegStages>) -> Going {
    let leg = gearswing_samples::pack::leg("Test");
    let legs = tracks
        .into_iter()
        .map(|track| Moving::new(&leg, track, Direction::Up, None))
        .collect();
    let power = Power::Fluid(Pump::new(supply).unwrap().unwrap());
    let options = SupplyOptions::default();
    Going::new(supply, power, legs, Direction::Up, &options)
}

pub(super) fn hand(volume: f64, time: f64, most: f64) -> Supply {
    Supply {
        source: Source::HandPump(HandPump {
            stroke_volume: volume,
            stroke_time: time,
            largest_pressure: most,
        }),
        ..Supply::constant(1e7)
    }
}

pub(super) fn event(run: &Run, leg: Option<usize>, kind: RunEventKind) -> &RunEvent {
    let mut found = run.events.iter().filter(|e| e.leg == leg && e.kind == kind);
    let first = found
        .next()
        .unwrap_or_else(|| panic!("{kind:?} of {leg:?} in {:?}", run.events));
    assert!(found.next().is_none(), "{kind:?} twice");
    first
}

/// Needed and available pressure (Pa) at the first stall, and how much thrust is missing (N).
pub(super) fn short_of(run: &Run) -> (f64, f64, Option<f64>) {
    match run.stalls[0].cause {
        StallCause::Pressure {
            needed,
            available,
            thrust_over,
            ..
        } => (needed, available, thrust_over),
        other => panic!("{other:?}"),
    }
}

#[test]
fn piston_speed_is_flow_over_area() {
    // v = Q/A and F = p·A (textbook): 20 cm3/s on 10 cm2 is 20 mm/s, so 0.3 m takes 15 s; 4 kN on
    // it takes 4 MPa.
    let run = run(
        &hand(20e-6, 1.0, 9e6),
        vec![track(0.3 * PISTON, 1e-6, |_| 4e3 / PISTON)],
    );
    assert_eq!(run.end, RunEnd::Complete);
    assert!((run.time - 15.0).abs() < 1e-9, "{}", run.time);
    let sample = &run.samples[run.samples.len() / 2];
    // the line takes (Q/c)² = 400 Pa besides, all but laminar
    assert!((sample.pressure.unwrap() - 4e6).abs() < 1e3);
    assert!((run.energy.loads - 4e3 * 0.3).abs() < 1e-6);
}

#[test]
fn lowest_load_goes_first() {
    // Pumped at a steady flow through open lines the light one takes it all, then the next.
    let tracks = [3e6, 1e6, 2e6].map(|load| track(1e-4, 1e-6, move |_| load));
    let run = run(&hand(10e-6, 1.0, 9e6), tracks.to_vec());
    for (leg, time) in [(1, 10.0), (2, 20.0), (0, 30.0)] {
        let done = event(&run, Some(leg), RunEventKind::SwingDone);
        assert!((done.time - time).abs() < 1e-8, "{leg} {}", done.time);
    }
}

#[test]
fn orifice_under_constant_pressure_against_a_spring() {
    // dV/dt = c√(P − sV) → t = 2(√P − √(P − sV))/(c·s), by separating the variables.
    let (most, rise, c, volume) = (7e6_f64, 4e10, 2e-8, 1e-4);
    let supply = Supply::constant(most);
    let run = run(&supply, vec![track(volume, c, |v| rise * v)]);
    let exact = 2.0 * (most.sqrt() - (most - rise * volume).sqrt()) / (c * rise);
    assert!(
        (run.time / exact - 1.0).abs() < 1e-7,
        "{} {exact}",
        run.time
    );
}

/// A motor whose battery has no resistance: Q = 20 cm3/s less 1 cm3/s for each MPa.
pub(super) fn motor(relief: f64) -> Supply {
    let mut supply = Supply {
        source: Source::MotorPump(MotorPump {
            free_flow: 20e-6,
            rated_voltage: 12.0,
            stall_pressure: 20e6,
            no_load_current: 10.0,
            stall_current: 110.0,
            relief_pressure: relief,
        }),
        ..Supply::constant(1e7)
    };
    supply.battery.open_circuit_voltage = Some(12.0);
    supply.battery.internal_resistance = 0.0;
    supply
}

/// Time at which a load that rises by `rise` through a wide line is `load`: dV/dt = a − b·s·V.
fn time_to(load: f64, rise: f64) -> f64 {
    let (a, b) = (20e-6, 1e-12);
    -(1.0 - b * load / a).ln() / (b * rise)
}

#[test]
fn relief_pressure_switch_and_breaker_at_their_times() {
    // A wide line loses (Q/c)² < 0.1 Pa, in truth laminar and less than 1 Pa.
    let (rise, wide) = (4e10, 1e-4);
    let stroke = || track(2e-4, wide, move |v| rise * v);
    let mut supply = motor(6e6);
    supply.battery.breaker_rating = Some(30.0);
    let one = run(&supply, vec![stroke()]);
    assert_eq!(one.end, RunEnd::Stalled);
    let open = event(&one, None, RunEventKind::ReliefOpen);
    assert!(
        (open.time - time_to(6e6, rise)).abs() < 1e-5,
        "{}",
        open.time
    );
    // 30 A flow at 4 MPa
    let passed = event(&one, None, RunEventKind::BreakerPassed);
    assert!(
        (passed.time - time_to(4e6, rise)).abs() < 1e-5,
        "{}",
        passed.time
    );
    assert!(one.breaker.unwrap().passed);
    assert!((one.largest_current.unwrap() - 40.0).abs() < 1e-9);
    supply.pressure_switch = Some(5e6);
    let two = run(&supply, vec![stroke()]);
    assert_eq!(two.end, RunEnd::PressureSwitch);
    assert!((two.time - time_to(5e6, rise)).abs() < 1e-5, "{}", two.time);
    // It never makes: the pump runs on against the stopped leg.
    supply.pressure_switch = Some(7e6);
    let three = run(&supply, vec![track(1e-5, wide, |_| 1e6)]);
    assert_eq!(three.end, RunEnd::Complete);
    event(&three, None, RunEventKind::RunsOn);
}

#[test]
fn a_short_peak_is_not_stepped_over() {
    // The load passes the pressure switch for 2 % of a stroke of 20 ms: within one time step.
    let hump = |v: f64| 1e6 + 4e6 * (-(((v - 2e-7) / 2e-9).powi(2))).exp();
    let mut supply = hand(20e-6, 1.0, 9e6);
    supply.pressure_switch = Some(4.8e6);
    let run = run(&supply, vec![track(4e-7, 1e-4, hump)]);
    assert_eq!(run.end, RunEnd::PressureSwitch);
}

#[test]
fn a_peak_that_all_but_reaches_the_relief_pressure() {
    for (peak, opens) in [(5.999e6, false), (6.001e6, true)] {
        let load = move |v: f64| peak - 1e15 * (v - 1e-4).powi(2) / 4.0;
        let run = run(&motor(6e6), vec![track(2e-4, 1e-4, load)]);
        let opened = run
            .events
            .iter()
            .any(|e| e.kind == RunEventKind::ReliefOpen);
        assert_eq!(opened, opens, "{peak} {:?}", run.events);
        assert_eq!(run.end == RunEnd::Complete, !opens);
    }
}
