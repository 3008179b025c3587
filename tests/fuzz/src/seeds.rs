//! What the targets begin with: the project's own files, links and examples, and numbers as people write
//! them.
use gearswing_gearfile::DEMO;
use gearswing_gearfile::link::{Shared, content, encode};
use gearswing_units::Quantity;

/// Folders of gear files in the fixtures; "" are the fixtures themselves.
const GEAR_FILES: &[&str] = &["", "faults", "jams", "no_cycle", "starters", "versions"];

/// Numbers as people write them, good and bad.
const NUMBERS: &[&str] = &[
    "0",
    "-0",
    "3/8",
    "1 1/2 in",
    "1-3/8",
    "1⅜",
    "12 mm",
    "1200 psi",
    "9 lb",
    "2' 3 1/4\"",
    "12° 30'",
    "9,5",
    "1,200",
    "1,200.5",
    "0,375",
    "1.5e-3",
    "1e400",
    "1e-400",
    ".5",
    "5.",
    "+2",
    "--2",
    "2-3",
    "3 - 1/8",
    "1/0",
    "mPa",
    "12 MPa",
    "50 %",
    "1.25",
    "123456789012.5",
    "½",
    "٣",
    "1 234,5",
    "NaN",
    "inf",
    "",
    " ",
    "\u{202e}12",
    "12 parsec",
];

pub(crate) fn gear_files() -> Vec<Vec<u8>> {
    let mut seeds: Vec<_> = GEAR_FILES
        .iter()
        .flat_map(|folder| files(folder, "json"))
        .collect();
    let demo = DEMO.text.as_bytes();
    seeds.push(demo[..demo.len() / 2].to_vec());
    seeds.extend([&b"{}"[..], b"[]", b"", b"\xff"].map(<[u8]>::to_vec));
    seeds
}

pub(crate) fn links() -> Vec<Vec<u8>> {
    let mut seeds = files("links", "txt");
    let shared = Shared {
        leg: 1,
        progress: 0.25,
        units: "inch bar kt".to_owned(),
        ..Shared::of(DEMO.gear().expect("the demo opens"))
    };
    seeds.push(encode(&shared).expect("it can be sent").into_bytes());
    seeds.push(content(&shared).expect("JSON").into_bytes());
    seeds
}

pub(crate) fn numbers() -> Vec<Vec<u8>> {
    let quantities = 0..u8::try_from(Quantity::ALL.len()).expect("few");
    quantities
        .flat_map(|quantity| {
            NUMBERS.iter().flat_map(move |text| {
                [0, 1, 7].map(|units| [&[quantity, units], text.as_bytes()].concat())
            })
        })
        .collect()
}

/// Each example as it is, and with one change of each kind.
pub(crate) fn solutions() -> Vec<Vec<u8>> {
    let as_it_is = (0..7).map(|example| vec![example, example]);
    let changed = (0..6).map(|how| vec![how, 0, 0, 40 + 7 * how, how, 150]);
    as_it_is.chain(changed).collect()
}

/// Contents of the files of a folder of the fixtures that end so.
fn files(folder: &str, extension: &str) -> Vec<Vec<u8>> {
    let files = gearswing_samples::fixtures::files(folder, extension);
    files
        .into_iter()
        .map(|(_, text)| text.into_bytes())
        .collect()
}
