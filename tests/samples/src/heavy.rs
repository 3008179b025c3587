//! The leg that the benchmarks solve: a main gear folding inboard into a well of 40 edges, with
//! all of its eight outlines (two of them the tire, new and grown).
use gearswing_gear::model::*;

fn points(list: &[(f64, f64)]) -> Vec<Point> {
    list.iter().map(|&(x, y)| Point::new(x, y)).collect()
}

fn obstacle(name: &str, shape: Shape) -> Obstacle {
    Obstacle {
        name: name.into(),
        shape,
        required_clearance: None,
        ignores: vec![],
    }
}

fn solid(name: &str, list: &[(f64, f64)]) -> Obstacle {
    obstacle(
        name,
        Shape::Solid {
            points: points(list),
        },
    )
}

fn surface(name: &str, list: &[(f64, f64)]) -> Obstacle {
    obstacle(
        name,
        Shape::Surface {
            points: points(list),
        },
    )
}

/// Six obstacles with 40 edges. `rib` moves the root rib outboard (m): 0 clears, 0.04 touches.
fn well(rib: f64) -> Vec<Obstacle> {
    let ring: Vec<(f64, f64)> = (0..8)
        .map(|i| {
            let angle = std::f64::consts::TAU * f64::from(i) / 8.0;
            (-0.95 + 0.015 * angle.cos(), 0.24 + 0.015 * angle.sin())
        })
        .collect();
    let x = -0.54 - rib;
    vec![
        solid(
            "Root rib",
            &[
                (x, -0.06),
                (x, 0.03),
                (x + 0.01, 0.03),
                (x + 0.01, 0.12),
                (x, 0.12),
                (x, 0.255),
                (x + 0.03, 0.255),
                (x + 0.03, -0.06),
            ],
        ),
        surface(
            "Upper skin",
            &[
                (-0.50, 0.265),
                (-0.65, 0.268),
                (-0.80, 0.27),
                (-0.95, 0.271),
                (-1.10, 0.27),
                (-1.25, 0.268),
                (-1.40, 0.264),
                (-1.60, 0.255),
                (-1.80, 0.24),
            ],
        ),
        solid(
            "Lower skin edge",
            &[
                (-1.92, -0.06),
                (-1.92, -0.055),
                (-1.64, -0.055),
                (-1.64, -0.06),
            ],
        ),
        solid("Brake hose", &ring),
        surface(
            "Outboard liner",
            &[
                (-1.70, 0.22),
                (-1.72, 0.15),
                (-1.73, 0.08),
                (-1.72, 0.01),
                (-1.70, -0.03),
            ],
        ),
        solid(
            "Spar cap",
            &[
                (-1.30, 0.22),
                (-1.22, 0.22),
                (-1.22, 0.225),
                (-1.25, 0.225),
                (-1.25, 0.25),
                (-1.27, 0.25),
                (-1.27, 0.225),
                (-1.30, 0.225),
            ],
        ),
    ]
}

/// A gear of the one leg; `rib` moves a rib of its well (m).
#[must_use]
pub fn gear(rib: f64) -> Gear {
    let leg = Leg {
        name: "Main".into(),
        view: View::Front,
        trunnion: Point::new(-1.52, 0.0),
        out_of_plane: OutOfPlane::default(),
        swing_up: 1.53,
        body: LegBody {
            outline: points(&[
                (-1.55, 0.04),
                (-1.50, 0.04),
                (-1.49, -0.18),
                (-1.47, -0.25),
                (-1.49, -0.32),
                (-1.49, -0.4),
                (-1.55, -0.4),
            ]),
            mass: 9.0,
            centre: Point::new(-1.515, -0.22),
        },
        strut: Strut {
            axle: Point::new(-1.405, -0.72),
            axis_bottom: Point::new(-1.52, -0.72),
            axis_top: Point::new(-1.52, 0.0),
            sliding_outline: points(&[(-1.54, -0.4), (-1.5, -0.4), (-1.5, -0.74), (-1.54, -0.74)]),
            shortening: Shortening::BeforeSwing { amount: 0.03 },
        },
        wheel: Wheel {
            tire: Tire {
                size: "7.00-6".into(),
                diameter: 0.47,
                width: 0.17,
                shoulder_radius: 0.05,
                rim_diameter: 0.1524,
                basis: Basis::Measured,
                grown: Grown::ByRule,
            },
            former: None,
            mass: 9.5,
            lean: 0.0,
        },
        brace: Brace::Folding(FoldingBrace {
            airframe_pivot: Point::new(-1.14, 0.01),
            knee: Point::new(-1.353, -0.139),
            leg_attach: Point::new(-1.52, -0.25),
            folds: Folds::ThroughCentre,
            unlocked_by: UnlockedBy::Actuator,
            knee_given: Default::default(),
            excursion_allowed: None,
            upper: Link {
                thickness: 0.03,
                mass: 0.9,
            },
            lower: Link {
                thickness: 0.03,
                mass: 0.6,
            },
        }),
        actuator: Actuator {
            mount: Point::new(-1.59, 0.125),
            attach: Point::new(-1.19, 0.125),
            attach_to: AttachTo::UpperLink,
            bore: 0.0254,
            rod: 0.0127,
            shortest: 0.35,
            longest: 0.60,
            body_diameter: 0.034,
            body_length: 0.3,
            body_at: BodyEnd::Airframe,
            mass: 1.6,
            seal_friction: Some(90.0),
            ..Actuator::default()
        },
        drive: Drive::default(),
        shared_drive: String::new(),
        drive_ratio: 1.0,
        air: LegAir::default(),
        fall: FallData::default(),
        springs: vec![],
        pins: Pins::default(),
        well: well(rib),
        seen_stop: None,
    };
    Gear {
        id: None,
        name: "Benchmark".into(),
        note: String::new(),
        legs: vec![leg],
        conditions: Conditions::default(),
        supply: Supply {
            return_pressure: 0.1e6,
            ..Supply::constant(6.9e6)
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
