//! An obstacle made ready for distances, and the side of it on which a point lies.
//!
//! **Solid**: negative inside (crossing number), positive outside. **Surface**: the side is that of
//! the nearest feature. Nearest to the inside of an edge, it is the side of that edge; nearest to a
//! corner between two edges, it is the side of the sum of the two edge normals (the
//! pseudo-normal), which is right at convex and at concave corners alike. Nearest to one of the two
//! ends and past it, a point is free: there is no surface there, only its end.
use crate::model::{Obstacle, Point, Vector};

use super::segment::Bounds;

/// An edge of an obstacle.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Edge {
    pub(crate) a: Point,
    pub(crate) b: Point,
    /// Unit vector a→b; zero for an edge without length.
    pub(crate) along: Vector,
    pub(crate) length: f64,
    pub(crate) bounds: Bounds,
}

/// A closed polygon or an open polyline, made ready.
#[derive(Clone, Debug)]
pub(crate) struct Barrier {
    pub(crate) points: Vec<Point>,
    pub(crate) edges: Vec<Edge>,
    pub(crate) closed: bool,
    pub(crate) bounds: Bounds,
}

/// Nearest point of a barrier's line to a point.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Near {
    /// Distance, never negative (m).
    pub(crate) distance: f64,
    /// Nearest point (m).
    pub(crate) point: Point,
    /// Edge on which it lies.
    pub(crate) edge: usize,
}

impl Barrier {
    /// Makes an obstacle ready.
    pub(crate) fn new(obstacle: &Obstacle) -> Self {
        Self::of_points(obstacle.shape.points().to_vec(), obstacle.shape.is_closed())
    }

    /// Makes a polygon (`closed`) or polyline ready. A single point is an edge without length.
    pub(crate) fn of_points(points: Vec<Point>, closed: bool) -> Self {
        let closed = closed && points.len() > 2;
        let next = |i: usize| points.get(i + 1).or(points.first().filter(|_| closed));
        let mut edges: Vec<Edge> = points
            .iter()
            .enumerate()
            .filter_map(|(i, &a)| next(i).map(|&b| Edge::new(a, b)))
            .collect();
        if let (true, Some(&only)) = (edges.is_empty(), points.first()) {
            edges.push(Edge::new(only, only));
        }
        Self {
            bounds: Bounds::of(&points),
            points,
            edges,
            closed,
        }
    }

    /// Nearest point of the line; distance infinite when there is none.
    #[inline]
    pub(crate) fn nearest(&self, p: Point) -> Near {
        let mut best = Near {
            distance: f64::INFINITY,
            point: p,
            edge: 0,
        };
        for (i, edge) in self.edges.iter().enumerate() {
            let q = edge.nearest(p);
            let squared = (p - q).norm_squared();
            if squared < best.distance {
                best = Near {
                    distance: squared,
                    point: q,
                    edge: i,
                };
            }
        }
        best.distance = best.distance.sqrt();
        best
    }

    /// Whether a closed barrier holds `p`.
    pub(crate) fn contains(&self, p: Point) -> bool {
        self.closed && polygon_contains(&self.points, p)
    }

    /// Whether `p` is inside of a solid, or behind a surface, given its nearest point.
    pub(crate) fn is_past(&self, p: Point, near: &Near) -> bool {
        if self.closed {
            return self.contains(p);
        }
        let Some(edge) = self.edges.get(near.edge) else {
            return false;
        };
        let along = edge.along.dot(&(p - edge.a));
        let side = |e: &Edge| e.along.perp(&(p - near.point));
        let neighbour = if along < 0.0 {
            near.edge.checked_sub(1)
        } else if along > edge.length {
            Some(near.edge + 1)
        } else {
            return side(edge) < 0.0;
        };
        match neighbour.and_then(|i| self.edges.get(i)) {
            // the pseudo-normal is the sum of the normals, so its side is the sum of the sides
            Some(other) => side(edge) + side(other) < 0.0,
            None => false,
        }
    }

    /// Signed distance of `p` (m): positive free, negative inside or behind; and the nearest point.
    pub(crate) fn signed(&self, p: Point) -> (f64, Point) {
        let near = self.nearest(p);
        let past = near.distance > 0.0 && self.is_past(p, &near);
        (
            if past { -near.distance } else { near.distance },
            near.point,
        )
    }
}

impl Edge {
    pub(crate) fn new(a: Point, b: Point) -> Self {
        let length = (b - a).norm();
        Self {
            a,
            b,
            along: if length > 0.0 {
                (b - a) / length
            } else {
                Vector::zeros()
            },
            length,
            bounds: Bounds::of(&[a, b]),
        }
    }

    /// Point of the edge nearest to `p`.
    #[inline]
    pub(crate) fn nearest(&self, p: Point) -> Point {
        self.a + self.along * self.place(p).max(0.0).min(self.length)
    }

    /// Signed distance of `p` from the edge's line, positive to the left (m).
    #[inline]
    pub(crate) fn side(&self, p: Point) -> f64 {
        self.along.perp(&(p - self.a))
    }

    /// Place of `p` along the edge's line from `a` (m).
    #[inline]
    pub(crate) fn place(&self, p: Point) -> f64 {
        self.along.dot(&(p - self.a))
    }
}

/// Whether a closed polygon holds `p`, by the crossing number of the ray to the right.
///
/// In either direction round, convex or not. On the line itself either answer may come.
pub(crate) fn polygon_contains(polygon: &[Point], p: Point) -> bool {
    let mut inside = false;
    let Some(&(mut a)) = polygon.last() else {
        return false;
    };
    for &b in polygon {
        if (a.y > p.y) != (b.y > p.y) {
            let across = (b - a).perp(&(p - a));
            if (across > 0.0) == (b.y > a.y) {
                inside = !inside;
            }
        }
        a = b;
    }
    inside
}
