//! Files, standard input and links: where a gear comes from.
use std::fs::File;
use std::io::{ErrorKind, Read};
use std::path::Path;

use gearswing_gear::model::Gear;
use gearswing_gearfile::{READ_LIMIT, link, read};
use gearswing_report::{clean, link_error_text, open_error_text};

use crate::arguments::Input;

impl Input {
    /// What to call it in messages and results.
    pub(crate) fn name(&self) -> String {
        match self {
            Self::File(path) => path.to_string_lossy().into_owned(),
            Self::Standard => "standard input".to_owned(),
            Self::Link(_) => "link".to_owned(),
        }
    }

    /// The gear; an error is a sentence without the input's name.
    pub(crate) fn gear(&self) -> Result<Gear, String> {
        match self {
            Self::File(path) => gear(&bytes_of_file(path)?),
            Self::Standard => {
                let bytes = limited(std::io::stdin().lock());
                gear(&bytes.map_err(|error| format!("cannot be read: {error}"))?)
            }
            Self::Link(text) => {
                let text = text.to_str().ok_or("no link holds such characters")?;
                link::decode(text)
                    .map(|shared| shared.gear)
                    .map_err(|error| clean(&link_error_text(&error)))
            }
        }
    }
}

fn gear(bytes: &[u8]) -> Result<Gear, String> {
    if bytes.len() > READ_LIMIT {
        return Err(format!(
            "larger than any gear file ({} MB is the most that is read)",
            READ_LIMIT >> 20
        ));
    }
    let text = std::str::from_utf8(bytes).map_err(|error| {
        format!(
            "not a text in UTF-8 (byte {} is none); a gear file is JSON text",
            error.valid_up_to().saturating_add(1)
        )
    })?;
    read(text).map_err(|error| clean(&open_error_text(&error)))
}

fn bytes_of_file(path: &Path) -> Result<Vec<u8>, String> {
    let why = |error: std::io::Error| match error.kind() {
        ErrorKind::NotFound => "there is no such file".to_owned(),
        ErrorKind::PermissionDenied => "may not be read (no permission)".to_owned(),
        ErrorKind::IsADirectory => "is a directory, not a gear file".to_owned(),
        _ => format!("cannot be read: {error}"),
    };
    let file = File::open(path).map_err(why)?;
    if file.metadata().map_err(why)?.is_dir() {
        return Err("is a directory, not a gear file".to_owned());
    }
    limited(file).map_err(why)
}

/// One byte more than the limit at most: enough to see that it is too long.
fn limited(source: impl Read) -> std::io::Result<Vec<u8>> {
    let most = u64::try_from(READ_LIMIT)
        .unwrap_or(u64::MAX)
        .saturating_add(1);
    let mut bytes = Vec::new();
    source.take(most).read_to_end(&mut bytes)?;
    Ok(bytes)
}
