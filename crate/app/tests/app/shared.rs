//! Legs that share a drive: an edit of one is an edit of what all of them say.
use gearswing_app::msg::{self, Msg};

use crate::support::Desk;

#[test]
fn what_one_leg_weighs_is_in_the_answers_of_those_on_its_drive() {
    let mut desk = Desk::demo();
    let of_leg = |desk: &mut Desk, leg: usize| {
        desk.send(Msg::View(msg::View::SelectLeg { leg }));
        format!("{:?}", desk.page().answers)
    };
    for leg in [1, 2] {
        desk.enter(&format!("legs[{leg}].shared_drive"), "Central cylinder");
    }
    let before = of_leg(&mut desk, 2);
    assert!(before.contains("on one drive"), "{before}");
    desk.enter("legs[1].wheel.mass_kg", "45");
    let after = of_leg(&mut desk, 2);
    assert_ne!(before, after);
    // as it is worked out anew
    let mut again = desk.reloaded();
    assert_eq!(of_leg(&mut again, 2), after);
    // what is not asked of a leg that another drives has no field
    let has = |desk: &mut Desk, path: &str| {
        let path = path.to_owned();
        desk.send(Msg::Field(msg::Field::Focus { path: path.clone() }));
        let groups = desk.page().groups;
        groups
            .iter()
            .any(|group| group.rows.iter().any(|row| row.path == path))
    };
    desk.send(Msg::View(msg::View::SelectLeg { leg: 2 }));
    assert!(!has(&mut desk, "legs[2].actuator.bore_m"));
    assert!(has(&mut desk, "legs[2].drive_ratio"));
    desk.send(Msg::View(msg::View::SelectLeg { leg: 1 }));
    assert!(has(&mut desk, "legs[1].actuator.bore_m"));
    // a name alone is nothing shared
    desk.enter("legs[1].shared_drive", "");
    assert!(!of_leg(&mut desk, 2).contains("on one drive"));
}
