//! Selects and sliders that stand outside of the data: units, theme, speed, scrub, file to import.

use crate::dom::by_id;
use crate::effects::read_file;
use crate::error::{Result, report};
use crate::listen::{Mode, listen};
use crate::panels::{airspeed_of, speed_of, theme_of, units_of, way_of};
use crate::runtime::Port;
use gearswing_app::msg::{Compare, Play, Share, View};
use gearswing_app::{Msg, Page};
use wasm_bindgen::JsCast;
use web_sys::{Event, EventTarget, HtmlInputElement, HtmlSelectElement};

/// Registers the handlers.
pub(super) fn register(port: &Port) -> Result<()> {
    for id in ["units", "units-more"] {
        select(port, id, |key, page| {
            Some(Msg::View(View::Units(units_of(key, page.toolbar.units)?)))
        })?;
    }
    select(port, "airspeed", |key, page| {
        Some(Msg::View(View::Units(airspeed_of(
            key,
            page.toolbar.units,
        )?)))
    })?;
    select(port, "theme", |key, _| {
        Some(Msg::View(View::Theme(theme_of(key)?)))
    })?;
    for id in ["speed", "speed-more"] {
        select(port, id, |key, _| {
            Some(Msg::Play(Play::Speed(speed_of(key)?)))
        })?;
    }
    select(port, "way-more", |key, _| {
        Some(Msg::Play(Play::Way { down: way_of(key)? }))
    })?;
    typed(port, "kept-name", |name| {
        Msg::Compare(Compare::Rename { name })
    })?;
    typed(port, "home", |text| Msg::Share(Share::Home { text }))?;
    scrub(port)?;
    import(port)
}

/// What an element of the page does on an event of it.
fn on<T>(
    port: &Port,
    id: &'static str,
    event: &'static str,
    act: impl Fn(&Port, &T) + 'static,
) -> Result<()>
where
    T: JsCast + Clone + AsRef<EventTarget> + 'static,
{
    let node: T = by_id(id)?;
    let (to, from) = (port.clone(), node.clone());
    let listener = move |_: Event| act(&to, &from);
    port.keep(listen(node.as_ref(), event, Mode::default(), listener)?);
    Ok(())
}

/// A select whose options are keys of messages.
fn select(
    port: &Port,
    id: &'static str,
    msg_of: impl Fn(&str, &Page) -> Option<Msg> + 'static,
) -> Result<()> {
    on(port, id, "change", move |to, from: &HtmlSelectElement| {
        to.with_core(|core| {
            if let Some(msg) = msg_of(&from.value(), core.page()) {
                to.send(msg);
            }
            Ok(())
        });
    })
}

/// A text that is taken over when it is typed.
fn typed(port: &Port, id: &'static str, msg: impl Fn(String) -> Msg + 'static) -> Result<()> {
    on(port, id, "change", move |to, from: &HtmlInputElement| {
        to.send(msg(from.value()));
    })
}

fn scrub(port: &Port) -> Result<()> {
    on(port, "scrub", "input", |to, from: &HtmlInputElement| {
        to.send(Msg::Play(Play::Scrub {
            progress: from.value_as_number(),
        }));
    })
}

fn import(port: &Port) -> Result<()> {
    on(
        port,
        "import-file",
        "change",
        |to, from: &HtmlInputElement| {
            if let Some(file) = from.files().and_then(|files| files.get(0)) {
                report(read_file(to, &file));
            }
            // Emptied, so that the same file can be chosen again.
            from.set_value("");
        },
    )
}
