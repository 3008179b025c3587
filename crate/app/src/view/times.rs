//! Text around the charts against time.
use gearswing_report::page::times as words;
use gearswing_report::page::transport::{PLAY, STOP};
use gearswing_report::{
    Timed, case_sentence, down_title, event_line, run_missing, run_sentences, supply_cautions,
    supply_error_text, supply_simplified, times_missing,
};
use gearswing_units::{Quantity, format};

use super::page::Action;
use crate::msg::{Msg, Times};
use crate::state::{Stand, State, selected, value_at};

/// Text around the charts against time.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct TimesText {
    /// There is something to say: the file names what moves the gear.
    pub shown: bool,
    /// Name of the charts.
    pub label: String,
    /// How the run ends, why a leg stands, what it takes; or why there are no times.
    pub sentences: Vec<String>,
    /// The charts in words: what happens when, then what is made simple.
    pub description: Vec<String>,
    /// Cautions that belong to times.
    pub cautions: Vec<String>,
    /// Up, down, run.
    pub actions: Vec<Action>,
    /// Time looked at (s).
    pub value_s: f64,
    /// End of the run (s); 0 = there is none.
    pub end_s: f64,
    /// Time and numbers there, in words.
    pub text: String,
}

pub(crate) fn times(state: &State) -> TimesText {
    let clock = &state.session.clock;
    times_in(state, clock.on_jacks, clock.down)
}

/// In the case and on the way that are shown, or in others.
pub(crate) fn times_in(state: &State, on_jacks: bool, down: bool) -> TimesText {
    // while a point is dragged nothing is asked: what is there is of an earlier state
    let coming = state.times_are_coming() || state.later.is_behind(state.revision());
    let Some(cycle) = state.later.cycle(on_jacks).filter(|_| !coming) else {
        let why = match state.later.times_stand(on_jacks) {
            Stand::There if !coming => times_missing(),
            Stand::There | Stand::Coming => words::COMING,
            Stand::GivenUp => words::GIVEN_UP,
        };
        return TimesText {
            shown: !state.gear().legs.is_empty(),
            label: words::TITLE.to_owned(),
            sentences: vec![why.to_owned()],
            ..TimesText::default()
        };
    };
    let units = state.session.units;
    let timed = Timed {
        gear: state.gear(),
        units,
    };
    let owned = |texts: &[&str]| -> Vec<String> { texts.iter().map(|&t| t.to_owned()).collect() };
    let mut shown = TimesText {
        shown: true,
        label: words::TITLE.to_owned(),
        cautions: owned(supply_cautions(&state.gear().supply.source)),
        ..TimesText::default()
    };
    match cycle {
        Err(error) => shown.sentences.push(supply_error_text(&timed, error)),
        Ok(_) => {
            let action = |id: &str, (label, hint): (&str, &str), enabled, msg| Action {
                id: id.to_owned(),
                label: label.to_owned(),
                hint: hint.to_owned(),
                enabled,
                msg: Msg::Times(msg),
            };
            let running = state.session.clock.running;
            let select = |down| Times::Select { down };
            let label = if running { STOP } else { PLAY };
            shown.actions = vec![
                action("times-up", words::UP, down, select(false)),
                action("times-down", words::DOWN, !down, select(true)),
                action(
                    "times-run",
                    (label, words::PLAY_HINT),
                    state.later.run(on_jacks, down).is_some(),
                    Times::Toggle,
                ),
            ];
            if !state.gear().conditions.are_on_jacks() {
                shown.actions.push(action(
                    "times-case",
                    (words::other_case(on_jacks), words::OTHER_CASE_HINT),
                    true,
                    Times::OnJacks { on: !on_jacks },
                ));
            }
        }
    }
    if let Some(run) = state.later.run(on_jacks, down) {
        if let Ok(cycle) = cycle {
            let from = down.then(|| down_title(cycle));
            let case = case_sentence(&timed, cycle);
            shown.sentences.push(words::case_line(&case, from));
        }
        shown.sentences.extend(run_sentences(&timed, run));
        shown.label = words::run_title(down).to_owned();
        shown.value_s = state.session.clock.at_s.unwrap_or(0.0).min(run.time);
        shown.end_s = run.time;
        shown.description = run.events.iter().map(|e| event_line(&timed, e)).collect();
        shown
            .description
            .extend(owned(supply_simplified(&state.gear().supply.source)));
        let at_s = shown.value_s;
        let number = |quantity, value: Option<f64>| value.map(|si| format(quantity, units, si));
        let numbers = [
            Some(format(Quantity::Time, units, at_s)),
            number(Quantity::Pressure, value_at(run, at_s, |s| s.pressure)),
            number(Quantity::Flow, value_at(run, at_s, |s| s.flow)),
            number(Quantity::Current, value_at(run, at_s, |s| s.current)),
            number(Quantity::Voltage, value_at(run, at_s, |s| s.bus_voltage)),
        ];
        shown.text = numbers.into_iter().flatten().collect::<Vec<_>>().join(", ");
    } else if let Ok(cycle) = cycle {
        shown
            .sentences
            .push(run_missing(&timed, cycle, selected(down)));
    }
    shown
}
