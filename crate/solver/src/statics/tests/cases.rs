//! What each load case counts on, and what it lacks.
use crate::model::{Conditions, LegAir};
use crate::result::{LoadCase, MissingInput};
use crate::statics::case_conditions;

fn air(wheel: f64, leg: f64) -> LegAir {
    LegAir {
        wheel_drag_area: wheel,
        leg_drag_area: leg,
    }
}

/// The air load is that at 1.6 times the stall speed with flaps up, at the load factor for flaps out: 14 CFR
/// 23.729(a)(1) before amendment 23-64, read in a public copy. Climb and turn: any flight mechanics text.
#[test]
fn each_case_is_as_its_source_says() {
    let set = Conditions {
        load_factor: 1.2,
        airspeed: 40.0,
        pitch: 0.05,
        sideslip: 0.02,
        gear_speed: Some(50.0),
        stall_speed: Some(30.0),
        climb_pitch: Some(0.2),
        turn_load_factor: Some(1.8),
        ..Conditions::default()
    };
    let of = |case| case_conditions(case, &set, &air(0.01, 0.0)).unwrap();
    let told = |c: Conditions| (c.load_factor, c.airspeed, c.pitch, c.sideslip);
    assert_eq!(told(of(LoadCase::AsSet)), (1.2, 40.0, 0.05, 0.02));
    assert_eq!(told(of(LoadCase::OnJacks)), (1.0, 0.0, 0.0, 0.0));
    assert_eq!(told(of(LoadCase::LevelFlight)), (1.0, 50.0, 0.0, 0.02));
    assert_eq!(told(of(LoadCase::Climb)), (1.0, 50.0, 0.2, 0.02));
    assert_eq!(told(of(LoadCase::Turn)), (1.8, 50.0, 0.0, 0.02));
    assert_eq!(told(of(LoadCase::AirLoad)), (1.8, 48.0, 0.0, 0.02));
}

#[test]
fn a_case_names_what_it_lacks() {
    let none = Conditions::default();
    let lacks = |case, air: &LegAir| case_conditions(case, &none, air).err();
    let flown = [LoadCase::LevelFlight, LoadCase::Climb, LoadCase::Turn];
    for (wheel, leg) in [(0.01, 0.0), (0.0, 0.01)] {
        let air = air(wheel, leg);
        for case in flown {
            assert_eq!(lacks(case, &air), Some(MissingInput::GearSpeed));
        }
        assert_eq!(
            lacks(LoadCase::AirLoad, &air),
            Some(MissingInput::StallSpeed)
        );
    }
    // what the air does not catch needs no speed
    let bare = air(0.0, 0.0);
    for case in flown {
        let still = case_conditions(case, &none, &bare).unwrap();
        assert_eq!(still.airspeed, 0.0);
    }
    assert_eq!(
        lacks(LoadCase::AirLoad, &bare),
        Some(MissingInput::DragArea)
    );
    for case in [LoadCase::AsSet, LoadCase::OnJacks] {
        assert_eq!(lacks(case, &bare), None);
    }
}
