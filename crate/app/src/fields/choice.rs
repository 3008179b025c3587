//! Choices by path: which option is taken, and taking another one. What the new option needs and
//! the old one has is carried over; the rest starts from a sensible figure.
use gearswing_gear::field::{Field, Path};
use gearswing_gear::model::{
    AttachTo, Basis, BodyEnd, Brace, EmergencyWay, FoldingBrace, Folds, Gear, Grown, Leg, Link,
    MovingPart, OwnLeg, Point, Shape, Shortening, ShorteningRow, SlidingBrace, Tire, UnlockedBy,
    Vector, View,
};
use gearswing_solver::numeric::sort_short;

use super::access::path;
use super::{seen, spring, supply};

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
pub(super) use keys;

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
pub fn chosen(gear: &Gear, at: &str) -> Option<&'static str> {
    chosen_at(gear, path(at)?)
}

/// The same by a path that is read already.
pub(crate) fn chosen_at(gear: &Gear, path: Path) -> Option<&'static str> {
    let leg = || gear.legs.get(path.leg);
    let former = || leg()?.wheel.former.as_ref();
    Some(match path.field {
        Field::SupplySource => supply::chosen(&gear.supply.source),
        Field::BatteryType => supply::battery_kind::key(gear.supply.battery.kind),
        Field::BatteryVoltage => supply::battery_size::key(gear.supply.battery.size),
        Field::EmergencyWay => way_down::key(gear.way_down()),
        Field::View => view::key(leg()?.view),
        Field::OwnLeg => own_leg::key(leg()?.out_of_plane.own_leg),
        Field::Shortening => match leg()?.strut.shortening {
            Shortening::None => "none",
            Shortening::BeforeSwing { .. } => "before_swing",
            Shortening::WithTravel { .. } => "with_travel",
        },
        Field::BraceType => match leg()?.brace {
            Brace::None => "none",
            Brace::Folding(_) => "folding",
            Brace::Sliding(_) => "sliding",
        },
        Field::Folds => folds::key(folding(leg()?)?.folds),
        Field::UnlockedBy => unlocked::key(folding(leg()?)?.unlocked_by),
        Field::AttachTo => attach::key(leg()?.actuator.attach_to),
        Field::BarrelAt => body_end::key(leg()?.actuator.body_at),
        Field::TireBasis => basis::key(leg()?.wheel.tire.basis),
        Field::TireGrown => grown(&leg()?.wheel.tire),
        Field::TireGrownBasis => basis::key(grown_basis(&leg()?.wheel.tire)?),
        Field::FormerBasis => basis::key(former()?.basis),
        Field::FormerGrown => grown(former()?),
        Field::FormerGrownBasis => basis::key(grown_basis(former()?)?),
        Field::SeenStop => seen::chosen(leg()?),
        Field::SeenSelected => seen::selected::key(leg()?.seen_stop.as_ref()?.selected),
        Field::SeenPump => seen::pump::key(leg()?.seen_stop.as_ref()?.pump),
        Field::ObstacleShape => match leg()?.well.get(path.entry)?.shape {
            Shape::Solid { .. } => "solid",
            Shape::Surface { .. } => "surface",
        },
        _ => return spring::chosen(leg()?.springs.get(path.entry)?, path.field),
    })
}

fn folding(leg: &Leg) -> Option<&FoldingBrace> {
    match &leg.brace {
        Brace::Folding(brace) => Some(brace),
        Brace::None | Brace::Sliding(_) => None,
    }
}

fn grown(tire: &Tire) -> &'static str {
    match tire.grown {
        Grown::ByRule => "by_rule",
        Grown::Given { .. } => "given",
    }
}

fn grown_basis(tire: &Tire) -> Option<Basis> {
    match tire.grown {
        Grown::ByRule => None,
        Grown::Given { basis, .. } => Some(basis),
    }
}

/// Takes an option; `None` = no such choice or option, nothing changed.
pub fn choose(gear: &mut Gear, at: &str, option: &str) -> Option<()> {
    if chosen(gear, at)? == option {
        return Some(());
    }
    let path = path(at)?;
    match path.field {
        Field::SupplySource => supply::choose(gear, option)?,
        Field::BatteryType => gear.supply.battery.kind = supply::battery_kind::value(option)?,
        Field::BatteryVoltage => gear.supply.battery.size = supply::battery_size::value(option)?,
        Field::EmergencyWay => gear.emergency_way = Some(way_down::value(option)?),
        _ => choose_of_leg(gear.legs.get_mut(path.leg)?, path, option)?,
    }
    Some(())
}

fn choose_of_leg(leg: &mut Leg, path: Path, option: &str) -> Option<()> {
    match path.field {
        Field::View => leg.view = view::value(option)?,
        Field::OwnLeg => leg.out_of_plane.own_leg = own_leg::value(option)?,
        Field::Shortening => choose_shortening(leg, option)?,
        Field::BraceType => choose_brace(leg, option)?,
        Field::Folds => folding_mut(leg)?.folds = folds::value(option)?,
        Field::UnlockedBy => folding_mut(leg)?.unlocked_by = unlocked::value(option)?,
        Field::AttachTo => leg.actuator.attach_to = attach::value(option)?,
        Field::BarrelAt => leg.actuator.body_at = body_end::value(option)?,
        Field::TireBasis => leg.wheel.tire.basis = basis::value(option)?,
        Field::TireGrown => choose_grown(&mut leg.wheel.tire, option)?,
        Field::TireGrownBasis => *grown_basis_mut(&mut leg.wheel.tire)? = basis::value(option)?,
        Field::FormerBasis => leg.wheel.former.as_mut()?.basis = basis::value(option)?,
        Field::FormerGrown => choose_grown(leg.wheel.former.as_mut()?, option)?,
        Field::FormerGrownBasis => {
            *grown_basis_mut(leg.wheel.former.as_mut()?)? = basis::value(option)?;
        }
        Field::SeenStop => seen::choose(leg, option)?,
        Field::SeenSelected => {
            leg.seen_stop.as_mut()?.selected = seen::selected::value(option)?;
        }
        Field::SeenPump => leg.seen_stop.as_mut()?.pump = seen::pump::value(option)?,
        Field::SpringType => spring::choose_kind(leg, path.entry, option)?,
        Field::ObstacleShape => {
            let obstacle = leg.well.get_mut(path.entry)?;
            let points = std::mem::take(obstacle.shape.points_mut());
            obstacle.shape = match option {
                "solid" => Shape::Solid { points },
                _ => Shape::Surface { points },
            };
        }
        _ => spring::choose(leg.springs.get_mut(path.entry)?, path.field, option)?,
    }
    Some(())
}

fn folding_mut(leg: &mut Leg) -> Option<&mut FoldingBrace> {
    match &mut leg.brace {
        Brace::Folding(brace) => Some(brace),
        Brace::None | Brace::Sliding(_) => None,
    }
}

fn grown_basis_mut(tire: &mut Tire) -> Option<&mut Basis> {
    match &mut tire.grown {
        Grown::ByRule => None,
        Grown::Given { basis, .. } => Some(basis),
    }
}

fn choose_grown(tire: &mut Tire, option: &str) -> Option<()> {
    tire.grown = match option {
        "by_rule" => Grown::ByRule,
        "given" => {
            let size = gearswing_solver::tires::grown_size(tire);
            Grown::Given {
                diameter: size.diameter,
                width: size.width,
                basis: Basis::Unstated,
            }
        }
        _ => return None,
    };
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
pub fn ignored(gear: &Gear, at: &str) -> Option<Vec<&'static str>> {
    ignored_at(gear, path(at)?)
}

/// The same by a path that is read already.
pub(crate) fn ignored_at(gear: &Gear, path: Path) -> Option<Vec<&'static str>> {
    if path.field != Field::Ignores || path.item.is_some() {
        return None;
    }
    let parts = &gear.legs.get(path.leg)?.well.get(path.entry)?.ignores;
    Some(parts.iter().map(|p| part::key(*p)).collect())
}

/// Switches one of a set; `None` = no such set or option, nothing changed.
pub fn switch(gear: &mut Gear, at: &str, option: &str, on: bool) -> Option<()> {
    let path = path(at).filter(|path| path.field == Field::Ignores && path.item.is_none())?;
    let parts = &mut gear
        .legs
        .get_mut(path.leg)?
        .well
        .get_mut(path.entry)?
        .ignores;
    let part = part::value(option)?;
    parts.retain(|p| *p != part);
    if on {
        parts.push(part);
        sort_short(parts, Ord::cmp);
    }
    Some(())
}
