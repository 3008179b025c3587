//! Any text is a link or refused with a sentence; what a link opened, and any state that can be put into
//! one, comes out of it unchanged.
use gearswing_gearfile::VERSION;
use gearswing_gearfile::link::{Shared, decode, encode, open_content};
use gearswing_report::link_error_text;

/// Bytes as a pasted link, or as the JSON that a link carries.
pub fn link(data: &[u8]) {
    let Ok(text) = std::str::from_utf8(data) else {
        return;
    };
    match decode(text) {
        Ok(shared) => comes_back(&shared),
        Err(error) => assert!(!link_error_text(&error).is_empty()),
    }
    // no fuzzer guesses a checksum
    if let Ok(shared) = open_content(text, VERSION) {
        comes_back(&shared);
    }
}

fn comes_back(shared: &Shared) {
    let code = encode(shared).expect("what was read can be sent");
    let opened = decode(&code).expect("what was sent can be opened");
    assert!(opened == *shared, "changed on its way:\n{code}");
    // one sign lost at the end is seen, never opened as something else
    let cut = &code[..code.len() - 1];
    assert!(decode(cut).is_err(), "opened though cut:\n{code}");
}
