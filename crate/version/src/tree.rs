//! What git tells of a tree: its commit, and whether something of what is built differs from it.
//! Read by the build script, and by the build of the page.

use std::path::{Path, PathBuf};
use std::process::Command;

/// Variable that names the commit to a build, as [`Tree::written`] writes it; empty for none.
pub(crate) const GIVEN: &str = "GEARSWING_COMMIT";

/// Variable that names a sum over all sources to a build: two builds with the same are one.
pub(crate) const SOURCES: &str = "GEARSWING_SOURCES";

/// Ending of a commit from which the tree differs.
const CHANGED: &str = "-changed";

/// Letters of a shortened commit; git takes more where these are those of two.
const SHORT: &str = "--short=8";

/// What the page and the command are built from, and by; relative to the root.
const BUILT: [&str; 5] = ["Cargo.lock", "Cargo.toml", "crate", "fixtures", "www"];

/// The commit of a tree.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Tree {
    /// Shortened; empty for none.
    pub commit: String,
    /// Something of what is built differs from it.
    pub changed: bool,
}

impl Tree {
    /// What git tells of the tree at `root`; none without git, and none where `root` only lies in a
    /// tree of something else.
    pub(crate) fn of(root: &Path) -> Self {
        let known = || {
            let top = PathBuf::from(git(root, &["rev-parse", "--show-toplevel"])?);
            if top.canonicalize().ok()? != root.canonicalize().ok()? {
                return None;
            }
            let commit = git(root, &["rev-parse", SHORT, "HEAD"])?;
            let mut status = vec!["status", "--porcelain", "--"];
            status.extend(BUILT);
            let changed = !git(root, &status)?.is_empty();
            Some(Self { commit, changed })
        };
        known().unwrap_or_default()
    }

    /// From the text of the variable; what can be no commit is none.
    pub(crate) fn read(given: &str) -> Self {
        let (commit, changed) = match given.strip_suffix(CHANGED) {
            Some(commit) => (commit, true),
            None => (given, false),
        };
        let is_name = commit.chars().all(|c| c.is_ascii_alphanumeric());
        if commit.is_empty() || commit.len() > 40 || !is_name {
            return Self::default();
        }
        Self {
            commit: commit.to_owned(),
            changed,
        }
    }

    /// As the variable holds it.
    pub(crate) fn written(&self) -> String {
        let ending = if self.changed { CHANGED } else { "" };
        format!("{}{ending}", self.commit)
    }
}

/// The files of git that change when a commit is made or another is taken.
pub(crate) fn moves_with_commits(root: &Path) -> Vec<PathBuf> {
    let head = git(root, &["symbolic-ref", "--quiet", "HEAD"]);
    let names = ["HEAD", "logs/HEAD", "packed-refs"].map(str::to_owned);
    names
        .into_iter()
        .chain(head)
        .filter_map(|name| git(root, &["rev-parse", "--git-path", &name]))
        .map(|path| root.join(path))
        .collect()
}

/// What git prints, without the line's end; nothing when it fails or is not there. It takes no lock and
/// writes nothing.
fn git(root: &Path, arguments: &[&str]) -> Option<String> {
    let done = Command::new("git")
        .arg("--no-optional-locks")
        .args(arguments)
        .current_dir(root)
        // set where git itself starts a build, for another directory than this
        .env_remove("GIT_DIR")
        .env_remove("GIT_INDEX_FILE")
        .env_remove("GIT_WORK_TREE")
        .output()
        .ok()
        .filter(|done| done.status.success())?;
    let text = String::from_utf8(done.stdout).ok()?;
    Some(text.trim_end().to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;

    /// An empty directory of one test's own, outside of any tree of git.
    fn directory(test: &str) -> PathBuf {
        let name = format!("gearswing-version-{test}-{}", std::process::id());
        let directory = std::env::temp_dir().join(name);
        fs::create_dir_all(directory.join("crate")).unwrap();
        directory
    }

    #[test]
    fn the_variable_is_read_as_it_is_written() {
        for (text, commit, changed) in [
            ("12ab34cd", "12ab34cd", false),
            ("12ab34cd-changed", "12ab34cd", true),
            ("", "", false),
            ("-changed", "", false),
            ("a b", "", false),
            ("a\nb", "", false),
        ] {
            let tree = Tree::read(text);
            assert_eq!((tree.commit.as_str(), tree.changed), (commit, changed));
            assert_eq!(Tree::read(&tree.written()), tree);
        }
    }

    #[test]
    fn a_tree_without_git_has_no_commit() {
        let root = directory("none");
        assert_eq!(Tree::of(&root), Tree::default());
        fs::remove_dir_all(root).unwrap();
    }

    /// Where git is missing there is nothing to compare with, and nothing is told.
    #[test]
    fn commit_and_changes_are_told() {
        let root = directory("git");
        let done = |arguments: &[&str]| git(&root, arguments).is_some();
        if !done(&["init", "--quiet"]) {
            assert_eq!(Tree::of(&root), Tree::default());
            return;
        }
        assert_eq!(Tree::of(&root), Tree::default(), "no commit yet");
        let file = root.join("crate/a.rs");
        let write = |text: &str| fs::write(&file, text).unwrap();
        write("1");
        assert!(done(&["add", "."]));
        let commit = [
            "-c",
            "user.name=nobody",
            "-c",
            "user.email=nobody@example.org",
            "-c",
            "commit.gpgsign=false",
            "commit",
            "--quiet",
            "--message=First",
        ];
        assert!(done(&commit));
        let whole = git(&root, &["rev-parse", "HEAD"]).unwrap();
        let tree = Tree::of(&root);
        assert!(tree.commit.len() >= 8 && whole.starts_with(&tree.commit));
        assert!(!tree.changed);
        // what is not built does not count
        fs::write(root.join("notes.md"), "a").unwrap();
        assert!(!Tree::of(&root).changed);
        write("2");
        assert!(Tree::of(&root).changed);
        write("1");
        assert!(!Tree::of(&root).changed);
        fs::write(root.join("crate/b.rs"), "new").unwrap();
        assert!(Tree::of(&root).changed);
        // the tree of something else
        assert_eq!(Tree::of(&root.join("crate")), Tree::default());
        let moving = moves_with_commits(&root);
        assert!(moving.iter().any(|path| path.is_file()), "{moving:?}");
        fs::remove_dir_all(root).unwrap();
    }
}
