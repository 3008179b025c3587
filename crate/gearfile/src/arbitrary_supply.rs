//! Any supply, and what drives a leg, for property tests.
use gearswing_gear::model::{
    Accumulator, Battery, BatteryKind, BatterySize, Drive, ElectricActuator, HandPump, LineOrifice,
    MotorPump, Source, StrutJack, Supply, Switches,
};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

use crate::arbitrary::number;

fn orifice() -> impl Strategy<Value = LineOrifice> {
    (number(), number()).prop_map(|(hole, discharge)| LineOrifice { hole, discharge })
}

pub(crate) fn drive() -> impl Strategy<Value = Drive> {
    let electric =
        (vec(number(), 5), option::of(number())).prop_map(|(n, back_drive)| ElectricActuator {
            free_speed: n[0],
            stall_force: n[1],
            rated_voltage: n[2],
            idle_current: n[3],
            locked_current: n[4],
            back_drive,
        });
    let jack = vec(number(), 3).prop_map(|n| StrutJack {
        area: n[0],
        shorten_pressure: n[1],
        lengthen_pressure: n[2],
    });
    let switches = prop_oneof![
        Just(Switches::default()),
        vec(number(), 3).prop_map(|n| Switches {
            shortened: n[0],
            up: n[1],
            down: n[2],
        }),
    ];
    (
        option::of(orifice()),
        option::of(orifice()),
        option::of(jack),
        option::of(electric),
        switches,
        [option::of(number()), option::of(number())],
    )
        .prop_map(
            |(
                orifice_up,
                orifice_down,
                strut_jack,
                electric,
                switches,
                [start_travel, stage_valve],
            )| Drive {
                orifice_up,
                orifice_down,
                strut_jack,
                electric,
                switches,
                stage_valve,
                start_travel,
            },
        )
}

pub(crate) fn supply() -> impl Strategy<Value = Supply> {
    let source = prop_oneof![
        Just(Source::ConstantPressure),
        Just(Source::ElectricActuators),
        vec(number(), 6).prop_map(|n| Source::MotorPump(MotorPump {
            free_flow: n[0],
            rated_voltage: n[1],
            stall_pressure: n[2],
            no_load_current: n[3],
            stall_current: n[4],
            relief_pressure: n[5],
        })),
        vec(number(), 3).prop_map(|n| Source::HandPump(HandPump {
            stroke_volume: n[0],
            stroke_time: n[1],
            largest_pressure: n[2],
        })),
    ];
    let battery = (
        select(vec![BatteryKind::Flooded, BatteryKind::GlassMat]),
        select(vec![BatterySize::Volt12, BatterySize::Volt24]),
        vec(number(), 3),
        [option::of(number()), option::of(number())],
    )
        .prop_map(
            |(kind, size, n, [open_circuit_voltage, breaker_rating])| Battery {
                kind,
                size,
                charge: n[0],
                open_circuit_voltage,
                internal_resistance: n[1],
                wire_resistance: n[2],
                breaker_rating,
            },
        );
    let accumulator = vec(number(), 4).prop_map(|n| Accumulator {
        gas_volume: n[0],
        precharge: n[1],
        charged: n[2],
        exponent: n[3],
    });
    (
        vec(number(), 2),
        option::of(prop_oneof![number(), Just(0.1)]),
        source,
        battery,
        option::of(accumulator),
        option::of(number()),
        [(); 3].map(|()| option::of(number())),
    )
        .prop_map(
            |(n, margin_wanted, source, battery, accumulator, pressure_switch, down)| Supply {
                available_pressure: n[0],
                return_pressure: n[1],
                margin_wanted,
                source,
                battery,
                accumulator,
                pressure_switch,
                available_down: down[0],
                relief_down: down[1],
                pressure_switch_down: down[2],
            },
        )
}
