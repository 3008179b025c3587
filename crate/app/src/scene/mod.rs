//! Drawing and curves as lists of marks in CSS pixels.

/// What a leg takes up, and fitting it.
mod bounds;
/// Curves over travel.
mod curves;
/// The worst place at a larger scale.
mod detail;
/// The tightest place and contacts.
mod dimension;
/// The label at a point that is moved.
mod drag_label;
/// The drawing of the selected leg.
mod drawing;
/// The part of a canvas that marks take up.
mod extent;
/// Points that can be moved.
mod grips;
/// Hatching.
mod hatch;
/// Places for texts.
mod labels;
/// The leg in one pose.
mod leg;
/// Forces at the pins.
mod loads;
/// Marks, roles and handles.
mod mark;
/// Numbers at the place shown.
mod now;
/// Putting marks on a canvas.
mod pen;
/// Where points are at the place shown.
mod posed_leg;
/// Outlines as polygons.
mod ring;
/// Scale bars, and which way is which.
mod scale;
/// The springs.
mod springs;
/// Small pictures of what a new gear can start from.
mod starters;
/// One curve over the whole travel, which is the scrub too.
mod strip;
/// How far the actuator reaches.
mod stroke;
/// Width, dashes and colors of the roles.
mod style;
/// Fewer points.
mod thin;
/// Meters to pixels.
mod viewport;
/// Structure in the well.
mod well;

pub(crate) use crate::state::Paper;
pub(crate) use bounds::{bounds, fitted, paper_at, paper_of, stance_of};
pub use curves::{curves, times};
pub(crate) use curves::{progress_at, time_at};
pub use detail::detail;
pub(crate) use detail::{
    ANSWERS, Detail, Shows, detail_now, detail_of, drawn as drawn_detail, magnified,
};
pub use drawing::drawing;
pub use extent::Extent;
pub use grips::handles;
pub(crate) use grips::{Grip, grips, point_name};
pub(crate) use loads::loads;
pub use mark::{Anchor, Handle, Mark, Role, Scene, ScreenPoint, Shape};
pub(crate) use now::{Now, NowClearance, now};
pub(crate) use pen::Pen;
pub(crate) use posed_leg::{Carrier, PosedLeg, attach_carrier};
pub use starters::starter_pictures;
pub use strip::strip;
pub(crate) use strip::{next_mark, strip_marks, strip_progress, worst};
pub(crate) use stroke::stroke;
pub use style::{Style, style};
pub use viewport::Viewport;
