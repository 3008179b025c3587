//! Choices by path: which option is taken, and taking another one. What the new option needs and
//! the old one has is carried over; the rest starts from a sensible figure.
use gearswing_gear::model::{
    AttachTo, Basis, BodyEnd, Brace, EmergencyWay, FoldingBrace, Folds, Gear, Grown, Leg, Link,
    MovingPart, OwnLeg, Point, Shape, Shortening, ShorteningRow, SlidingBrace, Tire, UnlockedBy,
    Vector, View,
};
use gearswing_solver::numeric::sort_short;

use super::path::{Seg::At, Seg::Key, steps};
use super::seen;
use super::spring;
use super::supply;

macro_rules! keys {
    ($($name:ident, $type:ty: $($variant:path => $key:literal),+;)+) => {$(
        pub(crate) mod $name {
            use super::*;

            pub(crate) fn key(value: $type) -> &'static str {
                match value { $($variant => $key),+ }
            }

            pub(crate) fn value(key: &str) -> Option<$type> {
                match key { $($key => Some($variant),)+ _ => None }
            }
        }
    )+};
}

keys! {
    view, View: View::Side => "side", View::Front => "front";
    own_leg, OwnLeg: OwnLeg::ByView => "by_view", OwnLeg::All => "all", OwnLeg::Leg => "leg",
        OwnLeg::Brace => "brace", OwnLeg::None => "none";
    basis, Basis: Basis::Measured => "measured", Basis::Maker => "maker", Basis::Table => "table",
        Basis::Unstated => "unstated";
    folds, Folds: Folds::ThroughCentre => "through_centre", Folds::SameSide => "same_side";
    unlocked, UnlockedBy: UnlockedBy::Actuator => "actuator", UnlockedBy::Separate => "separate";
    attach, AttachTo: AttachTo::Leg => "leg", AttachTo::UpperLink => "upper_link",
        AttachTo::LowerLink => "lower_link";
    body_end, BodyEnd: BodyEnd::Airframe => "airframe", BodyEnd::Moving => "moving";
    way_down, EmergencyWay: EmergencyWay::FreeFall => "free_fall",
        EmergencyWay::HandPump => "hand_pump", EmergencyWay::StoredGas => "stored_gas",
        EmergencyWay::HandCrank => "hand_crank", EmergencyWay::NoneGiven => "none_given";
    part, MovingPart: MovingPart::Wheel => "wheel", MovingPart::LegBody => "leg_body",
        MovingPart::SlidingStrut => "sliding_strut", MovingPart::UpperLink => "upper_link",
        MovingPart::LowerLink => "lower_link", MovingPart::LinkArm => "link_arm",
        MovingPart::SlidingBrace => "sliding_brace",
        MovingPart::ActuatorBody => "actuator_body", MovingPart::ActuatorRod => "actuator_rod";
}

/// Key of the option taken at a path; `None` when there is no choice at that path.
#[must_use]
pub fn chosen(gear: &Gear, path: &str) -> Option<&'static str> {
    let steps = steps(path)?;
    if let [Key("supply"), rest @ ..] = steps.as_slice() {
        return supply::chosen(&gear.supply, rest);
    }
    if let [Key("emergency_way")] = steps.as_slice() {
        return Some(way_down::key(gear.way_down()));
    }
    let [Key("legs"), At(leg), rest @ ..] = steps.as_slice() else {
        return None;
    };
    let leg = gear.legs.get(*leg)?;
    Some(match rest {
        [Key("view")] => view::key(leg.view),
        [Key("out_of_plane"), Key("own_leg")] => own_leg::key(leg.out_of_plane.own_leg),
        [Key("strut"), Key("shortening")] => match leg.strut.shortening {
            Shortening::None => "none",
            Shortening::BeforeSwing { .. } => "before_swing",
            Shortening::WithTravel { .. } => "with_travel",
        },
        [Key("brace")] => match leg.brace {
            Brace::None => "none",
            Brace::Folding(_) => "folding",
            Brace::Sliding(_) => "sliding",
        },
        [Key("brace"), Key("folding"), Key(key)] => match (&leg.brace, *key) {
            (Brace::Folding(brace), "folds") => folds::key(brace.folds),
            (Brace::Folding(brace), "unlocked_by") => unlocked::key(brace.unlocked_by),
            _ => return None,
        },
        [Key("actuator"), Key("attach_to")] => attach::key(leg.actuator.attach_to),
        [Key("actuator"), Key("body_at")] => body_end::key(leg.actuator.body_at),
        [Key("wheel"), Key("tire"), rest @ ..] => return chosen_of_tire(&leg.wheel.tire, rest),
        [Key("wheel"), Key("former"), rest @ ..] => {
            return chosen_of_tire(leg.wheel.former.as_ref()?, rest);
        }
        [Key("seen_stop"), rest @ ..] => return seen::chosen(leg, rest),
        [Key("springs"), At(at), Key("kind"), rest @ ..] => {
            return spring::chosen(leg.springs.get(*at)?, rest);
        }
        [Key("well"), At(at), Key("shape")] => match leg.well.get(*at)?.shape {
            Shape::Solid { .. } => "solid",
            Shape::Surface { .. } => "surface",
        },
        _ => return None,
    })
}

fn chosen_of_tire(tire: &Tire, rest: &[super::path::Seg<'_>]) -> Option<&'static str> {
    match (rest, &tire.grown) {
        ([Key("basis")], _) => Some(basis::key(tire.basis)),
        ([Key("grown")], Grown::ByRule) => Some("by_rule"),
        ([Key("grown")], Grown::Given { .. }) => Some("given"),
        ([Key("grown"), Key("given"), Key("basis")], Grown::Given { basis, .. }) => {
            Some(basis::key(*basis))
        }
        _ => None,
    }
}

/// Takes an option; `None` = no such choice or option, nothing changed.
pub fn choose(gear: &mut Gear, path: &str, option: &str) -> Option<()> {
    if chosen(gear, path)? == option {
        return Some(());
    }
    let steps = steps(path)?;
    if let [Key("supply"), rest @ ..] = steps.as_slice() {
        return supply::choose(gear, rest, option);
    }
    if let [Key("emergency_way")] = steps.as_slice() {
        gear.emergency_way = Some(way_down::value(option)?);
        return Some(());
    }
    let [Key("legs"), At(leg), rest @ ..] = steps.as_slice() else {
        return None;
    };
    let leg = gear.legs.get_mut(*leg)?;
    match rest {
        [Key("view")] => leg.view = view::value(option)?,
        [Key("out_of_plane"), Key("own_leg")] => {
            leg.out_of_plane.own_leg = own_leg::value(option)?;
        }
        [Key("strut"), Key("shortening")] => choose_shortening(leg, option)?,
        [Key("brace")] => choose_brace(leg, option)?,
        [Key("brace"), Key("folding"), Key(key)] => {
            let Brace::Folding(brace) = &mut leg.brace else {
                return None;
            };
            match *key {
                "folds" => brace.folds = folds::value(option)?,
                _ => brace.unlocked_by = unlocked::value(option)?,
            }
        }
        [Key("actuator"), Key("attach_to")] => leg.actuator.attach_to = attach::value(option)?,
        [Key("actuator"), Key("body_at")] => leg.actuator.body_at = body_end::value(option)?,
        [Key("wheel"), Key("tire"), rest @ ..] => choose_tire(&mut leg.wheel.tire, rest, option)?,
        [Key("wheel"), Key("former"), rest @ ..] => {
            choose_tire(leg.wheel.former.as_mut()?, rest, option)?;
        }
        [Key("seen_stop"), rest @ ..] => seen::choose(leg, rest, option)?,
        [Key("springs"), At(at), Key("kind"), rest @ ..] => {
            spring::choose(leg, *at, rest, option)?;
        }
        [Key("well"), At(at), Key("shape")] => {
            let obstacle = leg.well.get_mut(*at)?;
            let points = std::mem::take(obstacle.shape.points_mut());
            obstacle.shape = match option {
                "solid" => Shape::Solid { points },
                _ => Shape::Surface { points },
            };
        }
        _ => return None,
    }
    Some(())
}

fn choose_tire(tire: &mut Tire, rest: &[super::path::Seg<'_>], option: &str) -> Option<()> {
    match (rest, option) {
        ([Key("basis")], _) => tire.basis = basis::value(option)?,
        ([Key("grown")], "by_rule") => tire.grown = Grown::ByRule,
        ([Key("grown")], "given") => {
            let size = gearswing_solver::tires::grown_size(tire);
            tire.grown = Grown::Given {
                diameter: size.diameter,
                width: size.width,
                basis: Basis::Unstated,
            };
        }
        ([Key("grown"), Key("given"), Key("basis")], _) => {
            let Grown::Given { basis: place, .. } = &mut tire.grown else {
                return None;
            };
            *place = basis::value(option)?;
        }
        _ => return None,
    }
    Some(())
}

/// Shortening that a new choice starts with [m].
const FIRST_SHORTENING: f64 = 0.05;

fn choose_shortening(leg: &mut Leg, option: &str) -> Option<()> {
    let amount = match &leg.strut.shortening {
        Shortening::None => FIRST_SHORTENING,
        Shortening::BeforeSwing { amount } => *amount,
        Shortening::WithTravel { table } => table.last().map_or(FIRST_SHORTENING, |r| r.amount),
    };
    let row = |travel, amount| ShorteningRow { travel, amount };
    leg.strut.shortening = match option {
        "none" => Shortening::None,
        "before_swing" => Shortening::BeforeSwing { amount },
        "with_travel" => Shortening::WithTravel {
            table: vec![row(0.0, 0.0), row(1.0, amount)],
        },
        _ => return None,
    };
    Some(())
}

/// Thickness of a brace that is new [m].
const FIRST_THICKNESS: f64 = 0.03;

fn choose_brace(leg: &mut Leg, option: &str) -> Option<()> {
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

/// Least B0–B1 over the swing [m], sampled: only a first figure for the person to change.
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

/// Moving parts that an obstacle is not checked against.
#[must_use]
pub fn ignored(gear: &Gear, path: &str) -> Option<Vec<&'static str>> {
    match steps(path)?.as_slice() {
        [Key("legs"), At(leg), Key("well"), At(at), Key("ignores")] => {
            let parts = &gear.legs.get(*leg)?.well.get(*at)?.ignores;
            Some(parts.iter().map(|p| part::key(*p)).collect())
        }
        _ => None,
    }
}

/// Switches one of a set; `None` = no such set or option, nothing changed.
pub fn switch(gear: &mut Gear, path: &str, option: &str, on: bool) -> Option<()> {
    let steps = steps(path)?;
    let [Key("legs"), At(leg), Key("well"), At(at), Key("ignores")] = steps.as_slice() else {
        return None;
    };
    let parts = &mut gear.legs.get_mut(*leg)?.well.get_mut(*at)?.ignores;
    let part = part::value(option)?;
    parts.retain(|p| *p != part);
    if on {
        parts.push(part);
        sort_short(parts, Ord::cmp);
    }
    Some(())
}
