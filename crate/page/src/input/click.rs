//! Presses on buttons: `data-act` names what a fixed button does, `data-action` an action of the
//! page's data.

use crate::dom::{by_id, data, document};
use crate::error::{Result, report};
use crate::listen::{Mode, listen};
use crate::panels::{find_action, leave_files};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::msg::{File, History, Play, Share, View};
use wasm_bindgen::JsCast;
use web_sys::{
    Element, HtmlElement, HtmlInputElement, MouseEvent, Node, ScrollIntoViewOptions,
    ScrollLogicalPosition,
};

/// Zoom of one press (ratio).
const ZOOM: f64 = 1.25;

/// Registers one handler for all buttons.
pub(super) fn register(port: &Port) -> Result<()> {
    let to = port.clone();
    let body = document()?;
    let active = Mode {
        active: true,
        ..Mode::default()
    };
    port.keep(listen(&body, "click", active, move |event: MouseEvent| {
        report(close_drops(
            event.target().and_then(|target| target.dyn_into().ok()),
        ));
        if let Some(id) = data(&event, "data-action") {
            let mut found = None;
            to.with_core(|core| {
                found = find_action(core.page(), &id);
                Ok(())
            });
            // None: it cannot be pressed now, as the button of the leg that is shown already.
            if let Some(msg) = found {
                // what speaks of a place may stand far from the drawing
                let shows: Option<fn() -> Result<()>> = match msg {
                    Msg::View(View::GoTo { .. }) => Some(show_drawing),
                    Msg::View(View::GoToStop { .. }) => Some(|| skip("drawing-part")),
                    _ => None,
                };
                let another = matches!(
                    msg,
                    Msg::File(File::New { .. } | File::Open { .. } | File::OpenDemo)
                );
                to.send_now(msg);
                if another {
                    report(leave_files());
                }
                if let Some(show) = shows {
                    report(show());
                }
            }
        } else if let Some(id) = data(&event, "data-group") {
            to.send(Msg::View(View::ToggleGroup { id }));
        } else if let Some(id) = data(&event, "data-dismiss") {
            if let Ok(id) = id.parse() {
                to.send(Msg::View(View::Dismiss { id }));
            }
        } else if let Some(id) = data(&event, "data-skip") {
            // The fragment belongs to the link, so a skip link moves the focus only.
            event.prevent_default();
            report(skip(&id));
        } else if let Some(act) = data(&event, "data-act") {
            report(fixed(&to, &act));
        }
    })?);
    Ok(())
}

/// Closes the boxes of the top row, except one that holds `inside`.
pub(super) fn close_drops(inside: Option<Node>) -> Result<()> {
    let open = document()?.query_selector_all("details.drop[open]")?;
    for at in 0..open.length() {
        if let Some(node) = open.item(at)
            && !node.contains(inside.as_ref())
            && let Ok(drop) = node.dyn_into::<Element>()
        {
            drop.remove_attribute("open")?;
        }
    }
    Ok(())
}

fn skip(id: &str) -> Result<()> {
    let target = match id {
        "drawing-part" => "drawing",
        "data-part" => "data-part",
        _ => "answers",
    };
    let node: HtmlElement = by_id(target)?;
    node.focus()?;
    node.scroll_into_view();
    Ok(())
}

/// Scrolls so far that all of the drawing is seen.
fn show_drawing() -> Result<()> {
    let node: HtmlElement = by_id("drawing-box")?;
    let options = ScrollIntoViewOptions::new();
    options.set_block(ScrollLogicalPosition::Nearest);
    node.scroll_into_view_with_scroll_into_view_options(&options);
    Ok(())
}

/// What a fixed button does.
fn fixed(port: &Port, act: &str) -> Result<()> {
    let msg = match act {
        "undo" => Msg::History(History::Undo),
        "redo" => Msg::History(History::Redo),
        "fit" => Msg::View(View::Fit),
        "zoom-in" => Msg::View(View::Zoom { factor: ZOOM }),
        "zoom-out" => Msg::View(View::Zoom { factor: 1.0 / ZOOM }),
        "play" => Msg::Play(Play::Toggle),
        "give-up" => Msg::View(View::GiveUp),
        "export" => Msg::File(File::Export),
        "export-all" => Msg::File(File::ExportAll),
        "duplicate" => {
            leave_files()?;
            Msg::File(File::Duplicate)
        }
        "demo" => Msg::File(File::OpenDemo),
        "copy-link" => Msg::Share(Share::CopyLink),
        "open-link" => {
            let input: HtmlInputElement = by_id("open-link")?;
            let text = input.value();
            if text.trim().is_empty() {
                // the browser then shows what is missing beside the field
                input.set_value("");
                input.report_validity();
                return Ok(());
            }
            input.set_value("");
            close_drops(None)?;
            Msg::Share(Share::OpenLink { text })
        }
        "import" => {
            let input: HtmlInputElement = by_id("import-file")?;
            input.click();
            return Ok(());
        }
        "compare" | "snap" | "loads" => {
            port.with_core(|core| {
                let toolbar = &core.page().toolbar;
                port.send(Msg::View(match act {
                    "snap" => View::Snap { on: !toolbar.snap },
                    "loads" => View::Loads { on: !toolbar.loads },
                    _ => View::CompareFormer {
                        on: !toolbar.comparing,
                    },
                }));
                Ok(())
            });
            return Ok(());
        }
        _ => return Ok(()),
    };
    port.send_now(msg);
    Ok(())
}
