//! Browser events to messages; nothing is decided here.
use super::{click, curves, drawing, fields, grip, hold, keys, pick, stops, strip, times, window};
use crate::error::Result;
use crate::runtime::Port;

/// Registers every handler of the page.
pub(crate) fn register(port: &Port) -> Result<()> {
    // First, so that a click finds the page let go.
    hold::register(port)?;
    click::register(port)?;
    curves::register(port)?;
    drawing::register(port)?;
    fields::register(port)?;
    grip::register(port)?;
    keys::register(port)?;
    pick::register(port)?;
    // behind what the drawing does with an arrow key
    stops::register(port)?;
    strip::register(port)?;
    times::register(port)?;
    window::register(port)
}
