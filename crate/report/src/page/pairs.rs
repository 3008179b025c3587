//! Two legs that are each other's image in a mirror.

/// One of them was changed: whether the other one is to be changed alike.
#[must_use]
pub fn parted(changed: &str, other: &str) -> String {
    format!("{other} was the mirror image of {changed}. Is it to change alike?")
}

/// It is, now and with every change to come.
pub const BOTH: &str = "Change both alike";

/// It is not.
pub const ONE: &str = "This leg only";
