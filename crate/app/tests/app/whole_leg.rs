//! A leg as a whole: its mirror image, moved by its trunnion; points pasted as a list.
use gearswing_app::Msg;
use gearswing_app::msg::Field;
use gearswing_gear::model::{Gear, Point};

use crate::support::Desk;

/// The figures of the verdicts of every leg.
fn verdicts(desk: &Desk) -> Vec<String> {
    let page = desk.page();
    let answers = page.answers.iter().flat_map(|leg| &leg.answers);
    answers
        .map(|row| format!("{:?} {}", row.verdict, row.short))
        .collect()
}

fn press(desk: &mut Desk, label: &str) {
    let page = desk.page();
    let mut actions = page.groups.iter().flat_map(|group| &group.actions);
    let found = actions.find(|action| action.label.starts_with(label));
    let msg = found.unwrap_or_else(|| panic!("no {label}")).msg.clone();
    desk.send(msg);
}

#[test]
fn the_right_main_is_made_from_the_left_one() {
    let mut desk = Desk::demo();
    let before = verdicts(&desk);
    // the right main, index 2, has the left one beside it already
    desk.enter("legs[2].name", "Left outer");
    press(&mut desk, "Add its mirror image");
    let gear = desk.gear();
    assert_eq!(gear.legs.len(), 4);
    assert_eq!(gear.legs[3].name, "Right outer");
    assert_eq!(gear.legs[3].trunnion.x, -gear.legs[2].trunnion.x);
    assert_eq!(gear.legs[3].swing_up, -gear.legs[2].swing_up);
    let after = verdicts(&desk);
    assert_eq!(after[..9], before[..]);
    assert_eq!(after[9..], before[6..]);
    desk.send(Msg::History(gearswing_app::msg::History::Undo));
    assert_eq!(desk.gear().legs.len(), 3);
}

#[test]
fn a_starter_goes_with_its_trunnion() {
    let mut desk = Desk::demo();
    desk.send(Msg::File(gearswing_app::msg::File::New {
        starter: "folding_front".to_owned(),
    }));
    let (before, were) = (desk.gear(), verdicts(&desk));
    let x = before.legs[0].trunnion.x;
    let to = format!("{} m", x - 0.5);
    desk.enter("legs[0].trunnion_m[0]", &to);
    let gear = desk.gear();
    let shift = |a: &Gear, b: &Gear| {
        let knee = |gear: &Gear| match &gear.legs[0].brace {
            gearswing_gear::model::Brace::Folding(brace) => brace.knee,
            _ => panic!("no knee"),
        };
        let corner = |gear: &Gear| gear.legs[0].well[0].shape.points()[0];
        [knee(b) - knee(a), corner(b) - corner(a)]
    };
    for by in shift(&before, &gear) {
        assert!((by.x + 0.5).abs() + by.y.abs() < 1e-9, "{by}");
    }
    assert_eq!(verdicts(&desk), were);
    desk.send(Msg::History(gearswing_app::msg::History::Undo));
    assert_eq!(desk.gear(), before);
    // and alone, where that is wanted
    press(&mut desk, "A moved trunnion takes leg and well along: yes");
    desk.enter("legs[0].trunnion_m[0]", &to);
    assert_eq!(shift(&before, &desk.gear()).map(|by| by.norm()), [0.0; 2]);
}

/// A starter is sized by its trunnion and axle: every place of its way is as much farther from the trunnion (similar
/// figures have equal angles), and the swing is the same.
#[test]
fn a_starter_is_made_as_large_as_it_is() {
    let path = "legs[0].trunnion_to_axle_m";
    let way = |gear: &Gear| -> Vec<f64> {
        let leg = &gear.legs[0];
        let linkage = gearswing_solver::kinematics::Linkage::new(leg);
        let ways = [0.1, 0.35, 0.6, 0.9].map(|progress| {
            let pose = linkage.pose(progress).unwrap();
            let from = |point: Point| (point - leg.trunnion).norm();
            [
                from(pose.axle),
                from(pose.actuator_attach),
                pose.actuator_length,
            ]
        });
        ways.concat()
    };
    for starter in gearswing_gearfile::STARTERS {
        let mut desk = Desk::demo();
        desk.send(Msg::File(gearswing_app::msg::File::New {
            starter: starter.key.to_owned(),
        }));
        let before = desk.gear();
        let size = (before.legs[0].strut.axle - before.legs[0].trunnion).norm();
        let to = format!("{} m", 1.25 * size);
        desk.enter(path, &to);
        let after = desk.gear();
        for (was, is) in way(&before).into_iter().zip(way(&after)) {
            assert!(
                (is - 1.25 * was).abs() < 1e-9,
                "{}: {was} {is}",
                starter.key
            );
        }
        assert_eq!(after.legs[0].trunnion, before.legs[0].trunnion);
        assert_eq!(after.legs[0].swing_up, before.legs[0].swing_up);
        assert_eq!(after.legs[0].wheel, before.legs[0].wheel);
        assert_eq!(after.legs[0].actuator.bore, before.legs[0].actuator.bore);
        desk.send(Msg::History(gearswing_app::msg::History::Undo));
        assert_eq!(desk.gear(), before);
        for wrong in ["0", "-3 in", "", "far"] {
            desk.enter(path, wrong);
            assert_eq!(desk.gear(), before, "{wrong}");
        }
        // with its own numbers in, the leg is not sized any more
        press(&mut desk, "A moved trunnion takes leg and well along: yes");
        let groups = desk.page().groups;
        let mut rows = groups.iter().flat_map(|group| &group.rows);
        assert!(rows.all(|row| row.path != path));
    }
}

#[test]
fn points_are_typed_as_pairs_and_pasted_as_lists() {
    let mut desk = Desk::demo();
    let inches = |point: Point| (point.x / 0.0254, point.y / 0.0254);
    let near = |point: Point, x: f64, y: f64| {
        let (a, b) = inches(point);
        assert!((a - x).abs() + (b - y).abs() < 1e-9, "{a} {b}");
    };
    desk.enter("legs[1].actuator.mount_m[0]", "62 3/8, 5 1/2");
    near(desk.gear().legs[1].actuator.mount, 62.375, 5.5);
    assert!(desk.row("legs[1].actuator.mount_m[0]").error.is_none());
    let paste = |desk: &mut Desk, path: &str, text: &str| {
        desk.send(Msg::Field(Field::Paste {
            path: path.to_owned(),
            text: text.to_owned(),
        }))
    };
    let points = |desk: &Desk| desk.gear().legs[1].well[0].shape.points().to_vec();
    let shape = match desk.gear().legs[1].well[0].shape {
        gearswing_gear::model::Shape::Solid { .. } => "solid",
        gearswing_gear::model::Shape::Surface { .. } => "surface",
    };
    let path = |at: usize| format!("legs[1].well[0].shape.{shape}.points_m[{at}][0]");
    paste(&mut desk, &path(0), "1\t2\r\n3\t4\r\n\r\n5 1/2\t6\r\n");
    let now = points(&desk);
    assert_eq!(now.len(), 3);
    near(now[2], 5.5, 6.0);
    // from another corner on it goes on
    paste(&mut desk, &path(2), "7, 8\n9, 10");
    let now = points(&desk);
    assert_eq!(now.len(), 4);
    near(now[1], 3.0, 4.0);
    near(now[2], 7.0, 8.0);
    near(now[3], 9.0, 10.0);
    // a line that is no point changes nothing, and says which
    paste(&mut desk, &path(0), "1, 2\nthree, 4");
    assert_eq!(points(&desk), now);
    assert!(desk.page().notices[0].text.contains("line 2, “three, 4”"));
    for _ in 0..3 {
        desk.send(Msg::History(gearswing_app::msg::History::Undo));
    }
    assert_eq!(desk.gear(), Desk::demo().gear());
}
