//! An invented gear with every field that a gear file can have.
use gearswing_gear::model::{
    Accumulator, Acts, Actuator, AttachTo, Basis, Battery, BatteryKind, BatterySize, Body, BodyEnd,
    Brace, ClearanceRule, Conditions, Direction, Drive, ElectricActuator, EmergencyWay, FallData,
    Fluid, FoldingBrace, Folds, GasLaw, GasSpring, Gear, Grown, HandPump, HowFar, KneeGiven, Leg,
    LegAir, LegBody, LineOrifice, LinearSpring, Link, MotorPump, MovingPart, Obstacle, OutOfPlane,
    OwnLeg, Pin, Pins, Point, PointsFrom, PumpSeen, SeenStop, Shape, Shortening, ShorteningRow,
    SlidingBrace, Source, Spring, SpringEnd, SpringJoint, SpringKind, SpringSet, Strut, StrutJack,
    Supply, Switches, Tire, TorsionSpring, UnlockedBy, View, Wheel,
};

fn point(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

fn springs() -> Vec<Spring> {
    let end = |body, x, y| SpringEnd {
        body,
        point: point(x, y),
    };
    let linear = |set| {
        SpringKind::Linear(LinearSpring {
            first: end(Body::Airframe, 0.2, 0.1),
            second: end(Body::Leg, 0.0, -0.3),
            rate: 1500.0,
            set,
            acts: Acts::Pulls,
        })
    };
    let kinds = [
        linear(SpringSet::FreeLength { length: 0.3 }),
        linear(SpringSet::ForceAtDown { force: 120.0 }),
        SpringKind::Gas(GasSpring {
            first: end(Body::Airframe, 0.2, 0.1),
            second: end(Body::SlidingStrut, 0.0, -0.6),
            shortest: 0.1,
            longest: 0.9,
            force_longest: 200.0,
            force_shortest: 350.0,
            law: GasLaw::Polytropic { exponent: 1.2 },
        }),
        SpringKind::Torsion(TorsionSpring {
            joint: SpringJoint::Trunnion,
            rate: 12.0,
            moment_at_down: -4.0,
        }),
    ];
    kinds
        .into_iter()
        .enumerate()
        .map(|(at, kind)| Spring {
            name: format!("Spring {at}"),
            kind,
        })
        .collect()
}

fn pins() -> Pins {
    let pin = Pin {
        couple: Some(0.05),
        ..Pin::rubbing(0.006, 0.1)
    };
    Pins::alike(pin)
}

fn square() -> Vec<Point> {
    vec![
        point(0.0, 0.0),
        point(0.1, 0.0),
        point(0.1, 0.1),
        point(0.0, 0.1),
    ]
}

fn tire(size: &str, diameter: f64) -> Tire {
    Tire {
        size: size.to_owned(),
        diameter,
        width: 0.16,
        shoulder_radius: 0.05,
        rim_diameter: 0.1524,
        basis: Basis::Measured,
        grown: Grown::Given {
            diameter: diameter + 0.01,
            width: 0.17,
            basis: Basis::Maker,
        },
    }
}

fn drive() -> Drive {
    let orifice = |hole| LineOrifice {
        hole,
        discharge: 0.6,
    };
    Drive {
        orifice_up: Some(orifice(1.4e-3)),
        stage_valve: Some(2e6),
        orifice_down: Some(orifice(1e-3)),
        strut_jack: Some(StrutJack {
            area: 3e-4,
            shorten_pressure: 1e6,
            lengthen_pressure: 2e5,
        }),
        electric: Some(ElectricActuator {
            free_speed: 0.03,
            stall_force: 3e3,
            rated_voltage: 12.0,
            idle_current: 2.0,
            locked_current: 30.0,
            back_drive: Some(90.0),
        }),
        switches: Switches {
            shortened: 0.98,
            up: 0.99,
            down: 0.01,
        },
        start_travel: Some(0.5),
    }
}

/// A leg with a folding brace and every optional field filled.
#[must_use]
pub fn folding_leg(name: &str) -> Leg {
    Leg {
        name: name.to_owned(),
        view: View::Front,
        trunnion: point(0.0, 0.0),
        out_of_plane: OutOfPlane {
            trunnion_skew: Some(0.01),
            wheel_skew: Some(0.0),
            room_near: Some(0.3),
            room_far: Some(0.3),
            own_leg: OwnLeg::All,
        },
        swing_up: 1.4,
        body: LegBody {
            outline: square(),
            mass: 6.0,
            centre: point(0.0, -0.2),
        },
        strut: Strut {
            axle: point(0.0, -0.8),
            axis_bottom: point(0.0, -0.8),
            axis_top: point(0.0, 0.0),
            sliding_outline: square(),
            shortening: Shortening::WithTravel {
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
            },
        },
        wheel: Wheel {
            tire: tire("6.00-6", 0.44),
            former: None,
            mass: 9.0,
            lean: 0.01,
        },
        brace: Brace::Folding(FoldingBrace {
            airframe_pivot: point(0.5, 0.0),
            knee: point(0.25, -0.25),
            leg_attach: point(0.0, -0.5),
            folds: Folds::SameSide,
            unlocked_by: UnlockedBy::Separate,
            knee_given: KneeGiven::Measured,
            excursion_allowed: Some(0.003),
            upper: Link {
                thickness: 0.02,
                mass: 0.5,
            },
            lower: Link {
                thickness: 0.02,
                mass: 0.5,
            },
        }),
        actuator: Actuator {
            mount: point(0.3, 0.1),
            attach: point(0.05, -0.1),
            attach_to: AttachTo::UpperLink,
            bore: 0.03,
            rod: 0.012,
            shortest: 0.2,
            longest: 0.4,
            body_diameter: 0.04,
            body_length: 0.18,
            body_at: BodyEnd::Moving,
            mass: 1.2,
            seal_friction: Some(40.0),
            seal_break_out: Some(90.0),
            rod_end_pitch: Some(0.001),
        },
        drive: drive(),
        shared_drive: "Central cylinder".to_owned(),
        drive_ratio: 1.1,
        air: LegAir {
            wheel_drag_area: 0.02,
            leg_drag_area: 0.03,
        },
        fall: FallData {
            body_inertia: Some(0.21),
            return_orifice: Some(0.0012),
            discharge: Some(0.62),
            knee_play: Some(0.0003),
            pin_break_out: Some(1.6),
        },
        springs: springs(),
        pins: pins(),
        well: vec![
            Obstacle {
                name: "Bay rib".to_owned(),
                shape: Shape::Solid { points: square() },
                required_clearance: Some(0.012),
                ignores: vec![MovingPart::UpperLink],
            },
            Obstacle {
                name: "Upper skin".to_owned(),
                shape: Shape::Surface { points: square() },
                required_clearance: None,
                ignores: Vec::new(),
            },
        ],
        seen_stop: Some(seen_stop(HowFar::Travel {
            travel: Some(0.8),
            within: 0.02,
        })),
    }
}

/// A stop with every reading.
#[must_use]
pub fn seen_stop(how_far: HowFar) -> SeenStop {
    SeenStop {
        selected: Direction::Down,
        how_far,
        pressure: Some(5.1e6),
        pressure_within: 2e5,
        voltage: Some(11.1),
        voltage_within: 0.1,
        pump: PumpSeen::Running,
        drawing_within: 0.002,
        forces_within: 0.08,
    }
}

/// A leg with a telescoping brace whose strut shortens first.
#[must_use]
pub fn sliding_leg(name: &str) -> Leg {
    Leg {
        view: View::Side,
        brace: Brace::Sliding(SlidingBrace {
            airframe_pivot: point(0.5, 0.0),
            leg_attach: point(0.0, -0.5),
            shortest: 0.4,
            longest: 0.75,
            thickness: 0.03,
            mass: 1.0,
        }),
        strut: Strut {
            shortening: Shortening::BeforeSwing { amount: 0.05 },
            ..folding_leg(name).strut
        },
        seen_stop: Some(seen_stop(HowFar::ActuatorPins {
            distance: Some(0.4),
            within: 0.002,
        })),
        ..folding_leg(name)
    }
}

/// A gear with every field that a gear file can have.
#[must_use]
pub fn full_gear() -> Gear {
    Gear {
        id: None,
        name: "Meadow Four".to_owned(),
        note: "Measured on the hangar floor".to_owned(),
        legs: vec![folding_leg("Right main"), sliding_leg("Nose")],
        conditions: Conditions {
            gear_speed: Some(60.0),
            stall_speed: Some(31.0),
            climb_pitch: Some(0.17),
            turn_load_factor: Some(1.9),
            ..Conditions::default()
        },
        supply: Supply {
            return_pressure: 1.0e5,
            source: Source::MotorPump(MotorPump {
                free_flow: 5e-5,
                rated_voltage: 12.0,
                stall_pressure: 9e6,
                no_load_current: 12.0,
                stall_current: 140.0,
                relief_pressure: 7e6,
            }),
            battery: Battery {
                kind: BatteryKind::GlassMat,
                size: BatterySize::Volt24,
                charge: 0.9,
                open_circuit_voltage: Some(12.5),
                internal_resistance: 0.012,
                wire_resistance: 0.008,
                breaker_rating: Some(60.0),
            },
            margin_wanted: Some(0.15),
            pressure_switch: Some(6.5e6),
            available_down: Some(5e6),
            relief_down: Some(5.5e6),
            pressure_switch_down: Some(4.5e6),
            accumulator: Some(Accumulator {
                gas_volume: 5e-4,
                precharge: 3e6,
                charged: 6e6,
                exponent: 1.3,
            }),
            ..Supply::constant(6.894_757e6)
        },
        fluid: Fluid { density: 855.0 },
        clearance_rule: ClearanceRule {
            tire_new: Some(0.019),
            tire_grown: Some(0.0127),
            parts: Some(0.006),
        },
        emergency_way: Some(EmergencyWay::FreeFall),
        emergency_pump: Some(7e6),
        friction_times_required: Some(2.0),
        points_from: PointsFrom::Trunnion,
        kept: Vec::new(),
        notes: Vec::new(),
        before: None,
    }
}

/// Gears that together have every field, one for each source but the constant pressure.
#[must_use]
pub fn full_gears() -> [Gear; 3] {
    let with = |source| {
        let mut gear = full_gear();
        gear.supply.source = source;
        for (leg, how_far) in gear.legs.iter_mut().zip([
            HowFar::Angle {
                angle: Some(1.2),
                within: 0.02,
            },
            HowFar::AxleFrom {
                from: point(0.4, 0.1),
                distance: Some(0.6),
                within: 0.003,
            },
        ]) {
            leg.seen_stop = Some(seen_stop(how_far));
        }
        gear
    };
    [
        full_gear(),
        with(Source::HandPump(HandPump {
            stroke_volume: 5e-6,
            stroke_time: 1.5,
            largest_pressure: 6e6,
        })),
        with(Source::ElectricActuators),
    ]
}
