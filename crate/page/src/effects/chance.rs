//! Chance, which only the browser has.
use crate::dom::window;

/// Eight bytes of it; `None` where the browser gives none.
pub(crate) fn chance() -> Option<[u8; 8]> {
    let mut bytes = [0; 8];
    let crypto = window().ok()?.crypto().ok()?;
    crypto
        .get_random_values_with_u8_array(&mut bytes)
        .ok()
        .map(|_| bytes)
}
