//! From input to answer: every input on its own, the worst decides the exit code.
use std::collections::BTreeSet;

use gearswing_gear::model::Gear;
use gearswing_gearfile::link;
use gearswing_report::{
    Answered, LegAnswer, Outcome, ReportOptions, Timed, clean, comparison_text, fault_text,
    file_words, name_words, report_text, result_json, save_error_text, stations_csv_head,
    stations_csv_rows, supply_error_text, times_csv_head, times_csv_rows, unusable_json,
};
use gearswing_solver::stop::{StopAnswer, StopError, explain_prepared};
use gearswing_solver::supply::{SupplyOptions, cycle_prepared, is_timed};
use gearswing_solver::{Options, PreparedGear, solve_prepared};

use crate::arguments::{Format, Input, Request};
use crate::drawn::drawn;
use crate::help::PROGRAM;
use crate::output::{Output, OutputError};
use crate::progress::Progress;
use crate::say;

/// Exit code when every answer is good, marginal or not shown.
const GOOD: u8 = 0;
/// Exit code when some answer is bad.
const BAD: u8 = 1;
/// Exit code when some input cannot be used.
pub(crate) const UNUSABLE: u8 = 2;

/// Rows of the stations table in text.
const TEXT_ROWS: usize = 25;

/// Does what is asked; the exit code.
pub(crate) fn run(request: &Request) -> u8 {
    let output = match &request.out {
        None => Ok(Output::standard()),
        Some(path) => Output::file(path, &request.inputs),
    };
    let mut output = match output {
        Ok(output) => output,
        Err(message) => {
            say(&message);
            return UNUSABLE;
        }
    };
    let mut code = GOOD;
    let written = answer_all(request, &mut output, &mut code).and_then(|()| output.finish());
    match written {
        Ok(()) | Err(OutputError::Closed) => code,
        Err(OutputError::Failed(message)) => {
            say(&message);
            UNUSABLE
        }
    }
}

fn answer_all(request: &Request, output: &mut Output, code: &mut u8) -> Result<(), OutputError> {
    let several = request.inputs.len() > 1;
    let (open, between, close) = match request.format {
        Format::Json if several => ("[\n".to_owned(), ",\n", "\n]\n"),
        Format::Json => (String::new(), "", "\n"),
        Format::Csv => (stations_csv_head(), "", ""),
        Format::Times => (times_csv_head(), "", ""),
        Format::Text => (String::new(), "\n\n", ""),
        Format::Link | Format::Svg | Format::Html => (String::new(), "", ""),
    };
    output.write(&open)?;
    let mut progress = Progress::new(request.inputs.len());
    let mut is_first = true;
    for (done, input) in request.inputs.iter().enumerate() {
        let (text, own_code) = answer(request, input, &mut |name| progress.at(done, name));
        *code = own_code.max(*code);
        if text.is_empty() {
            continue;
        }
        if !is_first {
            output.write(between)?;
        }
        is_first = false;
        output.write(&text)?;
    }
    output.write(close)
}

/// The text for one input and its exit code; messages have been said.
fn answer(request: &Request, input: &Input, now_at: &mut dyn FnMut(&str)) -> (String, u8) {
    let file = input.name();
    let shown = file_words(&file);
    now_at(&shown);
    let worked = input
        .gear()
        .map(|gear| with_tire(gear, request.previous, &shown))
        .and_then(|(gear, previous)| {
            let legs = legs_asked(&gear, request.leg.as_deref())?;
            Ok((legs, gear, previous))
        })
        .and_then(
            |(legs, gear, previous)| match (request.format, &request.against) {
                (Format::Text, Some(against)) => {
                    compared(request, against, (&gear, previous), &legs, &file)
                }
                (Format::Link, _) => {
                    link_text(request, &gear, &legs, &shown).map(|text| (text, GOOD))
                }
                (Format::Svg | Format::Html, _) => {
                    let (text, worst) = drawn(request, (&gear, previous), &legs)?;
                    // what the answers are is said by the code, as in every format
                    let (_, code) = solved(request, &file, (&gear, previous), &legs, now_at)?;
                    Ok((text, code.max(worst)))
                }
                (Format::Text | Format::Json | Format::Csv | Format::Times, _) => {
                    solved(request, &file, (&gear, previous), &legs, now_at)
                }
            },
        );
    worked.unwrap_or_else(|message| {
        say(&format!("{shown}: {message}"));
        let text = match request.format {
            Format::Json => unusable_json(PROGRAM, &file, &message).unwrap_or_default(),
            Format::Text
            | Format::Csv
            | Format::Times
            | Format::Link
            | Format::Svg
            | Format::Html => String::new(),
        };
        (text, UNUSABLE)
    })
}

/// The gear, or the state that it keeps with the previous tire, and whether it is that; where it keeps none, this is
/// said.
fn with_tire(gear: Gear, previous: bool, file: &str) -> (Gear, bool) {
    if !previous {
        return (gear, false);
    }
    let kept = gear.previous().and_then(|at| gear.kept.get(at));
    match kept.map(|kept| Gear::clone(&kept.gear)) {
        Some(kept) => (kept, true),
        None => {
            say(&format!(
                "{file}: it keeps no previous tire; these are the answers for the tire now fitted"
            ));
            (gear, false)
        }
    }
}

/// The changes from another file, and the answers of both.
fn compared(
    request: &Request,
    against: &Input,
    (gear, previous): (&Gear, bool),
    legs: &[usize],
    file: &str,
) -> Result<(String, u8), String> {
    let name = against.name();
    let before = against
        .gear()
        .map(|gear| with_tire(gear, request.previous, &file_words(&name)).0)
        .map_err(|error| format!("{}: {error}", file_words(&name)))?;
    let options = Options::default();
    let all: Vec<usize> = (0..before.legs.len()).collect();
    let answers = solve(&gear.clone().into(), legs, &options, &mut || {});
    let answers_before = solve(&before.clone().into(), &all, &options, &mut || {});
    let answered = Answered {
        program: PROGRAM,
        file,
        gear,
        legs: &answers,
        previous,
        cycle: None,
        stops: &[],
        units: request.units,
    };
    let other = Answered {
        file: &name,
        gear: &before,
        legs: &answers_before,
        ..answered
    };
    say_faults(&answered, &file_words(file));
    say_faults(&other, &file_words(&name));
    let text = comparison_text(&answered, &other);
    Ok((text, code_of(&answered)))
}

/// The answers of legs, one after the other; before each `next` is called.
fn solve(
    prepared: &PreparedGear,
    legs: &[usize],
    options: &Options,
    next: &mut dyn FnMut(),
) -> Vec<LegAnswer> {
    let answer = |&leg: &usize| {
        next();
        (leg, solve_prepared(prepared, leg, options))
    };
    legs.iter().map(answer).collect()
}

fn code_of(answered: &Answered) -> u8 {
    match answered.outcome() {
        Outcome::Good => GOOD,
        Outcome::Bad => BAD,
        Outcome::Unusable => UNUSABLE,
    }
}

fn solved(
    request: &Request,
    file: &str,
    (gear, previous): (&Gear, bool),
    legs: &[usize],
    now_at: &mut dyn FnMut(&str),
) -> Result<(String, u8), String> {
    let mut options = Options::default();
    if let (Format::Json | Format::Csv, Some(stations)) = (request.format, request.stations) {
        options.stations = stations;
    }
    let shown = file_words(file);
    let prepared = PreparedGear::from(gear.clone());
    let answers = solve(&prepared, legs, &options, &mut || now_at(&shown));
    // The legs share one supply: a leg alone has no times.
    let cycle = (is_timed(gear) && legs.len() == gear.legs.len()).then(|| {
        let options = SupplyOptions {
            on_jacks: request.on_jacks,
            ..SupplyOptions::default()
        };
        cycle_prepared(prepared.clone(), &options)
    });
    let stops: Vec<StopAnswer> = legs
        .iter()
        .filter(|&&leg| gear.legs.get(leg).is_some_and(|l| l.seen_stop.is_some()))
        .map(|&leg| (leg, explain_prepared(&prepared, leg)))
        .collect();
    let answered = Answered {
        program: PROGRAM,
        file,
        gear,
        legs: &answers,
        previous,
        cycle: cycle.as_ref(),
        stops: &stops,
        units: request.units,
    };
    say_faults(&answered, &shown);
    let text = match request.format {
        Format::Json => result_json(&answered).map_err(|error| error.to_string())?,
        Format::Csv => answers
            .iter()
            .filter_map(|(_, answer)| answer.as_ref().ok())
            .map(|result| stations_csv_rows(file, result))
            .collect(),
        Format::Times => times(&answered, &shown),
        Format::Svg | Format::Html => String::new(),
        Format::Text | Format::Link => report_text(
            &answered,
            ReportOptions {
                station_rows: request.stations.unwrap_or(TEXT_ROWS),
            },
        ),
    };
    Ok((text, code_of(&answered)))
}

/// The rows of the gear against time; why there are none is said.
fn times(answered: &Answered, shown: &str) -> String {
    match answered.cycle {
        Some(Ok(cycle)) => times_csv_rows(answered.file, answered.gear, cycle),
        Some(Err(error)) => {
            let timed = Timed {
                gear: answered.gear,
                units: answered.units,
            };
            say(&format!("{shown}: {}", supply_error_text(&timed, error)));
            String::new()
        }
        None => {
            say(&format!(
                "{shown}: no times without a pump or electric actuators and every leg"
            ));
            String::new()
        }
    }
}

/// Faults said one by one; the rest are counted, so that they fit a screen.
const FAULTS_SAID: usize = 20;

/// Legs named in a message; the rest are counted.
const LEGS_NAMED: usize = 12;

/// Every fault once, on standard error.
fn say_faults(answered: &Answered, file: &str) {
    let mut said = BTreeSet::new();
    let of_legs = answered
        .legs
        .iter()
        .filter_map(|(_, leg)| leg.as_ref().err());
    let of_stops = answered.stops.iter().filter_map(|(_, stop)| match stop {
        Err(StopError::Faults(faults)) => Some(faults),
        _ => None,
    });
    for fault in of_legs.chain(of_stops).flat_map(|faults| &faults.0) {
        let text = fault_text(fault, answered.gear, answered.units);
        if said.insert(text.clone()) && said.len() <= FAULTS_SAID {
            say(&format!("{file}: {text}"));
        }
    }
    let more = said.len().saturating_sub(FAULTS_SAID);
    if more > 0 {
        say(&format!(
            "{file}: and {more} more faults; put these right first"
        ));
    }
    if answered.legs.is_empty() {
        say(&format!("{file}: there is no leg in it"));
    }
}

/// Indices of the legs asked for: all, or those of a name, or one by its number.
fn legs_asked(gear: &Gear, asked: Option<&str>) -> Result<Vec<usize>, String> {
    let Some(asked) = asked.map(str::trim) else {
        return Ok((0..gear.legs.len()).collect());
    };
    let same = |name: &str| name.trim().to_lowercase() == asked.to_lowercase();
    let named: Vec<usize> = gear
        .legs
        .iter()
        .enumerate()
        .filter(|(_, leg)| same(&leg.name))
        .map(|(index, _)| index)
        .collect();
    if !named.is_empty() {
        return Ok(named);
    }
    let number = asked.parse::<usize>().ok();
    if let Some(index) = number.and_then(|number| number.checked_sub(1))
        && index < gear.legs.len()
    {
        return Ok(vec![index]);
    }
    let names: Vec<String> = gear
        .legs
        .iter()
        .enumerate()
        .take(LEGS_NAMED)
        .map(|(index, leg)| format!("{} {}", index + 1, name_words(&leg.name)))
        .collect();
    let more = match gear.legs.len().saturating_sub(LEGS_NAMED) {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    Err(format!(
        "there is no leg {}; it has: {}{more}",
        name_words(asked),
        names.join(", ")
    ))
}

fn link_text(request: &Request, gear: &Gear, legs: &[usize], file: &str) -> Result<String, String> {
    let shared = link::Shared {
        leg: legs.first().copied().unwrap_or(0),
        units: request.units.to_string(),
        ..link::Shared::of(gear.clone())
    };
    let code = link::encode(&shared).map_err(|error| clean(&save_error_text(&error)))?;
    if !link::fits(&code) {
        say(&format!(
            "{file}: this link has {} characters; many messengers cut at {}, so better send the file",
            code.len(),
            link::LINK_LIMIT
        ));
    }
    Ok(code + "\n")
}
