//! Tests of the clearances: closed forms against sampling and an outside library, the certificate
//! against dense samples of random legs, and the traps.

/// Hollow outlines, thin obstacles, sides of a surface, mirrored legs.
mod cases;
/// Certified minimum and first contact of random legs.
mod certified;
/// Closed forms.
mod primitives;
/// Random legs.
mod support;
