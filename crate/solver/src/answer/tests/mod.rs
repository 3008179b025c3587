//! Where one verdict ends and the next begins, and what each rests on.

/// Does it clear?
mod clears;
/// Can it be driven, before and besides the pressure?
mod driven;
/// Which motion and load case answers for the pressure.
mod hardest;
/// Will it lock?
mod locks;
/// Numbers of which the answers are made.
pub(super) mod support;
/// The way down by a hand pump.
mod way_down;
