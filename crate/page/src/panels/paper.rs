//! The form on paper: made as the browser is about to print, and gone when it has.

use crate::dom::{by_id, document, element};
use crate::error::Result;
use gearswing_app::paper::{Block, Figure, NAMESPACE, Node};
use web_sys::{Element, HtmlElement};

/// Puts a form on the page, in the place of the one before.
pub(crate) fn put(blocks: &[Block]) -> Result<()> {
    let paper: Element = by_id("paper")?;
    paper.set_text_content(None);
    set(&paper, blocks)
}

/// Sets blocks one after the other.
fn set(paper: &Element, blocks: &[Block]) -> Result<()> {
    for block in blocks {
        let node: Element = match block {
            Block::Title { text, new_page } => {
                let class = if *new_page { "new-page" } else { "" };
                said("h1", class, text)?.into()
            }
            Block::Heading(text) => said("h2", "", text)?.into(),
            Block::Text(text) => said("p", "", text)?.into(),
            Block::Item(text) => said("p", "item", text)?.into(),
            Block::Rows(rows) => table(rows.iter().map(Vec::as_slice))?,
            Block::Measured((title, rows)) => {
                let part = element("section", "")?;
                part.append_child(said("h2", "", title)?.as_ref())?;
                part.append_child(table(rows.iter().map(<[_; 2]>::as_slice))?.as_ref())?;
                columns(paper)?.append_child(&part)?;
                continue;
            }
            Block::Figure(figure) => picture(figure, "")?,
            Block::Code(figure) => picture(figure, "code")?,
            Block::Details(figures) => {
                let row: Element = element("div", "details")?.into();
                for figure in figures {
                    row.append_child(picture(figure, "")?.as_ref())?;
                }
                row
            }
            Block::Whole(blocks) => {
                let whole: Element = element("div", "whole")?.into();
                set(&whole, blocks)?;
                whole
            }
            Block::Lines(names) => {
                let lines = element("div", "lines")?;
                for name in names {
                    lines.append_child(said("span", "", name)?.as_ref())?;
                }
                lines.into()
            }
        };
        paper.append_child(&node)?;
    }
    Ok(())
}

fn said(tag: &'static str, class: &str, text: &str) -> Result<HtmlElement> {
    let node = element(tag, class)?;
    node.set_text_content(Some(text));
    Ok(node)
}

/// The columns that stand last on the form, or new ones.
fn columns(paper: &Element) -> Result<Element> {
    let last = paper.last_element_child();
    if let Some(last) = last.filter(|last| last.class_name() == "columns") {
        return Ok(last);
    }
    let new: Element = element("div", "columns")?.into();
    paper.append_child(&new)?;
    Ok(new)
}

fn table<'r>(rows: impl Iterator<Item = &'r [String]>) -> Result<Element> {
    let table = element("table", "")?;
    for cells in rows {
        let row = element("tr", "")?;
        for cell in cells {
            row.append_child(said("td", "", cell)?.as_ref())?;
        }
        table.append_child(&row)?;
    }
    Ok(table.into())
}

/// A picture with what stands under it.
fn picture(figure: &Figure, class: &str) -> Result<Element> {
    let node = element("figure", class)?;
    node.append_child(drawn(&figure.picture)?.as_ref())?;
    node.append_child(said("figcaption", "", &figure.caption)?.as_ref())?;
    Ok(node.into())
}

fn drawn(node: &Node) -> Result<Element> {
    let made = document()?.create_element_ns(Some(NAMESPACE), node.tag)?;
    // the name space is no attribute here
    for (name, value) in node.attributes.iter().filter(|(name, _)| *name != "xmlns") {
        made.set_attribute(name, value)?;
    }
    if !node.text.is_empty() {
        made.set_text_content(Some(&node.text));
    }
    for child in &node.nodes {
        made.append_child(drawn(child)?.as_ref())?;
    }
    Ok(made)
}
