//! Legs for the unit tests: one in front view, over-center folding brace, actuator on the upper link.
use gearswing_gear::model::*;

/// An over-center leg with its actuator on the upper link.
#[must_use]
pub fn leg() -> Leg {
    let point = Point::new;
    Leg {
        name: "Test leg".into(),
        view: View::Front,
        trunnion: point(0.0, 0.0),
        // brace and actuator pass ahead of the tire
        out_of_plane: OutOfPlane {
            own_leg: OwnLeg::Leg,
            ..OutOfPlane::default()
        },
        swing_up: 1.45,
        body: LegBody {
            outline: vec![],
            mass: 9.0,
            centre: point(0.02, -0.3),
        },
        strut: Strut {
            axle: point(-0.05, -0.72),
            axis_bottom: point(0.0, -0.7),
            axis_top: point(0.0, 0.0),
            sliding_outline: vec![],
            shortening: Shortening::None,
        },
        wheel: Wheel {
            tire: Tire {
                size: String::new(),
                diameter: 0.45,
                width: 0.16,
                shoulder_radius: 0.03,
                rim_diameter: 0.15,
                basis: Basis::Unstated,
                grown: Grown::ByRule,
            },
            former: None,
            mass: 8.0,
            lean: 0.0,
        },
        brace: Brace::Folding(FoldingBrace {
            airframe_pivot: point(0.46, 0.02),
            knee: point(0.2335, -0.1875),
            leg_attach: point(0.0, -0.40),
            folds: Folds::ThroughCentre,
            unlocked_by: UnlockedBy::Actuator,
            knee_given: Default::default(),
            excursion_allowed: None,
            upper: Link {
                thickness: 0.03,
                mass: 0.8,
            },
            lower: Link {
                thickness: 0.03,
                mass: 0.7,
            },
        }),
        actuator: Actuator {
            mount: point(0.12, 0.10),
            attach: point(0.30, -0.11),
            attach_to: AttachTo::UpperLink,
            bore: 0.03,
            rod: 0.014,
            shortest: 0.1,
            longest: 0.9,
            body_diameter: 0.04,
            body_length: 0.08,
            body_at: BodyEnd::Airframe,
            mass: 1.0,
            seal_friction: Some(30.0),
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

/// This pin at the trunnion and at all joints of a brace; those of the actuator turn freely.
#[must_use]
pub fn pins_of_leg(pin: Pin) -> Pins {
    Pins {
        trunnion: pin,
        brace_pivot: pin,
        knee: pin,
        leg_attach: pin,
        ..Pins::default()
    }
}

/// Legs of every kind of brace, actuator attach and shortening.
#[must_use]
pub fn kinds() -> Vec<Leg> {
    let mut legs = Vec::new();
    for view in [View::Front, View::Side] {
        for (attach_to, attach) in [
            (AttachTo::Leg, Point::new(0.05, -0.2)),
            (AttachTo::UpperLink, Point::new(0.30, -0.11)),
            (AttachTo::LowerLink, Point::new(0.12, -0.25)),
        ] {
            let mut leg = self::leg();
            leg.view = view;
            leg.actuator.attach_to = attach_to;
            leg.actuator.attach = attach;
            leg.air = LegAir {
                wheel_drag_area: 0.03,
                leg_drag_area: 0.02,
            };
            legs.push(leg.clone());
            leg.strut.shortening = Shortening::WithTravel {
                table: vec![
                    ShorteningRow {
                        travel: 0.0,
                        amount: 0.0,
                    },
                    ShorteningRow {
                        travel: 1.0,
                        amount: 0.05,
                    },
                ],
            };
            legs.push(leg.clone());
            leg.actuator.attach_to = AttachTo::Leg;
            leg.brace = Brace::None;
            legs.push(leg.clone());
            leg.brace = Brace::Sliding(SlidingBrace {
                airframe_pivot: Point::new(0.46, 0.02),
                leg_attach: Point::new(0.0, -0.4),
                shortest: 0.1,
                longest: 0.9,
                thickness: 0.03,
                mass: 1.3,
            });
            legs.push(leg);
        }
    }
    legs
}
