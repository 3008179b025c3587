//! Relations between the sizes of a tire.
use super::FaultKind;
use super::visit::Visit;
use crate::field::Field;

/// The sizes of one tire.
struct Sizes {
    diameter: Field,
    width: Field,
    shoulder: Field,
    rim: Field,
    grown_diameter: Field,
    grown_width: Field,
}

/// Of the tire now fitted, and of the one fitted before.
const TIRES: [Sizes; 2] = [
    Sizes {
        diameter: Field::TireDiameter,
        width: Field::TireWidth,
        shoulder: Field::TireShoulder,
        rim: Field::TireRim,
        grown_diameter: Field::TireGrownDiameter,
        grown_width: Field::TireGrownWidth,
    },
    Sizes {
        diameter: Field::FormerDiameter,
        width: Field::FormerWidth,
        shoulder: Field::FormerShoulder,
        rim: Field::FormerRim,
        grown_diameter: Field::FormerGrownDiameter,
        grown_width: Field::FormerGrownWidth,
    },
];

pub(super) fn visit(v: &mut Visit<'_>) {
    for tire in &TIRES {
        v.below(v.path(tire.rim), v.path(tire.diameter));
        let diameter = v.number(v.path(tire.diameter));
        let width = v.number(v.path(tire.width));
        if let (Some(shoulder), Some(diameter), Some(width)) =
            (v.number(v.path(tire.shoulder)), diameter, width)
        {
            let most = 0.5 * width.min(diameter);
            if shoulder > most {
                v.fault(
                    v.path(tire.shoulder),
                    FaultKind::OutOfRange {
                        value: shoulder,
                        min: 0.0,
                        max: most,
                    },
                );
            }
        }
        // in service a tire is never smaller than new
        for (field, new) in [(tire.grown_diameter, diameter), (tire.grown_width, width)] {
            let path = v.path(field);
            if let (Some(value), Some(new), Some(range)) =
                (v.number(path), new, field.info().range())
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
}
