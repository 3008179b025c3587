//! Text, JSON and CSV of good gear files.
use std::process::Stdio;

use gearswing_report::Outcome;
use gearswing_solver::result::{LegResult, Verdict};
use gearswing_solver::{Options, solve_leg};
use serde_json::Value;

use crate::support::{demo, file, folder, gear_file, program, run, run_with, starter};

fn solve(gear: &gearswing_gear::model::Gear, leg: usize, options: &Options) -> LegResult {
    solve_leg(gear, leg, options).expect("no faults")
}

/// The exit code that the solver's own findings ask for.
fn code_of(gear: &gearswing_gear::model::Gear) -> i32 {
    let is_bad = (0..gear.legs.len())
        .map(|leg| solve(gear, leg, &Options::default()))
        .any(|result| {
            !result.jams.is_empty() || result.findings.iter().any(|f| f.verdict == Verdict::Bad)
        });
    i32::from(is_bad)
}

#[test]
fn json_is_the_solvers_result() {
    let folder = folder("json");
    let gear = demo();
    let path = gear_file(&folder, "demo.json", &gear);
    let got = run([&path, "--format", "json"]);
    assert_eq!((got.code, got.err.as_str()), (code_of(&gear), ""));
    let json: Value = serde_json::from_str(&got.out).expect("JSON");
    assert_eq!(json["format"], "gearswing-result");
    assert_eq!(json["version"], 2);
    assert_eq!(json["program"]["version"], gearswing_version::VERSION);
    assert_eq!(
        json["program"].get("commit").and_then(Value::as_str),
        gearswing_version::COMMIT
    );
    assert_eq!(json["program"]["changed"], gearswing_version::CHANGED);
    assert_eq!(json["file"], path.as_str());
    let legs = json["legs"].as_array().expect("legs");
    assert_eq!(legs.len(), gear.legs.len());
    for (index, leg) in legs.iter().enumerate() {
        let result = solve(&gear, index, &Options::default());
        assert_eq!(leg["result"], serde_json::to_value(&result).expect("JSON"));
        assert_eq!(leg["leg"], gear.legs[index].name.as_str());
        let words = leg["words"].as_array().expect("words");
        assert_eq!(words.len(), result.findings.len());
        for (words, finding) in words.iter().zip(&result.findings) {
            assert_eq!(
                words["verdict"],
                gearswing_report::verdict_text(finding.question, finding.verdict)
            );
            assert!(
                words["sentence"]
                    .as_str()
                    .expect("a sentence")
                    .ends_with('.')
            );
        }
    }
}

#[test]
fn options_reach_the_solver() {
    let folder = folder("options");
    let gear = demo();
    let path = gear_file(&folder, "demo.json", &gear);
    let got = run([
        &path,
        "--format=json",
        "--leg",
        "right MAIN",
        "--tire",
        "former",
        "--stations",
        "31",
    ]);
    let json: Value = serde_json::from_str(&got.out).expect("JSON");
    let index = gear
        .legs
        .iter()
        .position(|leg| leg.name == "Right main")
        .expect("a right main");
    let options = Options {
        stations: 31,
        ..Options::default()
    };
    let kept = gear.previous().expect("the previous tire");
    let result = solve(&gear.kept[kept].gear, index, &options);
    assert_eq!(json["legs"].as_array().expect("legs").len(), 1);
    assert_eq!(json["legs"][0]["index"], index);
    assert_eq!(
        json["legs"][0]["result"],
        serde_json::to_value(result).expect("JSON")
    );
    assert_eq!(json["tire"], "former");
    let by_number = run([&path, "--format=json", "--leg", "1", "--stations", "31"]);
    let json: Value = serde_json::from_str(&by_number.out).expect("JSON");
    assert_eq!(json["legs"][0]["leg"], gear.legs[0].name.as_str());
}

/// A short table leaves rows out, and nothing that an answer rests on.
#[test]
fn a_short_table_has_the_same_answers() {
    let folder = folder("short-table");
    let path = gear_file(&folder, "demo.json", &demo());
    let answers = |stations: &str| -> Vec<Value> {
        let got = run([&path, "--format=json", "--stations", stations]);
        let json: Value = serde_json::from_str(&got.out).expect("JSON");
        let legs = json["legs"].as_array().expect("legs").clone();
        legs.into_iter()
            .map(|leg| serde_json::json!([leg["result"]["findings"], leg["result"]["force"]]))
            .collect()
    };
    let whole = answers("721");
    assert!(!whole.is_empty());
    assert_eq!(answers("2"), whole);
    assert_eq!(answers("90"), whole);
}

#[test]
fn csv_has_a_row_for_every_station() {
    let folder = folder("csv");
    let gear = demo();
    let path = gear_file(&folder, "demo.json", &gear);
    let got = run([&path, "--format", "csv", "--stations", "61"]);
    let options = Options {
        stations: 61,
        ..Options::default()
    };
    let mut wanted = gearswing_report::stations_csv_head();
    for leg in 0..gear.legs.len() {
        let rows = gearswing_report::stations_csv_rows(&path, &solve(&gear, leg, &options));
        wanted.push_str(&rows);
    }
    assert_eq!(got.out, wanted);
    let head: Vec<_> = got.out.lines().next().expect("a head").split(',').collect();
    for name in head
        .iter()
        .skip(3)
        .filter(|name| !["progress", "travel"].contains(name))
    {
        let has_unit = ["_m", "_rad", "_n", "_pa"]
            .iter()
            .any(|unit| name.ends_with(unit));
        assert!(has_unit, "{name} without unit");
    }
    assert!(got.out.lines().count() > 61 * gear.legs.len());
}

#[test]
fn text_of_the_demo() {
    let folder = folder("text");
    let gear = demo();
    let path = gear_file(&folder, "demo.json", &gear);
    let got = run([&path, "--stations", "7"]);
    assert_eq!((got.code, got.err.as_str()), (code_of(&gear), ""));
    let text = got.out.replace(&path, "demo.json");
    let file_line = text
        .lines()
        .position(|line| line.starts_with("File:"))
        .expect("a file line");
    let program = format!("Worked out by {}", crate::support::built());
    assert!(text.lines().any(|line| line == program), "{program}");
    let text: Vec<_> = text
        .lines()
        .enumerate()
        .filter(|(n, line)| *n != file_line && *line != program)
        .map(|(_, l)| l)
        .collect();
    insta::assert_snapshot!(text.join("\n"));
    let metric = run([&path, "--units", "mm"]);
    assert!(metric.out.contains(" bar ") && !metric.out.contains(" psi at"));
}

#[test]
fn every_starter_is_answered() {
    let folder = folder("starters");
    for example in gearswing_gearfile::STARTERS {
        let gear = starter(example.key);
        let path = file(&folder, example.key, example.text);
        let got = run([&path]);
        assert_eq!(
            (got.code, got.err.as_str()),
            (code_of(&gear), ""),
            "{}",
            example.key
        );
        for question in ["Does it clear?", "Can it be driven?", "Will it lock?"] {
            assert!(got.out.contains(question), "{}", example.key);
        }
        assert!(got.out.lines().all(|line| line == line.trim_end()));
    }
}

#[test]
fn several_files_make_one_array_and_the_worst_code() {
    let folder = folder("several");
    let (first, second) = (starter("folding_side"), demo());
    let a = gear_file(&folder, "a.json", &first);
    let b = gear_file(&folder, "b.json", &second);
    let got = run([&a, &b, "--format", "json", "--stations", "11"]);
    assert_eq!(got.code, code_of(&first).max(code_of(&second)));
    let json: Value = serde_json::from_str(&got.out).expect("JSON");
    let files: Vec<_> = json
        .as_array()
        .expect("an array")
        .iter()
        .map(|r| &r["file"])
        .collect();
    assert_eq!(files, [a.as_str(), b.as_str()]);
    let csv = run([&a, &b, "--format", "csv", "--stations", "11"]);
    let heads = csv
        .out
        .lines()
        .filter(|line| line.starts_with("file,leg,"))
        .count();
    assert_eq!(heads, 1);
    let text = run([&a, &b]);
    assert_eq!(text.out.matches("Not modeled").count(), 2);
}

#[test]
fn standard_input_and_out_file() {
    let folder = folder("out");
    let text = gearswing_gearfile::DEMO.text;
    let path = file(&folder, "demo.json", text);
    let out = folder.join("answers.csv");
    let out = out.to_str().expect("UTF-8");
    let direct = run([&path, "--format", "csv"]);
    let piped = run_with(["-", "--format", "csv", "--out", out], text.as_bytes());
    assert_eq!((piped.code, piped.out.as_str()), (direct.code, ""));
    let written = std::fs::read_to_string(out).expect("written");
    assert_eq!(written, direct.out.replace(&path, "standard input"));
}

#[test]
fn a_reader_that_goes_away_is_no_fault() {
    let folder = folder("pipe");
    let path = gear_file(&folder, "demo.json", &demo());
    let mut child = program()
        .args([&path, &path, &path, "--format", "json"])
        .stdin(Stdio::null())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    drop(child.stdout.take());
    let ended = child.wait_with_output().expect("the program ends");
    assert!(
        matches!(ended.status.code(), Some(0 | 1)),
        "{:?}",
        ended.status
    );
    assert_eq!(String::from_utf8_lossy(&ended.stderr), "");
}

#[test]
fn outcomes_are_ordered_as_the_codes() {
    assert!(Outcome::Good < Outcome::Bad && Outcome::Bad < Outcome::Unusable);
}

#[test]
fn against_prints_the_changes_and_both_answers() {
    let folder = folder("against");
    let before = demo();
    let mut now = before.clone();
    now.legs[2].wheel.tire.diameter = 17.0 * 0.0254;
    now.legs[1].actuator.bore = 1.25 * 0.0254;
    let old = gear_file(&folder, "before.json", &before);
    let new = gear_file(&folder, "now.json", &now);
    let got = run([&new, "--against", &old]);
    assert_eq!((got.code, got.err.as_str()), (code_of(&now), ""));
    for line in [
        "Left main, actuator bore: 1 in → 1 1/4 in",
        "Right main, overall diameter of the tire: 18 11/16 in → 17 in",
        "before: No: 0.18 in of interference",
    ] {
        assert!(got.out.contains(line), "{line}\n{}", got.out);
    }
    // the nose is as it was
    assert_eq!(
        got.out.matches("(as before)").count(),
        3 + 2 + 2,
        "{}",
        got.out
    );
    let same = run([&old, "--against", &old]);
    assert!(same.out.contains("None."));
    let refused = run([&new, "--against", &old, "--format", "json"]);
    assert_eq!(refused.code, 2);
    assert!(refused.err.contains("--against goes with text only"));
    let jacks = run([&new, "--against", &old, "--on-jacks"]);
    assert_eq!(jacks.code, 2);
    let twice = run([&new, &old, "--against", "-"]);
    assert_eq!(twice.code, 2);
    let missing = run([&new, "--against", "nowhere.json"]);
    assert_eq!(missing.code, 2);
    assert!(missing.err.contains("nowhere.json"), "{}", missing.err);
}

/// The sheets hold every sentence of the answers, and the drawing every piece of structure by its name.
#[test]
fn sheets_and_drawing_say_what_the_answers_say() {
    let folder = folder("sheets");
    let gear = demo();
    let path = gear_file(&folder, "demo.json", &gear);
    let json = run([&path, "--format", "json"]);
    let json: Value = serde_json::from_str(&json.out).expect("JSON");
    let sheets = run([&path, "--format", "html"]);
    assert_eq!((sheets.code, sheets.err.as_str()), (code_of(&gear), ""));
    for leg in json["legs"].as_array().expect("legs") {
        for words in leg["words"].as_array().expect("words") {
            let sentence = words["sentence"].as_str().expect("a sentence");
            let written = sentence.replace('&', "&amp;").replace('"', "&quot;");
            assert!(sheets.out.contains(&written), "{sentence}");
        }
    }
    let pictures = sheets.out.matches("<svg ").count();
    // of each leg the drawing, three details and the curves
    assert_eq!(pictures, 5 * gear.legs.len());
    for (index, leg) in gear.legs.iter().enumerate() {
        let number = (index + 1).to_string();
        let drawing = run([&path, "--format", "svg", "--leg", &number]);
        assert_eq!(drawing.err, "");
        let read = roxmltree::Document::parse(&drawing.out).expect("XML");
        let root = read.root_element();
        assert_eq!(root.tag_name().name(), "svg");
        let texts = root.descendants().filter(roxmltree::Node::is_text);
        let texts: Vec<&str> = texts.filter_map(|node| node.text()).collect();
        for piece in &leg.well {
            assert!(
                texts.iter().any(|text| text.trim() == piece.name),
                "{}",
                piece.name
            );
        }
        // what is drawn stands on the sheets, where circles lead to the details besides
        let paths = root.descendants().filter_map(|node| node.attribute("d"));
        for path in paths {
            assert!(sheets.out.contains(path), "leg {number}: {path}");
        }
        let circles = |text: &str| text.matches("<circle ").count();
        let alone = circles(&drawing.out);
        assert!(alone > 0 && circles(&sheets.out) > alone);
    }
    let one = run([&path, "--format", "html", "--leg", "2"]);
    assert_eq!(one.out.matches("<svg ").count(), 5);
}

/// A leg that cannot be worked out has no drawing; that is said, and no file of one is made.
#[test]
fn there_is_no_drawing_of_a_faulty_leg() {
    let folder = folder("no-drawing");
    let mut gear = demo();
    gear.legs[0].actuator.bore = -1.0;
    let path = gear_file(&folder, "faulty.json", &gear);
    let drawing = run([&path, "--format", "svg", "--leg", "1"]);
    assert_eq!((drawing.code, drawing.out.as_str()), (2, ""));
    assert!(drawing.err.contains("no drawing"), "{}", drawing.err);
}

/// Where no previous tire is kept that is said, and nothing claims that it was solved with.
#[test]
fn a_gear_without_a_previous_tire_says_so() {
    let folder = folder("no-previous");
    let mut gear = demo();
    let with = gear_file(&folder, "with.json", &gear);
    gear.kept.clear();
    let path = gear_file(&folder, "without.json", &gear);
    let got = run([&path, "--format", "json", "--tire", "previous"]);
    let json: Value = serde_json::from_str(&got.out).expect("JSON");
    assert_eq!(json["tire"], "fitted");
    assert!(got.err.contains("keeps no previous tire"), "{}", got.err);
    let sheets = run([&with, "--format", "html", "--tire", "previous"]);
    assert!(sheets.out.contains(gearswing_report::WITH_PREVIOUS_TIRE));
}
