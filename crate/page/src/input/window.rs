//! What the window tells: sizes, themes, other windows' writing, a new fragment, the end.

use crate::dom::{by_id, document, window};
use crate::effects::{DARK_QUERY, refresh_theme, sheet_of};
use crate::error::{PageError, Result, report};
use crate::listen::{Listener, Mode, listen};
use crate::panels::paper::put as put_on_paper;
use crate::runtime::{Observed, Port, panic};
use gearswing_app::Msg;
use gearswing_app::msg::{Play, Pointer, Share, StripPointer, View};
use gearswing_app::words::browser::lacks;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    Element, Event, IntersectionObserver, IntersectionObserverEntry, IntersectionObserverInit,
    MediaQueryList, MessageEvent, PopStateEvent, ResizeObserver, ResizeObserverEntry,
    VisibilityState,
};

/// The system's wish for less motion.
pub(crate) const MOTION_QUERY: &str = "(prefers-reduced-motion: reduce)";

/// How far from the window a canvas counts as seen.
const SIGHT_MARGIN: &str = "20%";

/// Registers the handlers.
pub(super) fn register(port: &Port) -> Result<()> {
    sizes(port)?;
    sight(port)?;
    printing(port)?;
    pixel_ratio(port)?;
    themes(port)?;
    motion(port)?;
    other_windows(port)?;
    fragment(port)?;
    newer(port)?;
    back_and_forward(port)?;
    leaving(port)
}

/// Sizes of the canvases' boxes.
fn sizes(port: &Port) -> Result<()> {
    let observed = observed(port, |to, entry: &ResizeObserverEntry| {
        let size = entry.content_rect();
        let (width_px, height_px) = (size.width(), size.height());
        // what is hidden has no size
        if width_px == 0.0 {
            return;
        }
        to.send(Msg::View(match entry.target().id().as_str() {
            "drawing-box" => View::DrawingSize {
                width_px,
                height_px,
            },
            "strip-box" => View::StripSize {
                width_px,
                height_px,
            },
            "detail" => View::DetailSize { side_px: width_px },
            _ => View::CurvesSize { width_px },
        }));
    });
    let observer = ResizeObserver::new(observed.as_ref().unchecked_ref())?;
    for id in [
        "drawing-box",
        "strip-box",
        "detail",
        "curves-box",
        "times-box",
    ] {
        observer.observe(&by_id::<Element>(id)?);
    }
    port.keep_observer(observer.into(), observed);
    Ok(())
}

/// Which of the canvases is in the window, or near it: one that is not is not painted.
fn sight(port: &Port) -> Result<()> {
    let observed = observed(port, |to, entry: &IntersectionObserverEntry| {
        to.see(&entry.target().id(), entry.is_intersecting());
    });
    let options = IntersectionObserverInit::new();
    options.set_root_margin(SIGHT_MARGIN);
    let observer =
        IntersectionObserver::new_with_options(observed.as_ref().unchecked_ref(), &options)?;
    for id in [
        "drawing",
        "strip",
        "detail-canvas",
        "curves",
        "times",
        "starters",
    ] {
        observer.observe(&by_id::<Element>(id)?);
    }
    port.keep_observer(observer.into(), observed);
    Ok(())
}

/// What an observer calls: `act` for each of its entries.
fn observed<T: JsCast>(port: &Port, act: impl Fn(&Port, &T) + 'static) -> Observed {
    let to = port.clone();
    Closure::new(move |entries: js_sys::Array| {
        if panic::happened() {
            return;
        }
        for entry in entries.iter() {
            if let Some(entry) = entry.dyn_ref() {
                act(&to, entry);
            }
        }
    })
}

/// Prints by the browser's own print, all legs or the one in hand.
pub(super) fn print(port: &Port, one_leg: bool) -> Result<()> {
    port.with_core(|core| {
        core.prints_one_leg(one_leg);
        Ok(())
    });
    Ok(window()?.print()?)
}

/// What is printed is a form of its own, of what has been typed up to now.
fn printing(port: &Port) -> Result<()> {
    let (to, on) = (port.clone(), window()?);
    port.keep(listen(
        &on,
        "beforeprint",
        Mode::default(),
        move |_: Event| {
            report(to.work_off());
            let now = js_sys::Date::new_0();
            let (month, day) = (now.get_month() + 1, now.get_date());
            let date = format!("{}-{month:02}-{day:02}", now.get_full_year());
            to.with_core(|core| put_on_paper(&core.form(&to, &date)?));
        },
    )?);
    let to = port.clone();
    port.keep(listen(
        &on,
        "afterprint",
        Mode::default(),
        move |_: Event| {
            to.with_core(|core| {
                core.prints_one_leg(false);
                put_on_paper(&[])
            });
        },
    )?);
    Ok(())
}

/// The pixel ratio changes with the screen and the browser's zoom; a query for one ratio tells only
/// that it is left, so each change makes the next query.
fn pixel_ratio(port: &Port) -> Result<()> {
    let slot: Rc<RefCell<Option<Listener>>> = Rc::default();
    arm_pixel_ratio(port, &slot)
}

fn arm_pixel_ratio(port: &Port, slot: &Rc<RefCell<Option<Listener>>>) -> Result<()> {
    let ratio = window()?.device_pixel_ratio();
    let query = media(&format!("(resolution: {ratio}dppx)"))?;
    let (to, next) = (port.clone(), slot.clone());
    let listener = listen(&query, "change", Mode::default(), move |_: Event| {
        to.repaint();
        // Not from inside of the listener that is to be replaced.
        let (to, next) = (to.clone(), next.clone());
        let again = Closure::once_into_js(move || report(arm_pixel_ratio(&to, &next)));
        let waited = window()
            .and_then(|window| Ok(window.set_timeout_with_callback(again.unchecked_ref())?));
        report(waited.map(|_| ()));
    })?;
    *slot.borrow_mut() = Some(listener);
    Ok(())
}

fn themes(port: &Port) -> Result<()> {
    let query = media(DARK_QUERY)?;
    let to = port.clone();
    port.keep(listen(
        &query,
        "change",
        Mode::default(),
        move |_: Event| {
            report(refresh_theme());
            to.with_core(|core| core.read_theme());
            to.repaint();
        },
    )?);
    Ok(())
}

fn motion(port: &Port) -> Result<()> {
    let query = media(MOTION_QUERY)?;
    let (to, now) = (port.clone(), query.clone());
    port.keep(listen(
        &query,
        "change",
        Mode::default(),
        move |_: Event| {
            to.send(Msg::Play(Play::ReducedMotion { on: now.matches() }));
        },
    )?);
    Ok(())
}

/// Other windows tell what they have written.
fn other_windows(port: &Port) -> Result<()> {
    let mut channel = None;
    port.with_store(|store| channel = store.channel());
    // in a browser without it, what another window has written is found when this one writes
    let Some(channel) = channel else {
        return Ok(());
    };
    let to = port.clone();
    port.keep(listen(
        &channel,
        "message",
        Mode::default(),
        move |event: MessageEvent| {
            if let Ok(ids) = event.data().dyn_into::<js_sys::Array>() {
                to.with_store(|store| store.written_elsewhere(&to, &ids));
            }
        },
    )?);
    Ok(())
}

/// A link pasted into the address bar of this page changes the fragment only.
fn fragment(port: &Port) -> Result<()> {
    let (to, on) = (port.clone(), window()?);
    port.keep(listen(
        &on,
        "hashchange",
        Mode::default(),
        move |_: Event| {
            let found = window().and_then(|window| Ok(window.location().hash()?));
            match found {
                Ok(hash) => {
                    let text = hash.trim_start_matches('#').to_owned();
                    let mut own = text.is_empty();
                    to.with_core(|core| {
                        own |= core.effects().is_own_fragment(&text);
                        Ok(())
                    });
                    if !own {
                        to.send(Msg::Share(Share::OpenLink { text }));
                    }
                }
                Err(error) => report(Err(error)),
            }
        },
    )?);
    Ok(())
}

/// The start script tells that a newer version of the page has been fetched.
fn newer(port: &Port) -> Result<()> {
    let (to, on) = (port.clone(), window()?);
    port.keep(listen(
        &on,
        "gearswing-newer",
        Mode::default(),
        move |_: Event| {
            to.send(Msg::Share(Share::NewerWaits));
        },
    )?);
    Ok(())
}

/// The browser's back and forward go from sheet to sheet; what is open and typed stays.
fn back_and_forward(port: &Port) -> Result<()> {
    let (to, on) = (port.clone(), window()?);
    port.keep(listen(
        &on,
        "popstate",
        Mode::default(),
        move |event: PopStateEvent| {
            if let Some(sheet) = sheet_of(&event.state()) {
                to.with_core(|core| core.effects().keep_fragment());
                to.send(Msg::View(View::Sheet(sheet)));
            }
        },
    )?);
    Ok(())
}

/// Whatever takes the person away, a drag under way ends as if released: the release may never
/// be heard of.
fn let_go(port: &Port) {
    let down = port.pointers_down();
    for id in &down {
        port.lifted(*id);
    }
    port.let_go();
    report(port.work_off());
    for id in down {
        port.send(Msg::Pointer(Pointer::Cancel { id }));
    }
    port.send(Msg::StripPointer(StripPointer::End));
}

/// Whatever ends the page, what waits is written before.
fn leaving(port: &Port) -> Result<()> {
    let (to, on) = (port.clone(), window()?);
    port.keep(listen(&on, "blur", Mode::default(), move |_: Event| {
        let_go(&to);
    })?);
    let (to, on) = (port.clone(), window()?);
    port.keep(listen(
        &on,
        "pagehide",
        Mode::default(),
        move |_: Event| {
            let_go(&to);
            to.store_now(true);
        },
    )?);
    let (to, page) = (port.clone(), document()?);
    port.keep(listen(
        &page,
        "visibilitychange",
        Mode::default(),
        move |_: Event| {
            if document().is_ok_and(|page| page.visibility_state() == VisibilityState::Hidden) {
                let_go(&to);
                to.store_now(false);
            }
        },
    )?);
    Ok(())
}

/// A media query.
pub(crate) fn media(query: &str) -> Result<MediaQueryList> {
    window()?
        .match_media(query)
        .map_err(|error: JsValue| PageError::from(error))?
        .ok_or(PageError::Missing(lacks::MEDIA_QUERIES))
}
