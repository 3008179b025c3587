"""Springs of a leg: where they are, what they pull, from force laws of any text on mechanics.

A spring has one coordinate: the distance of its ends, or the turn of its joint since gear down. Its
effort does positive work when the coordinate grows. Used by the balance of bodies and by the fall,
which are held against the program; the places come from this reference's own poses.
"""

import math

import numpy as np

from mechanism import angle_between, turn


def springs_of(leg):
    """[(kind, data)] of a leg."""
    return [next(iter(spring["kind"].items())) for spring in leg.get("springs", [])]


def wrapped(angle):
    """An angle between −π and π [rad]."""
    return math.remainder(angle, 2 * math.pi)


def placed(mechanism, pose, end):
    """Where an end is, given with its body at gear down [m]."""
    point, body = np.array(end["point_m"], float), end["body"]
    if body == "airframe":
        return point
    if body == "leg":
        return mechanism.on_leg(point, pose.swing)
    if body == "sliding_strut":
        return mechanism.on_leg(point + pose.shortening * mechanism.axis, pose.swing)
    if body == "upper_link":
        return mechanism.pivot + turn(pose.upper) @ (point - mechanism.pivot)
    return pose.knee + turn(pose.lower) @ (point - mechanism.knee)


def turned(mechanism, pose, joint):
    """Turn of the part that a joint names first against the other since gear down [rad]."""
    if joint == "trunnion":
        return pose.swing
    if joint == "knee":
        now = angle_between(pose.knee - mechanism.pivot, pose.brace_attach - pose.knee)
        down = angle_between(
            mechanism.knee - mechanism.pivot, mechanism.leg_attach - mechanism.knee
        )
        return wrapped(now - down)
    if mechanism.kind == "folding":
        brace = pose.upper if joint == "brace_pivot" else pose.lower
    else:
        brace = angle_between(
            mechanism.leg_attach - mechanism.pivot, pose.brace_attach - mechanism.pivot
        )
    return brace if joint == "brace_pivot" else wrapped(brace - pose.swing)


def coordinate(mechanism, pose, kind, data):
    """Distance of the ends [m] or turn of the joint [rad]."""
    if kind == "torsion":
        return turned(mechanism, pose, data["joint"])
    apart = placed(mechanism, pose, data["second"]) - placed(mechanism, pose, data["first"])
    return math.hypot(apart[0], apart[1])


def effort(kind, data, at):
    """Push apart of the ends [N] or moment [N·m] at a coordinate.

    Hooke; for gas p·Vⁿ constant with the volume falling in proportion to the stroke.
    """
    if kind == "torsion":
        return data["moment_at_down_n_m"] - data["rate_n_m_rad"] * at
    if kind == "linear":
        push = -linear_pull(data, at)
        acts = data.get("acts", "both")
        if acts == "pulls":
            return min(push, 0.0)
        return max(push, 0.0) if acts == "pushes" else push
    share = (data["longest_m"] - at) / (data["longest_m"] - data["shortest_m"])
    low, high = data["force_longest_n"], data["force_shortest_n"]
    law = data.get("law", "linear")
    if law == "linear":
        return low + share * (high - low)
    exponent = law["polytropic"]["exponent"]
    # volume at the shortest length as a share of that at the longest
    least = (low / high) ** (1.0 / exponent)
    return low / (1.0 + share * (least - 1.0)) ** exponent


def linear_pull(data, length):
    """Pull of a linear spring that can do both [N]."""
    [(how, given)] = data["set"].items()
    if how == "free_length":
        return data["rate_n_m"] * (length - given["length_m"])
    apart = np.subtract(data["second"]["point_m"], data["first"]["point_m"])
    return given["force_n"] + data["rate_n_m"] * (length - math.hypot(*apart))
