//! The verdicts: a row for each leg, a signed number with its mark for each question; and the answers of the leg
//! in hand in a line each.

use super::answers::sign_of;
use super::head::pressed;
use crate::dom::{Row, Rows, by_id, element, set_attribute, set_hidden, set_text};
use crate::error::Result;
use gearswing_app::view::{AnswerRow, LegAnswers};
use gearswing_app::{Page, Verdict};
use web_sys::{Element, HtmlElement};

/// The verdicts of all legs.
pub(super) struct Verdicts {
    table: HtmlElement,
    heads: Rows<Head>,
    legs: Rows<Leg>,
    lines: Rows<Line>,
}

impl Verdicts {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            table: by_id("verdicts")?,
            heads: Rows::new(by_id("verdict-heads")?),
            legs: Rows::new(by_id("verdict-rows")?),
            lines: Rows::new(by_id("answer-lines")?),
        })
    }

    /// Shows the verdicts of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        let answered = page.answers.iter().find(|leg| !leg.answers.is_empty());
        let questions = answered.map_or(&[][..], |leg| &leg.answers);
        let heads: Vec<String> = std::iter::once(String::new())
            .chain(questions.iter().map(|answer| answer.head.clone()))
            .collect();
        self.heads.patch(&heads)?;
        // room for what was, so that no row grows while a point is moved
        set_attribute(
            &self.table,
            "data-compared",
            pressed(page.changes.name.is_some()),
        )?;
        self.legs.patch(&page.answers)?;
        let in_hand = page.answers.iter().find(|leg| leg.selected);
        self.lines.patch(&in_hand.map_or_else(Vec::new, lines))
    }
}

/// What is said of the leg in hand, a line each: answers of an earlier state are none of this one.
fn lines(leg: &LegAnswers) -> Vec<Said> {
    if let Some(fault) = leg.faults.first() {
        return vec![Said {
            verdict: Verdict::Bad,
            text: fault.text.clone(),
            open: String::new(),
        }];
    }
    let said = |answer: &AnswerRow| {
        let told = match answer.verdict {
            Verdict::Good => &answer.figure,
            _ => &answer.short,
        };
        Said {
            verdict: answer.verdict,
            text: answer.with_was(&[&answer.head, " ", told].concat(), "; "),
            open: answer.open.id.clone(),
        }
    };
    leg.answers.iter().map(said).collect()
}

/// Head of a column.
struct Head(HtmlElement);

impl Row for Head {
    type Item = String;

    fn key(item: &String) -> String {
        item.clone()
    }

    fn make(item: &String) -> Result<Self> {
        let node = element(if item.is_empty() { "td" } else { "th" }, "")?;
        if !item.is_empty() {
            node.set_attribute("scope", "col")?;
        }
        Ok(Self(node))
    }

    fn root(&self) -> &Element {
        &self.0
    }

    fn patch(&mut self, _: Option<&String>, new: &String) -> Result<()> {
        set_text(&self.0, new);
        Ok(())
    }
}

/// One leg.
struct Leg {
    node: HtmlElement,
    name: HtmlElement,
    cells: Vec<Cell>,
    fault: HtmlElement,
    fault_text: HtmlElement,
}

/// One verdict.
struct Cell {
    node: HtmlElement,
    button: HtmlElement,
    mark: HtmlElement,
    figure: HtmlElement,
    was: HtmlElement,
}

/// Verdicts of a leg.
const QUESTIONS: usize = 3;

impl Row for Leg {
    type Item = LegAnswers;

    fn key(item: &LegAnswers) -> String {
        item.leg.to_string()
    }

    fn make(item: &LegAnswers) -> Result<Self> {
        let node = element("tr", "verdict-row")?;
        let heading = element("th", "")?;
        heading.set_attribute("scope", "row")?;
        let name = element("button", "leg-name")?;
        name.set_attribute("type", "button")?;
        name.set_attribute("tabindex", "-1")?;
        name.set_attribute("data-action", &item.select.id)?;
        heading.append_child(&name)?;
        node.append_child(&heading)?;
        let cells = (0..QUESTIONS)
            .map(|_| Cell::make(&node))
            .collect::<Result<_>>()?;
        let fault = element("td", "fault-cell")?;
        fault.set_attribute("colspan", &QUESTIONS.to_string())?;
        let fault_text = element("span", "error")?;
        fault.append_child(&fault_text)?;
        node.append_child(&fault)?;
        Ok(Self {
            node,
            name,
            cells,
            fault,
            fault_text,
        })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&LegAnswers>, new: &LegAnswers) -> Result<()> {
        set_text(&self.name, &new.name);
        set_attribute(&self.name, "data-action", &new.select.id)?;
        set_attribute(&self.name, "aria-pressed", pressed(new.selected))?;
        set_attribute(&self.name, "title", &new.select.hint)?;
        set_attribute(&self.node, "data-selected", pressed(new.selected))?;
        set_attribute(&self.node, "data-faded", pressed(new.faded))?;
        // answers of an earlier state are none of this one
        let fault = new.faults.first();
        set_hidden(&self.fault, fault.is_none())?;
        let text = fault.map_or("", |fault| fault.text.as_str());
        // the leg's name stands at the head of the row
        let rest = text.strip_prefix(new.name.as_str());
        let rest = rest.and_then(|rest| rest.strip_prefix(", "));
        set_text(&self.fault_text, rest.unwrap_or(text));
        set_attribute(&self.fault_text, "title", text)?;
        for (at, cell) in self.cells.iter().enumerate() {
            cell.patch(new.answers.get(at).filter(|_| fault.is_none()))?;
        }
        Ok(())
    }
}

impl Cell {
    fn make(row: &HtmlElement) -> Result<Self> {
        let node = element("td", "")?;
        let button = element("button", "verdict-cell")?;
        button.set_attribute("type", "button")?;
        button.set_attribute("tabindex", "-1")?;
        let mark = element("span", "mark")?;
        let figure = element("span", "figure-text")?;
        button.append_child(&mark)?;
        button.append_with_str_1(" ")?;
        button.append_child(&figure)?;
        let was = element("span", "was")?;
        button.append_child(&was)?;
        node.append_child(&button)?;
        row.append_child(&node)?;
        Ok(Self {
            node,
            button,
            mark,
            figure,
            was,
        })
    }

    fn patch(&self, answer: Option<&AnswerRow>) -> Result<()> {
        set_hidden(&self.node, answer.is_none())?;
        let Some(answer) = answer else {
            return Ok(());
        };
        let (name, sign) = sign_of(answer.verdict);
        set_attribute(&self.node, "data-verdict", name)?;
        set_attribute(&self.button, "data-action", &answer.open.id)?;
        set_text(&self.mark, sign);
        set_text(&self.figure, &answer.figure);
        set_text(&self.was, answer.was.as_deref().unwrap_or_default());
        let line = answer.with_was(&answer.line, "; ");
        // what is seen comes first, so that it can be said to be pressed
        let seen = answer.with_was(&answer.figure, " ");
        set_attribute(
            &self.button,
            "aria-label",
            &[&seen, ": ", &answer.line].concat(),
        )?;
        set_attribute(&self.button, "title", &line)
    }
}

/// A line about the leg in hand.
#[derive(Clone, Debug, PartialEq)]
struct Said {
    verdict: Verdict,
    text: String,
    /// What a press on it does, as on its cell.
    open: String,
}

/// Its nodes.
struct Line {
    node: HtmlElement,
    mark: HtmlElement,
    text: HtmlElement,
}

impl Row for Line {
    type Item = Said;

    fn key(item: &Said) -> String {
        item.text.clone()
    }

    fn make(_: &Said) -> Result<Self> {
        let node = element("li", "")?;
        let mark = element("span", "mark")?;
        let text = element("span", "")?;
        node.append_child(&mark)?;
        node.append_with_str_1(" ")?;
        node.append_child(&text)?;
        Ok(Self { node, mark, text })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&Said>, new: &Said) -> Result<()> {
        let (name, sign) = sign_of(new.verdict);
        set_attribute(&self.node, "data-verdict", name)?;
        set_attribute(&self.node, "data-action", &new.open)?;
        set_text(&self.mark, sign);
        set_text(&self.text, &new.text);
        Ok(())
    }
}
