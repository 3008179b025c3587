//! The key to the lines: one sample of each line type beside its meaning, painted like the drawing.

use super::{Painter, Place, Surface};
use crate::dom::{by_id, element, element_of};
use crate::error::Result;
use gearswing_app::scene::{Mark, Role, ScreenPoint, Shape};
use gearswing_app::words::line_key::{Line, line_words};
use web_sys::{HtmlCanvasElement, HtmlElement};

/// Size of a sample (CSS px).
const SIZE_PX: (f64, f64) = (64.0, 14.0);

/// What is explained, in reading order.
const LINES: [(Role, Line); 15] = [
    (Role::Moving, Line::Outline),
    (Role::StructureHatch, Line::Structure),
    (Role::Grown, Line::GrownTire),
    (Role::Ghost, Line::OtherEnd),
    (Role::Envelope, Line::Swept),
    (Role::CentreLine, Line::CenterLine),
    (Role::Spring, Line::Spring),
    (Role::Dimension, Line::Dimension),
    (Role::Contact, Line::Contact),
    (Role::Before, Line::Before),
    (Role::Load, Line::Load),
    (Role::Snap, Line::Caught),
    (Role::Reach, Line::Reach),
    (Role::CurveAvailable, Line::Held),
    (Role::CurveParts, Line::Above),
];

/// The samples.
pub(crate) struct LineKey {
    samples: Vec<(Role, Surface)>,
}

impl LineKey {
    /// Makes the list.
    pub(crate) fn mount() -> Result<Self> {
        let list: HtmlElement = by_id("line-key-list")?;
        let mut samples = Vec::with_capacity(LINES.len());
        for (role, line) in LINES {
            let item = element("li", "")?;
            let canvas: HtmlCanvasElement = element_of("canvas", "sample")?;
            canvas.set_attribute("aria-hidden", "true")?;
            let text = element("span", "")?;
            text.set_text_content(Some(line_words(line)));
            item.append_child(&canvas)?;
            item.append_child(&text)?;
            list.append_child(&item)?;
            samples.push((role, Surface::of(canvas)?));
        }
        Ok(Self { samples })
    }

    /// Paints the samples in the theme in force.
    pub(crate) fn paint(&mut self, painter: &mut Painter) -> Result<()> {
        for (role, surface) in &mut self.samples {
            painter.paint(surface, Place::whole(SIZE_PX), &sample(*role))?;
        }
        Ok(())
    }
}

/// One line from end to end, or a row of hatching.
fn sample(role: Role) -> Vec<Mark> {
    let (width_px, height_px) = SIZE_PX;
    let line = |from: (f64, f64), to: (f64, f64)| Mark {
        role,
        shape: Shape::Path {
            points: [from, to]
                .map(|(x_px, y_px)| ScreenPoint { x_px, y_px })
                .to_vec(),
            closed: false,
            filled: false,
        },
    };
    match role {
        Role::StructureHatch => (0..9)
            .map(|at| {
                let x_px = 6.0 * f64::from(at) + 2.0;
                line((x_px, height_px - 1.0), (x_px + 10.0, 1.0))
            })
            .collect(),
        Role::Spring => (0..8)
            .map(|at| {
                let (x_px, up) = (8.0 * f64::from(at), at % 2 == 0);
                let (from, to) = if up { (12.0, 2.0) } else { (2.0, 12.0) };
                line((x_px, from), (x_px + 8.0, to))
            })
            .collect(),
        Role::Load => {
            let y_px = height_px / 2.0;
            let tip = |x: f64, y: f64| ScreenPoint {
                x_px: width_px - x,
                y_px: y_px + y,
            };
            let head = Shape::Path {
                points: vec![tip(0.0, 0.0), tip(12.0, 4.0), tip(12.0, -4.0)],
                closed: true,
                filled: true,
            };
            let shaft = line((0.0, y_px), (width_px - 12.0, y_px));
            vec![shaft, Mark { role, shape: head }]
        }
        _ => vec![line((0.0, height_px / 2.0), (width_px, height_px / 2.0))],
    }
}
