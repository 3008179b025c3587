//! Choices and sets: which option is taken, and taking another one. What the new option needs and the
//! old one has is carried over; the rest starts from a sensible figure.
use super::{brace, seen, spring, supply};
use crate::field::{Field, Path};
use crate::model::{
    AttachTo, Basis, BodyEnd, Brace, EmergencyWay, FoldingBrace, Folds, Gear, Grown, KneeGiven,
    Leg, MovingPart, OwnLeg, Point, PointsFrom, Shape, Shortening, ShorteningRow, Tire, UnlockedBy,
    View,
};

keys! {
    view, View: View::Side => "side", View::Front => "front";
    points_from, PointsFrom: PointsFrom::Airplane => "airplane", PointsFrom::Trunnion => "trunnion";
    own_leg, OwnLeg: OwnLeg::ByView => "by_view", OwnLeg::All => "all", OwnLeg::Leg => "leg",
        OwnLeg::Brace => "brace", OwnLeg::None => "none";
    basis, Basis: Basis::Measured => "measured", Basis::Maker => "maker", Basis::Table => "table",
        Basis::Unstated => "unstated";
    folds, Folds: Folds::ThroughCentre => "through_centre", Folds::SameSide => "same_side";
    unlocked, UnlockedBy: UnlockedBy::Actuator => "actuator", UnlockedBy::Separate => "separate";
    knee_given, KneeGiven: KneeGiven::Points => "points", KneeGiven::Measured => "measured";
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

impl Path {
    /// Key of the option taken; `None` when there is no choice at this path.
    #[must_use]
    pub fn chosen(self, gear: &Gear) -> Option<&'static str> {
        let leg = || gear.legs.get(self.leg);
        Some(match self.field {
            Field::SupplySource => supply::chosen(&gear.supply.source),
            Field::BatteryType => supply::battery_kind::key(gear.supply.battery.kind),
            Field::BatteryVoltage => supply::battery_size::key(gear.supply.battery.size),
            Field::PointsFrom => points_from::key(gear.points_from),
            Field::EmergencyWay => way_down::key(gear.way_down()),
            Field::View => view::key(leg()?.view),
            Field::OwnLeg => own_leg::key(leg()?.out_of_plane.own_leg),
            Field::Shortening => match leg()?.strut.shortening {
                Shortening::None => "none",
                Shortening::BeforeSwing { .. } => "before_swing",
                Shortening::WithTravel { .. } => "with_travel",
            },
            Field::BraceType => brace::chosen(&leg()?.brace),
            Field::Folds => folds::key(folding(leg()?)?.folds),
            Field::UnlockedBy => unlocked::key(folding(leg()?)?.unlocked_by),
            Field::KneeGiven => knee_given::key(folding(leg()?)?.knee_given),
            Field::AttachTo => attach::key(leg()?.actuator.attach_to),
            Field::BarrelAt => body_end::key(leg()?.actuator.body_at),
            Field::TireBasis => basis::key(leg()?.wheel.tire.basis),
            Field::TireGrown => grown(&leg()?.wheel.tire),
            Field::TireGrownBasis => basis::key(grown_basis(&leg()?.wheel.tire)?),
            Field::SeenStop => seen::chosen(leg()?),
            Field::SeenSelected => seen::selected::key(leg()?.seen_stop.as_ref()?.selected),
            Field::SeenPump => seen::pump::key(leg()?.seen_stop.as_ref()?.pump),
            Field::ObstacleShape => match leg()?.well.get(self.entry)?.shape {
                Shape::Solid { .. } => "solid",
                Shape::Surface { .. } => "surface",
            },
            _ => return spring::chosen(leg()?.springs.get(self.entry)?, self.field),
        })
    }

    /// Takes an option; `None` = no such choice or option, nothing changed.
    pub fn choose(self, gear: &mut Gear, option: &str) -> Option<()> {
        if self.chosen(gear)? == option {
            return Some(());
        }
        match self.field {
            Field::SupplySource => supply::choose(gear, option)?,
            Field::BatteryType => gear.supply.battery.kind = supply::battery_kind::value(option)?,
            Field::BatteryVoltage => {
                gear.supply.battery.size = supply::battery_size::value(option)?;
            }
            Field::PointsFrom => gear.points_from = points_from::value(option)?,
            Field::EmergencyWay => gear.emergency_way = Some(way_down::value(option)?),
            _ => of_leg(gear.legs.get_mut(self.leg)?, self, option)?,
        }
        Some(())
    }

    /// Keys of the options of a set that are on; `None` when there is no set at this path.
    #[must_use]
    pub fn switched_on(self, gear: &Gear) -> Option<Vec<&'static str>> {
        if self.field != Field::Ignores || self.item.is_some() {
            return None;
        }
        let parts = &gear.legs.get(self.leg)?.well.get(self.entry)?.ignores;
        Some(parts.iter().map(|p| part::key(*p)).collect())
    }

    /// Switches one of a set; `None` = no such set or option, nothing changed.
    pub fn switch(self, gear: &mut Gear, option: &str, on: bool) -> Option<()> {
        if self.field != Field::Ignores || self.item.is_some() {
            return None;
        }
        let parts = &mut gear
            .legs
            .get_mut(self.leg)?
            .well
            .get_mut(self.entry)?
            .ignores;
        let part = part::value(option)?;
        parts.retain(|p| *p != part);
        if on {
            let at = parts.partition_point(|before| *before < part);
            parts.insert(at, part);
        }
        Some(())
    }
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

fn of_leg(leg: &mut Leg, path: Path, option: &str) -> Option<()> {
    match path.field {
        Field::View => leg.view = view::value(option)?,
        Field::OwnLeg => leg.out_of_plane.own_leg = own_leg::value(option)?,
        Field::Shortening => choose_shortening(leg, option)?,
        Field::BraceType => brace::choose(leg, option)?,
        Field::Folds => folding_mut(leg)?.folds = folds::value(option)?,
        Field::UnlockedBy => folding_mut(leg)?.unlocked_by = unlocked::value(option)?,
        Field::KneeGiven => folding_mut(leg)?.knee_given = knee_given::value(option)?,
        Field::AttachTo => leg.actuator.attach_to = attach::value(option)?,
        Field::BarrelAt => leg.actuator.body_at = body_end::value(option)?,
        Field::TireBasis => leg.wheel.tire.basis = basis::value(option)?,
        Field::TireGrown => choose_grown(&mut leg.wheel.tire, option)?,
        Field::TireGrownBasis => *grown_basis_mut(&mut leg.wheel.tire)? = basis::value(option)?,
        Field::SeenStop => seen::choose(leg, option)?,
        Field::SeenSelected => {
            leg.seen_stop.as_mut()?.selected = seen::selected::value(option)?;
        }
        Field::SeenPump => leg.seen_stop.as_mut()?.pump = seen::pump::value(option)?,
        Field::SpringType => spring::choose_kind(leg, path.entry, option)?,
        Field::ObstacleShape => {
            let obstacle = leg.well.get_mut(path.entry)?;
            let shape: fn(Vec<Point>) -> Shape = match option {
                "solid" => |points| Shape::Solid { points },
                "surface" => |points| Shape::Surface { points },
                _ => return None,
            };
            obstacle.shape = shape(std::mem::take(obstacle.shape.points_mut()));
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
        "given" => Grown::Given {
            diameter: tire.diameter,
            width: tire.width,
            basis: Basis::Unstated,
        },
        _ => return None,
    };
    Some(())
}

/// Shortening that a new choice starts with (m).
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
