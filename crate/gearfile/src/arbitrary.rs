//! Random gears for the tests, by the list of fields: every kind of part, any finite number, any text.
use gearswing_gear::field::{Field, Kind, Path, first_spring};
use gearswing_gear::model::{Gear, Kept, Note, Obstacle, PREVIOUS_TIRE, Point, Shape, Shortening};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;

use crate::DEMO;

/// Any finite number, -0 and the smallest ones among them, and round ones as people type them.
pub(crate) fn number() -> impl Strategy<Value = f64> {
    use proptest::num::f64::{NEGATIVE, NORMAL, POSITIVE, SUBNORMAL, ZERO};
    prop_oneof![
        4 => POSITIVE | NEGATIVE | NORMAL | SUBNORMAL | ZERO,
        4 => (-10_000..10_000_i32).prop_map(|n| f64::from(n) / 1000.0),
        // what is left out of a file
        1 => prop_oneof![Just(0.0), Just(0.1), Just(0.62), Just(1.0), Just(1.4)],
    ]
}

fn text() -> impl Strategy<Value = String> {
    prop_oneof![any::<String>(), "[A-Za-z ]{0,12}".prop_map(String::from)]
}

/// What is drawn for a gear, taken in turn.
#[derive(Debug)]
struct Drawn {
    numbers: Vec<Option<f64>>,
    texts: Vec<String>,
    picks: Vec<u16>,
    at: usize,
}

impl Drawn {
    fn turn(&mut self) -> usize {
        self.at += 1;
        self.at
    }

    fn optional(&mut self) -> Option<f64> {
        let at = self.turn() % self.numbers.len();
        self.numbers[at]
    }

    fn number(&mut self) -> f64 {
        self.optional().or(self.optional()).unwrap_or(1.0)
    }

    fn point(&mut self) -> Point {
        Point::new(self.number(), self.number())
    }

    fn text(&mut self) -> &str {
        let at = self.turn() % self.texts.len();
        &self.texts[at]
    }

    fn below(&mut self, count: usize) -> usize {
        let at = self.turn() % self.picks.len();
        // a list that is gone through more than once says something else then
        (usize::from(self.picks[at]) + self.at / self.picks.len()) % count
    }
}

/// Entries of each list of a leg, at most.
const ENTRIES: usize = 3;

fn choose(gear: &mut Gear, drawn: &mut Drawn) {
    for &field in Field::ALL {
        for path in field.places(gear.legs.len(), ENTRIES) {
            match field.info().kind {
                Kind::Choice(keys) => {
                    // of a gear that has no such choice nothing changes
                    let _ = path.choose(gear, keys[drawn.below(keys.len())]);
                }
                Kind::Set(keys) => {
                    for key in keys {
                        let _ = path.switch(gear, key, drawn.below(3) == 0);
                    }
                }
                Kind::Number { .. } | Kind::Point | Kind::Outline | Kind::Text => {}
            }
        }
    }
    for leg in &mut gear.legs {
        if drawn.below(3) == 0 {
            leg.drive.electric = None;
        }
        // a file may name them in any order, and twice
        for obstacle in &mut leg.well {
            if drawn.below(3) == 0 {
                obstacle.ignores.reverse();
                obstacle.ignores.extend(obstacle.ignores.first().copied());
            }
        }
    }
}

fn fill(gear: &mut Gear, drawn: &mut Drawn) {
    for &field in Field::ALL {
        for path in field.places(gear.legs.len(), ENTRIES) {
            // a gear that has no such value is left as it is
            match field.info().kind {
                Kind::Number { .. } => {
                    if path.set_number(gear, drawn.optional()).is_err() {
                        let _ = path.set_number(gear, Some(drawn.number()));
                    }
                }
                Kind::Point => {
                    let _ = path.set_point(gear, drawn.point());
                }
                Kind::Outline => {
                    if let Some(points) = path.outline_mut(gear) {
                        *points = (0..drawn.below(6)).map(|_| drawn.point()).collect();
                    }
                }
                Kind::Text => {
                    let _ = path.set_text(gear, drawn.text());
                }
                Kind::Choice(_) | Kind::Set(_) => {}
            }
        }
    }
}

/// Adds what has entries: legs, springs, pieces of structure, rows of a table, a tire from before.
fn build(legs: usize, drawn: &mut Drawn) -> Gear {
    let mut gear = DEMO.gear().expect("the demo reads");
    gear.kept.clear();
    let first = gear.legs[0].clone();
    gear.legs = vec![first; legs];
    for leg in &mut gear.legs {
        leg.springs.clear();
        for _ in 0..drawn.below(ENTRIES + 1) {
            leg.springs.push(first_spring(leg, String::new()));
        }
        leg.well.clear();
        for _ in 0..drawn.below(ENTRIES + 1) {
            leg.well.push(Obstacle {
                name: String::new(),
                shape: Shape::Solid { points: Vec::new() },
                required_clearance: None,
                ignores: Vec::new(),
            });
        }
    }
    // what comes with one source stays with another
    choose(&mut gear, drawn);
    choose(&mut gear, drawn);
    for leg in &mut gear.legs {
        if let Shortening::WithTravel { table } = &mut leg.strut.shortening {
            let row = table.first().copied();
            let rows = drawn.below(ENTRIES + 1);
            *table = row.into_iter().cycle().take(rows).collect();
        }
    }
    gear
}

/// Any note, on something that is there or not.
fn note(drawn: &mut Drawn) -> Note {
    let on = ["", "legs[0]", "legs[1].actuator.mount_m"][drawn.below(3)];
    Note {
        text: drawn.text().to_owned(),
        by: drawn.text().to_owned(),
        on: on.to_owned(),
        progress: drawn.optional(),
    }
}

/// Any gear that a file can hold, sensible or not.
pub(crate) fn gear() -> impl Strategy<Value = Gear> {
    // lengths without a common divisor: the draws do not meet the same fields again
    (
        0..4_usize,
        vec(option::weighted(0.7, number()), 211),
        vec(text(), 13),
        vec(any::<u16>(), 101),
    )
        .prop_map(|(legs, numbers, texts, picks)| {
            let mut drawn = Drawn {
                numbers,
                texts,
                picks,
                at: 0,
            };
            let mut gear = build(legs, &mut drawn);
            fill(&mut gear, &mut drawn);
            gear.id = (drawn.below(2) == 0)
                .then(|| gearswing_gear::model::GearId([drawn.below(256) as u8; 8]));
            for _ in 0..drawn.below(3) {
                gear.notes.push(note(&mut drawn));
            }
            if drawn.below(3) == 0 {
                keep_previous_tires(&mut gear, &mut drawn);
            }
            gear
        })
}

/// Keeps the gear with other tires, as reading does with those of the wheels.
fn keep_previous_tires(gear: &mut Gear, drawn: &mut Drawn) {
    let mut before = gear.without_kept();
    for leg in &mut before.legs {
        if drawn.below(2) == 0 {
            leg.wheel.tire.size.push('+');
        }
    }
    let kept = Kept::of(&before, PREVIOUS_TIRE.to_owned());
    gear.kept.push(kept);
}

/// The draws leave no field out, no option, and no number that may be empty filled for ever.
#[test]
fn every_field_and_option_is_drawn() {
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;
    let mut runner = TestRunner::deterministic();
    let gears: Vec<Gear> = (0..300)
        .map(|_| gear().new_tree(&mut runner).unwrap().current())
        .collect();
    for &field in Field::ALL {
        let has = |is: &dyn Fn(&Gear, Path) -> bool| {
            gears.iter().any(|gear| {
                field
                    .places(gear.legs.len(), ENTRIES)
                    .into_iter()
                    .any(|path| is(gear, path))
            })
        };
        let key = field.info().key;
        match field.info().kind {
            Kind::Number { .. } => {
                assert!(
                    has(&|gear, path| matches!(path.number(gear), Some(Some(_)))),
                    "{key}"
                );
            }
            Kind::Point => assert!(has(&|gear, path| path.at(gear).is_some()), "{key}"),
            Kind::Outline => assert!(
                has(&|gear, path| path.outline(gear).is_some_and(|points| !points.is_empty())),
                "{key}"
            ),
            Kind::Text => {
                assert!(
                    has(&|gear, path| path.text(gear).is_some_and(|text| !text.is_empty())),
                    "{key}"
                );
            }
            Kind::Choice(options) => {
                for option in options {
                    assert!(
                        has(&|gear, path| path.chosen(gear) == Some(*option)),
                        "{key} {option}"
                    );
                }
            }
            Kind::Set(options) => {
                for option in options {
                    let on = |gear: &Gear, path: Path| {
                        path.switched_on(gear).is_some_and(|on| on.contains(option))
                    };
                    assert!(has(&on), "{key} {option}");
                }
            }
        }
    }
}
