//! What is known of a field, and the macro that makes the list.
use super::Field;
use super::range::Range;
use crate::model::{Gear, Leg, Obstacle, Point, ShorteningRow, Spring};
use gearswing_units::Quantity;

/// Part of the data to which a field belongs: those of the gear before those of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Group {
    /// Name and note of the gear file.
    File,
    /// Attitude, load factor, air.
    Conditions,
    /// Supply.
    Supply,
    /// Battery, wires and breaker.
    Battery,
    /// Accumulator.
    Accumulator,
    /// Required clearances.
    Clearance,
    /// Leg and trunnion.
    Leg,
    /// Shock strut.
    Strut,
    /// Wheel and the tire now fitted.
    Wheel,
    /// Drag or side brace.
    Brace,
    /// Retract actuator.
    Actuator,
    /// Orifices, stage valve and strut-shortening cylinder.
    Lines,
    /// Electric actuator.
    Motor,
    /// Switches, and where the leg starts.
    Switches,
    /// Springs on the leg.
    Springs,
    /// Pins and their friction.
    Pins,
    /// Drag areas.
    Air,
    /// Free fall and margin of the lock.
    Fall,
    /// Structure around the leg.
    Well,
    /// What was seen on the jacks.
    Seen,
}

impl Group {
    /// Every group.
    pub const ALL: [Self; 20] = [
        Self::File,
        Self::Conditions,
        Self::Supply,
        Self::Battery,
        Self::Accumulator,
        Self::Clearance,
        Self::Leg,
        Self::Strut,
        Self::Wheel,
        Self::Brace,
        Self::Actuator,
        Self::Lines,
        Self::Motor,
        Self::Switches,
        Self::Springs,
        Self::Pins,
        Self::Air,
        Self::Fall,
        Self::Well,
        Self::Seen,
    ];

    /// Whether the group belongs to one leg.
    #[must_use]
    pub fn is_of_leg(self) -> bool {
        self >= Self::Leg
    }
}

/// What kind of change it is to change a field. Steps are in the field's own SI unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Class {
    /// Set by a wrench or a knob: turns of an end, a stop, a switch, a valve, the preload of a spring.
    Adjustment {
        /// One turn, one notch.
        step: f64,
    },
    /// Another part: tire, actuator, spring, battery, hole.
    Part {
        /// From one size to the next.
        step: f64,
    },
    /// A change of the airframe or of the leg: mounts, links, outlines of the well.
    Structure {
        /// The least that is worth the work.
        step: f64,
    },
    /// What the airplane or the day is; measured, not chosen.
    Measured,
    /// What is asked of the gear.
    Requirement,
}

/// What holds when a number is left empty.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Empty {
    /// A person fills it in, even where a file may leave it out.
    Never,
    /// It counts as this.
    Is(f64),
    /// The gear has no such figure.
    Absent,
    /// The whole part is not there.
    PartAbsent,
}

/// What a field holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A number, SI inside.
    Number {
        /// What it measures.
        quantity: Quantity,
        /// What it may be.
        range: Range,
        /// What holds without it.
        empty: Empty,
    },
    /// A point: x and y (m).
    Point,
    /// A list of points (m).
    Outline,
    /// Free text.
    Text,
    /// One of these keys.
    Choice(&'static [&'static str]),
    /// Any of these keys together.
    Set(&'static [&'static str]),
}

/// A row of the list of fields.
#[derive(Debug)]
pub struct Info {
    /// Key in the gear file with every index left out, as "legs[].actuator.bore_m".
    pub key: &'static str,
    /// What it holds.
    pub kind: Kind,
    /// Version of the gear file that has it first.
    pub since: u64,
    /// Group it is shown in.
    pub group: Group,
    /// What kind of change it is to change it.
    pub class: Class,
    /// Where it stands in the model.
    pub(super) access: Access,
}

impl Info {
    /// What its number or its coordinates measure; `None` for texts and choices.
    #[must_use]
    pub fn quantity(&self) -> Option<Quantity> {
        match self.kind {
            Kind::Number { quantity, .. } => Some(quantity),
            Kind::Point | Kind::Outline => Some(Quantity::Length),
            Kind::Text | Kind::Choice(_) | Kind::Set(_) => None,
        }
    }

    /// What its number or its coordinates may be, SI; `None` for texts and choices.
    #[must_use]
    pub fn range(&self) -> Option<Range> {
        match self.kind {
            Kind::Number { range, .. } => Some(range),
            Kind::Point | Kind::Outline => Some(super::range::COORDINATE),
            Kind::Text | Kind::Choice(_) | Kind::Set(_) => None,
        }
    }
}

/// A value in the model, to be read.
#[derive(Debug)]
pub(super) enum Ref<'g> {
    /// A number that is always there.
    Number(&'g f64),
    /// A number that may be left out.
    Optional(&'g Option<f64>),
    /// A text.
    Text(&'g String),
    /// A point.
    Point(&'g Point),
    /// A list of points.
    Outline(&'g Vec<Point>),
}

/// A value in the model, to be changed.
#[derive(Debug)]
pub(super) enum Mut<'g> {
    /// A number that is always there.
    Number(&'g mut f64),
    /// A number that may be left out.
    Optional(&'g mut Option<f64>),
    /// A text.
    Text(&'g mut String),
    /// A point.
    Point(&'g mut Point),
    /// A list of points.
    Outline(&'g mut Vec<Point>),
}

/// The way from a part of the model to a value; `None` where this gear has no such value.
#[derive(Debug)]
pub(super) struct Via<Part> {
    pub(super) read: fn(&Part) -> Option<Ref<'_>>,
    pub(super) write: fn(&mut Part) -> Option<Mut<'_>>,
}

/// The part of the model from which the way begins; it says which indices a path has.
#[derive(Debug)]
pub(super) enum Access {
    Gear(Via<Gear>),
    Leg(Via<Leg>),
    /// A row of the shortening table.
    Row(Via<ShorteningRow>),
    Spring(Via<Spring>),
    Obstacle(Via<Obstacle>),
}

/// The way to the value of one row, in one of the two directions.
macro_rules! way {
    ($value:ident, $part:ident, (choice $($rest:tt)*), {}, $($m:tt)?) => { |_| None };
    ($value:ident, $part:ident, (set $($rest:tt)*), {}, $($m:tt)?) => { |_| None };
    ($value:ident, $part:ident, ($kind:ident $($rest:tt)*), { $pattern:pat = $whole:expr => $place:expr }, $($m:tt)?) => {
        |$part| match &$($m)? $whole {
            $pattern => Some(way!(@ $value $kind, &$($m)? $place)),
            #[allow(unreachable_patterns, reason = "a pattern may fit all there is")]
            _ => None,
        }
    };
    ($value:ident, $part:ident, ($kind:ident $($rest:tt)*), { $place:expr }, $($m:tt)?) => {
        |$part| Some(way!(@ $value $kind, &$($m)? $place))
    };
    (@ $value:ident number, $place:expr) => { $value::Number($place) };
    (@ $value:ident opens, $place:expr) => { $value::Number($place) };
    (@ $value:ident option, $place:expr) => { $value::Optional($place) };
    (@ $value:ident text, $place:expr) => { $value::Text($place) };
    (@ $value:ident point, $place:expr) => { $value::Point($place) };
    (@ $value:ident outline, $place:expr) => { $value::Outline($place) };
}

/// What a row says that its field holds.
macro_rules! kind {
    (number $quantity:ident $range:ident) => { kind!(@ $quantity $range Empty::Never) };
    (number $quantity:ident $range:ident = $default:expr) => {
        kind!(@ $quantity $range Empty::Is($default))
    };
    (option $quantity:ident $range:ident) => { kind!(@ $quantity $range Empty::Absent) };
    (opens $quantity:ident $range:ident) => { kind!(@ $quantity $range Empty::PartAbsent) };
    (@ $quantity:ident $range:ident $empty:expr) => {
        Kind::Number { quantity: Quantity::$quantity, range: r::$range, empty: $empty }
    };
    (point) => { Kind::Point };
    (outline) => { Kind::Outline };
    (text) => { Kind::Text };
    (choice $keys:ident) => { Kind::Choice(choice::$keys::KEYS) };
    (choice [$($key:literal),+]) => { Kind::Choice(&[$($key),+]) };
    (set $keys:ident) => { Kind::Set(choice::$keys::KEYS) };
}

/// What kind of change a row says it is; the step of a choice is one option.
macro_rules! class {
    (measured) => {
        Class::Measured
    };
    (requirement) => {
        Class::Requirement
    };
    (adjustment $step:expr) => {
        Class::Adjustment { step: $step }
    };
    (part $step:expr) => {
        Class::Part { step: $step }
    };
    (part) => {
        Class::Part { step: 1.0 }
    };
    (structure $step:expr) => {
        Class::Structure { step: $step }
    };
    (structure) => {
        Class::Structure { step: 1.0 }
    };
}

/// The version that a row names, or the first.
macro_rules! since {
    () => {
        1
    };
    ($version:literal) => {
        $version
    };
}

macro_rules! fields {
    ($(of $from:ident |$part:ident| {
        $($(@$since:literal)? $field:ident $key:literal $kind:tt $group:ident $class:tt $place:tt)*
    })*) => {
        /// A field of a gear file: which number, text or choice, whatever leg, spring or corner it is of.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[allow(missing_docs, reason = "the row's key says what it is")]
        pub enum Field {
            $($($field,)*)*
        }

        impl Field {
            /// Every field, in the order of the list.
            pub const ALL: &'static [Self] = &[$($(Self::$field,)*)*];
        }

        pub(super) static LIST: &[Info] = &[$($(Info {
            key: $key,
            kind: kind! $kind,
            since: since!($($since)?),
            group: Group::$group,
            class: class! $class,
            access: Access::$from(Via {
                read: way!(Ref, $part, $kind, $place,),
                write: way!(Mut, $part, $kind, $place, mut),
            }),
        },)*)*];
    };
}

impl Field {
    /// What is known of it.
    #[must_use]
    pub fn info(self) -> &'static Info {
        &super::table::LIST[self as usize]
    }
}
