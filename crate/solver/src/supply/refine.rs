//! More stations where the load bends: beside a nearly straight knee it goes through a peak or a dip
//! between two of the even ones.
use super::leg_stages::Point;
use crate::model::{Gear, Leg, Source};
use crate::statics;

/// How far the load half-way between two points may be off the straight line between them, as a share of
/// what the source makes (ratio): the smooth curve through them is then nearer by far.
const STRAIGHT: f64 = 2e-3;

/// As far again beyond the source, the load need not be known so well: there the leg stands.
const BEYOND: f64 = 2.0;

/// Gaps shorter than this in progress are left as they are (ratio).
const SHORTEST: f64 = 1e-6;

/// Bounds on the halvings of one gap and on the points put in.
const MOST_HALVINGS: usize = 14;
const MOST_POINTS: usize = 600;

/// Thrust that the source makes (N).
pub(super) fn scale(gear: &Gear, leg: &Leg) -> f64 {
    match (&gear.supply.source, leg.drive.electric) {
        (Source::ElectricActuators, Some(motor)) => motor.stall_force,
        _ => gear.supply.available_pressure * statics::areas(&leg.actuator).1,
    }
}

/// The points with more between them; `at` gives one at a place of the path.
pub(super) fn refined(
    points: Vec<Point>,
    scale: f64,
    mut at: impl FnMut(f64) -> Option<Point>,
) -> Vec<Point> {
    let mut found: Vec<Point> = Vec::with_capacity(points.len());
    let mut left = MOST_POINTS;
    let mut before: Option<f64> = None;
    let mut given = points.into_iter().peekable();
    while let Some(point) = given.next() {
        let next = given.peek();
        let bends = match (before, next.and_then(|next| slope(&point, next))) {
            (Some(old), Some((new, gap))) => ((new - old) * gap).abs() > STRAIGHT * scale,
            _ => false,
        };
        // a bend shows in the gaps on both of its sides
        if bends && let Some(last) = found.pop() {
            between(&mut found, last, &point, scale, &mut left, &mut at);
        }
        before = next
            .and_then(|next| slope(&point, next))
            .map(|(slope, _)| slope);
        found.push(point);
        if bends && let (Some(next), Some(last)) = (next, found.pop()) {
            between(&mut found, last, next, scale, &mut left, &mut at);
        }
    }
    found
}

/// Change of thrust with the stroke, and the stroke between two points.
fn slope(a: &Point, b: &Point) -> Option<(f64, f64)> {
    let gap = (b.length - a.length).abs();
    let change = b.effort? - a.effort?;
    (gap > 0.0).then_some((change / gap, gap))
}

/// Adds a point and what is wanted between it and the next one.
fn between(
    found: &mut Vec<Point>,
    from: Point,
    to: &Point,
    scale: f64,
    left: &mut usize,
    at: &mut impl FnMut(f64) -> Option<Point>,
) {
    // what lies ahead, the nearest last; none of it is further halved than the bound
    let mut ahead: Vec<(Point, usize)> = Vec::new();
    let mut here = (from, 0);
    let end = to;
    loop {
        let (next, depth) = match ahead.last() {
            Some((next, depth)) => (next, *depth),
            None => (end, here.1),
        };
        let depth = depth.max(here.1);
        let middle = (*left > 0 && depth < MOST_HALVINGS)
            .then(|| at(0.5 * (here.0.place.progress + next.place.progress)))
            .flatten()
            .filter(|middle| is_off(&here.0, middle, next, scale));
        match middle {
            Some(middle) => {
                *left -= 1;
                here.1 = depth + 1;
                ahead.push((middle, depth + 1));
            }
            None => {
                found.push(here.0);
                match ahead.pop() {
                    Some(point) => here = point,
                    None => return,
                }
            }
        }
    }
}

/// Whether the point in the middle is off the line between two by more than is wanted.
fn is_off(a: &Point, middle: &Point, b: &Point, scale: f64) -> bool {
    let (Some(from), Some(there), Some(to)) = (a.effort, middle.effort, b.effort) else {
        return false;
    };
    let stroke = b.length - a.length;
    let share = (middle.length - a.length) / stroke;
    let line = from + (to - from) * share;
    // where the stroke turns back no curve over it is wanted, nor finer steps where the load jumps
    b.place.progress - a.place.progress > SHORTEST
        && share > 0.0
        && share < 1.0
        && from.abs().min(to.abs()) < BEYOND * scale
        && (there - line).abs() > STRAIGHT * scale
}
