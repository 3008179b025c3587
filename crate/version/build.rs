//! Tells the crate the commit that it is built from: the one in the variable `GEARSWING_COMMIT`, or
//! the one that git tells. A tree without git has none, which is no error.

use std::fs;
use std::path::{Path, PathBuf};

#[allow(dead_code, reason = "each of its users needs a part of it")]
#[path = "src/tree.rs"]
mod tree;

fn main() {
    println!("cargo::rerun-if-env-changed={}", tree::GIVEN);
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rerun-if-changed=src");
    let tree = match std::env::var(tree::GIVEN) {
        Ok(given) => tree::Tree::read(&given),
        Err(_) => found(),
    };
    println!("cargo::rerun-if-env-changed={}", tree::SOURCES);
    let sources = std::env::var(tree::SOURCES).unwrap_or_default();
    let is_sum = sources.chars().all(|c| c.is_ascii_alphanumeric());
    let sources = if is_sum { sources.as_str() } else { "" };
    println!("cargo::rustc-env=GEARSWING_BUILT_SOURCES={sources}");
    println!("cargo::rustc-env=GEARSWING_BUILT_COMMIT={}", tree.commit);
    let changed = if tree.changed { "yes" } else { "" };
    println!("cargo::rustc-env=GEARSWING_BUILT_CHANGED={changed}");
}

/// What git tells; told anew when a commit is made, and when something of what is built changes.
fn found() -> tree::Tree {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let Some(root) = here.ancestors().nth(2) else {
        return tree::Tree::default();
    };
    let of_git = tree::moves_with_commits(root);
    let watched = of_git.into_iter().chain(linked(root));
    for path in watched.filter(|path| path.exists()) {
        println!("cargo::rerun-if-changed={}", path.display());
    }
    tree::Tree::of(root)
}

/// What the page and the command are made of; the build of the page itself, which has more, names
/// its commit in the variable.
fn linked(root: &Path) -> Vec<PathBuf> {
    let crates = fs::read_dir(root.join("crate")).into_iter().flatten();
    let mut linked: Vec<PathBuf> = crates
        .filter_map(|entry| entry.ok().map(|entry| entry.path()))
        .filter(|path| !path.ends_with("xtask"))
        .flat_map(|path| ["Cargo.toml", "data", "src"].map(|part| path.join(part)))
        .collect();
    linked.extend(["Cargo.lock", "Cargo.toml", "fixtures"].map(|part| root.join(part)));
    linked
}
