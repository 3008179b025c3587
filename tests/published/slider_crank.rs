//! Source: course sheet, coursehero.com/file/6680931 "fourbar mathcad". Found: crank 10 in, rod 20 in, no
//! offset, crank at 45° turning at 1 rad/s: rod at 159.295°, 0.378 rad/s, slider 9.744 in/s (the lengths
//! are garbled there; recomputed 159.29519, 0.377964, 9.743680, so they agree). Slider at 25.779355 in:
//! computed.
use gearswing_gear::model::*;
use gearswing_solver::kinematics::{Linkage, circle_line};
use gearswing_tests::{bare_leg, near};
use gearswing_units::factors::M_PER_INCH;

const CRANK: f64 = 10.0 * M_PER_INCH;
const ROD: f64 = 20.0 * M_PER_INCH;

/// Crank pin at 45° and slider pin on the x axis, by the solver's circle and line.
fn pins() -> (Point, Point) {
    let (sin, cos) = 45_f64.to_radians().sin_cos();
    let crank = Point::new(CRANK * cos, CRANK * sin);
    let (_, far) = circle_line(crank, ROD, Point::origin(), Vector::x()).unwrap();
    (crank, Point::new(far, 0.0))
}

#[test]
fn position() {
    let (crank, slider) = pins();
    near("slider", slider.x / M_PER_INCH, 25.779_355, 5.1e-7);
    let rod = crank - slider;
    near("rod", rod.y.atan2(rod.x).to_degrees(), 159.295, 5.1e-4);
}

/// A leg has no slide, but a link square to the slide moves its pin along it at that instant: crank as
/// leg, rod as lower link, and an upper link that stands square under the slider, however long.
#[test]
fn speeds() {
    let (crank, slider) = pins();
    for length in [0.5, 2.0, 30.0] {
        let link = Link {
            thickness: 0.01,
            mass: 0.0,
        };
        let mut leg = bare_leg();
        leg.brace = Brace::Folding(FoldingBrace {
            airframe_pivot: slider - Vector::new(0.0, length),
            knee: slider,
            leg_attach: crank,
            folds: Folds::SameSide,
            unlocked_by: UnlockedBy::Separate,
            knee_given: Default::default(),
            excursion_allowed: None,
            upper: link,
            lower: link,
        });
        let rates = Linkage::new(&leg).pose(0.0).unwrap().rates;
        // counter-clockwise crank: the rod turns back, the slider comes in; the sheet prints sizes
        near("rod", rates.lower / rates.swing, -0.378, 5.1e-4);
        let speed = -rates.upper * length / rates.swing;
        near("slider", speed / M_PER_INCH, -9.744, 5.1e-4);
    }
}
