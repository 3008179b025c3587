//! Relations within one leg, part by part.
use super::visit::Visit;
use super::{FaultKind, brace, outline, springs, tire};
use crate::field::Field;
use crate::model::{AttachTo, Brace, Leg, Shape, Shortening};

pub(super) fn visit(v: &mut Visit<'_>, leg: &Leg) {
    outline::optional(v, v.path(Field::BodyOutline));
    outline::optional(v, v.path(Field::SlidingOutline));
    strut(v, leg);
    tire::visit(v);
    brace::visit(v, leg);
    actuator(v, leg);
    springs::visit(v, leg);
    if !v.count(Field::ObstacleName, format_args!("well"), leg.well.len()) {
        return;
    }
    for (i, obstacle) in leg.well.iter().enumerate() {
        match &obstacle.shape {
            Shape::Solid { .. } => outline::closed(v, v.entry(Field::SolidPoints, i)),
            Shape::Surface { .. } => outline::open(v, v.entry(Field::SurfacePoints, i)),
        }
    }
}

fn strut(v: &mut Visit<'_>, leg: &Leg) {
    let (axle, trunnion) = (v.path(Field::Axle), v.path(Field::Trunnion));
    v.apart(axle, trunnion);
    v.apart(v.path(Field::AxisTop), v.path(Field::AxisBottom));
    let room = match (v.point(axle), v.point(trunnion)) {
        (Some(axle), Some(trunnion)) => (axle - trunnion).norm(),
        _ => f64::INFINITY,
    };
    match &leg.strut.shortening {
        Shortening::None => {}
        Shortening::BeforeSwing { .. } => {
            v.below_limit(v.path(Field::ShorteningAmount), axle, room);
        }
        Shortening::WithTravel { table } => {
            let part = format_args!("strut.shortening.with_travel.table");
            if table.is_empty() {
                let kind = FaultKind::TooFewPoints {
                    count: 0,
                    needed: 1,
                };
                v.part_fault(Field::RowTravel, part, kind);
            }
            if !v.count(Field::RowTravel, part, table.len()) {
                return;
            }
            let mut last = f64::NEG_INFINITY;
            for i in 0..table.len() {
                if let Some(travel) = v.number(v.entry(Field::RowTravel, i)) {
                    if travel <= last {
                        v.part_fault(Field::RowTravel, part, FaultKind::NotRising { row: i + 1 });
                    }
                    last = travel;
                }
                v.below_limit(v.entry(Field::RowAmount, i), axle, room);
            }
        }
    }
}

fn actuator(v: &mut Visit<'_>, leg: &Leg) {
    let mount = v.path(Field::ActuatorMount);
    let attach = v.path(Field::ActuatorAttach);
    let (shortest, longest) = (
        v.path(Field::RetractedLength),
        v.path(Field::ExtendedLength),
    );
    v.below(v.path(Field::Rod), v.path(Field::Bore));
    v.below(shortest, longest);
    v.not_above(v.path(Field::BarrelLength), shortest);
    v.apart(attach, mount);
    brace::length_at_down(v, [mount, attach], [shortest, longest]);
    match (leg.actuator.attach_to, &leg.brace) {
        (AttachTo::Leg, _) => {
            v.apart(attach, v.path(Field::Trunnion));
            v.apart(mount, v.path(Field::Trunnion));
        }
        (AttachTo::UpperLink, Brace::Folding(_)) => {
            v.apart(attach, v.path(Field::BracePivot));
            v.apart(mount, v.path(Field::BracePivot));
        }
        (AttachTo::LowerLink, Brace::Folding(_)) => {}
        (AttachTo::UpperLink | AttachTo::LowerLink, Brace::None | Brace::Sliding(_)) => {
            v.fault(v.path(Field::AttachTo), FaultKind::NeedsFoldingBrace);
        }
    }
}
