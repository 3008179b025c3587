//! Relations between the sizes of a tire.
use super::FaultKind;
use super::visit::Visit;
use crate::field::Field;

pub(super) fn visit(v: &mut Visit<'_>) {
    v.below(v.path(Field::TireRim), v.path(Field::TireDiameter));
    let diameter = v.number(v.path(Field::TireDiameter));
    let width = v.number(v.path(Field::TireWidth));
    if let (Some(shoulder), Some(diameter), Some(width)) =
        (v.number(v.path(Field::TireShoulder)), diameter, width)
    {
        let most = 0.5 * width.min(diameter);
        if shoulder > most {
            v.fault(
                v.path(Field::TireShoulder),
                FaultKind::OutOfRange {
                    value: shoulder,
                    min: 0.0,
                    max: most,
                },
            );
        }
    }
    // in service a tire is never smaller than new
    for (field, new) in [
        (Field::TireGrownDiameter, diameter),
        (Field::TireGrownWidth, width),
    ] {
        let path = v.path(field);
        if let (Some(value), Some(new), Some(range)) = (v.number(path), new, field.info().range())
            && value < new
        {
            v.fault(
                path,
                FaultKind::OutOfRange {
                    value,
                    min: new,
                    max: range.max,
                },
            );
        }
    }
}
