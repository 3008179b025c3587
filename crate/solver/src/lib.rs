//! Retract arc, clearance, force and lock of one landing-gear leg.
