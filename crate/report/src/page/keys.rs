//! The keys.

/// Keys, and what they do.
pub const KEYS: [(&str, &str); 11] = [
    (
        "Arrow keys",
        "from one to the next of the drawing's points, verdicts, sheets; Tab leaves them",
    ),
    (
        "Enter on a point",
        "takes hold of it: arrow keys move it, with Shift far, with Alt little; Escape leaves it",
    ),
    ("Arrow keys behind “Skip to the drawing”", "pan it"),
    (
        "Arrow up and down in a field",
        "change the number by a step; with Shift a large one, with Alt a small one",
    ),
    (
        "Escape",
        "gives up a drag or what is typed, stops the played swing",
    ),
    ("Ctrl while dragging", "no snapping"),
    (
        "Insert, Delete on a corner",
        "add a corner behind it, remove it",
    ),
    ("Space", "plays the swing, stops it"),
    ("Ctrl+Z, Ctrl+Y or Ctrl+Shift+Z", "undo, redo"),
    ("+, −, 0 on the drawing", "larger, smaller, fit"),
    ("Wheel or two fingers", "larger or smaller, about the place"),
];
