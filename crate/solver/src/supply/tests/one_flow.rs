//! Legs that share one flow, loads that pull, many legs, and the implicit step.
use super::super::implicit::Implicit;
use super::super::linear::Lu;
use super::super::orifice::NO_PRESSURE;
use super::super::track::Track;
use super::runs::{event, going, hand, run, track};
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
    let mut pulled: Track = track(volume, c, |_| -5e6);
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
    let mut pulled: Track = track(volume, c, |_| -5e4);
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
        let tracks: Vec<Track> = (0..count)
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

/// Halving a step divides the error of one step by 2^5 (order 4) and that of its continuous output by no
/// less than 2^4 (order 3), of a system with both fast and slow
/// parts: y' = y², x' = −x/2, an oscillator.
#[test]
fn implicit_step_has_its_order() {
    let rate = |y: &[f64]| Ok::<_, ()>(Some(vec![y[0] * y[0], -0.5 * y[1], y[3], -y[2]]));
    let from = [0.5, 1.0, 0.0, 1.0];
    let parts = [0, 1, 2, 3];
    let implicit = Implicit {
        parts: &parts,
        scales: &[1e-10; 4],
        derivatives: None,
    };
    let error = |size: f64| {
        let first = rate(&from).unwrap().unwrap();
        let (step, _) = implicit.step(&from, &first, size, rate).unwrap().unwrap();
        let off = |y: &[f64], time: f64| {
            (y[0] - 1.0 / (2.0 - time)).abs()
                + (y[1] - (-0.5 * time).exp()).abs()
                + (y[2] - time.sin()).abs()
                + (y[3] - time.cos()).abs()
        };
        assert!((off(&step.at(1.0), size) - off(&step.to, size)).abs() < 1e-14);
        let within = [0.2, 0.4, 0.6, 0.8].map(|share| off(&step.at(share), share * size));
        (off(&step.to, size), within.into_iter().fold(0.0, f64::max))
    };
    let (whole, half) = (error(0.2), error(0.1));
    let ratios = [whole.0 / half.0, whole.1 / half.1];
    assert!((26.0..42.0).contains(&ratios[0]), "{whole:?} {half:?}");
    assert!((14.0..42.0).contains(&ratios[1]), "{whole:?} {half:?}");
}

/// What dies out within the step is damped, not rung on (L-stable), and the slow part keeps its value.
#[test]
fn implicit_step_damps_what_dies_out() {
    let rate = |y: &[f64]| Ok::<_, ()>(Some(vec![-1e8 * (y[0] - y[1]), 1.0]));
    let from = [1.0, 0.0];
    let implicit = Implicit {
        parts: &[0, 1],
        scales: &[1e-9; 2],
        derivatives: None,
    };
    let first = rate(&from).unwrap().unwrap();
    let (step, fastest) = implicit.step(&from, &first, 0.1, rate).unwrap().unwrap();
    assert!((step.to[0] - 0.1).abs() < 1e-6, "{:?}", step.to);
    assert!((step.to[1] - 0.1).abs() < 1e-12);
    assert!((fastest / 1e8 - 1.0).abs() < 1e-3, "{fastest}");
}

/// Corrections that do not come nearer find no stage: y' = −k·y, corrected as if it stayed, moves each by
/// −γ·k·h of the one before, γ = 1/4.
#[test]
fn a_stage_that_is_not_found_makes_no_step() {
    for (k_h, found) in [(0.2, true), (3.6, false), (6.0, false), (12.0, false)] {
        let rate = |y: &[f64]| Ok::<_, ()>(Some(vec![-k_h * y[0]]));
        let implicit = Implicit {
            parts: &[0],
            scales: &[1e-6],
            derivatives: Some(vec![0.0]),
        };
        let step = implicit.step(&[1.0], &[-k_h], 1.0, rate).unwrap();
        assert_eq!(step.is_some(), found, "{k_h}");
    }
}

#[test]
fn equations_that_need_other_pivots() {
    // by hand: x = 1, y = 2, z = 3
    let matrix = vec![0.0, 2.0, 1.0, 1.0, 0.0, 0.0, 2.0, 1.0, -1.0];
    let mut side = [7.0, 1.0, 1.0];
    Lu::new(matrix, 3).unwrap().solve(&mut side);
    for (found, exact) in side.iter().zip([1.0, 2.0, 3.0]) {
        assert!((found - exact).abs() < 1e-14, "{side:?}");
    }
    assert!(Lu::new(vec![1.0, 2.0, 2.0, 4.0], 2).is_none());
}
