"""Random springs of every kind on drawn legs, of a size that the weights can carry."""

import math

from gearfile import brace_of
from mechanism import Mechanism
from springs import coordinate


def draw_springs(rng, leg, count):
    """Springs for a leg that has none yet; places in the airplane, to a hundredth of a millimeter."""
    mechanism = Mechanism(leg)
    size = math.dist(leg["trunnion_m"], leg["strut"]["axle_m"])
    folding = brace_of(leg)[0] == "folding"
    joints = {"folding": ("trunnion", "brace_pivot", "knee", "leg_attach")}.get(
        mechanism.kind, ("trunnion",)
    )
    if mechanism.kind == "sliding":
        joints = ("trunnion", "brace_pivot", "leg_attach")
    bodies = ["leg", "sliding_strut"] + (["upper_link", "lower_link"] if folding else [])
    springs = []
    while len(springs) < count:
        kind = rng.choice(("linear", "linear", "torsion", "torsion", "gas"))
        if kind == "torsion":
            data = {
                "joint": rng.choice(joints),
                "rate_n_m_rad": round(rng.uniform(0.0, 15.0), 3),
                "moment_at_down_n_m": round(rng.uniform(-25.0, 25.0), 3),
            }
        else:
            first, second = rng.sample(["airframe", *bodies], 2)
            data = {
                "first": {"body": first, "point_m": near(rng, leg, size)},
                "second": {"body": second, "point_m": near(rng, leg, size)},
            }
            lengths = [
                coordinate(mechanism, pose, "linear", data) for _, _, pose in mechanism.path(61)
            ]
            low, high = min(lengths), max(lengths)
            if low < 0.05 or high - low < 0.01:
                continue
            data |= linear(rng, low, high) if kind == "linear" else gas(rng, low, high)
        springs.append({"name": f"Spring {len(springs) + 1}", "kind": {kind: data}})
    return springs


def near(rng, leg, size):
    """A point around the upper leg [m]."""
    x, y = leg["trunnion_m"]
    return [
        round(x + size * rng.uniform(-0.5, 0.5), 5),
        round(y + size * rng.uniform(-0.6, 0.4), 5),
    ]


def linear(rng, low, high):
    """Rate and set of a linear spring that goes from `low` to `high` long."""
    force = rng.uniform(20.0, 120.0)
    rate = round(force / (high - low), 3)
    free = round(rng.uniform(0.8 * low, high), 5)
    by_length = {"free_length": {"length_m": free}}
    by_force = {"force_at_down": {"force_n": round(rng.uniform(-80.0, 120.0), 3)}}
    drawn = {"rate_n_m": rate, "set": rng.choice((by_length, by_force))}
    acts = rng.choice(("both", "pulls", "pushes"))
    return drawn if acts == "both" else drawn | {"acts": acts}


def gas(rng, low, high):
    """Ends and law of a gas spring that goes from `low` to `high` long."""
    push = rng.uniform(20.0, 90.0)
    drawn = {
        "shortest_m": round(low - 0.01, 4),
        "longest_m": round(high + 0.01, 4),
        "force_longest_n": round(push, 3),
        "force_shortest_n": round(push * rng.uniform(1.1, 2.0), 3),
    }
    if rng.random() < 0.5:
        drawn["law"] = {"polytropic": {"exponent": rng.choice((1.0, 1.2, 1.4))}}
    return drawn
