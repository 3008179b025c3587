//! Unusable inputs and command lines: one clear sentence on standard error, exit code 2, and the
//! other files are still answered.
use gearswing_gear::model::{HowFar, SeenStop};
use serde_json::Value;

use crate::support::{Run, built, demo, file, fixtures, folder, gear_file, run, run_with, starter};

#[test]
fn every_unusable_file_has_its_sentence() {
    let folder = folder("unusable");
    let text = gearswing_gearfile::DEMO.text;
    let cut: String = text.chars().take(text.len() / 2).collect();
    let long = " ".repeat(gearswing_gearfile::READ_LIMIT + 1);
    let cases = [
        (file(&folder, "empty", ""), "empty"),
        (file(&folder, "cut", cut), "not JSON"),
        (
            file(&folder, "latin1", b"{\"name\": \"H\xfclse\"}"),
            "UTF-8",
        ),
        (file(&folder, "list", "[1, 2]"), "no gear file"),
        (file(&folder, "nulls", [0; 64]), "not JSON"),
        (file(&folder, "huge", long), "larger than any gear file"),
        (
            file(
                &folder,
                "new",
                text.replacen("\"version\": 2", "\"version\": 99", 1),
            ),
            "newer version (99)",
        ),
        (
            file(&folder, "typo", text.replacen("bore_m", "boar_m", 1)),
            "boar_m",
        ),
        (file(&folder, "deep", "[".repeat(100_000)), "not JSON"),
        (folder.to_str().expect("UTF-8").to_owned(), "is a directory"),
        (
            format!("{}/none.json", folder.to_str().expect("UTF-8")),
            "no such file",
        ),
    ];
    for (path, part) in &cases {
        for format in ["text", "csv", "json"] {
            let got = run([path, "--format", format]);
            assert_eq!(got.code, 2, "{path}");
            assert!(
                got.err.starts_with("gearswing: ") && got.err.contains(part),
                "{}",
                got.err
            );
            assert_eq!(got.err.lines().count(), 1, "{}", got.err);
        }
        let json: Value = serde_json::from_str(&run([path, "--format", "json"]).out).expect("JSON");
        assert!(json["error"].as_str().expect("an error").contains(part));
    }
}

#[test]
fn the_other_files_are_still_answered() {
    let folder = folder("others");
    let good = gear_file(&folder, "good.json", &starter("folding_side"));
    let bad = file(&folder, "bad.json", "{}");
    for format in ["text", "csv", "json"] {
        let alone = run([&good, "--format", format]);
        let both = run([&bad, &good, "--format", format]);
        assert_eq!(both.code, 2);
        assert!(both.err.contains("bad.json"));
        let wanted = alone.out.lines().count();
        assert!(both.out.lines().count() >= wanted, "{format}");
    }
}

#[test]
fn faults_are_named_with_part_number_and_what_is_valid() {
    let folder = folder("faults");
    let mut gear = demo();
    gear.legs[1].actuator.rod = gear.legs[1].actuator.bore + 0.001;
    gear.legs[1].wheel.mass = -2.0;
    let path = gear_file(&folder, "faulty.json", &gear);
    let got = run([&path, "--units", "mm"]);
    assert_eq!(got.code, 2);
    assert_eq!(got.err.lines().count(), 2, "{}", got.err);
    assert!(got.err.contains("actuator rod diameter") && got.err.contains("must be less than"));
    assert!(
        got.err
            .contains("mass of the wheel: −2 kg is not possible; valid is 0")
    );
    // The sound legs are answered all the same.
    assert_eq!(
        got.out.matches("\n  Does it clear?").count(),
        gear.legs.len() - 1
    );
    let only_sound = run([&path, "--leg", "1"]);
    assert!(only_sound.code < 2, "{}", only_sound.err);
}

#[test]
fn a_bad_reading_of_a_stop_is_named_and_leaves_the_leg_its_answers() {
    let folder = folder("bad_reading");
    let mut gear = demo();
    let sound = run([&gear_file(&folder, "sound.json", &gear)]);
    gear.legs[2].seen_stop = Some(SeenStop::at(HowFar::Travel {
        travel: Some(1.5),
        within: 0.02,
    }));
    let got = run([&gear_file(&folder, "reading.json", &gear)]);
    assert_eq!(got.code, 2, "{}", got.err);
    assert_eq!(got.err.lines().count(), 1, "{}", got.err);
    assert!(got.err.contains("travel seen: 150") && got.err.contains("not possible"));
    for answer in ["Does it clear?", "Can it be driven?", "Will it lock?"] {
        let count = |run: &Run| run.out.matches(answer).count();
        assert!(count(&sound) > 0, "{answer}");
        assert_eq!(count(&got), count(&sound), "{answer}");
    }
    assert!(got.out.contains("Nothing is explained."), "{}", got.out);
}

/// A sentence for each fixture, so that every kind of fault is seen by a person as it is printed.
#[test]
fn every_kind_of_fault_is_told_in_words() {
    let mut told = String::new();
    for path in fixtures("told", "faults") {
        let got = run([path.to_str().expect("UTF-8"), "--units", "mm"]);
        let name = path
            .file_name()
            .expect("a name")
            .to_string_lossy()
            .into_owned();
        assert_eq!(got.code, 2, "{name}");
        for line in got.err.lines() {
            let (_, sentence) = line.split_once(".json: ").expect("the file is named");
            told.push_str(&format!("{name}: {sentence}\n"));
        }
    }
    insta::assert_snapshot!(told);
}

#[test]
fn a_leg_that_stops_is_a_bad_answer_with_its_reason() {
    let mut told = String::new();
    for path in fixtures("told", "jams") {
        let got = run([path.to_str().expect("UTF-8"), "--units", "mm"]);
        let name = path
            .file_name()
            .expect("a name")
            .to_string_lossy()
            .into_owned();
        assert_eq!((got.code, got.err.as_str()), (1, ""), "{name}");
        let flat = got.out.split_whitespace().collect::<Vec<_>>().join(" ");
        let (_, from) = flat.split_once(" - Stops ").expect("a stop is told");
        let (sentence, _) = from.split_once(". ").expect("a sentence");
        told.push_str(&format!("{name}: Stops {sentence}.\n"));
    }
    insta::assert_snapshot!(told);
}

#[test]
fn a_gear_without_legs() {
    let folder = folder("no_legs");
    let mut gear = demo();
    gear.legs.clear();
    let path = gear_file(&folder, "none.json", &gear);
    let got = run([&path]);
    assert_eq!(got.code, 2);
    assert!(got.err.contains("no leg"), "{}", got.err);
}

#[test]
fn control_characters_never_reach_the_terminal() {
    let folder = folder("control");
    let mut gear = demo();
    gear.name = "\u{1b}]0;x\u{7}name".to_owned();
    gear.note = "a\u{1b}[2Jb\r\nc".to_owned();
    gear.legs[0].name = "Nose\u{1b}[31m\u{202e}".to_owned();
    gear.legs[0].wheel.mass = -1.0;
    for obstacle in &mut gear.legs[1].well {
        obstacle.name.push('\u{9b}');
    }
    let path = gear_file(&folder, "control.json", &gear);
    let got = run([&path]);
    for text in [&got.out, &got.err, &run([&path, "--format", "csv"]).out] {
        let found = text
            .chars()
            .find(|c| c.is_control() && *c != '\n' || *c == '\u{202e}');
        assert_eq!(found, None);
    }
}

#[test]
fn mistakes_on_the_command_line() {
    let folder = folder("mistakes");
    let path = gear_file(&folder, "demo.json", &demo());
    for (line, part) in [
        (vec![], "give a gear file"),
        (vec!["--colour"], "no option --colour"),
        (
            vec![&path, "--leg", "Tail"],
            "there is no leg Tail; it has: 1 ",
        ),
        (vec![&path, "--leg", "0"], "there is no leg 0"),
        (vec![&path, "--out", &path], "is an input"),
        (
            vec![&path, "--format", "json", "--stations", "1000000000"],
            "2 to 20001",
        ),
    ] {
        let out = crate::support::program()
            .args(&line)
            .output()
            .expect("it starts");
        assert_eq!(out.status.code(), Some(2), "{line:?}");
        let err = String::from_utf8_lossy(&out.stderr);
        assert!(err.contains(part), "{line:?}: {err}");
    }
    let text = std::fs::read_to_string(&path).expect("still there");
    assert!(gearswing_gearfile::read(&text).is_ok());
}

#[test]
fn help_and_version() {
    let help = run(["--help"]);
    assert_eq!((help.code, help.err.as_str()), (0, ""));
    for option in [
        "--format",
        "--units",
        "--leg",
        "--tire",
        "--stations",
        "--out",
        "--link",
        "--open-link",
    ] {
        assert!(help.out.contains(option), "{option}");
    }
    let version = run(["--version"]);
    let program = format!("{}\n", built());
    assert_eq!(version.out, program.replacen('G', "g", 1));
    assert!(program.starts_with(concat!("Gearswing ", env!("CARGO_PKG_VERSION"))));
}

#[test]
fn nonsense_on_standard_input() {
    for text in [
        &b""[..],
        b"\xff\xfe\x00",
        b"null",
        b"{\"format\": 3}",
        b"\"gearswing-gear\"",
    ] {
        let got = run_with(["-"], text);
        assert_eq!(got.code, 2, "{text:?}");
        assert!(
            got.err.starts_with("gearswing: standard input: "),
            "{}",
            got.err
        );
    }
}
