//! What a person sees first.
use gearswing_app::msg::{self, Msg};
use gearswing_app::paper::form;
use gearswing_app::words::sheets::Sheet;
use gearswing_app::{Effect, Program, Start, curves, drawing};
use gearswing_gear::field::previous_tire;
use gearswing_gear::model::Brace;
use gearswing_solver::result::Verdict;
use gearswing_units::StepSize;

use crate::paper::all_text;
use crate::support::Desk;

#[test]
fn the_demo_opens_on_its_fault() {
    let desk = Desk::demo();
    let page = desk.page();
    assert_eq!(page.answers.len(), 3);
    assert!(
        page.answers
            .iter()
            .all(|leg| leg.answers.len() == 3 && leg.faults.is_empty())
    );
    let selected = page.answers.iter().find(|leg| leg.selected).unwrap();
    let clears = &selected.answers[0];
    assert_eq!(clears.verdict, Verdict::Bad, "{}", clears.sentence);
    // the drawing stands at the very place, with the very number
    let near = page
        .readout
        .iter()
        .find(|row| row.label.contains("grown tire"))
        .unwrap();
    assert!(
        near.bad && near.value.ends_with("of interference"),
        "{}",
        near.value
    );
    let number = clears.short.split(' ').next().unwrap();
    assert!(
        near.value.contains(number),
        "{} in {}",
        clears.short,
        near.value
    );
}

#[test]
fn the_previous_tire_is_one_press_away() {
    let mut desk = Desk::demo();
    let state = desk.page().toolbar.previous;
    let was = |desk: &Desk| {
        let page = desk.page();
        let selected = page.answers.iter().find(|leg| leg.selected).unwrap();
        selected.answers[0].was.clone()
    };
    assert!(state.is_some() && was(&desk).is_none());
    desk.send(Msg::Compare(msg::Compare::With { state }));
    assert!(desk.page().toolbar.comparing);
    // with the tire before it cleared: what is said has no minus
    let told = was(&desk).unwrap();
    assert!(told.contains("spare") && !told.contains('−'), "{told}");
    let roles = |scene: &gearswing_app::Scene| {
        let mut marks = scene.marks.iter();
        marks.any(|mark| mark.role == gearswing_app::scene::Role::Before)
    };
    assert!(roles(&drawing(&desk.state)) && roles(&curves(&desk.state)));
    desk.send(Msg::Compare(msg::Compare::With { state: None }));
    assert!(!roles(&drawing(&desk.state)) && !roles(&curves(&desk.state)));
}

/// Kept as the previous one, a tire is compared with whatever is fitted next; kept once more it is the new one.
#[test]
fn a_tire_is_kept_as_the_previous_one() {
    let mut desk = Desk::demo();
    let tire = desk.gear().legs[2].wheel.tire.clone();
    let of_left = previous_tire(&desk.gear(), 1).cloned();
    assert!(of_left.is_some());
    let kept = desk.gear().kept.len();
    desk.send(Msg::Field(msg::Field::KeepTire { leg: 2 }));
    assert_eq!(
        desk.gear().kept.len(),
        kept,
        "it takes the place of the one before"
    );
    desk.enter("legs[2].wheel.tire.diameter_m", "17 in");
    let gear = desk.gear();
    assert_eq!(previous_tire(&gear, 2), Some(&tire));
    assert_eq!(previous_tire(&gear, 0), None);
    // the other legs keep theirs
    assert_eq!(previous_tire(&gear, 1), of_left.as_ref());
    assert!(desk.page().changes.line.ends_with("from previous tire."));
}

#[test]
fn an_answer_goes_to_its_place() {
    let mut desk = Desk::demo();
    for leg in 0..3 {
        for answer in desk.page().answers[leg].answers.clone() {
            let Some(go) = answer.go_to else { continue };
            desk.send(go.msg);
            assert_eq!(desk.state.session.leg, leg);
            let transport = desk.page().transport;
            assert!((transport.min..=transport.max).contains(&transport.value));
        }
    }
}

#[test]
fn the_text_is_safe_before_a_solve() {
    let mut desk = Desk::demo();
    let before = desk.gear();
    let mut effects = gearswing_app::update(
        &mut desk.state,
        Msg::Key(msg::Key::Nudge {
            handle: "legs[1].trunnion_m".to_owned(),
            direction: msg::Direction::Up,
            size: gearswing_units::StepSize::Normal,
        }),
    );
    // not the selected leg: nothing happens
    assert!(
        effects
            .iter()
            .all(|e| !matches!(e, Effect::RecoveryText { .. }))
    );
    desk.send(Msg::View(msg::View::SelectLeg { leg: 1 }));
    effects = gearswing_app::update(
        &mut desk.state,
        Msg::Key(msg::Key::Nudge {
            handle: "legs[1].trunnion_m".to_owned(),
            direction: msg::Direction::Up,
            size: gearswing_units::StepSize::Normal,
        }),
    );
    assert_ne!(desk.gear(), before);
    assert_ne!(desk.state.revision(), desk.state.settled_revision());
    let text = effects
        .iter()
        .find_map(|e| match e {
            Effect::RecoveryText { text } => Some(text),
            _ => None,
        })
        .unwrap();
    assert_eq!(gearswing_gearfile::read(text).unwrap(), desk.gear());
}

/// The foot says which build it is.
#[test]
fn the_page_tells_version_and_commit() {
    let desk = Desk::new(Start {
        program: Program {
            version: "1.2.3",
            commit: Some("12ab34cd"),
            changed: true,
        },
        ..Start::default()
    });
    let told = desk.page().program;
    assert_eq!(told, "Gearswing 1.2.3 (commit 12ab34cd, changed since)");
}

/// The pins of an example are nobody's airplane; one that is moved is the person's own.
#[test]
fn answers_of_an_example_say_that_they_are() {
    let mut desk = Desk::demo();
    let over = |desk: &Desk| -> Vec<String> {
        let answers = desk.page().answers.into_iter();
        answers.map(|leg| leg.over).collect()
    };
    assert_eq!(over(&desk), [""; 3]);
    // the demo is the person's own file from the first change on
    desk.enter("legs[0].wheel.mass_kg", "12 lb");
    assert!(
        over(&desk)
            .iter()
            .all(|text| text.contains("6 points") && text.contains("6 still"))
    );
    for starter in desk.page().starters {
        if starter.label == "The demo" {
            continue;
        }
        desk.send(starter.msg);
        assert!(
            over(&desk)[0].contains("still stand where the example has them"),
            "{}",
            starter.label
        );
        desk.enter("legs[0].name", "Mine");
        desk.enter("legs[0].wheel.mass_kg", "12 lb");
        let all = pins(&desk.gear().legs[0].brace);
        let told = |same: usize| {
            format!("Of this leg's {all} points (axle, and pins but the trunnion), {same} still")
        };
        assert!(over(&desk)[0].starts_with(&told(all)), "{}", over(&desk)[0]);
        desk.send(Msg::Field(msg::Field::Step {
            path: "legs[0].actuator.mount_m[0]".to_owned(),
            up: true,
            size: StepSize::Fine,
        }));
        assert!(
            over(&desk)[0].starts_with(&told(all - 1)),
            "{}",
            over(&desk)[0]
        );
    }
}

/// Numbers that nobody has typed are told after all points were put in, until few enough are left to be chance.
#[test]
fn numbers_of_an_example_are_told_too() {
    let mut desk = Desk::demo();
    desk.send(Msg::File(msg::File::New {
        starter: "folding_front".to_owned(),
    }));
    for point in ["strut.axle_m", "actuator.mount_m", "actuator.attach_m"] {
        step(&mut desk, &format!("legs[0].{point}[0]"));
    }
    for point in ["airframe_pivot_m", "leg_attach_m", "knee_m"] {
        step(&mut desk, &format!("legs[0].brace.folding.{point}[0]"));
    }
    let over = desk.page().answers[0].over.clone();
    assert!(over.contains("0 still stand"), "{over}");
    let count = |over: &str| -> usize {
        let numbers = over.split_once("has them. ").unwrap().1;
        numbers.split_once(' ').unwrap().0.parse().unwrap()
    };
    let before = count(&over);
    assert!(
        over.contains("of its numbers are the example's: ") && before > 6,
        "{over}"
    );
    step(&mut desk, "legs[0].actuator.shortest_m");
    step(&mut desk, "legs[0].wheel.mass_kg");
    assert_eq!(count(&desk.page().answers[0].over), before - 2);
    // what is signed says it as well
    let printed = form(&desk.state, "today", true);
    assert!(all_text(&printed).contains(&desk.page().answers[0].over));
}

fn step(desk: &mut Desk, path: &str) {
    desk.send(Msg::Field(msg::Field::Step {
        path: path.to_owned(),
        up: true,
        size: StepSize::Fine,
    }));
}

/// Points that a leg with this brace has beside its trunnion.
fn pins(brace: &Brace) -> usize {
    match brace {
        Brace::None => 3,
        Brace::Sliding(_) => 5,
        Brace::Folding(_) => 6,
    }
}

/// A reload comes back to the sheet, the leg, the place and the open group.
#[test]
fn a_reload_comes_back_to_what_was_looked_at() {
    let mut desk = Desk::demo();
    desk.send(Msg::View(msg::View::SelectLeg { leg: 1 }));
    desk.send(Msg::View(msg::View::Sheet(Sheet::Measurements)));
    desk.send(Msg::Play(msg::Play::Scrub { progress: 0.25 }));
    desk.send(Msg::View(msg::View::ToggleGroup {
        id: "brace".to_owned(),
    }));
    let line = desk.state.looking();
    let again = |line: &str| {
        Desk::new(Start {
            looking: Some(line.to_owned()),
            ..Start::default()
        })
    };
    let back = again(&line);
    assert_eq!(line, "measurements 1 0.25 brace");
    assert_eq!(back.state.looking(), line);
    // what is not there, or no line of this page, is left as it is
    let fresh = Desk::demo().state.looking();
    for line in ["", "nothing", "answers 9 0.5 ", "answers x 0.5 "] {
        assert_eq!(again(line).state.looking(), fresh, "{line}");
    }
}

/// Each starter has a picture, and all of it lies on its canvas.
#[test]
fn every_starter_has_a_picture() {
    use gearswing_app::scene::Shape;
    let pictures = gearswing_app::scene::starter_pictures((132.0, 100.0));
    assert_eq!(pictures.len(), gearswing_gearfile::STARTERS.len());
    for (key, scene) in pictures {
        assert!(scene.marks.len() > 10, "{key}");
        for mark in &scene.marks {
            if let Shape::Path { points, .. } = &mark.shape {
                // hatching stands over its line
                let seen = points
                    .iter()
                    .all(|p| (-20.0..152.0).contains(&p.x_px) && (-20.0..120.0).contains(&p.y_px));
                assert!(seen, "{key}: {points:?}");
            }
        }
    }
}
