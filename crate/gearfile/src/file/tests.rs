//! Reading, writing, round trips.
use proptest::prelude::*;

use super::*;
use crate::arbitrary::gear;
use crate::{DEMO, STARTERS};

/// The starter as the first version wrote it.
fn first_version() -> String {
    let text = STARTERS[0]
        .text
        .replacen("\"version\": 5", "\"version\": 1", 1);
    text.replacen(",\n    \"points_from\": \"trunnion\"", "", 1)
}

/// The starter with one piece of its text replaced.
fn with(from: &str, to: &str) -> Result<gearswing_gear::model::Gear, OpenError> {
    let text = &first_version();
    assert!(text.contains(from), "{from}");
    read(&text.replacen(from, to, 1))
}

#[test]
fn examples_open_and_come_back() {
    let mut opened = 0;
    for example in std::iter::once(&DEMO).chain(&STARTERS) {
        for gear in [example.gear(), example.gear_in_inches()] {
            let gear = gear.unwrap();
            assert_eq!(read(&to_text(&gear).unwrap()).unwrap(), gear);
            opened += 1;
        }
    }
    assert_eq!(opened, 14);
}

#[test]
fn starters_are_laid_out_as_written() {
    for starter in &STARTERS {
        assert_eq!(to_text(&starter.gear().unwrap()).unwrap(), starter.text);
        let inch = starter.gear_in_inches().unwrap();
        assert_eq!(to_text(&inch).unwrap(), starter.inch);
    }
}

/// A key that says which version a file needs is not one that an older version has elsewhere.
#[test]
fn keys_of_a_newer_version_are_new() {
    use gearswing_gear::field::Field;
    for (key, since) in super::envelope::newer_keys() {
        for field in Field::ALL {
            let info = field.info();
            let same = info.key.rsplit('.').next() == Some(key);
            assert!(!same || info.since == since, "{key}: {}", info.key);
        }
    }
}

#[test]
fn what_version_1_wrote_by_itself_is_not_typed() {
    let with_margin = |version: u32, margin: &str| {
        let text =
            first_version().replacen("\"version\": 1", &format!("\"version\": {version}"), 1);
        let available = "\"available_pressure_pa\":";
        let margin = format!("\"margin_wanted\": {margin}, {available}");
        read(&text.replacen(available, &margin, 1)).unwrap()
    };
    assert_eq!(with_margin(1, "0.1").supply.margin_wanted, None);
    assert_eq!(with_margin(1, "0.15").supply.margin_wanted, Some(0.15));
    let typed = with_margin(2, "0.1");
    assert_eq!(typed.supply.margin_wanted, Some(0.1));
    assert!(to_text(&typed).unwrap().contains("\"version\": 2"));
    let plain = with_margin(1, "0.1");
    assert!(to_text(&plain).unwrap().contains("\"version\": 1"));
}

#[test]
fn says_what_is_no_gear_file() {
    assert_eq!(read(""), Err(OpenError::Empty));
    assert_eq!(read("\u{feff} \n"), Err(OpenError::Empty));
    for text in ["[]", "1", "\"gear\"", "null", "{}", "[\"gearswing-gear\"]"] {
        assert_eq!(read(text), Err(OpenError::NotGearFile), "{text}");
    }
    let other = r#"{"format": "something", "version": 1, "gear": 3}"#;
    assert_eq!(read(other), Err(OpenError::NotGearFile));
    let long = " ".repeat(READ_LIMIT + 1);
    assert!(matches!(read(&long), Err(OpenError::TooLarge { .. })));
}

#[test]
fn says_where_json_ends() {
    let text = STARTERS[0].text;
    let cut = &text[..text.len() / 2];
    let error = read(cut).unwrap_err();
    let lines = cut.lines().count();
    assert!(
        matches!(error, OpenError::NotJson { line, .. } if line == lines),
        "{error}"
    );
    assert!(matches!(
        with("\"legs\"", "legs"),
        Err(OpenError::NotJson { line: 6, .. }) | Err(OpenError::NotJson { line: 5, .. })
    ));
    let more = format!("{text}}}");
    assert!(matches!(read(&more), Err(OpenError::NotJson { .. })));
    for word in ["NaN", "Infinity", "1e999"] {
        let got = with("\"load_factor\": 1", &format!("\"load_factor\": {word}"));
        assert!(matches!(got, Err(OpenError::NotJson { .. })), "{got:?}");
    }
    let deep = "[".repeat(100_000);
    assert!(matches!(read(&deep), Err(OpenError::NotJson { .. })));
}

#[test]
fn every_cut_is_told() {
    let text = STARTERS[0].text.trim_end();
    for at in 1..text.len() {
        if text.is_char_boundary(at) {
            let got = read(&text[..at]);
            assert!(
                matches!(got, Err(OpenError::NotJson { .. })),
                "{at}: {got:?}"
            );
        }
    }
}

#[test]
fn says_which_version_is_newer() {
    let version = VERSION + 1;
    assert_eq!(
        with("\"version\": 1", &format!("\"version\": {version}")),
        Err(OpenError::NewerVersion {
            version,
            known: VERSION
        })
    );
    for version in ["0", "-1", "1.5", "\"1\"", "null"] {
        let got = with("\"version\": 1", &format!("\"version\": {version}"));
        assert!(
            matches!(&got, Err(OpenError::Field { path, .. }) if path == "version"),
            "{version}: {got:?}"
        );
    }
}

#[test]
fn names_the_field() {
    let field = |from, to| match with(from, to) {
        Err(OpenError::Field {
            path,
            what: ContentFault::Reader(what),
            line,
            ..
        }) => (path, what, line),
        other => panic!("{other:?}"),
    };
    let (path, what, line) = field("\"rod_m\": 0.012", "\"rod_m\": \"thick\"");
    assert_eq!(path, "gear.legs[0].actuator.rod_m");
    assert!(what.starts_with("invalid type: string \"thick\""), "{what}");
    let text = STARTERS[0].text;
    let wanted = text[..text.find("\"rod_m\"").unwrap()].lines().count();
    assert_eq!(line, wanted);
    let (path, what, _) = field("\"rod_m\": 0.012,", "");
    assert_eq!(path, "gear.legs[0].actuator");
    assert_eq!(what, "missing field `rod_m`");
    let (path, ..) = field("\"thickness_m\": 0.028", "\"thickness_m\": null");
    assert_eq!(path, "gear.legs[0].brace.folding.upper.thickness_m");
    let (path, what, _) = field("\"view\": \"side\"", "\"view\": \"top\"");
    assert_eq!(path, "gear.legs[0].view");
    assert!(
        what.contains("`side`") && what.contains("`front`"),
        "{what}"
    );
    let (path, ..) = field("\"trunnion_m\": [0, 0]", "\"trunnion_m\": [0]");
    assert_eq!(path, "gear.legs[0].trunnion_m");
    let (_, what, _) = field("\"name\": ", "\"name\": \"twice\", \"name\": ");
    assert_eq!(what, "duplicate field `name`");
    let (_, what, _) = field("\"version\": 1", "\"version\": 1, \"version\": 1");
    assert_eq!(what, "duplicate field `version`");
}

#[test]
fn takes_no_list_for_an_object() {
    // The values of `clearance_rule` in their order, which no file has ever had.
    let listed = with(
        "\"clearance_rule\": {}",
        "\"clearance_rule\": [0.01, 0.01, 0.01]",
    );
    assert!(
        matches!(&listed, Err(OpenError::Field { path, what: ContentFault::Reader(what), .. })
            if path.starts_with("gear.clearance_rule") && what.contains("sequence")),
        "{listed:?}"
    );
}

#[test]
fn names_the_unknown_key() {
    let unknown = |from, to| match with(from, to) {
        Err(OpenError::UnknownField { path, what, .. }) => (path, what),
        other => panic!("{other:?}"),
    };
    let (path, what) = unknown("\"rod_m\"", "\"rod_in\"");
    assert_eq!(path, "gear.legs[0].actuator.rod_in");
    assert!(
        what.starts_with("unknown field `rod_in`, expected one of"),
        "{what}"
    );
    let (path, _) = unknown("\"version\": 1", "\"version\": 1, \"writer\": 1");
    assert_eq!(path, "writer");
    let (path, _) = unknown("\"upper\": {", "\"upper\": {\"mass\": 1,");
    assert_eq!(path, "gear.legs[0].brace.folding.upper.mass");
}

#[test]
fn what_is_not_finite_is_not_saved() {
    for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let mut gear = STARTERS[0].gear().unwrap();
        gear.legs[0].actuator.rod = bad;
        let path = "gear.legs[0].actuator.rod_m".to_owned();
        assert_eq!(to_text(&gear), Err(SaveError::NotFinite { path }));
        let mut gear = STARTERS[0].gear().unwrap();
        gear.legs[0].well[1].shape.points_mut()[2].y = bad;
        let path = "gear.legs[0].well[1].shape.solid.points_m[2][1]".to_owned();
        assert_eq!(to_text(&gear), Err(SaveError::NotFinite { path }));
        let mut gear = STARTERS[0].gear().unwrap();
        gear.clearance_rule.parts = Some(bad);
        let path = "gear.clearance_rule.parts_m".to_owned();
        assert_eq!(to_text(&gear), Err(SaveError::NotFinite { path }));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn round_trip_keeps_every_bit(gear in gear()) {
        let text = to_text(&gear).unwrap();
        let back = read(&text).unwrap();
        prop_assert_eq!(&back, &gear);
        // == does not tell -0 from 0, the text does
        prop_assert_eq!(to_text(&back).unwrap(), text);
    }

    #[test]
    fn any_text_is_answered(text in any::<String>()) {
        prop_assert!(read(&text).is_err());
    }

    #[test]
    fn any_change_is_answered(at in 0_usize..4000, byte in any::<u8>()) {
        let mut bytes = STARTERS[1].text.as_bytes().to_vec();
        if let Some(place) = bytes.get_mut(at) {
            *place = byte;
        }
        // whatever it says: an error, or a gear that can be written again
        if let Ok(gear) = read(&String::from_utf8_lossy(&bytes)) {
            prop_assert!(to_text(&gear).is_ok());
        }
    }

    #[test]
    fn any_json_is_answered(text in "[{}\\[\\]:,\"0-9a-z.eE+-]{0,200}") {
        let text = format!("{{\"format\":\"gearswing-gear\",{text}");
        prop_assert!(read(&text).is_err());
    }
}

/// The path at which a text broken off at the fault breaks off is the one that a reader that tracks its way tells.
#[test]
fn a_fault_is_told_where_it_is() {
    use super::objects::Objects;
    use super::read::path_of;
    use gearswing_gear::model::Gear;
    use serde::Deserialize;
    let tracked = |text: &str| {
        let mut reader = serde_json::Deserializer::from_str(text);
        let read: Result<Gear, _> = serde_path_to_error::deserialize(Objects(&mut reader));
        read.err()
            .map(|error| (error.path().to_string(), error.into_inner()))
    };
    let mut compared = 0;
    for text in [
        include_str!("../../../../fixtures/versions/v1.json"),
        include_str!("../../../../fixtures/versions/v2.json"),
    ] {
        let gear = read(text).unwrap();
        let [readable, compact] =
            [crate::layout::readable, crate::layout::compact].map(|by| by(&gear).unwrap());
        let at = |what: &'static str, text: &str| -> Vec<usize> {
            text.match_indices(what).map(|(at, _)| at).collect()
        };
        let mut damaged: Vec<String> = Vec::new();
        for text in [&readable, &compact] {
            for (step, mark) in [(7, "\":"), (3, "["), (5, "{"), (9, ",")] {
                for at in at(mark, text).into_iter().step_by(step) {
                    let (before, behind) = text.split_at(at + mark.len());
                    for put in [
                        "\"x\",",
                        "true,",
                        "7,",
                        "[],",
                        "{},",
                        "\"bad\":1,",
                        "-1e3,",
                        "null,",
                        "[1,2,3],",
                        "{\"a\":1},",
                    ] {
                        damaged.push(format!("{before}{put}{behind}"));
                    }
                    // a key renamed, a value in the place of another
                    damaged.push(format!("{}_{}", &text[..at], &text[at..]));
                    let end = behind.find([',', '}', ']']).unwrap_or(0);
                    for put in ["\"x\"", "true", "7", "[]", "{}", "[1]"] {
                        damaged.push(format!("{before}{put}{}", &behind[end..]));
                    }
                }
            }
        }
        for text in damaged {
            if serde_json::from_str::<serde::de::IgnoredAny>(&text).is_err() {
                continue;
            }
            let Some((path, error)) = tracked(&text) else {
                continue;
            };
            let own = Gear::deserialize(Objects(&mut serde_json::Deserializer::from_str(&text)))
                .unwrap_err();
            assert_eq!(own.to_string(), error.to_string());
            assert_eq!(path_of(&text, &own), path, "{error}");
            compared += 1;
        }
    }
    assert!(compared > 1_000, "{compared}");
}
