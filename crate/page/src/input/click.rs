//! Presses on buttons: `data-act` names what a fixed button does, `data-action` an action of the
//! page's data.

use super::window::print;
use crate::dom::{all_of, by_id, data, document, takes_room};
use crate::error::{PageError, Result, report};
use crate::listen::{Mode, listen};
use crate::panels::{after_change, find_action, leave_files, open_files, show_answer};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::msg::{Compare, Direction, File, HangOn, History, Note, Play, Share, View};
use gearswing_app::words::browser::lacks;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, HtmlInputElement, MouseEvent, Node};

/// Zoom of one press (ratio).
const ZOOM: f64 = 1.25;

/// Registers one handler for all buttons.
pub(super) fn register(port: &Port) -> Result<()> {
    let to = port.clone();
    let body = document()?;
    port.keep(listen(
        &body,
        "click",
        Mode::ACTIVE,
        move |event: MouseEvent| {
            report(close_drops(
                event.target().and_then(|target| target.dyn_into().ok()),
            ));
            if let Some(id) = data(&event, "data-action") {
                let mut found = None;
                to.with_core(|core| {
                    found = find_action(core.page(), &id);
                    Ok(())
                });
                // None: it cannot be pressed now.
                if let Some(msg) = found {
                    let another = matches!(
                        msg,
                        Msg::File(File::New { .. } | File::Open { .. } | File::OpenDemo)
                    );
                    let asked = match msg {
                        Msg::View(View::GoTo { question, .. }) => Some(question),
                        _ => None,
                    };
                    let taken = matches!(msg, Msg::View(View::Sheet(_)));
                    let changed = matches!(
                        msg,
                        Msg::Compare(
                            Compare::TakeBack { .. }
                                | Compare::TakeAllBack
                                | Compare::Remove { .. }
                        )
                    );
                    to.send_now(msg);
                    if let Some(question) = asked {
                        report(show_answer(question));
                    }
                    if changed {
                        report(after_change());
                    }
                    if taken {
                        report(leave_menu());
                    }
                    if another {
                        report(leave_files());
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
        },
    )?);
    Ok(())
}

/// Closes the list of sheets; who works by keys stands on its head then.
fn leave_menu() -> Result<()> {
    let menu: Element = by_id("sheet-menu")?;
    if menu.has_attribute("open") {
        let head: HtmlElement = by_id("sheet-now")?;
        head.focus()?;
    }
    close_drops(None)
}

/// Closes the boxes of the top row, except one that holds `inside`.
pub(super) fn close_drops(inside: Option<Node>) -> Result<()> {
    let open = document()?.query_selector_all("details.drop[open]")?;
    for drop in all_of::<Element>(&open) {
        if !drop.contains(inside.as_ref()) {
            drop.remove_attribute("open")?;
        }
    }
    Ok(())
}

fn skip(id: &str) -> Result<()> {
    let node: HtmlElement = match id {
        "verdicts" => document()?
            .query_selector(".leg-name")?
            .and_then(|node| node.dyn_into().ok())
            .ok_or(PageError::Missing(lacks::ROOT))?,
        // the names of the sheets come before it, where they stand in a row
        "sheet" => match by_id::<HtmlElement>("sheet-names")? {
            names if takes_room(&names) => names,
            _ => by_id("sheet")?,
        },
        _ => by_id("drawing")?,
    };
    node.focus()?;
    Ok(())
}

/// Takes over the note that was written.
fn add_note(port: &Port, on: HangOn) -> Result<()> {
    let (text, by): (HtmlInputElement, HtmlInputElement) = (by_id("note-text")?, by_id("note-by")?);
    let said = text.value();
    if said.trim().is_empty() {
        text.set_value("");
        text.report_validity();
        return Ok(());
    }
    let count = || {
        let mut count = 0;
        port.with_core(|core| {
            count = core.page().changes.notes.len();
            Ok(())
        });
        count
    };
    let before = count();
    let by = by.value();
    port.send_now(Msg::Note(Note::Add { text: said, by, on }));
    // what was not taken stays as it was typed
    if count() > before {
        text.set_value("");
        close_drops(None)?;
    }
    Ok(())
}

fn step(direction: Direction) -> Msg {
    Msg::View(View::Step { direction })
}

/// What a fixed button does.
fn fixed(port: &Port, act: &str) -> Result<()> {
    let msg = match act {
        "undo" => Msg::History(History::Undo),
        "redo" => Msg::History(History::Redo),
        "fit" => Msg::View(View::Fit),
        "zoom-in" => Msg::View(View::Zoom { factor: ZOOM }),
        "zoom-out" => Msg::View(View::Zoom { factor: 1.0 / ZOOM }),
        "keep" => {
            close_drops(None)?;
            Msg::Compare(Compare::Keep)
        }
        "play" => Msg::Play(Play::Toggle),
        "sheet-height" => Msg::View(View::SheetHeight),
        "step-left" => step(Direction::Left),
        "step-right" => step(Direction::Right),
        "step-up" => step(Direction::Up),
        "step-down" => step(Direction::Down),
        "steps-done" => Msg::View(View::StepsDone),
        "mark-before" => Msg::Play(Play::Mark { up: false }),
        "mark-after" => Msg::Play(Play::Mark { up: true }),
        "give-up" => Msg::View(View::GiveUp),
        "export" => Msg::File(File::Export),
        "export-all" => Msg::File(File::ExportAll),
        "another" => {
            leave_files()?;
            Msg::File(File::AnotherAirplane)
        }
        "duplicate" => {
            leave_files()?;
            Msg::File(File::Duplicate)
        }
        "demo" => Msg::File(File::OpenDemo),
        "copy-link" => {
            // a note that is written and not added yet is meant to go with it
            if !by_id::<HtmlInputElement>("note-text")?
                .value()
                .trim()
                .is_empty()
            {
                add_note(port, HangOn::Gear)?;
            }
            // what comes of it is told on the sheet in hand
            close_drops(None)?;
            Msg::Share(Share::CopyLink)
        }
        "save-one-file" => {
            close_drops(None)?;
            Msg::Share(Share::SaveOneFile)
        }
        "note" => return add_note(port, HangOn::Gear),
        "note-here" => return add_note(port, HangOn::Here),
        "note-selected" => return add_note(port, HangOn::Selected),
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
        "own-gear" => return open_files(),
        "print" | "print-leg" => {
            close_drops(None)?;
            // what comes of it is the browser's own
            return print(port, act == "print-leg");
        }
        "save-picture" => {
            close_drops(None)?;
            Msg::File(File::SavePicture)
        }
        "import" => {
            let input: HtmlInputElement = by_id("import-file")?;
            input.click();
            return Ok(());
        }
        "detail" => {
            port.with_core(|core| {
                let in_hand = core.page().answers.iter().find(|leg| leg.selected);
                if let (Some(leg), Some(detail)) = (in_hand, &core.page().drawing.detail) {
                    port.send(Msg::View(View::GoTo {
                        leg: leg.leg,
                        question: detail.question,
                    }));
                }
                Ok(())
            });
            return Ok(());
        }
        "way" => {
            port.with_core(|core| {
                let down = !core.page().transport.way_down;
                port.send(Msg::Play(Play::Way { down }));
                Ok(())
            });
            return Ok(());
        }
        "compare" | "snap" | "slide" | "loads" | "fine-steps" => {
            port.with_core(|core| {
                let page = core.page();
                let toolbar = &page.toolbar;
                if act == "compare" {
                    let state = toolbar.previous.filter(|_| !toolbar.comparing);
                    port.send(Msg::Compare(Compare::With { state }));
                    return Ok(());
                }
                port.send(Msg::View(match act {
                    "fine-steps" => View::FineSteps {
                        on: page.steps.as_ref().is_some_and(|steps| !steps.fine),
                    },
                    "snap" => View::Snap { on: !toolbar.snap },
                    "slide" => View::Slide {
                        on: toolbar.slide != Some(true),
                    },
                    _ => View::Loads { on: !toolbar.loads },
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
