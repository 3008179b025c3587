//! Runs against hand calculations: motors on a battery, pumps at their relief valve, gas, work. Source of the laws:
//! Ohm's and Boyle's, in any text on physics.
use super::super::balance::bus;
use super::super::leg_stages::{LegStages, Point as Station};
use super::super::refine::{refined, scale};
use super::super::state::Power;
use super::gears::solved;
use super::runs::{motor, run, track};
use crate::hydraulics::{Circuit, Pump};
use crate::model::*;
use crate::result::{Direction, RunEventKind as Kind, StallCause};
use gearswing_samples::pack::{gear, on_motors, skin_over_the_wheel};

/// Of two legs on one drive the other has drag: without its speed the case is missing for both.
#[test]
fn a_partner_that_needs_a_speed_misses_it_for_both() {
    use crate::result::{CaseOutcome, LoadCase};
    let mut gear = gear();
    gear.supply.source = Source::ConstantPressure;
    gear.conditions.gear_speed = None;
    for leg in &mut gear.legs {
        leg.air = LegAir::default();
        leg.drive.strut_jack = None;
        leg.strut.shortening = Shortening::None;
    }
    gear.legs[1].shared_drive = "drive".into();
    gear.legs[2].shared_drive = "drive".into();
    gear.legs[2].air.wheel_drag_area = 0.05;
    let found = crate::solve::solve_leg(&gear, 1, &crate::solve::Options::default()).unwrap();
    let cases = found.force.cases;
    let level = cases
        .iter()
        .find(|c| c.case == LoadCase::LevelFlight)
        .unwrap();
    assert!(
        matches!(level.outcome, CaseOutcome::Missing { .. }),
        "{level:?}"
    );
}

/// Beside a leg that has yet to unlock, a motor has the voltage that the other one leaves it.
#[test]
fn beside_a_leg_that_has_yet_to_unlock() {
    use crate::prepared::PreparedGear;
    use crate::result::{LoadCase, Motion, Phase as P};
    use crate::statics::{Partners, available};
    let mut gear = on_motors(gear(), [9e3, 12.0], [0.02, 0.03]);
    gear.legs.truncate(2);
    for leg in &mut gear.legs {
        leg.drive.strut_jack = None;
        leg.strut.shortening = Shortening::None;
    }
    gear.legs[0].brace = Brace::None;
    gear.legs[0].actuator.attach_to = AttachTo::Leg;
    let prepared = PreparedGear::of(&gear);
    let partners = Partners::of(&prepared, 0).unwrap();
    let place = prepared.leg(0).unwrap().linkage().pose(0.0).unwrap().place;
    let found =
        available(&prepared, 0, partners.as_ref()).at(Motion::Retract, LoadCase::AsSet, place);
    let beside = crate::solve::solve_leg(&gear, 1, &crate::solve::Options::default()).unwrap();
    let most = beside
        .stations
        .iter()
        .filter(|s| s.phase == P::Unlock || s.progress <= 0.0)
        .filter_map(|s| s.force.as_ref()?.retract_effort)
        .fold(0.0, f64::max);
    // the other draws 2 + 38·F/9000 A; V = 12 − 0.05·(it + 2 + 38·V/12)
    let other = 2.0 + 38.0 * (most / 9e3).min(1.0);
    let volts = (12.0 - 0.05 * (other + 2.0)) / (1.0 + 0.05 * 38.0 / 12.0);
    let wanted = 9e3 * volts / 12.0;
    assert!(
        (found / wanted - 1.0).abs() < 1e-6,
        "{most} {found} {wanted}"
    );
}

/// With gas in the line a leg that is stopped drives the pressure to the relief valve, and no further.
#[test]
fn gas_rises_no_further_than_the_relief_valve() {
    let mut gear = gear();
    gear.legs[1].well = vec![skin_over_the_wheel(1.2, 0.1)];
    gear.supply.accumulator = Some(Accumulator {
        gas_volume: 2e-4,
        precharge: 2e6,
        charged: 3e6,
        exponent: 1.4,
    });
    let up = solved(&gear).up.unwrap();
    assert!(
        up.events.iter().any(|e| e.kind == Kind::ReliefOpen),
        "{:?}",
        up.events
    );
    for sample in &up.samples {
        assert!(sample.pressure.unwrap() <= 5e6 * (1.0 + 1e-6));
    }
}

/// 12 V behind 0.1 ohm, a motor that draws 2 A free and 22 A locked, at half its force: 12 A, 10.8 V, 0.4 of its free
/// speed.
#[test]
fn one_motor_on_a_battery() {
    let battery = Battery {
        open_circuit_voltage: Some(12.0),
        internal_resistance: 0.04,
        wire_resistance: 0.06,
        ..Battery::default()
    };
    let motor = ElectricActuator {
        free_speed: 0.1,
        stall_force: 1000.0,
        rated_voltage: 12.0,
        idle_current: 2.0,
        locked_current: 22.0,
        back_drive: None,
    };
    let found = bus(&Circuit::new(&battery), &[(motor, 500.0)], 0.0).unwrap();
    assert!((found.current - 12.0).abs() < 1e-9, "{found:?}");
    assert!((found.speeds[0] - 0.04).abs() < 1e-9, "{found:?}");
}

/// Gas that is all but empty is filled to the switch after the swing.
#[test]
fn empty_gas_is_filled_after_the_swing() {
    let mut gear = gear();
    gear.supply.pressure_switch = Some(4.5e6);
    gear.supply.accumulator = Some(Accumulator {
        gas_volume: 1e-5,
        precharge: 4e6,
        charged: 4.05e6,
        exponent: 1.4,
    });
    let down = solved(&gear).down.unwrap();
    let refill = down.refill.unwrap();
    assert!((refill.pressure - 4.5e6).abs() < 1.0, "{refill:?}");
}

/// 7 MPa on a bore of 25.4 mm less a rod of 12.7 mm.
#[test]
fn thrust_of_the_source() {
    let mut gear = gear();
    gear.supply.available_pressure = 7e6;
    // 25.4 mm bore, 12.7 mm rod: 3.80032e-4 m2
    let found = scale(&gear, &gear.legs[0]);
    assert!((found - 2660.22).abs() < 0.05, "{found}");
}

/// Where nothing of the source is enough twice over, a peak is not looked at closer.
#[test]
fn beyond_twice_the_source_a_peak_has_no_more_points() {
    let load = |p: f64| 2.1 + 0.2 + 0.5 / (1.0 + ((p - 0.5) / 0.01).powi(2));
    let point = |p: f64| Station::driven(p, 0.3 + p, load(p));
    let even = (0..=20).map(|at| point(f64::from(at) / 20.0)).collect();
    assert_eq!(refined(even, 1.0, |p| Some(point(p))).len(), 21);
}

/// What a motor at a standstill asks of its battery: its share of the stall force in volts, and its current through
/// the wires.
#[test]
fn volts_short_of_one_motor() {
    let mut gear = on_motors(gear(), [700.0, 12.0], [0.02, 0.03]);
    gear.legs.truncate(1);
    let up = solved(&gear).up.unwrap();
    let StallCause::Force {
        needed,
        volts_short,
        ..
    } = up.stalls[0].cause
    else {
        panic!("{:?}", up.stalls)
    };
    let share = needed / 700.0;
    let wanted = 12.0 * share + 0.05 * (2.0 + 38.0 * share) - 12.0;
    assert!(wanted > 0.0);
    assert!(
        (volts_short - wanted).abs() < 1e-9,
        "{needed} {volts_short} {wanted}"
    );
}

/// Boyle: what the gas has given off when the valve closes.
#[test]
fn a_relief_valve_that_closes_leaves_less_than_it_held() {
    let mut supply = motor(5e6);
    supply.accumulator = Some(Accumulator {
        gas_volume: 1e-3,
        precharge: 2e6,
        charged: 3e6,
        exponent: 1.0,
    });
    let power = Power::Fluid(Pump::new(&supply).unwrap().unwrap());
    let (at, out) = power.exactly_at(Kind::ReliefClosed, 3).unwrap();
    // 1e-3·(2.101325/3.101325 − 2.101325/5.101325), p·V constant
    let held = 1e-3 * (2.101_325 / 5.101_325 - 2.101_325 / 3.101_325);
    assert_eq!(at, 3 + 8);
    assert!(out > held && out < held + 1e-10, "{out} {held}");
}

/// Gas that is charged over the pressure switch gives before the pump starts, and is filled to the switch again.
#[test]
fn full_gas_gives_and_is_filled_again() {
    let mut gear = gear();
    gear.supply.pressure_switch = Some(4.5e6);
    gear.supply.accumulator = Some(Accumulator {
        gas_volume: 5e-4,
        precharge: 2e6,
        charged: 4.7e6,
        exponent: 1.4,
    });
    let up = solved(&gear).up.unwrap();
    let refill = up.refill.unwrap();
    assert!((refill.pressure - 4.5e6).abs() < 1.0, "{refill:?}");
    let least = up
        .samples
        .iter()
        .filter_map(|s| s.pressure)
        .fold(f64::INFINITY, f64::min);
    assert!(least < 4.4e6, "{least}");
}

/// A motor pump that runs on over its relief valve: current, voltage and flow by its figures.
#[test]
fn a_pump_that_runs_on_at_its_relief_valve() {
    let mut gear = gear();
    gear.legs[1].well = vec![skin_over_the_wheel(1.2, 0.1)];
    gear.supply.battery.open_circuit_voltage = Some(12.0);
    gear.supply.battery.internal_resistance = 0.01;
    gear.supply.battery.wire_resistance = 0.01;
    let up = solved(&gear).up.unwrap();
    let last = up.samples.last().unwrap();
    assert_eq!(last.pressure, Some(5e6));
    // I = 15 + 135·5/7 A; V = 12 − 0.02·I = 9.7714 V; Q = 6e-5·(V/12 − 5/7) = 6e-6 m3/s; posts 12 − 0.01·I
    assert!((last.flow.unwrap() - 6e-6).abs() < 1e-12, "{last:?}");
    assert!(
        (last.bus_voltage.unwrap() - 10.885_714_285_714).abs() < 1e-9,
        "{last:?}"
    );
}

/// Work is force along the way; what the wires take is resistance times the square of the current.
#[test]
fn energies_of_electric_actuators() {
    let gear = on_motors(gear(), [9e3, 12.0], [0.0, 0.02]);
    let up = solved(&gear).up.unwrap();
    let mut loads = 0.0;
    for leg in 0..3 {
        for stage in LegStages::of(&gear, leg, Direction::Up).stages {
            let h = stage.extent / 20_000.0;
            loads += (0..20_000)
                .map(|at| stage.load.value((f64::from(at) + 0.5) * h).max(0.0) * h)
                .sum::<f64>();
        }
    }
    assert!(
        (up.energy.loads / loads - 1.0).abs() < 1e-5,
        "{} {loads}",
        up.energy.loads
    );
    let wires: f64 = up
        .samples
        .windows(2)
        .map(|s| {
            let square = |i: usize| s[i].current.unwrap().powi(2);
            0.5 * 0.02 * (square(0) + square(1)) * (s[1].time - s[0].time)
        })
        .sum();
    assert!(
        (up.energy.wires / wires - 1.0).abs() < 0.02,
        "{} {wires}",
        up.energy.wires
    );
}

/// What is pumped and drawn is what is swept and relieved, to rounding, events included.
#[test]
fn no_fluid_is_lost_at_an_event() {
    let found = solved(&gear());
    for run in [found.up.unwrap(), found.down.unwrap()] {
        let f = run.fluid;
        let off = (f.pumped + f.drawn) / (f.swept + f.relieved) - 1.0;
        assert!(off.abs() < 1e-9, "{off:e}");
    }
}

/// A relief valve that opens at a peak of the load closes behind it.
#[test]
fn a_relief_valve_closes_behind_a_peak() {
    // full flow at 6 MPa is 14 cm3/s, which this line passes under 19.6 kPa; 10 kPa are left at the peak
    let load = |v: f64| 5.99e6 - 1e14 * (v - 1e-4_f64).powi(2);
    let run = run(&motor(6e6), vec![track(2e-4, 1e-7, load)]);
    let kinds: Vec<Kind> = run
        .events
        .iter()
        .map(|e| e.kind)
        .filter(|k| matches!(k, Kind::ReliefOpen | Kind::ReliefClosed))
        .collect();
    assert_eq!(kinds, [Kind::ReliefOpen, Kind::ReliefClosed]);
}
