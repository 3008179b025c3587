//! Signed, certified clearance of every moving outline to every obstacle over the whole path.
//!
//! # Outlines
//! Every outline is a *core* (a point, a segment or a polygon, convex or not) grown all around by a
//! radius: a wheel from the side is a point and half its diameter; from ahead, the rectangle inside
//! of its shoulder radius; a link, brace, actuator body or rod is a bar with round ends; leg and
//! sliding strut are polygons as drawn, with radius 0.
//!
//! # Signed clearance
//! Clearance of an outline = clearance of its core − radius.
//! - *Apart*: the distance of the core from the obstacle.
//! - *Solid*, core and solid overlap: minus the depth, the greater of (a) how deep the core's line
//!   goes into the solid, measured to the solid's line, and (b) how deep the solid's line goes into
//!   the core, measured to the core's line. A disc whose center is in a solid at depth d thus has
//!   clearance −(d + R). A solid all inside of a part, or a part all inside of a solid, is contact:
//!   lines are never taken for hollow.
//! - *Surface*: what is past it is contact. A point of the core is past it when its nearest feature
//!   of the surface is seen from the right of the surface's direction: the inside of an edge by the
//!   side of that edge, a corner by the sum of the normals of its two edges. A surface reaches
//!   backwards without limit, but not past its two ends: nearest to an end and past it, a point is
//!   free and the clearance is its distance from that end point. Depth is as for a solid, (a)
//!   measured over the points past it. An edge of a surface all inside of a part is contact.
//!
//! Side and overlap are read from the core, distance and depth then carry the radius: a tire that
//! reaches around the end of a skin is free there, as it is in the airplane.
//!
//! # Own leg, skew, room
//! The tire against its own leg, brace and actuator: `own.rs`. What a trunnion or a wheel that is not
//! square to the plane takes off every clearance of the wheel: `skew.rs`; the wheel's radius is larger
//! by it in all that is certified, never in what is drawn. Room along the trunnion: `room.rs`.
//!
//! # Certificate
//! Two lines in the plane that do not cross are nearest at a corner of one of them. For a part that
//! only turns about a fixed center each corner runs on an arc (the obstacle's corners too, seen from
//! the part), and the least distance of an arc from a segment has a closed form: nothing is
//! sampled. For a part that slides straight it is the distance of two segments. For the others
//! (lower link, telescopic brace, rod, a body on the moving end, a strut that shortens as it swings)
//! intervals of the path carry lower bounds of second order, and are halved until the bound is
//! within the accuracy asked for. An interval that cannot be resolved is an error, never a pass.

/// Least distance of an arc from a segment.
mod arc;
/// An obstacle made ready, and sides of it.
mod barrier;
/// Whether a moving corner comes behind a surface.
mod behind;
/// Every part against every obstacle.
mod clearances;
/// First contact, bracketed.
mod contact;
/// Curves for the screen.
mod curves;
/// Depth of a contact.
mod depth;
/// Swept outlines to draw.
mod envelope;
/// Outlines in one pose.
mod outline;
/// The tire against its own leg.
mod own;
/// One part against one obstacle.
mod pair;
/// Moving parts and their cores.
mod part;
/// The path, cut where angles turn back.
mod path_nodes;
/// Parts as the wheel sees them.
mod relative;
/// Lengths and fixed points.
mod rig;
/// Room along the trunnion axis.
mod room;
/// Points, segments, boxes.
mod segment;
/// Signed clearance at one pose.
mod signed;
/// What skews take off.
mod skew;
/// Least distance by subdivision.
mod subdivide;
/// A core over an interval, with its lower bound.
mod sweep;
/// Least distance of a turning or sliding part.
mod turning;
/// Deepest contact over the path.
mod worst;

#[cfg(test)]
mod tests;

pub use crate::result::ClearanceError;
pub use clearances::{
    ClearanceCase, ClearanceOptions, DEFAULT_CURVE_REACH, PoseClearance, clearance_at, clearances,
    drawn_clearance_at,
};
pub use outline::{PlacedOutline, leg_outlines, wheel_outline};
pub(crate) use own::own_curve;
pub use skew::{TOLD_SKEW, skew_losses};
