//! What is shown, as plain structs.

/// The answers.
mod answers;
/// What differs from the state that is compared with.
mod changes;
/// The page, put together.
mod compose;
/// Toolbar, transport, notices, files.
mod controls;
/// What is said of a point that is moved.
mod dragged;
/// What still stands as a working example has it.
mod example;
/// The data in groups.
mod groups;
/// The answers as data.
mod leg_answers;
/// Load cases and joint loads.
mod loads;
/// What somebody says about the gear.
mod notes;
/// The structs.
mod page;
/// Numbers at the cursor and the text equivalents.
mod readout;
/// Rows of fields.
mod rows;
/// Names of the sheets.
mod sheets;
/// What explains a stop.
mod stopped;
/// The short text of a closed group.
mod summary;
/// Text around the charts against time.
mod times;
/// Tire sizes to choose from.
mod tire_table;
/// Head and presses of the page.
mod toolbar;
/// Numbers worked out from the fields.
mod worked;

pub(crate) use answers::finding_sentence;
pub use compose::view;
pub(crate) use dragged::drag_lines;
pub(crate) use groups::group_of;
pub use leg_answers::{AnswerRow, FaultRow, LegAnswers, RestsOn};
pub use loads::load_tables;
pub use page::{
    Action, ChangesText, ChoiceOption, CurvesText, DetailText, DrawingText, FieldGroup, FieldKind,
    FieldRow, KeyHelp, ListRow, Notice, NoticeKind, Page, PointerStyle, ReadoutRow, SharedBanner,
    SheetTab, Transport, TransportMark,
};
pub(crate) use readout::{detail_text, obstacle_name, obstacle_text};
pub(crate) use rows::unread;
pub(crate) use sheets::sheet_of_group;
pub use stopped::{StopRow, StopText};
pub use times::TimesText;
pub(crate) use times::times_in;
pub(crate) use tire_table::SIZE_TABLE;
pub use toolbar::{StepsText, Toolbar};
