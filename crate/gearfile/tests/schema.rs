//! The gear file described key by key: `fixtures/schema/gear.schema.json` is what the types say.
#![allow(clippy::unwrap_used, reason = "a test stops at what it cannot read")]
use std::path::PathBuf;

use gearswing_gear::model::Gear;
use gearswing_gearfile::{DEMO, FORMAT, STARTERS, VERSION};
use serde_json::{Value, json};

/// Set to write the schema anew after a change of the types.
const UPDATE: &str = "GEARSWING_UPDATE_SCHEMA";

fn schema() -> Value {
    let mut gear = schemars::schema_for!(Gear).to_value();
    let parts = gear.as_object_mut().unwrap();
    let mut defs = parts.remove("$defs").unwrap();
    let dialect = parts.remove("$schema").unwrap();
    defs.as_object_mut()
        .unwrap()
        .insert("Gear".to_owned(), gear);
    defs.as_object_mut()
        .unwrap()
        .insert("Kept".to_owned(), kept());
    defs.as_object_mut()
        .unwrap()
        .insert("KeptValue".to_owned(), kept_value());
    json!({
        "$schema": dialect,
        "title": "Gear file",
        "description": "Retractable landing gear of one airplane. SI units, as the end of each \
            key says: m, kg, N, Pa, m2, m3, m_s, m3_s, s, V, A, ohm, rad. Every position is at gear down in airframe \
            axes: x right, y up, angles counter-clockwise positive. Keys that are not listed are \
            refused.",
        "type": "object",
        "properties": {
            "format": {"description": "Says that this is a gear file.", "const": FORMAT},
            "version": {"description": "Version of the layout: what is written is the lowest that has all keys in use.", "type": "integer", "minimum": 1, "maximum": VERSION},
            "gear": {"$ref": "#/$defs/Gear"},
            "kept": {"description": "States kept to compare with, as what differs from the gear. Paths are those of the fields of `gear`.", "type": "array", "items": {"$ref": "#/$defs/Kept"}},
            "before": {"description": "Which of the kept states is compared with, counted from 0; absent = none.", "type": "integer", "minimum": 0},
        },
        "required": ["format", "version", "gear"],
        "additionalProperties": false,
        "$defs": defs,
    })
}

/// A kept state; the crate's own tests hold that it is written so.
fn kept() -> Value {
    json!({
        "type": "object",
        "properties": {
            "name": {"description": "What the person calls it.", "type": "string"},
            "sent": {"description": "It is somebody else's, come by a link or a file.", "type": "boolean"},
            "values": {"description": "What stands elsewhere than in the gear, or is another there.", "type": "array", "items": {"$ref": "#/$defs/KeptValue"}},
            "legs": {"description": "All legs, where there are others or more or fewer.", "type": "array", "items": {"$ref": "#/$defs/Leg"}},
            "gear": {"description": "The whole state, where nothing less holds it.", "$ref": "#/$defs/Gear"},
        },
        "required": ["name"],
        "additionalProperties": false,
    })
}

fn kept_value() -> Value {
    json!({
        "description": "A value and where it stands; one of no kind is a number that is left empty.",
        "type": "object",
        "properties": {
            "at": {"description": "Path of its field, as legs[1].actuator.bore_m.", "type": "string"},
            "number": {"description": "A number or coordinate.", "type": "number"},
            "text": {"description": "A text, the key of the option taken, or those of a set with blanks between.", "type": "string"},
            "points": {"description": "An outline (m).", "type": "array", "items": {"type": "array", "items": {"type": "number"}, "minItems": 2, "maxItems": 2}},
        },
        "required": ["at"],
        "additionalProperties": false,
    })
}

#[test]
fn is_what_the_types_say() {
    let path =
        PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/schema/gear.schema.json");
    let text = serde_json::to_string_pretty(&schema()).unwrap() + "\n";
    if std::env::var_os(UPDATE).is_some() {
        std::fs::write(&path, &text).unwrap();
    }
    let stored = std::fs::read_to_string(&path).unwrap_or_default();
    assert!(
        stored == text,
        "{} is out of date: run the test once with {UPDATE}=1",
        path.display()
    );
}

/// Every key of a value, each once, as "actuator.rod_m" with the name of its part before it.
fn keys(value: &Value, found: &mut Vec<String>) {
    match value {
        Value::Object(map) => {
            for (key, value) in map {
                found.push(key.clone());
                keys(value, found);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| keys(item, found)),
        _ => {}
    }
}

#[test]
fn every_key_of_a_file_is_described() {
    let schema = schema();
    let mut described = Vec::new();
    properties(&schema, &mut described);
    let mut seen = 0;
    let v1 = include_str!("../../../fixtures/versions/v1.json");
    let v4 = include_str!("../../../fixtures/versions/v4.json");
    let v5 = include_str!("../../../fixtures/versions/v5.json");
    let noted = include_str!("../../../fixtures/versions/v5_notes.json");
    for text in STARTERS
        .iter()
        .chain([&DEMO])
        .map(|e| e.text)
        .chain([v1, v4, v5, noted])
    {
        let mut used = Vec::new();
        keys(&serde_json::from_str(text).unwrap(), &mut used);
        for key in used {
            let about = described.iter().find(|(name, _)| *name == key);
            assert!(
                about.is_some_and(|(_, told)| *told),
                "{key} is not described"
            );
            seen += 1;
        }
    }
    assert!(seen > 500);
}

/// Every property of a schema, and whether something is told about it.
fn properties(schema: &Value, found: &mut Vec<(String, bool)>) {
    match schema {
        Value::Object(map) => {
            if let Some(Value::Object(properties)) = map.get("properties") {
                // a variant is described beside its only property
                let beside = map.contains_key("description") && properties.len() == 1;
                for (name, about) in properties {
                    let told = about.get("description").is_some() || about.get("$ref").is_some();
                    found.push((name.clone(), told || beside));
                }
            }
            map.values().for_each(|value| properties(value, found));
        }
        Value::Array(items) => items.iter().for_each(|item| properties(item, found)),
        _ => {}
    }
}

#[test]
fn the_guide_is_right() {
    let guide = include_str!("../../../fixtures/schema/README.md");
    let from = guide.find("```json\n").unwrap() + 8;
    let text = &guide[from..from + guide[from..].find("```").unwrap()];
    let gear = gearswing_gearfile::read(text).unwrap();
    gearswing_solver::faults::check_gear(&gear).unwrap();
    assert_eq!(gear.legs.len(), 1);
}
