//! All units by quantity. The first ones are those most used; messages list them in this order.

use super::Unit;
use crate::factors::*;
use crate::quantity::Quantity;

const NEWTON: Factor = Factor::ONE;
const CM2: Factor = CENTIMETRE.squared();
const CM3: Factor = CENTIMETRE.cubed();
const IN_LB: Factor = POUND_FORCE.times(INCH);
const FT_LB: Factor = POUND_FORCE.times(FOOT);

static LENGTH: [Unit; 5] = [
    Unit::new("in", &["\"", "inch", "inches", "''"], INCH),
    Unit::new("ft", &["'", "foot", "feet"], FOOT),
    Unit::new(
        "mm",
        &["millimetre", "millimetres", "millimeter", "millimeters"],
        MILLIMETRE,
    ),
    Unit::new(
        "cm",
        &["centimetre", "centimetres", "centimeter", "centimeters"],
        CENTIMETRE,
    ),
    Unit::new("m", &["metre", "metres", "meter", "meters"], Factor::ONE),
];
static ANGLE: [Unit; 4] = [
    Unit::new("°", &["deg", "degs", "degree", "degrees", "º"], DEGREE),
    Unit::new("′", &["arcmin"], ARC_MINUTE),
    Unit::new("″", &["arcsec", "''"], ARC_SECOND),
    Unit::new("rad", &["radian", "radians"], Factor::ONE),
];
static MASS: [Unit; 5] = [
    Unit::new("lb", &["lbs", "lbm", "pound", "pounds"], POUND),
    Unit::new("oz", &["ounce", "ounces"], OUNCE),
    Unit::new(
        "kg",
        &["kgs", "kilogram", "kilograms", "kilo", "kilos"],
        Factor::ONE,
    ),
    Unit::new("g", &["gram", "grams"], MILLI),
    Unit::new("slug", &["slugs"], SLUG),
];
static FORCE: [Unit; 6] = [
    Unit::new("lb", &["lbs", "lbf", "pound", "pounds"], POUND_FORCE),
    Unit::new("oz", &["ozf", "ounce", "ounces"], OUNCE_FORCE),
    Unit::new("N", &["newton", "newtons"], NEWTON),
    Unit::new("daN", &[], TEN),
    Unit::new("kN", &[], THOUSAND),
    Unit::new("kgf", &["kp", "kg·f"], GRAVITY),
];
static PRESSURE: [Unit; 6] = [
    Unit::new("psi", &["lb/in2", "lbf/in2", "lb/sq·in", "lbs/in2"], PSI),
    Unit::new("bar", &["bars"], BAR),
    Unit::cased("MPa", &["N/mm2"], THOUSAND.squared()),
    Unit::new("kPa", &[], THOUSAND),
    Unit::new("Pa", &["pascal", "pascals", "N/m2"], Factor::ONE),
    Unit::cased("mbar", &[], HUNDRED),
];
static AREA: [Unit; 5] = [
    Unit::new("in²", &["sq·in", "sqin"], INCH.squared()),
    Unit::new("ft²", &["sq·ft", "sqft"], FOOT.squared()),
    Unit::new("mm²", &["sq·mm"], MILLIMETRE.squared()),
    Unit::new("cm²", &["sq·cm"], CM2),
    Unit::new("m²", &["sq·m"], Factor::ONE),
];
static VOLUME: [Unit; 8] = [
    Unit::new("in³", &["cu·in", "cuin"], INCH.cubed()),
    Unit::new("ft³", &["cu·ft", "cuft"], FOOT.cubed()),
    Unit::new("US gal", &["gal", "gallon", "gallons", "usgal"], US_GALLON),
    Unit::new("cm³", &["cc", "ccm"], CM3),
    Unit::cased("mL", &["ml"], CM3),
    Unit::new("L", &["litre", "litres", "liter", "liters"], LITRE),
    Unit::new("mm³", &[], MILLIMETRE.cubed()),
    Unit::new("m³", &[], Factor::ONE),
];
const M_PER_S: Unit = Unit::new("m/s", &["m/sec"], Factor::ONE);
const FT_PER_S: Unit = Unit::new("ft/s", &["fps", "ft/sec"], FOOT);
static SPEED: [Unit; 6] = [
    Unit::new("kt", &["kts", "kn", "knot", "knots"], KNOT),
    Unit::new("mph", &["mi/h"], MILE_PER_HOUR),
    Unit::new("km/h", &["kmh", "kph", "km/hr"], KM_PER_HOUR),
    M_PER_S,
    FT_PER_S,
    Unit::new("ft/min", &["fpm"], FOOT.over(MINUTE)),
];
static STROKE_SPEED: [Unit; 7] = [
    Unit::new("in/s", &["ips", "in/sec"], INCH),
    Unit::new("mm/s", &["mm/sec"], MILLIMETRE),
    Unit::new("cm/s", &["cm/sec"], CENTIMETRE),
    M_PER_S,
    FT_PER_S,
    Unit::new("in/min", &["ipm"], INCH.over(MINUTE)),
    Unit::new("m/min", &[], Factor::ONE.over(MINUTE)),
];
static ANGULAR_SPEED: [Unit; 3] = [
    Unit::new("deg/s", &["°/s", "deg/sec", "°/sec"], DEGREE),
    Unit::new("rad/s", &["rad/sec"], Factor::ONE),
    Unit::new("rpm", &["rev/min", "r/min", "1/min"], TURN.over(MINUTE)),
];
static DENSITY: [Unit; 5] = [
    Unit::new("kg/m³", &[], Factor::ONE),
    Unit::new(
        "slug/ft³",
        &["slugs/ft3", "slug/cu·ft"],
        SLUG.over(FOOT.cubed()),
    ),
    Unit::new(
        "lb/ft³",
        &["lbm/ft3", "lbs/ft3", "lb/cu·ft"],
        POUND.over(FOOT.cubed()),
    ),
    Unit::new(
        "lb/in³",
        &["lbm/in3", "lbs/in3", "lb/cu·in"],
        POUND.over(INCH.cubed()),
    ),
    Unit::new("g/cm³", &["g/cc", "kg/L", "g/ml"], THOUSAND),
];
static RATIO: [Unit; 2] = [
    Unit::new("", &[], Factor::ONE),
    Unit::new("%", &["percent", "pct"], PERCENT),
];
static TRAVEL: [Unit; 1] = [Unit::new("%", &["percent", "pct"], PERCENT)];
static COUNT: [Unit; 1] = [Unit::new("", &[], Factor::ONE)];
static LOAD_FACTOR: [Unit; 1] = [Unit::new("g", &[], Factor::ONE)];
static MOMENT: [Unit; 7] = [
    Unit::new(
        "in-lb",
        &[
            "inlb", "inlbs", "lb·in", "in·lbf", "lbf·in", "in·lbs", "lbs·in",
        ],
        IN_LB,
    ),
    Unit::new(
        "ft-lb",
        &[
            "ftlb", "ftlbs", "lb·ft", "ft·lbf", "lbf·ft", "ft·lbs", "lbs·ft",
        ],
        FT_LB,
    ),
    Unit::new("N·m", &["Nm"], Factor::ONE),
    Unit::new("N·mm", &["Nmm"], MILLI),
    Unit::new("daN·m", &["daNm"], TEN),
    Unit::new("kN·m", &["kNm"], THOUSAND),
    Unit::new("kgf·m", &["kgfm", "kpm", "kp·m"], GRAVITY),
];
static TIME: [Unit; 4] = [
    Unit::new("s", &["sec", "secs", "second", "seconds"], Factor::ONE),
    Unit::cased("ms", &[], MILLI),
    Unit::new("min", &["mins", "minute", "minutes"], MINUTE),
    Unit::new("h", &["hr", "hrs", "hour", "hours"], HOUR),
];
static STIFFNESS: [Unit; 5] = [
    Unit::new("lb/in", &["lbf/in", "lbs/in"], POUND_FORCE.over(INCH)),
    Unit::new("lb/ft", &["lbf/ft", "lbs/ft"], POUND_FORCE.over(FOOT)),
    Unit::new("N/mm", &[], THOUSAND),
    Unit::new("N/m", &[], Factor::ONE),
    Unit::new("kN/m", &[], THOUSAND),
];
static TORSIONAL_STIFFNESS: [Unit; 6] = [
    Unit::new(
        "in-lb/deg",
        &["in·lb/°", "lb·in/deg", "lb·in/°", "inlb/deg", "in·lbf/deg"],
        IN_LB.over(DEGREE),
    ),
    Unit::new("in-lb/rad", &["lb·in/rad", "inlb/rad", "in·lbf/rad"], IN_LB),
    Unit::new(
        "ft-lb/deg",
        &["ft·lb/°", "lb·ft/deg", "lb·ft/°", "ftlb/deg", "ft·lbf/deg"],
        FT_LB.over(DEGREE),
    ),
    Unit::new("ft-lb/rad", &["lb·ft/rad", "ftlb/rad", "ft·lbf/rad"], FT_LB),
    Unit::new(
        "N·m/deg",
        &["N·m/°", "Nm/deg", "Nm/°"],
        Factor::ONE.over(DEGREE),
    ),
    Unit::new("N·m/rad", &["Nm/rad"], Factor::ONE),
];
static INERTIA: [Unit; 4] = [
    Unit::new(
        "lb·in²",
        &["lbm·in2", "lbs·in2", "in2·lb"],
        POUND.times(INCH.squared()),
    ),
    Unit::new(
        "lb·ft²",
        &["lbm·ft2", "lbs·ft2", "ft2·lb"],
        POUND.times(FOOT.squared()),
    ),
    Unit::new("slug·ft²", &["slugs·ft2"], SLUG.times(FOOT.squared())),
    Unit::new("kg·m²", &["kgm2"], Factor::ONE),
];
static FLOW: [Unit; 8] = [
    Unit::new(
        "gal/min",
        &["gpm", "us·gal/min", "usgal/min"],
        US_GALLON.over(MINUTE),
    ),
    Unit::new("in³/s", &["cu·in/s", "in3/sec"], INCH.cubed()),
    Unit::new("in³/min", &["cu·in/min", "cipm"], INCH.cubed().over(MINUTE)),
    Unit::new("L/min", &["lpm"], LITRE.over(MINUTE)),
    Unit::new("L/s", &["L/sec"], LITRE),
    Unit::new("cm³/s", &["cc/s", "cm3/sec"], CM3),
    Unit::cased("mL/s", &["ml/s"], CM3),
    Unit::new("m³/s", &["m3/sec"], Factor::ONE),
];
static VOLTAGE: [Unit; 2] = [
    Unit::new("V", &["volt", "volts"], Factor::ONE),
    Unit::cased("mV", &["millivolt", "millivolts"], MILLI),
];
static CURRENT: [Unit; 2] = [
    Unit::new("A", &["amp", "amps", "ampere", "amperes"], Factor::ONE),
    Unit::cased("mA", &["milliamp", "milliamps"], MILLI),
];
static RESISTANCE: [Unit; 2] = [
    Unit::new("Ω", &["ohm", "ohms"], Factor::ONE),
    Unit::cased("mΩ", &["mohm", "mohms", "milliohm"], MILLI),
];
static ENERGY: [Unit; 3] = [
    Unit::cased("Wh", &["watt·hour", "watt·hours"], HOUR),
    Unit::new("J", &["joule", "joules", "Ws"], Factor::ONE),
    Unit::cased("kJ", &[], THOUSAND),
];

/// The units that a quantity may be typed in.
pub(crate) fn units_of(quantity: Quantity) -> &'static [Unit] {
    match quantity {
        Quantity::Length | Quantity::Hole | Quantity::Pitch => &LENGTH,
        Quantity::Angle => &ANGLE,
        Quantity::Mass => &MASS,
        Quantity::Force => &FORCE,
        Quantity::Pressure => &PRESSURE,
        Quantity::Area | Quantity::DragArea => &AREA,
        Quantity::Volume => &VOLUME,
        Quantity::Speed => &SPEED,
        Quantity::StrokeSpeed => &STROKE_SPEED,
        Quantity::AngularSpeed => &ANGULAR_SPEED,
        Quantity::Density => &DENSITY,
        Quantity::Ratio => &RATIO,
        Quantity::Travel => &TRAVEL,
        Quantity::Count => &COUNT,
        Quantity::LoadFactor => &LOAD_FACTOR,
        Quantity::Moment => &MOMENT,
        Quantity::Time => &TIME,
        Quantity::Stiffness => &STIFFNESS,
        Quantity::TorsionalStiffness => &TORSIONAL_STIFFNESS,
        Quantity::Inertia => &INERTIA,
        Quantity::Flow => &FLOW,
        Quantity::Voltage => &VOLTAGE,
        Quantity::Current => &CURRENT,
        Quantity::Resistance => &RESISTANCE,
        Quantity::Energy => &ENERGY,
    }
}
