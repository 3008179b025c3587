//! Fields, addressed by their path in the gear file, and the lists they stand in.
use gearswing_units::StepSize;

/// Something done to a field or a list.
#[derive(Clone, Debug, PartialEq)]
pub enum Field {
    /// The keyboard focus came to the field.
    Focus {
        /// Path of the field.
        path: String,
    },
    /// Brings the field into view and takes the keyboard focus there.
    Show {
        /// Path of the field, or of the point or list it stands for.
        path: String,
    },
    /// Text is being typed.
    Draft {
        /// Path of the field.
        path: String,
        /// All of the text.
        text: String,
    },
    /// Enter, or the focus left the field.
    Commit {
        /// Path of the field.
        path: String,
    },
    /// Escape in the field: back to the stored value.
    Revert {
        /// Path of the field.
        path: String,
    },
    /// Arrow key in a number field.
    Step {
        /// Path of the field.
        path: String,
        /// Up or down.
        up: bool,
        /// Size of the step.
        size: StepSize,
    },
    /// One of several is chosen.
    Choose {
        /// Path of the field.
        path: String,
        /// Key of the option.
        option: String,
    },
    /// One of a set is switched.
    Switch {
        /// Path of the field.
        path: String,
        /// Key of the option.
        option: String,
        /// Now on.
        on: bool,
    },
    /// A new entry behind this one in its list (point, table row, obstacle, leg); a path that names
    /// the list itself adds at the end.
    Add {
        /// Path of an entry or of a list.
        path: String,
    },
    /// The image of this leg in a mirror behind it, as the right main gear is to the left one.
    AddMirrorImage {
        /// Leg.
        leg: usize,
    },
    /// A leg swings up to the other side.
    TurnSwing {
        /// Leg.
        leg: usize,
    },
    /// A moved trunnion takes the whole leg along, or no longer.
    TakeAlong {
        /// Now so.
        on: bool,
    },
    /// Points pasted into the field of a coordinate, a line a point.
    Paste {
        /// Path of the field.
        path: String,
        /// All of the text.
        text: String,
    },
    /// Takes this entry out of its list, or takes away what is optional (previous tire).
    Remove {
        /// Path of the entry.
        path: String,
    },
    /// Takes a row of the tire size table.
    TakeTire {
        /// Path of the tire.
        path: String,
        /// Key of the row.
        size: String,
    },
    /// Changes of a leg go to the one that is its image in a mirror too, or not; from now on, and for a change of `of`
    /// that was just made, `to` follows.
    Alike {
        /// They do.
        on: bool,
        /// The leg that was changed, and its image.
        follow: Option<(usize, usize)>,
    },
    /// Keeps a leg's tire as the previous one, to go on with a new one.
    KeepTire {
        /// Leg.
        leg: usize,
    },
}
