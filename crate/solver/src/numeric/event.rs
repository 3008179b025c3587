//! When something happens within a time step, on its continuous output.
//!
//! A search that looks at the ends of a step only does not see what happens twice in it: whoever asks says
//! where to look.
use super::bracketed_root::{Root, RootError, bracketed_root};

/// Width to which an event is bracketed, as a share of its time step (ratio).
const TOLERANCE: f64 = 1e-13;

/// Where `of` a share of a step goes through nothing between two shares.
///
/// # Errors
/// [`RootError`] where it has the same sign at both, or is not a number.
pub(crate) fn event_between(
    of: impl FnMut(f64) -> f64,
    from: f64,
    to: f64,
) -> Result<Root, RootError> {
    bracketed_root(of, from, to, TOLERANCE)
}

/// The first share of a step at which `of` it comes down to nothing, once it has been above; looked at in so
/// many even parts of the step, so that it may be above again at the end.
pub(crate) fn first_end(of: impl Fn(f64) -> f64, looks: usize) -> Option<f64> {
    let mut above = None;
    for look in 0..=looks {
        let share = look as f64 / looks as f64;
        if of(share) > 0.0 {
            above = Some(share);
        } else if let Some(from) = above {
            return Some(event_between(&of, from, share).map_or(share, |root| root.x));
        }
    }
    None
}
