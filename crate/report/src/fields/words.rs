//! The words of a field and its options.
use gearswing_gear::field::Group;

/// Heading of a group.
#[must_use]
pub fn group_title(group: Group) -> &'static str {
    match group {
        Group::File => "Gear file",
        Group::Conditions => "Attitude and air",
        Group::Supply => "Supply",
        Group::Battery => "Battery and wires",
        Group::Accumulator => "Accumulator",
        Group::Clearance => "Required clearance",
        Group::Leg => "Leg",
        Group::Strut => "Shock strut",
        Group::Wheel => "Wheel and tire",
        Group::Brace => "Brace",
        Group::Actuator => "Actuator",
        Group::Lines => "Orifices and strut cylinder",
        Group::Motor => "Electric actuator",
        Group::Switches => "Switches and start",
        Group::Springs => "Springs",
        Group::Pins => "Pins",
        Group::Air => "Drag areas",
        Group::Fall => "Free fall and lock",
        Group::Well => "Wheel well",
        Group::Seen => "Stopped short",
    }
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
    /// Label within its group, as "Bore".
    pub label: &'static str,
    /// Name within a sentence, as "actuator bore".
    pub name: &'static str,
    /// How to measure it on the airplane or where to find it, one or two sentences.
    pub help: &'static str,
    /// What holds when the field is left empty; `None` = it must be filled.
    pub if_empty: Option<&'static str>,
    /// Its options, in the order of their keys; none for numbers, points and texts.
    pub choices: &'static [ChoiceWords],
}

impl FieldWords {
    pub(super) const fn new(label: &'static str, name: &'static str, help: &'static str) -> Self {
        Self {
            label,
            name,
            help,
            if_empty: None,
            choices: &[],
        }
    }

    pub(super) const fn choices(mut self, choices: &'static [ChoiceWords]) -> Self {
        self.choices = choices;
        self
    }

    pub(super) const fn if_empty(mut self, means: &'static str) -> Self {
        self.if_empty = Some(means);
        self
    }
}

pub(super) const fn option(
    key: &'static str,
    label: &'static str,
    help: &'static str,
) -> ChoiceWords {
    ChoiceWords { key, label, help }
}
