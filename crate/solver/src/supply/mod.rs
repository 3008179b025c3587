//! The gear against time: pump or battery, orifices, stages, switches, stalls.
//!
//! **What is solved.** Everything is in balance at each instant (quasi-static: no inertia, no
//! compressible fluid, no motor run-up). The state is the fluid in each leg's present stage. Its
//! rate is the flow through the leg's orifice, Cd·A·√(2(p − pL)/ρ), where the load pressure pL comes
//! from the forces at the leg's stations and the manifold pressure p from the balance of flows (a
//! bracketed root). No leg runs back: an orifice under reverse pressure passes nothing, and so the
//! leg with the lowest load pressure moves first. Down, a leg that its weight drives runs ahead of
//! the pump, held back by its orifice alone; the manifold then stands at the return pressure, from
//! which the leg draws what the pump does not give.
//! A leg that touches its well by the drawing stops there, as one whose parts let it go no further; the
//! source then pushes against it, and the way down starts from there.
//!
//! **How.** A published pair of orders 5 and 4 (Dormand–Prince) with error control and continuous
//! output. Where it is held back because legs share the flow through wide lines against loads that rise
//! steeply, or creep with the gas of an accumulator, a published implicit method of order 4 takes its place.
//! Places are events by the fluid itself and cannot be missed; pressures and currents are looked at
//! four times within a step, which is no longer than [`LARGEST_STEP`] (of up to three legs)
//! and [`LARGEST_SHARE`]. An event is bracketed on the
//! continuous output, then stepped to anew. The load is a smooth curve through its stations, so
//! that no order is lost. Tests hold it: times against closed forms, volumes to 1e-6, energies,
//! and times that stay the same to 1e-6 when the tolerance is tightened.

/// Flows at the manifold, currents on the bus.
mod balance;
/// Smooth curve.
mod curve;
/// Up and down again.
mod cycle;
/// Budgets and stalls of a run that has ended.
mod finish;
/// What happens on a run.
mod happen;
/// One leg on its way.
mod leg;
/// Stages of a leg.
mod leg_stages;
/// Bounds of a time step, and what counts as a stall.
mod limits;
/// Legs that may move.
mod live;
/// The next event.
mod next;
/// The accumulator after the swing.
mod refill;
/// More stations where the load bends.
mod refine;
/// A run in time.
mod run;
/// One stage.
mod stage;
/// What would free a leg.
mod stall;
/// State and its rates.
mod state;
/// How long a step is, and of which kind.
mod stepper;
/// Against stopped legs.
mod stopped;
/// First contact.
mod touch;
/// Levels that make an event.
mod watch;

#[cfg(test)]
mod tests;

pub use crate::hydraulics::{is_run_down, open_circuit_voltage, pump_holds};
pub use crate::result::SupplyError;
pub use cycle::{Cycling, SupplyOptions, cycle, cycle_prepared, is_timed};
pub(crate) use leg_stages::{Blocked, LegStages};
use limits::USUAL_LEGS;
pub use limits::{LARGEST_SHARE, LARGEST_STEP, SLOWEST_PACE};
