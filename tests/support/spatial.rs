//! A wheel turned in three dimensions: rotations by nalgebra, the tire as a cloud of points.
//! x and y lie in the drawn plane, z comes out of it to the viewer.
use nalgebra::{Matrix3, Rotation3, Unit, Vector3};

/// A vector in space.
pub type V3 = Vector3<f64>;

/// `v` turned by `angle` (rad) about an axis through the origin.
#[must_use]
pub fn turned(axis: V3, angle: f64, v: V3) -> V3 {
    Rotation3::from_axis_angle(&Unit::new_normalize(axis), angle) * v
}

/// Axis and angle (rad) of the turn that takes two unit vectors, square to each other, to two others.
#[must_use]
pub fn turn_between(from: [V3; 2], to: [V3; 2]) -> (V3, f64) {
    let frame = |[a, b]: [V3; 2]| Matrix3::from_columns(&[a, b, a.cross(&b)]);
    let turn = Rotation3::from_matrix_unchecked(frame(to) * frame(from).transpose());
    let (axis, angle) = turn.axis_angle().unwrap();
    (axis.into_inner(), angle)
}

/// A round-shouldered tire: all points within `r` of a solid disc of radius `disc` and half width
/// `half`.
#[derive(Clone, Copy, Debug)]
pub struct Tire {
    /// Radius of the disc (m).
    pub disc: f64,
    /// Half of its width (m).
    pub half: f64,
    /// Radius of the shoulders (m).
    pub r: f64,
}

/// Points of each edge of the disc.
const POINTS: usize = 720;

impl Tire {
    /// Points of both edges of the disc about its middle, for a spin axis.
    #[must_use]
    pub fn points(&self, spin: V3) -> Vec<V3> {
        let spin = spin.normalize();
        let aside = if spin.z.abs() < 0.9 { V3::z() } else { V3::x() };
        let first = spin.cross(&aside).normalize();
        let second = spin.cross(&first);
        (0..POINTS)
            .flat_map(|i| {
                let (sin, cos) = (std::f64::consts::TAU * i as f64 / POINTS as f64).sin_cos();
                let rim = (first * cos + second * sin) * self.disc;
                [rim + spin * self.half, rim - spin * self.half]
            })
            .collect()
    }

    /// How far it reaches in direction `way` from its middle, from its points (m).
    #[must_use]
    pub fn reach(&self, points: &[V3], way: V3) -> f64 {
        let farthest = points.iter().map(|p| p.dot(&way)).fold(f64::MIN, f64::max);
        farthest + self.r
    }
}
