//! Every fuzz target on its seeds and on its kept corpus. A target ends at the first breach, which names
//! the input.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a check that cannot run must fail"
)]
use std::panic::catch_unwind;
use std::path::Path;

use gearswing_fuzz::{TARGETS, Target};

fn target(name: &str) -> Target {
    let found = TARGETS.into_iter().find(|target| target.name == name);
    found.expect("a target of this name")
}

/// Runs a target on all that there is for it.
fn holds(name: &str) {
    let target = target(name);
    let seeds = (target.seeds)();
    assert!(seeds.len() > 10, "{name} has no seeds");
    for (number, seed) in seeds.iter().enumerate() {
        on(target, &format!("seed {number}"), seed);
    }
    let folder = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("corpus")
        .join(name);
    let mut kept: Vec<_> = std::fs::read_dir(&folder)
        .expect("a kept corpus")
        .map(|entry| entry.expect("readable").path())
        .collect();
    kept.sort();
    assert!(!kept.is_empty(), "nothing is kept for {name}");
    for path in kept {
        let bytes = std::fs::read(&path).expect("readable");
        on(target, &path.to_string_lossy(), &bytes);
    }
}

fn on(target: Target, what: &str, bytes: &[u8]) {
    let name = target.name;
    assert!(
        catch_unwind(|| (target.run)(bytes)).is_ok(),
        "{name} does not hold on {what}: {:?}",
        String::from_utf8_lossy(bytes)
    );
}

#[test]
fn gear_file() {
    holds("gear_file");
}

#[test]
fn link() {
    holds("link");
}

#[test]
fn number() {
    holds("number");
}

#[test]
fn solve() {
    holds("solve");
}

/// `long/` runs the same functions: one program for each target, and no other.
#[test]
fn every_target_has_its_program() {
    let long = Path::new(env!("CARGO_MANIFEST_DIR")).join("long");
    let manifest = std::fs::read_to_string(long.join("Cargo.toml")).expect("its manifest");
    for target in TARGETS {
        let name = target.name;
        let program = long.join(format!("fuzz_targets/{name}.rs"));
        let program = std::fs::read_to_string(program).expect("its program");
        assert!(program.contains(&format!("gearswing_fuzz::{name}(data)")));
        assert!(manifest.contains(&format!("path = \"fuzz_targets/{name}.rs\"")));
    }
    assert_eq!(manifest.matches("[[bin]]").count(), TARGETS.len());
}
