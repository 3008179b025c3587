//! Every number of a gear, one by one, with what it is: to move, scale and spoil them.
use gearswing_gear::model::*;

/// What a number is, as far as a change of scale goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dimension {
    /// A position (m); these move with the airplane.
    Position,
    /// A length (m).
    Length,
    /// A drag area (m2).
    Area,
    /// A mass (kg).
    Mass,
    /// A force (N).
    Force,
    /// A pressure (Pa).
    Pressure,
    /// A rate of a spring (N/m).
    Rate,
    /// A moment, or a rate of a torsion spring (N·m, N·m/rad).
    Moment,
    /// Angle, ratio, speed, density: what keeps its value.
    Other,
}

/// Calls `f` on every number of `gear`, in no special order.
pub fn each_number(gear: &mut Gear, f: &mut impl FnMut(Dimension, &mut f64)) {
    use Dimension::{Length, Other, Pressure};
    let c = &mut gear.conditions;
    for number in [
        &mut c.load_factor,
        &mut c.pitch,
        &mut c.bank,
        &mut c.airspeed,
        &mut c.sideslip,
        &mut c.air_density,
    ] {
        f(Other, number);
    }
    let margin = gear.supply.margin_wanted.iter_mut();
    margin.for_each(|number| f(Other, number));
    f(Pressure, &mut gear.supply.available_pressure);
    f(Pressure, &mut gear.supply.return_pressure);
    let rule = &mut gear.clearance_rule;
    for length in [&mut rule.tire_new, &mut rule.tire_grown, &mut rule.parts] {
        length.iter_mut().for_each(|number| f(Length, number));
    }
    for leg in &mut gear.legs {
        each_of_leg(leg, f);
    }
}

/// Calls `f` on every position of a leg.
pub fn each_point(leg: &mut Leg, f: &mut impl FnMut(&mut Point)) {
    f(&mut leg.trunnion);
    leg.body.outline.iter_mut().for_each(&mut *f);
    f(&mut leg.body.centre);
    f(&mut leg.strut.axle);
    f(&mut leg.strut.axis_bottom);
    f(&mut leg.strut.axis_top);
    leg.strut.sliding_outline.iter_mut().for_each(&mut *f);
    match &mut leg.brace {
        Brace::None => {}
        Brace::Folding(b) => {
            f(&mut b.airframe_pivot);
            f(&mut b.knee);
            f(&mut b.leg_attach);
        }
        Brace::Sliding(b) => {
            f(&mut b.airframe_pivot);
            f(&mut b.leg_attach);
        }
    }
    f(&mut leg.actuator.mount);
    f(&mut leg.actuator.attach);
    for spring in &mut leg.springs {
        for end in ends(spring) {
            f(&mut end.point);
        }
    }
    for obstacle in &mut leg.well {
        obstacle.shape.points_mut().iter_mut().for_each(&mut *f);
    }
}

/// Both ends of a spring; a torsion spring has none.
fn ends(spring: &mut Spring) -> Vec<&mut SpringEnd> {
    match &mut spring.kind {
        SpringKind::Linear(s) => vec![&mut s.first, &mut s.second],
        SpringKind::Gas(s) => vec![&mut s.first, &mut s.second],
        SpringKind::Torsion(_) => vec![],
    }
}

fn each_of_leg(leg: &mut Leg, f: &mut impl FnMut(Dimension, &mut f64)) {
    use Dimension::{Area, Force, Length, Mass, Moment, Other, Position};
    each_point(leg, &mut |point| {
        f(Position, &mut point.x);
        f(Position, &mut point.y);
    });
    f(Other, &mut leg.swing_up);
    f(Mass, &mut leg.body.mass);
    f(Mass, &mut leg.wheel.mass);
    f(Other, &mut leg.wheel.lean);
    let beside = &mut leg.out_of_plane;
    for angle in [&mut beside.trunnion_skew, &mut beside.wheel_skew] {
        angle.iter_mut().for_each(|number| f(Other, number));
    }
    for room in [&mut beside.room_near, &mut beside.room_far] {
        room.iter_mut().for_each(|number| f(Length, number));
    }
    f(Area, &mut leg.air.wheel_drag_area);
    f(Area, &mut leg.air.leg_drag_area);
    match &mut leg.strut.shortening {
        Shortening::None => {}
        Shortening::BeforeSwing { amount } => f(Length, amount),
        Shortening::WithTravel { table } => {
            for row in table {
                f(Other, &mut row.travel);
                f(Length, &mut row.amount);
            }
        }
    }
    each_of_tire(&mut leg.wheel.tire, f);
    match &mut leg.brace {
        Brace::None => {}
        Brace::Folding(b) => {
            for link in [&mut b.upper, &mut b.lower] {
                f(Length, &mut link.thickness);
                f(Mass, &mut link.mass);
            }
            b.excursion_allowed.iter_mut().for_each(|n| f(Length, n));
        }
        Brace::Sliding(b) => {
            f(Length, &mut b.shortest);
            f(Length, &mut b.longest);
            f(Length, &mut b.thickness);
            f(Mass, &mut b.mass);
        }
    }
    let a = &mut leg.actuator;
    for length in [
        &mut a.bore,
        &mut a.rod,
        &mut a.shortest,
        &mut a.longest,
        &mut a.body_diameter,
        &mut a.body_length,
    ] {
        f(Length, length);
    }
    f(Mass, &mut a.mass);
    for force in [&mut a.seal_friction, &mut a.seal_break_out] {
        force.iter_mut().for_each(|number| f(Force, number));
    }
    for spring in &mut leg.springs {
        each_of_spring(&mut spring.kind, f);
    }
    for pin in leg.pins.all_mut() {
        pin.radius.iter_mut().for_each(|number| f(Length, number));
        pin.friction.iter_mut().for_each(|number| f(Other, number));
        pin.couple.iter_mut().for_each(|number| f(Moment, number));
    }
    for obstacle in &mut leg.well {
        let own = &mut obstacle.required_clearance;
        own.iter_mut().for_each(|number| f(Length, number));
    }
}

fn each_of_spring(kind: &mut SpringKind, f: &mut impl FnMut(Dimension, &mut f64)) {
    use Dimension::{Force, Length, Moment, Other, Rate};
    match kind {
        SpringKind::Linear(s) => {
            f(Rate, &mut s.rate);
            match &mut s.set {
                SpringSet::FreeLength { length } => f(Length, length),
                SpringSet::ForceAtDown { force } => f(Force, force),
            }
        }
        SpringKind::Gas(s) => {
            f(Length, &mut s.shortest);
            f(Length, &mut s.longest);
            f(Force, &mut s.force_longest);
            f(Force, &mut s.force_shortest);
            if let GasLaw::Polytropic { exponent } = &mut s.law {
                f(Other, exponent);
            }
        }
        SpringKind::Torsion(s) => {
            f(Moment, &mut s.rate);
            f(Moment, &mut s.moment_at_down);
        }
    }
}

fn each_of_tire(tire: &mut Tire, f: &mut impl FnMut(Dimension, &mut f64)) {
    use Dimension::Length;
    for length in [
        &mut tire.diameter,
        &mut tire.width,
        &mut tire.shoulder_radius,
        &mut tire.rim_diameter,
    ] {
        f(Length, length);
    }
    if let Grown::Given {
        diameter, width, ..
    } = &mut tire.grown
    {
        f(Length, diameter);
        f(Length, width);
    }
}
