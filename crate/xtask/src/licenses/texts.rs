//! License texts in a crate's source, and whether they are those that its manifest names.

use anyhow::{Context, Result, bail};
use std::fs;
use std::path::{Path, PathBuf};

/// How the name of a file or directory with notices begins, in any case.
const NAMES: [&str; 7] = [
    "license",
    "licence",
    "licenses",
    "copying",
    "copyright",
    "notice",
    "unlicense",
];

/// A sentence of each license by which its text is known; by the texts of the SPDX license list.
const KNOWN: &[(&str, &str)] = &[
    (
        "0BSD",
        "permission to use, copy, modify, and/or distribute this software for any purpose",
    ),
    ("Apache-2.0", "apache license version 2.0, january 2004"),
    (
        "BSD-3-Clause",
        "neither the name of the copyright holder nor the names of its contributors",
    ),
    (
        "MIT",
        "to any person obtaining a copy of this software and associated documentation files",
    ),
    (
        "Unicode-3.0",
        "to any person obtaining a copy of data files and any associated documentation",
    ),
    (
        "Unlicense",
        "this is free and unencumbered software released into the public domain",
    ),
    (
        "Zlib",
        "permission is granted to anyone to use this software for any purpose",
    ),
];

/// All notices in the directory of a crate's source, each with its line ends made alike.
pub(crate) fn texts(dir: &Path) -> Result<Vec<String>> {
    let mut files: Vec<PathBuf> = Vec::new();
    for path in entries(dir)?.into_iter().filter(|path| has_notices(path)) {
        if path.is_dir() {
            files.extend(entries(&path)?.into_iter().filter(|inner| inner.is_file()));
        } else {
            files.push(path);
        }
    }
    files.sort();
    if files.is_empty() {
        return Ok(head_comment(&dir.join("src/lib.rs"))?.into_iter().collect());
    }
    files
        .iter()
        .map(|file| {
            let text = fs::read_to_string(file)
                .with_context(|| format!("could not read {}", file.display()))?;
            let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
            Ok(lines.join("\n").trim_matches('\n').to_owned())
        })
        .collect()
}

/// The comment at the head of a source file, for libraries whose notices stand nowhere else.
fn head_comment(source: &Path) -> Result<Option<String>> {
    if !source.is_file() {
        return Ok(None);
    }
    let text = fs::read_to_string(source)
        .with_context(|| format!("could not read {}", source.display()))?;
    Ok(comment_of(&text))
}

/// What stands in the block comment with which a text begins.
fn comment_of(text: &str) -> Option<String> {
    let (inside, _) = text.trim_start().strip_prefix("/*")?.split_once("*/")?;
    let lines: Vec<&str> = inside
        .lines()
        .map(|line| {
            let line = line.trim();
            line.strip_prefix('*').unwrap_or(line).trim_start()
        })
        .collect();
    Some(lines.join("\n").trim_matches('\n').to_owned())
}

fn entries(dir: &Path) -> Result<Vec<PathBuf>> {
    fs::read_dir(dir)
        .with_context(|| format!("could not read {}", dir.display()))?
        .map(|entry| Ok(entry?.path()))
        .collect()
}

/// "LICENSE", "LICENSE-MIT", "license.md", "COPYING.txt", "LICENSES"; not "license_check.rs".
fn has_notices(path: &Path) -> bool {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    let name = name.to_lowercase();
    let is_text = path.extension().is_none_or(|ending| {
        !["rs", "toml", "json", "sh"]
            .iter()
            .any(|code| ending == *code)
    });
    is_text
        && NAMES.iter().any(|known| {
            name.strip_prefix(known)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with(['-', '.', '_']))
        })
}

/// Fails unless the texts hold what the license expression of the manifest asks for: of each part that
/// "AND" joins, one of the licenses that "OR" (or the older "/") joins. Brackets within brackets are
/// not read, and an exception ("WITH") counts as its license.
pub(crate) fn satisfied(expression: &str, texts: &[String]) -> Result<()> {
    if texts.is_empty() {
        bail!("its source holds no license text");
    }
    let flat: Vec<String> = texts
        .iter()
        .map(|text| {
            let words: Vec<_> = text.split_whitespace().collect();
            words.join(" ").to_lowercase()
        })
        .collect();
    let is_there = |license: &str| {
        let name = license.split(" WITH ").next().unwrap_or(license);
        KNOWN
            .iter()
            .filter(|(known, _)| *known == name)
            .any(|(_, sentence)| flat.iter().any(|text| text.contains(sentence)))
    };
    for part in expression.split(" AND ") {
        let part = part.trim_matches(['(', ')', ' ']);
        let mut licenses = part.split(" OR ").flat_map(|some| some.split('/'));
        if !licenses.any(|license| is_there(license.trim())) {
            bail!("its source holds no text of {part}");
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn notices_at_the_head_of_a_source_are_found() {
        let source = "/* \n * A library\n *\n * Permission is granted\n */\n\npub fn f() {}";
        let found = comment_of(source);
        assert_eq!(found.as_deref(), Some("A library\n\nPermission is granted"));
        assert_eq!(comment_of("pub fn f() {}\n/* late */"), None);
    }

    fn known(license: &str) -> String {
        let (_, sentence) = KNOWN.iter().find(|(known, _)| *known == license).unwrap();
        sentence.to_uppercase().replacen(' ', "\n   ", 3)
    }

    #[test]
    fn each_part_needs_one_of_its_texts() {
        let mit = [known("MIT")];
        for good in [
            "MIT",
            "MIT OR Apache-2.0",
            "Apache-2.0/MIT",
            "(Zlib OR MIT)",
        ] {
            assert!(satisfied(good, &mit).is_ok(), "{good}");
        }
        for bad in ["Zlib", "Apache-2.0", "(MIT OR Apache-2.0) AND Unicode-3.0"] {
            assert!(satisfied(bad, &mit).is_err(), "{bad}");
        }
        let both = [known("MIT"), known("Unicode-3.0")];
        assert!(satisfied("(MIT OR Apache-2.0) AND Unicode-3.0", &both).is_ok());
        assert!(satisfied("MIT", &[]).is_err());
        assert!(satisfied("MIT", &["See the LICENSE file.".to_owned()]).is_err());
        let apache = [known("Apache-2.0")];
        assert!(satisfied("Apache-2.0 WITH LLVM-exception", &apache).is_ok());
    }

    #[test]
    fn files_are_found_by_their_names() {
        let name = format!("gearswing-licenses-{}", std::process::id());
        let dir = std::env::temp_dir().join(name);
        fs::create_dir_all(dir.join("LICENSES")).unwrap();
        for (file, text) in [
            ("LICENSE-MIT", "\nmit  \r\nend\n"),
            ("license.md", "md"),
            ("LICENSES/Zlib.txt", "zlib"),
            ("NOTICE", "notice"),
            ("license.rs", "code"),
            ("licensed", "no"),
            ("README.md", "no"),
        ] {
            fs::write(dir.join(file), text).unwrap();
        }
        let found = texts(&dir).unwrap();
        fs::remove_dir_all(&dir).unwrap();
        assert_eq!(found, ["mit\nend", "zlib", "notice", "md"]);
    }
}
