//! Runs the program `gearswing`: exit codes, texts, JSON and CSV against the solver's own result.
#![allow(clippy::expect_used, reason = "a check that cannot go on must stop")]

/// Unusable inputs and command lines.
mod damaged;
/// Gear files with one value changed to something extreme, or with a piece missing.
mod extreme;
/// Link codes.
mod links;
/// What `--out` writes, and what it leaves alone.
#[cfg(unix)]
mod out;
/// Text, JSON and CSV.
mod printed;
/// Running it, gears to run it on.
mod support;
