//! Structure in the well: thick outlines, hatching, names.
use gearswing_gear::model::{Leg, Point};
use gearswing_report::name_words;

use super::hatch::{hatch, ticks};
use super::labels::Placer;
use super::{Pen, Role};

/// Outlines and hatching of every piece.
pub(crate) fn well(pen: &mut Pen, leg: &Leg) {
    for obstacle in &leg.well {
        let points = obstacle.shape.points();
        if obstacle.shape.is_closed() {
            hatch(pen, Role::StructureHatch, points);
        } else {
            ticks(pen, Role::StructureHatch, points);
        }
        pen.path(Role::Structure, points, obstacle.shape.is_closed());
    }
}

/// Names of every piece, or of one `only`, beside the corner that lies farthest from the trunnion.
pub(crate) fn names(pen: &mut Pen, placer: &mut Placer, leg: &Leg, only: Option<usize>) {
    for (index, obstacle) in leg.well.iter().enumerate() {
        if only.is_some_and(|only| only != index) {
            continue;
        }
        let far = |p: &&Point| (*p - leg.trunnion).norm();
        let corner = obstacle
            .shape
            .points()
            .iter()
            .filter(|p| {
                let at = pen.view.to_screen(**p);
                let (width, height) = pen.view.size_px();
                at.x_px >= 0.0 && at.x_px <= width && at.y_px >= 0.0 && at.y_px <= height
            })
            .max_by(|a, b| far(a).total_cmp(&far(b)));
        if let Some(corner) = corner {
            let at = pen.view.to_screen(*corner);
            placer.label(pen, Role::Label, at, &name_words(&obstacle.name));
        }
    }
}
