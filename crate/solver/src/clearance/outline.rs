//! Outlines of the moving parts, placed in one pose, for drawing.
use crate::kinematics::Pose;
use crate::model::{Leg, MovingPart, Point};
use crate::result::{SkewLosses, TireState};
use crate::tires::{TireSize, TireSizes};

use super::part::{Part, other_parts, wheel_part};
use super::rig::Rig;

/// Outline of a moving part in one pose: a core grown all around by a radius.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedOutline {
    /// Moving part.
    pub part: MovingPart,
    /// Tire size, for the wheel only.
    pub tire: Option<TireState>,
    /// Core: one point (a disc), two (a bar with round ends) or a closed polygon, in order (m).
    pub core: Vec<Point>,
    /// Radius by which the core is grown, 0 for sharp corners (m).
    pub radius: f64,
}

/// The wheel of `leg` with a tire of `size` in `pose`.
#[must_use]
pub fn wheel_outline(leg: &Leg, size: &TireSize, tire: TireState, pose: &Pose) -> PlacedOutline {
    let rig = Rig::new(leg);
    placed(&wheel_part(leg, &rig, size, tire, 0.0), &rig, pose)
}

/// Every outline of `leg` in `pose`: the wheel new and grown, then the other parts in the order of
/// [`MovingPart`]. Parts without an outline are left out.
#[must_use]
pub fn leg_outlines(leg: &Leg, sizes: &TireSizes, pose: &Pose) -> Vec<PlacedOutline> {
    let rig = Rig::new(leg);
    all_parts(leg, &rig, sizes, None)
        .iter()
        .map(|part| placed(part, &rig, pose))
        .filter(|outline| !outline.core.is_empty())
        .collect()
}

/// Every moving part: the wheel new and grown first, larger by what skews take off its clearances
/// where `losses` are given.
pub(crate) fn all_parts(
    leg: &Leg,
    rig: &Rig,
    sizes: &TireSizes,
    losses: Option<&SkewLosses>,
) -> Vec<Part> {
    let wheel = |size, tire| {
        let loss = losses.map_or(0.0, |losses| losses.of(tire).to_well);
        wheel_part(leg, rig, size, tire, loss)
    };
    let mut parts = vec![
        wheel(&sizes.new, TireState::New),
        wheel(&sizes.grown, TireState::Grown),
    ];
    parts.extend(other_parts(leg, rig));
    parts
}

fn placed(part: &Part, rig: &Rig, pose: &Pose) -> PlacedOutline {
    let mut core = Vec::with_capacity(part.core.len());
    part.place(rig, pose, &mut core);
    PlacedOutline {
        part: part.part,
        tire: part.tire,
        core,
        radius: part.radius,
    }
}
