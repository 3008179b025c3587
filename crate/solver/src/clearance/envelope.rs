//! Outlines swept by the leg, to be drawn only: no clearance is read from them.
use std::f64::consts::TAU;

use crate::model::{Point, Vector};
use crate::result::TireState;

use super::part::{Carrier, Part};
use super::path_nodes::PathNodes;
use super::sweep::core_edges;

/// Steps of a drawn full circle.
const CIRCLE: usize = 48;

/// What the grown wheel sweeps: the paths of its outermost and innermost reach about the trunnion,
/// and its outline at both ends of the path.
pub(crate) fn wheel_envelope(parts: &[Part], track: &PathNodes) -> Vec<Vec<Point>> {
    parts
        .iter()
        .filter(|part| part.tire == Some(TireState::Grown))
        .flat_map(|part| swept(part, track))
        .collect()
}

/// The same for leg and sliding strut, and the paths of the knee and the far end of the brace.
pub(crate) fn leg_envelope(parts: &[Part], track: &PathNodes) -> Vec<Vec<Point>> {
    let mut lines: Vec<Vec<Point>> = parts
        .iter()
        .filter(|part| part.tire.is_none())
        .filter(|part| matches!(part.carrier, Carrier::Leg | Carrier::Axle))
        .flat_map(|part| swept(part, track))
        .collect();
    let knee: Vec<Point> = track.nodes.iter().filter_map(|n| n.pose.knee).collect();
    if knee.len() > 1 {
        lines.push(knee);
    }
    lines
}

/// Paths of the points of a part farthest from and nearest to the trunnion, and its end outlines.
fn swept(part: &Part, track: &PathNodes) -> Vec<Vec<Point>> {
    let centre = track.rig.trunnion;
    let mut core = Vec::new();
    let (mut outer, mut inner) = (Vec::new(), Vec::new());
    for node in &track.nodes {
        if !part.place(&track.rig, &node.pose, &mut core) {
            continue;
        }
        if let Some((near, far)) = reach(&core, centre, part.radius) {
            outer.push(far);
            inner.extend(near);
        }
    }
    let mut lines: Vec<Vec<Point>> = [outer, inner]
        .into_iter()
        .filter(|line| line.len() > 1)
        .collect();
    for node in [track.nodes.first(), track.nodes.last()]
        .into_iter()
        .flatten()
    {
        if part.place(&track.rig, &node.pose, &mut core) {
            lines.push(rounded(&core, part.radius));
        }
    }
    lines
}

/// Points of a grown core nearest to and farthest from `centre`; no nearest one where the outline
/// holds the center.
fn reach(core: &[Point], centre: Point, radius: f64) -> Option<(Option<Point>, Point)> {
    let out = |p: Point, by: f64| {
        let way = (p - centre).try_normalize(0.0).unwrap_or_else(Vector::x);
        p + way * by
    };
    let square = |p: Point| (p - centre).norm_squared();
    let far = core
        .iter()
        .max_by(|a, b| square(**a).total_cmp(&square(**b)))?;
    let near = core_edges(core.len())
        .filter_map(|(i, j)| {
            Some(super::segment::nearest_on_segment(
                centre,
                *core.get(i)?,
                *core.get(j)?,
            ))
        })
        .chain(core.iter().copied())
        .min_by(|a, b| square(*a).total_cmp(&square(*b)))?;
    let inside = super::barrier::polygon_contains(core, centre) || (near - centre).norm() <= radius;
    Some(((!inside).then(|| out(near, -radius)), out(*far, radius)))
}

/// A grown convex core as a closed line; a sharp one as it is.
fn rounded(core: &[Point], radius: f64) -> Vec<Point> {
    let mut line: Vec<Point> = Vec::new();
    if radius <= 0.0 || core.is_empty() {
        line.extend(core);
    } else {
        // the support point of the core in every direction, moved out by the radius
        for step in 0..CIRCLE {
            let (sin, cos) = (TAU * step as f64 / CIRCLE as f64).sin_cos();
            let way = Vector::new(cos, sin);
            let support = core
                .iter()
                .max_by(|a, b| a.coords.dot(&way).total_cmp(&b.coords.dot(&way)));
            line.extend(support.map(|p| p + way * radius));
        }
    }
    line.extend(line.first().copied());
    line
}
