//! `cargo xtask`: builds, serves, checks and measures the project. One command each, see `USAGE`.

mod arguments;
mod bench;
mod beside;
mod build;
mod deny;
mod licenses;
mod offline;
mod one_file;
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
use arguments::{Command, parse};
use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask serve [--port N]       build the page, serve it on this machine and print its address
                                   (--port 0 takes any free port; --under PATH serves below a path)
cargo xtask dist [--out DIR]       build the static page for any file host, and gearswing.html, the page as one
                                   file (--home ADDRESS: where the page will live; links are made from it)
cargo xtask licenses [--out DIR]   write the licenses of the libraries that page and command use;
                                   the page is built with them
cargo xtask test [quick|long]      run every check (--list names the steps, --only STEP runs one);
                                   quick: what can be waited for between two edits;
                                   long: the heavy ones in the sizes that a release is held to
cargo xtask pictures               pictures of every sheet, desk and phone, light and dark, in
                                   target/screenshots, and the README's
cargo xtask tidy                   check the project's own rules
cargo xtask size                   what the page costs to load
cargo xtask bench [FILTER]         run the benchmarks";

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
    let command = parse(std::env::args_os().skip(1))
        .map_err(|error| anyhow::anyhow!("{error:#}\n{USAGE}"))?;
    match command {
        Command::Help => {
            println!("{USAGE}");
            Ok(())
        }
        Command::Serve(options) => serve::serve(&options),
        Command::Dist(dist) => build::dist(&dist),
        Command::Licenses(out) => licenses::licenses(out.as_deref()),
        Command::Test(check) => test::test(&check),
        Command::Pictures => process::run(process::cargo().args([
            "run",
            "--quiet",
            "--package",
            "gearswing-browser-tests",
            "--example",
            "pictures",
        ])),
        Command::Tidy => tidy::tidy(),
        Command::Size => size::size(),
        Command::Bench(filter) => bench::bench(filter.as_deref()),
    }
}
