//! Marks: what a painter, a hit test and a print share.

/// A place on a canvas (CSS px), x right, y down, from the upper left corner.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ScreenPoint {
    /// To the right (CSS px).
    pub x_px: f64,
    /// Downwards (CSS px).
    pub y_px: f64,
}

/// What a mark stands for; the painter's theme gives it width, dash and color.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Role {
    /// Fine grid line.
    Grid,
    /// Grid line with a number.
    GridMajor,
    /// Scale bar: solid, with ends.
    ScaleBar,
    /// Outline of fixed structure, thick continuous.
    Structure,
    /// Hatching of fixed structure, thin continuous.
    StructureHatch,
    /// Ground symbol at a fixed pivot, thin continuous.
    Ground,
    /// Outline of a moving part, thick continuous.
    Moving,
    /// Inside of a moving part, filled lightly.
    MovingFill,
    /// Tire at its grown size, outline thin continuous.
    Grown,
    /// Moving part in its other extreme position, long-dash double-dot.
    Ghost,
    /// Outline swept by moving parts, long-dash double-dot.
    Envelope,
    /// Center line, long-dash-dot.
    CentreLine,
    /// Path of a point, long-dash-dot.
    PointPath,
    /// Spring: zigzag, cylinder or spiral.
    Spring,
    /// Pin of a joint, thick circle, filled with the background.
    Joint,
    /// Dimension line, thin, or its arrow head, filled.
    Dimension,
    /// Number of a dimension.
    DimensionText,
    /// Leader to a label, thin.
    Leader,
    /// Outline of a contact, thick, plus its label.
    Contact,
    /// Hatching of a contact, thin.
    ContactHatch,
    /// What a kept state has there, thin continuous and gray.
    Before,
    /// Governing place.
    Governing,
    /// Load arrow.
    Load,
    /// Frame of a label at a point that is moved, filled with the background.
    Note,
    /// First line of such a label.
    NoteHead,
    /// Label of a part or place.
    Label,
    /// Axis and its ticks.
    Axis,
    /// Number or title at an axis.
    AxisText,
    /// Requirement line, long dashes.
    Requirement,
    /// Curve for the tire as new, continuous.
    CurveNew,
    /// Curve for the grown tire, dashed.
    CurveGrown,
    /// Curve of the other moving parts, dotted.
    CurveParts,
    /// Curve of what is needed, continuous.
    CurveNeeded,
    /// Line of what is available, long dashes.
    CurveAvailable,
    /// Curve of what the motion needs that is not in hand.
    OtherWay,
    /// Any other curve, continuous.
    Curve,
    /// Where a curve ends because the leg jams.
    CurveEnd,
    /// Cursor along travel.
    Cursor,
    /// Handle of a point that can be moved.
    Handle,
    /// The selected handle.
    HandleSelected,
    /// What a dragged point snaps to.
    Snap,
    /// Where an end of the actuator just reaches, thin continuous.
    Reach,
    /// Anything of the last good result while the model is faulty.
    Faded,
    /// Text about the last good result.
    FadedText,
}

/// Which part of a text stands at its point.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Anchor {
    /// Left end.
    #[default]
    Start,
    /// Middle.
    Middle,
    /// Right end.
    End,
}

/// Shape of a mark, all in CSS px.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// Polyline or polygon; whether it is stroked or filled is the role's affair (`filled` = fill).
    Path {
        /// Corners.
        points: Vec<ScreenPoint>,
        /// Joined at the ends.
        closed: bool,
        /// Filled rather than stroked.
        filled: bool,
    },
    /// Circle.
    Circle {
        /// Center.
        centre: ScreenPoint,
        /// Radius (CSS px).
        radius_px: f64,
        /// Filled rather than stroked.
        filled: bool,
    },
    /// Text on one line, never rotated, vertically centered on its point, with a halo of the
    /// background.
    Text {
        /// Where.
        at: ScreenPoint,
        /// What.
        text: String,
        /// Which end.
        anchor: Anchor,
        /// Size (CSS px), at least 12.
        size_px: f64,
    },
}

/// One mark; later ones lie over earlier ones.
#[derive(Clone, Debug, PartialEq)]
pub struct Mark {
    /// What it stands for.
    pub role: Role,
    /// Its shape.
    pub shape: Shape,
}

/// A point that can be moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Handle {
    /// Path of its point in the gear file.
    pub id: String,
    /// Where.
    pub at: ScreenPoint,
    /// What a screen reader says: name and place.
    pub label: String,
    /// Radius in which a mouse takes it (CSS px); a finger takes it from farther off.
    pub radius_px: f64,
    /// Selected.
    pub selected: bool,
    /// Moved point by arrow keys, or only shown (with the reason in the label).
    pub movable: bool,
}

/// What is drawn on one canvas.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Scene {
    /// Width (CSS px).
    pub width_px: f64,
    /// Height (CSS px).
    pub height_px: f64,
    /// Marks from back to front.
    pub marks: Vec<Mark>,
    /// Where among the marks a new layer begins. The first layer stays as it is while the place or
    /// the time shown moves on; of the others each lies close together, whatever it is.
    pub breaks: Vec<usize>,
    /// Points that can be moved, in tab order.
    pub handles: Vec<Handle>,
}

impl Scene {
    /// The marks layer by layer, from back to front: first what stays.
    pub fn layers(&self) -> impl Iterator<Item = &[Mark]> {
        let count = self.marks.len();
        let ends = self.breaks.iter().copied().chain([count]);
        let starts = [0].into_iter().chain(self.breaks.iter().copied());
        starts
            .zip(ends)
            .map(|(start, end)| self.marks.get(start..end).unwrap_or_default())
    }
}
