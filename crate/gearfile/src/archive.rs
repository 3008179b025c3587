//! Several gear files in one: `{"format": "gearswing-files", "version": 1, "files": [ … ]}`.
//!
//! Each of them stands in it as it would by itself. A text that is no JSON stands as a string, so
//! that what a newer or a broken program has left goes along as it is.
use serde::Deserialize;
use serde::de::IgnoredAny;
use serde_json::value::RawValue;
use thiserror::Error;

use crate::file::SaveError;

/// Value of the key `format`.
const FORMAT: &str = "gearswing-files";

/// Version that is written, and the newest that can be read.
const VERSION: u64 = 1;

/// Longest text that is read (bytes).
pub const ARCHIVE_LIMIT: usize = 64 << 20;

/// Why a text that holds gear files cannot be taken apart. `report` words it; what `Display` writes is
/// for developers.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
#[error("{self:?}")]
pub enum ArchiveError {
    /// Longer than what is read.
    TooLarge {
        /// Length (bytes).
        bytes: usize,
        /// Most that is read (bytes).
        limit: usize,
    },
    /// Made by a newer program.
    Newer {
        /// Its version.
        version: u64,
        /// Newest version that this program reads.
        known: u64,
    },
    /// It has no list of files.
    NoFiles,
}

#[derive(Deserialize)]
struct Archive<'t> {
    format: String,
    #[serde(default)]
    version: u64,
    #[serde(borrow)]
    files: Option<Vec<&'t RawValue>>,
}

/// One text that holds all of these.
///
/// # Errors
/// The writer of JSON failed.
pub fn archive_text(texts: &[String]) -> Result<String, SaveError> {
    let mut all = format!("{{\n\"format\": \"{FORMAT}\",\n\"version\": {VERSION},\n\"files\": [");
    for (at, text) in texts.iter().enumerate() {
        all.push_str(if at == 0 { "\n" } else { ",\n" });
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let is_object =
            text.trim_start().starts_with('{') && serde_json::from_str::<IgnoredAny>(text).is_ok();
        if is_object {
            all.push_str(text.trim());
        } else {
            all.push_str(&serde_json::to_string(text)?);
        }
    }
    all.push_str("\n]\n}\n");
    Ok(all)
}

/// The text of one of the files, as it was put in.
fn file_text(file: &RawValue) -> Option<String> {
    let text = file.get();
    if text.starts_with('"') {
        serde_json::from_str(text).ok()
    } else {
        Some(text.to_owned())
    }
}

/// The texts of the files that a text holds; `None` when it is no file of gear files.
#[must_use]
pub fn read_archive(text: &str) -> Option<Result<Vec<String>, ArchiveError>> {
    // a gear file names its kind at the head; looked for before the whole text is read
    if !text
        .get(..text.len().min(512))
        .unwrap_or(text)
        .contains(FORMAT)
    {
        return None;
    }
    if text.len() > ARCHIVE_LIMIT {
        return Some(Err(ArchiveError::TooLarge {
            bytes: text.len(),
            limit: ARCHIVE_LIMIT,
        }));
    }
    let archive: Archive = serde_json::from_str(text).ok()?;
    if archive.format != FORMAT {
        return None;
    }
    Some(match archive.files {
        _ if archive.version > VERSION => Err(ArchiveError::Newer {
            version: archive.version,
            known: VERSION,
        }),
        None => Err(ArchiveError::NoFiles),
        Some(files) => Ok(files.into_iter().map(file_text).collect::<Option<_>>()?),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{DEMO, STARTERS, read, to_text};

    #[test]
    fn all_come_back_bit_for_bit() {
        let gears: Vec<_> = std::iter::once(&DEMO)
            .chain(&STARTERS)
            .map(|example| example.gear().unwrap())
            .collect();
        let mut texts: Vec<String> = gears.iter().map(|gear| to_text(gear).unwrap()).collect();
        let broken = "gearswing stored file 9\n---\n{\"format\"";
        texts.push(broken.to_owned());
        let mut back = read_archive(&archive_text(&texts).unwrap())
            .unwrap()
            .unwrap();
        assert_eq!(back.pop().as_deref(), Some(broken));
        assert!(
            back.iter()
                .zip(&texts)
                .all(|(back, text)| back == text.trim())
        );
        let back: Vec<_> = back.iter().map(|text| read(text).unwrap()).collect();
        assert_eq!(back, gears);
    }

    /// Order of keys, digits and a key given twice are for whoever opens it.
    #[test]
    fn a_text_of_json_stands_in_it_as_it_is() {
        let texts = [
            "{\"b\": 1.0, \"a\": 1e999, \"a\": 0}",
            "{ \"\\u00e4\":[ ] }",
        ]
        .map(str::to_owned);
        let back = read_archive(&archive_text(&texts).unwrap());
        assert_eq!(back, Some(Ok(texts.to_vec())));
    }

    #[test]
    fn others_are_told_apart() {
        assert_eq!(read_archive(&to_text(&DEMO.gear().unwrap()).unwrap()), None);
        assert_eq!(read_archive(""), None);
        let whole = archive_text(&["{}".to_owned()]).unwrap();
        assert_eq!(read_archive(&whole), Some(Ok(vec!["{}".to_owned()])));
        assert_eq!(read_archive(&whole[..whole.len() - 4]), None);
        let newer = whole.replace("\"version\": 1", "\"version\": 2");
        assert_eq!(
            read_archive(&newer),
            Some(Err(ArchiveError::Newer {
                version: 2,
                known: VERSION
            }))
        );
        let none = whole.replace("\"files\"", "\"file\"");
        assert_eq!(read_archive(&none), Some(Err(ArchiveError::NoFiles)));
        assert_eq!(
            read_archive(&archive_text(&[]).unwrap()),
            Some(Ok(Vec::new()))
        );
    }
}
