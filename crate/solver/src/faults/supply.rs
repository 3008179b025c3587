//! Faults of the supply and of what drives each leg.
use super::visit::Visit;
use super::{FaultKind, ranges};
use crate::model::{Accumulator, Gear, Leg, LineOrifice, MotorPump, Source, Supply};

pub(super) fn visit(v: &mut Visit, supply: &Supply) {
    let available = format_args!("supply.available_pressure_pa");
    let back = format_args!("supply.return_pressure_pa");
    let back_sound = v.number(back, supply.return_pressure, ranges::BACK_PRESSURE);
    let above_back = |v: &mut Visit, path: &str, limit: f64| {
        if back_sound {
            v.below(
                "supply.return_pressure_pa",
                supply.return_pressure,
                path,
                limit,
            );
        }
    };
    if v.number(available, supply.available_pressure, ranges::PRESSURE) {
        above_back(v, "supply.available_pressure_pa", supply.available_pressure);
    }
    if let Some(margin) = supply.margin_wanted {
        v.number(format_args!("supply.margin_wanted"), margin, ranges::MARGIN);
    }
    if let Some(set) = supply.pressure_switch
        && v.number(
            format_args!("supply.pressure_switch_pa"),
            set,
            ranges::PRESSURE,
        )
    {
        above_back(v, "supply.pressure_switch_pa", set);
    }
    for (path, value) in [
        ("supply.available_down_pa", supply.available_down),
        ("supply.relief_down_pa", supply.relief_down),
        (
            "supply.pressure_switch_down_pa",
            supply.pressure_switch_down,
        ),
    ] {
        if let Some(value) = value
            && v.number(format_args!("{path}"), value, ranges::PRESSURE)
        {
            above_back(v, path, value);
        }
    }
    battery(v, supply);
    if let Some(gas) = &supply.accumulator {
        accumulator(v, gas, &supply.source);
    }
    match &supply.source {
        Source::ConstantPressure | Source::ElectricActuators => {}
        Source::HandPump(hand) => {
            let at = "supply.source.hand_pump";
            v.number(
                format_args!("{at}.stroke_volume_m3"),
                hand.stroke_volume,
                ranges::STROKE_VOLUME,
            );
            v.number(
                format_args!("{at}.stroke_time_s"),
                hand.stroke_time,
                ranges::STROKE_TIME,
            );
            let path = format!("{at}.largest_pressure_pa");
            if v.number(
                format_args!("{path}"),
                hand.largest_pressure,
                ranges::PRESSURE,
            ) {
                above_back(v, &path, hand.largest_pressure);
            }
        }
        Source::MotorPump(pump) => {
            if let Some(relief) = motor_pump(v, pump) {
                above_back(v, "supply.source.motor_pump.relief_pressure_pa", relief);
            }
        }
    }
}

fn accumulator(v: &mut Visit, gas: &Accumulator, source: &Source) {
    let at = "supply.accumulator";
    v.number(
        format_args!("{at}.gas_volume_m3"),
        gas.gas_volume,
        ranges::GAS_VOLUME,
    );
    v.number(
        format_args!("{at}.exponent"),
        gas.exponent,
        ranges::EXPONENT,
    );
    let (low, high) = (format!("{at}.precharge_pa"), format!("{at}.charged_pa"));
    if v.number(format_args!("{low}"), gas.precharge, ranges::PRESSURE)
        & v.number(format_args!("{high}"), gas.charged, ranges::PRESSURE)
    {
        v.below(&low, gas.precharge, &high, gas.charged);
        if let Source::MotorPump(pump) = source
            && gas.charged > pump.relief_pressure
        {
            let relief = "supply.source.motor_pump.relief_pressure_pa";
            v.below(&high, gas.charged, relief, pump.relief_pressure);
        }
    }
}

/// The relief pressure, where it is sound.
fn motor_pump(v: &mut Visit, pump: &MotorPump) -> Option<f64> {
    let at = "supply.source.motor_pump";
    v.number(
        format_args!("{at}.free_flow_m3_s"),
        pump.free_flow,
        ranges::FLOW,
    );
    v.number(
        format_args!("{at}.rated_v"),
        pump.rated_voltage,
        ranges::VOLTAGE,
    );
    v.number(
        format_args!("{at}.stall_pressure_pa"),
        pump.stall_pressure,
        ranges::PRESSURE,
    );
    rising_current(
        v,
        &format!("{at}.idle_a"),
        pump.no_load_current,
        &format!("{at}.stall_a"),
        pump.stall_current,
    );
    v.number(
        format_args!("{at}.relief_pressure_pa"),
        pump.relief_pressure,
        ranges::PRESSURE,
    )
    .then_some(pump.relief_pressure)
}

fn rising_current(v: &mut Visit, idle_path: &str, idle: f64, most_path: &str, most: f64) {
    if v.number(format_args!("{idle_path}"), idle, ranges::IDLE_CURRENT)
        & v.number(format_args!("{most_path}"), most, ranges::CURRENT)
    {
        v.below(idle_path, idle, most_path, most);
    }
}

fn battery(v: &mut Visit, supply: &Supply) {
    let (at, b) = ("supply.battery", &supply.battery);
    v.number(format_args!("{at}.charge"), b.charge, ranges::TRAVEL);
    v.option(
        format_args!("{at}.open_circuit_v"),
        b.open_circuit_voltage,
        ranges::VOLTAGE,
    );
    v.number(
        format_args!("{at}.internal_ohm"),
        b.internal_resistance,
        ranges::RESISTANCE,
    );
    v.number(
        format_args!("{at}.wires_ohm"),
        b.wire_resistance,
        ranges::RESISTANCE,
    );
    v.option(
        format_args!("{at}.breaker_a"),
        b.breaker_rating,
        ranges::CURRENT,
    );
}

/// What drives one leg.
pub(super) fn drive(v: &mut Visit, leg: &Leg, gear: &Gear) {
    let drive = &leg.drive;
    let bore = leg.actuator.bore;
    orifice(v, "drive.orifice_up", drive.orifice_up.as_ref(), bore);
    orifice(v, "drive.orifice_down", drive.orifice_down.as_ref(), bore);
    if let Some(jack) = &drive.strut_jack {
        let at = "drive.jack";
        v.number(format_args!("{at}.area_m2"), jack.area, ranges::JACK_AREA);
        v.number(
            format_args!("{at}.shorten_pa"),
            jack.shorten_pressure,
            ranges::BACK_PRESSURE,
        );
        v.number(
            format_args!("{at}.lengthen_pa"),
            jack.lengthen_pressure,
            ranges::BACK_PRESSURE,
        );
    }
    if let Some(motor) = &drive.electric {
        let at = "drive.electric";
        v.number(
            format_args!("{at}.free_speed_m_s"),
            motor.free_speed,
            ranges::STROKE_SPEED,
        );
        v.number(
            format_args!("{at}.stall_force_n"),
            motor.stall_force,
            ranges::STALL_FORCE,
        );
        v.number(
            format_args!("{at}.motor_v"),
            motor.rated_voltage,
            ranges::VOLTAGE,
        );
        rising_current(
            v,
            &format!("{at}.idle_a"),
            motor.idle_current,
            &format!("{at}.locked_a"),
            motor.locked_current,
        );
        v.option(
            format_args!("{at}.back_drive_n"),
            motor.back_drive,
            ranges::FRICTION,
        );
    } else if matches!(gear.supply.source, Source::ElectricActuators) {
        v.fault(format_args!("drive.electric"), FaultKind::Missing);
    }
    for (key, value) in [
        ("shortened_at", drive.switches.shortened),
        ("up_at_travel", drive.switches.up),
        ("down_at_travel", drive.switches.down),
    ] {
        v.number(format_args!("drive.switches.{key}"), value, ranges::TRAVEL);
    }
    v.option(
        format_args!("drive.stage_valve_pa"),
        drive.stage_valve,
        ranges::PRESSURE,
    );
    v.option(
        format_args!("drive.start_travel"),
        drive.start_travel,
        ranges::TRAVEL,
    );
    if drive.switches.down >= drive.switches.up {
        v.below(
            "drive.switches.down_at_travel",
            drive.switches.down,
            "drive.switches.up_at_travel",
            drive.switches.up,
        );
    }
}

/// An orifice in the line of a cylinder of this bore.
fn orifice(v: &mut Visit, path: &str, orifice: Option<&LineOrifice>, bore: f64) {
    if let Some(orifice) = orifice {
        v.number(format_args!("{path}.hole_m"), orifice.hole, ranges::ORIFICE);
        v.below(
            &format!("{path}.hole_m"),
            orifice.hole,
            "actuator.bore_m",
            bore,
        );
        v.number(
            format_args!("{path}.discharge"),
            orifice.discharge,
            ranges::DISCHARGE,
        );
    }
}
