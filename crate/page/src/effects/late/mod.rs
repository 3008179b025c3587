//! What comes after the answers: asked of the second module, on its thread; in the page as one file, which has none,
//! worked out in slices between two frames.

#[cfg(feature = "whole")]
mod slices;
#[cfg(not(feature = "whole"))]
mod worker;

#[cfg(feature = "whole")]
pub(super) use slices::Late;
#[cfg(not(feature = "whole"))]
pub(super) use worker::Late;
