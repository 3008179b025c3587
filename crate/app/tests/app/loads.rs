//! Load arrows: off at first, to one scale, with the solver's own numbers.
use gearswing_app::msg::{self, Msg};
use gearswing_app::scene::{Mark, Role, Scene, ScreenPoint, Shape};
use gearswing_app::{UnitChoice, curves, drawing, load_tables};
use gearswing_solver::result::{LegResult, Station};
use gearswing_solver::{Options, solve_leg};
use gearswing_units::{Quantity, format, parse};

use crate::scenes::check;
use crate::support::Desk;

fn is_load(mark: &&Mark) -> bool {
    mark.role == Role::Load
}

fn texts(scene: &Scene) -> Vec<String> {
    let text = |mark: &Mark| match &mark.shape {
        Shape::Text { text, .. } => Some(text.clone()),
        _ => None,
    };
    scene.marks.iter().filter_map(text).collect()
}

/// Tips of the filled heads.
fn tips(scene: &Scene) -> Vec<ScreenPoint> {
    let tip = |mark: &Mark| match &mark.shape {
        Shape::Path {
            points,
            filled: true,
            ..
        } => points.first().copied(),
        _ => None,
    };
    scene.marks.iter().filter(is_load).filter_map(tip).collect()
}

/// The desk with load arrows at a station of a leg, and that leg's result.
fn at_station(leg: usize, pick: impl Fn(&Station) -> bool) -> (Desk, LegResult, Option<Station>) {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::DrawingSize {
        width_px: 900.0,
        height_px: 620.0,
    }));
    desk.send(Msg::View(msg::View::SelectLeg { leg }));
    desk.send(Msg::View(msg::View::Fit));
    desk.send(Msg::View(msg::View::Loads { on: true }));
    let result = solve_leg(&desk.gear(), leg, &Options::default()).unwrap();
    let station = result.stations.iter().find(|s| pick(s)).cloned();
    if let Some(station) = &station {
        let progress = station.progress;
        desk.send(Msg::Play(msg::Play::Scrub { progress }));
    }
    (desk, result, station)
}

#[test]
fn arrows_come_when_asked_for_at_every_place() {
    let mut desk = Desk::demo();
    assert!(!desk.page().toolbar.loads);
    assert!(!drawing(&desk.state).marks.iter().any(|m| is_load(&m)));
    desk.send(Msg::View(msg::View::Loads { on: true }));
    assert!(desk.page().toolbar.loads);
    for leg in 0..3 {
        desk.send(Msg::View(msg::View::SelectLeg { leg }));
        for i in -20..=20 {
            let progress = f64::from(i) / 20.0;
            desk.send(Msg::Play(msg::Play::Scrub { progress }));
            let scene = drawing(&desk.state);
            check(&scene);
            let silent = texts(&scene)
                .iter()
                .any(|text| text == "no forces are worked out here");
            assert_eq!(silent, tips(&scene).is_empty(), "leg {leg} at {progress}");
            let words = desk.page().drawing.description.join(" ");
            assert!(words.contains(if silent { "No forces" } else { "A0 " }));
        }
        check(&curves(&desk.state));
    }
    desk.send(Msg::View(msg::View::Loads { on: false }));
    assert!(!drawing(&desk.state).marks.iter().any(|m| is_load(&m)));
}

/// The arrow of the actuator and the row of it say the same force; to move it takes more, by the
/// friction of its seals where no pin has any (balance of forces on the rod).
#[test]
fn the_arrow_and_the_row_of_the_actuator_say_the_same_force() {
    let units = UnitChoice::INCH;
    for leg in 0..3 {
        let (desk, _, station) = at_station(leg, |s| s.travel > 0.3 && s.force.is_some());
        let force = station.unwrap().force.unwrap();
        let page = desk.page();
        let row = |label: &str| {
            let row = page.readout.iter().find(|row| row.label == label);
            row.map(|row| row.value.clone()).unwrap()
        };
        let held = row("Actuator force held still, without friction");
        let arrow = format!("A1 {held}");
        let said = texts(&drawing(&desk.state));
        assert!(said.contains(&arrow), "leg {leg}: {arrow} in {said:?}");
        assert!(
            said.iter().any(|text| text.contains("held still")),
            "{said:?}"
        );
        let seals = desk.gear().legs[leg].actuator.seal_friction.unwrap();
        let moved = format(Quantity::Force, units, force.holding.abs() + seals);
        assert_eq!(
            row("Actuator force to retract, friction included"),
            moved,
            "leg {leg}"
        );
    }
}

#[test]
fn numbers_and_lengths_are_those_of_the_result() {
    for leg in 0..3 {
        let (desk, _, station) = at_station(leg, |s| s.travel > 0.3 && s.force.is_some());
        let force = station.unwrap().force.unwrap();
        let scene = drawing(&desk.state);
        let said = texts(&scene);
        let units = UnitChoice::INCH;
        let reactions = force.reactions;
        for (name, newtons) in [
            ("P", reactions.trunnion.norm()),
            ("A0", reactions.mount.norm()),
            ("A1", force.holding.abs()),
            ("B0", reactions.brace_pivot.unwrap().norm()),
            ("B1", reactions.brace_attach.unwrap().norm()),
        ] {
            let wanted = format!("{name} {}", format(Quantity::Force, units, newtons));
            assert!(said.contains(&wanted), "leg {leg}: {wanted} in {said:?}");
        }
        // the scale's own arrow stands over the scale bar
        let (bar, arrows): (Vec<_>, Vec<_>) = tips(&scene)
            .into_iter()
            .partition(|tip| (tip.y_px - (scene.height_px - 82.0)).abs() < 1e-9);
        let shaft = scene.marks.iter().filter(is_load).find_map(|mark| {
            let Shape::Path { points, .. } = &mark.shape else {
                return None;
            };
            (points[0].y_px == bar[0].y_px).then_some(points[0].x_px)
        });
        let bar_px = bar[0].x_px - shaft.unwrap();
        let mut forces = said.iter().filter_map(|text| {
            // the only bare force among the texts is the scale's
            let bare = text.ends_with(" lb") && text.chars().all(|c| !c.is_ascii_uppercase());
            bare.then(|| parse(Quantity::Force, units, text).unwrap().si)
        });
        let per_px = forces.next_back().unwrap() / bar_px;
        let mount = desk.handle(&format!("legs[{leg}].actuator.mount_m"));
        let to = reactions.mount / per_px;
        let longest = to.norm() > 150.0;
        let tip = ScreenPoint {
            x_px: mount.x_px + to.x,
            y_px: mount.y_px - to.y,
        };
        let there = |a: &ScreenPoint| (a.x_px - tip.x_px).hypot(a.y_px - tip.y_px) < 0.01;
        assert!(longest || arrows.iter().any(there), "{tip:?} in {arrows:?}");
    }
}

#[test]
fn a_force_beyond_the_scale_is_broken_off_and_says_its_size() {
    // the greatest force of the path stands near a dead point or in a knee that comes through
    let biggest = |s: &Station| s.force.map_or(0.0, |f| f.reactions.trunnion.norm());
    for leg in 0..3 {
        let (_, result, _) = at_station(leg, |_| false);
        let most = result.stations.iter().map(biggest).fold(0.0, f64::max);
        let (desk, _, _) = at_station(leg, |s| biggest(s) == most);
        let scene = drawing(&desk.state);
        let trunnion = desk.handle(&format!("legs[{leg}].trunnion_m"));
        let side = 0.2 * scene.width_px.min(scene.height_px);
        let reach = 1.5 * side.clamp(50.0, 110.0) + 1e-6;
        let from_pin =
            |tip: &ScreenPoint| (tip.x_px - trunnion.x_px).hypot(tip.y_px - trunnion.y_px) <= reach;
        assert!(tips(&scene).iter().any(from_pin));
        let wanted = format(Quantity::Force, UnitChoice::INCH, most);
        assert!(texts(&scene).contains(&format!("P {wanted}")));
    }
}

#[test]
fn a_faulty_leg_has_no_arrows() {
    let (mut desk, _, _) = at_station(2, |s| s.travel > 0.3 && s.force.is_some());
    desk.enter("legs[2].actuator.longest_m", "1 in");
    let scene = drawing(&desk.state);
    assert!(desk.page().drawing.faded);
    assert!(tips(&scene).is_empty());
}

/// Every case stands in one table, the largest load of every joint in the other.
#[test]
fn load_cases_and_joint_loads_stand_in_tables() {
    let mut desk = Desk::demo();
    for leg in 0..3 {
        desk.send(Msg::View(msg::View::SelectLeg { leg }));
        let [lock, cases, joints] = load_tables(&desk.state).try_into().unwrap();
        let found = solve_leg(&desk.gear(), leg, &Options::default()).unwrap();
        let force = found.force;
        // every axle load, and the fall to its end
        assert!(lock.notes.len() > found.lock.axle_loads.len());
        let has = |text: &str| lock.notes.iter().any(|note| note.contains(text));
        assert!(has("at the axle pushes the knee"), "{:?}", lock.notes);
        assert!(has("At the stop: swing"), "{:?}", lock.notes);
        assert_eq!(cases.columns[0].cells.len(), force.cases.len());
        assert!(cases.notes[0].starts_with("Hardest: "), "{:?}", cases.notes);
        let loads: Vec<String> = force
            .joint_loads
            .iter()
            .map(|joint| format(Quantity::Force, UnitChoice::INCH, joint.load))
            .collect();
        assert!(loads.len() >= 3);
        assert_eq!(joints.columns[1].cells, loads);
    }
}
