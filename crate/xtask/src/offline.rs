//! What keeps the page for use without a network: a list of all its files with their hashes, in a service worker.

use anyhow::{Context, Result, ensure};
use serde_json::{Map, Value};
use sha2::{Digest, Sha256};
use std::fs;
use std::path::Path;

use crate::packed::files;

/// The service worker.
pub(crate) const WORKER: &str = "offline.js";

/// Where the worker has the list, as `www/offline.js` holds it empty.
const LIST: &str = "const FILES = {};";

/// Writes the list of a page's files into its worker.
pub(crate) fn write(dir: &Path) -> Result<()> {
    let mut list = Map::new();
    for file in files(dir)? {
        let name = file.strip_prefix(dir)?.to_string_lossy().into_owned();
        if name != WORKER {
            list.insert(name, Value::String(hash(&fs::read(&file)?)));
        }
    }
    let worker = dir.join(WORKER);
    let text = fs::read_to_string(&worker)
        .with_context(|| format!("could not read {}", worker.display()))?;
    ensure!(
        text.contains(LIST),
        "{} has no place for its list",
        worker.display()
    );
    let list = format!("const FILES = {};", Value::Object(list));
    fs::write(&worker, text.replace(LIST, &list))?;
    Ok(())
}

/// SHA-256 in hexadecimal digits.
fn hash(bytes: &[u8]) -> String {
    let digits = Sha256::digest(bytes);
    digits.iter().map(|byte| format!("{byte:02x}")).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_file_is_listed_with_its_hash() {
        let dir = std::env::temp_dir().join(format!("gearswing-offline-{}", std::process::id()));
        fs::create_dir_all(&dir).unwrap();
        for (name, text) in [("a.js", "abc"), ("a.js.br", "packed")] {
            fs::write(dir.join(name), text).unwrap();
        }
        fs::write(dir.join(WORKER), LIST).unwrap();
        write(&dir).unwrap();
        let text = fs::read_to_string(dir.join(WORKER)).unwrap();
        // FIPS 180-4, example of one block: "abc"
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(text, format!("const FILES = {{\"a.js\":\"{abc}\"}};"));
        assert!(write(&dir).is_err(), "the list is written once");
        fs::remove_dir_all(&dir).unwrap();
    }
}
