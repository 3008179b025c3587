//! Legs of every kind one after the other; a failure names its leg.
use gearswing_gear::model::{Gear, Leg};
use gearswing_solver::faults::{FaultKind, check_gear};
use gearswing_solver::kinematics::{Linkage, Sweep};

use crate::{Draw, Kind, random_gear, with_springs_and_pins, with_well};

/// One random gear with one sound leg.
pub struct Case {
    /// Kind of its leg.
    pub kind: Kind,
    /// The gear.
    pub gear: Gear,
    /// Random numbers for what is done with it.
    pub draw: Draw,
    /// Start of its random numbers, to find it again.
    start: u64,
}

impl Case {
    /// The gear's leg.
    #[must_use]
    pub fn leg(&self) -> &Leg {
        &self.gear.legs[0]
    }

    /// The leg made ready.
    #[must_use]
    pub fn linkage(&self) -> Linkage {
        Linkage::new(self.leg())
    }

    /// Whether the leg comes all the way up.
    #[must_use]
    pub fn comes_up(&self) -> bool {
        Sweep::new(self.leg(), &self.linkage(), 181).jams.is_empty()
    }
}

impl Drop for Case {
    fn drop(&mut self) {
        if std::thread::panicking() {
            eprintln!("case: {:?}, start {}", self.kind, self.start);
        }
    }
}

/// `each` sound legs of every kind, with `obstacles` around them; `salt` sets one check's legs apart
/// from another's. Of a folding brace every second leg at least comes all the way up.
pub fn cases(each: u64, obstacles: usize, salt: u64) -> impl Iterator<Item = Case> {
    Kind::all()
        .into_iter()
        .enumerate()
        .flat_map(move |(row, kind)| {
            (0..each).map(move |i| {
                let start = salt * 1_000_000 + row as u64 * 10_000 + i * 100;
                (0..100)
                    .map(|retry| drawn(kind, obstacles, start + retry))
                    .find(|case| is_sound(&case.gear) && (i % 2 == 1 || case.comes_up()))
                    .expect("a sound leg among a hundred")
            })
        })
}

/// As [`cases`], with springs of every kind and rubbing pins.
pub fn sprung_cases(each: u64, obstacles: usize, salt: u64) -> impl Iterator<Item = Case> {
    cases(each, obstacles, salt).map(|mut case| {
        let Case { gear, draw, .. } = &mut case;
        *gear = (0..1000)
            .map(|_| with_springs_and_pins(gear, draw))
            .find(|gear| check_gear(gear).is_ok())
            .expect("springs that fit among a thousand");
        case
    })
}

fn drawn(kind: Kind, obstacles: usize, start: u64) -> Case {
    let mut draw = Draw::new(start);
    let gear = random_gear(kind, &mut draw);
    Case {
        kind,
        gear: with_well(gear, obstacles, &mut draw),
        draw,
        start,
    }
}

/// Drawn legs may be faulty in one way only: a knee that the leg cannot bring straight, or outlines
/// that cross themselves. Anything else would be a fault of the drawing.
fn is_sound(gear: &Gear) -> bool {
    match check_gear(gear) {
        Ok(()) => true,
        Err(faults) => {
            for fault in &faults.0 {
                assert!(
                    matches!(
                        fault.kind,
                        FaultKind::CannotStraighten { .. }
                            | FaultKind::SelfCrossing { .. }
                            | FaultKind::LengthAtDown { .. }
                    ),
                    "{fault:?}"
                );
            }
            false
        }
    }
}
