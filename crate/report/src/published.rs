//! Figures and ways that maintenance manuals print, told by kind of airplane, beside the user's own.
//!
//! They were read page by page in public copies of the manuals; none is a rule for another type.

/// Through-center travel of the knee, gear down and stops touching, by type of brace.
///
/// The least and the most of seven maintenance and service manuals (two light singles, three light
/// twins, a turboprop twin, and a single's nose gear): knee pin past the straight line.
pub const OVER_CENTER_PRINTED: &str = "Maintenance manuals of light airplanes print 0.062 to 0.281 in (1.6 to 7.1 mm), by type of brace: main side brace 0.062 to 0.125 in (singles) or 0.145 to 0.170 in (a twin), nose drag brace 0.063 to 0.250 in, nose idler link 0.220 to 0.280 in, main drag brace of a turboprop twin 0.219 to 0.281 in. Your maker's figure wins.";

/// Why a length matters so much there: two links of 8 in, 1/8 in over center, are together shorter
/// than straight by 2 (8 − √(64 − 1/64)) = 0.002 in.
pub const OVER_CENTER_LENGTH: &str =
    "A brace 0.002 in (0.05 mm) too long can take a whole 1/8 in over center (links of 8 in).";

/// How manuals prove that a leg is locked: force at the knee (light twin), torque at the knee (light
/// singles), push on the wheel (twin with drag braces).
pub const LOCK_PROOFS: &str = "Prove the lock as your maker's manual does. Three ways are printed, each with its own type's figures: a push-pull scale on the knee (45 to 65 lb on a light twin); a torque wrench on the knee, read when a 0.005 to 0.010 in feeler gauge comes free (100 to 325 in-lb on light singles, by leg); during extension a push on the wheel sideways, from outside its arc, as the brace nears its lock: the actuator must still drive it home.";

/// A leg that is moved by hand pumps fluid (caution of a light twin's manual).
pub const LOCK_BY_HAND: &str = "A leg that is moved by hand with the emergency (free-fall) valve shut can build up enough pressure to unlock the others, which then fold when the airplane comes off the jacks. Opening that valve lets down what pressure holds up: keep clear, and do it as the maker's manual says.";

/// Clearances printed in maintenance manuals between a retracted wheel and its closed doors, and what
/// builders say of wheel fairings.
pub const TIRE_CLEARANCES_PRINTED: &str = "Least clearance from the tire as fitted new to any structure, from the maker's data where it gives one. Manuals print 10 to 20 mm (0.4 to 0.8 in) from a retracted wheel to its closed doors (gliders, a light twin); builders found wheel fairings rubbing at 1/2 in and ask for 3/4 in. None of it is a rule.";

/// Clearances printed in maintenance manuals between other parts.
pub const PART_CLEARANCES_PRINTED: &str = "Least clearance from leg, brace and actuator to any structure, from the maker's data where it gives one. Manuals of light twins print 1/16 in (1.6 mm) from brace knee to skin with the gear up, and 1/4 in (6 mm) from leg to door on the way. None of it is a rule.";

/// Rod ends of an actuator (a military handbook, manuals of a helicopter and a light twin: witness
/// hole; a rod-end maker's guide: 1.5 diameters and the jam nut).
pub const RETRACTED_LENGTH: &str = "Pin to pin with the rod fully in, as its rod end is adjusted. After each turn of a rod end try a 0.020 in wire in its witness hole: it must not pass. Where there is no hole, the maker's greatest extension holds.";

/// The same with the rod out, where the thread is used most.
pub const EXTENDED_LENGTH: &str = "Pin to pin with the rod fully out, as its rod end is adjusted. Of its thread at least 1.5 diameters must stay screwed in (1/4-28: 3/8 in, 10 1/2 turns), a 0.020 in wire must not pass the witness hole, and the jam nut must be tight.";

/// What the name of a tire does not tell.
pub const TIRE_SIZE: &str = "As molded on the side wall, for instance 6.00-6. It is not used to work anything out: tires of one name differ between makes, and a turf tire 15x6.00-6 is 0.8 to 2 in smaller than the airplane tire 15x6.0-6. Measure the one that you have.";

/// What the growth rule is worth.
pub const GROWTH_RULE: &str = "By a growth rule: the formula is from memory, and it reproduces 9 of 10 grown sizes printed in a data book (of radial tires) to 0.03 in (0.8 mm). Newer tires can have squarer shoulders than it tells. The maker's figure or a measurement is better.";

/// How to measure a tire, and why not by the height of its axle.
pub const TIRE_DIAMETER: &str = "At full pressure, wheel off the ground: wrap a tape round the tread and divide by 3.1416. The height of the axle does not tell it: on the ground, at its rated load, a tire sinks by about 0.35 of its height over the rim flange (6.00-6 and other low-pressure tires) or 0.32 (slim ones), by a data book.";

#[cfg(test)]
mod tests {
    /// Rows of the bias table of a tire maker's "Aircraft Tire Engineering Data", as typed into a public CSV
    /// file and read there, second hand (rows 1.1 of our source page on tires and locks): most and least
    /// diameter, static loaded radius at rated load, outside diameter of the rim flange (in).
    const LOW_PRESSURE: &[[f64; 4]] = &[
        [17.50, 16.85, 6.9, 7.50],    // 17.5x6.25-6, the 6.00-6
        [15.20, 14.55, 6.1, 7.50],    // 15x6.0-6
        [25.65, 24.70, 10.19, 11.62], // 8.50-10
        [22.00, 21.30, 8.7, 9.75],    // 22x8.0-8
        [22.00, 21.35, 9.0, 11.25],   // 22x8.0-10
        [22.00, 21.30, 9.1, 11.62],   // 22x6.75-10, 22x7.75-10
    ];
    const SLIM: &[[f64; 4]] = &[
        [13.25, 12.70, 5.3, 5.50],   // 13x5.0-4
        [14.50, 14.00, 6.1, 7.75],   // 14.5x5.5-6
        [16.00, 15.50, 6.9, 9.62],   // 16x4.4
        [17.50, 16.95, 7.4, 9.75],   // 17.5x5.75-8
        [17.90, 17.40, 7.9, 11.62],  // 18x4.4
        [17.90, 17.30, 7.5, 9.75],   // 18x5.5
        [19.50, 18.90, 8.1, 9.62],   // 19.5x6.75-8
        [21.25, 20.60, 9.0, 12.0],   // 21x7.25-10
        [22.00, 21.40, 9.6, 13.75],  // 22x5.75-12
        [22.10, 21.35, 9.2, 11.62],  // 22x6.5-10
        [24.15, 23.30, 10.0, 11.81], // 24x7.7
    ];

    /// By how much of its height over the flange a tire sinks (ratio).
    fn share(&[most, least, loaded, flange]: &[f64; 4]) -> f64 {
        let mean = 0.5 * (most + least);
        (0.5 * mean - loaded) / (0.5 * (mean - flange))
    }

    #[test]
    fn the_shares_that_are_told_are_those_printed() {
        for (rows, told, within) in [(LOW_PRESSURE, 0.35, 0.014), (SLIM, 0.32, 0.014)] {
            assert!(super::TIRE_DIAMETER.contains(&told.to_string()));
            for row in rows {
                let share = share(row);
                assert!((share - told).abs() < within, "{row:?}: {share}");
            }
        }
    }
}
