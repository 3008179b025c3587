//! Legs that share one flow, loads that pull, many legs, and the implicit step.
use super::super::leg_stages::LegStages;
use super::runs::{event, going, hand, run, track};
use crate::hydraulics::NO_PRESSURE;
use crate::model::Supply;
use crate::result::{RunEnd, RunEventKind as Kind};

/// Loads that rise as steeply as beside a straight knee, through wide lines: both stay alike, so that the
/// fluid divides as 1 to 3, and the first is home when it and a third of it have been pumped.
#[test]
fn legs_against_steep_loads_share_the_flow() {
    let (flow, first, steep) = (1e-5, 1e-5, 3e12);
    let tracks = vec![
        track(first, 1e-5, move |v| steep * v),
        track(1e-5, 1e-5, move |v| 3.0 * steep * v),
    ];
    let run = run(&hand(flow, 1.0, 1e9), tracks);
    assert_eq!(run.end, RunEnd::Complete);
    let done = event(&run, Some(0), Kind::SwingDone).time;
    let exact = first * (1.0 + 1.0 / 3.0) / flow;
    assert!((done / exact - 1.0).abs() < 1e-4, "{done} {exact}");
    assert!((run.time - 2.0).abs() < 1e-6, "{}", run.time);
    let f = run.fluid;
    assert!((f.pumped / f.swept - 1.0).abs() < 1e-9, "{f:?}");
    assert!(run.samples.len() < 2_000);
}

/// Behind an orifice a load draws the pressure down to nothing at most: dV/dt = c·√(P + 1 atm).
#[test]
fn a_load_that_pulls_draws_no_more_than_nothing() {
    let (c, volume, most) = (2e-8, 1e-4, 3e6);
    let mut pulled: LegStages = track(volume, c, |_| -5e6);
    pulled.stages[0].least = NO_PRESSURE;
    let run = run(&Supply::constant(most), vec![pulled]);
    let exact = volume / (c * (most + 101_325.0_f64).sqrt());
    assert!(
        (run.time / exact - 1.0).abs() < 1e-6,
        "{} {exact}",
        run.time
    );
    assert_eq!(event(&run, Some(0), Kind::FluidLags).time, 0.0);
    // one that pulls less keeps to its fluid
    let mut pulled: LegStages = track(volume, c, |_| -5e4);
    pulled.stages[0].least = NO_PRESSURE;
    let run = super::runs::run(&Supply::constant(most), vec![pulled]);
    let exact = volume / (c * (most + 5e4_f64).sqrt());
    assert!(
        (run.time / exact - 1.0).abs() < 1e-6,
        "{} {exact}",
        run.time
    );
    assert!(run.events.iter().all(|e| e.kind != Kind::FluidLags));
}

/// One leg after the other: four times as many take four times as many questions for a load, not sixteen
/// times, for a leg that waits is not asked.
#[test]
fn work_grows_with_the_number_of_legs() {
    let asked = |count: u32| {
        let tracks: Vec<LegStages> = (0..count)
            .map(|at| {
                let load = 1e6 + 5e5 * f64::from(at);
                track(1e-5, 1e-6, move |_| load)
            })
            .collect();
        let mut going = going(&hand(1e-5, 1.0, 1e9), tracks);
        let mut asked = 0;
        loop {
            if let Some(run) = going.advance(1).unwrap() {
                assert!((run.time - f64::from(count)).abs() < 1e-6, "{}", run.time);
                return asked;
            }
            asked += going.moving().len();
        }
    };
    let (few, many) = (asked(40), asked(160));
    assert!(few >= 40 && many < 8 * few, "{few} {many}");
}
