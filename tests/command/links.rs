//! Link codes: printed for a file, and read in place of one.
use crate::support::{demo, folder, gear_file, run};

#[test]
fn a_link_gives_the_same_answers_as_its_file() {
    let folder = folder("links");
    let path = gear_file(&folder, "demo.json", &demo());
    let printed = run([&path, "--link"]);
    assert_eq!((printed.code, printed.err.as_str()), (0, ""));
    let code = printed.out.trim_end();
    assert_eq!(format!("{code}\n"), printed.out);
    assert!(
        code.chars()
            .all(|c| c.is_ascii_alphanumeric() || "-_".contains(c))
    );
    assert!(code.len() < 2000, "{} characters", code.len());
    let from_file = run([&path, "--format", "csv"]);
    for pasted in [
        code.to_owned(),
        format!("https://example.org/gear/#{code}"),
        format!("https://example.org/gear/%23{code}"),
    ] {
        let from_link = run(["--open-link", &pasted, "--format", "csv"]);
        assert_eq!(from_link.code, from_file.code);
        assert_eq!(from_link.out, from_file.out.replace(&path, "link"));
    }
}

#[test]
fn a_damaged_link_says_how() {
    let folder = folder("damaged_links");
    let path = gear_file(&folder, "demo.json", &demo());
    let code = run([&path, "--link"]).out.trim_end().to_owned();
    let cut = &code[..code.len() - 40];
    let at = code.len() / 2;
    let other = if code.as_bytes()[at] == b'A' {
        "B"
    } else {
        "A"
    };
    let altered = format!("{}{other}{}", &code[..at], &code[at + 1..]);
    for (text, part) in [
        (cut, "cut"),
        (altered.as_str(), "altered"),
        ("", "no link text"),
        ("hello there", "no gear link"),
    ] {
        let got = run(["--open-link", text]);
        assert_eq!((got.code, got.out.as_str()), (2, ""));
        assert!(got.err.contains(part), "{part}: {}", got.err);
    }
}
