//! Heavy checks have two sizes, with the same code and the same seeds.

/// Set by `cargo xtask test long`.
const LONG: &str = "GEARSWING_LONG";

/// The figures that a release is held to, not those of every change.
pub fn is_long() -> bool {
    std::env::var_os(LONG).is_some_and(|value| value != "0")
}
