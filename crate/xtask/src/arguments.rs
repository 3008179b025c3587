//! Command line arguments: a command, then options in any order.

use crate::{build, serve};
use anyhow::{Context, Result, bail};
use lexopt::Arg::{Long, Short, Value};
use lexopt::{Arg, Parser, ValueExt as _};
use std::ffi::OsString;
use std::str::FromStr;

/// What is to be done.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Command {
    /// Say what can be done.
    Help,
    /// Build the page and serve it.
    Serve(serve::Options),
    /// Build the page into a directory.
    Dist(build::Dist),
    /// Write the notices of the libraries into a directory.
    Licenses(Option<String>),
    /// Run the check.
    Test(Check),
    /// Make pictures of the page, for whoever changes it to look at.
    Pictures,
    /// Check the project's own rules.
    Tidy,
    /// Say what the page costs to load.
    Size,
    /// Run the benchmarks, or those with this in their name.
    Bench(Option<String>),
}

/// Which check.
#[derive(Debug, Default, PartialEq, Eq)]
pub(crate) struct Check {
    /// How much of it.
    pub extent: Extent,
    /// Only the step of this name.
    pub only: Option<String>,
    /// Only name the steps.
    pub list: bool,
}

/// How much is checked.
#[derive(Debug, Default, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Extent {
    /// What can be waited for between two edits.
    Quick,
    /// All of it, the heavy ones in their short form.
    #[default]
    Usual,
    /// All of it, the heavy ones in the sizes that a release is held to.
    Long,
}

/// Reads the arguments behind the program's name.
pub(crate) fn parse(arguments: impl Iterator<Item = OsString>) -> Result<Command> {
    let arguments: Vec<OsString> = arguments.collect();
    let mut line = Parser::from_args(arguments);
    let name = match line.next()? {
        None | Some(Short('h') | Long("help")) => return Ok(Command::Help),
        Some(Value(name)) => name.string()?,
        Some(other) => return Err(other.unexpected().into()),
    };
    Ok(match name.as_str() {
        "serve" => Command::Serve(serve(&mut line)?),
        "dist" => Command::Dist(dist(&mut line)?),
        "licenses" => Command::Licenses(out(&mut line)?),
        "test" => Command::Test(check(&mut line)?),
        "pictures" => nothing_more(&mut line, Command::Pictures)?,
        "tidy" => nothing_more(&mut line, Command::Tidy)?,
        "size" => nothing_more(&mut line, Command::Size)?,
        "bench" => Command::Bench(filter(&mut line)?),
        "help" => Command::Help,
        other => bail!("there is no command '{other}'"),
    })
}

fn serve(line: &mut Parser) -> Result<serve::Options> {
    let mut options = serve::Options {
        port: serve::DEFAULT_PORT,
        under: String::new(),
        end_with_input: false,
    };
    while let Some(argument) = line.next()? {
        match argument {
            Long("port") => options.port = number("--port", line)?,
            Long("under") => options.under = line.value()?.string()?,
            Long("end-with-input") => options.end_with_input = true,
            other => return Err(unknown(&other)),
        }
    }
    Ok(options)
}

fn dist(line: &mut Parser) -> Result<build::Dist> {
    let mut dist = build::Dist::default();
    while let Some(argument) = line.next()? {
        match argument {
            Long("out") => dist.out = Some(line.value()?.string()?),
            Long("home") => dist.home = Some(build::home(&line.value()?.string()?)?),
            other => return Err(unknown(&other)),
        }
    }
    Ok(dist)
}

fn out(line: &mut Parser) -> Result<Option<String>> {
    let mut out = None;
    while let Some(argument) = line.next()? {
        match argument {
            Long("out") => out = Some(line.value()?.string()?),
            other => return Err(unknown(&other)),
        }
    }
    Ok(out)
}

fn check(line: &mut Parser) -> Result<Check> {
    let mut check = Check::default();
    while let Some(argument) = line.next()? {
        match argument {
            Value(extent) if extent == "quick" => check.extent = Extent::Quick,
            Value(extent) if extent == "long" => check.extent = Extent::Long,
            Long("only") => check.only = Some(line.value()?.string()?),
            Long("list") => check.list = true,
            other => return Err(unknown(&other)),
        }
    }
    Ok(check)
}

fn filter(line: &mut Parser) -> Result<Option<String>> {
    let mut filter = None;
    while let Some(argument) = line.next()? {
        match argument {
            Value(text) if filter.is_none() => filter = Some(text.string()?),
            other => return Err(unknown(&other)),
        }
    }
    Ok(filter)
}

fn nothing_more(line: &mut Parser, command: Command) -> Result<Command> {
    match line.next()? {
        None => Ok(command),
        Some(other) => Err(unknown(&other)),
    }
}

fn number<T: FromStr>(option: &str, line: &mut Parser) -> Result<T> {
    let text = line.value()?.string()?;
    text.parse()
        .ok()
        .with_context(|| format!("{option} needs a number, not '{text}'"))
}

fn unknown(argument: &Arg) -> anyhow::Error {
    let shown = match argument {
        Short(letter) => format!("-{letter}"),
        Long(name) => format!("--{name}"),
        Value(text) => text.to_string_lossy().into_owned(),
    };
    anyhow::anyhow!("'{shown}' is not understood here")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(text: &str) -> Result<Command> {
        parse(text.split_whitespace().map(OsString::from))
    }

    #[test]
    fn options_in_any_order() {
        let serve = Command::Serve(serve::Options {
            port: 8,
            under: "a".into(),
            end_with_input: true,
        });
        for line in [
            "serve --end-with-input --port 8 --under a",
            "serve --under=a --port=8 --end-with-input",
        ] {
            assert_eq!(of(line).unwrap(), serve);
        }
        assert_eq!(of("dist").unwrap(), Command::Dist(build::Dist::default()));
        let dist = Command::Dist(build::Dist {
            out: Some("x".into()),
            home: Some("https://example.org/gear/".into()),
        });
        assert_eq!(
            of("dist --home https://example.org/gear/ --out x").unwrap(),
            dist
        );
        assert_eq!(of("bench leg").unwrap(), Command::Bench(Some("leg".into())));
        for (line, extent) in [
            ("test --only lint", Extent::Usual),
            ("test quick --only lint", Extent::Quick),
            ("test --only lint long", Extent::Long),
        ] {
            let check = Check {
                extent,
                only: Some("lint".into()),
                list: false,
            };
            assert_eq!(of(line).unwrap(), Command::Test(check));
        }
        for line in ["", "help", "--help", "-h"] {
            assert_eq!(of(line).unwrap(), Command::Help);
        }
    }

    #[test]
    fn wrong_ones_are_named() {
        for (line, part) in [
            ("serve --port", "--port"),
            ("serve --port 70000", "70000"),
            ("serve --prot 1", "--prot"),
            ("serve --end-with-input=1", "--end-with-input"),
            ("dist --home example.org", "http"),
            ("dist --home https://example.org/#a", "#"),
            ("test slow", "'slow'"),
            ("tidy -x", "'-x'"),
            ("bench a b", "'b'"),
            ("tset", "no command 'tset'"),
            ("--port 1", "--port"),
        ] {
            let error = of(line).unwrap_err().to_string();
            assert!(error.contains(part), "{line}: {error}");
        }
    }
}
