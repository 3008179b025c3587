//! Faults of one leg, part by part.
use super::visit::Visit;
use super::{FaultKind, brace, outline, ranges, springs, tire};
use crate::model::{AttachTo, Brace, FallData, Leg, Shape, Shortening, Strut};

/// `drives` says whether the leg's actuator moves it, and not that of another leg.
pub(super) fn visit(v: &mut Visit, leg: &Leg, drives: bool) {
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
    let beside = &leg.out_of_plane;
    for (key, value, range) in [
        ("trunnion_skew_rad", beside.trunnion_skew, ranges::SKEW),
        ("wheel_skew_rad", beside.wheel_skew, ranges::SKEW),
        ("room_near_m", beside.room_near, ranges::SIZE_OR_NONE),
        ("room_far_m", beside.room_far, ranges::SIZE_OR_NONE),
    ] {
        v.option(format_args!("out_of_plane.{key}"), value, range);
    }
    v.optional_outline(format_args!("body.outline_m"), &leg.body.outline);
    v.number(format_args!("body.mass_kg"), leg.body.mass, ranges::MASS);
    v.point(format_args!("body.centre_m"), leg.body.centre);
    strut(v, &leg.strut, leg, trunnion);
    tire::visit(v, "wheel.tire", &leg.wheel.tire);
    if let Some(former) = &leg.wheel.former {
        tire::visit(v, "wheel.former", former);
    }
    v.number(format_args!("wheel.mass_kg"), leg.wheel.mass, ranges::MASS);
    v.number(format_args!("wheel.lean_rad"), leg.wheel.lean, ranges::LEAN);
    brace::visit(v, leg, trunnion);
    actuator(v, leg, trunnion, drives);
    v.number(format_args!("drive_ratio"), leg.drive_ratio, ranges::RATIO);
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
    fall(v, &leg.fall);
    if let Some(hole) = leg.fall.return_orifice {
        v.below(
            "fall.return_orifice_m",
            hole,
            "actuator.bore_m",
            leg.actuator.bore,
        );
    }
    springs::visit(v, leg);
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

fn fall(v: &mut Visit, fall: &FallData) {
    v.option(
        format_args!("fall.body_inertia_kg_m2"),
        fall.body_inertia,
        ranges::INERTIA,
    );
    v.option(
        format_args!("fall.return_orifice_m"),
        fall.return_orifice,
        ranges::ORIFICE,
    );
    v.option(
        format_args!("fall.discharge_coefficient"),
        fall.discharge,
        ranges::DISCHARGE,
    );
    v.option(
        format_args!("fall.knee_play_m"),
        fall.knee_play,
        ranges::PLAY,
    );
    v.option(
        format_args!("fall.pin_break_out"),
        fall.pin_break_out,
        ranges::BREAK_OUT,
    );
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

fn actuator(v: &mut Visit, leg: &Leg, trunnion: bool, drives: bool) {
    let a = &leg.actuator;
    let mount = v.point(format_args!("actuator.mount_m"), a.mount);
    let attach = v.point(format_args!("actuator.attach_m"), a.attach);
    // on the drive of another leg these are not asked
    let mut size =
        |path: &str, value| drives && v.number(format_args!("{path}"), value, ranges::SIZE);
    let bore = size("actuator.bore_m", a.bore);
    let rod = size("actuator.rod_m", a.rod);
    let shortest = size("actuator.shortest_m", a.shortest);
    let longest = size("actuator.longest_m", a.longest);
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
    v.option(
        format_args!("actuator.seal_friction_n"),
        a.seal_friction,
        ranges::FRICTION,
    );
    v.option(
        format_args!("actuator.seal_break_out_n"),
        a.seal_break_out,
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
            brace::length_at_down(v, "actuator.longest_m", [length, a.shortest, a.longest]);
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
