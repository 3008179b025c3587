//! What a leg can count on is what its source makes, the answers with it.
use super::super::{SupplyOptions, cycle};
use crate::model::{Battery, Spring, SpringJoint, SpringKind, TorsionSpring};
use crate::prepared::PreparedGear;
use crate::result::{
    CaseOutcome, DrivenBy, LoadCase, Motion, Question, RunEnd, SetBy, StallCause, Verdict,
};
use crate::statics::available;
use crate::{Options, solve_leg};
use gearswing_samples::pack::{accumulator_alone, gear, on_motors};

fn driven(gear: &crate::model::Gear, leg: usize) -> (Verdict, crate::result::Force) {
    let found = solve_leg(gear, leg, &Options::default()).unwrap();
    let answer = found
        .findings
        .iter()
        .find(|f| f.question == Question::Driven);
    (answer.unwrap().verdict, found.force)
}

/// A run that stalls and the answer of the leg that stands name the same figures.
#[test]
fn a_weak_pump_is_in_the_answer() {
    let mut gear = gear();
    gear.supply.battery = Battery {
        charge: 0.1,
        internal_resistance: 0.1,
        wire_resistance: 0.06,
        ..gear.supply.battery
    };
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::Stalled);
    let stall = &run.stalls[0];
    let StallCause::Pressure {
        needed, available, ..
    } = stall.cause
    else {
        panic!("{stall:?}");
    };
    let (verdict, force) = driven(&gear, stall.leg);
    assert_eq!(verdict, Verdict::Bad);
    assert_eq!(force.available_set_by, SetBy::Source);
    assert!((force.available_pressure / available - 1.0).abs() < 1e-12);
    let peak = force.peak.unwrap();
    assert!(
        (peak.pressure / needed - 1.0).abs() < 1e-4,
        "{peak:?} {needed}"
    );
    // a sound supply is not held back by more than the file says
    let sound = gearswing_samples::pack::gear();
    let (verdict, force) = driven(&sound, stall.leg);
    // which a turn of 2 g asks too much of, as set it does not
    assert_eq!(verdict, Verdict::Marginal);
    assert!(force.peak.unwrap().margin > 0.1);
    assert!(force.available_pressure <= sound.supply.available_pressure);
}

/// An actuator on a battery without resistance makes Fs·V/Vn (textbook), whatever pressure the file has.
#[test]
fn an_electric_leg_is_answered_in_force() {
    let with = |force| on_motors(gear(), [force, 12.6], [0.0, 0.0]);
    let gear = with(9e3);
    let (verdict, force) = driven(&gear, 1);
    assert_eq!(
        (verdict, force.driven_by),
        (Verdict::Good, DrivenBy::Electricity)
    );
    let most = 9e3 * 12.0 / 12.6;
    assert!((force.available_pressure / most - 1.0).abs() < 1e-12);
    let peak = force.peak.unwrap();
    assert!((peak.pressure / peak.effort - 1.0).abs() < 1e-12);
    assert!((peak.margin - (1.0 - peak.effort / most)).abs() < 1e-12);
    let weak = with(0.9 * peak.effort * 12.6 / 12.0);
    assert_eq!(driven(&weak, 1).0, Verdict::Bad);
}

/// No climb and no turn: the other load cases ask for no more than the one as set.
pub(super) fn level_flight_alone(gear: &mut crate::model::Gear) {
    gear.conditions.turn_load_factor = Some(1.0);
    gear.conditions.climb_pitch = Some(0.0);
}

/// Three alike on a battery with resistance. Stalled, V = E − 3·R·(I0 + (Is − I0)·V/Vn), a line solved by
/// hand. Each counts on what it makes while the two others run under what they need at the same place:
/// V = E − R·(I1 + I2 + I0 + (Is − I0)·V/Vn), with I = I0 + (Is − I0)·F/Fs of each (a DC motor's line).
#[test]
fn electric_legs_share_the_battery() {
    let with = |force| on_motors(gear(), [force, 12.0], [0.02, 0.01]);
    let volts = |legs: f64| (12.0 - 0.03 * legs * 2.0) / (1.0 + 0.03 * legs * 38.0 / 12.0);
    let near = |a: f64, b: f64| assert!((a / b - 1.0).abs() < 1e-12, "{a} {b}");
    assert_eq!(driven(&with(14e3), 1).0, Verdict::Good);
    let mut gear = with(9e3);
    let (_, force) = driven(&gear, 1);
    near(force.available_pressure, 9e3 * volts(1.0) / 12.0);
    near(force.available_among_all.unwrap(), 9e3 * volts(3.0) / 12.0);
    level_flight_alone(&mut gear);
    // three legs that are one: each needs at each place what the leg itself needs there
    let leg = gear.legs[1].clone();
    gear.legs = vec![leg; 3];
    let (_, force) = driven(&gear, 0);
    let peak = force.peak.unwrap();
    let beside = 2.0 * (2.0 + 38.0 * peak.pressure / 9e3);
    let left = (12.0 - 0.03 * (beside + 2.0)) / (1.0 + 0.03 * 38.0 / 12.0);
    let wanted = 9e3 * left / 12.0;
    assert!(
        (peak.available / wanted - 1.0).abs() < 1e-6,
        "{} {wanted}",
        peak.available
    );
    assert!(peak.available < force.available_pressure);
    assert!(peak.available > force.available_among_all.unwrap());
    // enough with the battery to itself, too little beside the others
    let between = |share: f64| {
        let mut gear = gear.clone();
        gear.supply.margin_wanted = Some(0.0);
        for leg in &mut gear.legs {
            leg.drive.electric.as_mut().unwrap().stall_force = share * peak.pressure;
        }
        driven(&gear, 0)
    };
    let (verdict, force) = between(12.0 / volts(2.5));
    assert!(force.available_pressure > force.peak.unwrap().pressure);
    assert_eq!(verdict, Verdict::Bad);
    assert_eq!(between(1.3 * 12.0 / volts(3.0)).0, Verdict::Good);
}

/// A leg that moves on the jacks and stalls in a turn is no Yes; one that moves as set, lightened, and
/// stalls on the jacks is a No.
#[test]
fn the_hardest_load_case_decides() {
    let mut gear = gear();
    gear.conditions.gear_speed = Some(40.0);
    gear.conditions.turn_load_factor = Some(1.2);
    let turn = |force: &crate::result::Force| {
        let case = force.cases.iter().find(|c| c.case == LoadCase::Turn);
        match case.unwrap().outcome {
            CaseOutcome::Worked { retract, .. } => retract.unwrap().margin,
            CaseOutcome::Missing { .. } => panic!("not worked out"),
        }
    };
    let (verdict, slow) = driven(&gear, 0);
    assert_eq!(verdict, Verdict::Good);
    assert!(slow.peak.unwrap().margin > 0.1 && turn(&slow) > 0.1);
    gear.conditions.turn_load_factor = Some(6.0);
    let (verdict, fast) = driven(&gear, 0);
    assert!(fast.peak.unwrap().margin > 0.1);
    assert!(turn(&fast) < 0.0, "{}", turn(&fast));
    assert_eq!(verdict, Verdict::Marginal);
    gear.conditions.turn_load_factor = Some(1.2);
    gear.conditions.load_factor = 0.2;
    gear.supply.available_pressure = 0.98 * {
        let (_, force) = driven(&gear, 0);
        let jacks = force.cases.iter().find(|c| c.case == LoadCase::OnJacks);
        jacks.unwrap().pressure().unwrap()
    };
    let (verdict, light) = driven(&gear, 0);
    assert!(light.peak.unwrap().margin > 0.1 && light.stalls_at.is_none());
    assert_eq!(verdict, Verdict::Bad);
}

/// A switch stops the pump at its pressure, and an accumulator alone has less behind all legs: what is
/// left by p·V^n (textbook) of the fluid of a run.
#[test]
fn switch_and_accumulator_count() {
    let mut gear = gear();
    gear.supply.pressure_switch = Some(2e6);
    let up = |gear: &crate::model::Gear| {
        let found = available(&PreparedGear::of(gear), 0, None);
        let way = Motion::Retract;
        (found.most(way), found.set_by(way))
    };
    assert_eq!(up(&gear), (2e6, SetBy::Source));
    gear.supply = accumulator_alone();
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.end, RunEnd::Complete);
    let found = up(&gear).0;
    let base = 3e6 + 101_325.0;
    let ratio: f64 = base / (7e6 + 101_325.0);
    let volume = 1e-3 * ratio.powf(1.0 / 1.4) + run.fluid.swept;
    let left = base * (1e-3 / volume).powf(1.4) - 101_325.0;
    assert!((found / left - 1.0).abs() < 1e-6, "{found:?} {left}");
    // too small a one leaves nothing
    gear.supply.accumulator.as_mut().unwrap().gas_volume = 1e-4;
    assert_eq!(up(&gear).0, 0.0);
    assert_eq!(driven(&gear, 0).0, Verdict::Bad);
}

/// A valve that opens above what the source makes lets no leg swing, and the run says so too.
#[test]
fn a_valve_that_stays_shut() {
    let mut gear = gear();
    gear.legs[0].drive.stage_valve = Some(5.5e6);
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.stalls.len(), 1);
    assert_eq!(driven(&gear, 0).0, Verdict::Bad);
    gear.legs[0].drive.stage_valve = Some(4.5e6);
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert!(run.stalls.is_empty());
    assert_ne!(driven(&gear, 0).0, Verdict::Bad);
}

/// A jack that asks for more than there is lets nothing move.
#[test]
fn a_jack_that_is_too_weak() {
    let mut gear = gear();
    gear.legs[0]
        .drive
        .strut_jack
        .as_mut()
        .unwrap()
        .shorten_pressure = 5.5e6;
    let run = cycle(&gear, &SupplyOptions::default()).unwrap().up.unwrap();
    assert_eq!(run.stalls.len(), 1);
    assert_eq!(driven(&gear, 0).0, Verdict::Bad);
}

/// A leg that comes up and cannot be driven down is no Yes: its run down stalls too.
#[test]
fn a_leg_must_be_driven_both_ways() {
    let mut gear = gear();
    let up = gear.legs[0].swing_up.signum();
    // it pulls up all the way, with more than the source makes against it
    gear.legs[0].springs = vec![Spring {
        name: "Lift".into(),
        kind: SpringKind::Torsion(TorsionSpring {
            joint: SpringJoint::Trunnion,
            rate: 0.0,
            moment_at_down: 600.0 * up,
        }),
    }];
    let (verdict, force) = driven(&gear, 0);
    let (retract, extend) = (force.peak.unwrap(), force.extend_peak.unwrap());
    assert!(extend.margin < 0.0, "{extend:?}");
    assert!(retract.margin > 0.1);
    assert_eq!(verdict, Verdict::Bad);
}

/// A pump that does not turn makes nothing.
#[test]
fn a_dead_battery_makes_nothing() {
    let mut gear = gear();
    gear.supply.battery.open_circuit_voltage = Some(0.5);
    gear.supply.battery.internal_resistance = 1.0;
    let found = available(&PreparedGear::of(&gear), 0, None);
    for way in [Motion::Retract, Motion::Extend] {
        assert_eq!((found.most(way), found.set_by(way)), (0.0, SetBy::Source));
    }
    assert_eq!(driven(&gear, 0).0, Verdict::Bad);
}

/// On jacks a run is that of a file which sets neither attitude nor air.
#[test]
fn on_jacks_no_attitude_and_no_air_count() {
    let mut flying = gear();
    flying.conditions.load_factor = 1.4;
    flying.conditions.pitch = 0.1;
    let plain = SupplyOptions::default();
    let jacked = SupplyOptions {
        on_jacks: true,
        ..plain
    };
    let found = cycle(&flying, &jacked).unwrap();
    let wanted = cycle(&gear(), &plain).unwrap();
    assert_eq!(found.case, LoadCase::OnJacks);
    assert_eq!(wanted.case, LoadCase::AsSet);
    assert_eq!((&found.up, &found.down), (&wanted.up, &wanted.down));
    assert_ne!(cycle(&flying, &plain).unwrap().up, wanted.up);
}
