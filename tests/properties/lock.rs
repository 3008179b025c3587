//! What the down lock rests on: the pose at gear down, not where the leg is asked to go.
use gearswing_gear::model::{LegAir, View};
use gearswing_solver::result::AxlePush;
use gearswing_tests::{BraceKind, cases, near, solve};

#[test]
fn lock_does_not_ask_where_the_leg_goes() {
    let mut compared = 0;
    for case in cases(6, 0, 30) {
        if case.kind.brace != BraceKind::ThroughCentre {
            continue;
        }
        let lock = solve(&case.gear, 2).lock;
        let mut other = case.gear.clone();
        other.legs[0].swing_up *= -1.0;
        let reversed = solve(&other, 2).lock;
        assert_eq!(lock.kind, reversed.kind);
        let pairs = [
            (lock.over_centre, reversed.over_centre),
            (lock.past_centre, reversed.past_centre),
            (lock.knee_push, reversed.knee_push),
            (
                lock.ground_load.map(|g| g.into_lock),
                reversed.ground_load.map(|g| g.into_lock),
            ),
        ];
        for (a, b) in pairs {
            let (a, b) = (a.unwrap(), b.unwrap());
            near("lock", a, b, 1e-9 * a.abs().max(1.0));
        }
        compared += 1;
    }
    assert!(compared > 50, "{compared}");
}

/// Ground and weight act by the same lever: a mass at the axle that weighs as much as the ground
/// pushes changes the push at the knee by as much as the ground's share in the lock, the other way.
#[test]
fn ground_load_is_a_weight_upwards() {
    for case in cases(4, 0, 31) {
        if case.kind.brace != BraceKind::ThroughCentre {
            continue;
        }
        let mut gear = case.gear.clone();
        gear.conditions.pitch = 0.0;
        gear.conditions.bank = 0.0;
        gear.conditions.load_factor = 1.0;
        let without = solve(&gear, 2).lock;
        gear.legs[0].wheel.mass += 10.0;
        let with = solve(&gear, 2).lock;
        let share = (with.knee_push.unwrap() - without.knee_push.unwrap()) / (10.0 * 9.80665);
        let into = without.ground_load.unwrap().into_lock;
        near("share", share, -into, 1e-8 * into.abs().max(1.0));
    }
}

/// Drag on the wheel at the gear speed is a load at the axle: ½ρV² times its drag area, by the share of a
/// load aft, taken from or added to the push at the knee.
#[test]
fn drag_at_the_gear_speed_is_a_load_at_the_axle() {
    let mut compared = 0;
    for case in cases(4, 0, 33) {
        if case.kind.brace != BraceKind::ThroughCentre {
            continue;
        }
        let mut gear = case.gear.clone();
        if gear.legs[0].view != View::Side {
            continue;
        }
        gear.conditions.sideslip = 0.0;
        gear.conditions.gear_speed = Some(45.0);
        gear.legs[0].air = LegAir {
            wheel_drag_area: 0.03,
            leg_drag_area: 0.0,
        };
        let lock = solve(&gear, 2).lock;
        let mut loads = lock.axle_loads.iter();
        let aft = loads.find(|l| l.direction == AxlePush::DragAft);
        // ½ρV² with the density of the US Standard Atmosphere 1976 at sea level
        let drag = 0.5 * 1.225 * 45.0 * 45.0 * 0.03;
        let wanted = lock.knee_push.unwrap() + drag * aft.unwrap().effect.into_lock;
        let found = lock.knee_push_at_gear_speed.unwrap();
        near(
            "knee in the air",
            found,
            wanted,
            1e-9 * wanted.abs().max(1.0),
        );
        compared += 1;
    }
    assert!(compared > 10, "{compared}");
}

/// A load factor above 1, set for the forces, flatters neither the lock nor the fall.
#[test]
fn lock_and_fall_count_on_1_g() {
    for case in cases(1, 0, 34) {
        let mut gear = case.gear.clone();
        gear.conditions.load_factor = 1.0;
        let one = solve(&gear, 2);
        gear.conditions.load_factor = 2.5;
        let more = solve(&gear, 2);
        assert_eq!(one.lock, more.lock);
        assert_eq!(one.fall, more.fall);
    }
}
