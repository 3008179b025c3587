//! Scene to canvas: runs of marks of one role become one path; texts come last, with a halo.

use super::patch::Place;
use super::surface::Surface;
use super::theme::Theme;
use crate::error::Result;
use gearswing_app::scene::{Anchor, Mark, Role, ScreenPoint, Shape, Style, style};
use js_sys::{Array, Reflect};
use std::f64::consts::TAU;
use wasm_bindgen::JsValue;
use web_sys::CanvasRenderingContext2d;

/// Width of the halo around a text (CSS px).
const HALO_PX: f64 = 4.0;

/// Paints scenes in the theme in force.
pub(crate) struct Painter {
    theme: Theme,
    fill_style: JsValue,
    stroke_style: JsValue,
}

impl Painter {
    /// A painter in the theme in force.
    pub(crate) fn new() -> Result<Self> {
        let mut theme = Theme::default();
        theme.reload()?;
        Ok(Self {
            theme,
            fill_style: JsValue::from_str("fillStyle"),
            stroke_style: JsValue::from_str("strokeStyle"),
        })
    }

    /// Reads the theme's colors again.
    pub(crate) fn read_theme(&mut self) -> Result<()> {
        self.theme.reload()
    }

    /// Paints marks on a canvas that shows this part of their scene.
    pub(crate) fn paint(
        &mut self,
        surface: &mut Surface,
        place: Place,
        marks: &[Mark],
    ) -> Result<()> {
        let context = surface.begin(place)?;
        context.set_line_join("round");
        let mut rest = marks;
        while let Some(first) = rest.first() {
            let kind = Kind::of(first);
            // Fills go one by one: two that overlap in one path could cut a hole in each other.
            let length = match kind {
                Kind::Fill(_) => 1,
                _ => rest
                    .iter()
                    .take_while(|mark| Kind::of(mark) == kind)
                    .count(),
            };
            let (run, after) = rest.split_at(length);
            if kind != Kind::Text {
                self.paths(context, kind, run)?;
            }
            rest = after;
        }
        self.texts(context, marks)
    }

    /// One path for marks of one kind.
    fn paths(
        &mut self,
        context: &CanvasRenderingContext2d,
        kind: Kind,
        run: &[Mark],
    ) -> Result<()> {
        let (role, filled) = match kind {
            Kind::Line(role) => (role, false),
            Kind::Fill(role) => (role, true),
            Kind::Text => return Ok(()),
        };
        let style = style(role);
        context.begin_path();
        for mark in run {
            trace(context, &mark.shape, style.width)?;
        }
        if filled {
            let fill = self.theme.colour(style.fill)?;
            Reflect::set(context, &self.fill_style, &fill)?;
            context.fill();
        }
        if !filled || style.outlined {
            self.stroke(context, style)?;
        }
        Ok(())
    }

    fn stroke(&mut self, context: &CanvasRenderingContext2d, style: Style) -> Result<()> {
        let ink = self.theme.colour(style.ink)?;
        Reflect::set(context, &self.stroke_style, &ink)?;
        context.set_line_width(style.width);
        let dash: Array = style.dash.iter().copied().map(JsValue::from).collect();
        context.set_line_dash(&dash)?;
        context.stroke();
        Ok(())
    }

    /// All texts, over everything else, those of one font together: a change of font is dear.
    fn texts(&mut self, context: &CanvasRenderingContext2d, marks: &[Mark]) -> Result<()> {
        let paper = self.theme.colour("--paper")?;
        context.set_line_dash(&Array::new())?;
        context.set_line_width(HALO_PX);
        context.set_text_baseline("middle");
        Reflect::set(context, &self.stroke_style, &paper)?;
        let texts = || marks.iter().filter_map(Text::of);
        let mut fonts = Vec::new();
        for (bold, size_px) in texts().map(|text| text.font()) {
            if !fonts.contains(&(bold, size_px)) {
                fonts.push((bold, size_px));
            }
        }
        for (bold, size_px) in fonts {
            context.set_font(&self.theme.font(size_px, bold));
            self.texts_of(
                context,
                texts().filter(|text| text.font() == (bold, size_px)),
            )?;
        }
        Ok(())
    }

    /// Texts in the font that is set.
    fn texts_of<'s>(
        &mut self,
        context: &CanvasRenderingContext2d,
        texts: impl Iterator<Item = Text<'s>>,
    ) -> Result<()> {
        for text in texts {
            let Text {
                at,
                text,
                anchor,
                style,
                ..
            } = text;
            context.set_text_align(match anchor {
                Anchor::Start => "left",
                Anchor::Middle => "center",
                Anchor::End => "right",
            });
            let ink = self.theme.colour(style.ink)?;
            Reflect::set(context, &self.fill_style, &ink)?;
            context.stroke_text(text, at.x_px, at.y_px)?;
            context.fill_text(text, at.x_px, at.y_px)?;
        }
        Ok(())
    }
}

/// A text among the marks.
struct Text<'s> {
    at: &'s ScreenPoint,
    text: &'s str,
    anchor: Anchor,
    size_px: f64,
    style: Style,
}

impl<'s> Text<'s> {
    fn of(mark: &'s Mark) -> Option<Self> {
        match &mark.shape {
            Shape::Text {
                at,
                text,
                anchor,
                size_px,
            } => Some(Self {
                at,
                text,
                anchor: *anchor,
                size_px: *size_px,
                style: style(mark.role),
            }),
            Shape::Path { .. } | Shape::Circle { .. } => None,
        }
    }

    /// What makes its font.
    fn font(&self) -> (bool, f64) {
        (self.style.bold, self.size_px)
    }
}

/// What a run of marks has in common.
#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Line(Role),
    Fill(Role),
    Text,
}

impl Kind {
    fn of(mark: &Mark) -> Self {
        match mark.shape {
            Shape::Path { filled: true, .. } | Shape::Circle { filled: true, .. } => {
                Self::Fill(mark.role)
            }
            Shape::Path { .. } | Shape::Circle { .. } => Self::Line(mark.role),
            Shape::Text { .. } => Self::Text,
        }
    }
}

/// Adds a shape to the path under way.
fn trace(context: &CanvasRenderingContext2d, shape: &Shape, width: f64) -> Result<()> {
    match shape {
        Shape::Path { points, closed, .. } => {
            let sharp = sharpened(points, width);
            let mut points = sharp.as_ref().map_or(points.as_slice(), |pair| pair).iter();
            if let Some(first) = points.next() {
                context.move_to(first.x_px, first.y_px);
            }
            for point in points {
                context.line_to(point.x_px, point.y_px);
            }
            if *closed {
                context.close_path();
            }
        }
        Shape::Circle {
            centre, radius_px, ..
        } => {
            context.move_to(centre.x_px + radius_px, centre.y_px);
            context.arc(centre.x_px, centre.y_px, radius_px.max(0.0), 0.0, TAU)?;
        }
        Shape::Text { .. } => {}
    }
    Ok(())
}

/// Level or upright single lines of odd width, moved to the middle of a pixel row, so that grids
/// and axes are sharp.
fn sharpened(points: &[ScreenPoint], width: f64) -> Option<[ScreenPoint; 2]> {
    let &[mut a, mut b] = points else { return None };
    if width != 1.0 {
        return None;
    }
    if a.x_px == b.x_px {
        a.x_px = a.x_px.floor() + 0.5;
        b.x_px = a.x_px;
    } else if a.y_px == b.y_px {
        a.y_px = a.y_px.floor() + 0.5;
        b.y_px = a.y_px;
    } else {
        return None;
    }
    Some([a, b])
}
