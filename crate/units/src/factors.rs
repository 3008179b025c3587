//! Conversion factors to SI, each exact by definition or computed here from exact ones.
//!
//! Definitions: the international yard and pound agreement of 1959 (1 yd = 0.9144 m,
//! 1 lb = 0.453 592 37 kg), the 3rd CGPM 1901 (g0 = 9.806 65 m/s²), the international nautical mile
//! of 1929 (1852 m); all are given in NIST SP 811 (2008), appendix B.8 (from memory of the table).

use std::f64::consts::PI;

/// An exact factor `num / den × π^pi`: SI units in one unit.
///
/// π is kept apart, so that degrees stay exact until the number is rounded once.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Factor {
    pub(crate) num: u128,
    pub(crate) den: u128,
    pub(crate) pi: i8,
}

/// Whole numbers up to here are exact in f64.
const EXACT_LIMIT: u128 = 1 << 53;

impl Factor {
    /// The factor 1, for SI units and plain numbers.
    pub const ONE: Self = Self::ratio(1, 1);

    pub(crate) const fn ratio(num: u128, den: u128) -> Self {
        Self { num, den, pi: 0 }.reduced()
    }

    const fn reduced(self) -> Self {
        let (mut a, mut b) = (self.num, self.den);
        while b != 0 {
            (a, b) = (b, a % b);
        }
        Self {
            num: self.num / a,
            den: self.den / a,
            pi: self.pi,
        }
    }

    pub(crate) const fn times(self, by: Self) -> Self {
        Self {
            num: self.num * by.num,
            den: self.den * by.den,
            pi: self.pi + by.pi,
        }
        .reduced()
    }

    pub(crate) const fn over(self, by: Self) -> Self {
        self.times(Self {
            num: by.den,
            den: by.num,
            pi: -by.pi,
        })
    }

    pub(crate) const fn squared(self) -> Self {
        self.times(self)
    }

    pub(crate) const fn cubed(self) -> Self {
        self.times(self).times(self)
    }

    /// The factor as f64: correctly rounded when π is not in it, else within 1 unit in the last place.
    #[must_use]
    pub const fn value(self) -> f64 {
        assert!(
            self.num <= EXACT_LIMIT && self.den <= EXACT_LIMIT,
            "factor not exact in f64"
        );
        let plain = self.num as f64 / self.den as f64;
        match self.pi {
            0 => plain,
            1 => self.num as f64 * PI / self.den as f64,
            -1 => self.num as f64 / (self.den as f64 * PI),
            _ => f64::NAN,
        }
    }
}

pub(crate) const THOUSAND: Factor = Factor::ratio(1000, 1);
pub(crate) const HUNDRED: Factor = Factor::ratio(100, 1);
pub(crate) const TEN: Factor = Factor::ratio(10, 1);
pub(crate) const MILLI: Factor = Factor::ratio(1, 1000);
pub(crate) const PERCENT: Factor = Factor::ratio(1, 100);

// Length [m].
pub(crate) const INCH: Factor = Factor::ratio(254, 10_000);
pub(crate) const FOOT: Factor = INCH.times(Factor::ratio(12, 1));
pub(crate) const MILLIMETRE: Factor = MILLI;
pub(crate) const CENTIMETRE: Factor = Factor::ratio(1, 100);
pub(crate) const MILE: Factor = FOOT.times(Factor::ratio(5280, 1));

// Angle [rad].
pub(crate) const DEGREE: Factor = Factor {
    num: 1,
    den: 180,
    pi: 1,
};
pub(crate) const ARC_MINUTE: Factor = Factor {
    num: 1,
    den: 180 * 60,
    pi: 1,
};
pub(crate) const ARC_SECOND: Factor = Factor {
    num: 1,
    den: 180 * 3600,
    pi: 1,
};
pub(crate) const TURN: Factor = Factor {
    num: 2,
    den: 1,
    pi: 1,
};

// Time [s].
pub(crate) const MINUTE: Factor = Factor::ratio(60, 1);
pub(crate) const HOUR: Factor = Factor::ratio(3600, 1);

// Mass [kg], force [N].
pub(crate) const POUND: Factor = Factor::ratio(45_359_237, 100_000_000);
pub(crate) const OUNCE: Factor = POUND.over(Factor::ratio(16, 1));
pub(crate) const GRAVITY: Factor = Factor::ratio(980_665, 100_000);
pub(crate) const POUND_FORCE: Factor = POUND.times(GRAVITY);
pub(crate) const OUNCE_FORCE: Factor = OUNCE.times(GRAVITY);
pub(crate) const SLUG: Factor = POUND_FORCE.over(FOOT);

// Pressure [Pa], volume [m³], speed [m/s].
pub(crate) const PSI: Factor = POUND_FORCE.over(INCH.squared());
pub(crate) const BAR: Factor = Factor::ratio(100_000, 1);
pub(crate) const LITRE: Factor = MILLI;
pub(crate) const US_GALLON: Factor = INCH.cubed().times(Factor::ratio(231, 1));
pub(crate) const KNOT: Factor = Factor::ratio(1852, 3600);
pub(crate) const MILE_PER_HOUR: Factor = MILE.over(HOUR);
pub(crate) const KM_PER_HOUR: Factor = THOUSAND.over(HOUR);

/// Meters in one inch, exact: international yard and pound agreement 1959.
pub const M_PER_INCH: f64 = INCH.value();
/// Meters in one foot, exact: 12 in.
pub const M_PER_FOOT: f64 = FOOT.value();
/// Radians in one degree: π / 180.
pub const RAD_PER_DEG: f64 = DEGREE.value();
/// Kilograms in one avoirdupois pound, exact: international yard and pound agreement 1959.
pub const KG_PER_LB: f64 = POUND.value();
/// Standard acceleration of gravity (m/s²), exact: 3rd CGPM 1901.
pub const STANDARD_GRAVITY: f64 = GRAVITY.value();
/// Newtons in one pound-force, exact: pound × standard gravity.
pub const N_PER_LBF: f64 = POUND_FORCE.value();
/// Newtons in one kilogram-force, exact: standard gravity.
pub const N_PER_KGF: f64 = GRAVITY.value();
/// Kilograms in one slug: the mass that one pound-force accelerates by 1 ft/s².
pub const KG_PER_SLUG: f64 = SLUG.value();
/// Pascals in one pound-force per square inch.
pub const PA_PER_PSI: f64 = PSI.value();
/// Pascals in one bar, exact: NIST SP 811 (2008) table 8.
pub const PA_PER_BAR: f64 = BAR.value();
/// Meters per second in one knot: 1852 m an hour, the international nautical mile of 1929.
pub const M_PER_S_PER_KNOT: f64 = KNOT.value();
/// Meters per second in one statute mile per hour: 5280 ft in 3600 s.
pub const M_PER_S_PER_MPH: f64 = MILE_PER_HOUR.value();
/// Meters per second in one kilometer per hour.
pub const M_PER_S_PER_KM_PER_H: f64 = KM_PER_HOUR.value();
/// Kilograms per cubic meter in one slug per cubic foot.
pub const KG_PER_M3_PER_SLUG_PER_FT3: f64 = SLUG.over(FOOT.cubed()).value();
/// Cubic meters in one US gallon, exact: 231 in³, NIST SP 811 (2008) app. B.
pub const M3_PER_US_GALLON: f64 = US_GALLON.value();
