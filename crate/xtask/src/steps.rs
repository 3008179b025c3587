//! The steps of `cargo xtask test`, in order: cheap ones first.

use crate::arguments::Extent;
use crate::build::{self, WASM};
use crate::process::{cargo, is_long, program, run, target};
use crate::{deny, licenses, rooms, size, tidy, tools};
use anyhow::{Context, Result};
use std::path::PathBuf;

/// One step of the check.
pub(crate) struct Step {
    /// What to call it on the command line.
    pub name: &'static str,
    /// What it does, for people.
    pub what: &'static str,
    /// The extents of the check that it is part of.
    pub part_of: PartOf,
    /// The room it needs; while that is still to be written, the step is passed over and says so.
    pub room: Option<&'static str>,
    /// Makes ready what it needs, where it then goes on beside the steps after it, when it is not asked for
    /// alone: it needs no more than what those leave of the processors, and shows its output when it is done.
    pub beside: Option<fn() -> Result<()>>,
    /// Does it.
    pub work: fn() -> Result<()>,
}

/// What a step is part of.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum PartOf {
    /// Every check.
    Every,
    /// All but the quick one.
    Whole,
    /// The quick check alone: the whole one has it within another step.
    Quick,
}

impl Step {
    /// Whether a check of this extent has it.
    pub(crate) fn is_in(&self, extent: Extent) -> bool {
        match self.part_of {
            PartOf::Every => true,
            PartOf::Whole => extent != Extent::Quick,
            PartOf::Quick => extent == Extent::Quick,
        }
    }
}

/// Every step.
pub(crate) const STEPS: &[Step] = &[
    step("lock", "the lock file fits the manifests", lock),
    every(step("format", "cargo fmt --check", format)),
    every(step("tidy", "the project's own rules", tidy::tidy)),
    every(step(
        "lint",
        "clippy, all targets, warnings are errors",
        lint,
    )),
    step("lint-wasm", "clippy on the page for the browser", lint_wasm),
    step("docs", "the documentation, warnings are errors", docs),
    Step {
        part_of: PartOf::Quick,
        ..step("unit", "unit tests of the crates", unit)
    },
    step("tests", "native tests", tests),
    step("tools", "tests of the tooling", tooling),
    step("page", "the page for the browser", page),
    step("size", "what the page costs to load", size_of_page),
    step(
        "licenses",
        "license texts of all libraries that are linked",
        licenses::check,
    ),
    needs(
        "crate/command",
        step("command", "build the command line program", command),
    ),
    Step {
        beside: Some(reference_ready),
        ..needs(
            "tests/reference",
            step(
                "reference",
                "against outside libraries, in Python",
                reference,
            ),
        )
    },
    needs(
        "tests/browser",
        step("browser", "journeys in Chromium", browser),
    ),
    step("deny", "licenses, sources, known faults", deny::deny),
];

const fn step(name: &'static str, what: &'static str, work: fn() -> Result<()>) -> Step {
    Step {
        name,
        what,
        part_of: PartOf::Whole,
        room: None,
        beside: None,
        work,
    }
}

const fn every(step: Step) -> Step {
    Step {
        part_of: PartOf::Every,
        ..step
    }
}

const fn needs(room: &'static str, step: Step) -> Step {
    Step {
        room: Some(room),
        ..step
    }
}

/// Tested on their own: the browser tests need Chromium, the tooling another profile.
const APART: &[&str] = &["--exclude", "gearswing-browser-tests", "--exclude", "xtask"];

fn lock() -> Result<()> {
    run(cargo().args(["fetch", "--locked", "--quiet"]))
        .context("Cargo.lock doesn't fit the manifests, or a crate could not be fetched")
}

fn format() -> Result<()> {
    run(cargo().args(["fmt", "--all", "--check"]))
        .context("some file is not formatted (or rustfmt is missing: rustup component add rustfmt)")
}

fn lint() -> Result<()> {
    run(cargo().args([
        "clippy",
        "--workspace",
        "--all-targets",
        "--quiet",
        "--",
        "-D",
        "warnings",
    ]))
}

fn lint_wasm() -> Result<()> {
    build::ensure_wasm_target()?;
    let page = ["--package", "gearswing-page"];
    let whole = ["--package", "gearswing-page", "--features", "whole"];
    let worker = ["--package", "gearswing-worker"];
    for what in [&page[..], &whole, &worker] {
        run(cargo()
            .args(["clippy", "--target", WASM, "--quiet"])
            .args(what)
            .args(["--", "-D", "warnings"]))?;
    }
    Ok(())
}

fn docs() -> Result<()> {
    run(cargo()
        .args(["doc", "--workspace", "--no-deps", "--quiet"])
        .env("RUSTDOCFLAGS", "-D warnings"))
}

/// What stands beside the code; no journey, no random gears but those of a single crate.
fn unit() -> Result<()> {
    run(cargo()
        .args(["test", "--workspace", "--lib", "--bins"])
        .args(APART)
        .args(["--quiet"])
        .env("INSTA_UPDATE", "no"))
}

fn tests() -> Result<()> {
    if rooms::is_there("crate/command")? {
        // The command's own tests run the program.
        run(cargo().args(["build", "--bin", "gearswing"]))?;
    }
    run(cargo()
        .args(["test", "--workspace", "--no-fail-fast"])
        .args(APART)
        .args(shown())
        .env("INSTA_UPDATE", "no")
        .env(SEED.0, std::env::var(SEED.0).unwrap_or(SEED.1.into())))
}

/// Where the random tests of libraries start, when nothing else is asked for: what a check says of a
/// commit, it says every time. `cargo test` by itself draws anew.
const SEED: (&str, &str) = ("PROPTEST_RNG_SEED", "23001309");

/// The long form of a check prints its figures.
fn shown() -> &'static [&'static str] {
    if is_long() {
        &["--", "--show-output"]
    } else {
        &[]
    }
}

fn tooling() -> Result<()> {
    run(cargo().args(["test", "--package", "xtask", "--profile", "tool"]))
}

fn page() -> Result<()> {
    build::page(&build::site())
}

fn size_of_page() -> Result<()> {
    size::measure(&build::site()).context("size of the page as last built")
}

fn command() -> Result<()> {
    run(cargo().args(["build", "--release", "--bin", "gearswing"]))
}

/// What is installed and built is so before it goes on beside others, which install and build too.
fn reference_ready() -> Result<()> {
    reference_tools().map(drop)
}

/// The programs that the reference is held against, built; the Python that it runs in.
fn reference_tools() -> Result<PathBuf> {
    let python = tools::python("tests/reference/requirements.txt")?;
    run(cargo().args([
        "build",
        "--release",
        "--bin",
        "gearswing",
        "--bin",
        "time-legs",
    ]))?;
    Ok(python)
}

fn reference() -> Result<()> {
    let python = reference_tools()?;
    let built = |name: &str| {
        target()
            .join("release")
            .join(format!("{name}{}", std::env::consts::EXE_SUFFIX))
    };
    run(program(python)
        .args(["-B", "tests/reference/run.py", "--gearswing"])
        .arg(built("gearswing"))
        .arg("--timer")
        .arg(built("time-legs")))
}

fn browser() -> Result<()> {
    tools::ensure_chromium()?;
    tools::ensure_poppler()?;
    run(cargo()
        .args(["test", "--package", "gearswing-browser-tests"])
        .args(shown()))
}
