//! The target `link`, driven by libFuzzer.
#![no_main]

libfuzzer_sys::fuzz_target!(|data: &[u8]| gearswing_fuzz::link(data));
