//! The types of a row of the field table.
use gearswing_solver::faults::{Range, range_of};
use gearswing_units::Quantity;

/// Part of the data to which a field belongs, in the order to show them.
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
    /// The tire fitted before.
    FormerTire,
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
    /// Every group, in the order to show them.
    pub const ALL: &'static [Self] = &[
        Self::File,
        Self::Conditions,
        Self::Supply,
        Self::Battery,
        Self::Accumulator,
        Self::Clearance,
        Self::Leg,
        Self::Strut,
        Self::Wheel,
        Self::FormerTire,
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

    /// Heading of the group.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::File => "Gear file",
            Self::Conditions => "Attitude and air",
            Self::Supply => "Supply",
            Self::Battery => "Battery and wires",
            Self::Accumulator => "Accumulator",
            Self::Clearance => "Required clearance",
            Self::Leg => "Leg",
            Self::Strut => "Shock strut",
            Self::Wheel => "Wheel and tire",
            Self::FormerTire => "Previous tire",
            Self::Brace => "Brace",
            Self::Actuator => "Actuator",
            Self::Lines => "Orifices and strut cylinder",
            Self::Motor => "Electric actuator",
            Self::Switches => "Switches and start",
            Self::Springs => "Springs",
            Self::Pins => "Pins",
            Self::Air => "Drag areas",
            Self::Fall => "Free fall and lock",
            Self::Well => "Wheel well",
            Self::Seen => "Stopped short",
        }
    }

    /// Whether the group belongs to one leg.
    #[must_use]
    pub fn is_of_leg(self) -> bool {
        match self {
            Self::File
            | Self::Conditions
            | Self::Supply
            | Self::Battery
            | Self::Accumulator
            | Self::Clearance => false,
            Self::Leg
            | Self::Strut
            | Self::Wheel
            | Self::FormerTire
            | Self::Brace
            | Self::Actuator
            | Self::Lines
            | Self::Motor
            | Self::Switches
            | Self::Springs
            | Self::Pins
            | Self::Air
            | Self::Fall
            | Self::Well
            | Self::Seen => true,
        }
    }
}

/// What a field holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FieldKind {
    /// A number of this quantity, SI inside.
    Number(Quantity),
    /// A point: x and y, each a field of its own [m].
    Point,
    /// Free text.
    Text,
    /// One of these.
    Choice(&'static [ChoiceWords]),
    /// Any of these together.
    Set(&'static [ChoiceWords]),
}

/// One choice of a field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChoiceWords {
    /// Key in the gear file.
    pub key: &'static str,
    /// Label.
    pub label: &'static str,
    /// What it means.
    pub help: &'static str,
}

/// Words of one field.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FieldWords {
    /// Path in the gear file with every index left out, as "legs[].actuator.bore_m".
    pub pattern: &'static str,
    /// Group it is shown in.
    pub group: Group,
    /// Label within its group, as "Bore".
    pub label: &'static str,
    /// Name within a sentence, as "actuator bore".
    pub name: &'static str,
    /// What it holds.
    pub kind: FieldKind,
    /// How to measure it on the airplane or where to find it, one or two sentences.
    pub help: &'static str,
    /// What holds when the field is left empty; `None` = it must be filled.
    pub if_empty: Option<&'static str>,
}

impl FieldWords {
    const fn new(
        pattern: &'static str,
        kind: FieldKind,
        label: &'static str,
        name: &'static str,
        help: &'static str,
    ) -> Self {
        Self {
            pattern,
            group: Group::File,
            label,
            name,
            kind,
            help,
            if_empty: None,
        }
    }

    pub(super) const fn number(
        pattern: &'static str,
        quantity: Quantity,
        label: &'static str,
        name: &'static str,
        help: &'static str,
    ) -> Self {
        Self::new(pattern, FieldKind::Number(quantity), label, name, help)
    }

    pub(super) const fn point(
        pattern: &'static str,
        label: &'static str,
        name: &'static str,
        help: &'static str,
    ) -> Self {
        Self::new(pattern, FieldKind::Point, label, name, help)
    }

    pub(super) const fn text(
        pattern: &'static str,
        label: &'static str,
        name: &'static str,
        help: &'static str,
    ) -> Self {
        Self::new(pattern, FieldKind::Text, label, name, help)
    }

    pub(super) const fn choice(
        pattern: &'static str,
        choices: &'static [ChoiceWords],
        label: &'static str,
        name: &'static str,
        help: &'static str,
    ) -> Self {
        Self::new(pattern, FieldKind::Choice(choices), label, name, help)
    }

    pub(super) const fn set(
        pattern: &'static str,
        choices: &'static [ChoiceWords],
        label: &'static str,
        name: &'static str,
        help: &'static str,
    ) -> Self {
        Self::new(pattern, FieldKind::Set(choices), label, name, help)
    }

    pub(super) const fn of(mut self, group: Group) -> Self {
        self.group = group;
        self
    }

    pub(super) const fn if_empty(mut self, means: &'static str) -> Self {
        self.if_empty = Some(means);
        self
    }

    /// Allowed range of its number or coordinates, SI, both ends included; the swing's holds for its
    /// size, either way. `None` for texts and choices.
    #[must_use]
    pub fn range(&self) -> Option<Range> {
        self.quantity()?;
        range_of(self.pattern)
    }

    /// The quantity of its number or of its coordinates; `None` for texts and choices.
    #[must_use]
    pub fn quantity(&self) -> Option<Quantity> {
        match self.kind {
            FieldKind::Number(quantity) => Some(quantity),
            FieldKind::Point => Some(Quantity::Length),
            FieldKind::Text | FieldKind::Choice(_) | FieldKind::Set(_) => None,
        }
    }
}

pub(super) const fn option(
    key: &'static str,
    label: &'static str,
    help: &'static str,
) -> ChoiceWords {
    ChoiceWords { key, label, help }
}
