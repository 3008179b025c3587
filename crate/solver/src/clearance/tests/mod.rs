//! Tests of the clearances: closed forms against sampling and an outside library, the certificate
//! against dense samples of random legs, and the traps.

/// Beyond the swept path.
mod beyond;
/// Bounds of the certificate, what is drawn and told.
mod bounds;
/// Hollow outlines, thin obstacles, sides of a surface, mirrored legs.
mod cases;
/// Certified minimum and first contact of random legs.
mod certified;
/// The tire against its own leg; skews and room.
mod own;
/// The same on random legs.
mod own_random;
/// Closed forms.
mod primitives;
/// Random legs.
mod support;
