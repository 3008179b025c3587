//! Reading a gear file.
use gearswing_gear::model::Gear;
use serde::Deserialize;
use serde::de::{DeserializeOwned, IgnoredAny};
use serde_json::error::Category;
use serde_json::value::RawValue;

use super::any::Any;
use super::envelope::upgrade;
use super::objects::Objects;
use super::{ContentFault, FORMAT, OpenError, READ_LIMIT, VERSION};
use crate::kept::{KeptText, keep};

/// The library's path of the whole text.
const WHOLE: &str = ".";

/// What is read first: it tells whose file this is. Either may be of any kind.
#[derive(Deserialize)]
struct FileHead<'t> {
    #[serde(borrow)]
    format: Option<&'t RawValue>,
    #[serde(borrow)]
    version: Option<&'t RawValue>,
}

/// The value if it is there and of this kind.
fn of_kind<'t, T: Deserialize<'t>>(value: Option<&'t RawValue>) -> Option<T> {
    serde_json::from_str(value?.get()).ok()
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
    #[serde(default)]
    kept: Vec<KeptText<'static>>,
    #[serde(default)]
    before: Option<usize>,
}

/// Reads a number as it stands in a file; `None` = it is none. By the reader of JSON, for another one would bring a
/// table of 10 kB of its own.
#[must_use]
pub fn read_number(text: &str) -> Option<f64> {
    serde_json::from_str(text).ok()
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
    if of_kind::<String>(head.format).is_none_or(|format| format != FORMAT) {
        return Err(OpenError::NotGearFile);
    }
    match of_kind(head.version) {
        Some(version @ 1..=VERSION) => parse::<File>(text, "").and_then(|mut file| {
            upgrade(&mut file.gear, version);
            keep(&mut file.gear, file.kept, file.before)?;
            Ok(file.gear)
        }),
        Some(version) if version > VERSION => Err(OpenError::NewerVersion {
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

fn head(text: &str) -> Result<FileHead<'_>, OpenError> {
    // the whole text must be JSON to its end before anything else is said of it
    serde_json::from_str::<IgnoredAny>(text).map_err(|error| not_json(&error))?;
    if !text.trim_start().starts_with('{') {
        return Err(OpenError::NotGearFile);
    }
    // what fails here is a key given twice
    serde_json::from_str(text).map_err(|error| field_error("", WHOLE, &error))
}

/// Reads `T` from a text from its begin to its end; `root` is put before the path of a fault.
pub(crate) fn parse<T: DeserializeOwned>(text: &str, root: &str) -> Result<T, OpenError> {
    let mut reader = serde_json::Deserializer::from_str(text);
    let read = T::deserialize(Objects(&mut reader))
        .map_err(|error| field_error(root, &path_of(text, &error), &error))?;
    reader.end().map_err(|error| not_json(&error))?;
    Ok(read)
}

/// Path of the value at which reading has failed: there the same text, cut off, breaks off for a reader of any
/// JSON. To follow the path of every type while it is read would make the page a fifteenth larger.
pub(super) fn path_of(text: &str, error: &serde_json::Error) -> String {
    let lines = text.split_inclusive('\n');
    let before = lines.take(error.line().saturating_sub(1));
    let at = before.map(str::len).sum::<usize>() + error.column();
    let cut = text.get(..at).unwrap_or(text);
    let what = error.to_string();
    let path = if is_of_key(&what) {
        // made whole, before its value
        broken_off(&format!("{}\":", cut.trim_end_matches(['"', ':'])))
    } else if let Some(open) = cut.strip_suffix(['"', '}', ']']) {
        broken_off(open)
    } else {
        // another value, not whole, in the place of a number or a word that may stand there
        let token = |c: char| c.is_ascii_alphanumeric() || "+-.".contains(c);
        // what begins neither a word nor an object, where an option is to stand
        let cut = cut
            .strip_suffix('[')
            .filter(|_| what.starts_with("expected value"))
            .unwrap_or(cut);
        broken_off(&format!("{}\"", cut.trim_end_matches(token)))
    };
    // a key that is not whole
    let mut whole = path.as_str();
    while let Some(shorter) = whole.strip_suffix(".?") {
        whole = shorter;
    }
    whole.to_owned()
}

/// The path at which a text breaks off.
fn broken_off(text: &str) -> String {
    let mut reader = serde_json::Deserializer::from_str(text);
    match serde_path_to_error::deserialize::<_, Any>(&mut reader) {
        Ok(_) => WHOLE.to_owned(),
        Err(broken) => broken.path().to_string(),
    }
}

/// Whether it is the key that cannot be used; serde has no other mark of this kind, and a test holds the wording.
fn is_of_key(what: &str) -> bool {
    what.starts_with("unknown field") || what.starts_with("duplicate field")
}

/// A fault of JSON or of one field.
fn field_error(root: &str, path: &str, error: &serde_json::Error) -> OpenError {
    if error.classify() != Category::Data {
        return not_json(error);
    }
    let path = match (root, path) {
        ("", WHOLE) => "file".to_owned(),
        ("", path) => path.to_owned(),
        (root, WHOLE) => root.to_owned(),
        (root, path) => format!("{root}.{path}"),
    };
    let (what, line, column) = (words(error), error.line(), error.column());
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
        what: match error.classify() {
            Category::Eof => ContentFault::EndsEarly,
            _ => ContentFault::Reader(words(error)),
        },
    }
}

/// The library's words without the place, which is told apart.
fn words(error: &serde_json::Error) -> String {
    let text = error.to_string();
    let place = format!(" at line {} column {}", error.line(), error.column());
    text.strip_suffix(&place)
        .map_or(text.clone(), str::to_owned)
}
