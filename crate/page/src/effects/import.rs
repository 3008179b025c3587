//! Files from the person's disk.

use super::clipboard::call_then;
use crate::error::{PageError, Result, report};
use crate::panels::leave_files;
use crate::runtime::Port;
use gearswing_app::words::files as words;
use gearswing_app::{Msg, msg};
use wasm_bindgen::JsValue;
use wasm_bindgen::closure::Closure;
use web_sys::File;

/// Largest file that is read (MB): a gear file is some kilobytes, a file of all some hundred times that.
const LARGEST_MB: f64 = 64.0;
/// Bytes of a megabyte.
const MB: f64 = 1024.0 * 1024.0;

/// Reads a file and sends its text, or why it could not be read.
pub(crate) fn read_file(port: &Port, file: &File) -> Result<()> {
    let name = file.name();
    if file.size() > LARGEST_MB * MB {
        port.send(Msg::File(msg::File::ImportFailed {
            name,
            reason: words::too_large(file.size() / MB, LARGEST_MB),
        }));
        return Ok(());
    }
    let promise = file.text();
    let (done, done_name) = (port.clone(), name.clone());
    let on_done = Closure::once_into_js(move |text: JsValue| {
        report(leave_files());
        done.send(Msg::File(match text.as_string() {
            Some(text) => msg::File::ImportText {
                name: done_name,
                text,
            },
            None => msg::File::ImportFailed {
                name: done_name,
                reason: words::NO_TEXT.to_owned(),
            },
        }));
    });
    let failed = port.clone();
    let on_failed = Closure::once_into_js(move |reason: JsValue| {
        failed.send(Msg::File(msg::File::ImportFailed {
            name,
            reason: PageError::Browser(reason).to_string(),
        }));
    });
    call_then(&promise, &on_done, &on_failed)
}
