//! Open-circuit voltage of a lead-acid battery at rest against its charge.
use crate::model::{Battery, BatteryKind, BatterySize};

/// Voltages at 0, 25, 50, 75 and 100 % charge of six flooded cells after hours of rest (V). Source:
/// rule of thumb on lists.ettus.com.
const FLOODED: [f64; 5] = [11.6, 12.0, 12.2, 12.4, 12.6];

/// The same for glass mat cells (V), from memory; the figure at 0 % is not published with them and
/// is taken from the flooded ones.
const GLASS_MAT: [f64; 5] = [11.6, 12.0, 12.4, 12.7, 12.9];

/// Whether a battery is at a quarter of its charge or less, by its voltage at rest.
#[must_use]
pub fn is_run_down(battery: &Battery) -> bool {
    let quarter = Battery {
        charge: 0.25,
        open_circuit_voltage: None,
        ..*battery
    };
    open_circuit_voltage(battery) <= open_circuit_voltage(&quarter)
}

/// Open-circuit voltage (V): the measured one where it is given, else by charge on straight lines.
#[must_use]
pub fn open_circuit_voltage(battery: &Battery) -> f64 {
    if let Some(measured) = battery.open_circuit_voltage {
        return measured;
    }
    let table = match battery.kind {
        BatteryKind::Flooded => FLOODED,
        BatteryKind::GlassMat => GLASS_MAT,
    };
    let place = battery.charge.clamp(0.0, 1.0) * 4.0;
    let mut volts = table[0];
    for (row, pair) in (0_u8..).zip(table.windows(2)) {
        if let [low, high] = pair {
            let share = (place - f64::from(row)).clamp(0.0, 1.0);
            volts += share * (high - low);
        }
    }
    match battery.size {
        BatterySize::Volt12 => volts,
        BatterySize::Volt24 => 2.0 * volts,
    }
}
