//! Load arrows.
use gearswing_gear::model::Vector;
use gearswing_units::{Quantity, UnitChoice, format};

/// At the arrow of what the mount has to carry, while an end of the actuator is in hand.
pub const ON_MOUNT: &str = "on the mount";

/// In which state the arrows hold.
pub const HELD: &str = "leg held still, no friction";

/// In place of the arrows' scale.
pub const NONE_HERE: &str = "no forces are worked out here";

/// In place of the arrows in words.
pub const NONE_SENTENCE: &str = "No forces are worked out here.";

/// A force at a pin, as "A0 412 lbf".
#[must_use]
pub fn load_words(pin: &str, force: Vector, units: UnitChoice) -> String {
    format!("{pin} {}", format(Quantity::Force, units, force.norm()))
}

/// The arrows in words: pin and force (N) of each, and the force with which the actuator holds the leg
/// (N, negative: it pulls).
#[must_use]
pub fn loads_sentence(loads: &[(&str, Vector)], holding: f64, units: UnitChoice) -> String {
    let said = loads.iter().map(|&(pin, force)| {
        let direction = format(Quantity::Angle, units, force.y.atan2(force.x));
        format!("{} at {direction}", load_words(pin, force, units))
    });
    let said: Vec<String> = said.collect();
    format!(
        "Force on the moving part at each pin while the leg is held still here, without friction; angles counter-clockwise from the right: {}. At P, B0 and A0 the airframe makes it, at B1 the brace, at A1 the actuator, which {}.",
        said.join(", "),
        if holding < 0.0 { "pulls" } else { "pushes" }
    )
}
