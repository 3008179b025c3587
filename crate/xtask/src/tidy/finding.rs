//! One broken rule, and the project's text files.

use anyhow::{Context, Result};
use std::fmt;
use std::fs;
use std::path::Path;

/// A broken rule at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Finding {
    /// File relative to the root, with line where there is one, or the name of a crate.
    pub place: String,
    /// What is wrong.
    pub what: String,
}

impl Finding {
    /// In a file as a whole, or in a crate.
    pub(crate) fn at(place: &str, what: impl Into<String>) -> Self {
        Self {
            place: place.to_owned(),
            what: what.into(),
        }
    }

    /// In a line, counted from zero.
    pub(crate) fn line(file: &TextFile, index: usize, what: impl Into<String>) -> Self {
        Self::at(&format!("{}:{}", file.path, index + 1), what)
    }
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.place, self.what)
    }
}

/// A text file of the project.
#[derive(Debug, Clone)]
pub(crate) struct TextFile {
    /// Relative to the root, with `/`.
    pub path: String,
    /// Its content.
    pub text: String,
}

impl TextFile {
    /// The part of the name after the last dot.
    pub(crate) fn extension(&self) -> &str {
        match self.path.rsplit_once('.') {
            Some((_, extension)) if !extension.contains('/') => extension,
            _ => "",
        }
    }
}

/// Directories that hold what is made, not what is written.
const MADE: &[&str] = &[
    ".git",
    ".venv",
    "__pycache__",
    "dist",
    "node_modules",
    "target",
];

/// All text files of the project, sorted by path; those that aren't UTF-8 are left out.
pub(crate) fn text_files(root: &Path) -> Result<Vec<TextFile>> {
    let mut files = Vec::new();
    let mut left = vec![root.to_path_buf()];
    while let Some(dir) = left.pop() {
        let entries =
            fs::read_dir(&dir).with_context(|| format!("could not read {}", dir.display()))?;
        for entry in entries {
            let entry = entry?;
            let kind = entry.file_type()?;
            let name = entry.file_name();
            if kind.is_dir() {
                if !MADE.iter().any(|made| name.to_str() == Some(made)) {
                    left.push(entry.path());
                }
            } else if kind.is_file()
                && name != ".git"
                && let Ok(text) = String::from_utf8(fs::read(entry.path())?)
            {
                files.push(TextFile {
                    path: relative(root, &entry.path()),
                    text,
                });
            }
        }
    }
    files.sort_by(|a, b| a.path.cmp(&b.path));
    Ok(files)
}

fn relative(root: &Path, path: &Path) -> String {
    let inside = path.strip_prefix(root).unwrap_or(path);
    let parts: Vec<_> = inside.iter().map(|part| part.to_string_lossy()).collect();
    parts.join("/")
}

/// How often a rule on one file is broken by this text.
#[cfg(test)]
pub(crate) fn count_in(
    rule: impl Fn(&TextFile, &mut Vec<Finding>),
    path: &str,
    text: &str,
) -> usize {
    let file = TextFile {
        path: path.into(),
        text: text.into(),
    };
    let mut found = Vec::new();
    rule(&file, &mut found);
    found.len()
}
