//! Loads, virtual work, free bodies, pressures.
