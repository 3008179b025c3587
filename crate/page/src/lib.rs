//! The browser page. The only crate that knows the browser; everything it shows comes from the
//! others: events become messages, the state's page is patched into the document, its scenes are
//! painted, its effects performed.

mod dom;
mod effects;
mod error;
mod input;
mod listen;
mod paint;
mod panels;
mod runtime;

use crate::dom::{by_id, document, set_hidden, window};
use crate::effects::{Effects, Found, Store, chance, open_storage};
use crate::error::Result;
use crate::input::{MOTION_QUERY, media};
use crate::runtime::{Core, Port, panic};
use gearswing_app::{Program, Start};
use js_sys::Promise;
use wasm_bindgen::prelude::*;
use web_sys::HtmlElement;

/// Query that starts with the demo.
const FRESH: &str = "?fresh";

/// This build.
const PROGRAM: Program = Program {
    version: gearswing_version::VERSION,
    commit: gearswing_version::COMMIT,
    changed: gearswing_version::CHANGED,
};

/// Runs once when the module has been loaded.
#[wasm_bindgen(start)]
pub fn start() {
    panic::install(PROGRAM);
}

/// Reads what is stored and shows the page; the promise is kept when it stands.
#[wasm_bindgen]
pub fn begin() -> Promise {
    Promise::new(&mut |stands, fails| {
        let fail = fails.clone();
        let asked = open_storage(move |found| {
            let (end, value) = match run(found) {
                Ok(()) => (stands, JsValue::UNDEFINED),
                Err(error) => (fails, error.into()),
            };
            // a promise is told in no way that could fail
            let _ = end.call1(&JsValue::UNDEFINED, &value);
        });
        if let Err(error) = asked {
            let _ = fail.call1(&JsValue::UNDEFINED, &error.into());
        }
    })
}

fn run(stored: Found) -> Result<()> {
    let (start, store) = found(stored)?;
    let port = Port::default();
    let effects = Effects::new(store)?;
    // Sizes are measured on the page as it will stand.
    let page: HtmlElement = by_id("page")?;
    set_hidden(&page, false)?;
    let core = Core::new(&port, start, effects)?;
    port.run(core)?;
    input::register(&port)
}

/// What the page finds at its start.
fn found(stored: Found) -> Result<(Start, Store)> {
    let location = window()?.location();
    let address = location.href()?;
    let fragment = location.hash()?.trim_start_matches('#').to_owned();
    // Asked for after a breakdown: the stored files stay, but none is opened.
    let fresh = location.search()? == FRESH;
    let address = address
        .split(['#', '?'])
        .next()
        .unwrap_or_default()
        .to_owned();
    if fresh {
        window()?
            .history()?
            .replace_state_with_url(&JsValue::NULL, "", Some(&address))?;
    }
    let given = by_id::<HtmlElement>("given")
        .ok()
        .and_then(|node| node.text_content())
        .filter(|code| !fresh && fragment.is_empty() && !code.is_empty());
    let home = document()?.query_selector("meta[name=gearswing-home]")?;
    let start = Start {
        program: PROGRAM,
        index: if fresh { None } else { stored.index },
        files: stored.files,
        given: given.is_some(),
        fragment: given.or_else(|| (!fragment.is_empty()).then_some(fragment)),
        chance: chance(),
        address,
        home: home
            .and_then(|home| home.get_attribute("content"))
            .unwrap_or_default(),
        looking: window()?.history()?.state()?.as_string(),
        reduced_motion: media(MOTION_QUERY)?.matches(),
        storage_refused: stored.refused,
    };
    Ok((start, stored.store))
}
