//! Worked examples: the demo and one starter of each kind, invented airplanes all of them.
use gearswing_gear::model::{Gear, View};

use crate::file::{OpenError, read};

/// A gear file that comes with the program.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Example {
    /// Key, as "folding_side".
    pub key: &'static str,
    /// What it is an example of.
    pub kind: ExampleKind,
    /// Text of the gear file. A starter's numbers are round in millimeters here.
    pub text: &'static str,
    /// Text of the gear file with numbers that are round in inches.
    pub inch: &'static str,
}

/// What an example is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ExampleKind {
    /// The demo.
    Demo,
    /// A leg with a folding brace.
    Folding(View),
    /// A leg with a telescoping brace.
    Sliding(View),
    /// A leg without brace.
    NoBrace(View),
}

impl Example {
    /// The gear.
    ///
    /// # Errors
    /// None for the examples that come with the program: the tests open every one.
    pub fn gear(&self) -> Result<Gear, OpenError> {
        read(self.text)
    }

    /// The gear with numbers that are round in inches.
    ///
    /// # Errors
    /// As [`Example::gear`].
    pub fn gear_in_inches(&self) -> Result<Gear, OpenError> {
        read(self.inch)
    }
}

/// The demo: a four-seat tourer that has gone to larger main tires.
pub const DEMO: Example = Example {
    key: "demo",
    kind: ExampleKind::Demo,
    text: include_str!("../../../fixtures/demo.json"),
    inch: include_str!("../../../fixtures/demo.json"),
};

/// One leg of each kind to start a new file from, in two sets of numbers: one round in millimeters,
/// one round in inches.
pub const STARTERS: [Example; 6] = [
    Example {
        key: "folding_side",
        kind: ExampleKind::Folding(View::Side),
        text: include_str!("../../../fixtures/starters/folding_side.json"),
        inch: include_str!("../../../fixtures/starters/inch/folding_side.json"),
    },
    Example {
        key: "folding_front",
        kind: ExampleKind::Folding(View::Front),
        text: include_str!("../../../fixtures/starters/folding_front.json"),
        inch: include_str!("../../../fixtures/starters/inch/folding_front.json"),
    },
    Example {
        key: "sliding_side",
        kind: ExampleKind::Sliding(View::Side),
        text: include_str!("../../../fixtures/starters/sliding_side.json"),
        inch: include_str!("../../../fixtures/starters/inch/sliding_side.json"),
    },
    Example {
        key: "sliding_front",
        kind: ExampleKind::Sliding(View::Front),
        text: include_str!("../../../fixtures/starters/sliding_front.json"),
        inch: include_str!("../../../fixtures/starters/inch/sliding_front.json"),
    },
    Example {
        key: "no_brace_side",
        kind: ExampleKind::NoBrace(View::Side),
        text: include_str!("../../../fixtures/starters/no_brace_side.json"),
        inch: include_str!("../../../fixtures/starters/inch/no_brace_side.json"),
    },
    Example {
        key: "no_brace_front",
        kind: ExampleKind::NoBrace(View::Front),
        text: include_str!("../../../fixtures/starters/no_brace_front.json"),
        inch: include_str!("../../../fixtures/starters/inch/no_brace_front.json"),
    },
];

/// The demo or a starter by its key.
#[must_use]
pub fn find_example(key: &str) -> Option<&'static Example> {
    std::iter::once(&DEMO)
        .chain(&STARTERS)
        .find(|example| example.key == key)
}
