"""Random legs that can be assembled, of every kind, and gear files of them. Same seed, same legs."""

import itertools
import math
import random

import numpy as np

from draw_springs import draw_springs
from mechanism import Mechanism, NotClosed, cross
from wells import draw_well

BRACES = ("through_centre", "same_side", "sliding", "none")
VIEWS = ("side", "front")
SHORTENINGS = ("none", "before_swing", "with_travel")
ATTACH = {
    "through_centre": ("upper_link", "lower_link", "leg"),
    "same_side": ("leg", "upper_link", "lower_link"),
    "sliding": ("leg",),
    "none": ("leg",),
}
LEGS_PER_GEAR = 4
# Of so many legs two carry springs; prime to the number of kinds, so that all kinds do.
SPRUNG = 7


def kinds():
    """Every combination of brace, attach point, view and shortening that there is."""
    for brace in BRACES:
        yield from itertools.product([brace], ATTACH[brace], VIEWS, SHORTENINGS)


def kind_of(leg):
    """The combination that a leg is, as `kinds` lists them."""
    mechanism = Mechanism(leg)
    brace = mechanism.kind
    if brace == "folding":
        brace = leg["brace"]["folding"]["folds"]
    return (brace, mechanism.attach_to, leg["view"], mechanism.shortening_kind)


def rounded(point):
    """A point to a hundredth of a millimeter, as one types it."""
    return [round(float(c), 5) for c in point]


class Frame:
    """Puts a leg drawn with its trunnion at 0, folding to the right, into an airplane."""

    def __init__(self, rng):
        self.mirror = rng.choice((1.0, -1.0))
        self.shift = np.array([rng.uniform(-2.5, 2.5), rng.uniform(-0.6, 0.6)])

    def __call__(self, x, y):
        return rounded(self.shift + np.array([self.mirror * x, y]))

    def outline(self, points):
        return [self(x, y) for x, y in points]


def draw_tire(rng, diameter):
    """A tire of about one diameter."""
    width = diameter * rng.uniform(0.28, 0.45)
    tire = {
        "size": "drawn",
        "diameter_m": round(diameter, 4),
        "width_m": round(width, 4),
        "shoulder_radius_m": round(width * rng.uniform(0.1, 0.45), 4),
        "rim_diameter_m": round(diameter * rng.uniform(0.3, 0.45), 4),
        "basis": rng.choice(("measured", "maker", "unstated")),
    }
    if rng.random() < 0.4:
        tire["grown"] = {
            "given": {
                "diameter_m": round(diameter * rng.uniform(1.01, 1.05), 4),
                "width_m": round(width * rng.uniform(1.01, 1.06), 4),
                "basis": "measured",
            }
        }
    return tire


def draw_brace(rng, kind, length, put):
    """Brace of one kind, and its knee in the drawn frame (None without one)."""
    if kind == "none":
        return "none", None
    attach = (length * rng.uniform(-0.04, 0.08), -length * rng.uniform(0.25, 0.55))
    pivot = (length * rng.uniform(0.45, 0.9), length * rng.uniform(-0.1, 0.2))
    if kind == "sliding":
        return {
            "sliding": {
                "airframe_pivot_m": put(*pivot),
                "leg_attach_m": put(*attach),
                "thickness_m": round(rng.uniform(0.015, 0.04), 4),
                "mass_kg": round(rng.uniform(0.0, 2.0), 2),
            }
        }, None
    along = np.array(attach) - np.array(pivot)
    reach = float(np.linalg.norm(along))
    square = np.array([-along[1], along[0]]) / reach * rng.choice((1.0, -1.0))
    if kind == "through_centre":
        offset = rng.uniform(0.001, 0.008)
    else:
        offset = reach * rng.uniform(0.02, 0.2)
    knee = np.array(pivot) + rng.uniform(0.4, 0.6) * along + offset * square
    folding = {
        "airframe_pivot_m": put(*pivot),
        "knee_m": put(*knee),
        "leg_attach_m": put(*attach),
        "folds": kind,
        "upper": {"thickness_m": round(rng.uniform(0.015, 0.04), 4)},
        "lower": {"thickness_m": round(rng.uniform(0.015, 0.04), 4)},
    }
    if rng.random() < 0.8:
        folding["upper"]["mass_kg"] = round(rng.uniform(0.2, 2.0), 2)
        folding["lower"]["mass_kg"] = round(rng.uniform(0.2, 2.0), 2)
    return {"folding": folding}, knee


def draw_shortening(rng, kind, length):
    """Shortening of one kind."""
    if kind == "none":
        return {}
    amount = round(length * rng.uniform(0.02, 0.12), 4)
    if kind == "before_swing":
        return {"shortening": {"before_swing": {"amount_m": amount}}}
    travels = sorted(rng.uniform(0.03, 0.97) for _ in range(rng.randint(1, 3)))
    rows = [{"travel": 0.0, "amount_m": 0.0}]
    rows += [
        {"travel": round(t, 5), "amount_m": round(amount * t * rng.uniform(0.7, 1.0), 5)}
        for t in travels
    ]
    rows.append({"travel": 1.0, "amount_m": amount})
    return {"shortening": {"with_travel": {"table": rows}}}


def draw_attach(rng, on, length, knee, brace, put):
    """A1 in the drawn frame, on the part that carries it."""
    if on == "leg":
        return put(length * rng.uniform(-0.12, 0.12), -length * rng.uniform(0.12, 0.4))
    data = brace["folding"]
    ends = (
        ("airframe_pivot_m", "knee_m") if on == "upper_link" else ("knee_m", "leg_attach_m")
    )
    start, end = (np.array(data[key]) for key in ends)
    along = end - start
    square = np.array([-along[1], along[0]])
    return rounded(start + rng.uniform(0.25, 0.7) * along + rng.uniform(-0.25, 0.25) * square)


def draw_leg(rng, brace_kind, on, view, shortening, name):
    """One leg of a kind; None when this draw cannot be assembled or hardly moves its actuator."""
    put = Frame(rng)
    length = rng.uniform(0.45, 0.95)
    brace, knee = draw_brace(rng, brace_kind, length, put)
    wide = length * rng.uniform(0.03, 0.06)
    axle = (length * rng.uniform(-0.15, 0.15), -length)
    lean = rng.uniform(-0.1, 0.1)
    split = -length * rng.uniform(0.45, 0.6)
    leg = {
        "name": name,
        "view": view,
        "trunnion_m": put(0.0, 0.0),
        "swing_up_rad": round(put.mirror * rng.uniform(1.2, 1.75), 4),
        "body": {
            "outline_m": put.outline([(-wide, wide), (wide, wide), (wide, split), (-wide, split)]),
            "mass_kg": round(rng.uniform(4.0, 14.0), 2),
            "centre_m": put(length * rng.uniform(-0.05, 0.05), -length * rng.uniform(0.2, 0.5)),
        },
        "strut": {
            "axle_m": put(*axle),
            "axis_bottom_m": put(length * lean, -length),
            "axis_top_m": put(0.0, 0.0),
            **draw_shortening(rng, shortening, length),
        },
        "wheel": {
            "tire": draw_tire(rng, length * rng.uniform(0.45, 0.75)),
            "mass_kg": round(rng.uniform(4.0, 12.0), 2),
        },
        "brace": brace,
    }
    if rng.random() < 0.8:
        thin = 0.7 * wide
        leg["strut"]["sliding_outline_m"] = put.outline(
            [(-thin, split), (thin, split), (axle[0] + thin, -length), (axle[0] - thin, -length)]
        )
    if view == "front" and rng.random() < 0.5:
        leg["wheel"]["lean_rad"] = round(rng.uniform(-0.15, 0.15), 4)
    if rng.random() < 0.7:
        leg["air"] = {
            "wheel_drag_area_m2": round(rng.uniform(0.0, 0.04), 4),
            "leg_drag_area_m2": round(rng.uniform(0.0, 0.08), 4),
        }
    if brace_kind == "through_centre" and rng.random() < (0.5 if on == "leg" else 0.1):
        brace["folding"]["unlocked_by"] = "separate"
    mount = (length * rng.uniform(-0.5, 0.9), length * rng.uniform(-0.1, 0.45))
    leg["actuator"] = {
        "mount_m": put(*mount),
        "attach_m": draw_attach(rng, on, length, knee, brace, put),
        "attach_to": on,
        "bore_m": round(rng.uniform(0.02, 0.06), 4),
        "body_at": rng.choice(("airframe", "moving")),
        "mass_kg": round(rng.uniform(0.5, 3.0), 2),
        "seal_friction_n": round(rng.uniform(0.0, 200.0), 1),
    }
    return finish(rng, leg)


def finish(rng, leg):
    """Fits end lengths and body to the path, and draws the well around it."""
    try:
        mechanism = Mechanism(leg)
        path = [(phase, pose) for phase, _, pose in mechanism.path(61)]
    except NotClosed:
        return None
    if mechanism.kind == "folding" and not sound(mechanism, path):
        return None
    actuator = leg["actuator"]
    lengths = [pose.length for _, pose in path]
    low, high = min(lengths), max(lengths)
    if low < 0.08 or high - low < 0.03:
        return None
    actuator["shortest_m"] = round(low - 0.004, 4)
    actuator["longest_m"] = round(high + 0.004, 4)
    actuator["body_length_m"] = round(low * rng.uniform(0.6, 0.9), 4)
    actuator["rod_m"] = round(actuator["bore_m"] * rng.uniform(0.35, 0.65), 4)
    actuator["body_diameter_m"] = round(actuator["bore_m"] * 1.25, 4)
    if mechanism.kind == "sliding":
        spans = [mechanism.span(pose.swing) for _, pose in path]
        sliding = leg["brace"]["sliding"]
        sliding["shortest_m"] = round(min(spans) - 0.003, 4)
        sliding["longest_m"] = round(max(spans) + 0.003, 4)
    if rng.random() < 0.12:
        stop_early(rng, leg, lengths)
    leg["well"] = draw_well(rng, mechanism, path)
    return leg


def sound(mechanism, path):
    """Whether a folding brace stays away from toggles on its way (but for the straight pose)."""
    folds = [pose.fold for phase, pose in path if phase == "swing"]
    if mechanism.through_centre:
        folds = folds[1:]
        if abs(mechanism.swing_straight) > 0.05:
            return False
    if min(folds) <= 0.0 or max(folds) > math.pi - 0.15:
        return False
    arm = cross(mechanism.knee - mechanism.pivot, mechanism.leg_attach - mechanism.knee)
    return abs(arm) > 1e-6


def stop_early(rng, leg, lengths):
    """Gives the actuator an end that it meets on the way."""
    down, up = lengths[0], lengths[-1]
    if abs(up - down) < 0.6 * (max(lengths) - min(lengths)):
        return
    end = round(down + rng.uniform(0.5, 0.9) * (up - down), 4)
    actuator = leg["actuator"]
    if up < down:
        actuator["shortest_m"] = end
    else:
        actuator["longest_m"] = end
    actuator["body_length_m"] = min(actuator["body_length_m"], actuator["shortest_m"])


def draw_case(rng):
    """Conditions, supply and clearance rule of a gear."""
    gear = {
        "supply": {
            "available_pressure_pa": round(rng.uniform(5e6, 1.4e7)),
            "return_pressure_pa": round(rng.uniform(0.0, 4e5)),
        }
    }
    if rng.random() < 0.85:
        gear["conditions"] = {
            "load_factor": round(rng.uniform(0.5, 2.5), 3),
            "pitch_rad": round(rng.uniform(-0.25, 0.25), 4),
            "bank_rad": round(rng.uniform(-0.5, 0.5), 4),
            "airspeed_m_s": round(rng.uniform(0.0, 70.0), 2),
            "sideslip_rad": round(rng.uniform(-0.2, 0.2), 4),
            "air_density_kg_m3": round(rng.uniform(0.8, 1.3), 4),
        }
    if rng.random() < 0.5:
        gear["clearance_rule"] = {
            "tire_new_m": round(rng.uniform(0.005, 0.03), 4),
            "tire_grown_m": round(rng.uniform(0.003, 0.02), 4),
            "parts_m": round(rng.uniform(0.002, 0.01), 4),
        }
    return gear


def draw_gears(seed, least):
    """Gears with at least `least` legs in all, every kind among them."""
    rng = random.Random(seed)
    wanted = list(kinds())
    legs = []
    for number in itertools.count():
        kind = wanted[number % len(wanted)]
        leg = None
        for _ in range(2000):
            leg = draw_leg(rng, *kind, f"Leg {number + 1}")
            if leg is not None:
                break
        if leg is None:
            raise RuntimeError(f"no leg of kind {kind} can be drawn")
        legs.append(leg)
        if len(legs) >= least and len(legs) >= len(wanted) and len(legs) % LEGS_PER_GEAR == 0:
            break
    sprung = random.Random(seed + 1)
    for leg in (leg for at, leg in enumerate(legs) if at % SPRUNG in (0, 3)):
        leg["springs"] = draw_springs(sprung, leg, sprung.randint(1, 3))
    return [
        {"name": f"Drawn {i // LEGS_PER_GEAR + 1}", "legs": legs[i : i + LEGS_PER_GEAR]}
        | draw_case(rng)
        for i in range(0, len(legs), LEGS_PER_GEAR)
    ]
