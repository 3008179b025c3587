//! Relations within the supply and what drives each leg.
use super::FaultKind;
use super::visit::Visit;
use crate::field::Field;
use crate::model::{Leg, Source};

/// Pressures that the return pressure lies below.
const ABOVE_RETURN: [Field; 7] = [
    Field::AvailablePressure,
    Field::PressureSwitch,
    Field::AvailableDown,
    Field::ReliefDown,
    Field::PressureSwitchDown,
    Field::HandPumpPressure,
    Field::ReliefPressure,
];

pub(super) fn visit(v: &mut Visit<'_>) {
    for above in ABOVE_RETURN {
        v.below(Field::ReturnPressure.path(), above.path());
    }
    v.below(Field::Precharge.path(), Field::ChargedPressure.path());
    v.not_above(Field::ChargedPressure.path(), Field::ReliefPressure.path());
    v.below(
        Field::PumpIdleCurrent.path(),
        Field::PumpStallCurrent.path(),
    );
}

/// What drives one leg.
pub(super) fn drive(v: &mut Visit<'_>, leg: &Leg) {
    let hole = |field| v.path(field);
    for hole in [
        hole(Field::OrificeUp),
        hole(Field::OrificeDown),
        hole(Field::ReturnOrifice),
    ] {
        let bore = Field::Bore.of_leg(v.gear.driving_leg(hole.leg));
        v.below(hole, bore);
    }
    v.below(
        v.path(Field::MotorIdleCurrent),
        v.path(Field::LockedCurrent),
    );
    let by_motors = matches!(v.gear.supply.source, Source::ElectricActuators);
    if by_motors && leg.drive.electric.is_none() {
        v.part_fault(
            Field::FreeSpeed,
            format_args!("drive.electric"),
            FaultKind::Missing,
        );
    }
    v.below(v.path(Field::DownSwitch), v.path(Field::UpSwitch));
}
