"""Where every joint of a leg is, by root finding on the lengths that must stay the same."""

import math
from dataclasses import dataclass

import numpy as np
from scipy.optimize import brentq

from gearfile import brace_of, shortening_of

XTOL = 1e-15
# Fold below which the brace's own angle is the better parameter [rad]: the knee moves as the
# square root of the swing there.
SMALL_FOLD = 0.2


def turn(angle):
    """Rotation matrix, counter-clockwise."""
    c, s = math.cos(angle), math.sin(angle)
    return np.array([[c, -s], [s, c]])


def cross(a, b):
    """z part of the cross product of two plane vectors."""
    return a[0] * b[1] - a[1] * b[0]


def angle_between(a, b):
    """Angle from a to b, counter-clockwise, −π … π [rad]."""
    return math.atan2(cross(a, b), float(np.dot(a, b)))


class NotClosed(Exception):
    """The brace cannot reach: carries the distance asked for and the lengths of the links."""


@dataclass
class Pose:
    """One pose: joints [m], angles [rad]."""

    swing: float
    shortening: float
    axle: np.ndarray
    attach: np.ndarray
    length: float
    brace_attach: np.ndarray | None = None
    knee: np.ndarray | None = None
    fold: float | None = None
    upper: float = 0.0
    lower: float = 0.0


class Mechanism:
    """The moving joints of one leg."""

    def __init__(self, leg):
        """Raises NotClosed when the links of an over-center brace can never stand in line."""
        self.leg = leg
        self.trunnion = np.array(leg["trunnion_m"], float)
        strut = leg["strut"]
        self.axle = np.array(strut["axle_m"], float)
        top, bottom = (np.array(strut[key], float) for key in ("axis_top_m", "axis_bottom_m"))
        self.axis = (top - bottom) / np.linalg.norm(top - bottom)
        self.shortening_kind, self.shortening_data = shortening_of(leg)
        self.up = leg["swing_up_rad"]
        actuator = leg["actuator"]
        self.mount = np.array(actuator["mount_m"], float)
        self.attach = np.array(actuator["attach_m"], float)
        self.attach_to = actuator["attach_to"]
        self.kind, brace = brace_of(leg)
        if self.kind != "none":
            self.pivot = np.array(brace["airframe_pivot_m"], float)
            self.leg_attach = np.array(brace["leg_attach_m"], float)
        if self.kind == "folding":
            self.knee = np.array(brace["knee_m"], float)
            self.upper = float(np.linalg.norm(self.knee - self.pivot))
            self.lower = float(np.linalg.norm(self.leg_attach - self.knee))
            # +1 where the lower link turns counter-clockwise from the upper at gear down
            self.down_side = math.copysign(
                1.0, cross(self.knee - self.pivot, self.leg_attach - self.knee)
            )
            self.through_centre = brace["folds"] == "through_centre"
            self.swing_side = -self.down_side if self.through_centre else self.down_side
            if self.through_centre:
                self.locked_fold = self.at_swing(0.0, self.down_side).fold
                self.swing_straight = self.at_fold(0.0, 0.0).swing

    # ---- parts -------------------------------------------------------------------------------
    def on_leg(self, point, swing):
        """A point fixed to the leg, given at gear down, after a swing."""
        c, s = math.cos(swing), math.sin(swing)
        px, py = self.trunnion
        x, y = float(point[0]) - px, float(point[1]) - py
        return np.array([px + c * x - s * y, py + s * x + c * y])

    def shortening(self, phase, travel, done=1.0):
        """Shortening in a phase, `done` being the share of it that is over [m]."""
        if self.shortening_kind == "before_swing":
            amount = self.shortening_data["amount_m"]
            return amount * done if phase == "shorten" else amount
        if self.shortening_kind == "with_travel":
            rows = self.shortening_data["table"]
            return float(
                np.interp(travel, [r["travel"] for r in rows], [r["amount_m"] for r in rows])
            )
        return 0.0

    def span(self, swing):
        """Distance B0–B1 [m]."""
        to_attach = self.on_leg(self.leg_attach, swing) - self.pivot
        return math.hypot(to_attach[0], to_attach[1])

    # ---- closure -----------------------------------------------------------------------------
    def at_swing(self, swing, side=None, shortening=0.0):
        """Pose at a swing, the lower link turned to `side` of the upper one (±1)."""
        if self.kind != "folding":
            return self._pose(swing, shortening, None)
        side = self.swing_side if side is None else side
        attach = self.on_leg(self.leg_attach, swing)
        to_attach = attach - self.pivot
        heading = math.atan2(to_attach[1], to_attach[0])

        def miss(turned):
            # a lower link that turns counter-clockwise leaves the knee to the right of B0–B1
            angle = heading - side * turned
            x = self.upper * math.cos(angle) - to_attach[0]
            y = self.upper * math.sin(angle) - to_attach[1]
            return math.hypot(x, y) - self.lower

        low, high = miss(0.0), miss(math.pi)
        if low > 0.0 or high < 0.0:
            raise NotClosed(float(np.linalg.norm(to_attach)), self.upper, self.lower)
        turned = brentq(miss, 0.0, math.pi, xtol=XTOL, rtol=4 * np.finfo(float).eps)
        return self._pose(swing, shortening, heading - side * turned)

    def at_fold(self, fold, near, shortening=0.0):
        """Pose at a fold angle (0 straight, negative on the lock side), swing close to `near`."""
        side = self.swing_side
        span = math.sqrt(
            self.upper**2 + self.lower**2 + 2 * self.upper * self.lower * math.cos(fold)
        )

        def miss(swing):
            return self.span(swing) - span

        swing = self._bracketed(miss, near)
        attach = self.on_leg(self.leg_attach, swing)
        to_attach = attach - self.pivot
        heading = math.atan2(to_attach[1], to_attach[0])
        # direction of B0–B1 seen from the upper link, from the shape of the triangle alone
        lean = math.atan2(
            self.lower * math.sin(side * fold), self.upper + self.lower * math.cos(fold)
        )
        return self._pose(swing, shortening, heading - lean)

    @staticmethod
    def _bracketed(miss, near):
        reach = 1e-6
        while reach < 0.6:
            low, high = near - reach, near + reach
            if miss(low) * miss(high) <= 0.0:
                return brentq(miss, low, high, xtol=XTOL, rtol=4 * np.finfo(float).eps)
            reach *= 2.0
        raise NotClosed(near)

    # ---- pose --------------------------------------------------------------------------------
    def _pose(self, swing, shortening, upper_angle):
        pose = Pose(
            swing=swing,
            shortening=shortening,
            axle=self.on_leg(self.axle + shortening * self.axis, swing),
            attach=None,
            length=0.0,
        )
        if self.kind != "none":
            pose.brace_attach = self.on_leg(self.leg_attach, swing)
        if self.kind == "folding":
            along = np.array([math.cos(upper_angle), math.sin(upper_angle)])
            pose.knee = self.pivot + self.upper * along
            lower = pose.brace_attach - pose.knee
            pose.fold = self.swing_side * angle_between(along, lower)
            pose.upper = angle_between(self.knee - self.pivot, along)
            pose.lower = angle_between(self.leg_attach - self.knee, lower)
        pose.attach = self._carried(pose)
        pose.length = float(np.linalg.norm(pose.attach - self.mount))
        return pose

    def _carried(self, pose):
        if self.attach_to == "leg":
            return self.on_leg(self.attach, pose.swing)
        if self.attach_to == "upper_link":
            return self.pivot + turn(pose.upper) @ (self.attach - self.pivot)
        return pose.knee + turn(pose.lower) @ (self.attach - self.knee)

    # ---- path --------------------------------------------------------------------------------
    def phases(self):
        """Parts of the path in order."""
        found = ["shorten"] if self.shortening_kind == "before_swing" else []
        if self.kind == "folding" and self.through_centre:
            found.append("unlock")
        return [*found, "swing"]

    def at(self, phase, share, until=None):
        """Pose at a share (0 … 1) of a phase; the swing ends at `until` (default: up)."""
        if phase == "shorten":
            side = self.down_side if self.kind == "folding" else None
            return self.at_swing(0.0, side, self.shortening("shorten", 0.0, share))
        if phase == "unlock":
            pose = self.at_fold(self.locked_fold * (1.0 - share), 0.0)
            return self.shortened(pose)
        up = self.up if until is None else until
        if self.kind != "folding" or not self.through_centre:
            return self.shortened(self.at_swing(share * up))
        # the knee moves as the square root of the swing at first: start with the square
        swing = self.swing_straight + (up - self.swing_straight) * share * share
        if share < 1e-6:
            return self.shortened(self.at_fold(0.0, self.swing_straight))
        return self.shortened(self.at_swing(swing))

    def path(self, count, until=None):
        """(phase, share, pose) from down and locked to `until`: `count` of them in the swing.

        Raises NotClosed where the brace does not reach.
        """
        few = max(count // 10, 8)
        return [
            (phase, float(share), self.at(phase, float(share), until))
            for phase in self.phases()
            for share in np.linspace(0.0, 1.0, count if phase == "swing" else few)
        ]

    def shortened(self, pose):
        """The same pose with the shortening that belongs to its travel."""
        pose.shortening = self.shortening("swing", pose.swing / self.up)
        pose.axle = self.on_leg(self.axle + pose.shortening * self.axis, pose.swing)
        return pose
