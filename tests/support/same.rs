//! Two results that should be the same, but for a change that is known.
use gearswing_gear::model::{Point, Vector};
use gearswing_solver::result::{LegResult, MechanismEventKind, Motion, Reactions, Station};

/// How the second result should differ from the first.
pub struct Change<'a> {
    /// Where a point of the first lies in the second.
    pub point: &'a dyn Fn(Point) -> Point,
    /// What a force of the first is in the second, but for its size.
    pub vector: &'a dyn Fn(Vector) -> Vector,
    /// Sign of its swing.
    pub sign: f64,
    /// Its lengths over those of the first (ratio).
    pub length: f64,
    /// Its forces over those of the first (ratio).
    pub force: f64,
    /// What may be lost to rounding, as a share of the size of things (ratio).
    pub rounding: f64,
}

impl Change<'_> {
    /// No change at all.
    pub const NONE: Self = Self {
        point: &|p| p,
        vector: &|v| v,
        sign: 1.0,
        length: 1.0,
        force: 1.0,
        rounding: 1e-9,
    };

    #[track_caller]
    fn number(&self, what: &str, at: f64, first: f64, second: f64, size: f64) {
        assert!(
            (first - second).abs() <= self.rounding * size,
            "{what} at {at}: {first} should be {second}"
        );
    }

    /// Fails where the second result is not the first one, changed. Clearances are compared within
    /// the accuracy that they tell.
    ///
    /// # Panics
    /// With the first number that differs.
    #[track_caller]
    pub fn compare(&self, first: &LegResult, second: &LegResult) {
        let verdicts = |r: &LegResult| {
            r.findings
                .iter()
                .map(|f| (f.question, f.verdict))
                .collect::<Vec<_>>()
        };
        assert_eq!(verdicts(first), verdicts(second));
        assert_eq!(first.jams.len(), second.jams.len());
        for (a, b) in first.jams.iter().zip(&second.jams) {
            // a brace ends its reach where two circles touch: a place to half the figures
            let off = (a.place.progress - b.place.progress).abs();
            assert!(off < 1e-5, "jam: {a:?} {b:?}");
        }
        // an actuator on the leg has its dead point where the knee is straight: no order between them
        let events = |r: &LegResult| {
            let mut events = r.events.clone();
            events.sort_by_key(|e| e.kind == MechanismEventKind::KneeStraight);
            events
        };
        assert_eq!(first.events.len(), second.events.len(), "events");
        for (a, b) in events(first).iter().zip(&events(second)) {
            assert_eq!(a.kind, b.kind);
            // a flat rate near a dead point loses figures
            let within = 1e4;
            self.number("event", 0.0, a.place.progress, b.place.progress, within);
        }
        assert_eq!(first.stations.len(), second.stations.len(), "stations");
        let jammed = usize::from(!first.jams.is_empty());
        let sound = first.stations.len() - jammed;
        for (a, b) in first
            .stations
            .iter()
            .zip(second.stations.iter())
            .take(sound)
        {
            self.station(a, b);
        }
        self.lock(first, second);
        self.clearance(first, second);
    }

    #[track_caller]
    fn station(&self, a: &Station, b: &Station) {
        let at = a.progress;
        assert_eq!(a.phase, b.phase);
        self.number("progress", at, a.progress, b.progress, 1.0);
        self.number("travel", at, a.travel, b.travel, 1.0);
        self.number("swing", at, a.swing * self.sign, b.swing, 1.0);
        let pairs = [
            ("shortening", Some(a.shortening), Some(b.shortening)),
            ("actuator", Some(a.actuator_length), Some(b.actuator_length)),
        ];
        for (what, a, b) in pairs {
            let (a, b) = (a.unwrap_or(0.0), b.unwrap_or(0.0));
            self.number(what, at, a * self.length, b, self.length);
        }
        for (what, a, b) in [
            ("axle", Some(a.axle), Some(b.axle)),
            ("knee", a.knee, b.knee),
            ("brace attach", a.brace_attach, b.brace_attach),
            ("attach", Some(a.actuator_attach), Some(b.actuator_attach)),
        ] {
            assert_eq!(a.is_some(), b.is_some(), "{what}");
            if let (Some(a), Some(b)) = (a, b) {
                let off = ((self.point)(a) - b).norm();
                self.number(what, at, off, 0.0, self.length);
            }
        }
        for (what, a, b) in [
            ("fold", a.fold, b.fold),
            ("transmission", a.transmission, b.transmission),
        ] {
            assert_eq!(a.is_some(), b.is_some(), "{what}");
            // near a straight knee an angle goes with the root of the lengths
            let near_line = 1e5;
            self.number(what, at, a.unwrap_or(0.0), b.unwrap_or(0.0), near_line);
        }
        let arms = (a.moment_arm, b.moment_arm);
        if let (Some(x), Some(y)) = arms {
            let size = x.abs().max(1.0);
            self.number(
                "arm",
                at,
                x * self.sign * self.length,
                y,
                10.0 * size * size * self.length,
            );
        }
        self.forces(a, b);
    }

    #[track_caller]
    fn forces(&self, a: &Station, b: &Station) {
        let at = a.progress;
        let (Some(x), Some(y)) = (a.force, b.force) else {
            // an arm that is nothing but rounding may be none
            let arm = a.moment_arm.map_or(0.0, f64::abs);
            assert!(
                a.force.is_none() && b.force.is_none() || arm < 1e-7,
                "force at {at}: {:?} {:?}",
                a.force,
                b.force
            );
            return;
        };
        // rounding of an arm weighs with the square of the force that it takes
        let efforts = [x.retract_effort, x.extend_effort].map(|e| e.unwrap_or(0.0).abs());
        let size = x.holding.abs() + efforts[0] + efforts[1] + x.reactions.trunnion.norm() + 100.0;
        let size = size * (size / 1000.0).max(1.0) * self.force;
        self.number("holding", at, x.holding * self.force, y.holding, size);
        let per_area = self.force / (self.length * self.length);
        // the smallest area is some 4 cm2
        let size_pa = size / 4e-4 / (self.length * self.length);
        for motion in [Motion::Retract, Motion::Extend] {
            let (p, q) = (x.needed(motion), y.needed(motion));
            assert_eq!(p.is_some(), q.is_some(), "{motion:?} at {at}");
            if let (Some((p, e)), Some((q, f))) = (p, q) {
                self.number(
                    &format!("{motion:?} pressure"),
                    at,
                    p * per_area,
                    q,
                    size_pa,
                );
                self.number(&format!("{motion:?} effort"), at, e * self.force, f, size);
            }
        }
        self.reactions(at, x.reactions, y.reactions, size);
        for motion in [Motion::Retract, Motion::Extend] {
            let (r, s) = (x.reactions_in(motion), y.reactions_in(motion));
            assert_eq!(r.is_some(), s.is_some(), "{motion:?} at {at}");
            if let (Some(r), Some(s)) = (r, s) {
                self.reactions(at, *r, *s, size);
            }
        }
    }

    #[track_caller]
    fn reactions(&self, at: f64, r: Reactions, s: Reactions, size: f64) {
        for (what, a, b) in [
            ("trunnion", Some(r.trunnion), Some(s.trunnion)),
            ("brace pivot", r.brace_pivot, s.brace_pivot),
            ("knee force", r.knee, s.knee),
            ("brace force", r.brace_attach, s.brace_attach),
            ("mount", Some(r.mount), Some(s.mount)),
        ] {
            assert_eq!(a.is_some(), b.is_some(), "{what}");
            if let (Some(a), Some(b)) = (a, b) {
                let off = ((self.vector)(a) * self.force - b).norm();
                self.number(what, at, off, 0.0, size + a.norm() * self.force);
            }
        }
    }

    #[track_caller]
    fn lock(&self, first: &LegResult, second: &LegResult) {
        let (a, b) = (&first.lock, &second.lock);
        assert_eq!(a.kind, b.kind);
        let load = |lock: &gearswing_solver::result::Lock| lock.ground_load.map(|g| g.into_lock);
        // forces on a knee near the line are large
        for (what, a, b, factor, size) in [
            (
                "over center",
                a.over_centre,
                b.over_centre,
                self.length,
                self.length,
            ),
            ("past center", a.past_centre, b.past_centre, 1.0, 1.0),
            ("ground load", load(a), load(b), 1.0, 100.0),
            (
                "knee push",
                a.knee_push,
                b.knee_push,
                self.force,
                1e4 * self.force,
            ),
            ("end gap", a.end_gap, b.end_gap, self.length, self.length),
        ] {
            assert_eq!(a.is_some(), b.is_some(), "{what}");
            self.number(what, 0.0, a.unwrap_or(0.0) * factor, b.unwrap_or(0.0), size);
        }
        assert_eq!(first.excursion.is_some(), second.excursion.is_some());
        if let (Some(a), Some(b)) = (&first.excursion, &second.excursion) {
            // two circles that nearly touch: an angle goes with the root of the lengths
            self.number("excursion", 0.0, a.swing * self.sign, b.swing, 1e4);
        }
    }

    #[track_caller]
    fn clearance(&self, first: &LegResult, second: &LegResult) {
        let (a, b) = (&first.clearance.pairs, &second.clearance.pairs);
        assert_eq!(a.len(), b.len(), "pairs");
        for (a, b) in a.iter().zip(b) {
            assert_eq!((a.obstacle, a.part, a.tire), (b.obstacle, b.part, b.tire));
            let (x, y) = (a.tightest.clearance * self.length, b.tightest.clearance);
            // of jammed legs the ends of the path differ a little
            let end = if first.jams.is_empty() { 0.0 } else { 1e-5 };
            let rounding = (self.rounding + end) * self.length;
            let within = a.certified_to * self.length + b.certified_to + rounding;
            assert!((x - y).abs() <= within, "{a:?} {b:?}");
            assert_eq!(a.first_contact.is_some(), b.first_contact.is_some());
        }
    }
}
