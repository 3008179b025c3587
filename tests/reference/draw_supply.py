"""Random gears of three legs on every kind of source, none of which stalls."""

import concurrent.futures
import random

import numpy as np

from compare import first_stop
from draw import draw_leg
from draw_sources import draw_source
from draw_springs import draw_springs
from friction import joints_of
from mechanism import Mechanism, NotClosed
from ways import POSES, swing_efforts, swing_loads, swing_path

# Kinds of the three legs: nose, mains; the strut of the mains is shortened by a jack.
KINDS = (
    (("sliding", "leg", "side", "none"), ("same_side", "leg", "front", "none")),
    (("through_centre", "upper_link", "front", "before_swing"),
     ("through_centre", "lower_link", "front", "before_swing"),
     ("same_side", "leg", "front", "before_swing")),
    (("none", "leg", "front", "before_swing"), ("sliding", "leg", "front", "before_swing"),
     ("through_centre", "upper_link", "side", "none")),
)
# Sources, and how many gears of each.
SOURCES = {
    "motor pump": 4,
    "hand pump": 2,
    "constant pressure": 2,
    "accumulator": 2,
    "accumulator and pump": 2,
    "electric actuators": 2,
}
# Loads beyond this are not for one pump [Pa].
HIGHEST = 8e6
# Poses of the swing through which a drawn leg is looked at.
GLANCE = 41
# Share of the legs that carry springs, and of those whose pins rub.
SPRUNG, RUBBING = 0.4, 0.4


def draw_orifice(rng):
    """A hole, half of the times with a coefficient of its own."""
    orifice = {"hole_m": round(rng.uniform(0.0007, 0.0015), 5)}
    if rng.random() < 0.5:
        orifice["discharge"] = round(rng.uniform(0.58, 0.7), 3)
    return orifice


def draw_driven(rng, kind, gear, name, electric):
    """A leg that its actuator drives all the way up and down with a load that one source can have,
    and its loads both ways."""
    for _ in range(4000):
        leg = draw_leg(rng, *kind, name)
        if leg is None:
            continue
        if leg["brace"] != "none" and "unlocked_by" in leg["brace"].get("folding", {}):
            continue
        if not is_driven(leg):
            continue
        if rng.random() < SPRUNG:
            leg["springs"] = draw_springs(rng, leg, rng.randint(1, 2))
        if within_reach(gear, leg, swing_path(gear, leg, GLANCE)) is None:
            continue
        if rng.random() < RUBBING:
            leg["pins"] = draw_pins(rng, leg)
        path = swing_path(gear, leg, GLANCE)
        loads = within_reach(gear, leg, path)
        if loads is None:
            continue
        leg["drive"] = draw_electric(rng, path, leg) if electric else draw_lines(rng, kind, leg)
        return leg, loads
    raise RuntimeError(f"no leg of kind {kind} that a source drives can be drawn")


def is_driven(leg):
    """Whether the actuator drives a leg all the way, without an end of it and without turning back."""
    try:
        mechanism = Mechanism(leg)
        if first_stop(mechanism) is not None:
            return False
    except NotClosed:
        return False
    lengths = [pose.length for phase, _, pose in mechanism.path(POSES) if phase != "shorten"]
    steps = np.diff(lengths) * (lengths[-1] - lengths[0])
    return bool(np.all(steps > -1e-15))


def within_reach(gear, leg, path):
    """[(fluid [m3], load [Pa])] up and down all along a Path; None of one that a pump does not drive."""
    if path is None:
        return None
    ways = [swing_loads(path, gear, leg, down)[0] for down in (False, True)]
    loads = [tuple(map(np.concatenate, zip(*pieces))) for pieces in ways]
    return None if any(max(abs(load)) > HIGHEST for _, load in loads) else loads


def draw_pins(rng, leg):
    """Pins that rub, one of them perhaps not."""
    pins = {
        name: {
            "radius_m": round(rng.uniform(0.004, 0.015), 4),
            "friction": round(rng.uniform(0.05, 0.25), 3),
        }
        for name, _, _ in joints_of(Mechanism(leg))
    }
    if rng.random() < 0.3:
        del pins[rng.choice(list(pins))]
    return pins


def draw_lines(rng, kind, leg):
    """Orifices, and the jack of a strut that shortens before the swing."""
    drive = {"orifice_up": draw_orifice(rng)}
    if rng.random() < 0.7:
        drive["orifice_down"] = draw_orifice(rng)
    else:
        # the orifice of the fall stands in
        leg["fall"] = {"return_orifice_m": round(rng.uniform(0.0007, 0.0015), 5)}
        if rng.random() < 0.5:
            leg["fall"]["discharge_coefficient"] = round(rng.uniform(0.6, 0.7), 3)
    if kind[3] == "before_swing":
        drive["jack"] = {
            "area_m2": round(rng.uniform(2e-4, 6e-4), 6),
            "shorten_pa": round(rng.uniform(5e5, 3e6)),
            "lengthen_pa": round(rng.uniform(0.0, 1e6)),
        }
        if rng.random() < 0.4:
            drive["stage_valve_pa"] = round(rng.uniform(5e5, 2e6))
    return drive


def draw_electric(rng, path, leg):
    """An actuator with force to spare both ways."""
    most = max(
        force.max() for down in (False, True) for _, force in swing_efforts(path, leg, down)[0]
    )
    return {"electric": {
        "free_speed_m_s": round(rng.uniform(0.02, 0.06), 4),
        "stall_force_n": round(max(most, 200.0) * rng.uniform(1.8, 3.0)),
        "motor_v": 12.0,
        "idle_a": round(rng.uniform(1.0, 4.0), 1),
        "locked_a": round(rng.uniform(15.0, 40.0), 1),
    }}


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
    electric = kind == "electric actuators"
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
            },
        },
    }
    loads = []
    for number_of_leg, of_leg in enumerate(KINDS):
        # nothing shortens a strut without fluid
        fit = [one for one in of_leg if one[3] == "none"] if electric else of_leg
        one = rng.choice(fit or KINDS[0])
        leg, of_leg = draw_driven(rng, one, gear, f"{name} leg {number_of_leg + 1}", electric)
        gear["legs"].append(leg)
        loads += of_leg
    gear["supply"].update(draw_source(rng, kind, gear, loads, number))
    return gear
