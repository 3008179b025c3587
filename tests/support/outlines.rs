//! Outlines of the moving parts at a station, drawn apart from the solver, and their distances from the
//! well by parry2d-f64 0.31, a general-purpose collision library.
use gearswing_gear::model::*;
use gearswing_solver::result::{Station, TireState};
use gearswing_solver::tires::{TireSize, TireSizes};
use parry2d_f64::math::{Pose as Isometry, Vector as Glam};
use parry2d_f64::query::distance;
use parry2d_f64::shape::{Ball, Polyline};

/// A line, closed or open, grown all around by a radius.
#[derive(Clone, Debug)]
pub struct Outline {
    /// Moving part.
    pub part: MovingPart,
    /// Tire size, for the wheel only.
    pub tire: Option<TireState>,
    points: Vec<Point>,
    radius: f64,
}

fn turn(v: Vector, angle: f64) -> Vector {
    let (sin, cos) = angle.sin_cos();
    Vector::new(cos * v.x - sin * v.y, sin * v.x + cos * v.y)
}

/// The outlines of `leg` where `station` says that its joints are.
#[must_use]
pub fn outlines(leg: &Leg, station: &Station) -> Vec<Outline> {
    let mut all = Vec::new();
    let mut add = |part, points: Vec<Point>, radius| {
        all.push(Outline {
            part,
            tire: None,
            points,
            radius,
        });
    };
    let turned = |p: Point| leg.trunnion + turn(p - leg.trunnion, station.swing);
    let axis = (leg.strut.axis_top - leg.strut.axis_bottom).normalize();
    let slide = turn(axis, station.swing) * station.shortening;
    let body = leg.body.outline.iter().map(|p| turned(*p)).collect();
    add(MovingPart::LegBody, body, 0.0);
    let sliding = leg.strut.sliding_outline.iter();
    let sliding = sliding.map(|p| turned(*p) + slide).collect();
    add(MovingPart::SlidingStrut, sliding, 0.0);
    match (&leg.brace, station.knee, station.brace_attach) {
        (Brace::Folding(b), Some(knee), Some(attach)) => {
            let upper = vec![b.airframe_pivot, knee];
            add(MovingPart::UpperLink, upper, 0.5 * b.upper.thickness);
            let lower = vec![knee, attach];
            add(MovingPart::LowerLink, lower, 0.5 * b.lower.thickness);
            let link = match leg.actuator.attach_to {
                AttachTo::Leg => None,
                AttachTo::UpperLink => Some((b.airframe_pivot, knee, b.upper.thickness)),
                AttachTo::LowerLink => Some((knee, attach, b.lower.thickness)),
            };
            if let Some((from, to, thickness)) = link {
                // rigid: the foot is the link's nearest point in every pose
                let along = to - from;
                let place = along.dot(&(station.actuator_attach - from)) / along.norm_squared();
                let foot = from + along * place.clamp(0.0, 1.0);
                if (station.actuator_attach - foot).norm() > 1e-6 {
                    let bar = vec![foot, station.actuator_attach];
                    add(MovingPart::LinkArm, bar, 0.5 * thickness);
                }
            }
        }
        (Brace::Sliding(b), _, Some(attach)) => {
            let bar = vec![b.airframe_pivot, attach];
            add(MovingPart::SlidingBrace, bar, 0.5 * b.thickness);
        }
        _ => {}
    }
    let a = &leg.actuator;
    let (pin, far) = match a.body_at {
        BodyEnd::Airframe => (a.mount, station.actuator_attach),
        BodyEnd::Moving => (station.actuator_attach, a.mount),
    };
    let gland = pin + (far - pin).normalize() * a.body_length;
    add(
        MovingPart::ActuatorBody,
        vec![pin, gland],
        0.5 * a.body_diameter,
    );
    add(MovingPart::ActuatorRod, vec![gland, far], 0.5 * a.rod);
    let sizes = TireSizes::of(&leg.wheel.tire);
    for (size, tire) in [(sizes.new, TireState::New), (sizes.grown, TireState::Grown)] {
        all.push(wheel(leg, station, &size, tire));
    }
    all
}

fn wheel(leg: &Leg, station: &Station, size: &TireSize, tire: TireState) -> Outline {
    let (points, radius) = match leg.view {
        View::Side => (vec![station.axle], 0.5 * size.diameter),
        View::Front => {
            let r = size.shoulder_radius;
            let (w, h) = (0.5 * size.width - r, 0.5 * size.diameter - r);
            let angle = leg.wheel.lean + station.swing;
            let corner = |x, y| station.axle + turn(Vector::new(x, y), angle);
            (
                vec![corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)],
                r,
            )
        }
    };
    Outline {
        part: MovingPart::Wheel,
        tire: Some(tire),
        points,
        radius,
    }
}

fn line(points: &[Point], closed: bool) -> Polyline {
    let vertices: Vec<Glam> = points.iter().map(|p| Glam::new(p.x, p.y)).collect();
    let count = points.len() as u32;
    let edges = if closed { count } else { count - 1 };
    let indices = (0..edges).map(|i| [i, (i + 1) % count]).collect();
    Polyline::new(vertices, Some(indices))
}

/// Whether a point lies in a polygon, by crossings of a ray.
fn inside(point: Point, polygon: &[Point]) -> bool {
    let mut within = false;
    for (i, a) in polygon.iter().enumerate() {
        let b = polygon[(i + 1) % polygon.len()];
        if (a.y > point.y) != (b.y > point.y) {
            let x = a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x);
            within ^= x > point.x;
        }
    }
    within
}

impl Outline {
    /// Distance from an obstacle's line (m), and 0 where one lies in the other. What has passed a
    /// surface without touching it counts as apart.
    #[must_use]
    pub fn distance(&self, shape: &Shape) -> f64 {
        let obstacle = shape.points();
        let closed = self.points.len() > 2;
        if shape.is_closed() && inside(self.points[0], obstacle)
            || closed && inside(obstacle[0], &self.points)
        {
            return 0.0;
        }
        let still = Isometry::identity();
        let barrier = line(obstacle, shape.is_closed());
        let apart = match *self.points {
            [point] => {
                // a speck as ball: its radius is taken off again
                let speck = 1e-3;
                let at = Isometry::from_parts(Glam::new(point.x, point.y), Default::default());
                distance(&at, &Ball::new(speck), &still, &barrier)
                    .unwrap()
                    .distance
                    + speck
            }
            _ => {
                distance(&still, &line(&self.points, closed), &still, &barrier)
                    .unwrap()
                    .distance
            }
        };
        (apart - self.radius).max(0.0)
    }
}
