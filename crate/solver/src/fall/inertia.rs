//! Kinetic energy of all parts at the rates of a pose.
use crate::kinematics::{Linkage, Pose, quarter};
use crate::model::{Brace, Leg, Point, Vector, View};
use crate::result::InertiaBasis;
use crate::statics::attach_velocity;

/// Least mass of a link of a folding brace [kg]: as the knee passes the straight line the leg stands
/// still, and links without mass would leave nothing that moves. Our own figure, lighter than any.
const LEAST_LINK: f64 = 0.01;

/// Moments of inertia about the parts' own centres [kg·m2].
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Inertias {
    /// Upper leg about its centre of mass.
    pub(super) body: f64,
    pub(super) basis: InertiaBasis,
    /// Wheel about a diameter; nothing in side view, where it does not turn with the leg.
    pub(super) wheel: f64,
}

impl Inertias {
    pub(super) fn of(leg: &Leg) -> Self {
        let radius2 = plate_radius_squared(&leg.body.outline);
        let (body, basis) = match (leg.fall.body_inertia, radius2) {
            (Some(given), _) => (given, InertiaBasis::Given),
            (None, Some(radius2)) => (leg.body.mass * radius2, InertiaBasis::UniformPlate),
            (None, None) => {
                let half = (leg.body.centre - leg.trunnion).norm();
                (leg.body.mass * half * half / 3.0, InertiaBasis::UniformRod)
            }
        };
        // a uniform cylinder about its diameter, m·(3r² + w²)/12: any table of moments of inertia
        let wheel = match leg.view {
            View::Front => {
                let (radius, width) = (0.5 * leg.wheel.tire.diameter, leg.wheel.tire.width);
                leg.wheel.mass * (3.0 * radius * radius + width * width) / 12.0
            }
            View::Side => 0.0,
        };
        Self { body, basis, wheel }
    }

    /// Twice the kinetic energy at the rates of the pose [kg·m2 per unit of their parameter
    /// squared]. Links, telescopic brace and actuator are uniform bars from pin to pin.
    pub(super) fn twice_energy(&self, leg: &Leg, linkage: &Linkage, pose: &Pose) -> f64 {
        let rates = &pose.rates;
        let trunnion = linkage.trunnion();
        let turning = |at: Point| quarter(at - trunnion) * rates.swing;
        let centre = turning(trunnion + pose.turn(leg.body.centre - trunnion));
        let axle = turning(pose.axle) + pose.turn(linkage.slide_direction()) * rates.slide;
        let mut energy = leg.body.mass * centre.norm_squared()
            + leg.wheel.mass * axle.norm_squared()
            + (self.body + self.wheel) * rates.swing * rates.swing
            + bar(
                leg.actuator.mass,
                Vector::zeros(),
                attach_velocity(leg, linkage, pose),
            );
        match (&leg.brace, pose.knee, pose.brace_attach) {
            (Brace::Folding(brace), Some(knee), Some(attach)) => {
                let knee = quarter(knee - brace.airframe_pivot) * rates.upper;
                energy += bar(brace.upper.mass.max(LEAST_LINK), Vector::zeros(), knee)
                    + bar(brace.lower.mass.max(LEAST_LINK), knee, turning(attach));
            }
            (Brace::Sliding(brace), _, Some(attach)) => {
                energy += bar(brace.mass, Vector::zeros(), turning(attach));
            }
            _ => {}
        }
        energy
    }
}

/// Twice the kinetic energy of a uniform bar from its end velocities: m/3·(a² + a·b + b²), any text
/// on dynamics.
fn bar(mass: f64, a: Vector, b: Vector) -> f64 {
    mass / 3.0 * (a.norm_squared() + a.dot(&b) + b.norm_squared())
}

/// Radius of gyration squared of a uniform plate about its centroid [m2]; `None` without an area.
///
/// Sums over the edges' triangles from the origin, any text on section properties.
fn plate_radius_squared(outline: &[Point]) -> Option<f64> {
    let origin = *outline.first()?;
    let (mut area2, mut first, mut second) = (0.0, Vector::zeros(), 0.0);
    for (a, b) in outline.iter().zip(outline.iter().cycle().skip(1)) {
        let (a, b) = (a - origin, b - origin);
        let cross = a.perp(&b);
        area2 += cross;
        first += (a + b) * cross;
        second += cross * (a.norm_squared() + a.dot(&b) + b.norm_squared());
    }
    if area2 == 0.0 {
        return None;
    }
    // area = area2/2, centroid = first/(3·area2), polar second moment about the origin = second/12
    let centroid = first / (3.0 * area2);
    let radius2 = second / (6.0 * area2) - centroid.norm_squared();
    (radius2 > 0.0).then_some(radius2)
}
