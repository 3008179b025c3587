//! A leg that is another's image in a mirror: it is asked once whether both change.
use gearswing_app::msg::{Field, File, History, Msg, View};
use gearswing_gear::field::{follow_image, image_of};

use crate::support::{Desk, by};

/// A starter with its mirror image.
fn pair() -> Desk {
    let mut desk = Desk::demo();
    desk.send(Msg::File(File::New {
        starter: "folding_front".to_owned(),
    }));
    desk.send(Msg::Field(Field::AddMirrorImage { leg: 0 }));
    assert_eq!(image_of(desk.state.gear(), 0), Some(1));
    assert_eq!(image_of(desk.state.gear(), 1), Some(0));
    desk
}

fn asked(desk: &Desk) -> Vec<(String, Msg)> {
    let notices = desk.page().notices.into_iter();
    let mut asked = notices.filter(|notice| notice.text.contains("mirror image"));
    let found = asked.next();
    assert!(asked.next().is_none(), "it is asked once");
    let actions = found.map_or_else(Vec::new, |notice| notice.actions);
    actions
        .into_iter()
        .map(|one| (one.label, one.msg))
        .collect()
}

const BORE: &str = "legs[0].actuator.bore_m";

#[test]
fn both_change_where_that_is_wanted() {
    let mut desk = pair();
    desk.enter(BORE, "1 1/8");
    let [both, one] = asked(&desk).try_into().unwrap();
    assert_eq!(
        (both.0.as_str(), one.0.as_str()),
        ("Change both alike", "This leg only")
    );
    assert_eq!(
        image_of(desk.state.gear(), 0),
        None,
        "not before it is answered"
    );
    desk.send(both.1);
    assert_eq!(image_of(desk.state.gear(), 0), Some(1));
    assert!(asked(&desk).is_empty());
    // from now on, from either side, and by a drag
    desk.enter("legs[1].actuator.rod_m", "5/8");
    assert_eq!(desk.gear().legs[0].actuator.rod, 0.625 * 0.0254);
    desk.send(Msg::View(View::SelectLeg { leg: 0 }));
    let path = "legs[0].actuator.mount_m";
    let at = desk.handle(path);
    desk.press(at);
    for step in 1..6 {
        desk.drag_to(by(at, f64::from(step), 0.0), true);
    }
    desk.release(by(at, 5.0, 0.0));
    let gear = desk.gear();
    assert_eq!(
        gear.legs[1].actuator.mount.x,
        -gear.legs[0].actuator.mount.x
    );
    assert_eq!(image_of(&gear, 0), Some(1));
    // one act is one step back
    desk.send(Msg::History(History::Undo));
    assert_eq!(image_of(desk.state.gear(), 0), Some(1));
    assert_ne!(desk.gear(), gear);
    // names stay
    desk.enter("legs[0].name", "Port main");
    assert_ne!(desk.gear().legs[1].name, "Port main");
    assert!(asked(&desk).is_empty());
}

#[test]
fn one_changes_alone_where_that_is_wanted() {
    let mut desk = pair();
    desk.enter(BORE, "1 1/8");
    let [_, one] = asked(&desk).try_into().unwrap();
    desk.send(one.1);
    assert!(asked(&desk).is_empty());
    desk.enter(BORE, "1 1/4");
    assert!(asked(&desk).is_empty(), "it is asked once");
    assert_eq!(desk.gear().legs[1].actuator.bore, 0.0254);
}

/// The demo's mains are no pair: one of them has a repair angle.
#[test]
fn what_is_no_pair_is_not_asked_for() {
    let mut desk = Desk::demo();
    assert_eq!(image_of(desk.state.gear(), 1), None);
    desk.enter("legs[1].actuator.bore_m", "1 1/8");
    assert!(asked(&desk).is_empty());
    let mut gear = desk.gear();
    assert_eq!(follow_image(&mut gear, 1, 7), None);
    // what follows is an image then, to the last bit
    follow_image(&mut gear, 1, 2).unwrap();
    assert_eq!(image_of(&gear, 1), Some(2));
    let again = gear.clone();
    follow_image(&mut gear, 2, 1).unwrap();
    assert_eq!(gear, again);
}
