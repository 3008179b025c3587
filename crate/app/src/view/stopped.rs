//! What explains a stop of the selected leg.
use gearswing_report::page::sheets::NO_STOP;
use gearswing_report::page::stopped as words;
use gearswing_report::{
    Stopped, capital_first, cause_sentence, check_sentence, fit_words, readings_words,
    stop_cautions, stop_error_text, stop_lead, stop_notes,
};
use gearswing_solver::result::Fit;

use super::groups::seen;
use super::page::{Action, FieldGroup};
use crate::msg::{Msg, View};
use crate::state::{Stand, State};

/// What explains a stop of the selected leg.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct StopText {
    /// A stop was entered for this leg.
    pub shown: bool,
    /// What was seen; `None` without a leg.
    pub group: Option<FieldGroup>,
    /// Where it stood and how far the numbers carry, the next check, and cautions; or why there is nothing.
    pub sentences: Vec<String>,
    /// Explanations, the one that fits best first.
    pub rows: Vec<StopRow>,
    /// What the weighing does and does not do.
    pub notes: Vec<String>,
    /// To the place in the drawing.
    pub actions: Vec<Action>,
}

/// One explanation.
#[derive(Clone, Debug, PartialEq)]
pub struct StopRow {
    /// It is ruled out; those that are stand last.
    pub ruled_out: bool,
    /// How well it fits, in a word or two.
    pub fit_text: String,
    /// The explanation with its number.
    pub sentence: String,
    /// Each thing seen against what it asks for.
    pub readings: Vec<String>,
}

pub(crate) fn stopped(state: &State) -> StopText {
    let leg = state.session.leg;
    let legs = &state.gear().legs;
    let is_seen = legs.get(leg).is_some_and(|leg| leg.seen_stop.is_some());
    let stand = state.later.stop_stands(leg);
    let (Some((_, found)), true, Stand::There) = (state.later.stop(leg), is_seen, stand) else {
        let why = match (is_seen, stand) {
            (false, _) | (true, Stand::There) => NO_STOP,
            (true, Stand::Coming) => words::COMING,
            (true, Stand::GivenUp) => words::GIVEN_UP,
        };
        return StopText {
            shown: is_seen,
            group: seen(state),
            sentences: vec![why.to_owned()],
            ..StopText::default()
        };
    };
    let about = Stopped {
        gear: state.gear(),
        leg,
        units: state.session.units,
    };
    let found = match found {
        Ok(found) => found,
        Err(error) => {
            return StopText {
                shown: true,
                group: seen(state),
                sentences: vec![stop_error_text(&about, error)],
                ..StopText::default()
            };
        }
    };
    let mut sentences = vec![stop_lead(&about, found)];
    if let Some(next) = &found.next_check {
        sentences.push(check_sentence(&about, next));
    }
    // never folded away
    let cautions = stop_cautions().iter();
    sentences.extend(cautions.map(|caution| words::caution_sentence(caution)));
    StopText {
        shown: true,
        group: seen(state),
        sentences,
        rows: found
            .explanations
            .iter()
            .map(|one| StopRow {
                ruled_out: one.fit == Fit::RuledOut,
                fit_text: capital_first(fit_words(one.fit)),
                sentence: cause_sentence(&about, &one.cause),
                readings: readings_words(&about, found, one),
            })
            .collect(),
        notes: stop_notes().iter().map(|&text| text.to_owned()).collect(),
        actions: vec![Action {
            id: format!("stop.{leg}"),
            label: words::SHOW_STOP.to_owned(),
            hint: String::new(),
            enabled: true,
            msg: Msg::View(View::GoToStop { leg }),
        }],
    }
}
