//! Fuzz targets: what must hold for any bytes. A breach panics, as a fuzzer wants it.
//!
//! `cargo test` runs each target on its seeds and on the corpus kept in `corpus/`. Where cargo-fuzz and
//! its compiler are there, `long/` lets it look for more; see `README.md`.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a breach must end the run"
)]

/// Texts of gear files.
mod gear_file;
/// Link texts.
mod link;
/// Typed numbers.
mod number;
/// What the targets begin with.
mod seeds;
/// One whole solution.
mod solve;

pub use gear_file::gear_file;
pub use link::link;
pub use number::number;
pub use solve::solve;

/// A target with its name and seeds.
#[derive(Clone, Copy, Debug)]
pub struct Target {
    /// Name of the target and of its folder in `corpus/`.
    pub name: &'static str,
    /// Panics where what must hold doesn't.
    pub run: fn(&[u8]),
    /// What to begin with.
    pub seeds: fn() -> Vec<Vec<u8>>,
}

/// All of them.
pub const TARGETS: [Target; 4] = [
    Target {
        name: "gear_file",
        run: gear_file,
        seeds: seeds::gear_files,
    },
    Target {
        name: "link",
        run: link,
        seeds: seeds::links,
    },
    Target {
        name: "number",
        run: number,
        seeds: seeds::numbers,
    },
    Target {
        name: "solve",
        run: solve,
        seeds: seeds::solutions,
    },
];
