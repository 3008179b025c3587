//! The program itself: its version, and the commit that it was built from.
use serde::Serialize;

/// Which build of the program answers; page and command say so.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
pub struct Program<'a> {
    /// Version of the program.
    pub version: &'a str,
    /// The commit that it was built from, shortened; left out when that is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub commit: Option<&'a str>,
    /// The source differed from that commit.
    pub changed: bool,
}

/// Version and commit: "0.1.0 (commit 12ab34cd, changed since)".
#[must_use]
pub fn version_words(program: &Program) -> String {
    match (program.commit, program.changed) {
        (None, _) => program.version.to_owned(),
        (Some(commit), false) => format!("{} (commit {commit})", program.version),
        (Some(commit), true) => format!("{} (commit {commit}, changed since)", program.version),
    }
}

/// The program with version and commit: "Gearswing 0.1.0 (commit 12ab34cd)".
#[must_use]
pub fn program_words(program: &Program) -> String {
    format!("Gearswing {}", version_words(program))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_known_is_not_said() {
        let words = |commit, changed| {
            program_words(&Program {
                version: "1.2.3",
                commit,
                changed,
            })
        };
        assert_eq!(words(None, false), "Gearswing 1.2.3");
        assert_eq!(words(Some("ab"), false), "Gearswing 1.2.3 (commit ab)");
        assert_eq!(
            words(Some("ab"), true),
            "Gearswing 1.2.3 (commit ab, changed since)"
        );
    }
}
