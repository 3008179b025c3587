//! Undo and redo of everything.
use gearswing_app::msg::{self, Msg};
use proptest::prelude::*;

use crate::support::Desk;

fn edit() -> impl Strategy<Value = Msg> {
    let path = prop::sample::select(vec![
        "legs[0].actuator.bore_m",
        "legs[1].wheel.tire.diameter_m",
        "legs[2].trunnion_m[1]",
        "legs[2].well[0].required_clearance_m",
        "supply.available_pressure_pa",
    ]);
    let step = (path, any::<bool>()).prop_map(|(path, up)| {
        Msg::Field(msg::Field::Step {
            path: path.to_owned(),
            up,
            size: gearswing_units::StepSize::Normal,
        })
    });
    let list = prop::sample::select(vec![
        Msg::Field(msg::Field::Add {
            path: "legs[2].well".to_owned(),
        }),
        Msg::Field(msg::Field::Add {
            path: "legs[2].well[0]".to_owned(),
        }),
        Msg::Field(msg::Field::Remove {
            path: "legs[2].well[0]".to_owned(),
        }),
        Msg::Field(msg::Field::Add {
            path: "legs[0].body.outline_m[1]".to_owned(),
        }),
        Msg::Field(msg::Field::Remove {
            path: "legs[0].body.outline_m[0]".to_owned(),
        }),
        Msg::Field(msg::Field::KeepTire { leg: 2 }),
        Msg::Field(msg::Field::Choose {
            path: "legs[1].brace".to_owned(),
            option: "sliding".to_owned(),
        }),
        Msg::File(msg::File::Rename {
            name: "Other name".to_owned(),
        }),
    ]);
    prop_oneof![3 => step, 2 => list]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn undo_all_and_redo_all(edits in prop::collection::vec(edit(), 1..30)) {
        let mut desk = Desk::demo();
        let first = desk.gear();
        // results do not matter here: no settling, for speed
        for msg in edits {
            gearswing_app::update(&mut desk.state, msg);
        }
        let last = desk.gear();
        for _ in 0..100 {
            gearswing_app::update(&mut desk.state, Msg::History(msg::History::Undo));
        }
        prop_assert_eq!(desk.gear(), first);
        for _ in 0..100 {
            gearswing_app::update(&mut desk.state, Msg::History(msg::History::Redo));
        }
        prop_assert_eq!(desk.gear(), last);
    }
}
