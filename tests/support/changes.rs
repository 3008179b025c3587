//! Changes of a gear after which its answers are known.
use gearswing_gear::model::*;

use crate::numbers::{Dimension, each_number, each_point};

/// Seen in a mirror that stands upright: what was right is left. In a side view the wind cannot be
/// turned about, so it is taken away first.
#[must_use]
pub fn mirrored(gear: &Gear) -> Gear {
    let mut gear = gear.clone();
    let c = &mut gear.conditions;
    c.pitch = -c.pitch;
    c.bank = -c.bank;
    c.sideslip = -c.sideslip;
    for leg in &mut gear.legs {
        each_point(leg, &mut |p| p.x = -p.x);
        leg.swing_up = -leg.swing_up;
        leg.wheel.lean = -leg.wheel.lean;
        for spring in &mut leg.springs {
            if let SpringKind::Torsion(spring) = &mut spring.kind {
                spring.moment_at_down = -spring.moment_at_down;
            }
        }
        for obstacle in &mut leg.well {
            // the free side lies to the left of the direction
            obstacle.shape.points_mut().reverse();
        }
    }
    gear
}

/// The whole airplane moved by `by` (m).
#[must_use]
pub fn moved(gear: &Gear, by: Vector) -> Gear {
    let mut gear = gear.clone();
    for leg in &mut gear.legs {
        each_point(leg, &mut |p| *p += by);
    }
    gear
}

/// A point turned about the origin by `angle` (rad).
#[must_use]
pub fn turn(point: Point, angle: f64) -> Point {
    let (sin, cos) = angle.sin_cos();
    Point::new(cos * point.x - sin * point.y, sin * point.x + cos * point.y)
}

/// Drawing and weight turned together by `angle` (rad), for a gear of one leg in still air: level in
/// the axis that its view does not show.
#[must_use]
pub fn turned(gear: &Gear, angle: f64) -> Gear {
    let mut gear = gear.clone();
    for leg in &mut gear.legs {
        each_point(leg, &mut |p| *p = turn(*p, angle));
        leg.wheel.lean += angle;
        match leg.view {
            View::Side => gear.conditions.pitch += angle,
            View::Front => gear.conditions.bank -= angle,
        }
    }
    gear
}

/// Every length `by` times as large; masses, drag areas and forces as they are, so that pressures fall
/// with the square.
#[must_use]
pub fn enlarged(gear: &Gear, by: f64) -> Gear {
    let mut gear = gear.clone();
    each_number(&mut gear, &mut |dimension, number| match dimension {
        Dimension::Position | Dimension::Length | Dimension::Moment => *number *= by,
        Dimension::Rate => *number /= by,
        Dimension::Pressure => *number /= by * by,
        Dimension::Area | Dimension::Mass | Dimension::Force | Dimension::Other => {}
    });
    gear
}

/// Every force `by` times as large: masses, drag areas, springs, seal friction, pressures.
#[must_use]
pub fn heavier(gear: &Gear, by: f64) -> Gear {
    let mut gear = gear.clone();
    each_number(&mut gear, &mut |dimension, number| match dimension {
        Dimension::Area
        | Dimension::Mass
        | Dimension::Force
        | Dimension::Pressure
        | Dimension::Rate
        | Dimension::Moment => *number *= by,
        Dimension::Position | Dimension::Length | Dimension::Other => {}
    });
    gear
}

/// The same leg given at its upper end, to be swung down: `up` is where its knee and its actuator's
/// attach point are there. For a strut that keeps its length.
#[must_use]
pub fn reversed(gear: &Gear, knee: Option<Point>, attach: Point) -> Gear {
    let mut gear = gear.clone();
    for leg in &mut gear.legs {
        let (trunnion, swing) = (leg.trunnion, leg.swing_up);
        let about = |p: Point| trunnion + (turn(Point::from(p - trunnion), swing)).coords;
        leg.body.outline.iter_mut().for_each(|p| *p = about(*p));
        leg.strut
            .sliding_outline
            .iter_mut()
            .for_each(|p| *p = about(*p));
        for p in [
            &mut leg.body.centre,
            &mut leg.strut.axle,
            &mut leg.strut.axis_bottom,
            &mut leg.strut.axis_top,
        ] {
            *p = about(*p);
        }
        match &mut leg.brace {
            Brace::None => {}
            Brace::Sliding(b) => b.leg_attach = about(b.leg_attach),
            Brace::Folding(b) => {
                b.leg_attach = about(b.leg_attach);
                b.knee = knee.unwrap_or(b.knee);
            }
        }
        leg.actuator.attach = attach;
        leg.wheel.lean += swing;
        leg.swing_up = -swing;
    }
    gear
}
