//! The path of a number that is not finite: JSON has no word for it.
use serde::Serialize;
use serde_json::Value;

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
    if !text.contains("null") {
        return Ok(None);
    }
    let mut path = root.to_owned();
    let found = find_null(&serde_json::from_str(&text)?, &mut path);
    Ok(found.then_some(path))
}

/// Leaves `path` at the first null, or as it was. As deep as the model types are.
fn find_null(value: &Value, path: &mut String) -> bool {
    let here = path.len();
    match value {
        Value::Null => return true,
        Value::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                path.push_str(&format!("[{index}]"));
                if find_null(item, path) {
                    return true;
                }
                path.truncate(here);
            }
        }
        Value::Object(fields) => {
            for (key, item) in fields {
                path.push('.');
                path.push_str(key);
                if find_null(item, path) {
                    return true;
                }
                path.truncate(here);
            }
        }
        Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
    }
    false
}
