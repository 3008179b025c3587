//! Writing a gear file.
use gearswing_gear::model::Gear;
use serde::Serialize;

use super::envelope::lowest_version;
use super::{FORMAT, READ_LIMIT, SaveError};
use crate::kept::{KeptText, told};
use crate::layout::{compact, readable};
use crate::not_finite::refuse_not_finite;

#[derive(Serialize)]
struct File<'a> {
    format: &'static str,
    version: u64,
    gear: &'a Gear,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    kept: Vec<KeptText<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    before: Option<usize>,
}

/// The text of a gear file: keys always in the same order, and every number in the fewest digits
/// that read back to the same bits.
///
/// # Errors
/// A number that is not finite, or a text too long to be read back.
pub fn to_text(gear: &Gear) -> Result<String, SaveError> {
    refuse_not_finite(gear, "gear")?;
    let (told, kept) = told(gear);
    let version = lowest_version(&told, &compact(&(&told, &kept))?);
    let text = readable(&File {
        format: FORMAT,
        version,
        gear: &told,
        kept,
        before: gear.state_before().and(gear.before),
    })?;
    if text.len() > READ_LIMIT {
        return Err(SaveError::TooLarge {
            bytes: text.len(),
            limit: READ_LIMIT,
        });
    }
    Ok(text)
}
