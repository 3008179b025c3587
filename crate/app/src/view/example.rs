//! What of a leg still stands as a working example has it.
use std::sync::OnceLock;

use gearswing_gear::field::{Class, Field, Kind, Path};
use gearswing_gear::model::{Brace, Gear, Leg, Point};
use gearswing_gearfile::{DEMO, STARTERS};
use gearswing_report::page::answers as words;

use crate::fields;
use crate::state::{Origin, State};

/// Numbers of a leg none of whose points is an example's are told from so many on: fewer agree by chance, as bores
/// of an inch do.
const BY_CHANCE: usize = 6;

/// A leg of an example.
struct Known {
    points: Vec<Point>,
    numbers: Vec<(Path, f64)>,
}

/// What of a leg still stands as an example has it, in a sentence; the demo as it comes is meant to.
pub(super) fn of_example(state: &State, leg: usize) -> String {
    static EXAMPLES: OnceLock<Vec<Known>> = OnceLock::new();
    let Some(own) = state.gear().legs.get(leg) else {
        return String::new();
    };
    if *state.origin() == Origin::Demo {
        return String::new();
    }
    let examples = EXAMPLES.get_or_init(|| {
        let gears = std::iter::once(&DEMO).chain(&STARTERS);
        let gears = gears.flat_map(|example| [example.gear(), example.gear_in_inches()]);
        let known = gears.flatten().flat_map(|gear| {
            let known = |leg: usize| Known {
                points: points(&gear.legs[leg]),
                numbers: numbers(&gear, leg),
            };
            (0..gear.legs.len()).map(known).collect::<Vec<_>>()
        });
        known.collect()
    });
    let points = points(own);
    let alike = |known: &Known| {
        // or those of its mirror image
        let standing = [1.0, -1.0].map(|side| {
            let both = points.iter().zip(&known.points);
            both.filter(|(own, other)| **own == Point::new(side * other.x, other.y))
                .count()
        });
        let standing = standing.into_iter().max().unwrap_or_default();
        let numbers = known.numbers.iter().filter(|(path, value)| {
            let path = Path { leg, ..*path };
            let own = path.number(state.gear()).flatten();
            own.map(f64::abs) == Some(value.abs())
        });
        let fields: Vec<Field> = numbers.map(|(path, _)| path.field).collect();
        (standing, fields)
    };
    let most = examples.iter().map(alike);
    let most = most.max_by_key(|(standing, fields)| (*standing, fields.len()));
    let (standing, fields) = most.unwrap_or_default();
    if standing == 0 && fields.len() < BY_CHANCE {
        return String::new();
    }
    words::of_example((standing, points.len()), &fields)
}

/// Axle and pins of a leg, but for its trunnion: that of many stands at nought.
fn points(leg: &Leg) -> Vec<Point> {
    let mut points = vec![leg.strut.axle, leg.actuator.mount, leg.actuator.attach];
    match &leg.brace {
        Brace::None => {}
        Brace::Folding(brace) => {
            points.extend([brace.airframe_pivot, brace.leg_attach, brace.knee]);
        }
        Brace::Sliding(brace) => points.extend([brace.airframe_pivot, brace.leg_attach]),
    }
    points
}

/// Numbers of a leg that are of the airplane: not what is required, nor what an empty field stands for.
fn numbers(gear: &Gear, leg: usize) -> Vec<(Path, f64)> {
    let mut found = Vec::new();
    for field in Field::ALL.iter().filter(|field| field.is_of_leg()) {
        let info = field.info();
        let of_airplane = !matches!(info.class, Class::Requirement);
        if !matches!(info.kind, Kind::Number { .. }) || !of_airplane || field.is_of_entry() {
            continue;
        }
        let path = field.of_leg(leg);
        if let Some(Some(value)) = path.number(gear)
            && value != 0.0
            && fields::when_empty(&path.to_string()) != Some(Some(value))
        {
            found.push((path, value));
        }
    }
    found
}
