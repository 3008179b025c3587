//! Balance of the manifold at one instant, against the rules of its parts.
use super::super::balance::{Load, manifold};
use super::above::{hand, with};
use super::runs::{going, motor, run, short_of, track};
use crate::hydraulics::Pump;
use crate::model::{Accumulator, Supply};
use crate::result::RunEnd;
use gearswing_samples::pack::gear;

/// A pump that gives 14 cm3/s at the 6 MPa at which its relief valve opens, with gas charged to that.
fn full() -> Supply {
    Supply {
        accumulator: Some(Accumulator {
            gas_volume: 1e-3,
            precharge: 3e6,
            charged: 6e6,
            exponent: 1.4,
        }),
        ..motor(6e6)
    }
}

/// With the gas at its fullest the relief valve lets go what the pump gives and the legs do not take: nothing
/// goes into the gas or out of it. Where they take more, the gas gives the rest.
#[test]
fn a_relief_valve_lets_go_what_is_over() {
    let pump = Pump::new(&full()).unwrap().unwrap();
    let stored = pump.gas.map(|gas| gas.first);
    for (conductance, over) in [(0.0, 14e-6_f64), (2e-9, 10e-6), (1e-8, -6e-6)] {
        let mut line = track(1e-4, conductance, |_| 2e6).stages[0].line;
        line.ratio = 1.0;
        // c·√(6 MPa − 2 MPa) is taken
        let load = Load {
            pressure: 2e6,
            line,
        };
        let balance = manifold(&pump, &[load], stored, 0.0).unwrap();
        let near = |is: f64, exact: f64| assert!((is - exact).abs() < 1e-11, "{is} {exact}");
        near(balance.pumped, 14e-6);
        near(balance.relieved, over.max(0.0));
        near(balance.from_gas, (-over).max(0.0));
        near(balance.below_relief, -over);
        assert!((balance.pressure / 6e6 - 1.0).abs() < 1e-9);
    }
}

/// What stands at the manifold at first is the gas, or the pump where it makes more.
#[test]
fn the_higher_of_gas_and_pump_stands_at_first() {
    for (pump, charged, most) in [(3e6, 5e6, 5e6), (6e6, 5e6, 6e6)] {
        let gear = with(hand(pump), None, [4e6, charged]);
        let pump = Pump::new(&gear.supply).unwrap().unwrap();
        let is = pump.most_at_first();
        assert!((is / most - 1.0).abs() < 1e-9, "{is} {most}");
    }
}

/// Once the gas is empty a leg has the pump alone, however high the gas was charged; what is missing works on
/// the area of the piston.
#[test]
fn a_leg_that_stalls_behind_empty_gas_has_the_pump() {
    let supply = with(hand(3e6), None, [4e6, 4.2e6]).supply;
    let run = run(&supply, vec![track(1e-3, 5e-8, |_| 3.5e6)]);
    assert_eq!(run.end, RunEnd::Stalled);
    let (needed, available, thrust_over) = short_of(&run);
    assert!((needed / 3.5e6 - 1.0).abs() < 1e-12, "{needed}");
    assert!((available / 3e6 - 1.0).abs() < 1e-12, "{available}");
    // 0.5 MPa on 10 cm2
    assert!((thrust_over.unwrap() / 500.0 - 1.0).abs() < 1e-9);
}

/// A steady load is a steady current: E·I goes out of the battery and R·I² is lost in the wires each second.
#[test]
fn wires_take_the_square_of_the_current() {
    let mut supply = motor(9e6);
    supply.battery.internal_resistance = 0.02;
    supply.battery.wire_resistance = 0.03;
    let run = run(&supply, vec![track(2e-4, 1e-4, |_| 4e6)]);
    assert_eq!(run.end, RunEnd::Complete);
    // 10 A and 5 A for each MPa; the wide line takes some pascals, laminar
    let current = 30.0;
    let [battery, wires] = [
        12.0 * current * run.time,
        0.05 * current * current * run.time,
    ];
    assert!((run.energy.battery / battery - 1.0).abs() < 1e-5);
    assert!(
        (run.energy.wires / wires - 1.0).abs() < 1e-5,
        "{} {wires}",
        run.energy.wires
    );
}

/// The legs that flow at a look are those that may run back in an implicit step, and those named.
#[test]
fn legs_that_flow_may_run_back() {
    let tracks = [6e6, 1e6, 5e6, 2e6].map(|load| track(1e-4, 1e-8, move |_| load));
    let going = going(&Supply::constant(4e6), tracks.to_vec());
    let look = going.look(&going.state, 0.0).unwrap();
    let both_ways = |also: fn(usize) -> bool| going.live_both_ways(&look, also).both_ways;
    assert_eq!(both_ways(|_| false), [1, 3]);
    assert_eq!(both_ways(|at| at == 2), [1, 2, 3]);
}

/// A device of its own carries a leg out of its lock on the way up only: going down the leg stands where it
/// was until it moves.
#[test]
fn a_leg_stands_where_it_was_until_it_moves() {
    use super::super::leg::Moving;
    use crate::result::Direction;
    let leg = &gear().legs[0];
    for (direction, progress) in [(Direction::Up, 0.0), (Direction::Down, -1.0)] {
        let mut track = track(1e-4, 1e-8, |_| 1e6);
        track.from.progress = -1.0;
        track.locked_until = -1.0;
        let moving = Moving::new(leg, track, direction, None);
        assert_eq!(moving.place(0.0).progress, progress, "{direction:?}");
    }
}
