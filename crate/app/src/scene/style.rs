//! Width, dashes and colors of the roles: line types after ISO 128-2, thick to thin as 2 : 1.

use super::Role;

/// Thick line (CSS px).
const THICK: f64 = 2.0;
/// Thin line, half of the thick one (CSS px).
const THIN: f64 = 1.0;

/// Line without gaps.
const CONTINUOUS: &[f64] = &[];
/// Dashed line; longer than it is wide by about 8 to 3.
const DASHED: &[f64] = &[8.0, 3.5];
/// Dotted line.
const DOTTED: &[f64] = &[1.5, 3.0];
/// Long dashes.
const LONG: &[f64] = &[14.0, 5.0];
/// Long-dash-dot: center lines and paths of points.
const CHAIN: &[f64] = &[15.0, 3.0, 1.5, 3.0];
/// Long-dash double-dot: the other extreme position and swept outlines.
const DOUBLE_CHAIN: &[f64] = &[15.0, 3.0, 1.5, 3.0, 1.5, 3.0];

/// How a role is painted. Colors are names of custom properties of the page's style.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Style {
    /// Line and text color.
    pub ink: &'static str,
    /// Color of what is filled.
    pub fill: &'static str,
    /// Line width (CSS px).
    pub width: f64,
    /// Dashes and gaps (CSS px).
    pub dash: &'static [f64],
    /// A filled shape gets its line as well.
    pub outlined: bool,
    /// Text weight.
    pub bold: bool,
}

/// A line style; filled shapes take the same color.
const fn line(ink: &'static str, width: f64, dash: &'static [f64]) -> Style {
    Style {
        ink,
        fill: ink,
        width,
        dash,
        outlined: false,
        bold: false,
    }
}

/// The style of a role.
#[must_use]
pub fn style(role: Role) -> Style {
    match role {
        Role::Grid => line("--grid", THIN, CONTINUOUS),
        Role::GridMajor => line("--grid-major", THIN, CONTINUOUS),
        Role::ScaleBar => line("--label", THIN, CONTINUOUS),
        Role::Structure => line("--structure", THICK, CONTINUOUS),
        Role::StructureHatch => line("--hatch", THIN, CONTINUOUS),
        Role::Ground => line("--structure", THIN, CONTINUOUS),
        Role::Moving => line("--moving", THICK, CONTINUOUS),
        Role::MovingFill => Style {
            fill: "--moving-fill",
            ..line("--moving", THIN, CONTINUOUS)
        },
        Role::Grown => line("--grown", THIN, CONTINUOUS),
        Role::Ghost => line("--ghost", THIN, DOUBLE_CHAIN),
        Role::Envelope => line("--envelope", THIN, DOUBLE_CHAIN),
        Role::CentreLine => line("--center", THIN, CHAIN),
        Role::PointPath => line("--center", THIN, CHAIN),
        Role::Joint => Style {
            fill: "--paper",
            outlined: true,
            ..line("--moving", THICK, CONTINUOUS)
        },
        Role::Spring => line("--moving", 1.5, CONTINUOUS),
        Role::Dimension => line("--dimension", THIN, CONTINUOUS),
        Role::DimensionText => Style {
            bold: true,
            ..line("--dimension", THIN, CONTINUOUS)
        },
        Role::Leader => line("--leader", THIN, CONTINUOUS),
        Role::Contact => Style {
            bold: true,
            ..line("--contact", THICK, CONTINUOUS)
        },
        Role::ContactHatch => line("--contact", THIN, CONTINUOUS),
        Role::Before => line("--leader", THIN, CONTINUOUS),
        Role::Governing => Style {
            bold: true,
            ..line("--governing", 1.5, CONTINUOUS)
        },
        Role::Load => Style {
            bold: true,
            ..line("--load", THICK, CONTINUOUS)
        },
        Role::Note => Style {
            fill: "--paper",
            outlined: true,
            ..line("--axis", THIN, CONTINUOUS)
        },
        Role::NoteHead => Style {
            bold: true,
            ..line("--label", THIN, CONTINUOUS)
        },
        Role::Label => line("--label", THIN, CONTINUOUS),
        Role::Axis => line("--axis", THIN, CONTINUOUS),
        Role::AxisText => line("--axis-text", THIN, CONTINUOUS),
        Role::Requirement => line("--requirement", THIN, LONG),
        Role::CurveNew => line("--curve-new", 1.75, CONTINUOUS),
        Role::CurveGrown => line("--curve-grown", 1.75, DASHED),
        Role::CurveParts => line("--curve-parts", 1.75, DOTTED),
        Role::CurveNeeded => line("--curve-needed", 1.75, CONTINUOUS),
        Role::OtherWay => line("--curve-needed", THIN, CONTINUOUS),
        Role::CurveAvailable => line("--curve-available", 1.5, LONG),
        Role::Curve => line("--curve", 1.75, CONTINUOUS),
        Role::CurveEnd => Style {
            bold: true,
            ..line("--contact", THICK, CONTINUOUS)
        },
        Role::Cursor => line("--cursor", THIN, CONTINUOUS),
        Role::Handle => Style {
            fill: "--paper",
            outlined: true,
            ..line("--handle", 1.5, CONTINUOUS)
        },
        Role::HandleSelected => Style {
            fill: "--handle-selected",
            outlined: true,
            ..line("--handle-selected", THICK, CONTINUOUS)
        },
        Role::Snap => line("--snap", THIN, DASHED),
        Role::Reach => line("--snap", THIN, CONTINUOUS),
        Role::Faded => line("--faded", THIN, CONTINUOUS),
        Role::FadedText => line("--quiet", THIN, CONTINUOUS),
    }
}
