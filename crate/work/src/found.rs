//! What is found, each as soon as it is there.
use gearswing_solver::result::{Cycle, SupplyError};
use gearswing_solver::stop::StopAnswer;
use serde::{Deserialize, Serialize};

/// One result.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[expect(
    clippy::large_enum_variant,
    reason = "there are a few at a time, and they travel boxed"
)]
pub enum Found {
    /// The gear against time.
    Times {
        /// Level on jacks; otherwise with attitude and air as the file sets them.
        on_jacks: bool,
        /// Up and down again.
        cycle: Result<Cycle, SupplyError>,
    },
    /// What explains a stop.
    Stop(StopAnswer),
}
