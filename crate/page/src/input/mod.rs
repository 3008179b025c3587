//! Browser events to messages; nothing is decided here.

mod click;
mod curves;
mod drawing;
mod fields;
mod keys;
mod pick;
mod window;

pub(crate) use window::{MOTION_QUERY, media};

use crate::error::Result;
use crate::runtime::Port;

/// Registers every handler of the page.
pub(crate) fn register(port: &Port) -> Result<()> {
    click::register(port)?;
    curves::register(port)?;
    drawing::register(port)?;
    fields::register(port)?;
    keys::register(port)?;
    pick::register(port)?;
    window::register(port)
}
