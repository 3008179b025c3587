"""Falls of random legs: draws them, solves them by fall.py, those with rubbing pins by fall_pins.py,
and holds the program against that.
"""

import collections
import concurrent.futures
import math
import random

import numpy as np

import program
from compare import first_stop
from compare_limits import compare_limit
from draw import draw_leg, kind_of, kinds
from draw_pins import draw_pins
from draw_springs import draw_springs
from fall import CHANGE, Falling
from fall_pins import RubbingFall
from mechanism import Mechanism, NotClosed
from tally import Tally

# Relative, of times, speeds and energies.
ALLOWED = 1e-4
# The program looks at the speed of the axle at its time steps only.
ALLOWED_LARGEST = 2e-3
# The least of each that must have been compared.
LEAST = {
    "reaches_lock": 32,
    "sprung": 24,
    "unsprung": 8,
    "orifice": 12,
    "rubbing seals": 16,
    "rubbing pins": 16,
    "limited by airspeed": 4,
    "limited by friction_factor": 4,
    "limited by seal_friction_limit_n": 4,
}
LEGS_PER_GEAR = 4


def draw_falls(seed):
    """Gears of legs that might fall: of each kind whose strut does not move on the way one without
    friction in its pins and one with it."""
    rng, apart = random.Random(seed), random.Random(f"break-out {seed}")
    legs = []
    for kind in kinds():
        if kind[3] == "with_travel":
            continue
        legs += [draw_fall(rng, kind, f"Falling leg {len(legs) + i}") for i in (1, 2)]
        legs[-1]["pins"] = draw_pins(
            rng, legs[-1], (0.003, 0.008), (0.05, 0.2), most_left_out=2, couples=(0.02, 0.3)
        )
        draw_break_out(apart, legs[-2:])
    return [
        {
            "name": f"Falling {at // LEGS_PER_GEAR + 1}",
            "legs": legs[at : at + LEGS_PER_GEAR],
            "supply": {"available_pressure_pa": 7e6},
            "fluid": {"density_kg_m3": round(rng.uniform(800.0, 1000.0), 1)},
            "conditions": {
                "load_factor": round(rng.uniform(0.9, 1.3), 3),
                "pitch_rad": round(rng.uniform(-0.1, 0.1), 4),
                "bank_rad": round(rng.uniform(-0.1, 0.1), 4),
                "airspeed_m_s": round(rng.uniform(0.0, 25.0), 2),
                "sideslip_rad": round(rng.uniform(-0.1, 0.1), 4),
            },
        }
        for at in range(0, len(legs), LEGS_PER_GEAR)
    ]


def draw_break_out(rng, legs):
    """Gives some of the legs what their friction is after they have stood."""
    for leg in legs:
        if rng.random() < 0.4:
            runs = leg["actuator"]["seal_friction_n"]
            leg["actuator"]["seal_break_out_n"] = round(runs * rng.uniform(1.0, 3.0), 2)
        if rng.random() < 0.4:
            leg.setdefault("fall", {})["pin_break_out"] = round(rng.uniform(1.0, 3.0), 2)


def draw_fall(rng, kind, name):
    """One leg of a kind that comes up and whose knee folds steadily."""
    for _ in range(4000):
        leg = draw_leg(rng, *kind, name)
        if leg is None or not folds_steadily(leg):
            continue
        leg["actuator"]["seal_friction_n"] = rng.choice((0.0, round(rng.uniform(2.0, 40.0), 2)))
        if kind[0] == "through_centre":
            # links without mass have no inertia as the knee passes the straight line
            for link in ("upper", "lower"):
                leg["brace"]["folding"][link].setdefault("mass_kg", 0.5)
        data = {}
        if rng.random() < 0.5:
            data["return_orifice_m"] = round(leg["actuator"]["bore_m"] * rng.uniform(0.05, 0.1), 5)
            if rng.random() < 0.5:
                data["discharge_coefficient"] = round(rng.uniform(0.6, 0.7), 3)
            elif round(data["return_orifice_m"] * 1e5) % 2:
                # that of the line is what the fall goes through where it has none of its own
                hole = data.pop("return_orifice_m")
                leg["drive"] = {"orifice_down": {"hole_m": hole, "discharge": 0.62}}
        if rng.random() < 0.4:
            data["body_inertia_kg_m2"] = round(rng.uniform(0.02, 0.3), 4)
        if data:
            leg["fall"] = data
        if rng.random() < 0.6:
            leg["springs"] = draw_springs(rng, leg, rng.randint(1, 2))
        return leg
    raise RuntimeError(f"no leg of kind {kind} that might fall can be drawn")


def folds_steadily(leg):
    """Whether the leg comes up and its fold falls all the way down."""
    try:
        mechanism = Mechanism(leg)
        folds = [p.fold for phase, _, p in mechanism.path(61) if phase == "swing"]
        if first_stop(mechanism) is not None:
            return False
    except NotClosed:
        return False
    if mechanism.kind != "folding":
        return True
    return bool(np.all(np.diff(folds) > 0.0)) and folds[-1] > CHANGE + 0.1


def compare_fall(tally, gear, leg, found):
    """Holds one fall of the program against ours; the features that were compared."""
    wanted = (RubbingFall if "pins" in leg else Falling)(gear, leg).solve()
    outcome = found["outcome"]
    kind, told = ("stays_up", {}) if isinstance(outcome, str) else next(iter(outcome.items()))
    tally.same("outcome of the fall", kind, wanted["outcome"])
    if kind != wanted["outcome"] or kind == "stays_up":
        return [kind]
    orifice = "return_orifice_m" in leg.get("fall", {}) or "orifice_down" in leg.get("drive", {})
    if kind == "stops_short" and not orifice:
        near(tally, "time of the stop", told["time_s"], wanted["time"], 0.0)
        tally.check("swing of the stop", told["place"]["swing_rad"], wanted["swing"], 1e-4)
    if kind != "reaches_lock":
        return [kind]
    near(tally, "time of the fall", told["time_s"], wanted["time"], 0.0)
    near(tally, "swing rate at the lock", told["swing_rate_rad_s"], wanted["swing_rate"], 0.0)
    near(tally, "axle speed at the lock", told["axle_speed_m_s"], wanted["axle_speed"], 0.0)
    tally.same("knee speed given", told["knee_speed_m_s"] is None, wanted["knee_speed"] is None)
    if wanted["knee_speed"] is not None:
        near(tally, "knee speed at the lock", told["knee_speed_m_s"], wanted["knee_speed"], 0.0)
    largest = wanted["largest_axle_speed"]
    tally.check("largest axle speed of the fall", told["largest_axle_speed_m_s"], largest,
                ALLOWED_LARGEST * largest)
    energy = found["energy"]
    scale = sum(abs(wanted[key]) for key in ("weights", "springs", "air"))
    for key in ("weights", "springs", "air", "friction", "orifice", "motion"):
        near(tally, f"{key} work of the fall", energy[f"{key}_j"], wanted[key], scale)
    # what the integrator is allowed
    tally.check("balance of the fall here", wanted["imbalance"], 0.0, 5e-6)
    rubs = leg["actuator"]["seal_friction_n"] > 0.0
    return [
        kind,
        "sprung" if leg.get("springs") else "unsprung",
        *(["orifice"] if orifice else []),
        *(["rubbing seals"] if rubs else []),
        *(["rubbing pins"] if "pins" in leg else []),
    ]


def near(tally, quantity, found, wanted, scale):
    """Compares relative to the value, or to a larger scale of its kind."""
    if math.isfinite(wanted):
        tally.check(quantity, found, wanted, ALLOWED * max(abs(wanted), scale))
    else:
        tally.same(quantity, found, wanted)


def compare_falls(program_path, folder, draw):
    """Draws, solves and compares all falls; (tally, texts of what was compared too seldom)."""
    gears = draw_falls(draw)
    answers = [
        (gear, leg, answer)
        for gear, (_, document) in zip(gears, program.solved(program_path, folder, "falling", gears))
        for leg, answer in zip(gear["legs"], document["legs"], strict=True)
    ]
    answers = [(number // 2, *answer) for number, answer in enumerate(answers)]
    tally, seen = Tally(), collections.Counter()
    with concurrent.futures.ProcessPoolExecutor() as pool:
        for part, features in pool.map(compare_answer, answers):
            tally.add(part)
            seen.update(features)
    few = [
        f"only {seen[what]} falls that are {what}, {least} are asked for"
        for what, least in LEAST.items()
        if seen[what] < least
    ]
    print("falls:", ", ".join(f"{seen[what]} {what}" for what in sorted(seen)))
    return tally, few


def compare_answer(job):
    """Compares one leg; (tally, its features)."""
    number, gear, leg, answer = job
    tally = Tally()
    tally.where = f"{leg['name']} {kind_of(leg)}"
    tally.same("usable to fall", answer.get("faults"), None)
    if answer.get("result") is None:
        return tally, []
    tally.same("fall given", answer["result"]["fall"] is not None, True)
    if answer["result"]["fall"] is None:
        return tally, []
    fall = answer["result"]["fall"]
    features = compare_fall(tally, gear, leg, fall)
    if "reaches_lock" in features:
        features += filter(None, [compare_limit(tally, gear, leg, fall, number)])
    return tally, features
