//! Points told from the trunnion: fields, changes, drags, lists; the file stays in the airplane's axes.
use gearswing_app::Msg;
use gearswing_app::fields;
use gearswing_app::msg::{Field, File, History, Key, Share};
use gearswing_gear::field::value_paths;
use gearswing_gear::model::{Brace, Gear, PointsFrom};

use crate::fields::all_rows;
use crate::files::link;
use crate::support::Desk;

const KNEE_X: &str = "legs[0].brace.folding.knee_m[0]";
const KNEE_Y: &str = "legs[0].brace.folding.knee_m[1]";

fn starter() -> Desk {
    let mut desk = Desk::demo();
    desk.send(Msg::File(File::New {
        starter: "folding_front".to_owned(),
    }));
    desk
}

fn knee(gear: &Gear) -> gearswing_gear::model::Point {
    match &gear.legs[0].brace {
        Brace::Folding(brace) => brace.knee,
        _ => panic!("no knee"),
    }
}

#[test]
fn a_starter_is_told_from_its_trunnion() {
    let mut desk = starter();
    let trunnion = desk.gear().legs[0].trunnion;
    // the left main: inboard is toward x = 0
    assert!(trunnion.x > 0.0);
    assert_eq!(desk.row(KNEE_X).label, "Knee K, inboard");
    assert_eq!(desk.row(KNEE_Y).label, "Knee K, up");
    assert_eq!(desk.row("legs[0].trunnion_m[0]").label, "Trunnion P, out");
    desk.enter(KNEE_X, "10 1/2");
    desk.enter(KNEE_Y, "-6");
    let placed = knee(&desk.gear());
    assert!((placed.x - (trunnion.x - 10.5 * 0.0254)).abs() < 1e-12);
    assert!((placed.y - (trunnion.y - 6.0 * 0.0254)).abs() < 1e-12);
    // as it was typed
    assert_eq!(desk.row(KNEE_X).value, "10 1/2");
    // an arrow key goes in steps of what is told
    desk.send(Msg::Field(gearswing_app::msg::Field::Step {
        path: KNEE_X.to_owned(),
        up: true,
        size: gearswing_app::StepSize::Coarse,
    }));
    assert!(knee(&desk.gear()).x < placed.x);
    // in the airplane's axes it is the same point
    let there = knee(&desk.gear());
    desk.send(Msg::Field(gearswing_app::msg::Field::Choose {
        path: "points_from".to_owned(),
        option: "airplane".to_owned(),
    }));
    assert_eq!(desk.row(KNEE_X).label, "Knee K, out");
    assert_eq!(knee(&desk.gear()), there);
    desk.send(Msg::History(History::Undo));
    assert_eq!(desk.gear().points_from, PointsFrom::Trunnion);
}

/// In the airplane's axes a point is told out from the center line, of the right main as of the left one.
#[test]
fn out_is_positive_on_both_sides() {
    let mut desk = Desk::demo();
    for (leg, side) in [(1, 1.0), (2, -1.0)] {
        let path = format!("legs[{leg}].actuator.mount_m[0]");
        desk.enter(&path, "62 3/8");
        let x = desk.gear().legs[leg].actuator.mount.x;
        assert!((x - side * 62.375 * 0.0254).abs() < 1e-12, "{x}");
        assert_eq!(desk.row(&path).value, "62 3/8");
        assert_eq!(desk.row(&path).label, "Actuator mount A0, out");
    }
}

/// Every coordinate that is told is stored where it was, whatever the leg.
#[test]
fn what_is_told_is_what_is_stored() {
    let mut told = 0;
    for mut gear in gearswing_samples::full::full_gears() {
        gear.points_from = PointsFrom::Trunnion;
        for leg in &mut gear.legs {
            leg.trunnion += gearswing_gear::model::Vector::new(0.317, -0.211);
        }
        for path in value_paths(&gear) {
            let points = path.outline(&gear).map_or(0, <[_]>::len);
            let items: Vec<_> = match points {
                0 => vec![path],
                _ => (0..points).map(|at| path.item(at)).collect(),
            };
            let axes = [gearswing_app::Axis::X, gearswing_app::Axis::Y];
            let all = items
                .iter()
                .flat_map(|item| axes.map(|axis| item.axis(axis).to_string()));
            for at in all {
                let Some(Some(shown)) = fields::shown(&gear, &at) else {
                    continue;
                };
                let mut other = gear.clone();
                fields::set_shown(&mut other, &at, Some(shown)).unwrap();
                let apart = |gear: &Gear| fields::number(gear, &at).flatten().unwrap();
                assert!((apart(&other) - apart(&gear)).abs() < 1e-14, "{at}");
                told += usize::from(shown != apart(&gear));
            }
        }
    }
    assert!(told > 50, "{told}");
}

#[test]
fn drags_lists_and_changes_tell_it_alike() {
    let mut desk = starter();
    desk.send(Msg::Compare(gearswing_app::msg::Compare::Keep));
    let trunnion = desk.gear().legs[0].trunnion;
    desk.enter(KNEE_X, "10, -5 1/2");
    let placed = knee(&desk.gear());
    assert!((placed.x - (trunnion.x - 0.254)).abs() < 1e-12);
    let page = desk.page();
    let rows: Vec<_> = page
        .changes
        .rows
        .iter()
        .map(|row| (row.name.as_str(), row.text.as_str()))
        .collect();
    assert!(rows[0].0.ends_with(", knee K, inboard"), "{rows:?}");
    assert!(rows[0].1.ends_with("→ 10 in"), "{rows:?}");
    let handle = "legs[0].brace.folding.knee_m";
    desk.send(Msg::Play(gearswing_app::msg::Play::Scrub {
        progress: -1.0,
    }));
    desk.send(Msg::Key(Key::Nudge {
        handle: handle.to_owned(),
        direction: gearswing_app::msg::Direction::Up,
        size: gearswing_app::StepSize::Coarse,
    }));
    let said = desk.page().drawing.drag_text;
    assert!(
        said.contains("Knee K: 10.00 in inboard, ") && said.contains("down from the trunnion"),
        "{said}"
    );
}

/// A swing is typed without a sign and goes the way it went; the other way is a press, which undo takes back.
#[test]
fn a_swing_has_no_sign() {
    let mut desk = Desk::demo();
    let path = "legs[2].swing_up_rad";
    let went = desk.gear().legs[2].swing_up;
    let rows = all_rows(&mut desk);
    let row = rows.into_iter().find(|row| row.path == path).unwrap();
    assert!(!row.value.starts_with(['-', '−']), "{}", row.value);
    for typed in ["80", "-80"] {
        desk.enter(path, typed);
        let swing = desk.gear().legs[2].swing_up;
        assert_eq!(swing.signum(), went.signum(), "{typed}");
        assert!((swing.abs() - 80f64.to_radians()).abs() < 1e-12);
    }
    let before = desk.gear().legs[2].swing_up;
    desk.send(Msg::Field(Field::TurnSwing { leg: 2 }));
    assert_eq!(desk.gear().legs[2].swing_up, -before);
    desk.send(Msg::History(History::Undo));
    assert_eq!(desk.gear().legs[2].swing_up, before);
}

/// That a moved trunnion takes its leg along outlasts a link that was opened beside, and a copy.
#[test]
fn a_trunnion_takes_its_leg_along_after_a_link_and_in_a_copy() {
    let mut desk = starter();
    let mut other = Desk::demo();
    let text = link(&mut other);
    desk.send(Msg::Share(Share::OpenLink { text }));
    desk.send(Msg::File(File::LeaveShared));
    for copy in [false, true] {
        if copy {
            desk.send(Msg::File(File::Duplicate));
        }
        let axle = desk.gear().legs[0].strut.axle;
        let trunnion = desk.gear().legs[0].trunnion;
        desk.enter("legs[0].trunnion_m[0]", if copy { "50" } else { "40" });
        let moved = desk.gear().legs[0].trunnion - trunnion;
        assert!(moved.norm() > 0.01);
        assert!(
            (desk.gear().legs[0].strut.axle - axle - moved).norm() < 1e-9,
            "{copy}"
        );
    }
}

#[test]
fn a_trunnion_typed_beyond_the_center_line_is_told_from_there() {
    let mut desk = Desk::demo();
    let x = "legs[2].trunnion_m[0]";
    desk.enter(x, "-1");
    assert!((desk.gear().legs[2].trunnion.x - 0.0254).abs() < 1e-12);
    assert_eq!(desk.row(x).value, "1");
    assert!(
        desk.page()
            .notices
            .iter()
            .any(|notice| notice.text.contains("other side"))
    );
}
