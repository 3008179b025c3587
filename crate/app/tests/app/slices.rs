//! Large work goes on in parts, with a word, and can be given up.
use gearswing_app::msg::{self, Msg};
use gearswing_app::{
    Effect, Page, Start, State, has_changed, is_working, settle, settle_part, update, view,
};
use gearswing_gear::model::Gear;

use crate::support::Desk;

const BORE: &str = "legs[2].actuator.bore_m";

/// A desk with a gear of many legs, worked out.
fn large() -> Desk {
    let mut desk = Desk::demo();
    let mut gear: Gear = desk.gear();
    for n in 0..9 {
        let mut leg = gear.legs[n % 3].clone();
        leg.name = format!("Leg {}", n + 4);
        gear.legs.push(leg);
    }
    desk.send(Msg::File(msg::File::ImportText {
        name: "large.json".to_owned(),
        text: gearswing_gearfile::to_text(&gear).unwrap(),
    }));
    desk
}

/// Changes a number without working anything out.
fn change(desk: &mut Desk, text: &str) {
    for msg in [
        msg::Field::Draft {
            path: BORE.to_owned(),
            text: text.to_owned(),
        },
        msg::Field::Commit {
            path: BORE.to_owned(),
        },
    ] {
        desk.update(Msg::Field(msg));
    }
}

/// Works out so many parts; whether there is more.
fn parts(desk: &mut Desk, count: usize) -> bool {
    let mut effects = Vec::new();
    let more = (0..count).all(|_| settle_part(&mut desk.state, &mut effects));
    desk.perform(effects);
    more
}

/// What does not depend on notices.
fn answers(desk: &Desk) -> (Vec<String>, Vec<String>) {
    let page: Page = desk.page();
    let legs = page.answers.into_iter().flat_map(|leg| leg.answers);
    (
        legs.map(|answer| answer.sentence).collect(),
        page.times.sentences,
    )
}

/// A desk on which what comes after the answers waits.
fn waiting() -> Desk {
    let mut desk = large();
    desk.works = false;
    desk
}

/// Whoever opens the page sees the answers, and the leg with the worst of them, before anything else is asked for.
#[test]
fn answers_come_before_the_times() {
    let (mut state, _) = State::new(Start::default());
    let mut effects = Vec::new();
    let mut count = 0;
    while has_changed(&state) {
        assert!(settle_part(&mut state, &mut effects));
        count += 1;
    }
    // one for each leg, and one that what follows begins with
    assert_eq!(count, state.gear().legs.len() + 1);
    let asks = |effects: &[Effect]| {
        let mut effects = effects.iter();
        effects.any(|effect| matches!(effect, Effect::WorkOut { .. }))
    };
    assert!(!asks(&effects));
    let first = view(&state);
    assert_eq!(first.working, "");
    assert_eq!(
        first.times.sentences,
        ["The gear against time is being worked out."]
    );
    assert!(asks(&settle(&mut state)));
    let whole = Desk::demo().page();
    assert_eq!(first.answers, whole.answers);
    assert_eq!(first.readout, whole.readout);
    assert!(whole.times.sentences.len() > 1);
}

#[test]
fn parts_come_to_what_one_piece_comes_to() {
    let mut desk = waiting();
    change(&mut desk, "1.1");
    let mut whole = large();
    change(&mut whole, "1.1");
    whole.settle();
    let mut said = Vec::new();
    while parts(&mut desk, 1) {
        said.push(desk.page().working);
    }
    assert!(said.len() > 1, "{said:?}");
    desk.settle();
    let coming = "Working out the gear against time …";
    assert_eq!(desk.page().working, coming);
    assert_eq!(
        desk.page().times.sentences,
        ["The gear against time is being worked out."]
    );
    desk.work();
    assert!(desk.page().working.is_empty());
    assert_eq!(answers(&desk), answers(&whole));
}

/// Both cases are there once it is worked out: the one on the jacks needs no further question.
#[test]
fn a_press_shows_the_other_case_at_once() {
    let mut desk = Desk::demo();
    let in_flight = desk.page().times.sentences;
    desk.works = false;
    desk.send(Msg::Times(msg::Times::OnJacks { on: true }));
    let on_jacks = desk.page().times.sentences;
    assert!(on_jacks.len() > 1 && on_jacks != in_flight, "{on_jacks:?}");
    assert_eq!(desk.question, None);
}

#[test]
fn an_answer_to_an_earlier_question_is_dropped() {
    let mut desk = waiting();
    change(&mut desk, "1.1");
    desk.settle();
    let early = desk.question.take().unwrap();
    change(&mut desk, "1.2");
    desk.settle();
    let late = desk.question.replace(early).unwrap();
    desk.work();
    assert_eq!(
        desk.page().times.sentences,
        ["The gear against time is being worked out."]
    );
    desk.question = Some(late);
    desk.work();
    let mut whole = large();
    change(&mut whole, "1.2");
    whole.settle();
    assert_eq!(answers(&desk), answers(&whole));
}

#[test]
fn what_fails_is_told_and_can_be_tried_again() {
    let mut desk = waiting();
    change(&mut desk, "1.1");
    desk.settle();
    let (of, _) = desk.question.take().unwrap();
    desk.send(Msg::Late(msg::Late::Failed {
        of,
        reason: "no network".to_owned(),
    }));
    let page = desk.page();
    assert!(page.working.is_empty());
    assert!(page.answers.iter().all(|leg| !leg.faded), "no answer waits");
    let notice = page.notices[0].clone();
    assert!(notice.text.contains("no network"), "{}", notice.text);
    desk.works = true;
    desk.send(notice.actions[0].msg.clone());
    let mut whole = large();
    change(&mut whole, "1.1");
    whole.settle();
    assert_eq!(answers(&desk), answers(&whole));
}

#[test]
fn what_is_not_worked_out_yet_is_faded() {
    let mut desk = large();
    let before = desk.page();
    assert!(before.answers.iter().all(|leg| !leg.faded));
    desk.update(Msg::Field(msg::Field::Step {
        path: "conditions.load_factor".to_owned(),
        up: true,
        size: gearswing_units::StepSize::Coarse,
    }));
    assert!(parts(&mut desk, 4));
    let page = desk.page();
    let faded: Vec<bool> = page.answers.iter().map(|leg| leg.faded).collect();
    assert_eq!(faded, [[false; 4], [true; 4], [true; 4]].concat());
    assert!(
        page.times.end_s == 0.0,
        "the run of an earlier state is not shown"
    );
    while parts(&mut desk, 1) {}
    assert!(desk.page().answers.iter().all(|leg| !leg.faded));
}

#[test]
fn it_can_be_given_up_and_taken_up() {
    let mut desk = waiting();
    change(&mut desk, "1.2");
    desk.settle();
    let effects = desk.send(Msg::View(msg::View::GiveUp));
    assert!(effects.contains(&Effect::LeaveWork));
    assert!(!is_working(&desk.state) && desk.page().working.is_empty());
    let said = desk.page().times.sentences.join(" ");
    assert!(said.contains("given up"), "{said}");
    // what does not change the gear does not begin again
    desk.send(Msg::View(msg::View::SelectLeg { leg: 1 }));
    assert!(desk.page().times.sentences.join(" ").contains("given up"));
    let notice = desk.page().notices[0].clone();
    assert!(notice.text.contains("given up"));
    // taken up
    desk.works = true;
    let mut again = Desk {
        state: desk.state.clone(),
        ..Desk::demo()
    };
    again.send(notice.actions[0].msg.clone());
    let mut whole = large();
    change(&mut whole, "1.2");
    whole.settle();
    assert_eq!(answers(&again), answers(&whole));
    assert!(
        again
            .page()
            .notices
            .iter()
            .all(|notice| !notice.text.contains("given up"))
    );
    // or with the next change
    change(&mut desk, "1.3");
    desk.settle();
    change(&mut whole, "1.3");
    whole.settle();
    assert_eq!(answers(&desk), answers(&whole));
}

#[test]
fn a_change_in_between_begins_with_what_is_new() {
    let mut desk = large();
    for bore in ["1.1", "1.2", "1.3"] {
        change(&mut desk, bore);
        parts(&mut desk, 1);
    }
    update(&mut desk.state, Msg::Frame { time_s: 1.0 });
    desk.settle();
    let mut whole = large();
    change(&mut whole, "1.3");
    whole.settle();
    assert_eq!(answers(&desk), answers(&whole));
}

/// One of two cases has come: the other one is not taken for it, and is not there when the rest does not come.
#[test]
fn one_case_is_not_told_as_the_other() {
    let mut desk = waiting();
    change(&mut desk, "1.1");
    desk.settle();
    desk.send(Msg::Times(msg::Times::OnJacks { on: true }));
    let (of, text) = desk.question.take().unwrap();
    let mut working = gearswing_work::Working::of_text(&text, None).unwrap();
    let found = loop {
        if let gearswing_work::Part::Found(found) = working.part() {
            break found;
        }
    };
    desk.send(Msg::Late(msg::Late::Found { of, found }));
    let coming = ["The gear against time is being worked out."];
    assert_eq!(desk.page().times.sentences, coming);
    assert!(desk.page().working.contains("against time"));
    desk.send(Msg::Late(msg::Late::Failed {
        of,
        reason: "broken".to_owned(),
    }));
    let said = desk.page().times.sentences;
    assert_eq!(said.len(), 1, "{said:?}");
    assert!(said[0].contains("given up"), "{said:?}");
    // no verdict, and nothing that is compared, waits for it
    desk.works = true;
    desk.send(Msg::Compare(msg::Compare::Keep));
    change(&mut desk, "1.2");
    desk.settle();
    assert!(
        desk.page().times.sentences.len() > 1,
        "it is asked for with the next change"
    );
}

/// What was worked out of one file is nothing to another.
#[test]
fn another_file_has_no_run_of_this_one() {
    let mut desk = Desk::demo();
    desk.send(Msg::Times(msg::Times::Seek { time_s: 3.0 }));
    assert!(desk.page().times.value_s > 0.0);
    desk.works = false;
    desk.send(Msg::File(msg::File::New {
        starter: "folding_side".to_owned(),
    }));
    let page = desk.page();
    assert_eq!(page.times.value_s, 0.0);
    assert_eq!(gearswing_app::times(&desk.state).marks.len(), 0);
}
