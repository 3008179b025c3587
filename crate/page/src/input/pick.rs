//! Selects and sliders that stand outside of the data: units, theme, speed, scrub, file to import.

use crate::dom::by_id;
use crate::effects::read_file;
use crate::error::{Result, report};
use crate::listen::{Mode, listen};
use crate::panels::{airspeed_of, speed_of, theme_of, units_of};
use crate::runtime::Port;
use gearswing_app::msg::{Compare, Play, View};
use gearswing_app::{Msg, Page};
use web_sys::{Event, HtmlInputElement, HtmlSelectElement};

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
    name(port)?;
    scrub(port)?;
    import(port)
}

/// A select whose options are keys of messages.
fn select(
    port: &Port,
    id: &'static str,
    msg_of: impl Fn(&str, &Page) -> Option<Msg> + 'static,
) -> Result<()> {
    let node: HtmlSelectElement = by_id(id)?;
    let (to, from) = (port.clone(), node.clone());
    port.keep(listen(
        &node,
        "change",
        Mode::default(),
        move |_: Event| {
            to.with_core(|core| {
                if let Some(msg) = msg_of(&from.value(), core.page()) {
                    to.send(msg);
                }
                Ok(())
            });
        },
    )?);
    Ok(())
}

/// The name of the state compared with.
fn name(port: &Port) -> Result<()> {
    let node: HtmlInputElement = by_id("kept-name")?;
    let (to, from) = (port.clone(), node.clone());
    port.keep(listen(
        &node,
        "change",
        Mode::default(),
        move |_: Event| {
            to.send(Msg::Compare(Compare::Rename { name: from.value() }));
        },
    )?);
    Ok(())
}

fn scrub(port: &Port) -> Result<()> {
    let node: HtmlInputElement = by_id("scrub")?;
    let (to, from) = (port.clone(), node.clone());
    port.keep(listen(&node, "input", Mode::default(), move |_: Event| {
        to.send(Msg::Play(Play::Scrub {
            progress: from.value_as_number(),
        }));
    })?);
    Ok(())
}

fn import(port: &Port) -> Result<()> {
    let node: HtmlInputElement = by_id("import-file")?;
    let (to, from) = (port.clone(), node.clone());
    port.keep(listen(
        &node,
        "change",
        Mode::default(),
        move |_: Event| {
            if let Some(file) = from.files().and_then(|files| files.get(0)) {
                report(read_file(&to, &file));
            }
            // Emptied, so that the same file can be chosen again.
            from.set_value("");
        },
    )?);
    Ok(())
}
