//! The page for a state, put together.
use gearswing_report::{general_cautions, not_modelled, program_words};

use super::page::Page;
use super::{answers, changes, controls, groups, readout, sheets, stopped, times};
use crate::state::State;

/// The page for a state.
#[must_use]
pub fn view(state: &State) -> Page {
    let owned = |texts: &[&str]| texts.iter().map(|&text| text.to_owned()).collect();
    Page {
        notices: controls::notices(state),
        working: controls::working(state),
        shared: controls::shared(state),
        answers: answers::answers(state),
        sheets: sheets::sheets(state),
        sheet: state.session.sheet,
        sheet_height: state.session.sheet_height,
        toolbar: controls::toolbar(state),
        steps: controls::steps(state),
        transport: controls::transport(state),
        readout: readout::readout(state),
        drawing: readout::drawing_text(state),
        curves: readout::curves_text(state),
        stopped: stopped::stopped(state),
        times: times::times(state),
        groups: groups::groups(state),
        changes: changes::changes(state),
        files: controls::files(state),
        starters: controls::starters(),
        cautions: owned(general_cautions()),
        not_modelled: owned(not_modelled()),
        keys: controls::keys(),
        program: program_words(&state.program),
    }
}
