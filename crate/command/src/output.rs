//! Standard output, or a file that is written whole at the end.
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

use crate::arguments::Input;

/// Where the answers go.
pub(crate) enum Output {
    /// Standard output, at once.
    Standard,
    /// A file, at the end.
    File {
        /// Its path.
        path: PathBuf,
        /// What it will hold.
        text: String,
    },
}

/// Why nothing more can be written.
#[derive(Debug)]
pub(crate) enum OutputError {
    /// The reader has gone away (as `head` does): no fault, but no use going on.
    Closed,
    /// A real failure, as a sentence.
    Failed(String),
}

impl Output {
    pub(crate) fn standard() -> Self {
        Self::Standard
    }

    /// To `path`, which must not be one of the inputs.
    pub(crate) fn file(path: &Path, inputs: &[Input]) -> Result<Self, String> {
        let target = path.canonicalize().ok();
        for input in inputs {
            if let Input::File(source) = input
                && target.is_some()
                && source.canonicalize().ok() == target
            {
                return Err(format!(
                    "{} is an input; --out would overwrite it",
                    path.to_string_lossy()
                ));
            }
        }
        if path.is_dir() {
            return Err(format!("{} is a directory", path.to_string_lossy()));
        }
        Ok(Self::File {
            path: path.to_owned(),
            text: String::new(),
        })
    }

    pub(crate) fn write(&mut self, more: &str) -> Result<(), OutputError> {
        match self {
            Self::Standard => {
                let mut out = std::io::stdout().lock();
                out.write_all(more.as_bytes())
                    .and_then(|()| out.flush())
                    .map_err(|error| match error.kind() {
                        ErrorKind::BrokenPipe => OutputError::Closed,
                        _ => OutputError::Failed(format!("cannot write: {error}")),
                    })
            }
            Self::File { text, .. } => {
                text.push_str(more);
                Ok(())
            }
        }
    }

    /// Writes the file, if it is one.
    pub(crate) fn finish(self) -> Result<(), OutputError> {
        match self {
            Self::Standard => Ok(()),
            Self::File { path, text } => std::fs::write(&path, text).map_err(|error| {
                OutputError::Failed(format!("cannot write {}: {error}", path.to_string_lossy()))
            }),
        }
    }
}
