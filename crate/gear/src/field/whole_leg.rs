//! All points of a leg at once: moved, or seen in a mirror.
use super::numbers::places_of;
use super::{Field, Kind};
use crate::model::{Gear, Leg, Point, SpringKind, Vector};

/// Changes every point of a leg, of its springs and of the structure in its well.
fn each_point(gear: &mut Gear, leg: usize, change: impl Fn(&mut Point)) {
    let of_leg = Field::ALL.iter().filter(|field| field.is_of_leg());
    let points = of_leg.filter(|field| matches!(field.info().kind, Kind::Point | Kind::Outline));
    for field in points {
        for path in places_of(gear, *field, leg) {
            if let Some(point) = path.at_mut(gear) {
                change(point);
            }
        }
    }
}

/// Moves a leg with its springs and the structure in its well (m).
pub fn move_leg(gear: &mut Gear, leg: usize, by: Vector) {
    each_point(gear, leg, |point| *point += by);
}

/// Turns a leg into its image in the upright plane x = 0, as the right main gear is to the left one: what stood at x
/// stands at −x, and what turned one way turns the other.
///
/// The structure in its well is gone round the other way, so that the free side of a line stays on its side.
pub fn mirror_leg(gear: &mut Gear, leg: usize) {
    each_point(gear, leg, |point| point.x = -point.x);
    if let Some(leg) = gear.legs.get_mut(leg) {
        turn_about(leg);
    }
}

/// Every angle and moment that has a sign gets the other one.
fn turn_about(leg: &mut Leg) {
    leg.swing_up = -leg.swing_up;
    leg.wheel.lean = -leg.wheel.lean;
    for spring in &mut leg.springs {
        if let SpringKind::Torsion(spring) = &mut spring.kind {
            spring.moment_at_down = -spring.moment_at_down;
        }
    }
    for piece in &mut leg.well {
        piece.shape.points_mut().reverse();
    }
}
