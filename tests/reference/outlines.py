"""Outlines of the moving parts of a leg: a core, and the radius by which it is grown all around."""

import math
from dataclasses import dataclass

import numpy as np
from shapely.geometry import LineString, Point, Polygon

from gearfile import grown_size, new_size

# Segments per quarter of a round end drawn as a polygon: shapely's own default.
QUARTER = 16


@dataclass(frozen=True)
class Outline:
    """A moving part in one pose: core points (one, two or a closed polygon) and radius [m]."""

    core: np.ndarray
    radius: float

    def drawn(self):
        """The whole outline as one shapely shape, its round ends many-sided."""
        return shape(self.core).buffer(self.radius, quad_segs=QUARTER)


def shape(points):
    """Shapely shape of a core."""
    if len(points) == 1:
        return Point(points[0])
    if len(points) == 2:
        return LineString(points)
    return Polygon(points)


def wheel_core(view, lean, size):
    """Core of a wheel about its axle at gear down, and its radius.

    Side view: a disc. Front view: a rectangle with rounded corners, edge on.
    """
    if view == "side":
        return np.zeros((1, 2)), size.diameter / 2
    r = min(size.shoulder, size.width / 2, size.diameter / 2)
    x, y = size.width / 2 - r, size.diameter / 2 - r
    if x <= 0.0 and y <= 0.0:
        corners = np.zeros((1, 2))
    elif x <= 0.0:
        corners = np.array([(0.0, -y), (0.0, y)])
    elif y <= 0.0:
        corners = np.array([(-x, 0.0), (x, 0.0)])
    else:
        corners = np.array([(-x, -y), (x, -y), (x, y), (-x, y)])
    c, s = math.cos(lean), math.sin(lean)
    return corners @ np.array([[c, s], [-s, c]]), r


def tire_sizes(tire):
    """Both sizes of a tire by name."""
    return {"new": new_size(tire), "grown": grown_size(tire)}


def outlines(mechanism, pose, tire, only=None):
    """{(part, tire size or None): Outline} of every moving part that has one, or of one part."""
    leg = mechanism.leg
    found = {}

    def wanted(part):
        return only is None or only == part

    def on_leg(points, shift=0.0):
        moved = np.asarray(points, float) + shift * mechanism.axis
        return np.array([mechanism.on_leg(p, pose.swing) for p in moved])

    lean = leg["wheel"].get("lean_rad", 0.0)
    for name, size in tire_sizes(tire).items() if wanted("wheel") else ():
        core, radius = wheel_core(leg["view"], lean, size)
        found["wheel", name] = Outline(on_leg(mechanism.axle + core, pose.shortening), radius)
    if wanted("leg_body") and leg["body"].get("outline_m"):
        found["leg_body", None] = Outline(on_leg(leg["body"]["outline_m"]), 0.0)
    if wanted("sliding_strut") and leg["strut"].get("sliding_outline_m"):
        found["sliding_strut", None] = Outline(
            on_leg(leg["strut"]["sliding_outline_m"], pose.shortening), 0.0
        )

    def bar(part, start, end, thickness):
        if wanted(part):
            found[part, None] = Outline(np.array([start, end]), thickness / 2)

    if mechanism.kind == "folding":
        brace = leg["brace"]["folding"]
        bar("upper_link", mechanism.pivot, pose.knee, brace["upper"]["thickness_m"])
        bar("lower_link", pose.knee, pose.brace_attach, brace["lower"]["thickness_m"])
        arm(leg, brace, mechanism, pose, bar)
    if mechanism.kind == "sliding":
        thickness = leg["brace"]["sliding"]["thickness_m"]
        bar("sliding_brace", mechanism.pivot, pose.brace_attach, thickness)
    actuator = leg["actuator"]
    ends = [mechanism.mount, pose.attach]
    if actuator.get("body_at", "airframe") == "moving":
        ends.reverse()
    along = (ends[1] - ends[0]) / pose.length
    gland = ends[0] + min(actuator["body_length_m"], pose.length) * along
    bar("actuator_body", ends[0], gland, actuator["body_diameter_m"])
    bar("actuator_rod", gland, ends[1], actuator["rod_m"])
    return found


# An attach point no farther from its link stands on it [m].
ON_LINK = 1e-6


def arm(leg, brace, mechanism, pose, bar):
    """The arm from a brace link to an attach point off its line, as thick as the link."""
    ends = {
        "upper_link": (mechanism.pivot, pose.knee, brace["upper"]),
        "lower_link": (pose.knee, pose.brace_attach, brace["lower"]),
    }.get(leg["actuator"]["attach_to"])
    if ends is None:
        return
    start, end, link = ends
    line = LineString([start, end])
    tip = Point(pose.attach)
    if line.distance(tip) > ON_LINK:
        foot = line.interpolate(line.project(tip))
        bar("link_arm", np.array(foot.coords[0]), pose.attach, link["thickness_m"])


def obstacle(described):
    """(points, whether it is a solid) of an obstacle's shape."""
    [(kind, data)] = described.items()
    return np.array(data["points_m"], float), kind == "solid"
