//! The whole form: head, verdicts, each leg with its drawing, answers and measurements, cautions, lines to sign on.
use gearswing_gearfile::{checksum, to_text};
use gearswing_report::page::names::leg_title;
use gearswing_report::page::paper::{self as words, Measured, measurements};
use gearswing_report::{
    general_cautions, name_words, not_modelled, program_words, save_error_text,
};

use super::code::code;
use super::figure::{Figure, figures};
use crate::state::State;
use crate::view::{LegAnswers, ListRow, Page, times_in, view};

/// A piece of the form.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// Heading of a part; a leg begins on a page of its own.
    Title {
        /// The words.
        text: String,
        /// On a new page.
        new_page: bool,
    },
    /// Heading within a part.
    Heading(String),
    /// A paragraph.
    Text(String),
    /// An entry of a list.
    Item(String),
    /// Rows of cells under no head.
    Rows(Vec<Vec<String>>),
    /// A group of measurements under its title; two stand side by side.
    Measured(Measured),
    /// A picture.
    Figure(Figure),
    /// Small pictures side by side.
    Details(Vec<Figure>),
    /// The link for a phone, beside what follows.
    Code(Figure),
    /// What no page break parts.
    Whole(Vec<Block>),
    /// Lines to write on.
    Lines(Vec<String>),
}

fn title(text: &str) -> Block {
    Block::Title {
        text: text.to_owned(),
        new_page: false,
    }
}

fn heading(text: &str) -> Block {
    Block::Heading(text.to_owned())
}

/// The form of all legs, or of the one in hand; `date` as the browser says it, empty = none.
#[must_use]
pub fn form(state: &State, date: &str, all_legs: bool) -> Vec<Block> {
    let mut page = view(state);
    if !all_legs {
        page.answers.retain(|leg| leg.selected);
    }
    let mut all = head(state, date);
    if !all_legs {
        all.push(Block::Text(words::one_leg(
            &state.leg_title(state.session.leg),
        )));
    }
    all.push(heading(words::VERDICTS));
    all.push(verdicts(&page));
    all.extend(changes(&page));
    all.extend(notes(&page));
    for (at, answers) in page.answers.iter().enumerate() {
        of_leg(state, answers, at > 0, &mut all);
    }
    all.push(Block::Title {
        text: words::WHOLE_GEAR.to_owned(),
        new_page: true,
    });
    let whole = measurements(state.gear(), None, state.session.units);
    all.extend(whole.into_iter().map(Block::Measured));
    let said = against_time(state);
    if !said.is_empty() {
        all.push(title(words::AGAINST_TIME));
        all.extend(said);
    }
    all.push(title(words::CAUTIONS));
    all.extend(cautions(&page).into_iter().map(Block::Item));
    all.push(title(words::LEFT_OUT));
    all.extend(
        not_modelled()
            .iter()
            .map(|&text| Block::Item(text.to_owned())),
    );
    let mut all = with_what_follows(all);
    all.push(Block::Whole(vec![
        title(words::SIGNED),
        Block::Text(words::NO_APPROVAL.to_owned()),
        Block::Lines(words::SIGN.map(str::to_owned).to_vec()),
    ]));
    all
}

/// A heading stays with what it is over: not every browser keeps them together by itself.
fn with_what_follows(blocks: Vec<Block>) -> Vec<Block> {
    let mut all: Vec<Block> = Vec::with_capacity(blocks.len());
    let mut over: Vec<Block> = Vec::new();
    for block in blocks {
        match block {
            // one that begins a page needs nothing to hold it
            Block::Title { new_page: true, .. } => all.push(block),
            Block::Title { .. } | Block::Heading(_) => over.push(block),
            // measurements stand in columns with those beside them
            Block::Measured(_) => {
                all.append(&mut over);
                all.push(block);
            }
            _ if over.is_empty() => all.push(block),
            _ => {
                over.push(block);
                all.push(Block::Whole(std::mem::take(&mut over)));
            }
        }
    }
    all.append(&mut over);
    all
}

/// What is said of the times on both ways, with attitude and air as set and on the jacks, each under its heading: what
/// trips on the jacks need not trip in flight. What both cases say is told once.
fn against_time(state: &State) -> Vec<Block> {
    let mut all: Vec<(String, Vec<String>)> = Vec::new();
    for on_jacks in [false, true] {
        for down in [false, true] {
            let times = times_in(state, on_jacks, down);
            let told = (times.label, times.sentences);
            if !all.contains(&told) {
                all.push(told);
            }
        }
    }
    let blocks = all.into_iter().flat_map(|(label, said)| {
        let over = (label != words::AGAINST_TIME).then_some(Block::Heading(label));
        over.into_iter().chain(said.into_iter().map(Block::Text))
    });
    blocks.collect()
}

fn head(state: &State, date: &str) -> Vec<Block> {
    let gear = state.gear();
    let sum = match to_text(gear) {
        Ok(text) => format!("{:08X}", checksum(&text)),
        Err(error) => save_error_text(&error),
    };
    let row = |name: &str, text: String| vec![name.to_owned(), text];
    let mut rows = vec![
        row(words::AIRPLANE, name_words(&gear.name)),
        row(words::CHECKSUM, sum),
        row(words::PROGRAM, program_words(&state.program)),
    ];
    if !date.is_empty() {
        rows.insert(1, row(words::DATE, date.to_owned()));
    }
    if !gear.note.trim().is_empty() {
        rows.insert(1, row(words::NOTE, gear.note.clone()));
    }
    match code(state) {
        Ok(code) => vec![Block::Code(code), title(words::TITLE), Block::Rows(rows)],
        Err(reason) => {
            // without a page there is no link to speak of
            if !state.files.address.is_empty() {
                rows.push(row(words::LINK, reason.to_owned()));
            }
            vec![title(words::TITLE), Block::Rows(rows)]
        }
    }
}

/// The marks are words here: a sheet has no color.
fn verdicts(page: &Page) -> Block {
    let of_leg = |leg: &LegAnswers| {
        let mut row = vec![leg.name.clone()];
        let answers = leg.answers.iter().filter(|_| !leg.faded);
        row.extend(answers.map(|answer| answer.with_was(&answer.line, "; ")));
        row.extend(leg.faults.iter().map(|fault| fault.text.clone()));
        row
    };
    Block::Rows(page.answers.iter().map(of_leg).collect())
}

/// What has changed from the state compared with.
fn changes(page: &Page) -> Vec<Block> {
    let changes = &page.changes;
    if changes.name.is_none() {
        return Vec::new();
    }
    let row = |row: &ListRow| vec![row.name.clone(), row.text.clone()];
    vec![
        heading(&changes.line),
        Block::Rows(changes.rows.iter().map(row).collect()),
    ]
}

/// What somebody says about the gear.
fn notes(page: &Page) -> Vec<Block> {
    let row = |row: &ListRow| vec![row.name.clone(), row.text.clone()];
    let rows: Vec<_> = page.changes.notes.iter().map(row).collect();
    if rows.is_empty() {
        return Vec::new();
    }
    vec![heading(words::NOTES), Block::Rows(rows)]
}

fn of_leg(state: &State, answers: &LegAnswers, new_page: bool, all: &mut Vec<Block>) {
    let leg = answers.leg;
    let Some(model) = state.gear().legs.get(leg) else {
        return;
    };
    all.push(Block::Title {
        text: leg_title(&model.name, leg),
        new_page,
    });
    let pictures = figures(state, leg);
    if let Some(pictures) = &pictures {
        all.push(Block::Figure(pictures.drawing.clone()));
        all.push(Block::Details(pictures.details.clone()));
    }
    all.push(heading(words::ANSWERS));
    if answers.faded || answers.answers.is_empty() {
        all.push(Block::Text(words::NOT_WORKED_OUT.to_owned()));
    } else if !answers.over.is_empty() {
        all.push(Block::Text(answers.over.clone()));
    }
    all.extend(
        answers
            .faults
            .iter()
            .map(|fault| Block::Text(fault.text.clone())),
    );
    for answer in answers.answers.iter().filter(|_| !answers.faded) {
        let asked = [answer.question_text.as_str(), &answer.verdict_text].join(" ");
        all.push(Block::Heading(asked));
        all.push(Block::Text(answer.sentence.clone()));
        if !answer.rests_on.is_empty() {
            all.push(Block::Text(words::RESTS_ON.to_owned()));
        }
        let rests = answer.rests_on.iter();
        all.extend(rests.map(|on| Block::Item(on.text.clone())));
        if !answer.try_next.is_empty() {
            all.push(Block::Text(words::TO_TRY.to_owned()));
        }
        all.extend(answer.try_next.iter().cloned().map(Block::Item));
    }
    // the curves stand behind the answers
    if let Some(pictures) = pictures {
        all.push(heading(words::CURVES));
        all.push(Block::Figure(pictures.curves));
    }
    all.push(heading(words::MEASUREMENTS));
    let own = measurements(state.gear(), Some(leg), state.session.units);
    all.extend(own.into_iter().map(Block::Measured));
}

/// Those of every answer once, and those that always stand.
fn cautions(page: &Page) -> Vec<String> {
    let mut all: Vec<String> = general_cautions()
        .iter()
        .map(|&text| text.to_owned())
        .collect();
    let rows = page.answers.iter().flat_map(|leg| &leg.answers);
    let of_answers = rows
        .flat_map(|row| &row.cautions)
        .chain(&page.times.cautions);
    for text in of_answers {
        if !all.contains(text) {
            all.push(text.clone());
        }
    }
    all
}
