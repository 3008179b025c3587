//! Random legs, each from a seed.
use crate::kinematics::{Linkage, Sweep};
use crate::model::*;
use crate::tires::{TireSize, TireSizes};
use gearswing_samples::Draw;

/// One of so many cases.
pub(crate) fn one_of(draw: &mut Draw, count: usize) -> usize {
    (draw.between(0.0, count as f64) as usize).min(count - 1)
}

fn point(draw: &mut Draw, x: (f64, f64), y: (f64, f64)) -> Vector {
    Vector::new(draw.between(x.0, x.1), draw.between(y.0, y.1))
}

/// Settings of a property test over `cases` seeds, 20 times as many in the long form; a failure
/// prints its seed.
pub(crate) fn cases(cases: u32) -> proptest::test_runner::Config {
    let long = std::env::var_os("GEARSWING_LONG").is_some();
    let cases = if long { 20 * cases } else { cases };
    proptest::test_runner::Config {
        failure_persistence: None,
        max_shrink_iters: 0,
        max_global_rejects: 100_000,
        ..proptest::test_runner::Config::with_cases(cases)
    }
}

/// A leg and all that its clearances need.
pub(crate) struct Drawn {
    pub(crate) leg: Leg,
    pub(crate) sizes: TireSizes,
}

impl Drawn {
    pub(crate) fn linkage(&self) -> Linkage {
        Linkage::new(&self.leg)
    }

    pub(crate) fn sweep(&self, stations: usize) -> Sweep {
        Sweep::new(&self.leg, &self.linkage(), stations)
    }
}

fn solid(draw: &mut Draw, centre: Point, size: f64) -> Shape {
    let count = 3 + one_of(draw, 5);
    let mut points: Vec<Point> = (0..count)
        .map(|i| {
            let angle = std::f64::consts::TAU * (i as f64 + draw.between(0.0, 0.8)) / count as f64;
            let radius = size * draw.between(0.15, 1.0);
            centre + Vector::new(angle.cos(), angle.sin()) * radius
        })
        .collect();
    if one_of(draw, 2) == 0 {
        points.reverse();
    }
    Shape::Solid { points }
}

fn surface(draw: &mut Draw, start: Point) -> Shape {
    let count = 2 + one_of(draw, 4);
    let mut angle = draw.between(-3.0, 3.0);
    let mut points = vec![start];
    for _ in 1..count {
        let last = points[points.len() - 1];
        points.push(last + Vector::new(angle.cos(), angle.sin()) * draw.between(0.05, 0.3));
        angle += draw.between(-1.2, 1.2);
    }
    Shape::Surface { points }
}

/// A leg whose well holds three obstacles.
pub(crate) fn random_leg(seed: u64) -> Drawn {
    let mut draw = Draw::from_state(seed);
    let d = &mut draw;
    let trunnion = Point::origin() + point(d, (-1.0, 1.0), (-1.0, 1.0));
    let hand = if one_of(d, 2) == 0 { 1.0 } else { -1.0 };
    let swing_up = hand * d.between(0.9, 1.9);
    let length = d.between(0.5, 0.9);
    let lean = d.between(-0.3, 0.3);
    let down = Vector::new(lean.sin(), -lean.cos());
    let side = Vector::new(-down.y, down.x);
    let at = |along: f64, off: f64| trunnion + down * along + side * off;
    let half = d.between(0.02, 0.05);
    let outline = vec![
        at(-0.05, -half),
        at(0.4 * length, -half),
        at(0.4 * length, 0.0),
        at(0.45 * length, 0.3 * half),
        at(0.45 * length, half),
        at(-0.05, 1.5 * half),
    ];
    let sliding_outline = vec![
        at(0.45 * length, -0.6 * half),
        at(length + 0.02, -0.8 * half),
        at(length + 0.02, 0.5 * half),
        at(0.45 * length, 0.6 * half),
    ];
    let shortening = match one_of(d, 3) {
        0 => Shortening::None,
        1 => Shortening::BeforeSwing {
            amount: d.between(0.03, 0.15),
        },
        _ => {
            let middle = d.between(0.2, 0.8);
            let row = |travel, amount| ShorteningRow { travel, amount };
            Shortening::WithTravel {
                table: vec![
                    row(0.0, 0.0),
                    row(middle, d.between(0.02, 0.1)),
                    row(1.0, d.between(0.02, 0.15)),
                ],
            }
        }
    };
    let leg_attach = at(d.between(0.4, 0.7) * length, d.between(-0.02, 0.02));
    let airframe_pivot = trunnion + point(d, (0.3 * hand, 0.6 * hand), (-0.12, 0.15));
    let link = |thickness| Link {
        thickness,
        mass: 0.0,
    };
    let brace = match one_of(d, 4) {
        0 => Brace::None,
        1 => Brace::Sliding(SlidingBrace {
            airframe_pivot,
            leg_attach,
            shortest: 0.01,
            longest: 3.0,
            thickness: d.between(0.02, 0.05),
            mass: 0.0,
        }),
        _ => {
            let line = leg_attach - airframe_pivot;
            let share = d.between(0.35, 0.65);
            let off = d.between(-0.12, 0.12);
            let through = one_of(d, 2) == 0;
            // over center is a matter of millimeters
            let off = if through { 0.15 * off } else { off };
            let normal = Vector::new(-line.y, line.x).normalize();
            Brace::Folding(FoldingBrace {
                airframe_pivot,
                knee: airframe_pivot + line * share + normal * (off + 0.003 * off.signum()),
                leg_attach,
                folds: if through {
                    Folds::ThroughCentre
                } else {
                    Folds::SameSide
                },
                unlocked_by: UnlockedBy::Actuator,
                knee_given: Default::default(),
                excursion_allowed: None,
                upper: link(d.between(0.02, 0.04)),
                lower: link(d.between(0.02, 0.04)),
            })
        }
    };
    let attach_to = match (&brace, one_of(d, 3)) {
        (Brace::Folding(_), 1) => AttachTo::UpperLink,
        (Brace::Folding(_), 2) => AttachTo::LowerLink,
        _ => AttachTo::Leg,
    };
    let attach = match (&brace, attach_to) {
        (Brace::Folding(b), AttachTo::UpperLink) => {
            b.airframe_pivot
                + (b.knee - b.airframe_pivot) * 0.5
                + point(d, (-0.03, 0.03), (0.0, 0.03))
        }
        (Brace::Folding(b), AttachTo::LowerLink) => {
            b.knee + (b.leg_attach - b.knee) * 0.4 + point(d, (-0.03, 0.03), (0.0, 0.03))
        }
        _ => at(d.between(0.15, 0.35) * length, d.between(-0.05, 0.05)),
    };
    let body_length = d.between(0.08, 0.16);
    let actuator = Actuator {
        mount: trunnion + point(d, (0.25 * hand, 0.5 * hand), (0.0, 0.3)),
        attach,
        attach_to,
        bore: 0.03,
        rod: d.between(0.01, 0.02),
        shortest: body_length + 0.01,
        longest: 3.0,
        body_diameter: d.between(0.03, 0.05),
        body_length,
        body_at: if one_of(d, 3) == 0 {
            BodyEnd::Moving
        } else {
            BodyEnd::Airframe
        },
        mass: 0.0,
        seal_friction: Some(0.0),
        ..Actuator::default()
    };
    let new = TireSize {
        diameter: d.between(0.3, 0.5),
        width: d.between(0.1, 0.2),
        shoulder_radius: d.between(0.0, 0.05),
    };
    let grown = TireSize {
        diameter: new.diameter * 1.04,
        width: new.width * 1.04,
        shoulder_radius: new.shoulder_radius * 1.04,
    };
    let view = if one_of(d, 2) == 0 {
        View::Side
    } else {
        View::Front
    };
    let wheel = Wheel {
        tire: Tire {
            size: String::new(),
            diameter: new.diameter,
            width: new.width,
            shoulder_radius: new.shoulder_radius,
            rim_diameter: 0.15,
            basis: Basis::Unstated,
            grown: Grown::ByRule,
        },
        former: None,
        mass: 8.0,
        lean: d.between(-0.1, 0.1),
    };
    let well = (0..3)
        .map(|i| {
            let angle = d.between(-3.0, 3.0);
            let place = trunnion + Vector::new(angle.cos(), angle.sin()) * d.between(0.15, 1.3);
            Obstacle {
                name: format!("Obstacle {i}"),
                shape: if one_of(d, 2) == 0 {
                    let size = d.between(0.02, 0.25);
                    solid(d, place, size)
                } else {
                    surface(d, place)
                },
                required_clearance: None,
                ignores: vec![],
            }
        })
        .collect();
    let leg = Leg {
        name: "Drawn leg".into(),
        view,
        trunnion,
        out_of_plane: OutOfPlane::default(),
        swing_up,
        body: LegBody {
            outline,
            mass: 9.0,
            centre: at(0.3, 0.0),
        },
        strut: Strut {
            axle: at(length, d.between(-0.1, 0.1)),
            axis_bottom: at(length, 0.0),
            axis_top: at(0.0, 0.0),
            sliding_outline,
            shortening,
        },
        wheel,
        brace,
        actuator,
        drive: Drive::default(),
        shared_drive: String::new(),
        drive_ratio: 1.0,
        air: LegAir::default(),
        fall: FallData::default(),
        springs: vec![],
        pins: Pins::default(),
        well,
        seen_stop: None,
    };
    Drawn {
        leg,
        sizes: TireSizes { new, grown },
    }
}
