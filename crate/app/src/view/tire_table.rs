//! Tire sizes to choose from.
use gearswing_report::page::fields as words;
use gearswing_solver::tires::{SizeRow, sizes};

use super::page::{ChoiceOption, FieldKind, FieldRow};
use super::rows::worked_out;
use crate::state::State;

/// Key of the row that offers the size table.
pub(crate) const SIZE_TABLE: &str = "size_table";

/// A choice from the size table; each entry says how sure it is.
pub(super) fn tire_table(state: &State, leg: usize) -> Option<FieldRow> {
    let tire = &state.gear().legs.get(leg)?.wheel.tire;
    // rows that put in the same tire are one choice
    let alike = |a: &SizeRow, b: &SizeRow| a.size == b.size && a.gives(&b.to_tire());
    let options = sizes()
        .iter()
        .enumerate()
        .filter(|(at, row)| !sizes().iter().take(*at).any(|earlier| alike(earlier, row)))
        .map(|(at, row)| {
            let plies = sizes().iter().filter(|other| alike(row, other));
            let plies: Vec<String> = plies
                .filter_map(|other| Some(other.ply?.to_string()))
                .collect();
            ChoiceOption {
                key: at.to_string(),
                label: words::size_words(row, &plies),
            }
        })
        .collect();
    let chosen = sizes()
        .iter()
        .position(|row| row.size == tire.size && row.gives(tire))
        .map_or_else(String::new, |at| at.to_string());
    let mut found = worked_out(
        format!("legs[{leg}].wheel.tire.{SIZE_TABLE}"),
        words::SIZE_TABLE,
        String::new(),
        words::SIZE_TABLE_HELP,
    );
    if let Some(row) = chosen.parse::<usize>().ok().and_then(|at| sizes().get(at)) {
        found.echo = row.source.to_owned();
    }
    found.kind = FieldKind::Choice { options, chosen };
    Some(found)
}
