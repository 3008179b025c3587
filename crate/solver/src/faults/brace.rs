//! Relations within a brace.
use super::FaultKind;
use super::visit::{LEAST_JOINT_DISTANCE, Visit};
use crate::field::{Field, Path};
use crate::kinematics::{END_TOLERANCE, Linkage};
use crate::model::{Brace, FoldingBrace, Folds, Leg};

/// Knee offsets below this have no side (m).
const LEAST_OFFSET: f64 = 1e-6;

pub(super) fn visit(v: &mut Visit<'_>, leg: &Leg) {
    match &leg.brace {
        Brace::None => {}
        Brace::Sliding(_) => {
            let (pivot, attach) = (v.path(Field::SlidingPivot), v.path(Field::SlidingAttach));
            let (shortest, longest) = (
                v.path(Field::SlidingShortest),
                v.path(Field::SlidingLongest),
            );
            v.apart(attach, pivot);
            v.apart(attach, v.path(Field::Trunnion));
            v.below(shortest, longest);
            length_at_down(v, [pivot, attach], [shortest, longest]);
        }
        Brace::Folding(b) => folding(v, b, leg),
    }
}

/// The length between two points at gear down lies between the end lengths.
pub(super) fn length_at_down(v: &mut Visit<'_>, ends: [Path; 2], lengths: [Path; 2]) {
    let ([Some(from), Some(to)], [Some(shortest), Some(longest)]) = (
        ends.map(|end| v.point(end)),
        lengths.map(|end| v.number(end)),
    ) else {
        return;
    };
    let length = (to - from).norm();
    let too_short = length < shortest - END_TOLERANCE;
    let outside = too_short || length > longest + END_TOLERANCE;
    if shortest < longest && outside {
        v.fault(
            // the end length that it passes
            if too_short { lengths[0] } else { lengths[1] },
            FaultKind::LengthAtDown {
                length,
                shortest,
                longest,
            },
        );
    }
}

fn folding(v: &mut Visit<'_>, b: &FoldingBrace, leg: &Leg) {
    let [trunnion, pivot, knee, attach] = [
        Field::Trunnion,
        Field::BracePivot,
        Field::Knee,
        Field::BraceAttach,
    ]
    .map(|field| v.path(field));
    if ![trunnion, pivot, knee, attach]
        .iter()
        .all(|joint| v.sound(*joint))
    {
        return;
    }
    let mut all_apart = true;
    for (joint, other) in [
        (knee, pivot),
        (attach, knee),
        (attach, trunnion),
        (pivot, trunnion),
        (attach, pivot),
    ] {
        if let (Some(a), Some(b)) = (v.point(joint), v.point(other)) {
            all_apart &= (a - b).norm() >= LEAST_JOINT_DISTANCE;
        }
        v.apart(joint, other);
    }
    if !all_apart {
        return;
    }
    let line = b.leg_attach - b.airframe_pivot;
    let offset = line.perp(&(b.knee - b.airframe_pivot)) / line.norm();
    if offset.abs() < LEAST_OFFSET {
        v.fault(knee, FaultKind::KneeOnLine);
        return;
    }
    let reach = (b.knee - b.airframe_pivot).norm() + (b.leg_attach - b.knee).norm();
    let largest_span =
        (b.airframe_pivot - leg.trunnion).norm() + (b.leg_attach - leg.trunnion).norm();
    if b.folds == Folds::ThroughCentre && reach > largest_span {
        v.fault(
            knee,
            FaultKind::CannotStraighten {
                reach,
                largest_span,
            },
        );
    } else if b.folds == Folds::ThroughCentre && Linkage::new(leg).passes_dead_point() {
        v.fault(knee, FaultKind::StraightensPastDeadPoint);
    }
}
