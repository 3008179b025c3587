//! What the supply is made of, and what a new source starts with.
use crate::model::{BatteryKind, BatterySize, ElectricActuator, Gear, HandPump, MotorPump, Source};

keys! {
    battery_kind, BatteryKind: BatteryKind::Flooded => "flooded",
        BatteryKind::GlassMat => "glass_mat";
    battery_size, BatterySize: BatterySize::Volt12 => "12_v", BatterySize::Volt24 => "24_v";
}

/// Key of a source.
pub(super) fn chosen(source: &Source) -> &'static str {
    match source {
        Source::ConstantPressure => "constant_pressure",
        Source::MotorPump(_) => "motor_pump",
        Source::HandPump(_) => "hand_pump",
        Source::ElectricActuators => "electric_actuators",
    }
}

/// Takes another source. It starts from round figures of a light power pack, held to the available
/// pressure, for the person to change.
pub(super) fn choose(gear: &mut Gear, option: &str) -> Option<()> {
    let supply = &mut gear.supply;
    let available = supply.available_pressure;
    match option {
        "constant_pressure" => supply.source = Source::ConstantPressure,
        "motor_pump" => {
            supply.source = Source::MotorPump(MotorPump {
                free_flow: 4e-5,
                rated_voltage: 12.0,
                stall_pressure: 1.3 * available,
                no_load_current: 15.0,
                stall_current: 130.0,
                relief_pressure: available,
            });
        }
        "hand_pump" => {
            supply.source = Source::HandPump(HandPump {
                stroke_volume: 5e-6,
                stroke_time: 1.5,
                largest_pressure: available,
            });
        }
        "electric_actuators" => {
            supply.source = Source::ElectricActuators;
            for leg in &mut gear.legs {
                let bore = leg.actuator.bore;
                leg.drive.electric.get_or_insert(ElectricActuator {
                    free_speed: 0.03,
                    stall_force: available * std::f64::consts::FRAC_PI_4 * bore * bore,
                    rated_voltage: 12.0,
                    idle_current: 3.0,
                    locked_current: 40.0,
                    back_drive: None,
                });
            }
        }
        _ => return None,
    }
    Some(())
}
