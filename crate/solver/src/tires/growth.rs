//! Size of a tire as new and as grown in service.
use super::table::M_PER_INCH;
use crate::model::{Grown, Tire};

/// Grown section width over new section width (ratio): W_G = 1.04 W.
///
/// The formula is from memory: Tire and Rim Association Aircraft Year Book, bias tires. It reproduces
/// what is printed: fed with the new maxima of a data book's bias table it gives diameter and width
/// of the grown maxima in the radial table for 9 of 10 sizes to 0.03 in (second hand, both read in a
/// copy; the tenth is 0.08 in low in diameter). The printed grown sizes are of radials.
pub const GROWN_WIDTH_FACTOR: f64 = 1.04;

/// Constant and slope of the grown section height H_G = (1.115 − 0.074 AR) H (ratio), AR = H/W.
///
/// As [`GROWN_WIDTH_FACTOR`].
const GROWN_HEIGHT: (f64, f64) = (1.115, 0.074);

/// Outer dimensions of a tire.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TireSize {
    /// Overall diameter (m).
    pub diameter: f64,
    /// Section width (m).
    pub width: f64,
    /// Radius of the shoulder in section (m).
    pub shoulder_radius: f64,
}

/// Both sizes of a tire.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TireSizes {
    /// As fitted new.
    pub new: TireSize,
    /// Largest in service.
    pub grown: TireSize,
}

impl TireSizes {
    /// Both sizes of `tire`.
    #[must_use]
    pub fn of(tire: &Tire) -> Self {
        Self {
            new: new_size(tire),
            grown: grown_size(tire),
        }
    }
}

/// Size as fitted new.
#[must_use]
pub fn new_size(tire: &Tire) -> TireSize {
    TireSize {
        diameter: tire.diameter,
        width: tire.width,
        shoulder_radius: tire.shoulder_radius,
    }
}

/// Largest size in service: the given one if there is one, else by the growth rule
/// W_G = 1.04 W, D_G = D_rim + 2 (1.115 − 0.074 AR) H with H = (D − D_rim)/2 and AR = H/W.
///
/// The formula is from memory (see [`GROWN_WIDTH_FACTOR`] for what it reproduces). Where its height
/// factor would fall below 1 (AR above 1.55, no airplane tire) the new diameter is kept. The shoulder
/// keeps its radius: a larger tire with the same radius encloses the new one. By the rule a shoulder
/// would grow as the rest does, and that is a lower bound: of 10 printed grown shoulders 3 are up to
/// 1.5 in larger in diameter, squarer than the new ones, so no figure of a shoulder is worked out. The
/// radius is cut to half the width or diameter where a given size would not hold it.
#[must_use]
pub fn grown_size(tire: &Tire) -> TireSize {
    let (diameter, width) = match tire.grown {
        Grown::Given {
            diameter, width, ..
        } => (diameter, width),
        Grown::ByRule => (
            grown_diameter(tire.diameter, tire.width, tire.rim_diameter),
            GROWN_WIDTH_FACTOR * tire.width,
        ),
    };
    TireSize {
        diameter,
        width,
        shoulder_radius: tire.shoulder_radius.min(0.5 * width).min(0.5 * diameter),
    }
}

fn grown_diameter(diameter: f64, width: f64, rim: f64) -> f64 {
    let height = 0.5 * (diameter - rim);
    let factor = GROWN_HEIGHT.0 - GROWN_HEIGHT.1 * height / width;
    (rim + 2.0 * factor * height).max(diameter)
}

/// Lateral clearance C_W = 0.019 W_G + 0.23 in (m) that tire handbooks ask for beside a grown tire
/// of width W_G (m).
///
/// From memory and not confirmed (medium to low confidence): for information, no verdict rests
/// on it.
#[must_use]
pub fn lateral_allowance(grown_width: f64) -> f64 {
    0.019 * grown_width + 0.23 * M_PER_INCH
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::Basis;
    use crate::tires::find_size;

    fn tire(diameter_in: f64, width_in: f64, rim_in: f64) -> Tire {
        Tire {
            size: String::new(),
            diameter: diameter_in * M_PER_INCH,
            width: width_in * M_PER_INCH,
            shoulder_radius: 0.02,
            rim_diameter: rim_in * M_PER_INCH,
            basis: Basis::Unstated,
            grown: Grown::ByRule,
        }
    }

    #[test]
    fn a_given_size_wins() {
        let mut tire = find_size("6.00-6").unwrap().to_tire();
        tire.grown = Grown::Given {
            diameter: 0.448,
            width: 0.161,
            basis: Basis::Measured,
        };
        let sizes = TireSizes::of(&tire);
        assert_eq!(sizes.new.diameter, tire.diameter);
        assert_eq!((sizes.grown.diameter, sizes.grown.width), (0.448, 0.161));
    }

    #[test]
    fn never_smaller_than_new() {
        for (d, w, rim) in [(20.0, 2.0, 4.0), (9.0, 9.0, 4.0), (17.5, 6.3, 6.0)] {
            let sizes = TireSizes::of(&tire(d, w, rim));
            assert!(sizes.grown.diameter >= sizes.new.diameter);
            assert!(sizes.grown.width >= sizes.new.width);
        }
    }
}
