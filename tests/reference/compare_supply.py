"""Cycles up of random gears of three legs: draws them, solves them by supply.py and compares."""

import random

import gearfile
import program
from compare import first_stop
from draw import draw_leg
from mechanism import Mechanism, NotClosed
from supply import Rising, swing_loads
from tally import Tally

# Relative; asked for is 1e-3.
ALLOWED = 2e-4
GEARS = 4
# Kinds of the three legs: nose, mains; the strut of the mains is shortened by a jack.
KINDS = (
    (("sliding", "leg", "side", "none"), ("same_side", "leg", "front", "none")),
    (("through_centre", "upper_link", "front", "before_swing"),
     ("through_centre", "lower_link", "front", "before_swing"),
     ("same_side", "leg", "front", "before_swing")),
    (("none", "leg", "front", "before_swing"), ("sliding", "leg", "front", "before_swing"),
     ("through_centre", "upper_link", "side", "none")),
)


def draw_driven(rng, kind, gear, name):
    """A leg that its actuator drives all the way up with a load that one pump can have."""
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
        loads = swing_loads(gear, leg)
        if loads is None or max(abs(loads[1])) > 8e6:
            continue
        leg["drive"] = {"orifice_up": {"hole_m": round(rng.uniform(0.0007, 0.0015), 5)}}
        if rng.random() < 0.5:
            leg["drive"]["orifice_up"]["discharge"] = round(rng.uniform(0.58, 0.7), 3)
        if kind[3] == "before_swing":
            leg["drive"]["jack"] = {
                "area_m2": round(rng.uniform(2e-4, 6e-4), 6),
                "shorten_pa": round(rng.uniform(5e5, 3e6)),
            }
            if rng.random() < 0.4:
                leg["drive"]["stage_valve_pa"] = round(rng.uniform(5e5, 2e6))
        return leg
    raise RuntimeError(f"no leg of kind {kind} that a pump drives can be drawn")


def draw_supplied(draw):
    """Gears of three legs on a motor pump that brings them all up."""
    rng = random.Random(draw)
    gears = []
    for number in range(GEARS):
        gear = {
            "name": f"Supplied {number + 1}",
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
        gear["legs"] = [
            draw_driven(rng, rng.choice(kinds), gear, f"Supplied {number + 1} leg {leg + 1}")
            for leg, kinds in enumerate(KINDS)
        ]
        highest = max(swing_loads(gear, leg)[1].max() for leg in gear["legs"])
        highest = max(highest, 3.5e6)
        gear["supply"]["source"] = {
            "motor_pump": {
                "free_flow_m3_s": round(rng.uniform(3e-5, 8e-5), 7),
                "rated_v": 12.0,
                "stall_pressure_pa": round(highest * rng.uniform(1.8, 2.5)),
                "idle_a": round(rng.uniform(8.0, 15.0), 1),
                "stall_a": round(rng.uniform(60.0, 120.0), 1),
                # the valve of the odd ones opens while the last leg comes up
                "relief_pressure_pa": round(highest * (1.02 if number % 2 else 1.6)),
            }
        }
        gears.append(gear)
    return gears


def compare_supply(program_path, folder, draw):
    """Draws, solves and compares all gears; (tally, texts of what was compared too seldom)."""
    gears = draw_supplied(draw)
    files = [folder / f"supplied-{number + 1}.json" for number in range(len(gears))]
    for file, gear in zip(files, gears):
        gearfile.write(file, gear)
    tally, staged = Tally(), 0
    for file, gear, document in zip(files, gears, program.results(program_path, files)):
        tally.where = f"{file.name}"
        timed = document.get("against_time") or {}
        tally.same("gear is timed", "cycle" in timed, True)
        if "cycle" in timed:
            staged += compare_run(tally, gear, timed["cycle"]["up"])
    few = [] if staged >= 4 * GEARS else [f"only {staged} stages were compared"]
    return tally, few


def compare_run(tally, gear, run):
    """Holds one way up of the program against ours; how many stages were compared."""
    wanted = Rising(gear).solve()
    tally.same("end of the way up", run["end"], "complete")
    arrivals = {
        (event["leg"], event["kind"]): event["time_s"]
        for event in run["events"]
        if event["kind"] in ("strut_done", "swing_done")
    }
    tally.same("stages that end", sorted(arrivals), sorted(wanted["arrivals"]))
    for key, time in wanted["arrivals"].items():
        near(tally, f"time of {key[1].replace('_', ' ')}", arrivals.get(key, -1.0), time)
    near(tally, "time of the way up", run["time_s"], wanted["time"])
    near(tally, "fluid pumped", run["fluid"]["pumped_m3"], wanted["pumped"])
    near(tally, "energy from the battery", run["energy"]["battery_j"], wanted["battery"])
    return len(wanted["arrivals"])


def near(tally, quantity, found, wanted):
    """Compares relative to the value."""
    tally.check(quantity, found, wanted, ALLOWED * abs(wanted))
