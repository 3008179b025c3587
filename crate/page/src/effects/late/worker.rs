//! The second module, fetched when there is first something for it to do.

use crate::error::{PageError, Result};
use crate::listen::{Listener, Mode, listen};
use crate::runtime::Port;
use gearswing_app::Msg;
use gearswing_app::msg;
use gearswing_app::words::working::{TWO_BUILDS, UNREADABLE, no_worker};
use gearswing_work::from_bytes;
use js_sys::{Array, Uint8Array};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{ErrorEvent, Event, MessageEvent, WorkerOptions, WorkerType};

/// Its script.
const SCRIPT: &str = "worker.js";

/// The thread, while there is one.
#[derive(Default)]
pub(in crate::effects) struct Late {
    thread: Option<Thread>,
    /// Why the last one is to be left, once it has told.
    broken: Rc<Cell<bool>>,
}

struct Thread {
    worker: web_sys::Worker,
    /// What was asked last.
    asked: Rc<Cell<u64>>,
    _listeners: [Listener; 2],
}

impl Late {
    /// Asks for what comes after the answers of a gear, given as the text of its file.
    pub(in crate::effects) fn ask(&mut self, port: &Port, of: u64, text: &str) {
        if self.broken.take() {
            self.leave();
        }
        let thread = match self.thread.take() {
            Some(thread) => thread,
            None => match Thread::begin(port, &self.broken) {
                Ok(thread) => thread,
                Err(error) => {
                    let reason = error.to_string();
                    port.send(Msg::Late(msg::Late::Failed { of, reason }));
                    return;
                }
            },
        };
        thread.asked.set(of);
        // revisions are counted up from one: exact as a number
        let question = Array::of2(&JsValue::from_f64(of as f64), &JsValue::from_str(text));
        if let Err(error) = thread.worker.post_message(&question) {
            let reason = PageError::Browser(error).to_string();
            port.send(Msg::Late(msg::Late::Failed { of, reason }));
        }
        self.thread = Some(thread);
    }

    /// Ends the thread with what is under way on it; the next question begins another.
    pub(in crate::effects) fn leave(&mut self) {
        if let Some(thread) = self.thread.take() {
            thread.worker.terminate();
        }
    }
}

impl Thread {
    fn begin(port: &Port, broken: &Rc<Cell<bool>>) -> Result<Self> {
        let options = WorkerOptions::new();
        options.set_type(WorkerType::Module);
        let worker = web_sys::Worker::new_with_options(SCRIPT, &options)?;
        let asked = Rc::new(Cell::new(0));
        let fail = {
            let (port, asked, broken) = (port.clone(), Rc::clone(&asked), Rc::clone(broken));
            move |of: Option<u64>, reason: String| {
                // that of an earlier question is nothing to this one
                if of.is_none_or(|of| of == asked.get()) {
                    broken.set(true);
                }
                let of = of.unwrap_or_else(|| asked.get());
                port.send(Msg::Late(msg::Late::Failed { of, reason }));
            }
        };
        let to = port.clone();
        let failed = fail.clone();
        let answered = listen(
            &worker,
            "message",
            Mode::default(),
            move |event: MessageEvent| match read(&event.data()) {
                Ok(late) => to.send(Msg::Late(late)),
                Err((of, reason)) => failed(of, reason),
            },
        )?;
        // a script that is not there, or a breakdown: only the second has words
        let broke = listen(&worker, "error", Mode::default(), move |event: Event| {
            let error = event.dyn_ref::<ErrorEvent>().map(ErrorEvent::message);
            fail(None, error.unwrap_or_else(|| no_worker(SCRIPT)));
        })?;
        Ok(Self {
            worker,
            asked,
            _listeners: [answered, broke],
        })
    }
}

/// What the thread has sent: the question, its build, and a result, nothing, or what went wrong. An error tells the
/// question too, where it is known.
fn read(data: &JsValue) -> std::result::Result<msg::Late, (Option<u64>, String)> {
    let unreadable = |of| (of, UNREADABLE.to_owned());
    let parts: &Array = data.dyn_ref().ok_or_else(|| unreadable(None))?;
    let of = parts.get(0).as_f64().ok_or_else(|| unreadable(None))? as u64;
    let found = parts.get(2);
    if let Some(reason) = found.as_string() {
        return Err((Some(of), reason));
    }
    if parts.get(1).as_string() != Some(gearswing_version::build()) {
        return Err((Some(of), TWO_BUILDS.to_owned()));
    }
    match found.dyn_ref::<Uint8Array>() {
        None => Ok(msg::Late::Over { of }),
        Some(bytes) => {
            let found = from_bytes(&bytes.to_vec()).map_err(|_| unreadable(Some(of)))?;
            let found = found.into();
            Ok(msg::Late::Found { of, found })
        }
    }
}
