//! The points of a leg that can be moved, and their handles on the canvas.
use gearswing_gear::model::{Brace, Gear, Point};
use gearswing_report::page::drawing as words;

use super::{Carrier, Handle, attach_carrier, paper_of, springs, stance_of};
use crate::fields;
use crate::state::State;

/// Radius in which a mouse takes a handle (CSS px).
const JOINT_RADIUS_PX: f64 = 11.0;
/// The same for a corner of an outline (CSS px).
const CORNER_RADIUS_PX: f64 = 8.0;

/// A point that can be moved.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Grip {
    /// Path of the point.
    pub(crate) path: String,
    /// What carries it.
    pub(crate) carrier: Carrier,
    /// Corner of an outline or of structure rather than a joint.
    pub(crate) corner: bool,
    /// Where it is at gear down (m).
    pub(crate) point: Point,
}

/// The points of a leg, joints first, in tab order.
pub(crate) fn grips(gear: &Gear, index: usize) -> Vec<Grip> {
    let Some(leg) = gear.legs.get(index) else {
        return Vec::new();
    };
    let mut found = Vec::with_capacity(64);
    let mut joint = |key: &str, carrier, point| {
        found.push(Grip {
            path: format!("legs[{index}].{key}"),
            carrier,
            corner: false,
            point,
        });
    };
    joint("trunnion_m", Carrier::Airframe, leg.trunnion);
    match &leg.brace {
        Brace::None => {}
        Brace::Folding(b) => {
            joint(
                "brace.folding.airframe_pivot_m",
                Carrier::Airframe,
                b.airframe_pivot,
            );
            joint("brace.folding.knee_m", Carrier::Knee, b.knee);
            joint("brace.folding.leg_attach_m", Carrier::Leg, b.leg_attach);
        }
        Brace::Sliding(b) => {
            joint(
                "brace.sliding.airframe_pivot_m",
                Carrier::Airframe,
                b.airframe_pivot,
            );
            joint("brace.sliding.leg_attach_m", Carrier::Leg, b.leg_attach);
        }
    }
    joint("actuator.mount_m", Carrier::Airframe, leg.actuator.mount);
    joint(
        "actuator.attach_m",
        attach_carrier(leg),
        leg.actuator.attach,
    );
    joint("strut.axle_m", Carrier::Axle, leg.strut.axle);
    joint("strut.axis_bottom_m", Carrier::Leg, leg.strut.axis_bottom);
    joint("strut.axis_top_m", Carrier::Leg, leg.strut.axis_top);
    joint("body.centre_m", Carrier::Leg, leg.body.centre);
    for (at, spring) in leg.springs.iter().enumerate() {
        if let Some((kind, ends)) = springs::ends(&spring.kind) {
            for (key, end) in ends {
                let key = format!("springs[{at}].kind.{kind}.{key}.point_m");
                joint(&key, springs::carrier(end.body), end.point);
            }
        }
    }
    let mut corners = |list: String, carrier, points: &[Point]| {
        for (at, point) in points.iter().enumerate() {
            found.push(Grip {
                path: format!("legs[{index}].{list}[{at}]"),
                carrier,
                corner: true,
                point: *point,
            });
        }
    };
    corners("body.outline_m".to_owned(), Carrier::Leg, &leg.body.outline);
    corners(
        "strut.sliding_outline_m".to_owned(),
        Carrier::Axle,
        &leg.strut.sliding_outline,
    );
    for (at, obstacle) in leg.well.iter().enumerate() {
        let kind = if obstacle.shape.is_closed() {
            "solid"
        } else {
            "surface"
        };
        corners(
            format!("well[{at}].shape.{kind}.points_m"),
            Carrier::Airframe,
            obstacle.shape.points(),
        );
    }
    found
}

/// Name of a point within its leg, as "Trunnion P" or "Bay rib, corner 3".
pub(crate) fn point_name(gear: &Gear, path: &str) -> String {
    fields::path(path).map_or_else(|| path.to_owned(), |path| words::point_name(gear, path))
}

/// The handles of the selected leg, as they stand in its drawing.
pub fn handles(state: &State) -> Vec<Handle> {
    let view = paper_of(state).viewport;
    let stance = stance_of(state);
    let session = &state.session;
    let selected = session.selection.as_deref().and_then(fields::point_of);
    grips(state.gear(), session.leg)
        .into_iter()
        .map(|grip| {
            let movable = !grip.carrier.is_of_brace() || stance.is_down();
            let at = fields::path(&grip.path);
            let said = at.map(|at| words::point_at(state.gear(), at, grip.point, session.units));
            let label = words::handle_label(said.unwrap_or_default(), movable);
            Handle {
                at: view.to_screen(stance.place(grip.carrier, grip.point)),
                label,
                radius_px: if grip.corner {
                    CORNER_RADIUS_PX
                } else {
                    JOINT_RADIUS_PX
                },
                selected: selected == Some(grip.path.as_str()),
                movable,
                id: grip.path,
            }
        })
        .collect()
}
