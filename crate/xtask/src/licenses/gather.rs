//! All notices: gathered, checked, written.

use super::html::{self, Row, STANDARD};
use super::linked::{Library, libraries};
use super::texts::{satisfied, texts};
use crate::process::{output, program, root, target};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};

/// The page of notices.
const PAGE: &str = "licenses.html";

/// Files beside the page that nobody loads who does not ask for the notices.
pub(crate) const FILES: [&str; 3] = [PAGE, "licenses.css", STANDARD];

/// Where the compiler keeps the notices of its standard library, below its own directory.
const OF_COMPILER: &str = "share/doc/rust/COPYRIGHT-library.html";

/// The notices of all libraries.
struct Notices {
    rows: Vec<Row>,
    texts: Vec<String>,
    /// Notices of the standard library, as a page.
    standard: Option<String>,
}

/// Writes the notices into a directory.
pub(crate) fn write(dir: &Path) -> Result<()> {
    let notices = gathered()?;
    let own = fs::read_to_string(root().join("LICENSE")).context("could not read LICENSE")?;
    let page = html::page(
        own.trim_end(),
        &notices.rows,
        &notices.texts,
        notices.standard.is_some(),
    );
    fs::write(dir.join(PAGE), page)?;
    match notices.standard {
        Some(standard) => fs::write(dir.join(STANDARD), standard)?,
        None => println!("  this compiler came without {OF_COMPILER}: the page links none"),
    }
    Ok(())
}

/// Fails when a library's text is missing, or those of the standard library.
pub(crate) fn check() -> Result<()> {
    let notices = gathered()?;
    if notices.standard.is_none() {
        bail!("this compiler came without {OF_COMPILER}, the notices of its standard library");
    }
    println!(
        "{} libraries, {} distinct texts, and those of the standard library.",
        notices.rows.len(),
        notices.texts.len()
    );
    Ok(())
}

/// Writes the notices into a directory of their own.
pub(crate) fn licenses(out: Option<&str>) -> Result<()> {
    let dir = match out {
        Some(dir) => std::path::absolute(dir)?,
        None => target().join("licenses"),
    };
    fs::create_dir_all(&dir).with_context(|| format!("could not make {}", dir.display()))?;
    write(&dir)?;
    let css = "licenses.css";
    fs::copy(root().join("www").join(css), dir.join(css))?;
    println!("The notices are in {}.", dir.join(PAGE).display());
    Ok(())
}

fn gathered() -> Result<Notices> {
    let mut notices = Notices {
        rows: Vec::new(),
        texts: Vec::new(),
        standard: standard()?,
    };
    let mut missing = Vec::new();
    for library in libraries()? {
        let name = format!("{} {}", library.package.name, library.package.version);
        let license = library.package.license.clone().unwrap_or_default();
        let found = texts(&source(&library))?;
        if let Err(error) = satisfied(&license, &found) {
            missing.push(format!("{name} ({license}): {error}"));
            continue;
        }
        let texts = found.into_iter().map(|text| notices.number(text)).collect();
        notices.rows.push(Row {
            library: name,
            license,
            linked_in: match (library.in_page, library.in_command) {
                (true, true) => "page, command",
                (true, false) => "page",
                _ => "command",
            }
            .to_owned(),
            texts,
        });
    }
    if !missing.is_empty() {
        bail!(
            "some library has no license text to hand on:\n{}",
            missing.join("\n")
        );
    }
    if notices.rows.is_empty() {
        bail!("cargo names no library at all");
    }
    Ok(notices)
}

impl Notices {
    /// The number of a text, which is taken in when it is new.
    fn number(&mut self, text: String) -> usize {
        let known = self.texts.iter().position(|known| *known == text);
        known.unwrap_or_else(|| {
            self.texts.push(text);
            self.texts.len() - 1
        })
    }
}

fn source(library: &Library) -> PathBuf {
    let manifest = library.package.manifest_path.as_std_path();
    manifest.parent().unwrap_or(manifest).to_path_buf()
}

/// Notices of the standard library, if the compiler came with them.
fn standard() -> Result<Option<String>> {
    let rustc = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let place = output(program(rustc).args(["--print", "sysroot"]))?;
    let file = Path::new(place.trim()).join(OF_COMPILER);
    if !file.is_file() {
        return Ok(None);
    }
    fs::read_to_string(&file)
        .map(Some)
        .with_context(|| format!("could not read {}", file.display()))
}
