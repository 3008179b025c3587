//! Springs, pin friction and binding pins, seen by the supply.
use super::super::{SupplyOptions, cycle};
use crate::model::*;
use crate::result::{Cycle, RunEnd, RunEventKind as Kind, StallCause};
use gearswing_samples::pack::gear;

fn solved(gear: &Gear) -> Cycle {
    cycle(gear, &SupplyOptions::default()).unwrap()
}

fn with_pins(friction: f64) -> Gear {
    let mut gear = gear();
    for leg in &mut gear.legs {
        let pin = Pin::rubbing(0.012, friction);
        leg.pins = Pins::alike(pin);
    }
    gear
}

#[test]
fn friction_takes_work_both_ways() {
    let (free, rubs) = (solved(&gear()), solved(&with_pins(0.15)));
    assert_eq!(rubs.up.as_ref().unwrap().end, RunEnd::Complete);
    assert!(rubs.up.as_ref().unwrap().energy.loads > free.up.as_ref().unwrap().energy.loads);
    assert!(rubs.up.as_ref().unwrap().time > free.up.as_ref().unwrap().time);
    let (free, rubs) = (free.down.unwrap(), rubs.down.unwrap());
    assert!(rubs.energy.loads > free.energy.loads);
}

#[test]
fn a_torsion_spring_gives_what_it_stores() {
    // Work of a constant moment: M·φ. Over the swing the loads differ by it, up less, down more.
    let moment = 60.0;
    // so heavy that the spring nowhere draws a leg ahead of its fluid
    let mut heavy = gear();
    heavy.legs.iter_mut().for_each(|leg| leg.wheel.mass += 15.0);
    // and a pump that lifts them
    if let Source::MotorPump(pump) = &mut heavy.supply.source {
        pump.stall_pressure = 1.2e7;
        pump.relief_pressure = 9e6;
    }
    let mut sprung = heavy.clone();
    for leg in &mut sprung.legs {
        leg.springs = vec![Spring {
            name: "Helper".into(),
            kind: SpringKind::Torsion(TorsionSpring {
                joint: SpringJoint::Trunnion,
                rate: 0.0,
                moment_at_down: moment,
            }),
        }];
    }
    let work: f64 = sprung.legs.iter().map(|leg| moment * leg.swing_up).sum();
    let (plain, helped) = (solved(&heavy), solved(&sprung));
    let up = plain.up.as_ref().unwrap().energy.loads - helped.up.as_ref().unwrap().energy.loads;
    assert!((up / work - 1.0).abs() < 1e-3, "{up} {work}");
    let down = helped.down.unwrap().energy.loads - plain.down.unwrap().energy.loads;
    assert!((down / work - 1.0).abs() < 1e-3, "{down} {work}");
}

#[test]
fn pins_that_bind_stop_a_leg_and_no_pressure_frees_it() {
    let mut gear = gear();
    // A friction circle larger than the actuator's arm (see the tests of pin friction).
    gear.legs[1].pins.trunnion = Pin::rubbing(0.45, 1.4);
    let run = solved(&gear).up.unwrap();
    assert_eq!(run.end, RunEnd::Stalled);
    assert_eq!(run.stalls[0].leg, 1);
    assert_eq!(
        run.stalls[0].cause,
        StallCause::Binds {
            joint: Joint::Trunnion
        }
    );
    // The others come up all the same.
    for leg in [0, 2] {
        let is_up = |e: &crate::result::RunEvent| e.leg == Some(leg) && e.kind == Kind::UpMade;
        assert!(run.events.iter().any(is_up));
    }
}
