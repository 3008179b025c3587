"""A leg over many stations at once with numpy and shapely arrays: the fast form, for timing.

Sampled only: it does not know what happens between its stations.
"""

import numpy as np

from clearances import Barrier, clearance
from forces import Loads
from mechanism import Mechanism
from outlines import tire_sizes, wheel_core


def turned(points, about, c, s):
    """Points (k × 2) turned about a point by n angles: n × k × 2."""
    x, y = (np.asarray(points, float).reshape(-1, 2) - about).T
    return about + np.stack(
        [c[:, None] * x - s[:, None] * y, s[:, None] * x + c[:, None] * y], axis=2
    )


class ArrayLeg:
    """Every station of one leg's swing in arrays."""

    def __init__(self, gear, leg, count):
        self.gear, self.leg = gear, leg
        m = self.m = Mechanism(leg)
        start = getattr(m, "swing_straight", 0.0) if m.kind == "folding" else 0.0
        self.swing = start + (m.up - start) * np.linspace(0.0, 1.0, count) ** 2
        self.c, self.s = np.cos(self.swing), np.sin(self.swing)
        self.short = self._shortening()
        self.along = np.stack(
            [
                self.c * m.axis[0] - self.s * m.axis[1],
                self.s * m.axis[0] + self.c * m.axis[1],
            ],
            axis=1,
        )
        self.axle = self.on_leg(m.axle)[:, 0] + self.short[:, None] * self.along
        self._brace()
        self._actuator()

    def on_leg(self, points):
        return turned(points, self.m.trunnion, self.c, self.s)

    def _shortening(self):
        m = self.m
        if m.shortening_kind == "before_swing":
            return np.full_like(self.swing, m.shortening_data["amount_m"])
        if m.shortening_kind == "with_travel":
            rows = m.shortening_data["table"]
            return np.interp(
                self.swing / m.up, [r["travel"] for r in rows], [r["amount_m"] for r in rows]
            )
        return np.zeros_like(self.swing)

    def _brace(self):
        m = self.m
        if m.kind == "none":
            return
        self.attach = self.on_leg(m.leg_attach)[:, 0]
        if m.kind == "sliding":
            return
        to = self.attach - m.pivot
        span = np.linalg.norm(to, axis=1)
        x = (m.upper**2 - m.lower**2 + span**2) / (2 * span)
        y = np.sqrt(np.maximum(m.upper**2 - x**2, 0.0))
        unit = to / span[:, None]
        left = np.stack([-unit[:, 1], unit[:, 0]], axis=1)
        self.knee = m.pivot + x[:, None] * unit - m.swing_side * y[:, None] * left

    def _actuator(self):
        m = self.m
        if m.attach_to == "leg":
            self.driven = self.on_leg(m.attach)[:, 0]
        else:
            ends = (m.pivot, m.knee) if m.attach_to == "upper_link" else (m.knee, m.leg_attach)
            now = (
                (np.broadcast_to(m.pivot, self.knee.shape), self.knee)
                if m.attach_to == "upper_link"
                else (self.knee, self.attach)
            )
            was = ends[1] - ends[0]
            length = was @ was
            place = (m.attach - ends[0]) @ was / length
            aside = ((m.attach - ends[0]) @ np.array([-was[1], was[0]])) / length
            along = now[1] - now[0]
            left = np.stack([-along[:, 1], along[:, 0]], axis=1)
            self.driven = now[0] + place * along + aside * left
        self.line = self.driven - m.mount
        self.length = np.linalg.norm(self.line, axis=1)

    def thrust(self):
        """Thrust and all reactions by one stacked linear solution: n × 9 (or 3)."""
        m, loads = self.m, Loads(self.gear, self.leg)
        count = len(self.swing)
        bodies = 3 if m.kind == "folding" else 1
        matrix = np.zeros((count, 3 * bodies, 3 * bodies))
        right = np.zeros((count, 3 * bodies))

        def put(body, column, point, direction, sign=1.0):
            r = 3 * body
            matrix[:, r : r + 2, column] += sign * direction
            arm = point - m.trunnion
            matrix[:, r + 2, column] += sign * (
                arm[..., 0] * direction[..., 1] - arm[..., 1] * direction[..., 0]
            )

        def load(body, point, force):
            r = 3 * body
            arm = point - m.trunnion
            right[:, r : r + 2] -= force
            right[:, r + 2] -= arm[..., 0] * force[1] - arm[..., 1] * force[0]

        joints = [(0, None, m.trunnion)]
        if bodies == 3:
            joints += [(1, None, m.pivot), (2, 1, self.knee), (0, 2, self.attach)]
        for j, (on, answers, point) in enumerate(joints):
            for axis in range(2):
                unit = np.eye(2)[axis]
                put(on, 2 * j + axis, point, unit)
                if answers is not None:
                    put(answers, 2 * j + axis, point, unit, -1.0)
        on = {"leg": 0, "upper_link": 1, "lower_link": 2}[m.attach_to]
        put(on, 3 * bodies - 1, self.driven, self.line / self.length[:, None])
        leg, pull = self.leg, loads.pull
        load(0, self.on_leg(leg["body"]["centre_m"])[:, 0], leg["body"]["mass_kg"] * pull)
        load(0, self.axle, leg["wheel"]["mass_kg"] * pull + loads.wheel_area * loads.wind)
        load(0, 0.5 * (m.trunnion + self.axle), loads.leg_area * loads.wind)
        load(on, self.driven, 0.5 * leg["actuator"].get("mass_kg", 0.0) * pull)
        if bodies == 3:
            brace = leg["brace"]["folding"]
            for body, key, ends in (
                (1, "upper", (m.pivot, self.knee)),
                (2, "lower", (self.knee, self.attach)),
            ):
                for end in ends:
                    load(body, end, 0.5 * brace[key].get("mass_kg", 0.0) * pull)
        # a straight knee makes a singular row: leave that station out
        good = np.abs(np.linalg.det(matrix)) > 1e-12
        found = np.full_like(right, np.nan)
        found[good] = np.linalg.solve(matrix[good], right[good][..., None])[..., 0]
        return found

    def moving(self):
        """{part: (cores, radius)} at every station."""
        m, leg = self.m, self.leg
        found = {}
        lean = leg["wheel"].get("lean_rad", 0.0)
        slide = (self.short[:, None] * self.along)[:, None]
        for name, size in tire_sizes(leg["wheel"]["tire"]).items():
            core, radius = wheel_core(leg["view"], lean, size)
            found["wheel", name] = (self.on_leg(m.axle + core) + slide, radius)
        if leg["body"].get("outline_m"):
            found["leg_body", None] = (self.on_leg(leg["body"]["outline_m"]), 0.0)
        if leg["strut"].get("sliding_outline_m"):
            found["sliding_strut", None] = (
                self.on_leg(leg["strut"]["sliding_outline_m"]) + slide,
                0.0,
            )

        def bar(part, start, end, thickness):
            start = np.broadcast_to(start, self.axle.shape)
            end = np.broadcast_to(end, self.axle.shape)
            found[part, None] = (np.stack([start, end], axis=1), thickness / 2)

        if m.kind == "folding":
            brace = leg["brace"]["folding"]
            bar("upper_link", m.pivot, self.knee, brace["upper"]["thickness_m"])
            bar("lower_link", self.knee, self.attach, brace["lower"]["thickness_m"])
        if m.kind == "sliding":
            bar("sliding_brace", m.pivot, self.attach, leg["brace"]["sliding"]["thickness_m"])
        actuator = leg["actuator"]
        ends = (np.broadcast_to(m.mount, self.driven.shape), self.driven)
        if actuator.get("body_at", "airframe") == "moving":
            ends = ends[::-1]
        share = np.minimum(actuator["body_length_m"] / self.length, 1.0)[:, None]
        gland = ends[0] + share * (ends[1] - ends[0])
        bar("actuator_body", ends[0], gland, actuator["body_diameter_m"])
        bar("actuator_rod", gland, ends[1], actuator["rod_m"])
        return found


def solve(gear, leg, count):
    """Arc, forces and sampled clearances of one leg: what the timing runs."""
    stations = ArrayLeg(gear, leg, count)
    forces = stations.thrust()
    moving = stations.moving()
    least = {}
    for obstacle in leg.get("well", []):
        barrier = Barrier(obstacle)
        for part, (cores, radius) in moving.items():
            values, _ = clearance(barrier, cores, radius)
            least[obstacle["name"], part] = float(values.min())
    return stations, forces, least
