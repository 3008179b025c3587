//! One whole solution of an example with some of its numbers changed: a result, or faults in words;
//! texts without a number that is none; a verdict that its own numbers bear out.
use gearswing_gear::model::Gear;
use gearswing_gearfile::{DEMO, Example, STARTERS};
use gearswing_report::{Answered, Program, ReportOptions, fault_text, report_text, result_json};
use gearswing_solver::faults::check_gear;
use gearswing_solver::result::{LegResult, Question, Verdict};
use gearswing_solver::supply::{SupplyOptions, cycle, is_timed};
use gearswing_solver::{Options, solve_leg};
use gearswing_units::UnitChoice;
use serde_json::{Number, Value};

/// Most numbers that are changed: more make nothing but faults.
const MOST_CHANGES: usize = 6;

/// The first byte says the example, the second the leg; each four after them change a number.
pub fn solve(data: &[u8]) {
    let &[example, leg, ref changes @ ..] = data else {
        return;
    };
    let Some(gear) = changed(example_of(example), changes) else {
        return;
    };
    if let Err(faults) = check_gear(&gear) {
        for fault in &faults.0 {
            assert!(!fault_text(fault, &gear, UnitChoice::INCH).is_empty());
        }
        return;
    }
    let leg = usize::from(leg) % gear.legs.len();
    let options = Options {
        stations: 21,
        ..Options::default()
    };
    let result = solve_leg(&gear, leg, &options).expect("a gear without faults");
    bears_out(&result);
    let timed = is_timed(&gear).then(|| cycle(&gear, &SupplyOptions::default()));
    let answered = Answered {
        program: Program::default(),
        file: "fuzzed",
        gear: &gear,
        legs: &[(leg, Ok(result))],
        previous: false,
        cycle: timed.as_ref(),
        stops: &[],
        units: UnitChoice::INCH,
    };
    let text = report_text(&answered, ReportOptions { station_rows: 5 });
    assert!(!text.contains("NaN"), "{text}");
    let json = result_json(&answered).expect("JSON");
    serde_json::from_str::<Value>(&json).expect("JSON");
}

/// What it begins with.
pub(crate) fn example_of(byte: u8) -> Example {
    match usize::from(byte) % (STARTERS.len() + 1) {
        0 => DEMO,
        n => STARTERS[n - 1],
    }
}

/// The example with its changes; nothing where they make no gear any more.
fn changed(example: Example, changes: &[u8]) -> Option<Gear> {
    let gear = example.gear().expect("the examples open");
    let mut value = serde_json::to_value(gear).expect("JSON");
    let mut pointers = Vec::new();
    numbers(&value, String::new(), &mut pointers);
    for change in changes.chunks_exact(4).take(MOST_CHANGES) {
        let &[high, low, how, much] = change else {
            break;
        };
        let which = usize::from(u16::from_be_bytes([high, low])) % pointers.len();
        let other = pointers[usize::from(much) % pointers.len()].clone();
        let other = value.pointer(&other)?.as_f64()?;
        let place = value.pointer_mut(&pointers[which])?;
        let old = place.as_f64()?;
        let much = f64::from(much) - 128.0;
        let new = match how % 6 {
            0 => old * much / 32.0,
            1 => 0.01 * much,
            2 => old * (1.0 + 1e-3 * much),
            3 => 0.0,
            4 => other,
            _ => 10_f64.powf(much / 16.0),
        };
        *place = Value::Number(Number::from_f64(new)?);
    }
    serde_json::from_value(value).ok()
}

/// Pointers of all numbers.
fn numbers(value: &Value, at: String, found: &mut Vec<String>) {
    match value {
        Value::Number(_) => found.push(at),
        Value::Array(list) => {
            for (index, one) in list.iter().enumerate() {
                numbers(one, format!("{at}/{index}"), found);
            }
        }
        Value::Object(map) => {
            for (key, one) in map {
                numbers(one, format!("{at}/{key}"), found);
            }
        }
        Value::Null | Value::Bool(_) | Value::String(_) => {}
    }
}

/// A Yes to "does it clear?" has every pair apart and no stop on the way.
fn bears_out(result: &LegResult) {
    assert!(!result.stations.is_empty());
    let clears = result
        .findings
        .iter()
        .find(|finding| finding.question == Question::Clears)
        .expect("the first answer");
    if clears.verdict == Verdict::Good {
        assert!(result.jams.is_empty());
        for pair in &result.clearance.pairs {
            assert!(pair.tightest.clearance > 0.0, "{pair:?}");
        }
    }
    for station in result.stations.iter() {
        assert!(station.progress.is_finite() && station.travel.is_finite());
    }
}
