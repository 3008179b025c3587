//! What the command line asks for.
use std::ffi::{OsStr, OsString};
use std::path::PathBuf;

use gearswing_solver::TireChoice;
use gearswing_units::UnitChoice;

/// Stations of the swing that may be asked for.
const STATIONS: std::ops::RangeInclusive<usize> = 2..=20_001;

/// What to do.
#[derive(Debug)]
pub(crate) enum Asked {
    /// Print the help.
    Help,
    /// Print the version.
    Version,
    /// Read, solve, print.
    Work(Request),
}

/// Where a gear comes from.
#[derive(Debug)]
pub(crate) enum Input {
    /// A gear file.
    File(PathBuf),
    /// A gear file on standard input.
    Standard,
    /// A link text.
    Link(OsString),
}

/// What is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Format {
    /// The report.
    Text,
    /// Results in SI.
    Json,
    /// Stations in SI.
    Csv,
    /// The gear against time in SI.
    Times,
    /// The link code of the file, nothing solved.
    Link,
}

/// One run.
#[derive(Debug)]
pub(crate) struct Request {
    pub(crate) inputs: Vec<Input>,
    pub(crate) format: Format,
    pub(crate) units: UnitChoice,
    pub(crate) leg: Option<String>,
    pub(crate) tire: TireChoice,
    /// Times for the airplane level on jacks.
    pub(crate) on_jacks: bool,
    pub(crate) stations: Option<usize>,
    pub(crate) out: Option<PathBuf>,
}

/// Reads the arguments behind the program's name; an error is a sentence.
pub(crate) fn parse(arguments: impl Iterator<Item = OsString>) -> Result<Asked, String> {
    let mut arguments = arguments;
    let mut request = Request {
        inputs: Vec::new(),
        format: Format::Text,
        units: UnitChoice::INCH,
        leg: None,
        tire: TireChoice::Fitted,
        on_jacks: false,
        stations: None,
        out: None,
    };
    let (mut only_files, mut format_given, mut link) = (false, false, false);
    while let Some(argument) = arguments.next() {
        if only_files || argument == "-" || !is_option(&argument) {
            request.inputs.push(file(argument));
            continue;
        }
        let (name, own_value) = split(&argument)?;
        let mut value = || match own_value.clone() {
            Some(value) => Ok(value),
            None => arguments
                .next()
                .ok_or_else(|| format!("{name} needs a value behind it")),
        };
        match name.as_str() {
            "--" => only_files = true,
            "--help" | "-h" => return Ok(Asked::Help),
            "--version" | "-V" => return Ok(Asked::Version),
            "--link" => link = true,
            "--on-jacks" => request.on_jacks = true,
            "--open-link" => request.inputs.push(Input::Link(value()?)),
            "--out" => request.out = Some(PathBuf::from(value()?)),
            "--format" => {
                request.format = one_of(&name, &value()?, FORMATS)?;
                format_given = true;
            }
            "--units" => request.units = one_of(&name, &value()?, UNITS)?,
            "--tire" => request.tire = tire(&name, &value()?)?,
            "--leg" => request.leg = Some(utf8(&name, &value()?)?),
            "--stations" => request.stations = Some(count(&name, &value()?)?),
            _ => return Err(format!("there is no option {name}")),
        }
        if own_value.is_some() && matches!(name.as_str(), "--link" | "--on-jacks") {
            return Err(format!("{name} takes no value"));
        }
    }
    if link && format_given {
        return Err("--link and --format do not go together".to_owned());
    }
    if link {
        request.format = Format::Link;
    }
    check(request).map(Asked::Work)
}

fn check(request: Request) -> Result<Request, String> {
    if request.inputs.is_empty() {
        return Err("give a gear file".to_owned());
    }
    let standard = |input: &&Input| matches!(input, Input::Standard);
    if request.inputs.iter().filter(standard).count() > 1 {
        return Err("standard input (-) can be read once only".to_owned());
    }
    match (request.format, request.stations) {
        (Format::Json | Format::Csv, Some(stations)) if !STATIONS.contains(&stations) => {
            Err(format!(
                "--stations {stations}: {} to {} can be worked with",
                STATIONS.start(),
                STATIONS.end()
            ))
        }
        _ => Ok(request),
    }
}

fn file(argument: OsString) -> Input {
    if argument == "-" {
        Input::Standard
    } else {
        Input::File(PathBuf::from(argument))
    }
}

fn is_option(argument: &OsStr) -> bool {
    argument.as_encoded_bytes().starts_with(b"-")
}

/// "--name=value" parted; a value behind the sign keeps whatever bytes it has.
fn split(argument: &OsStr) -> Result<(String, Option<OsString>), String> {
    let Some(text) = argument.to_str() else {
        return Err(format!(
            "{} cannot be read as text; a file of that name needs -- before it",
            argument.to_string_lossy()
        ));
    };
    Ok(match text.split_once('=') {
        Some((name, value)) => (name.to_owned(), Some(OsString::from(value))),
        None => (text.to_owned(), None),
    })
}

const FORMATS: &[(&str, Format)] = &[
    ("text", Format::Text),
    ("json", Format::Json),
    ("csv", Format::Csv),
    ("times", Format::Times),
];
const UNITS: &[(&str, UnitChoice)] = &[("in", UnitChoice::INCH), ("mm", UnitChoice::METRIC)];
const TIRES: &[(&str, TireChoice)] = &[
    ("fitted", TireChoice::Fitted),
    ("previous", TireChoice::Former),
];

/// The tire; "former" is how earlier versions called the previous one.
fn tire(name: &str, value: &OsStr) -> Result<TireChoice, String> {
    if value == "former" {
        return Ok(TireChoice::Former);
    }
    one_of(name, value, TIRES)
}

fn one_of<T: Copy>(name: &str, value: &OsStr, known: &[(&str, T)]) -> Result<T, String> {
    known
        .iter()
        .find(|(key, _)| value == *key)
        .map(|(_, meaning)| *meaning)
        .ok_or_else(|| {
            let keys: Vec<_> = known.iter().map(|(key, _)| *key).collect();
            format!(
                "{name} {}: it is one of {}",
                value.to_string_lossy(),
                keys.join(", ")
            )
        })
}

fn utf8(name: &str, value: &OsStr) -> Result<String, String> {
    value
        .to_str()
        .map(str::to_owned)
        .ok_or_else(|| format!("{name} {}: not readable as text", value.to_string_lossy()))
}

fn count(name: &str, value: &OsStr) -> Result<usize, String> {
    value
        .to_str()
        .and_then(|text| text.parse().ok())
        .ok_or_else(|| format!("{name} {}: not a whole number", value.to_string_lossy()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(line: &[&str]) -> Result<Asked, String> {
        parse(line.iter().map(OsString::from))
    }

    fn request(line: &[&str]) -> Request {
        match read(line) {
            Ok(Asked::Work(request)) => request,
            other => panic!("{line:?} gave {other:?}"),
        }
    }

    #[test]
    fn options_in_any_order_with_space_or_sign() {
        let got = request(&[
            "a.json",
            "--format=json",
            "--units",
            "mm",
            "--leg=Nose",
            "b.json",
            "--tire",
            "former",
            "--stations",
            "91",
            "--out",
            "o.json",
            "--",
            "--c.json",
        ]);
        assert_eq!(got.inputs.len(), 3);
        assert!(matches!(&got.inputs[2], Input::File(path) if path.as_os_str() == "--c.json"));
        assert_eq!(got.format, Format::Json);
        assert_eq!(got.units, UnitChoice::METRIC);
        assert_eq!(got.leg.as_deref(), Some("Nose"));
        assert_eq!(got.tire, TireChoice::Former);
        assert_eq!(got.stations, Some(91));
        assert_eq!(got.out, Some(PathBuf::from("o.json")));
        let got = request(&["-", "--link"]);
        assert!(matches!(got.inputs[0], Input::Standard));
        assert_eq!(got.format, Format::Link);
        assert!(matches!(read(&["x", "--help"]), Ok(Asked::Help)));
        assert!(matches!(read(&["-V"]), Ok(Asked::Version)));
    }

    #[test]
    fn each_mistake_has_its_sentence() {
        for (line, part) in [
            (&[][..], "give a gear file"),
            (&["--format"], "needs a value"),
            (&["--format", "xml"], "one of text, json, csv"),
            (&["--units=cm"], "one of in, mm"),
            (&["--tire", "old"], "one of fitted, previous"),
            (&["--stations", "many"], "not a whole number"),
            (&["--stations", "-1"], "not a whole number"),
            (&["a", "--format", "csv", "--stations", "1"], "2 to 20001"),
            (&["--frmat", "csv"], "no option --frmat"),
            (&["-x"], "no option -x"),
            (&["a", "--link", "--format", "csv"], "do not go together"),
            (&["a", "--link=1"], "takes no value"),
            (&["-", "-"], "once only"),
        ] {
            let message = read(line).expect_err("a mistake");
            assert!(message.contains(part), "{line:?}: {message}");
        }
    }
}
