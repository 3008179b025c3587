//! Who may depend on whom, read from `cargo metadata`.

use super::finding::Finding;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// Direct dependencies that each crate may have; build and test dependencies are free.
const ALLOWED: &[(&str, &[&str])] = &[
    ("gearswing-gear", &["gearswing-units", "nalgebra", "serde"]),
    (
        "gearswing-solver",
        &[
            "gearswing-gear",
            "nalgebra",
            "parry2d-f64",
            "serde",
            "thiserror",
        ],
    ),
    ("gearswing-units", &["thiserror"]),
    ("gearswing-version", &[]),
    (
        "gearswing-gearfile",
        &[
            "gearswing-gear",
            "gearswing-solver",
            "serde",
            "serde_json",
            "serde_path_to_error",
            "miniz_oxide",
            "base64",
            "crc",
            "thiserror",
        ],
    ),
    (
        "gearswing-report",
        &[
            "gearswing-gear",
            "gearswing-gearfile",
            "gearswing-solver",
            "gearswing-units",
            "serde",
            "serde_json",
        ],
    ),
    (
        "gearswing-app",
        &[
            "gearswing-gear",
            "gearswing-solver",
            "gearswing-units",
            "gearswing-gearfile",
            "gearswing-report",
            "gearswing-work",
            "litemap",
            "qrcodegen",
        ],
    ),
    (
        "gearswing-work",
        &[
            "gearswing-gear",
            "gearswing-gearfile",
            "gearswing-solver",
            "postcard",
            "serde",
        ],
    ),
    (
        "gearswing-worker",
        &[
            "gearswing-version",
            "gearswing-work",
            "wasm-bindgen",
            "js-sys",
        ],
    ),
    (
        "gearswing-page",
        &[
            "gearswing-app",
            "gearswing-version",
            "gearswing-work",
            "wasm-bindgen",
            "web-sys",
            "js-sys",
            "litemap",
            "console_error_panic_hook",
        ],
    ),
    (
        "gearswing",
        &[
            "gearswing-app",
            "gearswing-gear",
            "gearswing-gearfile",
            "gearswing-report",
            "gearswing-solver",
            "gearswing-units",
            "gearswing-version",
            "anyhow",
            "lexopt",
        ],
    ),
];

/// Allowed everywhere as an option that the page leaves off: it writes the description of the gear file.
const OPTIONAL: &[&str] = &["schemars"];

/// Crates that no browser, clock or chance may reach, however far down.
const PURE: &[&str] = &[
    "gearswing-gear",
    "gearswing-solver",
    "gearswing-units",
    "gearswing-version",
    "gearswing-gearfile",
    "gearswing-report",
    "gearswing-work",
    "gearswing-app",
];

/// What must not be under them.
const IMPURE: &[&str] = &["web-sys", "js-sys", "wasm-bindgen", "getrandom"];

/// Members that may use everything and that nothing may use.
const FREE: &[&str] = &[
    "xtask",
    "gearswing-tests",
    "gearswing-samples",
    "gearswing-browser-tests",
    "gearswing-fuzz",
    "gearswing-reference",
    "gearswing-page-tests",
];

/// Packages by id, with their names and normal dependencies, as cargo resolved them for the browser.
struct Graph {
    names: BTreeMap<String, String>,
    under: BTreeMap<String, Vec<String>>,
}

/// The rules on what `cargo metadata --filter-platform wasm32-unknown-unknown` printed.
pub(crate) fn check(metadata: &Value, found: &mut Vec<Finding>) {
    direct(metadata, found);
    let graph = Graph::read(metadata);
    for pure in PURE {
        for (impure, path) in graph.reached(pure, IMPURE) {
            found.push(Finding::at(
                pure,
                format!("reaches {impure} by way of {path}"),
            ));
        }
    }
}

fn direct(metadata: &Value, found: &mut Vec<Finding>) {
    let members: BTreeSet<&str> = list(metadata, "workspace_members")
        .filter_map(Value::as_str)
        .collect();
    for package in list(metadata, "packages") {
        if !members.contains(text(package, "id")) || FREE.contains(&text(package, "name")) {
            continue;
        }
        let name = text(package, "name");
        let Some((_, allowed)) = ALLOWED.iter().find(|(row, _)| *row == name) else {
            found.push(Finding::at(
                name,
                "has no row in the table of who may depend on whom",
            ));
            continue;
        };
        for dependency in list(package, "dependencies").filter(|one| one["kind"].is_null()) {
            let used = text(dependency, "name");
            let option = dependency["optional"] == true && OPTIONAL.contains(&used);
            if !allowed.contains(&used) && !option {
                found.push(Finding::at(name, format!("must not depend on {used}")));
            }
        }
    }
}

impl Graph {
    fn read(metadata: &Value) -> Self {
        let names = list(metadata, "packages")
            .map(|package| {
                (
                    text(package, "id").to_owned(),
                    text(package, "name").to_owned(),
                )
            })
            .collect();
        let normal = |edge: &&Value| list(edge, "dep_kinds").any(|kind| kind["kind"].is_null());
        let under = list(&metadata["resolve"], "nodes")
            .map(|node| {
                let edges = list(node, "deps").filter(normal);
                let ids = edges.map(|edge| text(edge, "pkg").to_owned()).collect();
                (text(node, "id").to_owned(), ids)
            })
            .collect();
        Self { names, under }
    }

    /// Each unwanted package under `top`, with the way to it. A crate that doesn't exist reaches nothing.
    fn reached<'a>(&self, top: &str, unwanted: &[&'a str]) -> Vec<(&'a str, String)> {
        let mut way: BTreeMap<&str, String> = BTreeMap::new();
        let mut left: Vec<&str> = Vec::new();
        for (id, name) in self.names.iter().filter(|(_, name)| *name == top) {
            way.insert(id, name.clone());
            left.push(id);
        }
        let mut reached = Vec::new();
        while let Some(id) = left.pop() {
            for below in self.under.get(id).into_iter().flatten() {
                if way.contains_key(below.as_str()) {
                    continue;
                }
                let Some(name) = self.names.get(below) else {
                    continue;
                };
                let path = format!("{} > {name}", way.get(id).map_or("", String::as_str));
                if let Some(bad) = unwanted.iter().find(|bad| *bad == name) {
                    reached.push((*bad, path.clone()));
                }
                way.insert(below, path);
                left.push(below);
            }
        }
        reached
    }
}

fn list<'a>(value: &'a Value, key: &str) -> impl Iterator<Item = &'a Value> {
    value[key].as_array().into_iter().flatten()
}

fn text<'a>(value: &'a Value, key: &str) -> &'a str {
    value[key].as_str().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn found(metadata: &Value) -> Vec<String> {
        let mut found = Vec::new();
        check(metadata, &mut found);
        found.iter().map(ToString::to_string).collect()
    }

    fn node(id: &str, below: &[&str], kind: Option<&str>) -> Value {
        let deps: Vec<_> = below
            .iter()
            .map(|pkg| json!({ "pkg": pkg, "dep_kinds": [{ "kind": kind }] }))
            .collect();
        json!({ "id": id, "deps": deps })
    }

    fn workspace(direct: &str, kind: Option<&str>) -> Value {
        json!({
            "workspace_members": ["u"],
            "packages": [
                { "id": "u", "name": "gearswing-units", "dependencies": [{ "name": direct, "kind": kind }] },
                { "id": "t", "name": "thiserror", "dependencies": [] },
                { "id": "g", "name": "getrandom", "dependencies": [] },
            ],
            "resolve": { "nodes": [node("u", &["t"], kind), node("t", &["g"], None), node("g", &[], None)] },
        })
    }

    #[test]
    fn what_lies_far_down_is_found_with_its_way() {
        let found = found(&workspace("thiserror", None));
        assert_eq!(
            found,
            [
                "gearswing-units: reaches getrandom by way of gearswing-units > thiserror > getrandom"
            ]
        );
    }

    #[test]
    fn test_dependencies_are_free() {
        assert!(found(&workspace("proptest", Some("dev"))).is_empty());
    }

    #[test]
    fn direct_dependencies_follow_the_table() {
        let found = found(&workspace("serde", None));
        assert!(
            found.contains(&"gearswing-units: must not depend on serde".to_owned()),
            "{found:?}"
        );
    }
}
