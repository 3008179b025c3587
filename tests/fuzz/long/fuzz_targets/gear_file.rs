//! The target `gear_file`, driven by libFuzzer.
#![no_main]

libfuzzer_sys::fuzz_target!(|data: &[u8]| gearswing_fuzz::gear_file(data));
