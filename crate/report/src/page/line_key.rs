//! What each type of line means.

/// A type of line that the key explains, in reading order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// Outlines.
    Outline,
    /// Hatching of structure.
    Structure,
    /// The grown tire.
    GrownTire,
    /// A part at the other end of its travel.
    OtherEnd,
    /// The envelope.
    Swept,
    /// Center lines.
    CenterLine,
    /// Springs.
    Spring,
    /// Dimensions.
    Dimension,
    /// Contacts.
    Contact,
    /// The state compared with.
    Before,
    /// Load arrows.
    Load,
    /// What a dragged point has caught on.
    Caught,
    /// How far the actuator reaches.
    Reach,
    /// Over travel, what a curve is held against.
    Held,
    /// Over travel, what is above the scale.
    Above,
}

/// The meaning of a type of line.
#[must_use]
pub fn line_words(line: Line) -> &'static str {
    match line {
        Line::Outline => "outline of structure or of a moving part",
        Line::Structure => "cut structure",
        Line::GrownTire => "the tire at its grown size",
        Line::OtherEnd => "the same part at the other end of its travel",
        Line::Swept => "edge of what wheel and leg sweep",
        Line::CenterLine => "center line, path of a point",
        Line::Spring => {
            "spring: zigzag for a coil or cord, cylinder for a gas spring, spiral at a joint"
        }
        Line::Dimension => "dimension, with arrows at the tightest place",
        Line::Contact => "contact, hatched where the parts overlap",
        Line::Before => "the leg, or its curve, in the kept state that is compared with",
        Line::Load => {
            "force on the moving part at a pin, leg held still without friction, to the scale beside it"
        }
        Line::Caught => "what a dragged point has caught on",
        Line::Reach => {
            "where the end of the actuator that is selected can be at most, with the leg down and up"
        }
        Line::Held => {
            "over travel: the clearance that is required, or the pressure or force that is available"
        }
        Line::Above => "along the top of the strip: more than it shows",
    }
}
