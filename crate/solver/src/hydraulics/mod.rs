//! What drives the legs, whoever asks, an answer, a fall or a run against time: pump and motor on a battery,
//! accumulator, and what an orifice lets through.

/// Battery voltage by charge.
mod battery;
/// Accumulator.
mod gas;
/// Orifice: flow by pressure and pressure by flow.
mod orifice;
/// Pump line and circuit.
mod source;

pub use battery::{is_run_down, open_circuit_voltage};
pub(crate) use gas::{Gas, Stands};
pub(crate) use orifice::Line;
pub use orifice::{LAMINAR_BELOW, NO_PRESSURE, OPEN_LINE, conductance, flow, pressure};
pub use source::pump_holds;
pub(crate) use source::{Circuit, Pump};
