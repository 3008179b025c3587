//! Where a path leads in the gear, to read and to write, in one table.
use gearswing_gear::model::{Brace, Gear, Grown, Leg, Point, Shape, Shortening, Tire};

use super::path::{Seg, Seg::At, Seg::Key, steps};

macro_rules! places {
    ($place:ident, $find:ident, $leg:ident, $tire:ident, $brace:ident, $actuator:ident,
     $seen:path, $spring:path, $supply:path, $drive:path, $coordinate:ident, $points:ident, $get:ident, $as_ref:ident, $($m:tt)?) => {
        /// What a path leads to.
        pub(crate) enum $place<'g> {
            /// A number that is always there.
            Number(&'g $($m)? f64),
            /// A number that may be left out.
            Optional(&'g $($m)? Option<f64>),
            /// A text.
            Text(&'g $($m)? String),
            /// A point.
            Point(&'g $($m)? Point),
            /// A list of points.
            Points(&'g $($m)? Vec<Point>),
        }

        /// Follows a path; `None` when there is nothing of that path in this gear.
        pub(crate) fn $find<'g>(gear: &'g $($m)? Gear, path: &str) -> Option<$place<'g>> {
            use $place::{Number, Optional, Text};
            Some(match steps(path)?.as_slice() {
                [Key("name")] => Text(&$($m)? gear.name),
                [Key("note")] => Text(&$($m)? gear.note),
                [Key("emergency_pump_pa")] => Optional(&$($m)? gear.emergency_pump),
                [Key("friction_times_required")] => {
                    Optional(&$($m)? gear.friction_times_required)
                }
                [Key("conditions"), Key(key)] => {
                    let c = &$($m)? gear.conditions;
                    match *key {
                        "gear_speed_m_s" => return Some(Optional(&$($m)? c.gear_speed)),
                        "stall_speed_m_s" => return Some(Optional(&$($m)? c.stall_speed)),
                        "climb_pitch_rad" => return Some(Optional(&$($m)? c.climb_pitch)),
                        "turn_load_factor" => {
                            return Some(Optional(&$($m)? c.turn_load_factor));
                        }
                        _ => {}
                    }
                    Number(match *key {
                        "load_factor" => &$($m)? c.load_factor,
                        "pitch_rad" => &$($m)? c.pitch,
                        "bank_rad" => &$($m)? c.bank,
                        "airspeed_m_s" => &$($m)? c.airspeed,
                        "sideslip_rad" => &$($m)? c.sideslip,
                        "air_density_kg_m3" => &$($m)? c.air_density,
                        _ => return None,
                    })
                }
                [Key("supply"), rest @ ..] => return $supply(&$($m)? gear.supply, rest),
                [Key("fluid"), Key("density_kg_m3")] => Number(&$($m)? gear.fluid.density),
                [Key("clearance_rule"), Key(key)] => {
                    let r = &$($m)? gear.clearance_rule;
                    Optional(match *key {
                        "tire_new_m" => &$($m)? r.tire_new,
                        "tire_grown_m" => &$($m)? r.tire_grown,
                        "parts_m" => &$($m)? r.parts,
                        _ => return None,
                    })
                }
                [Key("legs"), At(leg), rest @ ..] => return $leg(gear.legs.$get(*leg)?, rest),
                _ => return None,
            })
        }

        fn $leg<'g>(leg: &'g $($m)? Leg, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            use $place::{Number, Optional, Text};
            Some(match rest {
                [Key("name")] => Text(&$($m)? leg.name),
                [Key("shared_drive")] => Text(&$($m)? leg.shared_drive),
                [Key("drive_ratio")] => Number(&$($m)? leg.drive_ratio),
                [Key("out_of_plane"), Key(key)] => {
                    let beside = &$($m)? leg.out_of_plane;
                    Optional(match *key {
                        "trunnion_skew_rad" => &$($m)? beside.trunnion_skew,
                        "wheel_skew_rad" => &$($m)? beside.wheel_skew,
                        "room_near_m" => &$($m)? beside.room_near,
                        "room_far_m" => &$($m)? beside.room_far,
                        _ => return None,
                    })
                }
                [Key("swing_up_rad")] => Number(&$($m)? leg.swing_up),
                [Key("trunnion_m"), rest @ ..] => return $coordinate(&$($m)? leg.trunnion, rest),
                [Key("body"), Key("mass_kg")] => Number(&$($m)? leg.body.mass),
                [Key("body"), Key("centre_m"), rest @ ..] => {
                    return $coordinate(&$($m)? leg.body.centre, rest);
                }
                [Key("body"), Key("outline_m"), rest @ ..] => {
                    return $points(&$($m)? leg.body.outline, rest);
                }
                [Key("strut"), Key("axle_m"), rest @ ..] => {
                    return $coordinate(&$($m)? leg.strut.axle, rest);
                }
                [Key("strut"), Key("axis_bottom_m"), rest @ ..] => {
                    return $coordinate(&$($m)? leg.strut.axis_bottom, rest);
                }
                [Key("strut"), Key("axis_top_m"), rest @ ..] => {
                    return $coordinate(&$($m)? leg.strut.axis_top, rest);
                }
                [Key("strut"), Key("sliding_outline_m"), rest @ ..] => {
                    return $points(&$($m)? leg.strut.sliding_outline, rest);
                }
                [Key("strut"), Key("shortening"), rest @ ..] => {
                    match (&$($m)? leg.strut.shortening, rest) {
                        (
                            Shortening::BeforeSwing { amount },
                            [Key("before_swing"), Key("amount_m")],
                        ) => Number(amount),
                        (
                            Shortening::WithTravel { table },
                            [Key("with_travel"), Key("table"), At(row), Key(key)],
                        ) => {
                            let row = table.$get(*row)?;
                            match *key {
                                "travel" => Number(&$($m)? row.travel),
                                "amount_m" => Number(&$($m)? row.amount),
                                _ => return None,
                            }
                        }
                        _ => return None,
                    }
                }
                [Key("wheel"), Key("mass_kg")] => Number(&$($m)? leg.wheel.mass),
                [Key("wheel"), Key("lean_rad")] => Number(&$($m)? leg.wheel.lean),
                [Key("wheel"), Key("tire"), rest @ ..] => {
                    return $tire(&$($m)? leg.wheel.tire, rest);
                }
                [Key("wheel"), Key("former"), rest @ ..] => {
                    return $tire(leg.wheel.former.$as_ref()?, rest);
                }
                [Key("brace"), rest @ ..] => return $brace(&$($m)? leg.brace, rest),
                [Key("actuator"), rest @ ..] => return $actuator(leg, rest),
                [Key("air"), Key("wheel_drag_area_m2")] => {
                    Number(&$($m)? leg.air.wheel_drag_area)
                }
                [Key("air"), Key("leg_drag_area_m2")] => Number(&$($m)? leg.air.leg_drag_area),
                [Key("drive"), rest @ ..] => return $drive(&$($m)? leg.drive, rest),
                [Key("fall"), Key(key)] => {
                    let fall = &$($m)? leg.fall;
                    Optional(match *key {
                        "body_inertia_kg_m2" => &$($m)? fall.body_inertia,
                        "return_orifice_m" => &$($m)? fall.return_orifice,
                        "discharge_coefficient" => &$($m)? fall.discharge,
                        "knee_play_m" => &$($m)? fall.knee_play,
                        "pin_break_out" => &$($m)? fall.pin_break_out,
                        _ => return None,
                    })
                }
                [Key("seen_stop"), rest @ ..] => {
                    return $seen(leg.seen_stop.$as_ref()?, rest);
                }
                [Key("springs"), At(at), Key("name")] => {
                    Text(&$($m)? leg.springs.$get(*at)?.name)
                }
                [Key("springs"), At(at), Key("kind"), rest @ ..] => {
                    return $spring(&$($m)? leg.springs.$get(*at)?.kind, rest);
                }
                [Key("pins"), Key(pin), Key(key)] => {
                    let pins = &$($m)? leg.pins;
                    let pin = match *pin {
                        "trunnion" => &$($m)? pins.trunnion,
                        "brace_pivot" => &$($m)? pins.brace_pivot,
                        "knee" => &$($m)? pins.knee,
                        "leg_attach" => &$($m)? pins.leg_attach,
                        "actuator_mount" => &$($m)? pins.actuator_mount,
                        "actuator_attach" => &$($m)? pins.actuator_attach,
                        _ => return None,
                    };
                    Optional(match *key {
                        "radius_m" => &$($m)? pin.radius,
                        "friction" => &$($m)? pin.friction,
                        "couple_n_m" => &$($m)? pin.couple,
                        _ => return None,
                    })
                }
                [Key("well"), At(at), rest @ ..] => {
                    let obstacle = leg.well.$get(*at)?;
                    match rest {
                        [Key("name")] => Text(&$($m)? obstacle.name),
                        [Key("required_clearance_m")] => {
                            Optional(&$($m)? obstacle.required_clearance)
                        }
                        [Key("shape"), Key(kind), Key("points_m"), rest @ ..] => {
                            match (&$($m)? obstacle.shape, *kind) {
                                (Shape::Solid { points }, "solid")
                                | (Shape::Surface { points }, "surface") => {
                                    return $points(points, rest);
                                }
                                _ => return None,
                            }
                        }
                        _ => return None,
                    }
                }
                _ => return None,
            })
        }

        fn $tire<'g>(tire: &'g $($m)? Tire, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            use $place::{Number, Text};
            Some(match rest {
                [Key("size")] => Text(&$($m)? tire.size),
                [Key("diameter_m")] => Number(&$($m)? tire.diameter),
                [Key("width_m")] => Number(&$($m)? tire.width),
                [Key("shoulder_radius_m")] => Number(&$($m)? tire.shoulder_radius),
                [Key("rim_diameter_m")] => Number(&$($m)? tire.rim_diameter),
                [Key("grown"), Key("given"), Key(key)] => match &$($m)? tire.grown {
                    Grown::Given { diameter, width, .. } => Number(match *key {
                        "diameter_m" => diameter,
                        "width_m" => width,
                        _ => return None,
                    }),
                    Grown::ByRule => return None,
                },
                _ => return None,
            })
        }

        fn $brace<'g>(brace: &'g $($m)? Brace, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            use $place::{Number, Optional};
            match (brace, rest) {
                (Brace::Folding(b), [Key("folding"), rest @ ..]) => match rest {
                    [Key("airframe_pivot_m"), rest @ ..] => {
                        $coordinate(&$($m)? b.airframe_pivot, rest)
                    }
                    [Key("knee_m"), rest @ ..] => $coordinate(&$($m)? b.knee, rest),
                    [Key("leg_attach_m"), rest @ ..] => $coordinate(&$($m)? b.leg_attach, rest),
                    [Key("excursion_allowed_m")] => {
                        Some(Optional(&$($m)? b.excursion_allowed))
                    }
                    [Key("upper"), Key("thickness_m")] => Some(Number(&$($m)? b.upper.thickness)),
                    [Key("upper"), Key("mass_kg")] => Some(Number(&$($m)? b.upper.mass)),
                    [Key("lower"), Key("thickness_m")] => Some(Number(&$($m)? b.lower.thickness)),
                    [Key("lower"), Key("mass_kg")] => Some(Number(&$($m)? b.lower.mass)),
                    _ => None,
                },
                (Brace::Sliding(b), [Key("sliding"), rest @ ..]) => match rest {
                    [Key("airframe_pivot_m"), rest @ ..] => {
                        $coordinate(&$($m)? b.airframe_pivot, rest)
                    }
                    [Key("leg_attach_m"), rest @ ..] => $coordinate(&$($m)? b.leg_attach, rest),
                    [Key("shortest_m")] => Some(Number(&$($m)? b.shortest)),
                    [Key("longest_m")] => Some(Number(&$($m)? b.longest)),
                    [Key("thickness_m")] => Some(Number(&$($m)? b.thickness)),
                    [Key("mass_kg")] => Some(Number(&$($m)? b.mass)),
                    _ => None,
                },
                _ => None,
            }
        }

        fn $actuator<'g>(leg: &'g $($m)? Leg, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            let a = &$($m)? leg.actuator;
            Some($place::Number(match rest {
                [Key("mount_m"), rest @ ..] => return $coordinate(&$($m)? a.mount, rest),
                [Key("attach_m"), rest @ ..] => return $coordinate(&$($m)? a.attach, rest),
                [Key("bore_m")] => &$($m)? a.bore,
                [Key("rod_m")] => &$($m)? a.rod,
                [Key("shortest_m")] => &$($m)? a.shortest,
                [Key("longest_m")] => &$($m)? a.longest,
                [Key("body_diameter_m")] => &$($m)? a.body_diameter,
                [Key("body_length_m")] => &$($m)? a.body_length,
                [Key("mass_kg")] => &$($m)? a.mass,
                [Key("seal_friction_n")] => {
                    return Some($place::Optional(&$($m)? a.seal_friction));
                }
                [Key("seal_break_out_n")] => {
                    return Some($place::Optional(&$($m)? a.seal_break_out));
                }
                _ => return None,
            }))
        }

        pub(super) fn $coordinate<'g>(point: &'g $($m)? Point, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            match rest {
                [] => Some($place::Point(point)),
                [At(axis)] if *axis < 2 => {
                    let coordinate = if *axis == 0 { &$($m)? point.x } else { &$($m)? point.y };
                    Some($place::Number(coordinate))
                }
                _ => None,
            }
        }

        fn $points<'g>(points: &'g $($m)? Vec<Point>, rest: &[Seg<'_>]) -> Option<$place<'g>> {
            match rest {
                [] => Some($place::Points(points)),
                [At(at), rest @ ..] => $coordinate(points.$get(*at)?, rest),
                _ => None,
            }
        }
    };
}

places!(
    PlaceRef,
    find,
    in_leg,
    in_tire,
    in_brace,
    in_actuator,
    super::seen::in_seen,
    super::spring::in_spring,
    super::supply::in_supply,
    super::supply::in_drive,
    in_point,
    in_points,
    get,
    as_ref,
);
places!(
    PlaceMut,
    find_mut,
    in_leg_mut,
    in_tire_mut,
    in_brace_mut,
    in_actuator_mut,
    super::seen::in_seen_mut,
    super::spring::in_spring_mut,
    super::supply::in_supply_mut,
    super::supply::in_drive_mut,
    in_point_mut,
    in_points_mut,
    get_mut,
    as_mut,
    mut
);
