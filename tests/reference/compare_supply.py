"""Cycles up and down of random gears of three legs on every kind of source: draws them, solves them
by supply.py and compares."""

import collections
import concurrent.futures

import program
from draw_supply import SOURCES, draw_supplied
from supply import run
from tally import Tally

# Relative; asked for is 1e-3. The program's loads are another curve, through fewer poses: most agree
# to 1e-5, and a leg whose knee comes to the straight line under half of the pressure to some 2e-4.
ALLOWED = 5e-4
WAYS = ("up", "down")
# Stages of three legs, a way up and a way down: as few as a gear without jacks has.
LEAST_STAGES = 3
# What of the model must have been tried how often: stages, legs or ways. Far below what draws give,
# but a share of none of them is left to chance.
LEAST = {
    "legs with springs": 6,
    "legs whose pins rub": 6,
    "stages driven by its weight, down": 8,
    "stages held back by its valve, up": 1,
    "stages held back by its valve, down": 1,
    "legs through the orifice of their fall": 5,
    "ways with fluid drawn from the return line": 3,
    "ways with fluid over the relief valve": 1,
    "ways with fluid out of the accumulator": 8,
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
        if stages[kind, way] < LEAST_STAGES * count
    ]
    few += [f"only {tried[what]} {what}, {least} are asked for"
            for what, least in LEAST.items() if tried[what] < least]
    print("cycles:", ", ".join(f"{tried[what]} {what}" for what in sorted(tried)))
    return tally, few


def compare_gear(job):
    """Holds both ways of the program against ours; (tally, how many stages were compared each way,
    what of the model they tried)."""
    where, gear, document = job
    cycle = (document.get("against_time") or {}).get("cycle") or {}
    tally, counts = Tally(), {}
    has = collections.Counter({
        "legs with springs": sum("springs" in leg for leg in gear["legs"]),
        "legs whose pins rub": sum("pins" in leg for leg in gear["legs"]),
    })
    for way, wanted in zip(WAYS, run(gear)):
        tally.where = f"{where}, {way}"
        tally.same("way is worked out", cycle.get(way) is not None, True)
        if cycle.get(way) is not None:
            counts[way] = len(wanted["arrivals"])
            has.update(compare_run(tally, gear, way, cycle[way], wanted))
    return tally, counts, has


def compare_run(tally, gear, way, found, wanted):
    """Holds one way of the program against ours; what of the model it tried."""
    tally.same("end of the way", found["end"], "complete")
    arrivals = {
        (event["leg"], event["kind"]): event["time_s"]
        for event in found["events"]
        if event["kind"] in ("strut_done", "swing_done")
    }
    tally.same("stages that end", sorted(arrivals), sorted(wanted["arrivals"]))
    for key, time in wanted["arrivals"].items():
        near(tally, f"time of {key[1].replace('_', ' ')}, {way}", arrivals.get(key, -1.0), time)
    near(tally, f"time of the way {way}", found["time_s"], wanted["time"])
    energy, fluid = found["energy"], found["fluid"]
    near(tally, "energy from the battery", energy["battery_j"], wanted["battery"])
    has = {f"stages {what}, {way}": count for what, count in wanted["has"].items()}
    if "given" in wanted:
        near(tally, "energy to the rods", energy["given_j"], wanted["given"])
        return has
    if way == "down":
        without = sum("orifice_down" not in leg["drive"] for leg in gear["legs"])
        has["legs through the orifice of their fall"] = without
    whole = wanted["pumped"] + wanted["drawn"] - wanted["stored"]
    for name, key, value in (
        ("pumped", "pumped_m3", wanted["pumped"]),
        ("drawn from the return line", "drawn_m3", wanted["drawn"]),
        ("over the relief valve", "relieved_m3", wanted["relieved"]),
        ("out of the accumulator", "accumulator_m3", -wanted["stored"]),
    ):
        near(tally, f"fluid {name}", fluid[key], value, whole)
        has[f"ways with fluid {name}"] = int(value > TRIED * whole)
    return has


def near(tally, quantity, found, wanted, whole=None):
    """Compares relative to the value, or to the whole that it is part of."""
    tally.check(quantity, found, wanted, ALLOWED * abs(wanted if whole is None else whole))
