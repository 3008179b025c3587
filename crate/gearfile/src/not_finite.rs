//! The path of a number that is not finite: JSON has no word for it.
use serde::Serialize;

use crate::file::{SaveError, path_of_null};
use crate::layout::compact;

/// JSON of a value without blanks.
///
/// JSON writes a number that is not finite as null, and nothing else of a model does: a field that
/// is absent is left out.
///
/// # Errors
/// The path of the first number that is not finite, as "gear.legs[0].actuator.rod_m".
pub(crate) fn finite<T: Serialize>(value: &T, root: &str) -> Result<String, SaveError> {
    let text = compact(value)?;
    match path_of_null(&text) {
        Some(path) => Err(SaveError::NotFinite {
            path: format!("{root}.{path}"),
        }),
        None => Ok(text),
    }
}
