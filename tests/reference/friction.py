"""Pin friction, solved together with the pin loads that make it.

Each pin resists the turn of one part in the other with a moment μ·r·|R| + C, C the couple it is given. The balance of bodies
(forces.py) takes those moments; the two on the actuator bend it, so that it pushes square to itself
on both of its pins. scipy's root finds the moments that go with their own loads, raised from nothing
so that of several solutions the one without a jump is taken.
"""

import math

import numpy as np
from scipy.optimize import root

from forces import free_bodies

# Steps in which the friction is raised.
RISES = 8


def joints_of(mechanism):
    """(pin as the gear file names it, part that turns, part that it turns in)."""
    found = [("trunnion", "leg", None)]
    if mechanism.kind == "folding":
        found += [
            ("brace_pivot", "upper_link", None),
            ("knee", "lower_link", "upper_link"),
            ("leg_attach", "leg", "lower_link"),
        ]
    if mechanism.kind == "sliding":
        found += [("brace_pivot", "brace", None), ("leg_attach", "leg", "brace")]
    return [
        *found,
        ("actuator_mount", "actuator", None),
        ("actuator_attach", "actuator", mechanism.attach_to),
    ]


def heading(vector):
    """Direction of a vector [rad]."""
    return math.atan2(vector[1], vector[0])


def turns(mechanism, before, after):
    """By how much each part turns from one pose to another near it [rad]."""
    ends = {
        "leg": (before.swing, after.swing),
        "actuator": (heading(before.attach - mechanism.mount), heading(after.attach - mechanism.mount)),
    }
    if mechanism.kind == "folding":
        ends["upper_link"] = tuple(heading(p.knee - mechanism.pivot) for p in (before, after))
        ends["lower_link"] = tuple(heading(p.brace_attach - p.knee) for p in (before, after))
    if mechanism.kind == "sliding":
        ends["brace"] = tuple(heading(p.brace_attach - mechanism.pivot) for p in (before, after))
    return {
        part: (end - start + math.pi) % (2 * math.pi) - math.pi for part, (start, end) in ends.items()
    }


def relative_turns(mechanism, before, after):
    """By how much each pin turns [rad], in the order of joints_of."""
    turned = turns(mechanism, before, after)
    return [turned[on] - turned.get(other, 0.0) for _, on, other in joints_of(mechanism)]


def with_moments(loads, mechanism, pose, moments):
    """free_bodies, plus "actuator_attach" [N], with a moment on the part that turns at every pin."""
    couples, on_actuator = [], 0.0
    for (_, on, other), moment in zip(joints_of(mechanism), moments):
        for part, share in ((on, moment), (other, -moment)):
            if part == "actuator":
                on_actuator += share
            elif part is not None:
                couples.append((part, share))
    line = (pose.attach - mechanism.mount) / pose.length
    # what the driven part does to the actuator square to it, so that its moments balance
    square = -on_actuator / pose.length * np.array([-line[1], line[0]])
    forces = [(mechanism.attach_to, pose.attach, -square)]
    found = free_bodies(loads, mechanism, pose, check=False, more=(forces, couples))
    found["mount"] = found["mount"] - square
    # half of the actuator's weight hangs on either of its pins
    half = 0.5 * loads.leg["actuator"].get("mass_kg", 0.0) * loads.pull
    found["actuator_attach"] = found["thrust"] * line - square + half
    return found


def loads_of_pins(found):
    """Load of each pin by its name in the gear file [N]."""
    names = {"leg_attach": "brace_attach", "actuator_mount": "mount"}
    return lambda pin: found[names.get(pin, pin)]


def by_moments(loads, mechanism, pose):
    """(thrust [N] and then both parts of the load of every pin [N] without friction, their change for
    a moment of one at every pin): a balance of forces is linear in what acts."""
    pins = [name for name, _, _ in joints_of(mechanism)]

    def stand(moments):
        found = with_moments(loads, mechanism, pose, moments)
        load = loads_of_pins(found)
        return np.array([found["thrust"], *np.concatenate([load(pin) for pin in pins])])

    still = stand(np.zeros(len(pins)))
    return still, np.array([stand(unit) - still for unit in np.eye(len(pins))]).T


def friction_radii(loads, mechanism):
    """Radius of the friction circle of each pin [m], in the order of joints_of."""
    pins = [loads.leg.get("pins", {}).get(name, {}) for name, _, _ in joints_of(mechanism)]
    return np.array([pin.get("radius_m", 0.0) * pin.get("friction", 0.0) for pin in pins])


def friction_couples(loads, mechanism):
    """Couple of each pin that does not hang on its load [N·m], in the order of joints_of."""
    pins = [loads.leg.get("pins", {}).get(name, {}) for name, _, _ in joints_of(mechanism)]
    return np.array([pin.get("couple_n_m", 0.0) for pin in pins])


def moments_of(stands, radii, turned, near=None, couples=0.0):
    """Moment of every pin on the part that turns [N·m], by what stands (by_moments), the friction
    circles and the sense in which the pins turn; None where friction raised to its full value finds
    no balance. `near`: moments of a pose close by, from which no friction need be raised."""
    still, change = stands
    against = -np.copysign(radii, turned)
    constant = -np.copysign(couples, turned)

    def balanced(share, moments):
        def miss(moments):
            pins = (still + change @ moments)[1:].reshape(-1, 2)
            return moments - share * (against * np.hypot(pins[:, 0], pins[:, 1]) + constant)

        found = root(miss, moments, tol=1e-13)
        scale = 1.0 + float(np.max(np.abs(found.x)))
        return found.x if float(np.max(np.abs(miss(found.x)))) <= 1e-9 * scale else None

    moments = None if near is None else balanced(1.0, near)
    if moments is not None:
        return moments
    moments = np.zeros(len(radii))
    for rise in range(1, RISES + 1):
        moments = balanced(rise / RISES, moments)
        if moments is None:
            return None
    return moments


def rubbing(loads, mechanism, pose, turned):
    """free_bodies of a leg whose pins turn so (relative_turns, in the direction of its motion)."""
    radii = friction_radii(loads, mechanism)
    couples = friction_couples(loads, mechanism)
    stands = by_moments(loads, mechanism, pose)
    moments = moments_of(stands, radii, turned, couples=couples)
    return None if moments is None else with_moments(loads, mechanism, pose, moments)
