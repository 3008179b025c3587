//! What a handler holds of the running page: it can send messages and ask for a frame.

use super::{Core, panic, queue::Queue};
use crate::dom::window;
use crate::effects::Store;
use crate::error::{PageError, Result, report};
use crate::listen::Listener;
use gearswing_app::Msg;
use gearswing_app::words::browser::lacks;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::JsValue;
use wasm_bindgen::closure::Closure;
use web_sys::Element;

/// What the browser calls at a frame.
type OnFrame = Closure<dyn FnMut(f64)>;

/// What an observer calls.
pub(crate) type Observed = Closure<dyn FnMut(js_sys::Array)>;

/// A way into the running page. The page lives as long as its window, so the ring of references
/// (listeners hold ports, ports hold the listeners) is never to be taken down.
#[derive(Clone, Default)]
pub(crate) struct Port {
    shared: Rc<Shared>,
}

#[derive(Default)]
struct Shared {
    queue: RefCell<Queue>,
    core: RefCell<Option<Core>>,
    /// A frame is asked for and has not come yet.
    waiting: Cell<bool>,
    /// Nothing is worked off: a button or a field is being pressed.
    held: Cell<bool>,
    /// Something is to be painted though no message came (theme, pixel ratio).
    repaint: Cell<bool>,
    on_frame: RefCell<Option<OnFrame>>,
    /// The timer of the next write to storage runs.
    storing: Cell<bool>,
    on_store: RefCell<Option<Closure<dyn FnMut()>>>,
    listeners: RefCell<Vec<Listener>>,
    observers: RefCell<Vec<(JsValue, Observed)>>,
}

impl Port {
    /// Starts the loop over a core, which `send` then serves.
    pub(crate) fn run(&self, core: Core) -> Result<()> {
        let port = self.clone();
        let on_frame = Closure::<dyn FnMut(f64)>::new(move |time_ms: f64| {
            if !panic::happened() {
                report(port.frame(time_ms));
            }
        });
        let port = self.clone();
        let on_store = Closure::<dyn FnMut()>::new(move || {
            port.shared.storing.set(false);
            if !panic::happened() {
                port.with_store(|store| store.write(&port));
            }
        });
        *self.shared.on_frame.borrow_mut() = Some(on_frame);
        *self.shared.on_store.borrow_mut() = Some(on_store);
        *self.shared.core.borrow_mut() = Some(core);
        self.repaint();
        Ok(())
    }

    /// Puts a message in the queue, for the next frame.
    pub(crate) fn send(&self, msg: Msg) {
        self.shared.queue.borrow_mut().push(msg);
        report(self.ask_frame());
    }

    /// Puts a message in the queue and works the queue off at once, without painting: for presses
    /// whose effect the browser allows only inside of the press (clipboard, download), and for the
    /// last moment of the page.
    pub(crate) fn send_now(&self, msg: Msg) {
        self.send(msg);
        report(self.work_off());
    }

    /// Works the queue off at once, without painting; not while something is being pressed.
    pub(crate) fn work_off(&self) -> Result<()> {
        if self.shared.held.get() {
            return Ok(());
        }
        // Inside of a turn the core is taken: what came is worked off by the frame asked for.
        let Ok(mut core) = self.shared.core.try_borrow_mut() else {
            return Ok(());
        };
        match core.as_mut() {
            Some(core) => core.turn(self, || self.shared.queue.borrow_mut().pop()),
            None => Ok(()),
        }
    }

    /// A pointer goes down. Until it is up, what answers while it is dragged (`live`) stays where it
    /// is, and under anything else the page stands still.
    pub(crate) fn pressed(&self, id: i32, pressed: Element, live: bool) {
        self.with_core(|core| {
            if core.steady().down().is_empty() {
                self.shared.held.set(!live);
            }
            core.steady().press(id, pressed, live)
        });
    }

    /// A pointer is up; whether it was down.
    pub(crate) fn lifted(&self, id: i32) -> bool {
        let mut was_down = false;
        self.with_core(|core| {
            was_down = core.steady().lifted(id)?;
            Ok(())
        });
        was_down
    }

    /// Whether a pointer is down.
    pub(crate) fn any_down(&self) -> bool {
        !self.pointers_down().is_empty()
    }

    /// Pointers that are down.
    pub(crate) fn pointers_down(&self) -> Vec<i32> {
        let mut down = Vec::new();
        self.with_core(|core| {
            down.extend_from_slice(core.steady().down());
            Ok(())
        });
        down
    }

    /// The page goes on.
    pub(crate) fn let_go(&self) {
        if self.shared.held.replace(false) {
            report(self.ask_frame());
        }
    }

    /// Paints at the next frame, whether a message comes or not.
    pub(crate) fn repaint(&self) {
        self.shared.repaint.set(true);
        report(self.ask_frame());
    }

    /// Writes everything that waits to be stored, as soon as what is under way is over. `ending`: the
    /// page may end before that; it is left for the next start as well.
    pub(crate) fn store_now(&self, ending: bool) {
        report(self.work_off());
        self.with_core(Core::note_looking);
        self.with_store(|store| {
            store.write(self);
            if ending {
                store.leave();
            }
        });
    }

    /// Writes what waits to be stored in a while, if that is not coming already.
    pub(crate) fn store_in(&self, wait_ms: f64) {
        if !self.shared.storing.replace(true) {
            report(self.start_store_timer(wait_ms));
        }
    }

    fn start_store_timer(&self, wait_ms: f64) -> Result<()> {
        if let Some(closure) = self.shared.on_store.borrow().as_ref() {
            // a wait of some seconds at most
            let wait_ms = wait_ms.ceil() as i32;
            window()?.set_timeout_with_callback_and_timeout_and_arguments_0(
                closure.as_ref().unchecked_ref(),
                wait_ms,
            )?;
        }
        Ok(())
    }

    /// Runs something on the store between turns.
    pub(crate) fn with_store(&self, act: impl FnOnce(&mut Store)) {
        self.with_core(|core| {
            act(core.effects().store());
            Ok(())
        });
    }

    /// Runs something on the core between turns; nothing happens inside of a turn.
    pub(crate) fn with_core(&self, act: impl FnOnce(&mut Core) -> Result<()>) {
        if let Ok(mut core) = self.shared.core.try_borrow_mut()
            && let Some(core) = core.as_mut()
        {
            report(act(core));
        }
    }

    /// Keeps a listener for the life of the page.
    pub(crate) fn keep(&self, listener: Listener) {
        self.shared.listeners.borrow_mut().push(listener);
    }

    /// Keeps an observer for the life of the page.
    pub(crate) fn keep_observer(&self, observer: JsValue, observed: Observed) {
        self.shared
            .observers
            .borrow_mut()
            .push((observer, observed));
    }

    /// Notes whether a canvas is in the window; one that comes in is painted at the next frame.
    pub(crate) fn see(&self, id: &str, seen: bool) {
        self.with_core(|core| core.see(id, seen));
        if seen {
            report(self.ask_frame());
        }
    }

    fn ask_frame(&self) -> Result<()> {
        if self.shared.waiting.get() {
            return Ok(());
        }
        if let Some(closure) = self.shared.on_frame.borrow().as_ref() {
            window()?.request_animation_frame(closure.as_ref().unchecked_ref())?;
            self.shared.waiting.set(true);
        }
        Ok(())
    }

    fn frame(&self, time_ms: f64) -> Result<()> {
        self.shared.waiting.set(false);
        if self.shared.held.get() {
            return Ok(());
        }
        let more = {
            let mut core = self
                .shared
                .core
                .try_borrow_mut()
                .map_err(|_| PageError::Missing(lacks::FREE_CORE))?;
            let Some(core) = core.as_mut() else {
                return Ok(());
            };
            if core.wants_time() {
                self.shared.queue.borrow_mut().push(Msg::Frame {
                    time_s: time_ms / 1000.0,
                });
            }
            core.turn(self, || self.shared.queue.borrow_mut().pop())?;
            core.steady().forget();
            core.paint(self.shared.repaint.take())?;
            core.wants_frame()
        };
        if more || !self.shared.queue.borrow().is_empty() {
            self.ask_frame()?;
        }
        Ok(())
    }
}
