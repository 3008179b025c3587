//! The worked examples work: sound, up without a jam, clear, driven, and locked where geometry shows it.
#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]
use std::collections::BTreeSet;

use gearswing_gear::model::{Brace, Gear, View};
use gearswing_gearfile::{DEMO, Example, STARTERS, find_example, read};
use gearswing_solver::faults::check_gear;
use gearswing_solver::result::{LegResult, Question, Run, RunEnd, RunEventKind, Verdict};
use gearswing_solver::supply::{SupplyOptions, cycle};
use gearswing_solver::{Options, solve_gear};

fn verdict(result: &LegResult, question: Question) -> Verdict {
    let mut found = result.findings.iter().filter(|f| f.question == question);
    found.next().unwrap().verdict
}

#[test]
fn starters_are_good_legs_of_each_kind() {
    let mut kinds = BTreeSet::new();
    let both = |starter: &'static Example| {
        let gears = [starter.gear(), starter.gear_in_inches()];
        gears.map(|gear| (starter, gear.unwrap()))
    };
    for (starter, gear) in STARTERS.iter().flat_map(both) {
        assert_eq!(check_gear(&gear), Ok(()), "{}", starter.key);
        assert_eq!(gear.legs.len(), 1);
        let leg = &gear.legs[0];
        let results = solve_gear(&gear, &Options::default());
        let result = results[0].as_ref().unwrap();
        assert_eq!(result.jams, [], "{}", starter.key);
        assert_eq!(
            verdict(result, Question::Clears),
            Verdict::Good,
            "{}",
            starter.key
        );
        assert_eq!(
            verdict(result, Question::Driven),
            Verdict::Good,
            "{}",
            starter.key
        );
        let (kind, locks) = match leg.brace {
            Brace::Folding(_) => ("folding", Verdict::Good),
            // a latch is not modeled, so geometry cannot show it
            Brace::Sliding(_) => ("sliding", Verdict::NotShown),
            Brace::None => ("no_brace", Verdict::NotShown),
        };
        assert_eq!(verdict(result, Question::Locks), locks, "{}", starter.key);
        let view = if leg.view == View::Side {
            "side"
        } else {
            "front"
        };
        assert_eq!(starter.key, format!("{kind}_{view}"));
        kinds.insert(starter.key);
    }
    assert_eq!(kinds.len(), 6);
}

#[test]
fn both_sets_of_a_starter_are_one_leg() {
    for starter in &STARTERS {
        let [mm, inch] = [starter.gear(), starter.gear_in_inches()].map(Result::unwrap);
        assert_ne!(mm, inch, "{}", starter.key);
        assert_eq!(mm.name, inch.name);
        let near = |a: f64, b: f64| assert!((a - b).abs() < 0.03, "{} {a} {b}", starter.key);
        let [mm, inch] = [&mm.legs[0], &inch.legs[0]];
        near(mm.strut.axle.x, inch.strut.axle.x);
        near(mm.strut.axle.y, inch.strut.axle.y);
        near(mm.actuator.mount.x, inch.actuator.mount.x);
        near(mm.actuator.mount.y, inch.actuator.mount.y);
        near(mm.swing_up, inch.swing_up);
        assert_eq!(mm.wheel.tire, inch.wheel.tire);
    }
}

#[test]
fn the_demo_shows_one_fault_that_the_former_tire_did_not_have() {
    let gear = DEMO.gear().unwrap();
    let verdicts = |gear: &Gear| {
        solve_gear(gear, &Options::default())
            .into_iter()
            .map(|result| verdict(&result.unwrap(), Question::Clears))
            .collect::<Vec<_>>()
    };
    let good = Verdict::Good;
    assert_eq!(verdicts(&gear), [good, good, Verdict::Bad]);
    assert_eq!(
        verdicts(&gear.kept[gear.previous().unwrap()].gear),
        [good, good, good]
    );
}

#[test]
fn the_demo_goes_up_in_seconds_and_a_tired_battery_stalls_a_main() {
    let demo = DEMO.gear().unwrap();
    let good = cycle(&demo, &SupplyOptions::default()).unwrap();
    assert_eq!(good.up.as_ref().unwrap().end, RunEnd::Complete);
    assert!(
        (5.0..9.0).contains(&good.up.as_ref().unwrap().time),
        "{}",
        good.up.as_ref().unwrap().time
    );
    assert_eq!(good.down.unwrap().end, RunEnd::Complete);
    assert!(!good.up.as_ref().unwrap().breaker.unwrap().passed);
    let tired = read(include_str!("../../../fixtures/tired_battery.json")).unwrap();
    let tired = cycle(&tired, &SupplyOptions::default())
        .unwrap()
        .up
        .unwrap();
    assert_eq!(tired.end, RunEnd::Stalled);
    let first = &tired.stalls[0];
    assert!(demo.legs[first.leg].name.ends_with("main"));
    assert!(first.place.travel < 0.9);
    let nose = |run: &Run| {
        let mut made = run.events.iter().filter(|e| e.leg == Some(0));
        made.find(|e| e.kind == RunEventKind::UpMade).unwrap().time
    };
    assert!(nose(&tired) > nose(good.up.as_ref().unwrap()));
}

#[test]
fn the_file_of_every_key_is_sound() {
    let gear = read(include_str!("../../../fixtures/versions/v1.json")).unwrap();
    assert_eq!(check_gear(&gear), Ok(()));
}

#[test]
fn keys_find_their_example() {
    for example in STARTERS.iter().chain([&DEMO]) {
        assert_eq!(find_example(example.key), Some(example));
    }
    assert_eq!(find_example("none such"), None);
}
