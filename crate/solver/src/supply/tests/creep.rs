//! Legs that stand in balance with the gas of an accumulator and creep on as the pump fills it: neighboring
//! states come together within microseconds, for minutes.
use super::runs::{event, going, hand, track};
use crate::model::{Accumulator, Supply};
use crate::result::{Run, RunEnd, RunEventKind as Kind};

/// A liter of nitrogen at 3 MPa, charged to 3.5 MPa.
const GAS: Accumulator = Accumulator {
    gas_volume: 1e-3,
    precharge: 3e6,
    charged: 3.5e6,
    exponent: 1.4,
};

const SWEPT: f64 = 1e-4;

/// Flow of the pump (m3/s).
const FLOW: f64 = 2e-6;

/// 2 MPa, and over the last share of the stroke up to 8 MPa, as a smooth curve.
fn steep(fluid: f64) -> f64 {
    2e6 + 6e6 * ((fluid / SWEPT - 0.99) / 0.01).max(0.0)
}

/// Fluid that the gas has taken from its charge to a pressure (p·V^n constant, textbook) (m3).
fn taken(pressure: f64) -> f64 {
    let volume = |p: f64| ((GAS.precharge + 101_325.0) / (p + 101_325.0)).powf(1.0 / GAS.exponent);
    GAS.gas_volume * (volume(GAS.charged) - volume(pressure))
}

/// A run of a leg on a pump of so much pressure, and its time steps.
fn run(most: f64, conductance: f64) -> (Run, usize) {
    let supply = Supply {
        accumulator: Some(GAS),
        ..hand(FLOW, 1.0, most)
    };
    let mut going = going(&supply, vec![track(SWEPT, conductance, steep)]);
    let mut steps = 0;
    loop {
        if let Some(run) = going.advance(1).unwrap() {
            return (run, steps);
        }
        steps += 1;
    }
}

#[test]
fn a_leg_that_creeps_comes_to_its_end_in_its_time_and_few_steps() {
    // the leg is at its end when the gas stands at 8 MPa, and what has been pumped is in both
    let time = (SWEPT + taken(8e6)) / FLOW;
    for conductance in [1e-8, 1e-7, 1e-6] {
        let (run, steps) = run(9e6, conductance);
        assert_eq!(run.end, RunEnd::Complete);
        let done = event(&run, Some(0), Kind::SwingDone).time;
        // later by the rise of some pascals that push it on through the narrowest, at 30 kPa/s
        assert!((-1e-5..1e-3).contains(&(done - time)), "{done} {time}");
        // the longest allowed are 50 ms
        assert!(steps < 8_000, "{conductance}: {steps} steps of {time} s");
    }
}

#[test]
fn a_leg_that_creeps_stands_as_soon_as_the_gas_is_full() {
    // the rest of the flow dies out within √δ/(c·dp/dV), δ = 100 Pa: 17 µs through the narrowest
    for conductance in [1e-7, 1e-6] {
        let (run, _) = run(6e6, conductance);
        assert_eq!(run.end, RunEnd::Stalled);
        let full = event(&run, None, Kind::AccumulatorFull).time;
        let time = (run.fluid.swept + taken(6e6)) / FLOW;
        assert!((full / time - 1.0).abs() < 1e-6, "{full} {time}");
        let stands = event(&run, Some(0), Kind::Stalled).time;
        assert!((0.0..1e-3).contains(&(stands - full)), "{full} {stands}");
        let load = track(SWEPT, conductance, steep).stages[0].draws(run.fluid.swept);
        assert!((load / 6e6 - 1.0).abs() < 1e-5, "{load}");
    }
}
