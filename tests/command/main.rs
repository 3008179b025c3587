//! Runs the program `gearswing`: exit codes, texts, JSON and CSV against the solver's own result.
#![allow(clippy::expect_used, reason = "a check that cannot go on must stop")]

/// Unusable inputs and command lines.
mod damaged;
/// Link codes.
mod links;
/// Text, JSON and CSV.
mod printed;
/// Running it, gears to run it on.
mod support;
