//! Fields of the free fall and the margin of the lock.

use super::FieldWords;

pub(super) const BODY_INERTIA: FieldWords = FieldWords::new(
    "Moment of inertia",
    "moment of inertia of the upper leg",
    "The upper leg without wheel and sliding parts, about its own center of mass, from the maker's data or by swinging it as a pendulum.",
)
.if_empty("a uniform plate of its outline, or a uniform rod where it has none");
pub(super) const RETURN_ORIFICE: FieldWords = FieldWords::new(
    "Return restrictor",
    "diameter of the return restrictor",
    "Hole of the restrictor through which the fluid leaves the actuator as the leg comes down without pressure, from the maker's data or with a drill shank as a gauge.",
)
.if_empty("the orifice down of its line; without one the fluid returns freely");
pub(super) const RETURN_DISCHARGE: FieldWords = FieldWords::new(
    "Discharge coefficient",
    "discharge coefficient of the return restrictor",
    "0.61 to 0.65 for a sharp edge, 0.80 for a short tube, 0.95 and more for a rounded hole (handbook figures).",
)
.if_empty("0.62, a sharp edge");
pub(super) const KNEE_PLAY: FieldWords = FieldWords::new(
    "Play at the knee",
    "play at the locked knee",
    "How far the locked knee moves square to the brace when it is pushed and pulled by hand, with a dial gauge or a steel rule.",
)
.if_empty("no play");
pub(super) const PIN_BREAK_OUT: FieldWords = FieldWords::new(
    "Break-out of the pins",
    "break-out friction of the pins",
    "Friction of pins that have stood, over their running friction: by spring scale, what starts the leg over what keeps it moving.",
)
.if_empty("1.5, from memory");
