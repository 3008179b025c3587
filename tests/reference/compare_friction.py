"""Pin friction of random legs of every kind: draws pins, solves them by friction.py and compares."""

import collections
import concurrent.futures
import copy
import math
import random

import numpy as np

import program
from compare import LEAST_ARM, WORST_CONDITION, chosen, is_singular, near_kink, pose_at
from draw import draw_leg, kind_of, kinds
from draw_pins import draw_pins
from forces import Loads, free_bodies
from friction import relative_turns, rubbing
from mechanism import Mechanism
from stood import begins, stood
from tally import Tally

# Relative to the largest load of a pin: both solve the same equations, as statics without friction.
ALLOWED = 1e-9
# Step over which the turn of the pins is taken [rad or m of the parameter], and the least turn in
# it that has a sure direction.
STEP = 1e-5
LEAST_TURN = 1e-3 * STEP
LEGS_PER_GEAR = 4
# Of each leg so many places must have been compared, on average.
LEAST_PLACES = 7


def draw_rubbing(draw):
    """Gears with a leg of every kind, every pin of which rubs."""
    rng = random.Random(draw)
    legs = []
    for kind in kinds():
        leg = None
        while leg is None:
            leg = draw_leg(rng, *kind, f"Rubbing leg {len(legs) + 1}")
        leg["pins"] = draw_pins(rng, leg, (0.003, 0.02), (0.02, 0.3), couples=(0.02, 0.8))
        legs.append(leg)
    return [
        {
            "name": f"Rubbing {at // LEGS_PER_GEAR + 1}",
            "legs": legs[at : at + LEGS_PER_GEAR],
            "supply": {"available_pressure_pa": 7e6},
            "conditions": {
                "load_factor": round(rng.uniform(0.9, 1.5), 3),
                "airspeed_m_s": round(rng.uniform(0.0, 45.0), 2),
                "sideslip_rad": round(rng.uniform(-0.1, 0.1), 4),
            },
        }
        for at in range(0, len(legs), LEGS_PER_GEAR)
    ]


def compare_rubbing(program_path, folder, draw):
    """Draws, solves and compares all legs; (tally, texts of what was compared too seldom)."""
    gears = draw_rubbing(draw)
    jobs = [
        (f"{file.name}, {leg['name']} {kind_of(leg)}", gear, leg, answer)
        for gear, (file, document) in zip(gears, program.solved(program_path, folder, "rubbing", gears))
        for leg, answer in zip(gear["legs"], document["legs"], strict=True)
    ]
    tally, places = Tally(), collections.Counter()
    with concurrent.futures.ProcessPoolExecutor() as pool:
        for (_, _, leg, _), (part, count) in zip(jobs, pool.map(compare_leg, jobs)):
            tally.add(part)
            places[kind_of(leg)] += count
    few = [f"friction of {kind} was never compared" for kind in kinds() if not places[kind]]
    if sum(places.values()) < LEAST_PLACES * len(jobs):
        few.append(f"friction was compared at only {sum(places.values())} places")
    return tally, few


def compare_leg(job):
    """Holds one leg against ours at some stations; (tally, at how many)."""
    where, gear, leg, answer = job
    tally = Tally()
    tally.where = where
    tally.same("usable", answer.get("faults"), None)
    if answer.get("result") is None:
        return tally, 0
    mechanism, loads = Mechanism(leg), Loads(gear, leg)
    count = 0
    starts = begins(answer["result"]["stations"])
    for station in chosen(answer["result"]["stations"]):
        count += compare_station(tally, loads, mechanism, station, starts)
    return tally, count


def compare_station(tally, loads, mechanism, station, starts):
    """Both motions at one station; whether it was compared."""
    force = station["force"]
    pose, along, at, rises = pose_at(mechanism, station)
    if force is None or along is None or is_singular(station) or near_kink(mechanism, pose.swing):
        return 0
    still = free_bodies(loads, mechanism, pose)
    up = relative_turns(mechanism, along(at - rises * STEP), along(at + rises * STEP))
    stroke = rises * (along(at + STEP).length - along(at - STEP).length)
    size = float(np.linalg.norm(mechanism.axle - mechanism.trunnion))
    if abs(stroke) < 2 * STEP * LEAST_ARM * size or still["condition"] > WORST_CONDITION:
        return 0
    if min(abs(turn) for turn in up) < LEAST_TURN:
        return 0
    towards_up = math.copysign(1.0, stroke)
    for motion, sense in (("retract", 1.0), ("extend", -1.0)):
        found = force[f"{motion}_effort_n"]
        moved = copy.copy(loads)
        if station["progress"] == starts[motion]:
            moved.leg = stood(loads.leg)
        wanted = rubbing(moved, mechanism, pose, [sense * turn for turn in up])
        if found is None or wanted is None:
            # the pins bind, or nearly: no force, or one that no solution from nothing leads to
            tally.skip(f"thrust to {motion} with friction")
            continue
        seals = moved.leg["actuator"].get("seal_friction_n", 0.0)
        effort = sense * towards_up * wanted["thrust"] + seals
        names = ("trunnion", "brace_pivot", "knee", "brace_attach", "mount", "actuator_attach")
        largest = max(float(np.linalg.norm(wanted[name])) for name in names if name in wanted)
        tally.check(f"thrust to {motion} with friction", found, effort, ALLOWED * largest)
        for name in names:
            if name in wanted:
                load = force[f"{motion}_reactions"][f"{name}_n"]
                tally.check(f"{name} force with friction", load, wanted[name], ALLOWED * largest)
    return 1
