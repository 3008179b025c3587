//! Which crates are linked: what cargo would build for the target, without what only tests, build
//! scripts and macros of the compiler use.

use crate::build::WASM;
use crate::process::{cargo, output, root};
use anyhow::{Context, Result};
use cargo_metadata::{Metadata, MetadataCommand, Package};
use std::collections::BTreeMap;

/// A library that something of ours is linked with.
pub(crate) struct Library {
    /// Its package.
    pub package: Package,
    /// It is in the page.
    pub in_page: bool,
    /// It is in the command.
    pub in_command: bool,
}

/// Every library of page and command that is not ours, by name and version.
pub(crate) fn libraries() -> Result<Vec<Library>> {
    let metadata = MetadataCommand::new()
        .current_dir(root())
        .exec()
        .context("cargo metadata failed")?;
    let page = tree(&["--package", "gearswing-page", "--target", WASM])?;
    let command = tree(&["--package", "gearswing"])?;
    let mut libraries: BTreeMap<(String, String), Library> = BTreeMap::new();
    for (listed, is_page) in [(&page, true), (&command, false)] {
        for (name, version) in crates(listed) {
            let package = package(&metadata, name, version)?;
            if package.source.is_none() {
                continue;
            }
            let library = libraries
                .entry((name.to_owned(), version.to_owned()))
                .or_insert_with(|| Library {
                    package: package.clone(),
                    in_page: false,
                    in_command: false,
                });
            library.in_page |= is_page;
            library.in_command |= !is_page;
        }
    }
    Ok(libraries.into_values().collect())
}

/// What cargo links, one crate a line. `cargo metadata` alone would take the features that tests switch
/// on, and what hangs on them, for linked.
fn tree(of: &[&str]) -> Result<String> {
    let shape = ["--edges", "normal,no-proc-macro", "--prefix", "none"];
    output(
        cargo()
            .args(["tree", "--quiet", "--format", "{p}"])
            .args(shape)
            .args(of),
    )
}

/// Name and version of each line.
fn crates(listed: &str) -> impl Iterator<Item = (&str, &str)> {
    listed.lines().filter_map(|line| {
        let mut words = line.split_whitespace();
        Some((words.next()?, words.next()?.trim_start_matches('v')))
    })
}

fn package<'a>(metadata: &'a Metadata, name: &str, version: &str) -> Result<&'a Package> {
    metadata
        .packages
        .iter()
        .find(|package| *package.name == name && package.version.to_string() == version)
        .with_context(|| format!("cargo metadata doesn't know {name} {version}"))
}

#[cfg(test)]
mod tests {
    #[test]
    fn names_and_versions_are_read() {
        let listed = "a v1.2.3\nb-c v0.1.0 (dir/b-c) (*)\n\n";
        let found: Vec<_> = super::crates(listed).collect();
        assert_eq!(found, [("a", "1.2.3"), ("b-c", "0.1.0")]);
    }

    /// What the manifests name as linked is there, and what they name for tests only is not.
    #[test]
    fn tests_and_macros_are_not_linked() {
        let libraries = super::libraries().unwrap();
        let is_there = |name: &str| libraries.iter().any(|one| *one.package.name == name);
        for linked in ["nalgebra", "serde_json", "wasm-bindgen", "base64"] {
            assert!(is_there(linked), "{linked}");
        }
        for other in [
            "proptest",
            "insta",
            "schemars",
            "serde_derive",
            "parry2d-f64",
            "axum",
        ] {
            assert!(!is_there(other), "{other}");
        }
        let of = |name: &str| libraries.iter().find(|one| *one.package.name == name);
        let browser = of("web-sys").unwrap();
        assert!(browser.in_page && !browser.in_command);
    }
}
