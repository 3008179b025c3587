//! What the pins of a leg are at every pose.
use super::BodyLoads;
use super::friction::{Four, Six};
use crate::model::{Brace, Leg};

/// What the pins of a leg are at every pose.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PinSet {
    /// Radius of each friction circle (m).
    pub(super) radii: Six,
    /// Couple of each pin that does not hang on its load (N·m).
    pub(super) couples: Six,
    /// Couples on the bodies of a moment of one at each pin (ratio).
    pub(super) on: [Four; 6],
    pub(crate) rub: bool,
}

impl PinSet {
    pub(crate) fn of(leg: &Leg) -> Self {
        Self {
            radii: leg.pins.all().map(|pin| pin.friction_radius()),
            couples: leg.pins.all().map(|pin| pin.tightness()),
            on: std::array::from_fn(|pin| {
                let unit: Six = std::array::from_fn(|i| f64::from(u8::from(i == pin)));
                let moved = BodyLoads::of_pins(leg, &unit);
                [
                    moved.leg.moment,
                    moved.upper.moment + moved.brace,
                    moved.lower.moment,
                    moved.actuator,
                ]
            }),
            rub: leg.pins.rub(),
        }
    }
}

/// A couple of one on the body at this place of [`Four`].
pub(super) fn unit_couple(leg: &Leg, body: usize) -> BodyLoads {
    let mut on = BodyLoads::default();
    match (body, &leg.brace) {
        (0, _) => on.leg.moment = 1.0,
        (1, Brace::Sliding(_)) => on.brace = 1.0,
        (1, _) => on.upper.moment = 1.0,
        (2, _) => on.lower.moment = 1.0,
        _ => on.actuator = 1.0,
    }
    on
}
