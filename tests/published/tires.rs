//! Source: tire growth W_G = 1.04 W, H_G = (1.115 − 0.074 AR) H and lateral clearance 0.019 W_G + 0.23 in:
//! Tire and Rim Association Aircraft Year Book, repeated in N. S. Currey, "Aircraft Landing Gear Design" (AIAA
//! 1988) ch. 6, from memory; the worked numbers are computed and test the code, not the rule. Sizes: a
//! tire maker's data book as quoted in a public source file (21x7.25-10), a designer's handbook quoted by
//! a builder (homebuiltairplanes.com/forums/threads/tire-sizes.4431, 5.00-5), a retailer's note
//! (help.skygeek.com article 204923304, 6.00-6), a maker's sheet of the ground tire 12-16.5 ("SK-05"),
//! naming rules (wattsaviation.co.uk/resources/tyre-sizes-explained): all found.
use gearswing_solver::model::{Basis, Grown, Tire};
use gearswing_solver::tires::{Trust, find_size, grown_size, lateral_allowance, sizes};
use gearswing_units::factors::M_PER_INCH;

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

/// A table figure back in the inches that its source prints.
fn inches(value: f64) -> f64 {
    (value / M_PER_INCH * 1e6).round() / 1e6
}

#[test]
fn worked_numbers_of_the_rule() {
    // worked by hand from the rule as remembered: checks the arithmetic, not the rule
    for (d, w, rim, w_g, d_g, c_w) in [
        (14.20, 4.95, 5.0, 5.148, 14.625, 0.328),
        (17.50, 6.30, 6.0, 6.552, 18.046, 0.354),
        (15.20, 6.30, 6.0, 6.552, 15.761, 0.354),
        (21.25, 7.20, 10.0, 7.488, 21.893, 0.372),
    ] {
        let grown = grown_size(&tire(d, w, rim));
        assert!((grown.width / M_PER_INCH - w_g).abs() < 6e-4, "{d}");
        assert!((grown.diameter / M_PER_INCH - d_g).abs() < 6e-4, "{d}");
        assert!((lateral_allowance(grown.width) / M_PER_INCH - c_w).abs() < 6e-4);
    }
}

#[test]
fn growth_is_of_the_size_that_a_maker_prints() {
    // ground tire 12-16.5, maker's sheet "SK-05": new 32.9 x 12.0 in, in service at most
    // 34.4 x 13.0 in. Another kind of tire, so only the order of growth is comparable.
    let grown = grown_size(&tire(32.9, 12.0, 16.5));
    let diameter = grown.diameter / M_PER_INCH / 32.9;
    assert!(diameter > 1.02 && diameter < 1.0456, "{diameter}");
    let width = grown.width / M_PER_INCH / 12.0;
    assert!(width > 1.02 && width < 13.0 / 12.0, "{width}");
}

#[test]
fn published_row_as_read() {
    // tire maker's data book as quoted in a public source file: 21x7.25-10 10PR
    let row = find_size("21 X 7.25-10").unwrap();
    assert_eq!(row.trust, Trust::Published);
    assert_eq!(row.ply, Some(10));
    assert_eq!(inches(row.diameter_max), 21.25);
    assert_eq!(row.diameter_min.map(inches), Some(20.60));
    assert_eq!(inches(row.width_max), 7.20);
    assert_eq!(row.width_min.map(inches), Some(6.80));
    assert_eq!(inches(row.rim_diameter), 10.0);
    assert!(
        sizes()
            .iter()
            .all(|r| (r.trust == Trust::Published) == (r.size == row.size))
    );
}

#[test]
fn remembered_diameters_against_what_could_be_read() {
    // designer's handbook quoted by a builder, homebuiltairplanes.com/forums thread
    // "tire-sizes.4431": 5.00-5 is 14.20 / 13.65 in
    let row = find_size("5.00-5").unwrap();
    assert_eq!(inches(row.diameter_max), 14.20);
    assert_eq!(row.diameter_min.map(inches), Some(13.65));
    // retailer's note, help.skygeek.com article 204923304: 6.00-6 is about 17 in
    let row = find_size("6.00-6").unwrap();
    let mean = 0.5 * (inches(row.diameter_max) + inches(row.diameter_min.unwrap()));
    assert!((mean - 17.0).abs() < 0.5, "{mean}");
}

#[test]
fn names_carry_their_numbers() {
    // naming rules, wattsaviation.co.uk "tyre sizes explained": three-part names give overall
    // diameter, width and rim; Type III names give width and rim
    let mut seen = 0;
    for row in sizes() {
        let (front, rim) = row.size.rsplit_once('-').unwrap_or((row.size, ""));
        let parts: Vec<f64> = front
            .split(['x', '-'])
            .map(|p| p.parse().unwrap())
            .collect();
        let near = |a: f64, b: f64, within: f64| {
            assert!(
                (inches(a) - b).abs() <= within,
                "{} {} {b}",
                row.size,
                inches(a)
            );
        };
        if !rim.is_empty() {
            near(row.rim_diameter, rim.parse().unwrap(), 0.0);
            seen += 1;
        }
        if row.size.contains('x') {
            near(row.diameter_max, parts[0], 0.5);
            near(row.width_max, parts[1], 0.5);
        } else {
            near(row.width_max, parts[0], 0.75);
        }
    }
    assert!(seen > 20);
}

#[test]
fn shoulder_encloses_the_published_one() {
    // same data book row: shoulder diameter 19.25 in at width 6.35 in
    let tire = find_size("21x7.25-10").unwrap().to_tire();
    let below_crown = 0.5 * (tire.diameter - 19.25 * 0.0254);
    let r = tire.shoulder_radius;
    let half_width = 0.5 * tire.width - r + (r * r - (r - below_crown).powi(2)).sqrt();
    assert!(half_width > 0.5 * 6.35 * 0.0254);
    assert!(half_width < 0.5 * tire.width);
}
