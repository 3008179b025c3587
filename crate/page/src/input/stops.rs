//! Groups that are one stop of the Tab key: within one the arrow keys go from control to control.
//!
//! The group itself takes the focus and hands it on to the control that had it last; while one of its controls has
//! it, the group is no stop, so that Tab leaves it both ways.
use crate::dom::{all_of, closest, document, set_attribute, takes_room};
use crate::error::{Result, report};
use crate::listen::{Mode, listen};
use crate::runtime::Port;
use wasm_bindgen::JsCast;
use web_sys::{Element, FocusEvent, HtmlElement, KeyboardEvent};

/// Marks a group.
const GROUP: &str = "data-stop";
/// Marks the control of a group that had the focus last.
const LAST: &str = "data-last";

/// Registers the handlers.
pub(super) fn register(port: &Port) -> Result<()> {
    let page = document()?;
    let groups = page.query_selector_all(&format!("[{GROUP}]"))?;
    for group in all_of::<Element>(&groups) {
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
    port.keep(listen(
        &page,
        "keydown",
        Mode::ACTIVE,
        |event: KeyboardEvent| {
            if !event.default_prevented()
                && !event.ctrl_key()
                && !event.meta_key()
                && !event.alt_key()
            {
                report(go_on(&event));
            }
        },
    )?);
    Ok(())
}

/// Controls of a group that can be seen and pressed.
fn controls(within: &Element) -> Result<Vec<HtmlElement>> {
    let found = within.query_selector_all("button:enabled")?;
    let mut controls: Vec<HtmlElement> = all_of(&found);
    controls.retain(|control| takes_room(control));
    Ok(controls)
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

/// The focus has come to a control of a group, which alone is no stop then: one whose control went away with the
/// focus is one again.
fn come_to(group: &Element, control: &Element) -> Result<()> {
    let passed = document()?.query_selector_all(&format!("[{GROUP}][tabindex='-1']"))?;
    for other in all_of::<Element>(&passed) {
        set_attribute(&other, "tabindex", "0")?;
    }
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
    let row = all[at].closest("tr")?;
    let beside = |down: bool| -> Result<Option<HtmlElement>> {
        // the same place in the next row
        let Some(row) = &row else {
            let next = if down {
                at.checked_add(1)
            } else {
                at.checked_sub(1)
            };
            return Ok(next.and_then(|next| all.get(next)).cloned());
        };
        let next = match down {
            true => row.next_element_sibling(),
            false => row.previous_element_sibling(),
        };
        let column = controls(row)?.iter().position(|here| *here == all[at]);
        let (Some(next), Some(column)) = (next, column) else {
            return Ok(None);
        };
        let next = controls(&next)?;
        Ok(next.get(column).or(next.last()).cloned())
    };
    let next = match event.key().as_str() {
        "ArrowLeft" => at.checked_sub(1).and_then(|next| all.get(next)).cloned(),
        "ArrowRight" => all.get(at + 1).cloned(),
        "ArrowUp" => beside(false)?,
        "ArrowDown" => beside(true)?,
        _ => return Ok(()),
    };
    event.prevent_default();
    if let Some(control) = next {
        control.focus()?;
    }
    Ok(())
}
