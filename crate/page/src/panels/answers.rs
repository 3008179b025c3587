//! The answers of each leg.

use super::action::show;
use super::head::pressed;
use super::lists::sentences;
use crate::dom::{
    Row, Rows, all_of, by_id, document, element, set_attribute, set_hidden, set_text,
};
use crate::error::Result;
use gearswing_app::Page;
use gearswing_app::view::{AnswerRow, FaultRow, LegAnswers};
use gearswing_app::words::answers as words;
use gearswing_app::{Question, Verdict};
use web_sys::{Element, HtmlElement};

/// The answers of the leg in hand.
pub(super) struct Answers {
    legs: Rows<Leg>,
}

impl Answers {
    /// Looks up the nodes.
    pub(super) fn mount() -> Result<Self> {
        Ok(Self {
            legs: Rows::new(by_id("answer-legs")?),
        })
    }

    /// Shows the answers of a page.
    pub(super) fn patch(&mut self, page: &Page) -> Result<()> {
        let in_hand = page.answers.iter().find(|leg| leg.selected).cloned();
        self.legs.patch(in_hand.as_slice())
    }
}

/// One leg.
struct Leg {
    node: HtmlElement,
    name: HtmlElement,
    over: HtmlElement,
    faults: Rows<Fault>,
    fault_list: HtmlElement,
    answers: Rows<Answer>,
}

impl Row for Leg {
    type Item = LegAnswers;

    fn key(item: &LegAnswers) -> String {
        item.leg.to_string()
    }

    fn make(_: &LegAnswers) -> Result<Self> {
        let node = element("article", "leg")?;
        let name = element("h3", "unseen")?;
        let fault_list = element("ul", "faults plain-list")?;
        let over = element("p", "quiet small")?;
        let answers = element("ol", "plain-list")?;
        for part in [&name, &fault_list, &over, &answers] {
            node.append_child(part)?;
        }
        Ok(Self {
            node,
            name,
            over,
            faults: Rows::new(fault_list.clone().into()),
            fault_list,
            answers: Rows::new(answers.into()),
        })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&LegAnswers>, new: &LegAnswers) -> Result<()> {
        set_text(&self.name, &new.name);
        set_attribute(&self.node, "data-selected", pressed(new.selected))?;
        set_attribute(&self.node, "data-faded", pressed(new.faded))?;
        set_text(&self.over, &new.over);
        set_hidden(&self.over, new.over.is_empty() || new.answers.is_empty())?;
        set_hidden(&self.fault_list, new.faults.is_empty())?;
        self.faults.patch(&new.faults)?;
        let rows: Vec<(AnswerRow, bool)> = new
            .answers
            .iter()
            .map(|answer| (answer.clone(), new.selected))
            .collect();
        self.answers.patch(&rows)
    }
}

/// A fault of the model.
struct Fault {
    node: HtmlElement,
    text: HtmlElement,
    show: HtmlElement,
}

impl Row for Fault {
    type Item = FaultRow;

    fn key(item: &FaultRow) -> String {
        item.text.clone()
    }

    fn make(_: &FaultRow) -> Result<Self> {
        let node = element("li", "fault")?;
        let text = element("span", "")?;
        let show = element("button", "")?;
        show.set_attribute("type", "button")?;
        node.append_child(&text)?;
        node.append_child(&show)?;
        Ok(Self { node, text, show })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, _: Option<&FaultRow>, new: &FaultRow) -> Result<()> {
        set_text(&self.text, &new.text);
        set_hidden(&self.show, new.show.is_none())?;
        match &new.show {
            Some(action) => show(&self.show, action),
            None => Ok(()),
        }
    }
}

/// One answer, open or short.
struct Answer {
    node: HtmlElement,
    mark: HtmlElement,
    question: HtmlElement,
    verdict: HtmlElement,
    short: HtmlElement,
    body: HtmlElement,
    line: HtmlElement,
    sentence: HtmlElement,
    go_to: HtmlElement,
    cautions: HtmlElement,
    why: HtmlElement,
    summary: HtmlElement,
    try_next: HtmlElement,
    rests_on: HtmlElement,
}

impl Row for Answer {
    type Item = (AnswerRow, bool);

    fn key(item: &Self::Item) -> String {
        key_of(item.0.question).to_owned()
    }

    fn make(item: &Self::Item) -> Result<Self> {
        let node = element("li", "answer")?;
        node.set_attribute("data-question", &Self::key(item))?;
        let head = element("p", "answer-head")?;
        let mark = element("span", "mark")?;
        mark.set_attribute("aria-hidden", "true")?;
        let question = element("span", "question")?;
        let verdict = element("strong", "verdict")?;
        let short = element("span", "told")?;
        for part in [&mark, &question, &verdict, &short] {
            head.append_child(part)?;
            head.append_with_str_1(" ")?;
        }
        let body = element("div", "answer-body")?;
        let line = element("p", "sentence")?;
        let sentence = element("span", "")?;
        let go_to = element("button", "go-to")?;
        go_to.set_attribute("type", "button")?;
        line.append_child(&sentence)?;
        line.append_with_str_1(" ")?;
        line.append_child(&go_to)?;
        let cautions = element("ul", "cautions plain-list")?;
        let why = element("details", "why")?;
        let summary = element("summary", "")?;
        let try_next = element("ul", "try")?;
        let rests_on = element("ul", "rests-on")?;
        for part in [&summary, &rests_on, &try_next] {
            why.append_child(part)?;
        }
        for part in [&line, &cautions, &why] {
            body.append_child(part)?;
        }
        node.append_child(&head)?;
        node.append_child(&body)?;
        Ok(Self {
            node,
            mark,
            question,
            verdict,
            short,
            body,
            line,
            sentence,
            go_to,
            cautions,
            why,
            summary,
            try_next,
            rests_on,
        })
    }

    fn root(&self) -> &Element {
        &self.node
    }

    fn patch(&mut self, old: Option<&Self::Item>, (new, open): &Self::Item) -> Result<()> {
        let old = old.map(|item| &item.0);
        let (name, sign) = sign_of(new.verdict);
        set_attribute(&self.node, "data-verdict", name)?;
        set_text(&self.mark, sign);
        set_text(&self.question, &new.question_text);
        set_text(&self.verdict, &new.with_was(&new.verdict_text, ", "));
        set_text(&self.short, &new.short);
        set_hidden(&self.short, *open && new.verdict != Verdict::Good)?;
        set_hidden(&self.body, !open)?;
        set_text(&self.sentence, &new.sentence);
        set_hidden(&self.go_to, new.go_to.is_none())?;
        if let Some(action) = &new.go_to {
            show(&self.go_to, action)?;
        }
        if old.is_none_or(|old| old.verdict != new.verdict) {
            self.fold(new.verdict)?;
        }
        if old.is_none_or(|old| old.cautions != new.cautions) {
            sentences(&self.cautions, "li", &new.cautions)?;
        }
        if old.is_none_or(|old| old.try_next != new.try_next) {
            sentences(&self.try_next, "li", &new.try_next)?;
        }
        if old.is_none_or(|old| old.rests_on != new.rests_on) {
            let texts: Vec<&str> = new
                .rests_on
                .iter()
                .map(|reason| reason.text.as_str())
                .collect();
            sentences(&self.rests_on, "li", &texts)?;
            for (at, reason) in (0u32..).zip(&new.rests_on) {
                if let Some(node) = self.rests_on.children().item(at)
                    && !reason.mark.is_empty()
                {
                    let mark = element("span", if reason.weak { "mark-weak" } else { "quiet" })?;
                    mark.set_text_content(Some(&format!(" ({})", reason.mark)));
                    node.append_child(&mark)?;
                }
            }
        }
        Ok(())
    }
}

impl Answer {
    /// An answer that is not good says all with its cautions; a good one is a line until it is opened.
    fn fold(&self, verdict: Verdict) -> Result<()> {
        let folded = verdict == Verdict::Good;
        set_text(&self.summary, words::reasons_head(folded));
        if folded {
            for part in [&self.cautions, &self.line] {
                self.why
                    .insert_before(part, self.summary.next_sibling().as_ref())?;
            }
        } else {
            self.body
                .insert_before(&self.line, self.body.first_child().as_ref())?;
            self.body.insert_before(&self.cautions, Some(&self.why))?;
        }
        Ok(())
    }
}

/// Lasting key of a question.
fn key_of(question: Question) -> &'static str {
    match question {
        Question::Clears => "clears",
        Question::Driven => "driven",
        Question::Locks => "locks",
    }
}

/// Name and sign of a verdict; the sign tells without color.
pub(super) fn sign_of(verdict: Verdict) -> (&'static str, &'static str) {
    match verdict {
        Verdict::Good => ("good", "✓"),
        Verdict::Marginal => ("marginal", "!"),
        Verdict::Bad => ("bad", "✕"),
        Verdict::NotShown => ("not-shown", "?"),
    }
}

/// Brings the answer to a question into sight on its sheet.
pub(crate) fn show_answer(question: Question) -> Result<()> {
    let all = document()?.query_selector_all(".answer")?;
    for node in all_of::<Element>(&all) {
        if node.get_attribute("data-question").as_deref() == Some(key_of(question)) {
            node.scroll_into_view();
        }
    }
    Ok(())
}
