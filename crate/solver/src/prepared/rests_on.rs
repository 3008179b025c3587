//! Which parts of a leg its path, its clearances, its forces and its fall rest on. Every field is named, so
//! that a new one has to be thought of here.
use crate::model::{Actuator, Leg, LegBody, Strut, Wheel};

/// Whether two legs move alike: linkage and sweep of the one are those of the other.
pub(super) fn move_alike(a: &Leg, b: &Leg) -> bool {
    path(a) == path(b)
}

/// Whether two legs that move alike have the same clearances.
pub(super) fn clear_alike(a: &Leg, b: &Leg) -> bool {
    outlines(a) == outlines(b)
}

/// Whether two legs that move alike need the same forces, of the same source.
pub(super) fn push_alike(a: &Leg, b: &Leg) -> bool {
    loads(a) == loads(b)
}

/// Whether two legs that move alike fall alike: with the same inertia besides.
pub(super) fn fall_alike(a: &Leg, b: &Leg) -> bool {
    let inertia = |leg: &Leg| (leg.fall, leg.wheel.tire.diameter, leg.wheel.tire.width);
    loads(a) == loads(b) && inertia(a) == inertia(b) && a.body.outline == b.body.outline
}

fn path(leg: &Leg) -> impl PartialEq + '_ {
    let Leg {
        name: _,
        view,
        trunnion,
        out_of_plane: _,
        swing_up,
        body: _,
        strut,
        wheel: _,
        brace,
        actuator,
        drive: _,
        shared_drive: _,
        drive_ratio: _,
        air: _,
        fall: _,
        springs: _,
        pins: _,
        well: _,
        seen_stop: _,
    } = leg;
    let Strut {
        axle,
        axis_bottom,
        axis_top,
        sliding_outline: _,
        shortening,
    } = strut;
    let Actuator {
        mount,
        attach,
        attach_to,
        bore: _,
        rod: _,
        shortest,
        longest,
        body_diameter: _,
        body_length: _,
        body_at: _,
        mass: _,
        seal_friction: _,
        seal_break_out: _,
        rod_end_pitch: _,
    } = actuator;
    let own = (view, trunnion, swing_up, brace);
    let strut = (axle, axis_bottom, axis_top, shortening);
    (own, strut, (mount, attach, attach_to, shortest, longest))
}

fn outlines(leg: &Leg) -> impl PartialEq + '_ {
    let Leg {
        name: _,
        view: _,
        trunnion: _,
        out_of_plane,
        swing_up: _,
        body,
        strut,
        wheel,
        brace: _,
        actuator,
        drive: _,
        shared_drive: _,
        drive_ratio: _,
        air: _,
        fall: _,
        springs: _,
        pins: _,
        well,
        seen_stop: _,
    } = leg;
    let LegBody {
        outline,
        mass: _,
        centre: _,
    } = body;
    let Strut {
        axle: _,
        axis_bottom: _,
        axis_top: _,
        sliding_outline,
        shortening: _,
    } = strut;
    let Wheel {
        tire,
        former: _,
        mass: _,
        lean,
    } = wheel;
    let Actuator {
        mount: _,
        attach: _,
        attach_to: _,
        bore: _,
        rod,
        shortest: _,
        longest: _,
        body_diameter,
        body_length,
        body_at,
        mass: _,
        seal_friction: _,
        seal_break_out: _,
        rod_end_pitch: _,
    } = actuator;
    let actuator = (rod, body_diameter, body_length, body_at);
    let leg = (outline, sliding_outline, out_of_plane);
    (leg, (tire, lean), actuator, well)
}

/// What moves a leg and holds it back, and what it weighs.
fn loads(leg: &Leg) -> impl PartialEq + '_ {
    let Leg {
        name: _,
        view,
        trunnion: _,
        out_of_plane: _,
        swing_up: _,
        body,
        strut: _,
        wheel,
        brace: _,
        actuator,
        drive,
        shared_drive,
        drive_ratio,
        air,
        fall,
        springs,
        pins,
        well: _,
        seen_stop: _,
    } = leg;
    let LegBody {
        outline: _,
        mass,
        centre,
    } = body;
    let Wheel {
        tire: _,
        former: _,
        mass: wheel_mass,
        lean: _,
    } = wheel;
    let Actuator {
        mount: _,
        attach: _,
        attach_to: _,
        bore,
        rod,
        shortest: _,
        longest: _,
        body_diameter: _,
        body_length: _,
        body_at: _,
        mass: actuator_mass,
        seal_friction,
        seal_break_out,
        rod_end_pitch: _,
    } = actuator;
    let masses = (mass, centre, wheel_mass, actuator_mass);
    let actuator = (bore, rod, seal_friction, seal_break_out);
    let drive = (drive, shared_drive, drive_ratio);
    (masses, actuator, drive, (view, air, fall, springs, pins))
}
