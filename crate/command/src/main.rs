//! `gearswing`: prints for each leg of a gear file whether it clears, can be driven and locks.

/// What the command line asks for.
mod arguments;
/// The drawing and the sheets to print.
mod drawn;
/// Texts of `--help` and `--version`.
mod help;
/// The sheets as a document.
mod html;
/// Files, standard input and links.
mod input;
/// Standard output or a file.
mod output;
/// A line now and then on long work.
mod progress;
/// From input to answer.
mod run;
/// Files that are replaced, pipes and devices that are written through.
mod target;

use std::io::Write as _;
use std::process::ExitCode;

use arguments::{Asked, parse};
use gearswing_report::brief;

fn main() -> ExitCode {
    match parse(std::env::args_os().skip(1)) {
        Ok(Asked::Help) => printed(help::HELP),
        Ok(Asked::Version) => printed(&help::version()),
        Ok(Asked::Work(request)) => ExitCode::from(run::run(&request)),
        Err(message) => {
            say(&format!("{message}\nTry: gearswing --help"));
            ExitCode::from(run::UNUSABLE)
        }
    }
}

fn printed(text: &str) -> ExitCode {
    match output::Output::standard().write(text) {
        Ok(()) => ExitCode::SUCCESS,
        Err(output::OutputError::Closed) => ExitCode::SUCCESS,
        Err(output::OutputError::Failed(message)) => {
            say(&message);
            ExitCode::from(run::UNUSABLE)
        }
    }
}

/// A message for the person. Where even that cannot be written nothing is left to tell it to.
fn say(message: &str) {
    let _ = writeln!(std::io::stderr().lock(), "gearswing: {}", brief(message));
}
