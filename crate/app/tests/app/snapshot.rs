//! What the demo's page says, as text to be read over by a person when it changes.
use std::fmt::Write;

use gearswing_app::msg::{self, Msg};

use crate::support::Desk;

fn text_of(desk: &Desk) -> String {
    let page = desk.page();
    let mut out = String::new();
    for leg in &page.answers {
        let _ = writeln!(
            out,
            "{}{}",
            leg.name,
            if leg.selected { " (shown)" } else { "" }
        );
        for answer in &leg.answers {
            let _ = writeln!(
                out,
                "  {} {} [{}]\n    {}",
                answer.question_text, answer.verdict_text, answer.short, answer.sentence
            );
            if let Some(was) = &answer.was {
                let _ = writeln!(out, "    {was}");
            }
        }
    }
    let _ = writeln!(out, "{}", page.transport.text);
    for mark in &page.transport.marks {
        let _ = writeln!(
            out,
            "  mark {:.3} {} {}",
            mark.progress, mark.text, mark.bad
        );
    }
    for row in &page.readout {
        let before = row
            .before
            .as_deref()
            .map_or_else(String::new, |before| format!(" | before {before}"));
        let _ = writeln!(out, "{}: {}{before}", row.label, row.value);
    }
    let _ = writeln!(out, "{}", page.drawing.label);
    for line in page
        .drawing
        .description
        .iter()
        .chain(&page.curves.description)
    {
        let _ = writeln!(out, "- {line}");
    }
    for group in &page.groups {
        let _ = writeln!(out, "[{}] {} – {}", group.id, group.title, group.summary);
        for row in &group.rows {
            let _ = writeln!(
                out,
                "  {} = {} {} ({}) {}",
                row.label, row.value, row.unit, row.range, row.echo
            );
        }
    }
    out
}

#[test]
fn the_demo_reads() {
    let mut desk = Desk::demo();
    insta::assert_snapshot!("demo", text_of(&desk));
    let state = desk.page().toolbar.previous;
    desk.send(Msg::Compare(msg::Compare::With { state }));
    desk.send(Msg::View(msg::View::Loads { on: true }));
    desk.send(Msg::View(msg::View::Units(
        gearswing_units::UnitChoice::METRIC,
    )));
    desk.send(Msg::Field(msg::Field::Focus {
        path: "legs[2].wheel.tire.diameter_m".to_owned(),
    }));
    insta::assert_snapshot!("demo_metric_compared", text_of(&desk));
}
