//! What a new brace starts with.
use crate::model::{
    AttachTo, Brace, FoldingBrace, Folds, Leg, Link, Point, SlidingBrace, UnlockedBy, Vector,
};

/// Key of a kind of brace.
pub(super) fn chosen(brace: &Brace) -> &'static str {
    match brace {
        Brace::None => "none",
        Brace::Folding(_) => "folding",
        Brace::Sliding(_) => "sliding",
    }
}

/// Thickness of a brace that is new (m).
const FIRST_THICKNESS: f64 = 0.03;

/// Takes another kind of brace between the same pins.
pub(super) fn choose(leg: &mut Leg, option: &str) -> Option<()> {
    let (pivot, attach, thickness, mass) = match &leg.brace {
        Brace::Folding(b) => (
            b.airframe_pivot,
            b.leg_attach,
            b.upper.thickness,
            b.upper.mass + b.lower.mass,
        ),
        Brace::Sliding(b) => (b.airframe_pivot, b.leg_attach, b.thickness, b.mass),
        Brace::None => {
            let attach = leg.trunnion + (leg.strut.axle - leg.trunnion) * 0.6;
            (first_pivot(leg, attach), attach, FIRST_THICKNESS, 0.0)
        }
    };
    let length = (attach - pivot).norm();
    leg.brace = match option {
        "none" => Brace::None,
        "sliding" => Brace::Sliding(SlidingBrace {
            airframe_pivot: pivot,
            leg_attach: attach,
            shortest: shortest_on_the_way(leg, pivot, attach) * 0.98,
            longest: length,
            thickness,
            mass,
        }),
        "folding" => {
            let link = Link {
                thickness,
                mass: mass / 2.0,
            };
            Brace::Folding(FoldingBrace {
                airframe_pivot: pivot,
                knee: first_knee(leg, pivot, attach),
                leg_attach: attach,
                folds: Folds::ThroughCentre,
                unlocked_by: UnlockedBy::Actuator,
                knee_given: Default::default(),
                excursion_allowed: None,
                upper: link,
                lower: link,
            })
        }
        _ => return None,
    };
    if !matches!(leg.brace, Brace::Folding(_)) {
        leg.actuator.attach_to = AttachTo::Leg;
    }
    Some(())
}

/// A brace pivot beside the trunnion on the side to which the leg comes up.
fn first_pivot(leg: &Leg, attach: Point) -> Point {
    let reach = (attach - leg.trunnion).norm();
    leg.trunnion + Vector::new(0.8 * reach * leg.swing_up.signum(), 0.0)
}

/// Least B0–B1 over the swing (m), sampled: only a first figure for the person to change.
fn shortest_on_the_way(leg: &Leg, pivot: Point, attach: Point) -> f64 {
    let arm = attach - leg.trunnion;
    (0..=32)
        .map(|i| {
            let swing = leg.swing_up * f64::from(i) / 32.0;
            let turned = turned_by(arm, swing);
            (leg.trunnion + turned - pivot).norm()
        })
        .fold(f64::INFINITY, f64::min)
}

/// A knee a hundredth of the span past the straight line, on the side away from the leg's way up.
fn first_knee(leg: &Leg, pivot: Point, attach: Point) -> Point {
    let span = attach - pivot;
    let normal = Vector::new(-span.y, span.x);
    let up = leg.trunnion + turned_by(leg.strut.axle - leg.trunnion, leg.swing_up / 2.0);
    let away = if normal.dot(&(up - pivot)) > 0.0 {
        -1.0
    } else {
        1.0
    };
    pivot + span * 0.5 + normal * (0.01 * away)
}

fn turned_by(v: Vector, angle: f64) -> Vector {
    let (sin, cos) = angle.sin_cos();
    Vector::new(cos * v.x - sin * v.y, sin * v.x + cos * v.y)
}
