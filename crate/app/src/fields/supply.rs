//! Where a path leads within the supply and what drives a leg; parts that may be left out come with
//! their first number and go with it.
use gearswing_gear::model::{
    Accumulator, BatteryKind, BatterySize, Drive, ElectricActuator, Gear, HandPump, LineOrifice,
    MotorPump, Source, StrutJack, Supply,
};

use super::path::{Seg, Seg::At, Seg::Key, steps};
use super::slot::{PlaceMut, PlaceRef};

macro_rules! places {
    ($place:ident, $supply:ident, $drive:ident, $as_ref:ident, $($m:tt)?) => {
        /// Follows a path within the supply.
        pub(super) fn $supply<'g>(s: &'g $($m)? Supply, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            use $place::{Number, Optional};
            Some(match rest {
                [Key("available_pressure_pa")] => Number(&$($m)? s.available_pressure),
                [Key("return_pressure_pa")] => Number(&$($m)? s.return_pressure),
                [Key("margin_wanted")] => Optional(&$($m)? s.margin_wanted),
                [Key("pressure_switch_pa")] => Optional(&$($m)? s.pressure_switch),
                [Key("available_down_pa")] => Optional(&$($m)? s.available_down),
                [Key("relief_down_pa")] => Optional(&$($m)? s.relief_down),
                [Key("pressure_switch_down_pa")] => Optional(&$($m)? s.pressure_switch_down),
                [Key("source"), Key(kind), Key(key)] => match (&$($m)? s.source, *kind) {
                    (Source::MotorPump(p), "motor_pump") => Number(match *key {
                        "free_flow_m3_s" => &$($m)? p.free_flow,
                        "rated_v" => &$($m)? p.rated_voltage,
                        "stall_pressure_pa" => &$($m)? p.stall_pressure,
                        "idle_a" => &$($m)? p.no_load_current,
                        "stall_a" => &$($m)? p.stall_current,
                        "relief_pressure_pa" => &$($m)? p.relief_pressure,
                        _ => return None,
                    }),
                    (Source::HandPump(p), "hand_pump") => Number(match *key {
                        "stroke_volume_m3" => &$($m)? p.stroke_volume,
                        "stroke_time_s" => &$($m)? p.stroke_time,
                        "largest_pressure_pa" => &$($m)? p.largest_pressure,
                        _ => return None,
                    }),
                    _ => return None,
                },
                [Key("battery"), Key(key)] => {
                    let b = &$($m)? s.battery;
                    match *key {
                        "charge" => Number(&$($m)? b.charge),
                        "open_circuit_v" => Optional(&$($m)? b.open_circuit_voltage),
                        "internal_ohm" => Number(&$($m)? b.internal_resistance),
                        "wires_ohm" => Number(&$($m)? b.wire_resistance),
                        "breaker_a" => Optional(&$($m)? b.breaker_rating),
                        _ => return None,
                    }
                }
                [Key("accumulator"), Key(key)] => {
                    let a = s.accumulator.$as_ref()?;
                    Number(match *key {
                        "gas_volume_m3" => &$($m)? a.gas_volume,
                        "precharge_pa" => &$($m)? a.precharge,
                        "charged_pa" => &$($m)? a.charged,
                        "exponent" => &$($m)? a.exponent,
                        _ => return None,
                    })
                }
                _ => return None,
            })
        }

        /// Follows a path within what drives a leg.
        pub(super) fn $drive<'g>(d: &'g $($m)? Drive, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            use $place::{Number, Optional};
            Some(match rest {
                [Key("stage_valve_pa")] => Optional(&$($m)? d.stage_valve),
                [Key("start_travel")] => Optional(&$($m)? d.start_travel),
                [Key("orifice_up"), Key(key)] => {
                    let o = d.orifice_up.$as_ref()?;
                    Number(match *key {
                        "hole_m" => &$($m)? o.hole,
                        "discharge" => &$($m)? o.discharge,
                        _ => return None,
                    })
                }
                [Key("orifice_down"), Key(key)] => {
                    let o = d.orifice_down.$as_ref()?;
                    Number(match *key {
                        "hole_m" => &$($m)? o.hole,
                        "discharge" => &$($m)? o.discharge,
                        _ => return None,
                    })
                }
                [Key("jack"), Key(key)] => {
                    let jack = d.strut_jack.$as_ref()?;
                    Number(match *key {
                        "area_m2" => &$($m)? jack.area,
                        "shorten_pa" => &$($m)? jack.shorten_pressure,
                        "lengthen_pa" => &$($m)? jack.lengthen_pressure,
                        _ => return None,
                    })
                }
                [Key("electric"), Key(key)] => {
                    let motor = d.electric.$as_ref()?;
                    if *key == "back_drive_n" {
                        return Some(Optional(&$($m)? motor.back_drive));
                    }
                    Number(match *key {
                        "free_speed_m_s" => &$($m)? motor.free_speed,
                        "stall_force_n" => &$($m)? motor.stall_force,
                        "motor_v" => &$($m)? motor.rated_voltage,
                        "idle_a" => &$($m)? motor.idle_current,
                        "locked_a" => &$($m)? motor.locked_current,
                        _ => return None,
                    })
                }
                [Key("switches"), Key(key)] => {
                    let set = &$($m)? d.switches;
                    Number(match *key {
                        "shortened_at" => &$($m)? set.shortened,
                        "up_at_travel" => &$($m)? set.up,
                        "down_at_travel" => &$($m)? set.down,
                        _ => return None,
                    })
                }
                _ => return None,
            })
        }
    };
}

places!(PlaceRef, in_supply, in_drive, as_ref,);
places!(PlaceMut, in_supply_mut, in_drive_mut, as_mut, mut);

/// A part that may be left out; its first number brings it and takes it away.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Part {
    Accumulator,
    OrificeUp(usize),
    OrificeDown(usize),
    Jack(usize),
}

/// The part whose first number a path is.
fn part(path: &str) -> Option<Part> {
    Some(match steps(path)?.as_slice() {
        [Key("supply"), Key("accumulator"), Key("gas_volume_m3")] => Part::Accumulator,
        [Key("legs"), At(leg), Key("drive"), Key(part), Key(key)] => match (*part, *key) {
            ("orifice_up", "hole_m") => Part::OrificeUp(*leg),
            ("orifice_down", "hole_m") => Part::OrificeDown(*leg),
            ("jack", "area_m2") => Part::Jack(*leg),
            _ => return None,
        },
        _ => return None,
    })
}

/// Discharge coefficient that a new orifice starts with [1]: a sharp edge, as in the gear file.
const FIRST_DISCHARGE: f64 = 0.62;
/// Exponent that a new accumulator starts with [1], as in the gear file.
const FIRST_EXPONENT: f64 = 1.4;

/// The first number of a part that may be left out: outer `None` = not such a path.
pub(super) fn part_number(gear: &Gear, path: &str) -> Option<Option<f64>> {
    Some(match part(path)? {
        Part::Accumulator => gear.supply.accumulator.map(|a| a.gas_volume),
        Part::OrificeUp(leg) => gear.legs.get(leg)?.drive.orifice_up.map(|o| o.hole),
        Part::OrificeDown(leg) => gear.legs.get(leg)?.drive.orifice_down.map(|o| o.hole),
        Part::Jack(leg) => gear.legs.get(leg)?.drive.strut_jack.map(|jack| jack.area),
    })
}

/// Stores the first number of a part that may be left out; `None` = not such a path.
pub(super) fn set_part_number(gear: &mut Gear, path: &str, value: Option<f64>) -> Option<()> {
    let orifice = |before: Option<LineOrifice>| {
        value.map(|hole| LineOrifice {
            hole,
            discharge: before.map_or(FIRST_DISCHARGE, |orifice| orifice.discharge),
        })
    };
    let available = gear.supply.available_pressure;
    match part(path)? {
        Part::Accumulator => {
            let before = gear.supply.accumulator;
            gear.supply.accumulator = value.map(|gas_volume| Accumulator {
                gas_volume,
                ..before.unwrap_or(Accumulator {
                    gas_volume,
                    precharge: 0.5 * available,
                    charged: available,
                    exponent: FIRST_EXPONENT,
                })
            });
        }
        Part::OrificeUp(leg) => {
            let drive = &mut gear.legs.get_mut(leg)?.drive;
            drive.orifice_up = orifice(drive.orifice_up);
        }
        Part::OrificeDown(leg) => {
            let drive = &mut gear.legs.get_mut(leg)?.drive;
            drive.orifice_down = orifice(drive.orifice_down);
        }
        Part::Jack(leg) => {
            let drive = &mut gear.legs.get_mut(leg)?.drive;
            let before = drive.strut_jack;
            drive.strut_jack = value.map(|area| StrutJack {
                area,
                shorten_pressure: before.map_or(0.0, |jack| jack.shorten_pressure),
                lengthen_pressure: before.map_or(0.0, |jack| jack.lengthen_pressure),
            });
        }
    }
    Some(())
}

/// Key of the option taken within the supply.
pub(super) fn chosen(supply: &Supply, rest: &[Seg<'_>]) -> Option<&'static str> {
    Some(match rest {
        [Key("source")] => match supply.source {
            Source::ConstantPressure => "constant_pressure",
            Source::MotorPump(_) => "motor_pump",
            Source::HandPump(_) => "hand_pump",
            Source::ElectricActuators => "electric_actuators",
        },
        [Key("battery"), Key("kind")] => match supply.battery.kind {
            BatteryKind::Flooded => "flooded",
            BatteryKind::GlassMat => "glass_mat",
        },
        [Key("battery"), Key("size")] => match supply.battery.size {
            BatterySize::Volt12 => "12_v",
            BatterySize::Volt24 => "24_v",
        },
        _ => return None,
    })
}

/// Takes an option within the supply. A new source starts from round figures of a light power
/// pack, held to the available pressure, for the person to change.
pub(super) fn choose(gear: &mut Gear, rest: &[Seg<'_>], option: &str) -> Option<()> {
    let supply = &mut gear.supply;
    let available = supply.available_pressure;
    match (rest, option) {
        ([Key("source")], "constant_pressure") => supply.source = Source::ConstantPressure,
        ([Key("source")], "motor_pump") => {
            supply.source = Source::MotorPump(MotorPump {
                free_flow: 4e-5,
                rated_voltage: 12.0,
                stall_pressure: 1.3 * available,
                no_load_current: 15.0,
                stall_current: 130.0,
                relief_pressure: available,
            });
        }
        ([Key("source")], "hand_pump") => {
            supply.source = Source::HandPump(HandPump {
                stroke_volume: 5e-6,
                stroke_time: 1.5,
                largest_pressure: available,
            });
        }
        ([Key("source")], "electric_actuators") => {
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
        ([Key("battery"), Key("kind")], "flooded") => supply.battery.kind = BatteryKind::Flooded,
        ([Key("battery"), Key("kind")], "glass_mat") => {
            supply.battery.kind = BatteryKind::GlassMat;
        }
        ([Key("battery"), Key("size")], "12_v") => supply.battery.size = BatterySize::Volt12,
        ([Key("battery"), Key("size")], "24_v") => supply.battery.size = BatterySize::Volt24,
        _ => return None,
    }
    Some(())
}
