//! A gear of three legs on a 12 V power pack, invented.
use super::leg as sample;
use gearswing_gear::model::*;

/// A leg whose strut shortens by a jack before the swing.
#[must_use]
pub fn leg(name: &str) -> Leg {
    let point = Point::new;
    let mut leg = sample::leg();
    leg.name = name.into();
    leg.swing_up = 1.53;
    leg.body.centre = point(0.005, -0.22);
    leg.strut.axle = point(0.115, -0.72);
    leg.strut.axis_bottom = point(0.0, -0.72);
    leg.wheel.mass = 9.5;
    if let Brace::Folding(brace) = &mut leg.brace {
        brace.airframe_pivot = point(0.38, 0.01);
        brace.knee = point(0.167, -0.139);
        brace.leg_attach = point(0.0, -0.25);
    }
    leg.actuator = Actuator {
        mount: point(-0.07, 0.125),
        attach: point(0.33, 0.125),
        bore: 0.0254,
        rod: 0.0127,
        shortest: 0.39,
        longest: 0.56,
        body_length: 0.3,
        seal_friction: Some(90.0),
        // they take no more to start than to run: the closed forms of these tests know one friction
        seal_break_out: Some(90.0),
        ..leg.actuator
    };
    leg.strut.shortening = Shortening::BeforeSwing { amount: 0.05 };
    leg.drive = Drive {
        orifice_up: Some(LineOrifice {
            hole: 1.4e-3,
            discharge: 0.62,
        }),
        orifice_down: Some(LineOrifice {
            hole: 0.9e-3,
            discharge: 0.62,
        }),
        strut_jack: Some(StrutJack {
            area: 3e-4,
            shorten_pressure: 1e6,
            lengthen_pressure: 2e5,
        }),
        ..Drive::default()
    };
    leg
}

/// Two mains and a lighter nose leg; the right main is the heavier.
#[must_use]
pub fn gear() -> Gear {
    let mut nose = leg("Nose");
    nose.wheel.mass = 4.0;
    nose.body.mass = 5.0;
    let mut right = leg("Right main");
    right.wheel.mass = 11.0;
    Gear {
        id: None,
        name: "Test gear".into(),
        note: String::new(),
        legs: vec![nose, leg("Left main"), right],
        conditions: Conditions::default(),
        supply: Supply {
            return_pressure: 1e5,
            source: Source::MotorPump(MotorPump {
                free_flow: 6e-5,
                rated_voltage: 12.0,
                stall_pressure: 7e6,
                no_load_current: 15.0,
                stall_current: 150.0,
                relief_pressure: 5e6,
            }),
            battery: Battery {
                wire_resistance: 0.01,
                breaker_rating: Some(60.0),
                ..Battery::default()
            },
            ..Supply::constant(7e6)
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

/// A liter of gas at 3 MPa, charged to 7 MPa, that nothing fills again.
#[must_use]
pub fn accumulator_alone() -> Supply {
    Supply {
        accumulator: Some(Accumulator {
            gas_volume: 1e-3,
            precharge: 3e6,
            charged: 7e6,
            exponent: 1.4,
        }),
        ..Supply::constant(7e6)
    }
}

/// A gear on electric actuators of one stall force at their rated voltage, on a battery of 12 V at rest
/// with these resistances within and in the wires.
#[must_use]
pub fn on_motors(mut gear: Gear, motor: [f64; 2], resistances: [f64; 2]) -> Gear {
    let [stall_force, rated_voltage] = motor;
    gear.supply.source = Source::ElectricActuators;
    let battery = &mut gear.supply.battery;
    [battery.internal_resistance, battery.wire_resistance] = resistances;
    battery.open_circuit_voltage = Some(12.0);
    for leg in &mut gear.legs {
        leg.drive.electric = Some(ElectricActuator {
            free_speed: 0.03,
            stall_force,
            rated_voltage,
            idle_current: 2.0,
            locked_current: 40.0,
            back_drive: None,
        });
    }
    gear
}

/// A spring at the trunnion that holds a leg up: down, the pump has to push it.
#[must_use]
pub fn holds_it_up() -> Spring {
    Spring {
        name: "holds it up".into(),
        kind: SpringKind::Torsion(TorsionSpring {
            joint: SpringJoint::Trunnion,
            rate: 0.0,
            moment_at_down: 170.0,
        }),
    }
}

/// A level skin, free below, that nothing but the wheel is checked against.
#[must_use]
pub fn skin_over_the_wheel(half: f64, y: f64) -> Obstacle {
    Obstacle {
        name: "skin".into(),
        shape: Shape::Surface {
            points: vec![Point::new(half, y), Point::new(-half, y)],
        },
        required_clearance: None,
        ignores: vec![
            MovingPart::LegBody,
            MovingPart::SlidingStrut,
            MovingPart::UpperLink,
            MovingPart::LowerLink,
            MovingPart::LinkArm,
            MovingPart::ActuatorBody,
            MovingPart::ActuatorRod,
        ],
    }
}
