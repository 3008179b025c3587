//! Faults of one leg, part by part.
use super::visit::Visit;
use super::{FaultKind, outline, ranges};
use crate::kinematics::END_TOLERANCE;
use crate::model::{
    Actuator, AttachTo, Brace, FoldingBrace, Folds, Grown, Leg, Shape, Shortening, Strut, Tire,
};

/// Knee offsets below this have no side [m].
const LEAST_OFFSET: f64 = 1e-6;

pub(super) fn visit(v: &mut Visit, leg: &Leg) {
    let trunnion = v.point(format_args!("trunnion_m"), leg.trunnion);
    let swing = leg.swing_up;
    if !swing.is_finite() || v.number(format_args!("swing_up_rad"), swing.abs(), ranges::SWING) {
        v.number(
            format_args!("swing_up_rad"),
            swing,
            ranges::Range {
                min: -10.0,
                max: 10.0,
            },
        );
    }
    v.optional_outline(format_args!("body.outline_m"), &leg.body.outline);
    v.number(format_args!("body.mass_kg"), leg.body.mass, ranges::MASS);
    v.point(format_args!("body.centre_m"), leg.body.centre);
    strut(v, &leg.strut, leg, trunnion);
    tire(v, "wheel.tire", &leg.wheel.tire);
    if let Some(former) = &leg.wheel.former {
        tire(v, "wheel.former", former);
    }
    v.number(format_args!("wheel.mass_kg"), leg.wheel.mass, ranges::MASS);
    v.number(format_args!("wheel.lean_rad"), leg.wheel.lean, ranges::LEAN);
    brace(v, leg, trunnion);
    actuator(v, &leg.actuator, leg, trunnion);
    let air = &leg.air;
    v.number(
        format_args!("air.wheel_drag_area_m2"),
        air.wheel_drag_area,
        ranges::AREA,
    );
    v.number(
        format_args!("air.leg_drag_area_m2"),
        air.leg_drag_area,
        ranges::AREA,
    );
    if !v.count(format_args!("well"), leg.well.len()) {
        return;
    }
    for (i, obstacle) in leg.well.iter().enumerate() {
        match &obstacle.shape {
            Shape::Solid { points } => {
                outline::closed(v, format_args!("well[{i}].shape.solid.points_m"), points);
            }
            Shape::Surface { points } => {
                outline::open(v, format_args!("well[{i}].shape.surface.points_m"), points);
            }
        }
        v.option(
            format_args!("well[{i}].required_clearance_m"),
            obstacle.required_clearance,
            ranges::CLEARANCE,
        );
    }
}

fn strut(v: &mut Visit, strut: &Strut, leg: &Leg, trunnion: bool) {
    let axle = v.point(format_args!("strut.axle_m"), strut.axle);
    if axle && trunnion {
        v.apart("strut.axle_m", strut.axle, "trunnion_m", leg.trunnion);
    }
    if v.point(format_args!("strut.axis_bottom_m"), strut.axis_bottom)
        & v.point(format_args!("strut.axis_top_m"), strut.axis_top)
    {
        v.apart(
            "strut.axis_top_m",
            strut.axis_top,
            "strut.axis_bottom_m",
            strut.axis_bottom,
        );
    }
    v.optional_outline(
        format_args!("strut.sliding_outline_m"),
        &strut.sliding_outline,
    );
    let room = (strut.axle - leg.trunnion).norm();
    match &strut.shortening {
        Shortening::None => {}
        Shortening::BeforeSwing { amount } => {
            let path = "strut.shortening.before_swing.amount_m";
            if v.number(format_args!("{path}"), *amount, ranges::SIZE_OR_NONE) && axle && trunnion {
                v.below(path, *amount, "strut.axle_m", room);
            }
        }
        Shortening::WithTravel { table } => {
            let path = "strut.shortening.with_travel.table";
            if table.is_empty() {
                v.fault(
                    format_args!("{path}"),
                    FaultKind::TooFewPoints {
                        count: 0,
                        needed: 1,
                    },
                );
            }
            if !v.count(format_args!("{path}"), table.len()) {
                return;
            }
            let mut last = f64::NEG_INFINITY;
            for (i, row) in table.iter().enumerate() {
                let at = format_args!("{path}[{i}].travel");
                if v.number(at, row.travel, ranges::TRAVEL) {
                    if row.travel <= last {
                        v.fault(format_args!("{path}"), FaultKind::NotRising { row: i + 1 });
                    }
                    last = row.travel;
                }
                let at = format!("{path}[{i}].amount_m");
                if v.number(format_args!("{at}"), row.amount, ranges::SIZE_OR_NONE)
                    && axle
                    && trunnion
                {
                    v.below(&at, row.amount, "strut.axle_m", room);
                }
            }
        }
    }
}

fn tire(v: &mut Visit, path: &str, tire: &Tire) {
    let diameter = v.number(
        format_args!("{path}.diameter_m"),
        tire.diameter,
        ranges::SIZE,
    );
    let width = v.number(format_args!("{path}.width_m"), tire.width, ranges::SIZE);
    let rim = v.number(
        format_args!("{path}.rim_diameter_m"),
        tire.rim_diameter,
        ranges::SIZE,
    );
    let shoulder = v.number(
        format_args!("{path}.shoulder_radius_m"),
        tire.shoulder_radius,
        ranges::SIZE_OR_NONE,
    );
    if diameter && rim && tire.rim_diameter >= tire.diameter {
        v.below(
            &format!("{path}.rim_diameter_m"),
            tire.rim_diameter,
            &format!("{path}.diameter_m"),
            tire.diameter,
        );
    }
    if width && diameter && shoulder {
        let most = 0.5 * tire.width.min(tire.diameter);
        if tire.shoulder_radius > most {
            v.fault(
                format_args!("{path}.shoulder_radius_m"),
                FaultKind::OutOfRange {
                    value: tire.shoulder_radius,
                    min: 0.0,
                    max: most,
                },
            );
        }
    }
    if let Grown::Given {
        diameter: grown,
        width: grown_width,
        ..
    } = tire.grown
    {
        let at = format_args!("{path}.grown.given.diameter_m");
        let grown_sound = v.number(at, grown, ranges::SIZE);
        let at = format_args!("{path}.grown.given.width_m");
        let width_sound = v.number(at, grown_width, ranges::SIZE);
        // in service a tire is never smaller than new
        let mut not_smaller = |key: &str, value: f64, new: f64| {
            if value < new {
                v.fault(
                    format_args!("{path}.grown.given.{key}"),
                    FaultKind::OutOfRange {
                        value,
                        min: new,
                        max: ranges::SIZE.max,
                    },
                );
            }
        };
        if grown_sound && diameter {
            not_smaller("diameter_m", grown, tire.diameter);
        }
        if width_sound && width {
            not_smaller("width_m", grown_width, tire.width);
        }
    }
}

fn brace(v: &mut Visit, leg: &Leg, trunnion: bool) {
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

fn length_at_down(v: &mut Visit, path: &str, [length, shortest, longest]: [f64; 3]) {
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
    }
}

fn actuator(v: &mut Visit, a: &Actuator, leg: &Leg, trunnion: bool) {
    let mount = v.point(format_args!("actuator.mount_m"), a.mount);
    let attach = v.point(format_args!("actuator.attach_m"), a.attach);
    let bore = v.number(format_args!("actuator.bore_m"), a.bore, ranges::SIZE);
    let rod = v.number(format_args!("actuator.rod_m"), a.rod, ranges::SIZE);
    let shortest = v.number(
        format_args!("actuator.shortest_m"),
        a.shortest,
        ranges::SIZE,
    );
    let longest = v.number(format_args!("actuator.longest_m"), a.longest, ranges::SIZE);
    v.number(
        format_args!("actuator.body_diameter_m"),
        a.body_diameter,
        ranges::SIZE,
    );
    let body = v.number(
        format_args!("actuator.body_length_m"),
        a.body_length,
        ranges::SIZE,
    );
    v.number(format_args!("actuator.mass_kg"), a.mass, ranges::MASS);
    v.number(
        format_args!("actuator.seal_friction_n"),
        a.seal_friction,
        ranges::FRICTION,
    );
    if bore && rod {
        v.below("actuator.rod_m", a.rod, "actuator.bore_m", a.bore);
    }
    if shortest && longest {
        v.below(
            "actuator.shortest_m",
            a.shortest,
            "actuator.longest_m",
            a.longest,
        );
    }
    if body && shortest && a.body_length > a.shortest {
        v.below(
            "actuator.body_length_m",
            a.body_length,
            "actuator.shortest_m",
            a.shortest,
        );
    }
    if mount && attach {
        v.apart("actuator.attach_m", a.attach, "actuator.mount_m", a.mount);
        if shortest && longest {
            let length = (a.attach - a.mount).norm();
            length_at_down(v, "actuator.longest_m", [length, a.shortest, a.longest]);
        }
    }
    match (a.attach_to, &leg.brace) {
        (AttachTo::Leg, _) => {
            if attach && trunnion {
                v.apart("actuator.attach_m", a.attach, "trunnion_m", leg.trunnion);
            }
            if mount && trunnion {
                v.apart("actuator.mount_m", a.mount, "trunnion_m", leg.trunnion);
            }
        }
        (AttachTo::UpperLink, Brace::Folding(b)) => {
            let pivot = "brace.folding.airframe_pivot_m";
            if attach {
                v.apart("actuator.attach_m", a.attach, pivot, b.airframe_pivot);
            }
            if mount {
                v.apart("actuator.mount_m", a.mount, pivot, b.airframe_pivot);
            }
        }
        (AttachTo::LowerLink, Brace::Folding(_)) => {}
        (AttachTo::UpperLink | AttachTo::LowerLink, Brace::None | Brace::Sliding(_)) => {
            v.fault(
                format_args!("actuator.attach_to"),
                FaultKind::NeedsFoldingBrace,
            );
        }
    }
}
