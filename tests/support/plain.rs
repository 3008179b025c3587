//! A plain leg without weight, brace or well: a textbook's mechanism is put on it.
use gearswing_gear::model::*;
use gearswing_solver::result::LegResult;
use gearswing_solver::{Options, solve_leg};

/// A leg in side view that pivots at the origin, weighs nothing and has no brace; its axle lies 1 m
/// to the right, its actuator stands under it.
#[must_use]
pub fn bare_leg() -> Leg {
    let point = Point::new;
    Leg {
        name: "Textbook".into(),
        view: View::Side,
        trunnion: point(0.0, 0.0),
        // brace and actuator pass ahead of the tire
        out_of_plane: OutOfPlane {
            own_leg: OwnLeg::Leg,
            ..OutOfPlane::default()
        },
        swing_up: 0.2,
        body: LegBody {
            outline: vec![],
            mass: 0.0,
            centre: point(0.5, 0.0),
        },
        strut: Strut {
            axle: point(1.0, 0.0),
            axis_bottom: point(1.0, 0.0),
            axis_top: point(0.0, 0.0),
            sliding_outline: vec![],
            shortening: Shortening::None,
        },
        wheel: Wheel {
            tire: Tire {
                size: String::new(),
                diameter: 0.4,
                width: 0.15,
                shoulder_radius: 0.03,
                rim_diameter: 0.15,
                basis: Basis::Unstated,
                grown: Grown::ByRule,
            },
            former: None,
            mass: 0.0,
            lean: 0.0,
        },
        brace: Brace::None,
        actuator: Actuator {
            mount: point(0.5, -1.0),
            attach: point(0.5, 0.0),
            attach_to: AttachTo::Leg,
            bore: 0.05,
            rod: 0.02,
            shortest: 1e-3,
            longest: 20.0,
            body_diameter: 0.06,
            body_length: 5e-4,
            body_at: BodyEnd::Airframe,
            mass: 0.0,
            seal_friction: Some(0.0),
            ..Actuator::default()
        },
        drive: Drive::default(),
        shared_drive: String::new(),
        drive_ratio: 1.0,
        air: LegAir::default(),
        fall: FallData::default(),
        springs: vec![],
        pins: Pins::default(),
        well: vec![],
        seen_stop: None,
    }
}

/// A gear with this leg only, level on jacks, with plenty of pressure.
#[must_use]
pub fn bare_gear(leg: Leg) -> Gear {
    Gear {
        id: None,
        name: "Textbook".into(),
        note: String::new(),
        legs: vec![leg],
        conditions: Conditions::default(),
        supply: Supply {
            margin_wanted: Some(0.0),
            ..Supply::constant(1e8)
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

/// Solves the first leg of a gear that must be sound, over `stations` equal parts of its swing.
///
/// # Panics
/// With the faults, when there are any.
#[must_use]
pub fn solve(gear: &Gear, stations: usize) -> LegResult {
    let options = Options {
        stations,
        ..Options::default()
    };
    solve_leg(gear, 0, &options).unwrap_or_else(|faults| panic!("{:#?}", faults.0))
}

/// Fails unless `got` is within `within` of `wanted`.
///
/// # Panics
/// When it is not, or is no number.
#[track_caller]
pub fn near(what: &str, got: f64, wanted: f64, within: f64) {
    assert!(
        (got - wanted).abs() <= within,
        "{what}: {got} instead of {wanted} ± {within}"
    );
}
