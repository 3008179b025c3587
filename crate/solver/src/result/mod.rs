//! What the solver answers: data only, no sentences. Page, link, file and command read these types.

/// Load cases side by side, joint loads.
mod case;
/// Clearance of every moving part to every obstacle.
mod clearance;
/// Why clearances cannot be certified.
mod clearance_error;
/// Fall without pressure.
mod fall;
/// Faults of a model.
mod fault;
/// The three answers for a leg.
mod finding;
/// Actuator force and pressure.
mod force;
/// The result of one leg.
mod leg_result;
/// Down lock.
mod lock;
/// One row of the stations table.
mod station;
/// What may explain a stop.
mod stop;
/// The gear against time.
mod supply;
/// Why there is no result against time.
mod supply_error;
/// The way down without the normal power.
mod way_down;

pub use crate::model::Direction;
pub use case::{Bind, CaseForce, CaseOutcome, JointLoad, LoadCase, MissingInput, Motion};
pub use clearance::{
    Clearance, ClearanceCurve, Contact, CurvePoint, NotChecked, OwnClearance, OwnNotChecked,
    PairClearance, Requirement, RequirementBasis, Room, RoomClearance, RoomSide, SkewLoss,
    SkewLosses, Tightest, TireState, governing_order,
};
pub use clearance_error::ClearanceError;
pub use fall::{
    Arrival, Fall, FallAirspeed, FallEnergy, FallOutcome, FallRequired, FallShort, FallStart,
    InertiaBasis, LeastKneePush, LeastMoment, Unpowered,
};
pub use fault::{Fault, FaultKind, Faults};
pub use finding::{Assumption, Caution, Finding, FindingDetail, Question, Verdict};
pub use force::{DrivenBy, Force, ForcePeak, PartnerStands, SetBy, Stroke};
pub use leg_result::{
    Excursion, Jam, JamCause, LegResult, MechanismEvent, MechanismEventKind, Place,
};
pub use lock::{AxleLoad, AxleLoadEffect, AxlePush, Lock, LockKind};
pub use station::{Phase, Reactions, Station, StationForce};
pub use stop::{
    Check, Demand, Explanation, Finds, Fit, NextCheck, ReadingFit, StopCause, StopExplained,
};
pub use supply::{
    Breaker, Cycle, EnergyBudget, FluidBudget, Indication, LegSample, Refill, Run, RunEnd,
    RunEvent, RunEventKind, Sample, Stall, StallCause,
};
pub use supply_error::SupplyError;
pub use way_down::{HandPumpDown, WayDown};
