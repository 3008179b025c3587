//! In the page itself, in slices between two frames.

use crate::dom::window;
use crate::error::{Result, report};
use crate::runtime::{Port, panic};
use gearswing_app::Msg;
use gearswing_app::msg;
use gearswing_app::words::working::UNREADABLE;
use gearswing_work::{Part, Working};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

/// Longest slice (ms): presses and keys come between two of them.
const SLICE_MS: f64 = 40.0;

/// What is under way: of which question, and whether it still goes on.
#[derive(Default)]
struct UnderWay {
    of: u64,
    working: Option<Working>,
    /// The timer of the next slice runs.
    waiting: bool,
    goes_on: bool,
}

#[derive(Default)]
pub(in crate::effects) struct Late {
    under_way: Rc<RefCell<UnderWay>>,
    on_time: Option<Rc<Closure<dyn FnMut()>>>,
}

impl Late {
    /// Asks for what comes after the answers of a gear, given as the text of its file.
    pub(in crate::effects) fn ask(&mut self, port: &Port, of: u64, text: &str) {
        let mut under_way = self.under_way.borrow_mut();
        let Ok(next) = Working::of_text(text, under_way.working.as_ref()) else {
            let reason = UNREADABLE.to_owned();
            port.send(Msg::Late(msg::Late::Failed { of, reason }));
            return;
        };
        under_way.of = of;
        under_way.working = Some(next);
        under_way.goes_on = true;
        let waiting = std::mem::replace(&mut under_way.waiting, true);
        drop(under_way);
        if !waiting && let Err(error) = start(self.on_time(port)) {
            let reason = error.to_string();
            port.send(Msg::Late(msg::Late::Failed { of, reason }));
        }
    }

    /// Leaves what is under way.
    pub(in crate::effects) fn leave(&mut self) {
        self.under_way.borrow_mut().goes_on = false;
    }

    /// What the timer calls.
    fn on_time(&mut self, port: &Port) -> &Closure<dyn FnMut()> {
        self.on_time.get_or_insert_with(|| {
            let (port, under_way) = (port.clone(), Rc::clone(&self.under_way));
            Rc::new_cyclic(|this: &std::rc::Weak<Closure<dyn FnMut()>>| {
                let this = this.clone();
                Closure::new(move || {
                    if panic::happened() {
                        return;
                    }
                    let goes_on = slice(&port, &mut under_way.borrow_mut());
                    if let Some(closure) = this.upgrade().filter(|_| goes_on) {
                        report(start(&closure));
                    }
                })
            })
        })
    }
}

fn start(closure: &Closure<dyn FnMut()>) -> Result<()> {
    let call = closure.as_ref().unchecked_ref();
    window()?.set_timeout_with_callback(call)?;
    Ok(())
}

/// Works for a while; whether there is more.
fn slice(port: &Port, under_way: &mut UnderWay) -> bool {
    let clock = window().ok().and_then(|window| window.performance());
    let now = || {
        clock
            .as_ref()
            .map_or(f64::INFINITY, web_sys::Performance::now)
    };
    let end_ms = now() + SLICE_MS;
    let of = under_way.of;
    while under_way.goes_on {
        match under_way.working.as_mut().map_or(Part::Over, Working::part) {
            Part::GoesOn => {}
            Part::Found(found) => port.send(Msg::Late(msg::Late::Found { of, found })),
            Part::Over => {
                under_way.goes_on = false;
                port.send(Msg::Late(msg::Late::Over { of }));
            }
        }
        if now() >= end_ms {
            break;
        }
    }
    under_way.waiting = under_way.goes_on;
    under_way.goes_on
}
