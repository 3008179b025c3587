"""Random gears of three legs on every kind of source, strong enough or too weak for them."""

import concurrent.futures
import random

from draw_driven import draw_driven, draw_electric, draw_lines, draw_start, draw_switches
from draw_sources import draw_source

# Kinds of the three legs: nose, mains; the strut of the mains is shortened by a jack.
KINDS = (
    (("sliding", "leg", "side", "none"), ("same_side", "leg", "front", "none")),
    (("through_centre", "upper_link", "front", "before_swing"),
     ("through_centre", "lower_link", "front", "before_swing"),
     ("same_side", "leg", "front", "before_swing")),
    (("none", "leg", "front", "before_swing"), ("sliding", "leg", "front", "before_swing"),
     ("through_centre", "upper_link", "side", "none")),
)
# Sources, and how many gears of each; a weak one cannot drive all of its legs all the way.
SOURCES = {
    "motor pump": 4,
    "hand pump": 2,
    "constant pressure": 2,
    "accumulator": 2,
    "accumulator and pump": 2,
    "emptied accumulator alone": 2,
    "emptied accumulator and motor pump": 2,
    "emptied accumulator and hand pump": 1,
    "filled accumulator and motor pump": 2,
    "filled accumulator and hand pump": 1,
    "filled accumulator and switched pump": 1,
    "accumulator above its hand pump": 1,
    "accumulator above its switched pump": 1,
    "electric actuators": 2,
    "pressure switch": 3,
    "weak motor pump": 3,
    "weak hand pump": 2,
    "weak constant pressure": 2,
    "weak accumulator": 1,
    "weak electric actuators": 2,
    "far too weak hand pump": 1,
}
# So often other legs are drawn for a source.
MOST_DRAWS = 40


def draw_supplied(draw):
    """[(kind of source, gear)]: gears of three legs on a source that brings them all up and down."""
    kinds = [kind for kind, count in SOURCES.items() for _ in range(count)]
    jobs = [(draw, kind, number) for number, kind in enumerate(kinds)]
    with concurrent.futures.ProcessPoolExecutor() as pool:
        return list(zip(kinds, pool.map(draw_gear, jobs)))


def draw_gear(job):
    """One gear, of random numbers of its own."""
    draw, kind, number = job
    rng = random.Random(f"{draw} {number}")
    name = f"Supplied {number + 1}"
    gear = {
        "name": name,
        "legs": [],
        "conditions": {
            "load_factor": round(rng.uniform(0.9, 1.5), 3),
            "airspeed_m_s": round(rng.uniform(20.0, 45.0), 2),
            "sideslip_rad": round(rng.uniform(-0.1, 0.1), 4),
        },
        "fluid": {"density_kg_m3": round(rng.uniform(800.0, 1000.0), 1)},
        "supply": {
            "available_pressure_pa": 1e7,
            "return_pressure_pa": round(rng.uniform(0.0, 3e5)),
            "battery": {
                "open_circuit_v": round(rng.uniform(12.0, 13.0), 2),
                "internal_ohm": round(rng.uniform(0.005, 0.02), 4),
                "wires_ohm": round(rng.uniform(0.002, 0.01), 4),
                "breaker_a": round(rng.uniform(30.0, 70.0)),
            },
        },
    }
    for _ in range(MOST_DRAWS):
        gear["legs"] = []
        asked = draw_legs(rng, kind, gear, number)
        source = draw_source(rng, kind, gear, asked, number) if asked else None
        if source is not None:
            gear["supply"].update(source)
            return gear
    raise RuntimeError(f"no gear for {kind} can be drawn")


def draw_legs(rng, kind, gear, at):
    """Gives a gear its legs; what they ask for, None where they do not fit the source."""
    electric, weak = kind.endswith("electric actuators"), rng.randrange(len(KINDS))
    found = []
    for number, of_leg in enumerate(KINDS):
        # nothing shortens a strut without fluid
        fit = [one for one in of_leg if one[3] == "none"] if electric else of_leg
        one = rng.choice(fit or KINDS[0])
        leg, path, asked = draw_driven(rng, one, gear, f"{gear['name']} leg {number + 1}")
        gear["legs"].append(leg)
        found.append(asked)
        if electric:
            is_weak = "weak" in kind and number == weak
            spare = rng.uniform(0.6, 0.85) if is_weak else rng.uniform(1.8, 3.0)
            leg["drive"] = draw_electric(rng, path, leg, spare, gear["supply"]["battery"])
            if leg["drive"] is None:
                return None
        else:
            leg["drive"] = draw_lines(rng, one, leg, "constant" not in kind)
        if "weak" in kind:
            # a switch that makes early, or a start behind the worst place, would spare it the stall
            continue
        leg["drive"] |= draw_start(rng)
        leg["drive"] |= draw_switches(rng, leg["drive"])
    if kind == "motor pump" and at == 0:
        # one is up already
        gear["legs"][0]["drive"]["start_travel"] = 1.0
    return found
