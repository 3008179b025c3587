//! What the command line asks for.
use std::ffi::{OsStr, OsString};
use std::path::PathBuf;

use gearswing_units::UnitChoice;
use lexopt::Arg::{Long, Short, Value};

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
    /// The drawing of a leg.
    Svg,
    /// The print form.
    Html,
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
    /// The state kept with the previous tire.
    pub(crate) previous: bool,
    /// What to compare with.
    pub(crate) against: Option<Input>,
    /// Times for the airplane level on jacks.
    pub(crate) on_jacks: bool,
    pub(crate) stations: Option<usize>,
    pub(crate) out: Option<PathBuf>,
}

/// Reads the arguments behind the program's name; an error is a sentence.
pub(crate) fn parse(arguments: impl Iterator<Item = OsString>) -> Result<Asked, String> {
    let arguments: Vec<OsString> = arguments.collect();
    asked(lexopt::Parser::from_args(arguments)).map_err(|wrong| match wrong {
        Wrong::Said(sentence) => sentence,
        Wrong::Line(error) => sentence(&error),
    })
}

fn asked(mut line: lexopt::Parser) -> Result<Asked, Wrong> {
    let mut request = Request {
        inputs: Vec::new(),
        format: Format::Text,
        units: UnitChoice::INCH,
        leg: None,
        previous: false,
        against: None,
        on_jacks: false,
        stations: None,
        out: None,
    };
    let (mut format_given, mut link) = (false, false);
    while let Some(argument) = line.next()? {
        match argument {
            Value(path) => request.inputs.push(file(path)),
            Short('h') | Long("help") => return Ok(Asked::Help),
            Short('V') | Long("version") => return Ok(Asked::Version),
            Long("link") => link = true,
            Long("on-jacks") => request.on_jacks = true,
            Long("open-link") => request.inputs.push(Input::Link(line.value()?)),
            Long("out") => request.out = Some(PathBuf::from(line.value()?)),
            Long("format") => {
                request.format = one_of("--format", &line.value()?, FORMATS)?;
                format_given = true;
            }
            Long("units") => request.units = one_of("--units", &line.value()?, UNITS)?,
            Long("tire") => request.previous = previous("--tire", &line.value()?)?,
            Long("against") => request.against = Some(file(line.value()?)),
            Long("leg") => request.leg = Some(utf8("--leg", &line.value()?)?),
            Long("stations") => request.stations = Some(count("--stations", &line.value()?)?),
            Short(_) | Long(_) => return Err(argument.unexpected().into()),
        }
    }
    if link && format_given {
        return Err("--link and --format do not go together".to_owned().into());
    }
    if link {
        request.format = Format::Link;
    }
    Ok(Asked::Work(check(request)?))
}

/// Why the arguments can't be used.
enum Wrong {
    /// As a sentence.
    Said(String),
    /// The line is not made as lines of arguments are.
    Line(lexopt::Error),
}

impl From<String> for Wrong {
    fn from(sentence: String) -> Self {
        Self::Said(sentence)
    }
}

impl From<lexopt::Error> for Wrong {
    fn from(error: lexopt::Error) -> Self {
        Self::Line(error)
    }
}

/// What is wrong with the line, in our words.
fn sentence(error: &lexopt::Error) -> String {
    match error {
        lexopt::Error::MissingValue {
            option: Some(option),
        } => format!("{option} needs a value behind it"),
        lexopt::Error::UnexpectedValue { option, .. } => format!("{option} takes no value"),
        lexopt::Error::UnexpectedOption(option) => {
            // what is no text in the line has this character in its place
            let hint = if option.contains(char::REPLACEMENT_CHARACTER) {
                "; a file of that name needs -- before it"
            } else {
                ""
            };
            format!("there is no option {option}{hint}")
        }
        other => other.to_string(),
    }
}

fn check(request: Request) -> Result<Request, String> {
    if request.inputs.is_empty() {
        return Err("give a gear file".to_owned());
    }
    let standard = |input: &&Input| matches!(input, Input::Standard);
    let all = request.inputs.iter().chain(&request.against);
    if all.filter(standard).count() > 1 {
        return Err("standard input (-) can be read once only".to_owned());
    }
    if request.against.is_some() {
        let other = request.on_jacks || request.stations.is_some();
        if request.format != Format::Text || other {
            return Err("--against goes with text only, without times and stations".to_owned());
        }
        if matches!(request.against, Some(Input::Standard)) && request.inputs.len() > 1 {
            return Err("--against - goes with one file only".to_owned());
        }
    }
    let is_drawn = matches!(request.format, Format::Svg | Format::Html);
    if is_drawn && request.inputs.len() > 1 {
        return Err("--format svg and html go with one file only".to_owned());
    }
    if is_drawn && (request.on_jacks || request.stations.is_some()) {
        return Err(
            "--format svg and html take no --on-jacks and no --stations: the sheets have both cases"
                .to_owned(),
        );
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

const FORMATS: &[(&str, Format)] = &[
    ("text", Format::Text),
    ("json", Format::Json),
    ("csv", Format::Csv),
    ("times", Format::Times),
    ("svg", Format::Svg),
    ("html", Format::Html),
];
const UNITS: &[(&str, UnitChoice)] = &[("in", UnitChoice::INCH), ("mm", UnitChoice::METRIC)];
const TIRES: &[(&str, bool)] = &[("fitted", false), ("previous", true)];

/// Whether it is the previous tire; "former" is how earlier versions called it.
fn previous(name: &str, value: &OsStr) -> Result<bool, String> {
    if value == "former" {
        return Ok(true);
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

    /// Every option that the help names is read, and none is left out of it.
    #[test]
    fn the_help_names_what_is_read() {
        let named = |word: &&str| word.starts_with("--") && word.len() > 2;
        let options: std::collections::BTreeSet<&str> = crate::help::HELP
            .split([' ', ',', '\n', '|'])
            .filter(named)
            .collect();
        let known = [
            "--against",
            "--format",
            "--help",
            "--leg",
            "--link",
            "--on-jacks",
            "--open-link",
            "--out",
            "--stations",
            "--tire",
            "--units",
            "--version",
        ];
        assert_eq!(options.into_iter().collect::<Vec<_>>(), known);
        for option in known {
            let message = read(&[option]).err().unwrap_or_default();
            assert!(!message.contains("there is no option"), "{message}");
        }
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
        assert!(got.previous);
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
            (&["--\u{fffd}"], "needs -- before it"),
            (&["a", "--on-jacks=yes"], "--on-jacks takes no value"),
            (&["a", "--link", "--format", "csv"], "do not go together"),
            (&["a", "--link=1"], "takes no value"),
            (&["-", "-"], "once only"),
            (&["a", "b", "--format", "svg"], "one file only"),
            (&["a", "--format", "html", "--on-jacks"], "have both cases"),
        ] {
            let message = read(line).expect_err("a mistake");
            assert!(message.contains(part), "{line:?}: {message}");
        }
    }
}
