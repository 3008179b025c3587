//! Names of the sheets, one of which is in hand.
use gearswing_report::page::sheets::{Sheet, sheet_name};

use super::page::{Action, SheetTab};
use crate::msg::{Msg, View};
use crate::state::State;

/// Group of what was seen of a leg that stopped short: it stands on a sheet of its own.
pub(super) const SEEN: &str = "seen";

/// The sheet on which a group of fields stands.
pub(crate) fn sheet_of_group(group: Option<&str>) -> Sheet {
    match group {
        Some(SEEN) => Sheet::Stopped,
        _ => Sheet::Measurements,
    }
}

pub(crate) fn sheets(state: &State) -> Vec<SheetTab> {
    let gear = state.gear();
    let has_changes = !gear.kept.is_empty() || !gear.notes.is_empty();
    Sheet::ALL
        .into_iter()
        // a name appears with its work
        .filter(|sheet| *sheet != Sheet::Changes || has_changes)
        .map(|sheet| SheetTab {
            sheet,
            in_hand: state.session.sheet == sheet,
            take: Action {
                id: format!("sheet.{}", sheet.key()),
                label: sheet_name(sheet).to_owned(),
                hint: String::new(),
                enabled: true,
                msg: Msg::View(View::Sheet(sheet)),
            },
        })
        .collect()
}
