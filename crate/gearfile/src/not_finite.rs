//! The path of a number that is not finite: JSON has no word for it.
use serde::Serialize;

use crate::file::path_of_null;
use crate::layout::compact;

/// Path of the first number that is not finite, as "gear.legs[0].actuator.rod_m".
///
/// JSON writes such a number as null, and nothing else of a model does: a field that is absent is
/// left out.
pub(crate) fn first_not_finite<T: Serialize>(
    value: &T,
    root: &str,
) -> Result<Option<String>, serde_json::Error> {
    let text = compact(value)?;
    Ok(path_of_null(&text).map(|path| format!("{root}.{path}")))
}
