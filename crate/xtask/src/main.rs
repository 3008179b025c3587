//! `cargo xtask`: builds, serves, checks and measures the project. One command each, see `USAGE`.

mod arguments;
mod bench;
mod build;
mod deny;
mod licenses;
mod packed;
mod process;
mod rooms;
mod serve;
mod size;
mod steps;
mod test;
mod tidy;
mod tools;

use anyhow::Result;
use arguments::Arguments;
use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask serve [--port N]     build the page, serve it on this machine and print its address
                                 (--port 0 takes any free port; --under PATH serves below a path)
cargo xtask dist [--out DIR]     build the static page for any file host
cargo xtask licenses [--out DIR] write the licenses of the libraries that page and command use;
                                 the page is built with them
cargo xtask test [long]          run every check (--list names the steps, --only STEP runs one);
                                 long: the heavy ones in the sizes that a release is held to
cargo xtask tidy                 check the project's own rules
cargo xtask size                 what the page costs to load
cargo xtask bench [FILTER]       run the benchmarks";

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
        Some("licenses") => {
            let out = arguments.value("--out")?;
            arguments.finish()?;
            licenses::licenses(out.as_deref())
        }
        Some("tidy") => {
            arguments.finish()?;
            tidy::tidy()
        }
        Some("test") => {
            let only = arguments.value("--only")?;
            let list = arguments.flag("--list");
            if arguments.flag("long") {
                process::set_long();
            }
            arguments.finish()?;
            if list {
                test::list();
                return Ok(());
            }
            test::test(only.as_deref())
        }
        Some("size") => {
            arguments.finish()?;
            size::size()
        }
        Some("bench") => {
            let filter = arguments.command();
            arguments.finish()?;
            bench::bench(filter.as_deref())
        }
        Some("help" | "--help" | "-h") | None => {
            println!("{USAGE}");
            Ok(())
        }
        Some(other) => anyhow::bail!("there is no command '{other}'\n{USAGE}"),
    }
}
