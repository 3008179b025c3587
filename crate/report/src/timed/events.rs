//! The table of events and times.
use gearswing_solver::result::{Indication, Run, RunEvent, RunEventKind};
use gearswing_units::{NO_VALUE, Quantity, format_bare};

use super::Timed;
use crate::table::{Align, Column, aligned};
use crate::text::leg_name;

/// The events of a run as aligned text, in order.
#[must_use]
pub fn events_text(timed: &Timed, run: &Run) -> String {
    let texts = |text: &dyn Fn(&RunEvent) -> String| -> Vec<String> {
        run.events.iter().map(text).collect()
    };
    let number = |quantity: Quantity, value: Option<f64>| {
        value.map_or_else(
            || NO_VALUE.to_owned(),
            |si| format_bare(quantity, timed.units, si).replace('-', "−"),
        )
    };
    let head =
        |name: &str, quantity: Quantity| format!("{name} {}", quantity.unit_label(timed.units));
    let name = |event: &RunEvent| match event.leg {
        Some(index) => {
            let name = timed.gear.legs.get(index).map_or("", |leg| &leg.name);
            leg_name(name, index)
        }
        None => "supply".to_owned(),
    };
    aligned(
        "  ",
        &[
            Column::new(
                head("time", Quantity::Time),
                Align::Right,
                texts(&|event| number(Quantity::Time, Some(event.time))),
            ),
            Column::new("", Align::Left, texts(&name)),
            Column::new(
                "event",
                Align::Left,
                texts(&|event| event_words(event.kind).to_owned()),
            ),
            Column::new(
                head("travel", Quantity::Travel),
                Align::Right,
                texts(&|event| number(Quantity::Travel, event.place.map(|place| place.travel))),
            ),
            Column::new(
                head("pressure", Quantity::Pressure),
                Align::Right,
                texts(&|event| number(Quantity::Pressure, event.pressure)),
            ),
        ],
    )
}

/// One event as a sentence.
#[must_use]
pub fn event_line(timed: &Timed, event: &RunEvent) -> String {
    let name = match event.leg {
        Some(index) => timed.the_leg(index),
        None => "the supply".to_owned(),
    };
    format!(
        "{}, {name}: {}.",
        timed.say(Quantity::Time, event.time),
        event_words(event.kind)
    )
}

/// What the indication of a leg shows, in words.
#[must_use]
pub fn indication_words(indication: Indication) -> &'static str {
    match indication {
        Indication::DownAndLocked => "down and locked",
        Indication::InTransit => "in transit",
        Indication::Up => "up",
    }
}

/// An event in a few words.
pub(super) fn event_words(kind: RunEventKind) -> &'static str {
    match kind {
        RunEventKind::Selected => "selected",
        RunEventKind::StrutDone => "strut at its end",
        RunEventKind::SwingDone => "swing at its end",
        RunEventKind::Blocked => "can go no further",
        RunEventKind::FluidLags => "its load pulls it ahead of the fluid",
        RunEventKind::Touches => "touches, and stops",
        RunEventKind::Stalled => "stalls",
        RunEventKind::ShortenedMade => "strut-shortened switch closes",
        RunEventKind::ShortenedOpen => "strut-shortened switch opens",
        RunEventKind::UpMade => "up-limit switch closes: up",
        RunEventKind::UpOpen => "up-limit switch opens: in transit",
        RunEventKind::DownMade => "down-lock switch closes: down and locked",
        RunEventKind::DownOpen => "down-lock switch opens: in transit",
        RunEventKind::ReliefOpen => "relief valve opens",
        RunEventKind::AccumulatorEmpty => "accumulator is empty",
        RunEventKind::AccumulatorFull => "accumulator is full",
        RunEventKind::ReliefClosed => "relief valve closes",
        RunEventKind::BreakerPassed => "current passes the breaker's rating",
        RunEventKind::PressureSwitch => "pressure switch stops the pump",
        RunEventKind::SwitchesStop => "limit switches stop it",
        RunEventKind::RunsOn => "pump runs on",
    }
}
