//! Drawing and curves: finite, readable, true to the numbers.
use gearswing_app::msg::{self, Msg};
use gearswing_app::scene::{Role, Scene, Shape};
use gearswing_app::{curves, drawing, times};
use gearswing_samples::fixtures::{CHANGES, files};

use crate::support::Desk;

/// Every number is finite, every text is legible and on the canvas.
pub(crate) fn check(scene: &Scene) {
    assert!(scene.width_px.is_finite() && scene.height_px.is_finite());
    let sound = |p: &gearswing_app::scene::ScreenPoint| p.x_px.is_finite() && p.y_px.is_finite();
    for mark in &scene.marks {
        match &mark.shape {
            Shape::Path { points, .. } => {
                assert!(points.len() >= 2 && points.iter().all(sound), "{mark:?}");
            }
            Shape::Circle {
                centre, radius_px, ..
            } => {
                assert!(sound(centre) && radius_px.is_finite() && *radius_px > 0.0);
            }
            Shape::Text {
                at, text, size_px, ..
            } => {
                assert!(sound(at) && *size_px >= 12.0 && !text.is_empty());
            }
        }
    }
    for handle in &scene.handles {
        assert!(sound(&handle.at) && !handle.label.is_empty());
    }
}

fn has(scene: &Scene, role: Role) -> bool {
    scene.marks.iter().any(|mark| mark.role == role)
}

/// What is said to stay while the place or the time moves does stay, and is not nothing.
#[test]
fn what_stays_stays() {
    let mut desk = Desk::demo();
    type Draw = fn(&gearswing_app::State) -> Scene;
    let draws: [(Draw, usize, Msg, Msg); 3] = [
        (drawing, 2, scrub(0.3), scrub(0.6)),
        (curves, 2, scrub(0.3), scrub(0.6)),
        (times, 3, seek(1.0), seek(2.0)),
    ];
    for leg in 0..3 {
        desk.send(Msg::View(msg::View::SelectLeg { leg }));
        for (draw, layers, here, there) in draws.clone() {
            desk.send(here);
            let before = draw(&desk.state);
            desk.send(there);
            let after = draw(&desk.state);
            let (before, after): (Vec<_>, Vec<_>) =
                (before.layers().collect(), after.layers().collect());
            assert_eq!(before.len(), layers);
            assert_eq!(after.len(), layers);
            assert!(before[0].len() > 20, "{} marks stay", before[0].len());
            assert_eq!(before[0], after[0]);
            for (before, after) in before.iter().zip(&after).skip(1) {
                assert_ne!(before, after);
            }
        }
    }
}

fn scrub(progress: f64) -> Msg {
    Msg::Play(msg::Play::Scrub { progress })
}

fn seek(time_s: f64) -> Msg {
    Msg::Times(msg::Times::Seek { time_s })
}

#[test]
fn every_place_of_every_leg_draws() {
    let mut desk = Desk::demo();
    for (width_px, height_px) in [(320.0, 300.0), (1400.0, 800.0)] {
        desk.send(Msg::View(msg::View::DrawingSize {
            width_px,
            height_px,
        }));
        desk.send(Msg::View(msg::View::CurvesSize { width_px }));
        for leg in 0..3 {
            desk.send(Msg::View(msg::View::SelectLeg { leg }));
            for i in -20..=20 {
                let progress = f64::from(i) / 20.0;
                desk.send(Msg::Play(msg::Play::Scrub { progress }));
                let scene = drawing(&desk.state);
                check(&scene);
                for role in [
                    Role::Structure,
                    Role::StructureHatch,
                    Role::Moving,
                    Role::Ghost,
                    Role::Envelope,
                    Role::Ground,
                    Role::CentreLine,
                    Role::ScaleBar,
                ] {
                    assert!(has(&scene, role), "{role:?} of leg {leg}");
                }
                let scene = curves(&desk.state);
                check(&scene);
                assert!(has(&scene, Role::Cursor) && scene.height_px > 300.0);
            }
        }
    }
}

#[test]
fn contact_is_more_than_a_colour() {
    let desk = Desk::demo();
    let scene = drawing(&desk.state);
    for role in [
        Role::Contact,
        Role::ContactHatch,
        Role::DimensionText,
        Role::Governing,
    ] {
        assert!(has(&scene, role), "{role:?}");
    }
    let said = scene.marks.iter().any(
        |mark| matches!(&mark.shape, Shape::Text { text, .. } if text.starts_with("interference")),
    );
    assert!(said);
}

/// On a small drawing stands the name of the piece that the answer speaks of, on a large one every name; on one so low
/// that a name would cover the tire none: the answer beside it names the piece.
#[test]
fn a_small_drawing_names_what_the_answer_speaks_of() {
    let mut desk = Desk::demo();
    let mut named = |width_px, height_px| -> Vec<String> {
        desk.send(Msg::View(msg::View::DrawingSize {
            width_px,
            height_px,
        }));
        let names = desk.gear().legs[2].well.clone();
        let marks = drawing(&desk.state).marks;
        let said = |name: &str| {
            marks
                .iter()
                .any(|mark| matches!(&mark.shape, Shape::Text { text, .. } if text == name))
        };
        let names = names.into_iter().map(|piece| piece.name);
        names.filter(|name| said(name)).collect()
    };
    assert_eq!(named(390.0, 300.0), ["Root rib with repair angle"]);
    assert!(named(390.0, 250.0).is_empty());
    assert!(named(900.0, 650.0).len() > 3);
}

#[test]
fn labels_keep_off_each_other() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::DrawingSize {
        width_px: 900.0,
        height_px: 620.0,
    }));
    desk.send(Msg::View(msg::View::Fit));
    let scene = drawing(&desk.state);
    let boxes: Vec<(f64, f64, f64, f64, String)> = scene
        .marks
        .iter()
        .filter_map(|mark| match &mark.shape {
            Shape::Text {
                at,
                text,
                anchor,
                size_px,
            } if mark.role == Role::Label => {
                let wide = 0.5 * size_px * text.chars().count() as f64;
                let left = match anchor {
                    gearswing_app::scene::Anchor::Start => at.x_px,
                    gearswing_app::scene::Anchor::Middle => at.x_px - wide / 2.0,
                    gearswing_app::scene::Anchor::End => at.x_px - wide,
                };
                let half = 0.45 * size_px;
                Some((
                    left,
                    left + wide,
                    at.y_px - half,
                    at.y_px + half,
                    text.clone(),
                ))
            }
            _ => None,
        })
        .collect();
    assert!(boxes.len() >= 6);
    for (i, a) in boxes.iter().enumerate() {
        for b in boxes.iter().skip(i + 1) {
            let apart = a.1 <= b.0 || b.1 <= a.0 || a.3 <= b.2 || b.3 <= a.2;
            assert!(apart, "{} and {}", a.4, b.4);
        }
    }
}

#[test]
fn the_dimension_is_the_distance_it_says() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::Units(
        gearswing_units::UnitChoice::METRIC,
    )));
    for leg in 0..3 {
        desk.send(Msg::View(msg::View::GoTo {
            leg,
            question: gearswing_solver::result::Question::Clears,
        }));
        let page = desk.page();
        let answer = &page.answers[leg].answers[0];
        let text = drawing(&desk.state)
            .marks
            .iter()
            .find_map(|mark| match &mark.shape {
                Shape::Text { text, .. } if mark.role == Role::DimensionText => Some(text.clone()),
                _ => None,
            })
            .unwrap();
        let number = |text: &str| {
            text.split_whitespace()
                .find_map(|word| word.parse::<f64>().ok())
                .unwrap()
        };
        assert_eq!(
            number(&text),
            number(&answer.short),
            "{text} {}",
            answer.sentence
        );
    }
}

#[test]
fn extreme_zoom_stays_sound() {
    let mut desk = Desk::demo();
    for factor in [10.0, 10.0, 10.0, 10.0, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1] {
        desk.send(Msg::View(msg::View::Zoom { factor }));
        let scene = drawing(&desk.state);
        check(&scene);
        assert!(scene.marks.len() < 20_000, "{}", scene.marks.len());
    }
}

#[test]
fn faulty_and_jamming_legs_show_and_say_why() {
    let folders = CHANGES
        .iter()
        .chain(&["", "starters", "starters/inch", "versions"]);
    let files = folders.flat_map(|folder| files(folder, "json"));
    let (mut faulty, mut jamming) = (0, 0);
    for (name, text) in files {
        let gear = gearswing_gearfile::read(&text).unwrap();
        let mut desk = Desk::demo();
        desk.send(Msg::File(msg::File::ImportText {
            name: name.clone(),
            text,
        }));
        assert_eq!(desk.gear().legs, gear.legs, "{name}");
        if gear.legs.is_empty() {
            assert!(!desk.page().answers[0].faults.is_empty(), "{name}");
        }
        for leg in 0..gear.legs.len() {
            desk.send(Msg::View(msg::View::SelectLeg { leg }));
            for progress in [-2.0, 0.0, 0.5, 1.0] {
                desk.send(Msg::Play(msg::Play::Scrub { progress }));
                check(&drawing(&desk.state));
                check(&curves(&desk.state));
            }
            let page = desk.page();
            let answers = &page.answers[leg];
            assert!(
                answers.answers.len() == 3 || !answers.faults.is_empty(),
                "{name}: leg {leg} says nothing"
            );
            faulty += usize::from(!answers.faults.is_empty());
            let ends = curves(&desk.state)
                .marks
                .iter()
                .any(|mark| mark.role == Role::CurveEnd);
            let says = page
                .transport
                .marks
                .iter()
                .any(|m| m.text == "The leg stops here");
            assert_eq!(ends, says, "{name}");
            jamming += usize::from(ends);
        }
    }
    assert!(faulty >= 5 && jamming >= 2, "{faulty} {jamming}");
}
