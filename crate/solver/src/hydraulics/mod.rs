//! What fluid does in lines, whoever asks: a fall without pressure or a run against time.

/// Orifice: flow by pressure and pressure by flow.
mod orifice;

pub(crate) use orifice::Line;
pub use orifice::{
    LAMINAR_BELOW, LAMINAR_IN_A_FALL, NO_PRESSURE, OPEN_LINE, conductance, flow, pressure,
};
