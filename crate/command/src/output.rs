//! Standard output, or a file that is written whole at the end.
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

use crate::arguments::Input;
use crate::target::Target;
#[cfg(unix)]
use crate::target::{is_same, standard_input};

/// Where the answers go.
pub(crate) enum Output {
    /// Standard output, at once.
    Standard,
    /// A file, at the end.
    File {
        /// Its path as given.
        path: PathBuf,
        /// What stands there.
        target: Target,
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

    /// To `path`, which must not be one of the inputs; `-` is standard output.
    pub(crate) fn file(path: &Path, inputs: &[Input]) -> Result<Self, String> {
        if path.as_os_str() == "-" {
            return Ok(Self::Standard);
        }
        let shown = path.to_string_lossy();
        if inputs.iter().any(|input| would_overwrite(path, input)) {
            return Err(format!("{shown} is an input; --out would overwrite it"));
        }
        let target = Target::at(path).map_err(|error| format!("cannot write {shown}: {error}"))?;
        Ok(Self::File {
            path: path.to_owned(),
            target,
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
            Self::File { path, target, text } => {
                target.write(&text).map_err(|error| match error.kind() {
                    ErrorKind::BrokenPipe => OutputError::Closed,
                    _ => OutputError::Failed(format!(
                        "cannot write {}: {error}",
                        path.to_string_lossy()
                    )),
                })
            }
        }
    }
}

/// Whether `path` is the file of an input, by another name or through links too. An input that can't
/// be looked at can't be read either, which is said in its turn.
#[cfg(unix)]
fn would_overwrite(path: &Path, input: &Input) -> bool {
    match input {
        Input::File(source) => source.metadata(),
        Input::Standard => standard_input(),
        Input::Link(_) => return false,
    }
    .is_ok_and(|source| is_same(path, &source))
}

#[cfg(not(unix))]
fn would_overwrite(path: &Path, input: &Input) -> bool {
    match (input, path.canonicalize()) {
        (Input::File(source), Ok(there)) => source.canonicalize().is_ok_and(|from| from == there),
        _ => false,
    }
}
