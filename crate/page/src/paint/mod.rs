//! Painting a scene on a canvas: marks in, pixels out, no geometry.

mod layers;
mod line_key;
mod painter;
mod patch;
mod starters;
mod surface;
mod theme;

pub(crate) use layers::Layers;
pub(crate) use line_key::LineKey;
pub(crate) use painter::Painter;
pub(crate) use patch::Place;
pub(crate) use starters::paint_starters;
pub(crate) use surface::Surface;
