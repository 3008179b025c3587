"""Random gears of three legs on every kind of source, none of which stalls."""

import concurrent.futures
import random

from compare import first_stop
from draw import draw_leg
from mechanism import Mechanism, NotClosed
from ways import swing_efforts, swing_loads, swing_path

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
        try:
            if first_stop(Mechanism(leg)) is not None:
                continue
        except NotClosed:
            continue
        if leg["brace"] != "none" and "unlocked_by" in leg["brace"].get("folding", {}):
            continue
        path = swing_path(gear, leg)
        if path is None:
            continue
        loads = [swing_loads(path, gear, leg, down) for down in (False, True)]
        if any(max(abs(load[1])) > HIGHEST for load in loads):
            continue
        leg["drive"] = draw_electric(rng, path, leg) if electric else draw_lines(rng, kind, leg)
        return leg, loads
    raise RuntimeError(f"no leg of kind {kind} that a source drives can be drawn")


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
    most = max(swing_efforts(path, leg, down)[1].max() for down in (False, True))
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
    gear["supply"].update(draw_source(rng, kind, loads, number))
    return gear


def draw_source(rng, kind, loads, number):
    """The source and what belongs to it, strong enough for the legs."""
    if kind == "electric actuators":
        return {"source": "electric_actuators"}
    highest = max(3.5e6, *(load[1].max() for load in loads))
    if kind == "constant pressure":
        return {"available_pressure_pa": round(highest * rng.uniform(1.2, 2.0))}
    if kind == "hand pump":
        return {"source": {"hand_pump": {
            "stroke_volume_m3": round(rng.uniform(5e-6, 2e-5), 8),
            "stroke_time_s": round(rng.uniform(0.8, 2.0), 2),
            "largest_pressure_pa": round(highest * rng.uniform(1.05, 1.5)),
        }}}
    found = {}
    if kind.startswith("accumulator"):
        # of all swings up and down: the struts take little
        fluid = sum(load[0][-1] for load in loads)
        exponent = round(rng.uniform(1.1, 1.5), 2)
        precharge, charged = highest * 1.15, highest * rng.uniform(1.8, 2.2)
        held = 1.0 - (precharge / charged) ** (1.0 / exponent)
        found["accumulator"] = {
            "gas_volume_m3": round(rng.uniform(0.7, 1.5) * fluid / held, 7),
            "precharge_pa": round(precharge),
            "charged_pa": round(charged),
            "exponent": exponent,
        }
    if kind.endswith("pump"):
        # beside an accumulator neither valve nor stall is reached
        spare = 3.0 if "accumulator" in found else 1.0
        found["source"] = {"motor_pump": {
            "free_flow_m3_s": round(rng.uniform(3e-5, 8e-5), 7),
            "rated_v": 12.0,
            "stall_pressure_pa": round(highest * spare * rng.uniform(1.8, 2.5)),
            "idle_a": round(rng.uniform(8.0, 15.0), 1),
            "stall_a": round(rng.uniform(60.0, 120.0), 1),
            # the valve of the odd ones opens while the last leg comes up
            "relief_pressure_pa": round(highest * spare * (1.02 if number % 2 else 1.6)),
        }}
    return found
