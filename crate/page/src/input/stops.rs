//! Groups that are one stop of the Tab key: within one the arrow keys go from control to control.
//!
//! The group itself takes the focus and hands it on to the control that had it last; while one of its controls has
//! it, the group is no stop, so that Tab leaves it both ways.
use crate::dom::{closest, document, set_attribute};
use crate::error::{Result, report};
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use wasm_bindgen::JsCast;
use web_sys::{Element, FocusEvent, HtmlElement, KeyboardEvent};

/// Marks a group.
const GROUP: &str = "data-stop";
/// Marks the control of a group that had the focus last.
const LAST: &str = "data-last";

const ACTIVE: Mode = Mode {
    capture: false,
    active: true,
};

/// Registers the handlers.
pub(super) fn register(port: &Port) -> Result<()> {
    let page = document()?;
    let groups = page.query_selector_all(&format!("[{GROUP}]"))?;
    for at in 0..groups.length() {
        let group: Option<Element> = groups.item(at).and_then(|node| node.dyn_into().ok());
        let Some(group) = group else { continue };
        // not the one below, which hears of the control that this one hands the focus on to
        let of = group.clone();
        let hand_on = move |_: FocusEvent| report(hand_on(&of));
        port.keep(listen(&group, "focus", Mode::default(), hand_on)?);
    }
    port.keep(listen(
        &page,
        "focusin",
        Mode::default(),
        |event: FocusEvent| {
            if let Some(group) = closest(&event, GROUP) {
                let target = event.target();
                let control = target.and_then(|target| target.dyn_into::<Element>().ok());
                if let Some(control) = control.filter(|control| *control != group) {
                    report(come_to(&group, &control));
                }
            }
        },
    )?);
    port.keep(listen(
        &page,
        "focusout",
        Mode::default(),
        |event: FocusEvent| {
            if let Some(group) = closest(&event, GROUP) {
                report(set_attribute(&group, "tabindex", "0"));
            }
        },
    )?);
    port.keep(listen(&page, "keydown", ACTIVE, |event: KeyboardEvent| {
        if !event.default_prevented() && !event.ctrl_key() && !event.meta_key() {
            report(go_on(&event));
        }
    })?);
    Ok(())
}

/// Controls of a group that can be seen.
fn controls(within: &Element) -> Result<Vec<HtmlElement>> {
    let found = within.query_selector_all("button")?;
    let nodes = (0..found.length()).filter_map(|at| found.item(at)?.dyn_into().ok());
    Ok(nodes
        .filter(|node: &HtmlElement| node.get_client_rects().length() > 0)
        .collect())
}

/// The focus has come to a group: to the control that had it last, or to the first.
fn hand_on(group: &Element) -> Result<()> {
    let controls = controls(group)?;
    let had = controls.iter().find(|control| control.has_attribute(LAST));
    if let Some(control) = had.or(controls.first()) {
        control.focus()?;
    }
    Ok(())
}

/// The focus has come to a control of a group.
fn come_to(group: &Element, control: &Element) -> Result<()> {
    if let Some(last) = group.query_selector(&format!("[{LAST}]"))? {
        last.remove_attribute(LAST)?;
    }
    control.set_attribute(LAST, "")?;
    set_attribute(group, "tabindex", "-1")
}

/// An arrow key within a group.
fn go_on(event: &KeyboardEvent) -> Result<()> {
    let Some(group) = closest(event, GROUP) else {
        return Ok(());
    };
    let all = controls(&group)?;
    let Some(at) = all.iter().position(|control| control.has_attribute(LAST)) else {
        return Ok(());
    };
    // up and down go by rows where there are some
    let row = all
        .get(at)
        .and_then(|here| here.closest("tr").ok().flatten());
    let row = match row {
        Some(row) => controls(&row)?.len(),
        None => 1,
    };
    let next = match event.key().as_str() {
        "ArrowLeft" => at.checked_sub(1),
        "ArrowRight" => Some(at + 1),
        "ArrowUp" => at.checked_sub(row),
        "ArrowDown" => Some(at + row),
        _ => return Ok(()),
    };
    event.prevent_default();
    if let Some(control) = next.and_then(|next| all.get(next)) {
        control.focus()?;
    }
    Ok(())
}
