//! Event listeners that own their closure and go when they are dropped.

use crate::error::Result;
use crate::runtime::panic;
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::convert::FromWasmAbi;
use web_sys::{AddEventListenerOptions, Event, EventTarget};

/// A registered listener; dropping it removes it.
pub(crate) struct Listener {
    target: EventTarget,
    name: &'static str,
    capture: bool,
    closure: Closure<dyn Fn(Event)>,
}

/// How a listener is registered.
#[derive(Clone, Copy, Default)]
pub(crate) struct Mode {
    /// Called on the way down, which also sees events that don't bubble (focus, blur).
    pub(crate) capture: bool,
    /// May call `preventDefault` on wheel and touch events.
    pub(crate) active: bool,
}

impl Mode {
    /// Called on the way up, and may call `preventDefault` on wheel and touch events.
    pub(crate) const ACTIVE: Self = Self {
        capture: false,
        active: true,
    };
}

/// Calls `handler` for every event `name` of `target`, until the value returned is dropped. Events
/// of another type than `E` are passed over. After a panic nothing is called any more.
pub(crate) fn listen<E, H>(
    target: &EventTarget,
    name: &'static str,
    mode: Mode,
    mut handler: H,
) -> Result<Listener>
where
    E: JsCast + FromWasmAbi + 'static,
    H: FnMut(E) + 'static,
{
    add(
        target,
        name,
        mode,
        Box::new(move |event| {
            if let Ok(event) = event.dyn_into::<E>() {
                handler(event);
            }
        }),
    )
}

/// The part of [`listen`] that is the same for every type.
fn add(
    target: &EventTarget,
    name: &'static str,
    mode: Mode,
    handler: Box<dyn FnMut(Event)>,
) -> Result<Listener> {
    let handler = RefCell::new(handler);
    let closure = Closure::<dyn Fn(Event)>::new(move |event: Event| {
        // an event of its own making (a press that presses the file field) is not one to handle
        if let (false, Ok(mut handler)) = (panic::happened(), handler.try_borrow_mut()) {
            handler(event);
        }
    });
    let options = AddEventListenerOptions::new();
    options.set_passive(!mode.active);
    options.set_capture(mode.capture);
    target.add_event_listener_with_callback_and_add_event_listener_options(
        name,
        closure.as_ref().unchecked_ref(),
        &options,
    )?;
    Ok(Listener {
        target: target.clone(),
        name,
        capture: mode.capture,
        closure,
    })
}

impl Drop for Listener {
    fn drop(&mut self) {
        let removed = self.target.remove_event_listener_with_callback_and_bool(
            self.name,
            self.closure.as_ref().unchecked_ref(),
            self.capture,
        );
        if let Err(error) = removed {
            web_sys::console::warn_1(&error);
        }
    }
}
