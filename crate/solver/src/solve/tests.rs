//! What is worked out again after a change, and what is not.
use std::sync::Arc;

use super::fall::without_power;
use super::forces::forces;
use crate::model::Gear;
use crate::prepared::PreparedGear;
use gearswing_samples::pack::{accumulator_alone, gear, on_motors, skin_over_the_wheel};

/// A change of a gear.
type Change = fn(&mut Gear);

/// Whether the forces and the fall of the first leg are those of before a change, and not some like them.
fn kept(gear: &Gear, change: impl Fn(&mut Gear)) -> [bool; 2] {
    let found = |prepared: &PreparedGear<'_>| {
        let (gear, leg) = (prepared.gear(), prepared.leg(0).unwrap());
        let forces = forces(prepared, 0, leg, 721).unwrap();
        (forces, without_power(gear, leg, gear.conditions))
    };
    let before = PreparedGear::of(gear);
    let known = found(&before);
    let mut changed = gear.clone();
    change(&mut changed);
    assert!(changed != *gear);
    let now = found(&PreparedGear::after(changed, &before));
    [Arc::ptr_eq(&known.0, &now.0), Arc::ptr_eq(&known.1, &now.1)]
}

#[test]
fn forces_and_fall_are_worked_out_anew_only_after_what_they_rest_on() {
    let changes: [(Change, [bool; 2]); 9] = [
        (
            |g| g.legs[0].well.push(skin_over_the_wheel(0.3, 0.1)),
            [true, true],
        ),
        (|g| g.clearance_rule.tire_new = Some(0.03), [true, true]),
        (|g| g.legs[0].name.push('x'), [true, true]),
        (|g| g.legs[0].wheel.tire.diameter *= 1.01, [true, false]),
        (|g| g.friction_times_required = Some(1.7), [true, false]),
        (|g| g.supply.return_pressure += 1e3, [false, true]),
        (|g| g.legs[0].wheel.mass += 0.1, [false, false]),
        (|g| g.conditions.load_factor = 1.2, [false, false]),
        (|g| g.legs[0].swing_up *= 0.99, [false, false]),
    ];
    let gear = gear();
    for (at, (change, wanted)) in changes.into_iter().enumerate() {
        assert_eq!(kept(&gear, change), wanted, "{at}");
    }
}

/// Another leg on the same pump counts nothing here; one on the same battery draws it down, and takes of the
/// same gas.
#[test]
fn forces_rest_on_the_other_legs_only_where_they_share_the_source() {
    let heavier: Change = |g| g.legs[1].wheel.mass += 0.1;
    assert_eq!(kept(&gear(), heavier), [true, true]);
    let electric = on_motors(gear(), [4e3, 12.0], [0.02, 0.01]);
    assert_eq!(kept(&electric, heavier), [false, true]);
    let mut on_gas = gear();
    on_gas.supply = accumulator_alone();
    assert_eq!(kept(&on_gas, heavier), [false, true]);
    let mut on_one_drive = gear();
    for leg in &mut on_one_drive.legs[..2] {
        leg.shared_drive = "both".into();
    }
    assert_eq!(kept(&on_one_drive, heavier), [false, true]);
    assert_eq!(
        kept(&on_one_drive, |g| g.legs[1].drive_ratio = 0.9),
        [false, true]
    );
    assert!(!kept(&on_one_drive, |g| g.legs[0].drive_ratio = 0.9)[0]);
}
