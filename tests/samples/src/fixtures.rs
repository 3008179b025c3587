//! Gear files of the fixtures: whole ones, and changes of one sound leg (JSON Patch, RFC 6902).
use std::path::PathBuf;

/// Of these folders each file is a list of changes of the one sound leg, `fixtures/base.json`.
pub const CHANGES: &[&str] = &["faults", "jams", "no_cycle"];

/// Name without its ending and text of each file of a folder of the fixtures that ends so, in order of
/// their names; "" are the fixtures themselves.
///
/// # Panics
/// When the folder can't be read or has no such file, or a change can't be made.
#[must_use]
pub fn files(folder: &str, extension: &str) -> Vec<(String, String)> {
    let mut paths: Vec<_> = std::fs::read_dir(path(folder))
        .unwrap_or_else(|error| panic!("{folder}: {error}"))
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == extension))
        .collect();
    paths.sort();
    assert!(!paths.is_empty(), "{folder} has no {extension}");
    let is_changes = CHANGES.contains(&folder);
    paths
        .iter()
        .map(|path| {
            let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
            let text = std::fs::read_to_string(path).unwrap();
            let text = if is_changes {
                changed(&name, &text)
            } else {
                text
            };
            (name, text)
        })
        .collect()
}

/// Text of one file.
///
/// # Panics
/// When it is not there.
#[must_use]
pub fn file(folder: &str, name: &str) -> String {
    let found = files(folder, "json");
    let found = found.into_iter().find(|(known, _)| known == name);
    found.unwrap_or_else(|| panic!("no {folder}/{name}")).1
}

fn path(folder: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("../../fixtures")
        .join(folder)
}

/// The sound leg with these changes, as the text of a gear file.
fn changed(name: &str, changes: &str) -> String {
    let base = std::fs::read_to_string(path("").join("base.json")).unwrap();
    let mut file = serde_json::from_str(&base).unwrap();
    let changes: json_patch::Patch =
        serde_json::from_str(changes).unwrap_or_else(|error| panic!("{name}: {error}"));
    json_patch::patch(&mut file, &changes).unwrap_or_else(|error| panic!("{name}: {error}"));
    format!("{file:#}")
}
