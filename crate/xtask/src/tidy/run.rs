//! All rules, on this project.

use super::finding::{Finding, text_files};
use super::{dependencies, documented, floors, page, text, words};
use crate::build::WASM;
use crate::process::{cargo, output, root};
use crate::rooms;
use anyhow::{Context, Result, bail};

/// Every broken rule.
pub(crate) fn found() -> Result<Vec<Finding>> {
    let files = text_files(&root())?;
    let classes = words::classes(&files);
    let mut found = Vec::new();
    for file in &files {
        text::check(file, &mut found);
        page::check(file, &mut found);
        documented::check(file, &mut found);
        floors::check(file, &mut found);
        words::check(file, &classes, &mut found);
    }
    text::stale_exemptions(&files, &mut found);
    words::stale_exceptions(&files, &mut found);
    found.extend(
        rooms::wrong()
            .into_iter()
            .map(|what| Finding::at("rooms", what)),
    );
    let metadata = output(cargo().args([
        "metadata",
        "--format-version",
        "1",
        "--filter-platform",
        WASM,
    ]))?;
    let metadata = serde_json::from_str(&metadata)
        .context("cargo metadata printed something else than JSON")?;
    dependencies::check(&metadata, &mut found);
    Ok(found)
}

/// Prints every broken rule and fails when there is one.
pub(crate) fn tidy() -> Result<()> {
    let found = found()?;
    for finding in &found {
        println!("{finding}");
    }
    match found.len() {
        0 => {
            println!("The project keeps its rules.");
            Ok(())
        }
        1 => bail!("1 rule is broken, see above"),
        n => bail!("{n} rules are broken, see above"),
    }
}

#[cfg(test)]
mod tests {
    #[test]
    fn the_project_keeps_its_rules() {
        let found = super::found().unwrap();
        let lines: Vec<_> = found.iter().map(ToString::to_string).collect();
        assert!(lines.is_empty(), "\n{}", lines.join("\n"));
    }
}
