//! Any stop seen on the jacks, for property tests.
use gearswing_gear::model::{Direction, HowFar, PumpSeen, SeenStop};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

use crate::arbitrary::{number, point};

pub(crate) fn seen_stop() -> impl Strategy<Value = SeenStop> {
    let how_far = prop_oneof![
        (option::of(number()), number())
            .prop_map(|(travel, within)| HowFar::Travel { travel, within }),
        (option::of(number()), number())
            .prop_map(|(angle, within)| HowFar::Angle { angle, within }),
        (option::of(number()), number())
            .prop_map(|(distance, within)| HowFar::ActuatorPins { distance, within }),
        (point(), option::of(number()), number()).prop_map(|(from, distance, within)| {
            HowFar::AxleFrom {
                from,
                distance,
                within,
            }
        }),
    ];
    (
        select(vec![Direction::Up, Direction::Down]),
        how_far,
        [option::of(number()), option::of(number())],
        [number(), number(), number(), number()],
        select(vec![
            PumpSeen::NotNoticed,
            PumpSeen::Running,
            PumpSeen::Stopped,
        ]),
    )
        .prop_map(
            |(selected, how_far, [pressure, voltage], within, pump)| SeenStop {
                selected,
                how_far,
                pressure,
                pressure_within: within[0],
                voltage,
                voltage_within: within[1],
                pump,
                drawing_within: within[2],
                forces_within: within[3],
            },
        )
}
