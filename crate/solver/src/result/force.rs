//! Actuator force and pressure over the stroke.
use std::cmp::Ordering;

use serde::Serialize;

use super::{Bind, CaseForce, CaseOutcome, JointLoad, LoadCase, Motion, Place};

/// Direction in which the actuator works to retract.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Stroke {
    /// It lengthens: the full bore works.
    Push,
    /// It shortens: bore less rod works.
    Pull,
}

/// What drives a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum DrivenBy {
    /// Fluid in its actuator: pressures are in pascals.
    Fluid,
    /// An electric actuator: where a pressure in pascals stands elsewhere, its force in newtons does.
    Electricity,
}

/// What sets the pressure available.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum SetBy {
    /// The figure in the file.
    File,
    /// The source, which makes no more against a stopped leg.
    Source,
}

/// Force and pressure of one leg.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct Force {
    /// Whether it pushes or pulls to retract, over the greater part of the swing.
    pub stroke: Stroke,
    /// Bore area (m2).
    #[serde(rename = "bore_area_m2")]
    pub bore_area: f64,
    /// Bore less rod area (m2).
    #[serde(rename = "annulus_area_m2")]
    pub annulus_area: f64,
    /// Length of stroke used from down to up (m).
    #[serde(rename = "stroke_used_m")]
    pub stroke_used: f64,
    /// What drives the leg.
    pub driven_by: DrivenBy,
    /// Pressure available to retract (Pa): that of the file, or the most that the source makes where that
    /// is less; where it changes on the way, what is left at its end.
    #[serde(rename = "available_pressure_pa")]
    pub available_pressure: f64,
    /// The same while the electric actuators of all legs stand stalled on the battery (N); absent with
    /// fluid.
    #[serde(rename = "available_among_all_n")]
    pub available_among_all: Option<f64>,
    /// What sets it.
    pub available_set_by: SetBy,
    /// Pressure available to extend (Pa), as that to retract.
    #[serde(rename = "available_extend_pressure_pa")]
    pub available_extend_pressure: f64,
    /// What sets that.
    pub available_extend_set_by: SetBy,
    /// Share of the pressure available that must be left over (ratio).
    pub required_margin: f64,
    /// The other legs on its drive, by index: pressures are then those of the drive, which moves all.
    pub shares_drive_with: Vec<usize>,
    /// First place at which nothing moves another leg on its drive.
    pub partner_stands: Option<PartnerStands>,
    /// Place that needs most pressure to retract; absent when the force is worked out nowhere.
    pub peak: Option<ForcePeak>,
    /// First place on the way up where the pressure does not suffice.
    pub stalls_at: Option<Place>,
    /// Place that needs most pressure to extend.
    pub extend_peak: Option<ForcePeak>,
    /// Largest load on the actuator mount in the case as set (N).
    #[serde(rename = "largest_mount_load_n")]
    pub largest_mount_load: Option<f64>,
    /// Where the pins bind in the case as set; empty = nowhere.
    pub binds: Vec<Bind>,
    /// Load cases side by side.
    pub cases: Vec<CaseForce>,
    /// Row in `cases` that needs most pressure.
    pub hardest_case: Option<usize>,
    /// Largest load of each joint over the stroke and all cases.
    pub joint_loads: Vec<JointLoad>,
}

impl Force {
    /// The less of the pressures available to retract and to extend (Pa).
    #[must_use]
    pub fn least_available(&self) -> f64 {
        self.available_pressure.min(self.available_extend_pressure)
    }

    /// Thrust while it retracts (N) of what its drive gives: of a pressure of fluid (Pa), which works on its
    /// piston, or of a force of an electric actuator (N), which is it.
    #[must_use]
    pub fn retracting_thrust(&self, given: f64) -> f64 {
        match (self.driven_by, self.stroke) {
            (DrivenBy::Fluid, Stroke::Push) => given * self.bore_area,
            (DrivenBy::Fluid, Stroke::Pull) => given * self.annulus_area,
            (DrivenBy::Electricity, _) => given,
        }
    }

    /// A load case.
    #[must_use]
    pub fn case(&self, case: LoadCase) -> Option<&CaseForce> {
        self.cases.iter().find(|one| one.case == case)
    }

    /// First place on the way up where the pressure does not suffice in a case.
    #[must_use]
    pub fn stalls_in(&self, case: LoadCase) -> Option<Place> {
        match self.case(case)?.outcome {
            CaseOutcome::Worked { stalls_at, .. } => stalls_at,
            CaseOutcome::Missing { .. } => None,
        }
    }
}

/// Another leg on the same drive that nothing moves.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct PartnerStands {
    /// That leg, by index.
    pub leg: usize,
    /// Which way.
    pub motion: Motion,
    /// Where this leg is then.
    pub place: Place,
}

/// The worst place of a stroke.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub struct ForcePeak {
    /// Where.
    pub place: Place,
    /// Actuator force of the fluid in the moving direction (N).
    #[serde(rename = "effort_n")]
    pub effort: f64,
    /// Pressure needed (Pa).
    #[serde(rename = "pressure_pa")]
    pub pressure: f64,
    /// Pressure available at this place (Pa).
    #[serde(rename = "available_pa")]
    pub available: f64,
    /// Available less needed, as a share of the available pressure (ratio); negative = short.
    pub margin: f64,
    /// Load on the actuator mount there (N).
    #[serde(rename = "mount_load_n")]
    pub mount_load: f64,
}

impl ForcePeak {
    /// Order of hardness: what has the lesser margin is harder, of those alike what needs more pressure,
    /// then more effort.
    #[must_use]
    pub fn hardness(&self, other: &Self) -> Ordering {
        let by_margin = other.margin.total_cmp(&self.margin);
        by_margin
            .then(self.pressure.total_cmp(&other.pressure))
            .then(self.effort.total_cmp(&other.effort))
    }

    /// Whether it is harder than another.
    #[must_use]
    pub fn is_harder_than(&self, other: &Self) -> bool {
        self.hardness(other) == Ordering::Greater
    }
}
