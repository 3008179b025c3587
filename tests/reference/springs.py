"""Springs of a leg: where they are, what they pull, from force laws of any text on mechanics.

A spring has one coordinate: the distance of its ends, or the turn of its joint since gear down. Its
effort does positive work when the coordinate grows. Used by the balance of bodies and by the fall,
which are held against the program; the places come from this reference's own poses.
"""

import functools
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


@functools.lru_cache(maxsize=4)
def turns_of_links(mechanism):
    """(share of the swing, turns of both links there since gear down [rad]), without jumps."""
    path = [pose for phase, _, pose in mechanism.path(121) if phase == "swing"]
    links = {
        link: np.unwrap([getattr(pose, link) for pose in path]) for link in ("upper", "lower")
    }
    return np.array([pose.swing / mechanism.up for pose in path]), links


def followed(mechanism, pose, link):
    """Turn of a link since gear down, which may be more than half a turn [rad]."""
    shares, links = turns_of_links(mechanism)
    angle = getattr(pose, link)
    near = np.interp(pose.swing / mechanism.up, shares, links[link])
    return angle + 2 * math.pi * round((near - angle) / (2 * math.pi))


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
        link = "upper" if joint == "brace_pivot" else "lower"
        brace = followed(mechanism, pose, link)
    else:
        brace = angle_between(
            mechanism.leg_attach - mechanism.pivot, pose.brace_attach - mechanism.pivot
        )
    return brace if joint == "brace_pivot" else brace - pose.swing


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


def stored(kind, data, at):
    """Energy stored at a coordinate, from some fixed place [J]: effort is its slope downwards."""
    if kind == "torsion":
        return (0.5 * data["rate_n_m_rad"] * at - data["moment_at_down_n_m"]) * at
    if kind == "linear":
        return 0.5 * effort(kind, data, at) ** 2 / data["rate_n_m"]
    # the work of the gas by Gauss's rule, its push being smooth
    nodes, weights = np.polynomial.legendre.leggauss(20)
    half = 0.5 * (data["longest_m"] - at)
    pushes = [effort(kind, data, at + half * (1.0 + node)) for node in nodes]
    return half * float(np.dot(weights, pushes))


def energy_of_springs(springs, mechanism, pose):
    """Energy stored in all springs [J]."""
    return sum(
        stored(kind, data, coordinate(mechanism, pose, kind, data)) for kind, data in springs
    )


def slack(springs, mechanism, pose):
    """For every linear spring whether it pulls: where that changes its force has a corner."""
    return [
        linear_pull(data, coordinate(mechanism, pose, kind, data)) > 0.0
        for kind, data in springs
        if kind == "linear" and "acts" in data
    ]


def forces_of_springs(springs, mechanism, pose):
    """([(body, point, force)], [(body, moment)]) on all bodies but the airframe."""
    forces, moments = [], []
    for kind, data in springs:
        push = effort(kind, data, coordinate(mechanism, pose, kind, data))
        if kind == "torsion":
            moments += couples(mechanism, data["joint"], push)
            continue
        first, second = (placed(mechanism, pose, data[end]) for end in ("first", "second"))
        along = (second - first) / np.linalg.norm(second - first)
        forces.append((data["first"]["body"], first, -push * along))
        forces.append((data["second"]["body"], second, push * along))
    return (
        [row for row in forces if row[0] != "airframe"],
        [row for row in moments if row[0] != "airframe"],
    )


def couples(mechanism, joint, moment):
    """[(body, moment)] of a torsion spring at a joint; `brace` is the telescopic one."""
    folding = mechanism.kind == "folding"
    first, other = {
        "trunnion": ("leg", "airframe"),
        "brace_pivot": ("upper_link" if folding else "brace", "airframe"),
        "knee": ("lower_link", "upper_link"),
        "leg_attach": ("lower_link" if folding else "brace", "leg"),
    }[joint]
    return [(first, moment), (other, -moment)]
