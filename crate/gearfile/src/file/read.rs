//! Reading a gear file.
use gearswing_gear::model::Gear;
use serde::Deserialize;
use serde::de::{DeserializeOwned, IgnoredAny};
use serde_json::error::Category;

use super::envelope::upgrade;
use super::head::Word;
use super::objects::Objects;
use super::place::{byte_at, path_at};
use super::{ContentFault, FORMAT, OpenError, READ_LIMIT, VERSION};

/// What is read first: it tells whose file this is.
#[derive(Deserialize)]
struct Head {
    #[serde(default)]
    format: Word,
    #[serde(default)]
    version: Word,
}

/// Version 1, and version 2, which has more keys that may be left out.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct File {
    #[serde(rename = "format")]
    _format: String,
    #[serde(rename = "version")]
    _version: u64,
    gear: Gear,
}

/// Reads the text of a gear file. Whether the gear makes sense is for `solver::faults` to say.
///
/// # Errors
/// [`OpenError`]: what is wrong and where.
pub fn read(text: &str) -> Result<Gear, OpenError> {
    if text.len() > READ_LIMIT {
        return Err(OpenError::TooLarge {
            bytes: text.len(),
            limit: READ_LIMIT,
        });
    }
    // some editors put a byte order mark first
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(OpenError::Empty);
    }
    let head = head(text)?;
    if head.format != Word::Text(FORMAT.to_owned()) {
        return Err(OpenError::NotGearFile);
    }
    match head.version {
        Word::Whole(version @ 1..=VERSION) => parse::<File>(text, "").map(|mut file| {
            upgrade(&mut file.gear, version);
            file.gear
        }),
        Word::Whole(version) if version > VERSION => Err(OpenError::NewerVersion {
            version,
            known: VERSION,
        }),
        _ => Err(OpenError::Field {
            path: "version".to_owned(),
            what: ContentFault::NotAVersion { newest: VERSION },
            line: 1,
            column: 1,
        }),
    }
}

fn head(text: &str) -> Result<Head, OpenError> {
    // the whole text must be JSON to its end before anything else is said of it
    serde_json::from_str::<IgnoredAny>(text).map_err(|error| not_json(&error))?;
    if !text.trim_start().starts_with('{') {
        return Err(OpenError::NotGearFile);
    }
    // what fails here is a key given twice
    serde_json::from_str(text).map_err(|error| field_error("", "", &error))
}

/// Reads `T`; `root` is put before the path of a fault.
pub(crate) fn parse<T: DeserializeOwned>(text: &str, root: &str) -> Result<T, OpenError> {
    whole(text).map_err(|error| {
        let place = byte_at(text, error.line(), error.column());
        field_error(root, &path_at(text, place), &error)
    })
}

/// Reads a text from its begin to its end.
fn whole<T: DeserializeOwned>(text: &str) -> Result<T, serde_json::Error> {
    let mut reader = serde_json::Deserializer::from_str(text);
    let read = T::deserialize(Objects(&mut reader))?;
    reader.end()?;
    Ok(read)
}

/// A fault of JSON or of one field.
fn field_error(root: &str, path: &str, error: &serde_json::Error) -> OpenError {
    if error.classify() != Category::Data {
        return not_json(error);
    }
    let path = match (root, path) {
        ("", "") => "file".to_owned(),
        ("", path) => path.to_owned(),
        (root, "") => root.to_owned(),
        (root, path) => format!("{root}.{path}"),
    };
    let (what, line, column) = (words(error), error.line(), error.column());
    // serde has no other mark of this kind; a test holds the wording
    if what.starts_with("unknown field") {
        OpenError::UnknownField {
            path,
            what,
            line,
            column,
        }
    } else {
        OpenError::Field {
            path,
            what: ContentFault::Reader(what),
            line,
            column,
        }
    }
}

fn not_json(error: &serde_json::Error) -> OpenError {
    OpenError::NotJson {
        line: error.line(),
        column: error.column(),
        what: ContentFault::Reader(words(error)),
    }
}

/// The library's words without the place, which is told apart.
fn words(error: &serde_json::Error) -> String {
    let text = error.to_string();
    let place = format!(" at line {} column {}", error.line(), error.column());
    text.strip_suffix(&place)
        .map_or(text.clone(), str::to_owned)
}
