//! Random models for the tests: every kind of part, any finite number, any text.
use gearswing_gear::model::{
    Actuator, AttachTo, Basis, BodyEnd, Brace, ClearanceRule, Conditions, EmergencyWay, FallData,
    Fluid, FoldingBrace, Folds, Gear, Grown, Leg, LegAir, LegBody, Link, MovingPart, Obstacle,
    OutOfPlane, OwnLeg, Point, Shape, Shortening, ShorteningRow, SlidingBrace, Strut, Tire,
    UnlockedBy, View, Wheel,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

use crate::arbitrary_seen::seen_stop;
use crate::arbitrary_springs::{pins, spring};
use crate::arbitrary_supply::{drive, supply};

/// Any finite number, -0 and the smallest ones among them, and round ones as people type them.
pub(crate) fn number() -> impl Strategy<Value = f64> {
    use proptest::num::f64::{NEGATIVE, NORMAL, POSITIVE, SUBNORMAL, ZERO};
    prop_oneof![
        POSITIVE | NEGATIVE | NORMAL | SUBNORMAL | ZERO,
        (-10_000..10_000_i32).prop_map(|n| f64::from(n) / 1000.0),
    ]
}

pub(crate) fn point() -> impl Strategy<Value = Point> {
    (number(), number()).prop_map(|(x, y)| Point::new(x, y))
}

fn points() -> impl Strategy<Value = Vec<Point>> {
    vec(point(), 0..6)
}

pub(crate) fn text() -> impl Strategy<Value = String> {
    prop_oneof![any::<String>(), "[A-Za-z ]{0,12}".prop_map(String::from)]
}

fn basis() -> impl Strategy<Value = Basis> {
    select(vec![
        Basis::Measured,
        Basis::Maker,
        Basis::Table,
        Basis::Unstated,
    ])
}

fn tire() -> impl Strategy<Value = Tire> {
    let grown = prop_oneof![
        Just(Grown::ByRule),
        (number(), number(), basis()).prop_map(|(diameter, width, basis)| Grown::Given {
            diameter,
            width,
            basis
        }),
    ];
    (
        text(),
        [number(), number(), number(), number()],
        basis(),
        grown,
    )
        .prop_map(
            |(size, [diameter, width, shoulder_radius, rim_diameter], basis, grown)| Tire {
                size,
                diameter,
                width,
                shoulder_radius,
                rim_diameter,
                basis,
                grown,
            },
        )
}

fn out_of_plane() -> impl Strategy<Value = OutOfPlane> {
    let own_leg = select(vec![
        OwnLeg::ByView,
        OwnLeg::All,
        OwnLeg::Leg,
        OwnLeg::Brace,
        OwnLeg::None,
    ]);
    (vec(option::of(number()), 4), own_leg).prop_map(|(n, own_leg)| OutOfPlane {
        trunnion_skew: n[0],
        wheel_skew: n[1],
        room_near: n[2],
        room_far: n[3],
        own_leg,
    })
}

fn wheel() -> impl Strategy<Value = Wheel> {
    (tire(), option::of(tire()), number(), number()).prop_map(|(tire, former, mass, lean)| Wheel {
        tire,
        former,
        mass,
        lean,
    })
}

fn strut() -> impl Strategy<Value = Strut> {
    let rows = vec((number(), number()), 0..5).prop_map(|rows| Shortening::WithTravel {
        table: rows
            .into_iter()
            .map(|(travel, amount)| ShorteningRow { travel, amount })
            .collect(),
    });
    let shortening = prop_oneof![
        Just(Shortening::None),
        number().prop_map(|amount| Shortening::BeforeSwing { amount }),
        rows,
    ];
    ([point(), point(), point()], points(), shortening).prop_map(
        |([axle, axis_bottom, axis_top], sliding_outline, shortening)| Strut {
            axle,
            axis_bottom,
            axis_top,
            sliding_outline,
            shortening,
        },
    )
}

fn link() -> impl Strategy<Value = Link> {
    (number(), number()).prop_map(|(thickness, mass)| Link { thickness, mass })
}

fn brace() -> impl Strategy<Value = Brace> {
    let folding = (
        [point(), point(), point()],
        select(vec![Folds::ThroughCentre, Folds::SameSide]),
        select(vec![UnlockedBy::Actuator, UnlockedBy::Separate]),
        option::of(number()),
        link(),
        link(),
    )
        .prop_map(
            |(at, folds, unlocked_by, excursion_allowed, upper, lower)| {
                let [airframe_pivot, knee, leg_attach] = at;
                Brace::Folding(FoldingBrace {
                    airframe_pivot,
                    knee,
                    leg_attach,
                    folds,
                    unlocked_by,
                    excursion_allowed,
                    upper,
                    lower,
                })
            },
        );
    let sliding = ([point(), point()], [number(), number(), number(), number()]).prop_map(
        |([airframe_pivot, leg_attach], [shortest, longest, thickness, mass])| {
            Brace::Sliding(SlidingBrace {
                airframe_pivot,
                leg_attach,
                shortest,
                longest,
                thickness,
                mass,
            })
        },
    );
    prop_oneof![Just(Brace::None), folding, sliding]
}

fn actuator() -> impl Strategy<Value = Actuator> {
    (
        point(),
        point(),
        select(vec![
            AttachTo::Leg,
            AttachTo::UpperLink,
            AttachTo::LowerLink,
        ]),
        select(vec![BodyEnd::Airframe, BodyEnd::Moving]),
        vec(number(), 7),
        vec(option::of(number()), 2),
    )
        .prop_map(|(mount, attach, attach_to, body_at, n, o)| Actuator {
            mount,
            attach,
            attach_to,
            bore: n[0],
            rod: n[1],
            shortest: n[2],
            longest: n[3],
            body_diameter: n[4],
            body_length: n[5],
            body_at,
            mass: n[6],
            seal_friction: o[0],
            seal_break_out: o[1],
        })
}

fn obstacle() -> impl Strategy<Value = Obstacle> {
    let shape = prop_oneof![
        points().prop_map(|points| Shape::Solid { points }),
        points().prop_map(|points| Shape::Surface { points }),
    ];
    let part = select(vec![
        MovingPart::Wheel,
        MovingPart::LegBody,
        MovingPart::SlidingStrut,
        MovingPart::UpperLink,
        MovingPart::LowerLink,
        MovingPart::LinkArm,
        MovingPart::SlidingBrace,
        MovingPart::ActuatorBody,
        MovingPart::ActuatorRod,
    ]);
    (text(), shape, option::of(number()), vec(part, 0..3)).prop_map(
        |(name, shape, required_clearance, ignores)| Obstacle {
            name,
            shape,
            required_clearance,
            ignores,
        },
    )
}

fn fall() -> impl Strategy<Value = FallData> {
    let given = || option::of(number());
    (given(), given(), given(), given(), given()).prop_map(
        |(body_inertia, return_orifice, discharge, knee_play, pin_break_out)| FallData {
            body_inertia,
            return_orifice,
            discharge,
            knee_play,
            pin_break_out,
        },
    )
}

fn way_down() -> impl Strategy<Value = EmergencyWay> {
    select(vec![
        EmergencyWay::FreeFall,
        EmergencyWay::HandPump,
        EmergencyWay::StoredGas,
        EmergencyWay::HandCrank,
        EmergencyWay::NoneGiven,
    ])
}

fn leg() -> impl Strategy<Value = Leg> {
    let body = (points(), number(), point()).prop_map(|(outline, mass, centre)| LegBody {
        outline,
        mass,
        centre,
    });
    let air = (number(), number()).prop_map(|(wheel_drag_area, leg_drag_area)| LegAir {
        wheel_drag_area,
        leg_drag_area,
    });
    let front = (
        text(),
        select(vec![View::Side, View::Front]),
        point(),
        number(),
        out_of_plane(),
    );
    (
        front,
        body,
        strut(),
        wheel(),
        brace(),
        actuator(),
        (
            air,
            drive(),
            prop_oneof![Just(String::new()), text()],
            number(),
        ),
        (
            fall(),
            vec(obstacle(), 0..3),
            vec(spring(), 0..3),
            pins(),
            option::of(seen_stop()),
        ),
    )
        .prop_map(
            |(
                (name, view, trunnion, swing_up, out_of_plane),
                body,
                strut,
                wheel,
                brace,
                actuator,
                (air, drive, shared_drive, drive_ratio),
                (fall, well, springs, pins, seen_stop),
            )| {
                Leg {
                    name,
                    view,
                    trunnion,
                    out_of_plane,
                    swing_up,
                    body,
                    strut,
                    wheel,
                    brace,
                    actuator,
                    drive,
                    shared_drive,
                    drive_ratio,
                    air,
                    fall,
                    springs,
                    pins,
                    well,
                    seen_stop,
                }
            },
        )
}

/// Any gear that a file can hold, sensible or not.
pub(crate) fn gear() -> impl Strategy<Value = Gear> {
    let rule = [
        option::of(number()),
        option::of(number()),
        option::of(number()),
    ];
    let flight = vec(option::of(number()), 4);
    (
        text(),
        text(),
        vec(leg(), 0..4),
        vec(number(), 7),
        supply(),
        rule,
        flight,
        (
            option::of(way_down()),
            option::of(number()),
            option::of(number()),
        ),
    )
        .prop_map(
            |(name, note, legs, n, supply, [tire_new, tire_grown, parts], flight, emergency)| {
                Gear {
                    name,
                    note,
                    legs,
                    conditions: Conditions {
                        load_factor: n[0],
                        pitch: n[1],
                        bank: n[2],
                        airspeed: n[3],
                        sideslip: n[4],
                        air_density: n[5],
                        gear_speed: flight[0],
                        stall_speed: flight[1],
                        climb_pitch: flight[2],
                        turn_load_factor: flight[3],
                    },
                    supply,
                    fluid: Fluid { density: n[6] },
                    clearance_rule: ClearanceRule {
                        tire_new,
                        tire_grown,
                        parts,
                    },
                    emergency_way: emergency.0,
                    emergency_pump: emergency.1,
                    friction_times_required: emergency.2,
                }
            },
        )
}
