//! Return orifice: pressure from flow.

/// Below this pressure drop the flow goes over to laminar (Pa): a numerical figure of our own that
/// keeps the slope at rest finite; it takes part in no answer above a few hundred pascal.
pub const LAMINAR_BELOW: f64 = 100.0;

/// An orifice in the return line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Orifice {
    /// Discharge coefficient × area (m2).
    pub effective_area: f64,
    /// Density of the fluid (kg/m3).
    pub density: f64,
}

impl Orifice {
    /// Of a diameter (m) and a discharge coefficient (ratio).
    #[must_use]
    pub fn new(diameter: f64, discharge: f64, density: f64) -> Self {
        Self {
            effective_area: discharge * std::f64::consts::FRAC_PI_4 * diameter * diameter,
            density,
        }
    }

    /// Pressure drop at a flow (m3/s), with the flow's sign (Pa).
    ///
    /// Turbulent Δp = ρ/2·(Q/(Cd·A))² (any hydraulics text), joined smoothly to a straight line
    /// through rest: Δp = ρ/2·u·√(u² + u₀²), with u = Q/(Cd·A) and u₀ the speed that
    /// [`LAMINAR_BELOW`] gives.
    #[must_use]
    pub fn pressure(&self, flow: f64) -> f64 {
        let speed = flow / self.effective_area;
        let slow2 = 2.0 * LAMINAR_BELOW / self.density;
        0.5 * self.density * speed * (speed * speed + slow2).sqrt()
    }
}
