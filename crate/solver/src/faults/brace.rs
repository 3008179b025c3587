//! Faults of a brace.
use super::visit::Visit;
use super::{FaultKind, ranges};
use crate::kinematics::{END_TOLERANCE, Linkage};
use crate::model::{Brace, FoldingBrace, Folds, Leg};

/// Knee offsets below this have no side [m].
const LEAST_OFFSET: f64 = 1e-6;

pub(super) fn visit(v: &mut Visit, leg: &Leg, trunnion: bool) {
    match &leg.brace {
        Brace::None => {}
        Brace::Sliding(b) => {
            let pivot = v.point(
                format_args!("brace.sliding.airframe_pivot_m"),
                b.airframe_pivot,
            );
            let attach = v.point(format_args!("brace.sliding.leg_attach_m"), b.leg_attach);
            let sound = v.number(
                format_args!("brace.sliding.shortest_m"),
                b.shortest,
                ranges::SIZE,
            ) & v.number(
                format_args!("brace.sliding.longest_m"),
                b.longest,
                ranges::SIZE,
            );
            v.number(
                format_args!("brace.sliding.thickness_m"),
                b.thickness,
                ranges::SIZE,
            );
            v.number(format_args!("brace.sliding.mass_kg"), b.mass, ranges::MASS);
            if pivot && attach {
                v.apart(
                    "brace.sliding.leg_attach_m",
                    b.leg_attach,
                    "brace.sliding.airframe_pivot_m",
                    b.airframe_pivot,
                );
            }
            if trunnion && attach {
                v.apart(
                    "brace.sliding.leg_attach_m",
                    b.leg_attach,
                    "trunnion_m",
                    leg.trunnion,
                );
            }
            if sound {
                let (shortest, longest) = (b.shortest, b.longest);
                v.below(
                    "brace.sliding.shortest_m",
                    shortest,
                    "brace.sliding.longest_m",
                    longest,
                );
                let length = (b.leg_attach - b.airframe_pivot).norm();
                length_at_down(v, "brace.sliding.longest_m", [length, shortest, longest]);
            }
        }
        Brace::Folding(b) => folding(v, b, leg, trunnion),
    }
}

pub(super) fn length_at_down(v: &mut Visit, path: &str, [length, shortest, longest]: [f64; 3]) {
    let outside = length < shortest - END_TOLERANCE || length > longest + END_TOLERANCE;
    if length.is_finite() && shortest < longest && outside {
        v.fault(
            format_args!("{path}"),
            FaultKind::LengthAtDown {
                length,
                shortest,
                longest,
            },
        );
    }
}

fn folding(v: &mut Visit, b: &FoldingBrace, leg: &Leg, trunnion: bool) {
    let pivot = v.point(
        format_args!("brace.folding.airframe_pivot_m"),
        b.airframe_pivot,
    );
    let knee = v.point(format_args!("brace.folding.knee_m"), b.knee);
    let attach = v.point(format_args!("brace.folding.leg_attach_m"), b.leg_attach);
    v.option(
        format_args!("brace.folding.excursion_allowed_m"),
        b.excursion_allowed,
        ranges::SIZE_OR_NONE,
    );
    for (name, link) in [("upper", &b.upper), ("lower", &b.lower)] {
        let at = format_args!("brace.folding.{name}.thickness_m");
        v.number(at, link.thickness, ranges::SIZE);
        v.number(
            format_args!("brace.folding.{name}.mass_kg"),
            link.mass,
            ranges::MASS,
        );
    }
    if !(pivot && knee && attach && trunnion) {
        return;
    }
    let before = [
        (
            "brace.folding.knee_m",
            b.knee,
            "brace.folding.airframe_pivot_m",
            b.airframe_pivot,
        ),
        (
            "brace.folding.leg_attach_m",
            b.leg_attach,
            "brace.folding.knee_m",
            b.knee,
        ),
        (
            "brace.folding.leg_attach_m",
            b.leg_attach,
            "trunnion_m",
            leg.trunnion,
        ),
        (
            "brace.folding.airframe_pivot_m",
            b.airframe_pivot,
            "trunnion_m",
            leg.trunnion,
        ),
        (
            "brace.folding.leg_attach_m",
            b.leg_attach,
            "brace.folding.airframe_pivot_m",
            b.airframe_pivot,
        ),
    ];
    let mut all_apart = true;
    for (path, point, other, other_point) in before {
        all_apart &= (point - other_point).norm() >= super::visit::LEAST_JOINT_DISTANCE;
        v.apart(path, point, other, other_point);
    }
    if !all_apart {
        return;
    }
    let line = b.leg_attach - b.airframe_pivot;
    let offset = line.perp(&(b.knee - b.airframe_pivot)) / line.norm();
    if offset.abs() < LEAST_OFFSET {
        v.fault(format_args!("brace.folding.knee_m"), FaultKind::KneeOnLine);
        return;
    }
    let reach = (b.knee - b.airframe_pivot).norm() + (b.leg_attach - b.knee).norm();
    let largest_span =
        (b.airframe_pivot - leg.trunnion).norm() + (b.leg_attach - leg.trunnion).norm();
    if b.folds == Folds::ThroughCentre && reach > largest_span {
        v.fault(
            format_args!("brace.folding.knee_m"),
            FaultKind::CannotStraighten {
                reach,
                largest_span,
            },
        );
    } else if b.folds == Folds::ThroughCentre && Linkage::new(leg).passes_dead_point() {
        v.fault(
            format_args!("brace.folding.knee_m"),
            FaultKind::StraightensPastDeadPoint,
        );
    }
}
