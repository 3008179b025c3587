//! The target `solve`, driven by libFuzzer.
#![no_main]

libfuzzer_sys::fuzz_target!(|data: &[u8]| gearswing_fuzz::solve(data));
