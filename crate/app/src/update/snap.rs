//! Snapping of a dragged point to what a person means: level with, above, or on another point.
use gearswing_gear::model::{Gear, Point};
use gearswing_report::page::drawing::{Caught, caught_words};
use gearswing_report::page::stroke;

use crate::fields;
use crate::scene::{self, Carrier, Grip, PosedLeg};
use crate::state::{Snapped, State};

/// Within this distance a point snaps (CSS px).
const REACH_PX: f64 = 6.0;

/// The same for a limit of the actuator (CSS px).
const LIMIT_REACH_PX: f64 = 2.5;

/// Whether two points stand still toward each other in what is shown.
fn comparable(a: Carrier, b: Carrier, stance: &PosedLeg) -> bool {
    if stance.is_unturned() {
        return true;
    }
    // a line that is level at gear down is not once the leg has turned
    a == Carrier::Airframe && b == Carrier::Airframe
}

/// Neighbors within one outline must not coincide.
fn same_list(a: &str, b: &str) -> bool {
    match (fields::entry(a), fields::entry(b)) {
        (Some((a, _)), Some((b, _))) => a == b,
        _ => false,
    }
}

/// What the point `target` (m, at gear down) snaps to at a scale of `scale` (px/m).
pub(super) fn snap(
    state: &State,
    grip: &Grip,
    stance: &PosedLeg,
    target: Point,
    scale: f64,
) -> Option<Snapped> {
    let reach = REACH_PX / scale;
    // as far as the actuator reaches: a limit, on which nobody is to be caught who comes near it only
    if let Some((point, bound)) =
        scene::stroke(state).and_then(|stroke| stroke.caught(target, LIMIT_REACH_PX / scale))
    {
        return Some(Snapped {
            point,
            to: Vec::new(),
            text: stroke::caught_words(bound),
        });
    }
    let others: Vec<Grip> = scene::grips(state.gear(), state.session.leg)
        .into_iter()
        .filter(|other| other.path != grip.path)
        .filter(|other| comparable(grip.carrier, other.carrier, stance))
        .collect();
    // on another point: corners only, since two joints in one place are no mechanism
    if grip.corner
        && let Some(on) = nearest(&others, |other| {
            let far = if same_list(&other.path, &grip.path) {
                f64::INFINITY
            } else {
                (other.point - target).norm()
            };
            (far, reach)
        })
    {
        return Some(Snapped {
            point: on.point,
            to: vec![on.point],
            text: caught_words(Caught::On, &name(state.gear(), on)),
        });
    }
    // level or above: joints, and the corners next to a corner
    let lines: Vec<Grip> = others
        .into_iter()
        .filter(|other| !other.corner || grip.corner && same_list(&other.path, &grip.path))
        .collect();
    let level = nearest(&lines, |other| ((other.point.y - target.y).abs(), reach));
    let above = nearest(&lines, |other| ((other.point.x - target.x).abs(), reach));
    let point = Point::new(
        above.map_or(target.x, |other| other.point.x),
        level.map_or(target.y, |other| other.point.y),
    );
    // both to the same joint would put one on the other
    let coincides = lines.iter().any(|other| other.point == point);
    match (level, above) {
        (None, None) => None,
        (Some(_), Some(_)) if coincides => None,
        (level, above) => {
            let mut texts = Vec::new();
            texts
                .extend(level.map(|other| caught_words(Caught::Level, &name(state.gear(), other))));
            texts
                .extend(above.map(|other| caught_words(Caught::Plumb, &name(state.gear(), other))));
            Some(Snapped {
                point,
                to: level.into_iter().chain(above).map(|g| g.point).collect(),
                text: texts.join(", "),
            })
        }
    }
}

fn nearest(grips: &[Grip], measure: impl Fn(&Grip) -> (f64, f64)) -> Option<&Grip> {
    grips
        .iter()
        .map(|grip| (measure(grip), grip))
        .filter(|((far, reach), _)| far <= reach)
        .min_by(|((a, _), _), ((b, _), _)| a.total_cmp(b))
        .map(|(_, grip)| grip)
}

fn name(gear: &Gear, grip: &Grip) -> String {
    scene::point_name(gear, &grip.path)
}
