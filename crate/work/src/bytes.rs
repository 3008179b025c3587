//! Results as bytes: every number to the bit, infinite ones too, which JSON has no word for.
//!
//! The bytes name no field. Both ends have to be of the same build, which whoever sends them has to see to.
use crate::Found;

/// Bytes that hold no result, or a text that holds no gear.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unreadable;

/// A result as bytes.
///
/// # Errors
/// [`Unreadable`] where a list in it has no length beforehand, which none has.
pub fn to_bytes(found: &Found) -> Result<Vec<u8>, Unreadable> {
    postcard::to_allocvec(found).map_err(|_| Unreadable)
}

/// The result that the bytes hold.
///
/// # Errors
/// [`Unreadable`] where they are cut off or damaged.
pub fn from_bytes(bytes: &[u8]) -> Result<Found, Unreadable> {
    match postcard::take_from_bytes(bytes) {
        Ok((found, [])) => Ok(found),
        Ok(_) | Err(_) => Err(Unreadable),
    }
}
