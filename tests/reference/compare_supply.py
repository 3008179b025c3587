"""Cycles up and down of random gears of three legs on every kind of source: draws them, solves them
by supply.py and compares."""

import collections
import concurrent.futures

import program
from draw_supply import SOURCES, draw_supplied
from supply import NothingMoves, run
from tally import Tally

# Relative; asked for is 1e-3. The program's loads are another curve, through fewer poses: most agree
# to 1e-5, and a leg whose knee comes to the straight line under half of the pressure to some 2e-4.
ALLOWED = 5e-4
WAYS = ("up", "down")
# Of the time at which a leg comes to the end of its way. One that comes there with a load just below
# what stands at the manifold, while others go on, is held back by some hundred Pa: there, at the corner
# of a spring or near the straight knee, what the program's curve is off shows up to 6e-4, and here
# twice as many poses change no more than 1e-5.
ALLOWED_HELD = 1e-3
HELD = ("swing_done", "up_made", "down_made")
# The program looks at the current four times in each of its time steps.
ALLOWED_LARGEST = 1e-3
# Of energies on electric actuators: one that ends near a toggle takes much of its current there, within
# two of the program's poses.
ALLOWED_ELECTRIC = 2e-3
# Stages of three legs that end, a way up and a way down: a gear without jacks has three of them, and
# one whose switches make early one less.
LEAST_STAGES = 2
# What of the model must have been tried how often: stages, legs or ways. Far below what draws give,
# but a share of none of them is left to chance.
LEAST = {
    "legs with springs": 6,
    "legs whose pins rub": 6,
    "stages driven by its weight, down": 8,
    "stages held back by its valve, up": 1,
    "stages held back by its valve, down": 1,
    "legs through the orifice of their fall": 5,
    "legs through an open line up": 5,
    "legs through an open line down": 4,
    "ways with fluid drawn from the return line": 3,
    "ways with fluid over the relief valve": 1,
    "ways with fluid out of the accumulator": 8,
    "ways with accumulator_empty": 2,
    "ways with accumulator_full": 2,
    "ways with accumulator_down": 2,
    "ways with fluid into the accumulator": 1,
    "legs that start part of the way": 4,
    "legs that start part of the way, strut on a jack": 3,
    "ways that an accumulator leaves standing": 1,
    "legs that start up": 1,
    "legs with early switches": 10,
    "ways that end switched_off": 1,
    "ways that end pressure_switch": 1,
    "ways with pressure_switch": 2,
    "ways with runs_on": 1,
    "ways with breaker_passed": 2,
    "ways that end stalled": 6,
    "stalls on constant_pressure": 1,
    "stalls on electric_actuators": 1,
    "stalls on hand_pump": 1,
    "stalls on motor_pump": 2,
    "stalls for a relief valve": 1,
    "stalls for want of volts": 2,
    "ways on which nothing moves": 1,
    "ways after which the accumulator is filled": 1,
    "ways told in strokes": 4,
}
# Times below this share of the whole way are compared as if they were so long: the program finds
# switches on straight lines between its poses, and near a toggle of the actuator that shows.
SHORT = 0.05
# Events that are compared.
KINDS = (
    "strut_done", "swing_done", "stalled", "shortened_made", "shortened_open", "up_made", "up_open",
    "down_made", "down_open", "switches_stop", "pressure_switch", "runs_on", "breaker_passed",
    "accumulator_empty", "accumulator_full",
)
# Energies by their key in the result.
ENERGIES = {
    "battery": "battery_j",
    "wires": "wires_j",
    "given": "given_j",
    "gas": "accumulator_j",
    "loads": "loads_j",
    "lines": "lines_j",
    "relief": "relief_j",
}
# A budget counts as tried when it is this part of all fluid [1]: twenty times what is allowed.
TRIED = 20 * ALLOWED


def compare_supply(program_path, folder, draw):
    """Draws, solves and compares all gears; (tally, texts of what was compared too seldom)."""
    drawn = draw_supplied(draw)
    results = program.solved(program_path, folder, "supplied", [gear for _, gear in drawn])
    tally, stages, tried = Tally(), collections.Counter(), collections.Counter()
    jobs = [
        (f"{file.name}, {kind}", gear, document)
        for (kind, gear), (file, document) in zip(drawn, results)
    ]
    with concurrent.futures.ProcessPoolExecutor() as pool:
        for (kind, _), (part, counts, has) in zip(drawn, pool.map(compare_gear, jobs)):
            tally.add(part)
            for way, count in counts.items():
                stages[kind, way] += count
            tried.update(has)
    few = [
        f"only {stages[kind, way]} stages {way} on {kind} were compared"
        for kind, count in SOURCES.items()
        for way in WAYS
        if stages[kind, way] < LEAST_STAGES * count and "weak" not in kind
    ]
    few += [f"only {tried[what]} {what}, {least} are asked for"
            for what, least in LEAST.items() if tried[what] < least]
    print("cycles:", ", ".join(f"{tried[what]} {what}" for what in sorted(tried)))
    return tally, few


def compare_gear(job):
    """Holds both ways of the program against ours; (tally, how many stages were compared each way,
    what of the model they tried)."""
    where, gear, document = job
    tally, counts = Tally(), {}
    tally.where = where
    has = collections.Counter({
        "legs with springs": sum("springs" in leg for leg in gear["legs"]),
        "legs whose pins rub": sum("pins" in leg for leg in gear["legs"]),
        "legs with early switches": sum("switches" in leg["drive"] for leg in gear["legs"]),
        "legs that start part of the way": sum(
            0.0 < leg["drive"].get("start_travel", 0.0) < 1.0 for leg in gear["legs"]
        ),
        "legs that start part of the way, strut on a jack": sum(
            "start_travel" in leg["drive"] and "jack" in leg["drive"] for leg in gear["legs"]
        ),
        "legs that start up": sum(
            leg["drive"].get("start_travel") == 1.0 for leg in gear["legs"]
        ),
    })
    cycle = (document.get("against_time") or {}).get("cycle") or {}
    for way, wanted in zip(WAYS, run(gear)):
        tally.where = f"{where}, {way}"
        if isinstance(wanted, NothingMoves):
            wrong = (cycle.get(f"{way}_error") or {}).get("nothing_moves")
            tally.same("nothing moves", wrong is not None, True)
            if wrong is not None:
                for key, value in zip(("needed", "available"), wanted.args):
                    near(tally, f"{key} where nothing moves", wrong[key], value)
                has["ways on which nothing moves"] += 1
            continue
        tally.same("way is worked out", cycle.get(way) is not None, True)
        if cycle.get(way) is not None:
            counts[way] = sum(kind.endswith("_done") for _, kind in wanted["events"])
            has.update(compare_run(tally, gear, way, cycle[way], wanted))
    return tally, counts, has


def compare_run(tally, gear, way, found, wanted):
    """Holds one way of the program against ours; what of the model it tried."""
    tally.same("end of the way", found["end"], wanted["end"])
    kinds = KINDS
    if "accumulator" in gear["supply"]:
        kinds += ("relief_open",)
    events = {
        (event["leg"], event["kind"]): event["time_s"]
        for event in found["events"]
        if event["kind"] in kinds
    }
    ours = {key: time for key, time in wanted["events"].items() if key[1] in kinds}
    tally.same("what happens", sorted(events, key=str), sorted(ours, key=str))
    for key, time in ours.items():
        quantity = f"time of {key[1].replace('_', ' ')}, {way}"
        # what happens at the very start has no time of its own
        allowed = ALLOWED_HELD if key[1] in HELD else ALLOWED
        whole = max(time, SHORT * wanted["time"])
        near(tally, quantity, events.get(key, -1.0), time, whole, allowed)
    near(tally, f"time of the way {way}", found["time_s"], wanted["time"])
    current = wanted["largest_current"]
    optional(
        tally, "largest current", found["largest_current_a"], current, current, ALLOWED_LARGEST
    )
    has = collections.Counter(
        {f"stages {what}, {way}": count for what, count in wanted["has"].items()}
    )
    compare_stalls(tally, gear, found["stalls"], wanted["stalls"])
    has[f"ways that end {wanted['end']}"] += 1
    for _, kind in wanted["events"]:
        if kind.startswith(("pressure_switch", "runs_on", "breaker", "accumulator")):
            has[f"ways with {kind}"] += 1
    if wanted["end"] == "stalled":
        source = gear["supply"].get("source", "constant_pressure")
        has[f"stalls on {source if isinstance(source, str) else next(iter(source))}"] += 1
        empty = "accumulator_empty" in {kind for _, kind in wanted["events"]}
        has["ways that an accumulator leaves standing"] += empty and source == "constant_pressure"
        for one in wanted["stalls"]:
            has["stalls for a relief valve"] += one.relief_too_low
            has["stalls for want of volts"] += (one.volts_short or 0.0) > 0.0
            has["stalls at a valve"] += one.thrust_over is None
    refill = found["refill"]
    tally.same("whether the pump goes on", refill is not None, wanted["refilled"] is not None)
    if refill is not None and wanted["refilled"] is not None:
        near(tally, "time until the accumulator is full", refill["time_s"], wanted["refilled"])
        has["ways after which the accumulator is filled"] += 1
    strokes = None
    if "hand_pump" in gear["supply"].get("source", ""):
        strokes = wanted["pumped"] / gear["supply"]["source"]["hand_pump"]["stroke_volume_m3"]
        has["ways told in strokes"] += 1
    optional(tally, "strokes", found["strokes"], strokes, max(strokes or 0.0, 1.0))
    allowed = ALLOWED if "pumped" in wanted else ALLOWED_ELECTRIC
    energy = found["energy"]
    whole = sum(abs(wanted.get(name, 0.0)) for name in ("battery", "given", "gas", "loads"))
    for name, key in ENERGIES.items():
        if name in wanted:
            near(tally, f"energy, {name}", energy[key], wanted[name], whole, allowed)
    if way == "down":
        without = [leg for leg in gear["legs"]
                   if not {"orifice_down", "electric"} & set(leg["drive"])]
        falls = sum("fall" in leg for leg in without)
        has["legs through the orifice of their fall"] = falls
        has["legs through an open line down"] = len(without) - falls
    else:
        has["legs through an open line up"] = sum(
            not {"orifice_up", "electric"} & set(leg["drive"]) for leg in gear["legs"]
        )
    if "pumped" not in wanted:
        return has
    whole = wanted["swept"] + wanted["relieved"]
    for name, key, value in (
        ("pumped", "pumped_m3", wanted["pumped"]),
        ("drawn from the return line", "drawn_m3", wanted["drawn"]),
        ("over the relief valve", "relieved_m3", wanted["relieved"]),
        ("out of the accumulator", "accumulator_m3", -wanted["stored"]),
        ("into the cylinders", "swept_m3", wanted["swept"]),
    ):
        near(tally, f"fluid {name}", found["fluid"][key], value, whole, allowed)
        has[f"ways with fluid {name}"] = int(value > TRIED * whole)
    has["ways with fluid into the accumulator"] = int(wanted["stored"] > TRIED * whole)
    return has


def compare_stalls(tally, gear, found, wanted):
    """Which legs stand, the one that lacks most first, where, and what would free them."""
    tally.same("legs that stand", [one["leg"] for one in found], [one.leg for one in wanted])
    for theirs, ours in zip(found, wanted):
        place = theirs["place"]
        tally.same("phase of a stall", place["phase"], ours.phase)
        tally.check("travel of a stall", place["travel"], ours.travel, ALLOWED)
        up = gear["legs"][ours.leg]["swing_up_rad"]
        tally.check("swing of a stall", place["swing_rad"], ours.travel * up, ALLOWED * abs(up))
        [(kind, cause)] = theirs["cause"].items()
        unit = "n" if kind == "force" else "pa"
        near(tally, f"{kind} needed", cause[f"needed_{unit}"], ours.needed)
        near(tally, f"{kind} available", cause[f"available_{unit}"], ours.available)
        optional(tally, f"volts short of {kind}", cause["volts_short_v"], ours.volts_short, 12.0)
        if kind == "pressure":
            over = cause["thrust_over_n"]
            optional(tally, "thrust over", over, ours.thrust_over, ours.needed * ours.area)
            tally.same("relief too low", cause["relief_too_low"], ours.relief_too_low)


def optional(tally, quantity, found, wanted, whole, allowed=ALLOWED):
    """Compares what may be absent, relative to the whole that it is part of."""
    tally.same(f"{quantity} told", found is None, wanted is None)
    if found is not None and wanted is not None:
        near(tally, quantity, found, wanted, whole, allowed)


def near(tally, quantity, found, wanted, whole=None, allowed=ALLOWED):
    """Compares relative to the value, or to the whole that it is part of."""
    tally.check(quantity, found, wanted, allowed * abs(wanted if whole is None else whole))
