//! Every kind of leg, and random legs of each.
use gearswing_gear::model::*;
use std::f64::consts::TAU;

use crate::Draw;

/// What sets one kind of leg apart from another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Kind {
    /// Brace.
    pub brace: BraceKind,
    /// The part that the actuator drives.
    pub attach_to: AttachTo,
    /// Plane of the swing.
    pub view: View,
    /// When the strut shortens.
    pub shortening: ShorteningKind,
}

/// Kinds of brace.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BraceKind {
    /// None.
    None,
    /// Telescoping.
    Sliding,
    /// Folding on from where the knee stands.
    SameSide,
    /// Over center, folding through the straight line.
    ThroughCentre,
}

/// Kinds of shortening.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShorteningKind {
    /// Never.
    None,
    /// Before the swing.
    Before,
    /// By the swing.
    With,
}

impl Kind {
    /// All 48 kinds.
    #[must_use]
    pub fn all() -> Vec<Self> {
        let mut all = Vec::new();
        for (brace, attach_to) in [
            (BraceKind::None, AttachTo::Leg),
            (BraceKind::Sliding, AttachTo::Leg),
            (BraceKind::SameSide, AttachTo::Leg),
            (BraceKind::SameSide, AttachTo::UpperLink),
            (BraceKind::SameSide, AttachTo::LowerLink),
            (BraceKind::ThroughCentre, AttachTo::Leg),
            (BraceKind::ThroughCentre, AttachTo::UpperLink),
            (BraceKind::ThroughCentre, AttachTo::LowerLink),
        ] {
            for view in [View::Side, View::Front] {
                for shortening in [
                    ShorteningKind::None,
                    ShorteningKind::Before,
                    ShorteningKind::With,
                ] {
                    all.push(Self {
                        brace,
                        attach_to,
                        view,
                        shortening,
                    });
                }
            }
        }
        all
    }
}

/// A random gear with one leg of this kind, weights and air on everything, nothing in its well.
#[must_use]
pub fn random_gear(kind: Kind, draw: &mut Draw) -> Gear {
    let d = draw;
    let hand = if d.either() { 1.0 } else { -1.0 };
    let available_pressure = d.between(4e6, 1e7);
    Gear {
        id: None,
        name: "Drawn".into(),
        note: String::new(),
        legs: vec![random_leg(kind, d, hand)],
        conditions: Conditions {
            load_factor: d.between(0.5, 2.5),
            pitch: d.between(-0.2, 0.2),
            bank: d.between(-0.3, 0.3),
            airspeed: d.between(0.0, 70.0),
            sideslip: d.between(-0.3, 0.3),
            air_density: d.between(0.7, 1.3),
            ..Conditions::default()
        },
        supply: Supply {
            return_pressure: d.between(0.0, 5e5),
            margin_wanted: Some(d.between(0.0, 0.3)),
            ..Supply::constant(available_pressure)
        },
        fluid: Fluid::default(),
        clearance_rule: ClearanceRule::default(),
        emergency_way: None,
        emergency_pump: None,
        friction_times_required: None,
        points_from: PointsFrom::Airplane,
        kept: Vec::new(),
        notes: Vec::new(),
        before: None,
    }
}

/// The trunnion as origin, the strut's line as first axis.
struct LegAxes {
    origin: Point,
    down: Vector,
}

impl LegAxes {
    fn at(&self, along: f64, off: f64) -> Point {
        let side = Vector::new(-self.down.y, self.down.x);
        self.origin + self.down * along + side * off
    }
}

/// `hand` is the sign of the swing, and the side on which brace and actuator stand.
fn random_leg(kind: Kind, d: &mut Draw, hand: f64) -> Leg {
    let origin = Point::new(d.between(-1.0, 1.0), d.between(-1.0, 1.0));
    let lean = d.between(-0.25, 0.25);
    let axes = LegAxes {
        origin,
        down: Vector::new(lean.sin(), -lean.cos()),
    };
    let length = d.between(0.5, 0.9);
    let half = d.between(0.02, 0.05);
    let shortening = shortening(kind.shortening, d);
    let brace = brace(kind.brace, d, &axes, length, hand);
    let actuator = actuator(kind.attach_to, d, &axes, length, hand, &brace);
    Leg {
        name: "Drawn leg".into(),
        view: kind.view,
        trunnion: origin,
        // brace and actuator pass ahead of the tire
        out_of_plane: OutOfPlane {
            own_leg: OwnLeg::Leg,
            ..OutOfPlane::default()
        },
        swing_up: hand * d.between(0.8, 1.7),
        body: LegBody {
            outline: vec![
                axes.at(-0.05, -half),
                axes.at(0.4 * length, -half),
                axes.at(0.45 * length, half),
                axes.at(-0.05, 1.5 * half),
            ],
            mass: d.between(3.0, 15.0),
            centre: axes.at(d.between(0.2, 0.4), d.between(-0.05, 0.05)),
        },
        strut: Strut {
            axle: axes.at(length, d.between(-0.1, 0.1)),
            axis_bottom: axes.at(length, 0.0),
            axis_top: axes.at(0.0, 0.0),
            sliding_outline: vec![
                axes.at(0.45 * length, -0.6 * half),
                axes.at(length + 0.02, -0.8 * half),
                axes.at(length + 0.02, 0.5 * half),
                axes.at(0.45 * length, 0.6 * half),
            ],
            shortening,
        },
        wheel: wheel(d),
        brace,
        actuator,
        drive: Drive::default(),
        shared_drive: String::new(),
        drive_ratio: 1.0,
        air: LegAir {
            wheel_drag_area: d.between(0.0, 0.05),
            leg_drag_area: d.between(0.0, 0.03),
        },
        fall: FallData::default(),
        springs: vec![],
        pins: Pins::default(),
        well: vec![],
        seen_stop: None,
    }
}

fn wheel(d: &mut Draw) -> Wheel {
    Wheel {
        tire: Tire {
            size: String::new(),
            diameter: d.between(0.3, 0.5),
            width: d.between(0.1, 0.2),
            shoulder_radius: d.between(0.0, 0.045),
            rim_diameter: 0.15,
            basis: Basis::Measured,
            grown: Grown::ByRule,
        },
        former: None,
        mass: d.between(3.0, 15.0),
        lean: d.between(-0.1, 0.1),
    }
}

fn shortening(kind: ShorteningKind, d: &mut Draw) -> Shortening {
    let row = |travel, amount| ShorteningRow { travel, amount };
    match kind {
        ShorteningKind::None => Shortening::None,
        ShorteningKind::Before => Shortening::BeforeSwing {
            amount: d.between(0.03, 0.15),
        },
        ShorteningKind::With => Shortening::WithTravel {
            table: vec![
                row(0.0, 0.0),
                row(d.between(0.3, 0.7), d.between(0.02, 0.08)),
                row(1.0, d.between(0.02, 0.15)),
            ],
        },
    }
}

fn brace(kind: BraceKind, d: &mut Draw, axes: &LegAxes, length: f64, hand: f64) -> Brace {
    let leg_attach = axes.at(d.between(0.4, 0.7) * length, d.between(-0.02, 0.02));
    let airframe_pivot =
        axes.origin + Vector::new(hand * d.between(0.3, 0.6), d.between(-0.1, 0.1));
    let link = |d: &mut Draw| Link {
        thickness: d.between(0.02, 0.04),
        mass: d.between(0.2, 2.0),
    };
    let line = leg_attach - airframe_pivot;
    let folds = match kind {
        BraceKind::None => return Brace::None,
        BraceKind::Sliding => {
            return Brace::Sliding(SlidingBrace {
                airframe_pivot,
                leg_attach,
                shortest: 0.01,
                longest: 3.0,
                thickness: d.between(0.02, 0.05),
                mass: d.between(0.5, 3.0),
            });
        }
        BraceKind::SameSide => Folds::SameSide,
        BraceKind::ThroughCentre => Folds::ThroughCentre,
    };
    // over center is a matter of millimeters
    let off = match folds {
        Folds::ThroughCentre => d.between(0.002, 0.012),
        Folds::SameSide => d.between(0.01, 0.1),
    };
    let side = if d.either() { off } else { -off };
    let normal = Vector::new(-line.y, line.x).normalize();
    Brace::Folding(FoldingBrace {
        airframe_pivot,
        knee: airframe_pivot + line * d.between(0.42, 0.58) + normal * side,
        leg_attach,
        folds,
        knee_given: Default::default(),
        unlocked_by: if d.below(4) == 0 {
            UnlockedBy::Separate
        } else {
            UnlockedBy::Actuator
        },
        excursion_allowed: d.either().then_some(0.01),
        upper: link(d),
        lower: link(d),
    })
}

fn actuator(
    attach_to: AttachTo,
    d: &mut Draw,
    axes: &LegAxes,
    length: f64,
    hand: f64,
    brace: &Brace,
) -> Actuator {
    let share = d.between(0.3, 0.7);
    let aside = Vector::new(d.between(-0.03, 0.03), d.between(0.01, 0.04));
    let attach = match (brace, attach_to) {
        (Brace::Folding(b), AttachTo::UpperLink) => {
            b.airframe_pivot + (b.knee - b.airframe_pivot) * share + aside
        }
        (Brace::Folding(b), AttachTo::LowerLink) => {
            b.knee + (b.leg_attach - b.knee) * share + aside
        }
        _ => axes.at(d.between(0.12, 0.3) * length, d.between(-0.05, 0.05)),
    };
    let body_length = d.between(0.06, 0.12);
    let rod = d.between(0.01, 0.02);
    Actuator {
        mount: axes.origin + Vector::new(hand * d.between(0.1, 0.6), d.between(0.05, 0.35)),
        attach,
        attach_to,
        bore: d.between(0.025, 0.05),
        rod,
        shortest: body_length,
        longest: 3.0,
        body_diameter: d.between(0.03, 0.05),
        body_length,
        body_at: if d.below(3) == 0 {
            BodyEnd::Moving
        } else {
            BodyEnd::Airframe
        },
        mass: d.between(0.5, 3.0),
        seal_friction: Some(d.between(0.0, 60.0)),
        ..Actuator::default()
    }
}

/// The same gear with `count` obstacles, solids and surfaces, around the leg.
#[must_use]
pub fn with_well(mut gear: Gear, count: usize, draw: &mut Draw) -> Gear {
    let d = draw;
    for leg in &mut gear.legs {
        for i in 0..count {
            let angle = d.between(-TAU, TAU);
            let place = leg.trunnion + Vector::new(angle.cos(), angle.sin()) * d.between(0.3, 1.4);
            let shape = if d.either() {
                solid(d, place)
            } else {
                surface(d, place)
            };
            leg.well.push(Obstacle {
                name: format!("Obstacle {i}"),
                shape,
                required_clearance: (d.below(3) == 0).then_some(0.01),
                ignores: vec![],
            });
        }
    }
    gear
}

fn solid(d: &mut Draw, centre: Point) -> Shape {
    let count = 3 + d.below(5);
    let size = d.between(0.03, 0.2);
    let mut points: Vec<Point> = (0..count)
        .map(|i| {
            let angle = TAU * (i as f64 + d.between(0.0, 0.8)) / count as f64;
            centre + Vector::new(angle.cos(), angle.sin()) * (size * d.between(0.2, 1.0))
        })
        .collect();
    if d.either() {
        points.reverse();
    }
    Shape::Solid { points }
}

fn surface(d: &mut Draw, start: Point) -> Shape {
    let mut angle = d.between(-3.0, 3.0);
    let mut last = start;
    let mut points = vec![last];
    for _ in 0..1 + d.below(4) {
        last += Vector::new(angle.cos(), angle.sin()) * d.between(0.05, 0.3);
        points.push(last);
        angle += d.between(-0.8, 0.8);
    }
    Shape::Surface { points }
}
