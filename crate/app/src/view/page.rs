//! What is shown beside the drawings, as plain structs: the page patches only what differs.
use gearswing_gear::field::Axis;
use gearswing_report::page::sheets::{Height, Sheet};
use gearswing_solver::result::{Question, Verdict};

use super::leg_answers::LegAnswers;
use super::{
    stopped::StopText,
    times::TimesText,
    toolbar::{StepsText, Toolbar},
};
use crate::msg::Msg;
use crate::state::Speed;

/// Everything that is shown as text or controls.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Page {
    /// Notices, newest first.
    pub notices: Vec<Notice>,
    /// What is being worked out; empty = nothing.
    pub working: String,
    /// Shown while a link's content is open beside own work.
    pub shared: Option<SharedBanner>,
    /// Answers, one entry for each leg.
    pub answers: Vec<LegAnswers>,
    /// Names of the sheets, one of which is in hand.
    pub sheets: Vec<SheetTab>,
    /// The sheet in hand.
    pub sheet: Sheet,
    /// How high it stands where it lies under the drawing.
    pub sheet_height: Height,
    /// Top row of controls.
    pub toolbar: Toolbar,
    /// A point that is moved by steps.
    pub steps: Option<StepsText>,
    /// Play and scrub.
    pub transport: Transport,
    /// Numbers at the cursor.
    pub readout: Vec<ReadoutRow>,
    /// Text around the drawing.
    pub drawing: DrawingText,
    /// Text around the curves.
    pub curves: CurvesText,
    /// What explains a stop of the selected leg.
    pub stopped: StopText,
    /// Text around the charts against time.
    pub times: TimesText,
    /// The data, in groups.
    pub groups: Vec<FieldGroup>,
    /// What differs from a kept state.
    pub changes: ChangesText,
    /// Stored files.
    pub files: Vec<ListRow>,
    /// What a new file can start from: label and message.
    pub starters: Vec<Action>,
    /// Cautions that always stand.
    pub cautions: Vec<String>,
    /// What the model leaves out.
    pub not_modelled: Vec<String>,
    /// Keys, for the help.
    pub keys: Vec<KeyHelp>,
    /// The program with version and commit.
    pub program: String,
}

/// A press that sends a message.
#[derive(Clone, Debug)]
pub struct Action {
    /// Unique on the page and the same from one view to the next.
    pub id: String,
    /// What stands on it.
    pub label: String,
    /// Longer spoken or hovering text; empty = the label says it all.
    pub hint: String,
    /// Can be pressed now.
    pub enabled: bool,
    /// What it sends.
    pub msg: Msg,
}

/// As they are shown: what is sent is looked up in the newest page by the id.
impl PartialEq for Action {
    fn eq(&self, other: &Self) -> bool {
        (&self.id, &self.label, &self.hint, self.enabled)
            == (&other.id, &other.label, &other.hint, other.enabled)
    }
}

/// How a notice is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoticeKind {
    /// For information.
    Info,
    /// Something did not work.
    Problem,
}

/// A line of text about what happened.
#[derive(Clone, Debug, PartialEq)]
pub struct Notice {
    /// For `View::Dismiss`.
    pub id: u64,
    /// How it is meant.
    pub kind: NoticeKind,
    /// The sentences.
    pub text: String,
    /// What can be done about it.
    pub actions: Vec<Action>,
}

/// Banner while a link's content is open.
#[derive(Clone, Debug, PartialEq)]
pub struct SharedBanner {
    /// The sentence.
    pub text: String,
    /// Keep it, go back.
    pub actions: Vec<Action>,
}

/// Play and scrub.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Transport {
    /// Progress at down (ratio).
    pub min: f64,
    /// Progress where the path ends (ratio).
    pub max: f64,
    /// Progress now (ratio).
    pub value: f64,
    /// Step of the scrub (ratio).
    pub step: f64,
    /// Where this is, in words, for sight and screen reader.
    pub text: String,
    /// The place alone, beside the play.
    pub place: String,
    /// The same where there is less room.
    pub travel: String,
    /// The same where there is little room.
    pub travel_short: String,
    /// Places worth going to, from down to up.
    pub marks: Vec<TransportMark>,
    /// There is a mark before the place.
    pub mark_before: bool,
    /// There is a mark after it.
    pub mark_after: bool,
    /// Playing.
    pub playing: bool,
    /// Speed.
    pub speed: Speed,
    /// The way down is in hand.
    pub way_down: bool,
    /// Text about reduced motion, or empty.
    pub motion_text: String,
}

/// A number at the cursor.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ReadoutRow {
    /// What.
    pub label: String,
    /// How much, with unit.
    pub value: String,
    /// In the state compared with.
    pub before: Option<String>,
    /// Contact, too near or too weak.
    pub bad: bool,
}

/// Mouse pointer over the drawing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum PointerStyle {
    /// Nothing under it: press to move the paper.
    #[default]
    Open,
    /// Over a handle.
    OverHandle,
    /// Moving a handle or the paper.
    Moving,
}

/// Text around the drawing.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct DrawingText {
    /// Name of the drawing: leg, view, travel.
    pub label: String,
    /// How it is seen.
    pub seen: String,
    /// The worst answer of the leg, and how it stands.
    pub worst: Option<(Verdict, String)>,
    /// The worst place at a larger scale; `None` where there is nothing to check.
    pub detail: Option<DetailText>,
    /// What the drawing shows, in sentences, from the same data.
    pub description: Vec<String>,
    /// Line about the drag under way, or empty.
    pub drag_text: String,
    /// Mouse pointer.
    pub pointer: PointerStyle,
    /// The drawing is of an earlier state: the model is faulty.
    pub faded: bool,
}

/// Text under the detail.
#[derive(Clone, Debug, PartialEq)]
pub struct DetailText {
    /// Its letter, its scale against the drawing, and the travel.
    pub caption: String,
    /// The travel at which it is.
    pub travel: String,
    /// The gap or overlap, the offset over center, or the moment arm.
    pub value: String,
    /// It touches.
    pub bad: bool,
    /// The answer that it belongs to.
    pub question: Question,
}

/// Text around the curves.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CurvesText {
    /// Name of the curves.
    pub label: String,
    /// What they show, in sentences.
    pub description: Vec<String>,
}

/// A place worth going to.
#[derive(Clone, Debug, PartialEq)]
pub struct TransportMark {
    /// Progress (ratio).
    pub progress: f64,
    /// What is there.
    pub text: String,
    /// Something is wrong there.
    pub bad: bool,
}

/// The name of a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetTab {
    /// Which.
    pub sheet: Sheet,
    /// It is in hand.
    pub in_hand: bool,
    /// What takes it in hand.
    pub take: Action,
}

/// A group of fields.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldGroup {
    /// Unique and lasting.
    pub id: String,
    /// Heading.
    pub title: String,
    /// Short text beside the heading while closed.
    pub summary: String,
    /// Open.
    pub open: bool,
    /// What is wrong with fields in it, or empty.
    pub alert: String,
    /// A field in it belongs to the selected handle.
    pub marked: bool,
    /// A sentence on top, or empty.
    pub help: String,
    /// Rows; empty while closed.
    pub rows: Vec<FieldRow>,
    /// What can be done to the group.
    pub actions: Vec<Action>,
}

/// One field.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldRow {
    /// Path in the gear file: unique and lasting.
    pub path: String,
    /// What it is.
    pub label: String,
    /// Of a coordinate: y stands beside x.
    pub axis: Option<Axis>,
    /// Text in the field, as typed while it still denotes the value.
    pub value: String,
    /// Unit shown behind it.
    pub unit: String,
    /// What was understood of a typed text, or empty.
    pub echo: String,
    /// How to measure it.
    pub help: String,
    /// What an empty field stands for; empty text = it must be filled.
    pub if_empty: String,
    /// What is allowed.
    pub range: String,
    /// Why the text or the number cannot be taken.
    pub error: Option<String>,
    /// Belongs to the selected handle.
    pub marked: bool,
    /// What kind of control it is.
    pub kind: FieldKind,
    /// What can be done to it (add a point behind it, take it out).
    pub actions: Vec<Action>,
}

/// Kind of a field.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FieldKind {
    /// Number, typed with or without unit.
    Number,
    /// Number that is worked out from others.
    ReadOnly,
    /// Text on one line.
    Text,
    /// Text on several lines.
    LongText,
    /// One of several.
    Choice {
        /// What there is.
        options: Vec<ChoiceOption>,
        /// Key of the chosen one; may be empty when none is.
        chosen: String,
    },
    /// Any of several.
    Switches {
        /// What there is, and whether it is on.
        options: Vec<(ChoiceOption, bool)>,
    },
}

/// One of several.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ChoiceOption {
    /// Key.
    pub key: String,
    /// Text.
    pub label: String,
}

/// An entry of a list: a name, a few words about it, and what can be done to it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ListRow {
    /// Its key within the list.
    pub id: String,
    /// Its name.
    pub name: String,
    /// What is to be said of it, or empty.
    pub text: String,
    /// That is something wrong.
    pub problem: bool,
    /// It is the one in use.
    pub current: bool,
    /// What can be done to it.
    pub actions: Vec<Action>,
}

/// What differs from the state that is compared with.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ChangesText {
    /// How much differs, and from what; empty where no state is kept.
    pub line: String,
    /// The differences.
    pub rows: Vec<ListRow>,
    /// What can be done to all of them.
    pub actions: Vec<Action>,
    /// Name of the state compared with.
    pub name: Option<String>,
    /// The kept states.
    pub kept: Vec<ListRow>,
    /// What somebody says about the gear.
    pub notes: Vec<ListRow>,
}

/// A key and what it does.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeyHelp {
    /// Keys.
    pub keys: String,
    /// What they do.
    pub text: String,
}
