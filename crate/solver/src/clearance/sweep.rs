//! A core over one interval of the path: places at both ends, and a lower bound in between.
use crate::model::Point;

use super::barrier::{Barrier, Edge};
use super::part::Part;
use super::path_nodes::PathNodes;
use super::segment::{Bounds, Pair, crossing, nearest_on_segment};
use crate::result::ClearanceError;

/// A core at both ends of an interval.
///
/// In between, every point of it is within `stray` of the straight line between its two places, at
/// one parameter that all points have in common.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Span<'a> {
    pub(crate) from: &'a [Point],
    pub(crate) to: &'a [Point],
    pub(crate) stray: f64,
}

/// Index pairs of the edges of a line of `count` points, closed or open.
pub(crate) fn line_edges(count: usize, closed: bool) -> impl Iterator<Item = (usize, usize)> {
    let edges = if closed && count > 2 {
        count
    } else {
        count.saturating_sub(1)
    };
    (0..edges).map(move |i| (i, if i + 1 < count { i + 1 } else { 0 }))
}

/// Index pairs of the edges of a core of `count` points: none for a point, one for a bar.
pub(crate) fn core_edges(count: usize) -> impl Iterator<Item = (usize, usize)> {
    line_edges(count, true)
}

impl Span<'_> {
    /// Lower bound on the distance of the core's line from the barrier's line over the interval
    /// (m), or `most` where that is less, when they do not cross at its start; once below `enough` it is
    /// returned as it stands.
    ///
    /// Lines that do not cross come nearest at a corner of one of them. A moving corner stays near
    /// its chord: distance of two segments. A standing corner faces a moving edge u(s) = B − K from
    /// w(s) = v − K: over a straight run cross(u, w) is linear in s but for ±|Δu × ΔK|/4, and |u|
    /// is at most linear between its end values, so that their ratio is at least the lesser one of
    /// the two ends, less |Δu × ΔK|/4 over the least |u|. Where the foot of v is past an end of the
    /// edge all along, that end's chord says it already.
    pub(crate) fn lower_bound(&self, barrier: &Barrier, enough: f64, most: f64) -> f64 {
        // a core that is missing clears nothing
        if self.from.is_empty() || self.from.len() != self.to.len() {
            return f64::NEG_INFINITY;
        }
        let enough = (enough + self.stray).max(0.0);
        let mut squared = (most + self.stray).powi(2);
        for (&a, &b) in self.from.iter().zip(self.to) {
            if Bounds::of(&[a, b]).distance_squared(&barrier.bounds) < squared {
                approach(&Edge::new(a, b), true, barrier, &mut squared);
                if squared < enough * enough {
                    return squared.sqrt() - self.stray;
                }
            }
        }
        let mut least = squared.sqrt();
        for (i, j) in core_edges(self.from.len()) {
            let (Some(&ka), Some(&ba), Some(&kb), Some(&bb)) = (
                self.from.get(i),
                self.from.get(j),
                self.to.get(i),
                self.to.get(j),
            ) else {
                return f64::NEG_INFINITY;
            };
            let bounds = Bounds::of(&[ka, ba, kb, bb]);
            for &v in &barrier.points {
                if bounds.distance_squared(&Bounds { min: v, max: v }) < least * least {
                    least = least.min(corner_to_edge(v, (ka, ba), (kb, bb)));
                    if least < enough {
                        return least - self.stray;
                    }
                }
            }
        }
        least - self.stray
    }

    /// Box around both ends, not counting the straying.
    pub(crate) fn bounds(&self) -> Bounds {
        Bounds::of(self.from).with(&Bounds::of(self.to))
    }
}

/// Lower bound on the distance of `v` from an edge that runs straight from one place to another,
/// wherever the foot of `v` is inside of the edge (m); infinite when it never is.
#[inline]
fn corner_to_edge(v: Point, from: (Point, Point), to: (Point, Point)) -> f64 {
    let ((ka, ba), (kb, bb)) = (from, to);
    let (ua, ub) = (ba - ka, bb - kb);
    let (du, dk) = (ub - ua, kb - ka);
    let foot = |u: nalgebra::Vector2<f64>, k: Point| u.dot(&(v - k));
    let bend = 0.25 * du.dot(&dk).abs();
    if foot(ua, ka).max(foot(ub, kb)) + bend < 0.0 {
        return f64::INFINITY;
    }
    let short = 0.25 * du.dot(&(bb - ba)).abs();
    if (-foot(ua, ba)).max(-foot(ub, bb)) + short < 0.0 {
        return f64::INFINITY;
    }
    let (ya, yb) = (ua.perp(&(v - ka)), ub.perp(&(v - kb)));
    let (la, lb) = (ua.norm(), ub.norm());
    let least_length = la.min(lb) - 0.5 * du.norm();
    if least_length <= 0.0 {
        // an edge about as short as its own motion: nearly a point
        let near = nearest_on_segment(v, ka, kb);
        return ((v - near).norm() - la.max(lb)).max(0.0);
    }
    if ya * yb <= 0.0 {
        return 0.0;
    }
    let bend = 0.25 * du.perp(&dk).abs() / least_length;
    ((ya / la).abs().min((yb / lb).abs()) - bend).max(0.0)
}

/// How far any point of a core's line is from where it is in another of its places, at most (m): as far as its
/// corners, between which it keeps its place.
pub(crate) fn farthest_move(from: &[Point], to: &[Point]) -> f64 {
    let squares = from.iter().zip(to).map(|(a, b)| (b - a).norm_squared());
    squares.fold(0.0, f64::max).sqrt()
}

/// Nearest points of a core's line and a barrier's line when they are below `cutoff` apart;
/// distance 0 where they cross. The first point is the core's.
pub(crate) fn nearest_lines(core: &[Point], barrier: &Barrier, cutoff: f64) -> Option<Pair> {
    if let [only] = core {
        let near = barrier.nearest(*only);
        return (near.distance < cutoff).then_some(Pair {
            distance: near.distance,
            first: *only,
            second: near.point,
        });
    }
    if cutoff <= 0.0 {
        return None;
    }
    let mut best = None;
    let mut least = cutoff * cutoff;
    for (i, j) in core_edges(core.len()) {
        let (Some(&a), Some(&b)) = (core.get(i), core.get(j)) else {
            break;
        };
        if Bounds::of(&[a, b]).distance_squared(&barrier.bounds) < least {
            best = approach(&Edge::new(a, b), core.len() == 2, barrier, &mut least).or(best);
        }
    }
    best.map(|(first, second)| Pair {
        distance: least.sqrt(),
        first,
        second,
    })
}

/// Lowers a squared distance (m2) to that of an edge from a barrier's line, and gives the points, where that is
/// less; 0 where they cross.
///
/// Two lines that do not cross are nearest at a corner of one of them. Each corner belongs to the edge that starts
/// there; an edge that is `alone` has both.
fn approach(
    edge: &Edge,
    alone: bool,
    barrier: &Barrier,
    least: &mut f64,
) -> Option<(Point, Point)> {
    let mut best = None;
    let last = barrier.edges.len() - usize::from(!barrier.edges.is_empty());
    for (i, other) in barrier.edges.iter().enumerate() {
        let gap = edge.bounds.distance_squared(&other.bounds);
        if gap >= *least {
            continue;
        }
        if gap == 0.0
            && let Some(x) = crossing(edge.a, edge.b, other.a, other.b)
        {
            *least = 0.0;
            return Some((x, x));
        }
        let mut offer = |first: Point, second: Point| {
            let squared = (second - first).norm_squared();
            if squared < *least {
                *least = squared;
                best = Some((first, second));
            }
        };
        offer(edge.a, other.nearest(edge.a));
        if alone {
            offer(edge.b, other.nearest(edge.b));
        }
        offer(edge.nearest(other.a), other.a);
        if i == last && !barrier.closed {
            offer(edge.nearest(other.b), other.b);
        }
    }
    best
}

/// Whether the lines of a core and a barrier cross or touch.
pub(crate) fn lines_cross(core: &[Point], barrier: &Barrier) -> bool {
    // small enough to be no distance, large enough for its square
    nearest_lines(core, barrier, 1e-100).is_some()
}

/// A part's core at every node of a path.
#[derive(Debug)]
pub(crate) struct Sweep<'a> {
    pub(crate) part: &'a Part,
    count: usize,
    points: Vec<Point>,
    strays: Vec<f64>,
    bounds: Vec<Bounds>,
}

impl<'a> Sweep<'a> {
    /// Places the core of `part` at every node.
    pub(crate) fn new(part: &'a Part, track: &PathNodes) -> Result<Self, ClearanceError> {
        let count = part.core.len();
        let mut sweep = Self {
            part,
            count,
            points: Vec::with_capacity(count * track.nodes.len()),
            strays: Vec::with_capacity(track.nodes.len()),
            bounds: Vec::with_capacity(track.nodes.len()),
        };
        for node in &track.nodes {
            if !part.place_onto(&track.rig, &node.pose, &mut sweep.points) {
                return Err(ClearanceError::NotAssembled {
                    progress: node.pose.place.progress,
                    miss: 0.0,
                });
            }
        }
        for pair in track.nodes.windows(2) {
            let [a, b] = pair else { continue };
            sweep.strays.push(part.stray(&track.rig, &a.pose, &b.pose));
        }
        for i in 0..sweep.strays.len().max(1) {
            let bounds = sweep.span(i)?.bounds();
            sweep.bounds.push(bounds);
        }
        Ok(sweep)
    }

    /// The core at node `i`.
    ///
    /// # Errors
    /// A core without points and a node that is not there: they would clear everything.
    pub(crate) fn core(&self, i: usize) -> Result<&[Point], ClearanceError> {
        self.points
            .get(i * self.count..(i + 1) * self.count)
            .filter(|core| !core.is_empty())
            .ok_or(ClearanceError::NothingToCheck {
                part: self.part.part,
            })
    }

    /// Intervals between nodes; one at least, of no length for a single node.
    pub(crate) fn len(&self) -> usize {
        self.strays.len().max(1)
    }

    /// How far a corner may stray from its chord over interval `i` (m): not at all from a single node,
    /// anywhere over an interval that is not there.
    fn stray(&self, i: usize) -> f64 {
        if self.strays.is_empty() && i == 0 {
            return 0.0;
        }
        self.strays.get(i).copied().unwrap_or(f64::INFINITY)
    }

    /// The interval that starts at node `i`.
    ///
    /// # Errors
    /// A core without points.
    pub(crate) fn span(&self, i: usize) -> Result<Span<'_>, ClearanceError> {
        let last = self.strays.len();
        Ok(Span {
            from: self.core(i.min(last))?,
            to: self.core((i + 1).min(last))?,
            stray: self.stray(i),
        })
    }

    /// Box around all places of the core over a range of intervals, straying included; of
    /// intervals that are not there, a box without end.
    pub(crate) fn range_bounds(&self, range: std::ops::Range<usize>) -> Bounds {
        let mut all = Bounds::EMPTY;
        for i in range {
            all = match self.bounds.get(i) {
                Some(bounds) => all.with(&bounds.grown(self.stray(i))),
                None => Bounds::EVERYWHERE,
            };
        }
        all
    }

    /// How far any point of the core is at node `i` from where it is at another, at most (m).
    ///
    /// # Errors
    /// As [`Self::core`].
    pub(crate) fn moved(&self, i: usize, other: usize) -> Result<f64, ClearanceError> {
        Ok(farthest_move(self.core(i)?, self.core(other)?))
    }

    /// Lower bound on the distance of the core from a barrier over interval `i`, by boxes (m).
    #[inline]
    pub(crate) fn box_gap(&self, i: usize, barrier: &Barrier) -> f64 {
        self.bounds.get(i).map_or(f64::NEG_INFINITY, |b| {
            b.distance(&barrier.bounds) - self.stray(i)
        })
    }
}
