//! The loop: messages wait in a queue, one animation frame works them off, then the page is
//! patched and painted.

mod core;
pub(crate) mod panic;
mod port;
mod queue;
mod solving;

pub(crate) use core::Core;
pub(crate) use port::{Observed, Port};
