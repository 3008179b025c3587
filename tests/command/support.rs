//! Running the program, and gears to run it on.
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};

use gearswing_gear::model::Gear;
use gearswing_gearfile::{DEMO, STARTERS, to_text};

/// What a run printed.
pub(crate) struct Run {
    pub(crate) code: i32,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Run {
    fn of(output: Output) -> Self {
        Self {
            code: output.status.code().expect("ended by itself"),
            out: String::from_utf8(output.stdout).expect("UTF-8"),
            err: String::from_utf8(output.stderr).expect("UTF-8"),
        }
    }
}

pub(crate) fn program() -> Command {
    Command::new(env!("CARGO_BIN_EXE_gearswing"))
}

/// Runs the program with nothing on standard input.
pub(crate) fn run<const N: usize>(arguments: [&str; N]) -> Run {
    Run::of(
        program()
            .args(arguments)
            .stdin(Stdio::null())
            .output()
            .expect("the program starts"),
    )
}

/// Runs the program with `text` on standard input.
pub(crate) fn run_with<const N: usize>(arguments: [&str; N], text: &[u8]) -> Run {
    let mut child = program()
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    child
        .stdin
        .take()
        .expect("a pipe")
        .write_all(text)
        .expect("the program reads");
    Run::of(child.wait_with_output().expect("the program ends"))
}

/// The program with the version and the commit that its build knew.
pub(crate) fn built() -> String {
    gearswing_report::program_words(&gearswing_report::Program {
        version: gearswing_version::VERSION,
        commit: gearswing_version::COMMIT,
        changed: gearswing_version::CHANGED,
    })
}

/// Every gear file of a folder of the fixtures, by name, written down for one test.
pub(crate) fn fixtures(test: &str, folder: &str) -> Vec<PathBuf> {
    let to = self::folder(&format!("{test}-{folder}"));
    gearswing_samples::fixtures::files(folder, "json")
        .into_iter()
        .map(|(name, text)| PathBuf::from(file(&to, &format!("{name}.json"), text)))
        .collect()
}

/// A directory of one test's own.
pub(crate) fn folder(test: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(test);
    std::fs::create_dir_all(&folder).expect("a directory to write in");
    folder
}

/// Writes a file and gives its path as text.
pub(crate) fn file(folder: &Path, name: &str, content: impl AsRef<[u8]>) -> String {
    let path = folder.join(name);
    std::fs::write(&path, content).expect("written");
    path.to_str().expect("a path in UTF-8").to_owned()
}

pub(crate) fn demo() -> Gear {
    DEMO.gear().expect("the demo opens")
}

/// The starter of a kind of leg.
pub(crate) fn starter(key: &str) -> Gear {
    let example = STARTERS.iter().find(|example| example.key == key);
    example.expect("a starter").gear().expect("it opens")
}

/// Writes a gear file and gives its path as text.
pub(crate) fn gear_file(folder: &Path, name: &str, gear: &Gear) -> String {
    file(
        folder,
        name,
        to_text(gear).expect("a gear that can be saved"),
    )
}
