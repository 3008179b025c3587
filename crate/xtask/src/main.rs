//! `cargo xtask`: builds, serves, checks and measures the project. One command each, see `USAGE`.

mod arguments;
mod build;
mod process;
mod serve;

use anyhow::Result;
use arguments::Arguments;
use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask serve [--port N]     build the page, serve it on this machine and print its address
                                 (--port 0 takes any free port; --under PATH serves below a path)
cargo xtask dist [--out DIR]     build the static page for any file host";

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("xtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<()> {
    let mut arguments = Arguments::from_process();
    match arguments.command().as_deref() {
        Some("serve") => {
            let options = serve::Options {
                port: arguments.number("--port")?.unwrap_or(serve::DEFAULT_PORT),
                under: arguments.value("--under")?.unwrap_or_default(),
                end_with_input: arguments.flag("--end-with-input"),
            };
            arguments.finish()?;
            serve::serve(&options)
        }
        Some("dist") => {
            let out = arguments.value("--out")?;
            arguments.finish()?;
            build::dist(out.as_deref())
        }
        Some("help" | "--help" | "-h") | None => {
            println!("{USAGE}");
            Ok(())
        }
        Some(other) => anyhow::bail!("there is no command '{other}'\n{USAGE}"),
    }
}
