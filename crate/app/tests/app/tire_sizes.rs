//! What a tire's size rests on while it is typed.
use gearswing_app::fields;
use gearswing_gear::model::Basis;
use gearswing_gearfile::STARTERS;
use gearswing_solver::result::{Assumption, TireState};
use gearswing_solver::tires::size_assumptions;

/// A size from the table that is typed over is one whose origin is not said, also when the table's figure is typed
/// again; what was measured stays so.
#[test]
fn a_typed_size_is_none_of_the_table() {
    let mut gear = STARTERS[0].gear().unwrap();
    let path = "legs[0].wheel.tire.diameter_m";
    let of_row = gear.legs[0].wheel.tire.diameter;
    assert_eq!(gear.legs[0].wheel.tire.basis, Basis::Table);
    fields::set_shown(&mut gear, path, Some(of_row)).unwrap();
    assert_eq!(gear.legs[0].wheel.tire.basis, Basis::Table);
    for typed in [1.1 * of_row, of_row] {
        fields::set_shown(&mut gear, path, Some(typed)).unwrap();
        assert_eq!(gear.legs[0].wheel.tire.basis, Basis::Unstated);
    }
    gear.legs[0].wheel.tire.basis = Basis::Measured;
    let around = "legs[0].wheel.tire.circumference_m";
    fields::set_shown(&mut gear, around, Some(1.5)).unwrap();
    assert_eq!(gear.legs[0].wheel.tire.basis, Basis::Measured);
}

/// The tires of the starters are those of the table that they name.
#[test]
fn tires_of_starters_are_of_the_table() {
    for starter in STARTERS {
        for gear in [starter.gear(), starter.gear_in_inches()] {
            let tire = &gear.unwrap().legs[0].wheel.tire;
            let rests = size_assumptions(tire, TireState::New);
            assert_ne!(rests, [Assumption::TireUnstated], "{}", starter.key);
        }
    }
}
