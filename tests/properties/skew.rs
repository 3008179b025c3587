//! What a skew of trunnion or wheel takes off a clearance, against tires turned in three dimensions.
//!
//! Nothing here knows the bound: a tire is a cloud of points, turned about its tilted axis by a
//! general-purpose library, and seen along the normal of the drawn plane.
use std::f64::consts::{FRAC_PI_2, TAU};

use gearswing_gear::model::{
    AttachTo, Gear, Grown, Leg, Obstacle, Point, Shape, Tire as Fitted, Vector, View,
};
use gearswing_solver::clearance::skew_losses;
use gearswing_solver::result::TireState;
use gearswing_solver::tires::TireSizes;
use gearswing_tests::spatial::{Tire, V3, turned};
use gearswing_tests::{Draw, bare_gear, bare_leg, solve};

/// Poses of the swing, directions of the tilt and of the view that are tried.
const POSES: usize = 16;
const TILTS: usize = 12;
const VIEWS: usize = 72;

struct Wheel {
    gear: Gear,
    tire: Tire,
    trunnion_skew: f64,
    wheel_skew: f64,
}

/// What a wheel may lose, found by trying (m).
struct Lost {
    /// Off its reach in any direction of the plane, at any place of the swing.
    in_plane: f64,
    /// Off its reach along the normal of the plane.
    along: f64,
    /// Farthest reach of all in one direction of the plane, from the trunnion.
    farthest: f64,
}

impl Wheel {
    fn draw(at: usize, wheel_skew: f64) -> Self {
        let mut d = Draw::new(at as u64 + 1);
        let mut gear = bare_gear(bare_leg());
        let leg = &mut gear.legs[0];
        leg.view = if at.is_multiple_of(2) {
            View::Front
        } else {
            View::Side
        };
        let radius = d.between(0.01, 0.045);
        leg.wheel.tire = Fitted {
            diameter: d.between(0.3, 0.5),
            width: d.between(0.1, 0.2),
            shoulder_radius: radius,
            grown: Grown::ByRule,
            ..leg.wheel.tire.clone()
        };
        leg.wheel.lean = d.between(-0.1, 0.1);
        let (long, down) = (d.between(0.4, 1.0), d.between(-0.3, 0.3));
        leg.trunnion = Point::new(0.3, 0.2);
        leg.strut.axle = leg.trunnion + Vector::new(down.sin(), -down.cos()) * long;
        leg.strut.axis_bottom = leg.strut.axle;
        leg.strut.axis_top = leg.trunnion;
        leg.swing_up = d.between(0.6, 2.6) * if d.either() { 1.0 } else { -1.0 };
        leg.actuator.attach_to = AttachTo::Leg;
        leg.actuator.attach = leg.trunnion + Vector::new(0.0, -0.1);
        leg.actuator.mount = leg.trunnion + Vector::new(3.0, 3.0);
        leg.actuator.shortest = 0.5;
        leg.actuator.longest = 15.0;
        leg.actuator.body_length = 0.4;
        let trunnion_skew = [0.5, 1.0, 3.0, 5.0, 8.0][at / 2 % 5] * TAU / 360.0;
        leg.out_of_plane.trunnion_skew = Some(trunnion_skew);
        leg.out_of_plane.wheel_skew = Some(wheel_skew);
        let size = &leg.wheel.tire;
        let tire = Tire {
            disc: 0.5 * size.diameter - radius,
            half: 0.5 * size.width - radius,
            r: radius,
        };
        Self {
            gear,
            tire,
            trunnion_skew,
            wheel_skew,
        }
    }

    fn leg(&self) -> &Leg {
        &self.gear.legs[0]
    }

    /// Spin axes at gear down: as drawn, then off it by the skew, in the directions it may have.
    fn spins(&self) -> (V3, Vec<V3>) {
        let (sin, cos) = self.leg().wheel.lean.sin_cos();
        let drawn = match self.leg().view {
            View::Front => V3::new(cos, sin, 0.0),
            View::Side => V3::z(),
        };
        if self.wheel_skew == 0.0 {
            return (drawn, vec![drawn]);
        }
        let (off, keep) = self.wheel_skew.sin_cos();
        let aside: Vec<V3> = match self.leg().view {
            View::Front => vec![V3::z(), -V3::z()],
            View::Side => (0..8)
                .map(|i| (TAU * f64::from(i) / 8.0).sin_cos())
                .map(|(sin, cos)| V3::new(cos, sin, 0.0))
                .collect(),
        };
        (
            drawn,
            aside.iter().map(|a| drawn * keep + a * off).collect(),
        )
    }

    /// Reach of the drawn outline from the middle of the tire in a direction of the plane (m).
    fn drawn(&self, spin: V3, way: V3) -> f64 {
        match self.leg().view {
            View::Side => self.tire.disc + self.tire.r,
            View::Front => {
                let across = spin.dot(&way).abs();
                let along = spin.cross(&way).norm();
                self.tire.r + self.tire.disc * along + self.tire.half * across
            }
        }
    }

    /// Tries all tilts and places; `wall` is a direction of the plane.
    fn lost(&self, wall: V3) -> Lost {
        let leg = self.leg();
        let arm = leg.strut.axle - leg.trunnion;
        let arm = V3::new(arm.x, arm.y, 0.0);
        let (drawn, spins) = self.spins();
        let half = match leg.view {
            View::Front => self.tire.disc + self.tire.r,
            View::Side => self.tire.half + self.tire.r,
        };
        let mut lost = Lost {
            in_plane: 0.0,
            along: 0.0,
            farthest: f64::MIN,
        };
        for tilt in 0..TILTS {
            let (sin, cos) = (TAU * tilt as f64 / TILTS as f64).sin_cos();
            let (off, keep) = self.trunnion_skew.sin_cos();
            let axis = V3::new(off * cos, off * sin, keep);
            for spin in &spins {
                for pose in 0..=POSES {
                    let swing = leg.swing_up * pose as f64 / POSES as f64;
                    let points = self.tire.points(turned(axis, swing, *spin));
                    let middle = turned(axis, swing, arm);
                    let plain = turned(V3::z(), swing, arm);
                    let plain_spin = turned(V3::z(), swing, drawn);
                    // a wheel seen edge on loses most in the very direction of its spin axis, a kink
                    let edges = match leg.view {
                        View::Front => vec![plain_spin, -plain_spin],
                        View::Side => Vec::new(),
                    };
                    let around = (0..VIEWS).map(|view| {
                        let (sin, cos) = (TAU * view as f64 / VIEWS as f64).sin_cos();
                        V3::new(cos, sin, 0.0)
                    });
                    for way in around.chain(edges) {
                        let now = middle.dot(&way) + self.tire.reach(&points, way);
                        let before = plain.dot(&way) + self.drawn(plain_spin, way);
                        lost.in_plane = lost.in_plane.max(now - before);
                    }
                    let reach = middle.dot(&wall) + self.tire.reach(&points, wall);
                    lost.farthest = lost.farthest.max(reach);
                    for way in [V3::z(), -V3::z()] {
                        let reach = middle.dot(&way) + self.tire.reach(&points, way);
                        lost.along = lost.along.max(reach - half);
                    }
                }
            }
        }
        lost
    }
}

#[test]
fn the_bound_of_skews_holds_in_three_dimensions() {
    for degrees in [0.0_f64, 2.0, 6.0] {
        let mut largest = (0.0_f64, 0.0_f64);
        for at in 0..24 {
            let mut wheel = Wheel::draw(at, degrees.to_radians());
            let leg = wheel.leg();
            let sizes = TireSizes::of(&leg.wheel.tire);
            let bound = skew_losses(leg, &sizes).new;
            // a wall across the way of the wheel's middle at up
            let arm = leg.strut.axle - leg.trunnion;
            let up = leg.swing_up;
            let out = turned(V3::z(), up, V3::new(arm.x, arm.y, 0.0)).normalize();
            let wall = turned(V3::z(), FRAC_PI_2 * up.signum(), out);
            let lost = wheel.lost(wall);
            let case = format!("wheel {at}, {degrees}°: {bound:?}");
            assert!(
                bound.to_well >= lost.in_plane - 1e-9,
                "{case} {}",
                lost.in_plane
            );
            assert!(
                bound.along_trunnion >= lost.along - 1e-9,
                "{case} {}",
                lost.along
            );
            largest.0 = largest.0.max(bound.to_well / lost.in_plane);
            largest.1 = largest.1.max(bound.along_trunnion / lost.along);
            // the program's clearance from that wall is never too good, and not far too bad
            let off = lost.farthest + 0.05;
            let (n, t) = (Vector::new(wall.x, wall.y), Vector::new(-wall.y, wall.x));
            let foot = wheel.leg().trunnion + n * off;
            wheel.gear.legs[0].well = vec![Obstacle {
                name: "Wall".to_owned(),
                shape: Shape::Solid {
                    points: vec![
                        foot - t * 5.0,
                        foot + t * 5.0,
                        foot + t * 5.0 + n,
                        foot - t * 5.0 + n,
                    ],
                },
                required_clearance: None,
                ignores: vec![],
            }];
            let result = solve(&wheel.gear, 2);
            let pair = result.clearance.pairs.iter();
            let pair = pair
                .clone()
                .find(|p| p.tire == Some(TireState::New))
                .unwrap();
            let told = pair.tightest.clearance;
            assert!(told <= 0.05 + 1e-5, "{case} {told}");
            assert!(told >= 0.05 - bound.to_well - 1e-4, "{case} {told}");
            assert_eq!(pair.less_for_skew, bound.to_well);
        }
        assert!(
            largest.0 < 1.6 && largest.1 < 1.25,
            "{degrees}° {largest:?}"
        );
    }
}

/// 445 by 155 mm on a leg of 0.7 m that swings a quarter turn: worked out by hand from the bound's own
/// terms.
#[test]
fn the_bound_by_hand() {
    let mut wheel = Wheel::draw(0, 0.0);
    let leg = &mut wheel.gear.legs[0];
    leg.strut.axle = leg.trunnion + Vector::new(0.0, -0.7);
    leg.swing_up = FRAC_PI_2;
    leg.wheel.tire.diameter = 0.445;
    leg.wheel.tire.width = 0.155;
    leg.wheel.tire.shoulder_radius = 0.0225;
    let at = |leg: &Leg| skew_losses(leg, &TireSizes::of(&leg.wheel.tire)).new;
    leg.out_of_plane.trunnion_skew = Some(3_f64.to_radians());
    // ε = 4 asin(sin 45° · sin 1.5°) = 4.2425°; 0.2 sin ε − 0.055 (1 − cos ε) = 14.645 mm;
    // 0.7 [(1 − cos ε) + (1 − cos 3°)] = 2.877 mm
    assert!((at(leg).to_well - 0.017_52).abs() < 2e-5, "{:?}", at(leg));
    // 0.7 sin ε + 0.055 sin ε − 0.2 (1 − cos ε) = 55.31 mm
    assert!(
        (at(leg).along_trunnion - 0.055_31).abs() < 2e-5,
        "{:?}",
        at(leg)
    );
    leg.view = View::Side;
    // 0.055 sin ε − 0.2 (1 − cos ε) = 3.521 mm and the same path
    assert!((at(leg).to_well - 0.006_398).abs() < 2e-5, "{:?}", at(leg));
    leg.out_of_plane.trunnion_skew = Some(0.0);
    assert_eq!((at(leg).to_well, at(leg).along_trunnion), (0.0, 0.0));
}
