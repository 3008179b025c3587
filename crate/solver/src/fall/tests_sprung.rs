//! Falls with springs and rubbing pins: what they give and take.
use super::fall_of;
use crate::kinematics::Linkage;
use crate::model::*;
use crate::result::{Fall, FallOutcome};
use crate::sample::leg;

fn fall(leg: &Leg) -> Fall {
    let linkage = Linkage::new(leg);
    fall_of(leg, &linkage, &Fluid::default(), &Conditions::default()).unwrap()
}

/// What the springs store at both ends (½·k·x², ½·k·θ² − M₀·θ) is what they give.
#[test]
fn energy_balances_with_springs() {
    let mut leg = leg();
    leg.actuator.seal_friction = 3.0;
    assert_eq!(fall(&leg).energy.springs, 0.0);
    let end = |body, x, y| SpringEnd {
        body,
        point: Point::new(x, y),
    };
    let kinds = [
        SpringKind::Linear(LinearSpring {
            first: end(Body::Airframe, 0.3, 0.3),
            second: end(Body::Leg, 0.1, -0.3),
            rate: 120.0,
            set: SpringSet::FreeLength { length: 0.2 },
            acts: Acts::Both,
        }),
        SpringKind::Torsion(TorsionSpring {
            joint: SpringJoint::Knee,
            rate: 2.0,
            moment_at_down: 1.0,
        }),
    ];
    for kind in kinds {
        leg.springs = vec![Spring {
            name: String::new(),
            kind,
        }];
        let sprung = fall(&leg);
        assert!(sprung.energy.springs != 0.0);
        assert!(sprung.energy.residual.abs() < 1e-6, "{sprung:?}");
    }
}

#[test]
fn rubbing_pins_slow_the_fall() {
    let mut leg = leg();
    leg.actuator.seal_friction = 3.0;
    let free = fall(&leg);
    let pin = Pin {
        radius: 0.005,
        friction: 0.1,
    };
    leg.pins = Pins {
        trunnion: pin,
        brace_pivot: pin,
        knee: pin,
        leg_attach: pin,
        ..Pins::default()
    };
    let rubbing = fall(&leg);
    assert!(rubbing.energy.friction > free.energy.friction);
    assert!(rubbing.energy.residual.abs() < 1e-4, "{rubbing:?}");
    let (FallOutcome::ReachesLock(slow), FallOutcome::ReachesLock(fast)) =
        (&rubbing.outcome, &free.outcome)
    else {
        panic!("{rubbing:?}");
    };
    assert!(slow.time > fast.time);
    assert!(rubbing.friction_factor.unwrap() < free.friction_factor.unwrap());
}
