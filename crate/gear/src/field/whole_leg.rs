//! All points of a leg at once: moved, or seen in a mirror.
use super::numbers::places_of;
use super::{Field, Kind};
use crate::model::{Gear, Leg, Point, SpringKind, Vector, View};

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

/// Lengths that go with the size of a leg; thicknesses, bores and tires come in sizes of their own.
const LENGTHS: [Field; 10] = [
    Field::ShorteningAmount,
    Field::RowAmount,
    Field::SlidingShortest,
    Field::SlidingLongest,
    Field::RetractedLength,
    Field::ExtendedLength,
    Field::BarrelLength,
    Field::FreeLength,
    Field::GasShortest,
    Field::GasLongest,
];

/// Makes a leg, its springs and the structure in its well larger about its trunnion (ratio); the swing stays.
pub fn scale_leg(gear: &mut Gear, leg: usize, times: f64) {
    let Some(trunnion) = gear.legs.get(leg).map(|leg| leg.trunnion) else {
        return;
    };
    each_point(gear, leg, |point| {
        *point = trunnion + (*point - trunnion) * times
    });
    for field in LENGTHS {
        for path in places_of(gear, field, leg) {
            if let Some(Some(length)) = path.number(gear) {
                let stored = path.set_number(gear, Some(length * times));
                debug_assert!(stored.is_ok(), "what is read can be written: {path}");
            }
        }
    }
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

/// A leg in a mirror; `None` without the leg.
fn mirrored(gear: &Gear, leg: usize) -> Option<Leg> {
    let mut alone = gear.without_legs();
    alone.legs.push(gear.legs.get(leg)?.clone());
    mirror_leg(&mut alone, 0);
    alone.legs.pop()
}

/// What is a leg's own even where it is another's image: its name, and how it was seen to stop.
fn keep_own(leg: &mut Leg, own: &Leg) {
    leg.name.clone_from(&own.name);
    leg.seen_stop.clone_from(&own.seen_stop);
}

/// The leg that is the image of this one in a mirror, but for what is a leg's own.
#[must_use]
pub fn image_of(gear: &Gear, leg: usize) -> Option<usize> {
    let this = gear.legs.get(leg)?;
    // legs on the center line, and those seen from the side, are no pair
    let may_be = |other: &Leg| {
        this.view == View::Front && this.trunnion.x != 0.0 && other.trunnion.x == -this.trunnion.x
    };
    if !gear.legs.iter().any(may_be) {
        return None;
    }
    let image = mirrored(gear, leg)?;
    gear.legs.iter().position(|other| {
        let mut image = image.clone();
        keep_own(&mut image, other);
        may_be(other) && image == *other
    })
}

/// Makes a leg the image of another one, but for what is its own; `None` where one of them is not there.
pub fn follow_image(gear: &mut Gear, of: usize, leg: usize) -> Option<()> {
    let mut image = mirrored(gear, of)?;
    let leg = gear.legs.get_mut(leg)?;
    keep_own(&mut image, leg);
    *leg = image;
    Some(())
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
