//! Which friction of a leg is given.
use super::{Brace, Joint, Leg, Source};

/// Which friction of a leg is given, 0 included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FrictionTyped {
    /// That of its actuator: of the seals, or what drives an electric one back.
    pub actuator: bool,
    /// That of each pin in the order of [`Joint::ALL`]; of a joint that the leg does not have, `None`.
    pub pins: [Option<bool>; 6],
}

impl FrictionTyped {
    /// Whether any is.
    #[must_use]
    pub fn any(&self) -> bool {
        self.actuator || self.pins.contains(&Some(true))
    }

    /// The joints whose friction is not given.
    pub fn pins_missing(&self) -> impl Iterator<Item = Joint> + use<> {
        let pins = Joint::ALL.into_iter().zip(self.pins);
        pins.filter_map(|(joint, typed)| (typed == Some(false)).then_some(joint))
    }
}

impl Leg {
    /// Whether it has this joint.
    #[must_use]
    pub fn has_joint(&self, joint: Joint) -> bool {
        match (joint, &self.brace) {
            (Joint::Knee, Brace::Folding(_)) => true,
            (Joint::Knee, _) | (Joint::BracePivot | Joint::LegAttach, Brace::None) => false,
            _ => true,
        }
    }

    /// Whether the friction of what has stood counts with a figure from memory.
    #[must_use]
    pub fn breaks_out_from_memory(&self) -> bool {
        let seals = self.actuator.seals() > 0.0 && self.actuator.seal_break_out.is_none();
        seals || (self.pins.rub() && self.fall.pin_break_out.is_none())
    }

    /// Which of its friction is given, with this source.
    #[must_use]
    pub fn friction_typed(&self, source: &Source) -> FrictionTyped {
        let pins = self.pins.all();
        FrictionTyped {
            actuator: match source {
                Source::ElectricActuators => self.back_drive().is_some(),
                Source::ConstantPressure | Source::MotorPump(_) | Source::HandPump(_) => {
                    self.actuator.seal_friction.is_some()
                }
            },
            pins: std::array::from_fn(|i| {
                self.has_joint(Joint::ALL[i]).then(|| pins[i].is_typed())
            }),
        }
    }
}
