//! Runs the benchmarks: every bench target of the workspace.

use crate::process::{cargo, output, run, timed};
use anyhow::{Context, Result, bail};
use serde_json::Value;

/// Runs all benchmarks, or those whose name holds `filter`.
pub(crate) fn bench(filter: Option<&str>) -> Result<()> {
    let metadata = output(cargo().args(["metadata", "--format-version", "1", "--no-deps"]))?;
    let metadata: Value = serde_json::from_str(&metadata)
        .context("cargo metadata printed something else than JSON")?;
    let targets = targets(&metadata);
    if targets.is_empty() {
        bail!("no crate has a benchmark");
    }
    for (package, target) in targets {
        timed(&format!("benchmark {target} of {package}"), || {
            let mut command = cargo();
            command.args(["bench", "--package", &package, "--bench", &target]);
            if let Some(filter) = filter {
                command.args(["--", filter]);
            }
            run(&mut command)
        })?;
    }
    Ok(())
}

/// Package and name of each bench target. Named one by one: the test harness refuses criterion's arguments.
fn targets(metadata: &Value) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for package in metadata["packages"].as_array().into_iter().flatten() {
        for target in package["targets"].as_array().into_iter().flatten() {
            let is_bench = target["kind"]
                .as_array()
                .is_some_and(|kinds| kinds.contains(&"bench".into()));
            if let (true, Some(package), Some(name)) =
                (is_bench, package["name"].as_str(), target["name"].as_str())
            {
                found.push((package.to_owned(), name.to_owned()));
            }
        }
    }
    found
}
