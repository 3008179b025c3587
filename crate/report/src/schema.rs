//! The JSON described key by key: `fixtures/schema/result.schema.json` is what the types say.
use std::path::PathBuf;

use serde_json::{Value, json};

use crate::json::Envelope;
use crate::{RESULT_FORMAT, RESULT_VERSION};

/// Set to write the schema anew after a change of the types.
const UPDATE: &str = "GEARSWING_UPDATE_SCHEMA";

fn schema() -> Value {
    let mut schema = schemars::generate::SchemaSettings::draft2020_12()
        .for_serialize()
        .into_generator()
        .into_root_schema_for::<Envelope>()
        .to_value();
    schema["title"] = json!("Result");
    schema["description"] = json!(
        "What is printed for one gear file. SI units, as the end of each key says: m, kg, N, Pa, \
         m2, m3, m3_s, s, V, A, J, rad, m_rad (meters in a radian); keys without a unit are pure numbers. Positions are \
         in airframe axes: x right, y up, angles counter-clockwise positive. A number that is not \
         finite is null. Several files give an array of these. A file that cannot be used has \
         \"error\" in place of \"legs\" and what goes with them."
    );
    schema["properties"]["error"] = json!({
        "description": "Why the file cannot be used.",
        "type": "string",
    });
    let of_every_file = ["format", "version", "file"];
    let solved = schema["required"].as_array().unwrap().iter();
    // Results of the same layout were printed before they named the program.
    let solved: Vec<_> = solved
        .filter(|key| *key != "program" && !of_every_file.iter().any(|common| *key == common))
        .cloned()
        .collect();
    schema["oneOf"] = json!([{"required": solved}, {"required": ["error"]}]);
    schema["required"] = json!(of_every_file);
    schema["properties"]["format"]["const"] = json!(RESULT_FORMAT);
    schema["properties"]["version"]["const"] = json!(RESULT_VERSION);
    schema
}

#[test]
fn is_what_the_types_say() {
    let path =
        PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../fixtures/schema/result.schema.json");
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
