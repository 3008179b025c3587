//! The words for a gear and its results, in one place for page and command.
//!
//! Pure: data and unit choice in, text out. Nothing here decides a verdict; that is the solver's.
//! Start at [`Subject`] and [`finding_text`], or at [`Answered`] for whole reports; labels of the data are in [`fields`].

/// A gear file with the results of its legs.
mod answered;
/// Load cases, joints and motions in words.
mod cases;
/// Cautions, and what the model leaves out.
mod cautions;
/// What differs between two states of a gear.
mod compared;
/// A fault of a model in words.
mod fault;
/// Every field of the gear file: label, quantity and how to measure it.
pub mod fields;
/// The three answers in words.
mod finding;
/// The results as JSON.
mod json;
/// Names that a person typed, made safe.
mod name;
/// Why a file or a link cannot be opened, or a gear not be saved.
mod opening;
/// The words of the page, part by part.
pub mod page;
/// The program itself.
mod program;
/// What maintenance manuals print, beside the user's own figures.
pub mod published;
/// The whole report as text.
mod sheet;
/// A leg that stopped on the jacks.
mod stopped;
/// What a text speaks of.
mod subject;
/// Tables as CSV and as text.
mod table;
/// Small parts of sentences.
mod text;
/// The gear against time.
mod timed;

#[cfg(test)]
mod sample;
/// The JSON described key by key.
#[cfg(test)]
mod schema;

pub use answered::{Answered, LegAnswer, Outcome};
pub use cases::{case_words, joint_words, missing_words, motion_words};
pub use cautions::{TIRE_CLEARANCE_RULE, caution_text, general_cautions, not_modelled};
pub use compared::{ChangeText, change_text, changed_place};
pub use fault::fault_text;
pub use finding::{
    FindingText, Governing, Mark, Stand, finding_figure, finding_line, finding_short, finding_text,
    governing, jam_text, question_head, question_text, stand_lines, verdict_text,
};
pub use json::{RESULT_FORMAT, RESULT_VERSION, result_json, unusable_json};
pub use name::{brief, clean, file_words, name_words};
pub use opening::{archive_error_text, link_error_text, open_error_text, save_error_text};
pub use program::{Program, program_words, version_words};
pub use sheet::{
    ReportOptions, TitledTable, WITH_PREVIOUS_TIRE, comparison_text, load_tables, lock_facts,
    report_text,
};
pub use stopped::{
    Stopped, cause_sentence, check_sentence, fit_words, readings_words, stop_cautions,
    stop_error_text, stop_lead, stop_notes,
};
pub use subject::{Subject, drive_quantity};
pub use table::{Align, Column, stations_csv, stations_csv_head, stations_csv_rows, stations_text};
pub use text::capital_first;
pub use timed::{
    Timed, case_sentence, down_title, event_line, events_text, indication_words, run_missing,
    run_sentence, run_sentences, stall_sentence, supply_cautions, supply_error_text,
    supply_simplified, times_csv_head, times_csv_rows, times_missing,
};
