//! Parts that may be left out: they come with their first number and go with it.
use super::{Field, Path};
use crate::model::{Accumulator, DEFAULT_EXPONENT, Gear, LineOrifice, SHARP_EDGE, StrutJack};

/// Whether this gear has room for the part.
pub(super) fn has_room(path: Path, gear: &Gear) -> bool {
    !path.field.is_of_leg() || path.leg < gear.legs.len()
}

/// Stores the first number of a part, or takes the part out; `None` = there is no such part.
pub(super) fn set(path: Path, gear: &mut Gear, value: Option<f64>) -> Option<()> {
    let available = gear.supply.available_pressure;
    if path.field == Field::GasVolume {
        let before = gear.supply.accumulator;
        gear.supply.accumulator = value.map(|gas_volume| Accumulator {
            gas_volume,
            ..before.unwrap_or(Accumulator {
                gas_volume,
                precharge: 0.5 * available,
                charged: available,
                exponent: DEFAULT_EXPONENT,
            })
        });
        return Some(());
    }
    let drive = &mut gear.legs.get_mut(path.leg)?.drive;
    let orifice = |before: Option<LineOrifice>| {
        value.map(|hole| LineOrifice {
            hole,
            discharge: before.map_or(SHARP_EDGE, |orifice| orifice.discharge),
        })
    };
    match path.field {
        Field::OrificeUp => drive.orifice_up = orifice(drive.orifice_up),
        Field::OrificeDown => drive.orifice_down = orifice(drive.orifice_down),
        Field::JackArea => {
            let before = drive.strut_jack;
            drive.strut_jack = value.map(|area| StrutJack {
                area,
                shorten_pressure: before.map_or(0.0, |jack| jack.shorten_pressure),
                lengthen_pressure: before.map_or(0.0, |jack| jack.lengthen_pressure),
            });
        }
        _ => return None,
    }
    Some(())
}
