//! Why a file or a link cannot be opened, or a gear not be saved, as a clause.
use gearswing_gearfile::link::LinkError;
use gearswing_gearfile::{ArchiveError, ContentFault, OpenError, SaveError};

/// Why a text cannot be opened as a gear file.
#[must_use]
pub fn open_error_text(error: &OpenError) -> String {
    match error {
        OpenError::TooLarge { bytes, limit } => {
            format!("{bytes} bytes are too many for a gear file (at most {limit})")
        }
        OpenError::Empty => "the file is empty".to_owned(),
        OpenError::NotJson { what, line, column } => format!(
            "this is no gear file: it is not JSON, {} at line {line}, column {column}",
            fault_words(what)
        ),
        OpenError::NotGearFile => {
            "this is no gear file: its \"format\" is not \"gearswing-gear\"".to_owned()
        }
        OpenError::NewerVersion { version, known } => format!(
            "this file was made by a newer version ({version}); this program is version {known}: reload the page, or ask whoever made the file where the newer one is"
        ),
        OpenError::UnknownField {
            path,
            what,
            line,
            column,
        } => format!("there is a fault at {path}: {what} (line {line}, column {column})"),
        OpenError::Field {
            path,
            what,
            line,
            column,
        } => format!(
            "there is a fault at {path}: {} (line {line}, column {column})",
            fault_words(what)
        ),
    }
}

/// What is wrong with a content.
fn fault_words(fault: &ContentFault) -> String {
    match fault {
        ContentFault::Reader(words) => words.clone(),
        ContentFault::EndsEarly => "the text breaks off".to_owned(),
        ContentFault::NotAVersion { newest } => {
            format!("expected a whole number from 1 to {newest}")
        }
        ContentFault::NotUnicode => "invalid unicode".to_owned(),
        ContentFault::NotBase64 => "not base64url".to_owned(),
        ContentFault::NotUnpacked => "cannot be unpacked".to_owned(),
        ContentFault::NoSuchLeg => "there is no such leg".to_owned(),
        ContentFault::NoSuchPlace => {
            "this gear has no such place, or it cannot hold that".to_owned()
        }
        ContentFault::NotAboveZero => "must be above 0".to_owned(),
    }
}

/// Why a gear cannot be saved.
#[must_use]
pub fn save_error_text(error: &SaveError) -> String {
    match error {
        SaveError::NotFinite { path } => format!("{path} is not a finite number"),
        SaveError::TooLarge { bytes, limit } => {
            format!("{bytes} bytes are too many (at most {limit})")
        }
        SaveError::NotPacked => "cannot be written: the compressor refused".to_owned(),
        SaveError::NotWritten { what } => format!("cannot be written: {what}"),
    }
}

/// Why a link cannot be opened.
#[must_use]
pub fn link_error_text(error: &LinkError) -> String {
    match error {
        LinkError::Empty => "there is no link text".to_owned(),
        LinkError::Foreign => "this is no gear link".to_owned(),
        LinkError::TooLong { characters, limit } => {
            format!("{characters} characters are too many for a link (at most {limit})")
        }
        LinkError::Cut { have, of: Some(of) } => {
            format!("the link was cut: {have} characters of {of}")
        }
        LinkError::Cut { have, of: None } => {
            format!("the link was cut: {have} characters of an unknown number")
        }
        LinkError::Altered => "the link was altered on its way".to_owned(),
        LinkError::TooNew { version, known } => format!(
            "this link was made by a newer version ({version}); this page is version {known}: reload it, or open the link at the address it came with"
        ),
        LinkError::Content(error) => format!(
            "the link came whole, but its content cannot be used: {}",
            open_error_text(error)
        ),
    }
}

/// Why a file that holds several cannot be taken apart.
#[must_use]
pub fn archive_error_text(error: &ArchiveError) -> String {
    match error {
        ArchiveError::TooLarge { bytes, limit } => {
            format!("{bytes} bytes are too many for a file of gear files (at most {limit})")
        }
        ArchiveError::Newer { version, known } => {
            format!("made by a newer version ({version}); this page is version {known}")
        }
        ArchiveError::NoFiles => "it has no list \"files\"".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use gearswing_gearfile::{DEMO, link, read, read_archive};

    use super::*;

    /// Every kind of fault that a text can have, by a text that has it; the path and the place in it
    /// are there, and what to do where something can be done.
    #[test]
    fn a_text_that_cannot_be_opened_is_told_why() {
        let with = |from: &str, to: &str| DEMO.text.replacen(from, to, 1);
        for (text, words) in [
            (String::new(), "the file is empty"),
            (
                "{".to_owned(),
                "it is not JSON, the text breaks off at line 1, column 1",
            ),
            ("{}".to_owned(), "its \"format\" is not \"gearswing-gear\""),
            (
                with("\"version\": 2", "\"version\": 999"),
                "made by a newer version (999); this program is version 5: reload the page",
            ),
            (
                with("\"version\": 2", "\"version\": 0"),
                "version: expected a whole number from 1 to 5 (line 1, column 1)",
            ),
            (
                with("\"rod_m\"", "\"rod_in\""),
                "gear.legs[0].actuator.rod_in: unknown field `rod_in`",
            ),
            (
                with("\"rod_m\": ", "\"rod_m\": \"thick\", \"a\": "),
                "gear.legs[0].actuator.rod_m: invalid type: string \"thick\"",
            ),
        ] {
            let said = open_error_text(&read(&text).unwrap_err());
            assert!(said.contains(words), "{said}");
        }
    }

    #[test]
    fn a_link_that_cannot_be_opened_is_told_why() {
        let gear = DEMO.gear().unwrap();
        let shared = link::Shared::of(gear);
        let code = link::encode(&shared).unwrap();
        let cut = |at: usize| code[..at].to_owned();
        let newer = format!("{}z{}", &code[..2], &code[3..]);
        for (text, words) in [
            (String::new(), "there is no link text"),
            ("hello there".to_owned(), "this is no gear link"),
            (
                cut(5),
                "the link was cut: 5 characters of an unknown number",
            ),
            (
                cut(code.len() - 1),
                &format!("{} characters of {}", code.len() - 1, code.len()),
            ),
            (
                newer,
                "made by a newer version (35); this page is version 5: reload it",
            ),
            ("a".repeat(1 << 20), "characters are too many for a link"),
        ] {
            let said = link_error_text(&link::decode(&text).unwrap_err());
            assert!(said.contains(words), "{said}");
        }
        let no_leg = link::encode(&link::Shared { leg: 99, ..shared }).unwrap();
        assert_eq!(
            link_error_text(&link::decode(&no_leg).unwrap_err()),
            "the link came whole, but its content cannot be used: there is a fault at leg: there is no such leg (line 1, column 1)"
        );
    }

    #[test]
    fn the_rest_is_told_with_its_numbers() {
        let archive = |text: &str| archive_error_text(&read_archive(text).unwrap().unwrap_err());
        assert_eq!(
            archive("{\"format\": \"gearswing-files\", \"version\": 2, \"files\": []}"),
            "made by a newer version (2); this page is version 1"
        );
        assert_eq!(
            archive("{\"format\": \"gearswing-files\", \"version\": 1}"),
            "it has no list \"files\""
        );
        let mut gear = DEMO.gear().unwrap();
        gear.legs[0].actuator.rod = f64::NAN;
        let said = save_error_text(&gearswing_gearfile::to_text(&gear).unwrap_err());
        assert_eq!(said, "gear.legs[0].actuator.rod_m is not a finite number");
    }
}
