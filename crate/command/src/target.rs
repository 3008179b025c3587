//! Where a file's text goes: a plain file is replaced whole, anything else is written through.
use std::fs::{File, Metadata, OpenOptions};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

/// Symbolic links that are followed before a loop is supposed; what Linux follows.
const LINKS: usize = 40;

/// Names that are tried for the file beside.
const NAMES: usize = 100;

/// What stands at the path to write to.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Target {
    /// Nothing yet or a plain file, behind all symbolic links: written beside it, then renamed.
    Plain(PathBuf),
    /// A pipe, a device, or a file that this process was started with: written as it stands.
    Through(PathBuf),
}

impl Target {
    /// What stands at `path`.
    ///
    /// # Errors
    /// A directory, a loop of links, or what the system says.
    pub(crate) fn at(path: &Path) -> io::Result<Self> {
        let mut at = path.to_owned();
        for _ in 0..LINKS {
            let found = match at.symlink_metadata() {
                Err(error) if error.kind() == ErrorKind::NotFound => return Ok(Self::Plain(at)),
                found => found?,
            };
            if found.is_symlink() {
                if at.starts_with("/proc") || at.starts_with("/dev/fd") {
                    return Ok(Self::Through(path.to_owned()));
                }
                let to = at.read_link()?;
                at = at.parent().map_or_else(|| to.clone(), |dir| dir.join(&to));
            } else if found.is_dir() {
                return Err(io::Error::other("it is a directory"));
            } else if found.is_file() {
                // what may not be written is not replaced either
                OpenOptions::new().write(true).open(&at)?;
                return Ok(Self::Plain(at));
            } else {
                return Ok(Self::Through(path.to_owned()));
            }
        }
        Err(io::Error::other("too many symbolic links"))
    }

    /// Writes `text` there.
    ///
    /// # Errors
    /// What the system says; a plain file then is as it was.
    pub(crate) fn write(&self, text: &str) -> io::Result<()> {
        match self {
            Self::Plain(path) => replace(path, text),
            Self::Through(path) => OpenOptions::new()
                .append(true)
                .open(path)?
                .write_all(text.as_bytes()),
        }
    }
}

/// Writes beside `path` and renames over it. A file of somebody else, and one in a directory where
/// nothing can be added, can't be replaced by its like: it is written in place.
fn replace(path: &Path, text: &str) -> io::Result<()> {
    let old = match path.metadata() {
        Ok(old) => Some(old),
        Err(error) if error.kind() == ErrorKind::NotFound => None,
        Err(error) => return Err(error),
    };
    let (file, beside) = match create_beside(path, old.is_some()) {
        Err(error) if error.kind() == ErrorKind::PermissionDenied && old.is_some() => {
            return std::fs::write(path, text);
        }
        created => created?,
    };
    let renamed = fill(file, text, old.as_ref()).and_then(|alike| {
        if alike {
            std::fs::rename(&beside, path)?;
        }
        Ok(alike)
    });
    if !matches!(renamed, Ok(true)) {
        std::fs::remove_file(&beside).map_err(|error| {
            io::Error::new(
                error.kind(),
                format!("{} is left behind: {error}", beside.to_string_lossy()),
            )
        })?;
    }
    if renamed? {
        Ok(())
    } else {
        std::fs::write(path, text)
    }
}

/// A new file in the directory of `path`; only this user can read it when it stands in for an old one.
fn create_beside(path: &Path, stands_in: bool) -> io::Result<(File, PathBuf)> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    if stands_in {
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    }
    #[cfg(not(unix))]
    let _ = stands_in;
    let mut error = io::Error::other("no free name beside it");
    for number in 0..NAMES {
        let name = format!(".gearswing-{}-{number}.tmp", std::process::id());
        let beside = path.with_file_name(name);
        match options.open(&beside) {
            Ok(file) => return Ok((file, beside)),
            Err(exists) if exists.kind() == ErrorKind::AlreadyExists => error = exists,
            Err(other) => return Err(other),
        }
    }
    Err(error)
}

/// Writes the text to the disk, with mode and owner of the old file; false if they can't be had.
fn fill(mut file: File, text: &str, old: Option<&Metadata>) -> io::Result<bool> {
    file.write_all(text.as_bytes())?;
    if let Some(old) = old {
        if !has_owner(&file, old)? {
            return Ok(false);
        }
        file.set_permissions(old.permissions())?;
    }
    file.sync_all()?;
    Ok(true)
}

#[cfg(unix)]
fn has_owner(file: &File, old: &Metadata) -> io::Result<bool> {
    use std::os::unix::fs::{MetadataExt, fchown};
    let new = file.metadata()?;
    if (new.uid(), new.gid()) == (old.uid(), old.gid()) {
        return Ok(true);
    }
    match fchown(file, Some(old.uid()), Some(old.gid())) {
        Ok(()) => Ok(true),
        Err(error) if error.kind() == ErrorKind::PermissionDenied => Ok(false),
        Err(error) => Err(error),
    }
}

#[cfg(not(unix))]
fn has_owner(_: &File, _: &Metadata) -> io::Result<bool> {
    Ok(true)
}

/// Whether `path` is the file of `input`, under whatever name; terminals and the like never are.
#[cfg(unix)]
pub(crate) fn is_same(path: &Path, input: &Metadata) -> bool {
    use std::os::unix::fs::{FileTypeExt, MetadataExt};
    path.metadata().is_ok_and(|there| {
        (there.dev(), there.ino()) == (input.dev(), input.ino())
            && !there.file_type().is_char_device()
    })
}

/// What standard input reads from.
#[cfg(unix)]
pub(crate) fn standard_input() -> io::Result<Metadata> {
    use std::os::fd::AsFd;
    let stdin = std::io::stdin().as_fd().try_clone_to_owned()?;
    File::from(stdin).metadata()
}
