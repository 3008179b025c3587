"""Fall of a leg without pressure, by Lagrange's equation from this reference's own positions.

Every part is replaced by masses at points (a uniform bar by those of Simpson's rule, exact for its
energy). First and second derivatives of all points by five-point differences give inertia, its
slope and the net push; scipy integrates (DOP853, with an orifice LSODA). The coordinate is the swing as long as the knee is
well folded, then the fold of the knee. Orifice: turbulent Δp = ρ/2·u², u = Q/(Cd·A), with the
documented way over to laminar flow at 100 Pa. Held against `result.fall` by compare_fall.py.
Pins that rub: fall_pins.py.
"""

import functools
import math

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from forces import Loads
from gearfile import brace_of
from mechanism import Mechanism
from springs import coordinate, effort, springs_of
from stood import stood

# Red mineral fluid, as the file format documents for an absent density [kg/m3].
DENSITY = 860.0
# Sharp edge, as documented for an absent coefficient.
DISCHARGE = 0.62
# Drop below which the flow turns laminar, as documented [Pa].
LAMINAR = 100.0
# Fold at which the coordinate changes from the swing to the fold [rad].
CHANGE = 0.6
# Step of the differences [rad].
STEP = 1e-3
LONGEST = 60.0
# Least mass of a link of a folding brace in a fall, as documented [kg].
LEAST_LINK = 0.01
TOLERANCES = {"rtol": 1e-8, "atol": 1e-10}
FIRST = np.array([1.0, -8.0, 0.0, 8.0, -1.0]) / (12.0 * STEP)
SECOND = np.array([-1.0, 16.0, -30.0, 16.0, -1.0]) / (12.0 * STEP**2)
# Parts of the state behind place and speed.
WORKS = ("weights", "springs", "air", "friction", "orifice")


def body_inertia(leg):
    """Moment of inertia of the upper leg about its own center [kg·m2].

    Given, else the outline as a uniform plate: a fan of triangles, each summed at the middles of its
    edges (exact for quadratics).
    """
    given = leg.get("fall", {}).get("body_inertia_kg_m2")
    if given is not None:
        return given
    outline = np.array(leg["body"]["outline_m"], float)
    area, points, weights = 0.0, [], []
    for b, c in zip(outline[1:-1], outline[2:]):
        a = outline[0]
        part = 0.5 * float(np.linalg.det(np.array([b - a, c - a])))
        area += part
        points += [(a + b) / 2, (b + c) / 2, (c + a) / 2]
        weights += [part / 3] * 3
    points, weights = np.array(points), np.array(weights) / area
    spread = points - weights @ points
    return leg["body"]["mass_kg"] * float(weights @ np.sum(spread**2, axis=1))


def wheel_inertia(leg):
    """Moment of inertia of the wheel in the leg's plane about its center [kg·m2]."""
    if leg["view"] == "side":
        return 0.0
    tire = leg["wheel"]["tire"]
    radius = tire["diameter_m"] / 2
    return leg["wheel"]["mass_kg"] * (radius**2 / 4 + tire["width_m"] ** 2 / 12)


class Falling:
    """One leg that falls."""

    def __init__(self, gear, leg, stands=None):
        """`stands`: the leg whose friction holds it at up after it has stood there, as another one
        with the same gear; by default the leg itself."""
        self.leg = leg
        self.gear, self.standing = gear, stood(stands or leg)
        self.mechanism = Mechanism(leg)
        self.loads = Loads(gear, leg).at_most_1_g()
        self.springs = springs_of(leg)
        self.inertia = body_inertia(leg) + wheel_inertia(leg)
        self.seal = leg["actuator"].get("seal_friction_n", 0.0)
        data = leg.get("fall", {})
        hole, discharge = data.get("return_orifice_m"), data.get("discharge_coefficient", DISCHARGE)
        line = leg.get("drive", {}).get("orifice_down")
        if hole is None and line is not None:
            # the fluid passes the orifice of the line without pressure as well
            hole, discharge = line["hole_m"], line.get("discharge", DISCHARGE)
        self.orifice = None
        if hole is not None:
            effective = discharge * math.pi / 4 * hole**2
            density = gear.get("fluid", {}).get("density_kg_m3", DENSITY)
            self.orifice = (effective, density)
        self.near = 0.0
        # what moves, and what weighs: the least mass of a link has no weight
        self.masses, self.weighed = self.masses_of(LEAST_LINK), self.masses_of(0.0)
        # the last places: a step that changes the speed alone asks for the same again
        self.place = functools.lru_cache(maxsize=16)(self.look)

    def masses_of(self, least):
        """Masses at the points of `points`, links with at least so much [kg]."""
        kind, brace = brace_of(self.leg)
        bars = []
        if kind == "folding":
            bars = [max(brace[link].get("mass_kg", 0.0), least) for link in ("upper", "lower")]
        elif kind == "sliding":
            bars = [brace.get("mass_kg", 0.0)]
        bars.append(self.leg["actuator"].get("mass_kg", 0.0))
        parts = [mass * share for mass in bars for share in (1 / 6, 4 / 6, 1 / 6)]
        return np.array([self.leg["body"]["mass_kg"], self.leg["wheel"]["mass_kg"], *parts])

    def points(self, pose):
        """Points of all masses: center of the leg, axle, ends and middles of the bars [m]."""
        mechanism = self.mechanism
        bars = []
        if mechanism.kind == "folding":
            bars = [(mechanism.pivot, pose.knee), (pose.knee, pose.brace_attach)]
        elif mechanism.kind == "sliding":
            bars = [(mechanism.pivot, pose.brace_attach)]
        bars.append((mechanism.mount, pose.attach))
        found = [mechanism.on_leg(self.leg["body"]["centre_m"], pose.swing), pose.axle]
        for a, b in bars:
            found += [a, 0.5 * (a + b), b]
        return np.array(found)

    def look(self, pose_at, u):
        """Everything that follows from five poses around a place."""
        poses = [pose_at(u + k * STEP) for k in (-2, -1, 0, 1, 2)]
        pose = poses[2]
        points = np.array([self.points(p) for p in poses])
        rates = np.tensordot(FIRST, points, 1)
        bends = np.tensordot(SECOND, points, 1)
        swings = np.array([p.swing for p in poses])
        swing, swing_bend = float(FIRST @ swings), float(SECOND @ swings)
        inertia = self.masses @ np.sum(rates**2, axis=1) + self.inertia * swing**2
        half_slope = self.masses @ np.sum(rates * bends, axis=1)
        half_slope += self.inertia * swing * swing_bend
        stroke = float(FIRST @ np.array([p.length for p in poses]))
        arm = 0.5 * (pose.axle - self.mechanism.trunnion)
        halfway = swing * np.array([-arm[1], arm[0]])
        loads = self.loads
        air = loads.wheel_area * (loads.wind @ rates[1]) + loads.leg_area * (loads.wind @ halfway)
        springs = 0.0
        for kind, data in self.springs:
            at = np.array([coordinate(self.mechanism, p, kind, data) for p in poses])
            if kind == "torsion":
                at = np.unwrap(at)
            springs += effort(kind, data, at[2]) * float(FIRST @ at)
        knee = None
        if pose.knee is not None:
            knee = float(np.linalg.norm(FIRST @ np.array([p.knee for p in poses])))
        return {
            "pose": pose,
            "points": points[2],
            "rates": rates,
            "bends": bends,
            "inertia": inertia,
            "half_slope": half_slope,
            "weights": float(loads.pull @ (self.weighed @ rates)),
            "springs": springs,
            "air": float(air),
            "friction": self.seal * abs(stroke),
            "stroke": stroke,
            "swing": swing,
            "swing_bend": swing_bend,
            "axle": float(np.linalg.norm(rates[1])),
            "knee": knee,
        }

    def drop(self, flow):
        """Pressure drop of the orifice at a flow [Pa]."""
        effective, density = self.orifice
        speed = flow / effective
        # q⁴ is the square of what it drops without a laminar part
        root = math.sqrt(0.5 * density) * speed
        return root * (root**4 + LAMINAR**2) ** 0.25

    def fluid(self, at, speed):
        """Force of the fluid that is pushed out, along the actuator against its motion [N]."""
        if self.orifice is None:
            return 0.0
        area = self.loads.annulus if at["stroke"] > 0 else self.loads.bore
        return area * self.drop(area * abs(at["stroke"]) * speed)

    def motion(self, at, speed):
        """Acceleration at a place and a speed, and the push against it by seals, pins and fluid."""
        damping = self.fluid(at, speed) * abs(at["stroke"])
        push = at["weights"] + at["springs"] + at["air"] - at["friction"] - damping
        acceleration = (push - at["half_slope"] * speed**2) / at["inertia"]
        return acceleration, at["friction"], damping

    def slope(self, pose_at, end, state):
        """Slope of place, speed and works over time."""
        u, speed = state[:2]
        # trial steps may pass the end of a chart, behind which the knee may be straight
        at = self.place(pose_at, min(max(u, 0.0), end))
        acceleration, friction, damping = self.motion(at, speed)
        given = [at[key] * speed for key in WORKS[:-2]]
        return np.array([speed, acceleration, *given, friction * speed, damping * speed])

    # ---- charts ------------------------------------------------------------------------------
    def by_swing(self, u):
        """Pose so far [rad] of swing below up."""
        mechanism = self.mechanism
        return mechanism.shortened(
            mechanism.at_swing(mechanism.up - u * math.copysign(1.0, mechanism.up))
        )

    def by_fold(self, u):
        """Pose so far [rad] of fold below the change."""
        pose = self.mechanism.at_fold(CHANGE - u, self.near)
        self.near = pose.swing
        return self.mechanism.shortened(pose)

    def fold_down(self):
        """Fold at the lock [rad]."""
        mechanism = self.mechanism
        return mechanism.locked_fold if mechanism.through_centre else mechanism.at_swing(0.0).fold

    def well_folded(self):
        """A swing below up beyond that of the change, with the knee still folded [rad]."""
        if self.mechanism.through_centre:
            return abs(self.mechanism.up - self.mechanism.swing_straight) - 1e-6
        return abs(self.mechanism.up)

    def solve(self):
        """How the fall ends: a dict of outcome, time, speeds, swing and works."""
        mechanism = self.mechanism
        if not (self.starts() and type(self)(self.gear, self.standing).starts()):
            return {"outcome": "stays_up"}
        changes = mechanism.kind == "folding" and self.fold_down() < CHANGE
        end = abs(mechanism.up)
        if changes:
            end = brentq(lambda u: self.by_swing(u).fold - CHANGE, 0.0, self.well_folded())
        pose_at, fastest = self.by_swing, 0.0
        run = self.integrate(pose_at, end, 0.0, np.zeros(2 + len(WORKS)))
        if run["reached"] and changes:
            # the same speed of every part in the other coordinate
            state, place, fastest = run["state"], self.look(pose_at, end), run["fastest"]
            self.near = place["pose"].swing
            pose_at, end = self.by_fold, CHANGE - self.fold_down()
            other = self.look(pose_at, 0.0)
            state = np.array([0.0, state[1] * place["knee"] / other["knee"], *state[2:]])
            run = self.integrate(pose_at, end, run["time"], state)
        return self.told(run, pose_at, max(fastest, run["fastest"]))

    def starts(self):
        """Whether the friction lets it start at up."""
        return self.motion(self.look(self.by_swing, 0.0), 0.0)[0] > 0.0

    def integrate(self, pose_at, end, time, state):
        """Integrates to the end of a chart or to rest; what stands there."""
        def last(_, state):
            return state[0] - end

        def rest(_, state):
            return state[1]

        rest.terminal, rest.direction = True, -1.0
        last.terminal = True
        found = solve_ivp(
            lambda _, state: self.slope(pose_at, end, state),
            (time, LONGEST),
            state,
            # an orifice makes the speed follow the push at once: stiff
            method="LSODA" if self.orifice else "DOP853",
            events=[last, rest],
            dense_output=True,
            **TOLERANCES,
        )
        if found.status < 0:
            raise RuntimeError(found.message)
        fastest = 0.0
        for at in (*found.t, *np.linspace(time, found.t[-1], 40)):
            u, speed = found.sol(at)[:2]
            fastest = max(fastest, self.place(pose_at, u)["axle"] * speed)
        return {
            "reached": found.status == 1 and len(found.t_events[0]) > 0,
            "rests": found.status == 1 and len(found.t_events[1]) > 0,
            "time": float(found.t[-1]),
            "state": found.y[:, -1],
            "fastest": fastest,
        }

    def told(self, run, pose_at, fastest):
        """The end of a run in the words of the result."""
        u, speed = run["state"][:2]
        at = self.look(pose_at, u)
        outcome = "creeps"
        if run["reached"]:
            outcome = "reaches_lock"
        elif run["rests"]:
            outcome = "stops_short"
        told = dict(zip(WORKS, map(float, run["state"][2:])))
        told["motion"] = 0.5 * at["inertia"] * speed**2
        # the balance of this solution itself
        given = told["weights"] + told["springs"] + told["air"]
        left = given - told["friction"] - told["orifice"] - told["motion"]
        return told | {
            "outcome": outcome,
            "time": run["time"],
            "swing": at["pose"].swing,
            "swing_rate": -math.copysign(at["swing"], at["swing"] * self.mechanism.up) * speed,
            "axle_speed": at["axle"] * speed,
            "knee_speed": None if at["knee"] is None else at["knee"] * speed,
            "largest_axle_speed": max(fastest, at["axle"] * speed),
            "imbalance": left / (abs(told["weights"]) + abs(told["springs"]) + told["motion"]),
        }
