//! Version and commit of this build. The only place that knows them: page and command hand them to
//! what words and prints them, so that nothing below differs from one commit to the next.

/// What git tells of the tree; the build script asks it.
#[cfg(test)]
#[allow(dead_code, reason = "each of its users needs a part of it")]
mod tree;

/// Version of the program, as in its manifest.
pub const VERSION: &str = env!("CARGO_PKG_VERSION");

/// The commit that this was built from, shortened; none when the tree had no git.
pub const COMMIT: Option<&str> = told(env!("GEARSWING_BUILT_COMMIT"));

/// Whether what was built differed from that commit.
pub const CHANGED: bool = told(env!("GEARSWING_BUILT_CHANGED")).is_some();

/// Version, commit, and a sum over all sources where the build was given one, as one text: two modules with the same
/// are of one build.
#[must_use]
pub fn build() -> String {
    let changed = if CHANGED { "+" } else { "" };
    let sources = env!("GEARSWING_BUILT_SOURCES");
    format!(
        "{VERSION} {}{changed} {sources}",
        COMMIT.unwrap_or_default()
    )
}

const fn told(text: &'static str) -> Option<&'static str> {
    if text.is_empty() { None } else { Some(text) }
}
