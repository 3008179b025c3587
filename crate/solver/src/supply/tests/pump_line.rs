//! Fluid and energy out of a run by the line of its pump alone.
use super::super::{SupplyOptions, cycle, open_circuit_voltage};
use crate::model::{Gear, Source};
use crate::result::{Run, Sample};
use gearswing_samples::pack::gear;

#[test]
fn pump_and_battery_give_what_their_line_says() {
    let gear = gear();
    let found = cycle(&gear, &SupplyOptions::default()).unwrap();
    by_the_line(&gear, found.up.as_ref().unwrap());
    by_the_line(&gear, found.down.as_ref().unwrap());
}

/// Pumped and taken from the battery by the pressures of the samples alone: the textbook line of a
/// pump on a motor, Q = Q0·V/Vn − Q0·p/Ps with V = E − R·I and I = I0 + (Is − I0)·p/Ps.
fn by_the_line(gear: &Gear, run: &Run) {
    let Source::MotorPump(pump) = gear.supply.source else {
        panic!("no pump on a motor");
    };
    let battery = &gear.supply.battery;
    let (open, ohms) = (
        open_circuit_voltage(battery),
        battery.internal_resistance + battery.wire_resistance,
    );
    let at = |sample: &Sample| {
        let share = sample.pressure.unwrap() / pump.stall_pressure;
        let amps = pump.no_load_current + (pump.stall_current - pump.no_load_current) * share;
        let volts = open - ohms * amps;
        let flow = pump.free_flow * (volts / pump.rated_voltage - share);
        [flow, open * amps]
    };
    let mut sums = [0.0; 2];
    for pair in run.samples.windows(2) {
        let [a, b] = [at(&pair[0]), at(&pair[1])];
        let half = 0.5 * (pair[1].time - pair[0].time);
        sums = std::array::from_fn(|i| sums[i] + half * (a[i] + b[i]));
    }
    let [pumped, taken] = sums;
    assert!((run.fluid.pumped / pumped - 1.0).abs() < 1e-4, "{pumped}");
    assert!((run.energy.battery / taken - 1.0).abs() < 1e-4, "{taken}");
}
