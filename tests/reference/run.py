"""Holds the program's answers against general-purpose libraries on random legs, and times both.

    python run.py --gearswing PATH [--legs 240] [--draw 1] [--timer PATH] [--keep DIR]

Draws legs of every kind, writes them as gear files, runs the native command once over all of them
and compares with root finding (scipy), distances (shapely), balances of forces (numpy) and equations
of motion (scipy). Ends
with 1 on any disagreement, or when too few legs or a kind of leg was not compared.
"""

import argparse
import collections
import concurrent.futures
import pathlib
import sys
import tempfile
import time

import numpy as np
import scipy
import shapely

import gearfile
import program
import timing
from compare import compare_leg
from compare_clear import compare_clearances
from compare_fall import compare_falls
from compare_friction import compare_rubbing
from compare_schema import compare_schema
from compare_shared import compare_shared
from compare_supply import compare_supply
from draw import draw_gears, kind_of, kinds
from growth import check_growth
from tally import Tally

LEAST_LEGS = 200
LEAST_SPRUNG = 60
# Share of comparisons of one quantity that singular poses may forbid.
MOST_SKIPPED = 0.25
SHOWN_FAILURES = 40


def main():
    """Runs everything; the exit code."""
    options = arguments()
    print(
        f"reference: Python {sys.version.split()[0]}, numpy {np.__version__}, "
        f"scipy {scipy.__version__}, shapely {shapely.__version__}",
        flush=True,
    )
    check_growth()
    with tempfile.TemporaryDirectory() as scratch:
        folder = pathlib.Path(options.keep or scratch)
        folder.mkdir(parents=True, exist_ok=True)
        began = time.perf_counter()
        gears = draw_gears(options.draw, options.legs)
        files = [folder / f"drawn-{number + 1:03}.json" for number in range(len(gears))]
        for file, gear in zip(files, gears):
            gearfile.write(file, gear)
        legs = sum(len(gear["legs"]) for gear in gears)
        print(f"drew {legs} legs in {time.perf_counter() - began:.1f} s", flush=True)
        good = compare_all(options, files)
        good = compare_more("pins", compare_rubbing, options, folder) and good
        good = compare_more("falls", compare_falls, options, folder) and good
        good = compare_more("shared drives", compare_shared, options, folder) and good
        good = compare_more("cycles", compare_supply, options, folder) and good
        good = compare_more("schemas", compare_schema, options, folder) and good
        if options.timer:
            timing.report(options.timer, files)
    return 0 if good else 1


def arguments():
    """The command line."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--gearswing", required=True, help="the native command")
    parser.add_argument("--legs", type=int, default=240, help="legs to draw")
    parser.add_argument("--draw", type=int, default=1, help="start of the random numbers")
    parser.add_argument("--timer", help="the timing program of this package")
    parser.add_argument("--keep", help="directory for the gear files, kept")
    return parser.parse_args()


def compare_all(options, files):
    """Compares every leg; whether all agree and enough was compared."""
    began = time.perf_counter()
    documents = program.results(options.gearswing, files)
    print(f"the command took {time.perf_counter() - began:.1f} s", flush=True)
    began = time.perf_counter()
    tally = Tally()
    seen = collections.Counter()
    with concurrent.futures.ProcessPoolExecutor() as pool:
        for part, kinds_seen in pool.map(compare_file, files, documents):
            tally.add(part)
            seen += kinds_seen
    print(f"compared in {time.perf_counter() - began:.1f} s")
    return judge(tally, seen)


def compare_file(file, document):
    """Compares the legs of one file; (tally, how often each kind was compared)."""
    tally = Tally()
    seen = collections.Counter()
    gear = gearfile.read(file)
    answers = {answer["index"]: answer for answer in document["legs"]}
    for number, leg in enumerate(gear["legs"]):
        answer = answers[number]
        tally.where = f"{file.name}, {leg['name']} {kind_of(leg)}"
        tally.same("usable", answer.get("faults"), None)
        if answer.get("result") is None:
            continue
        mechanism = compare_leg(tally, gear, leg, answer["result"])
        compare_clearances(tally, gear, mechanism, answer["result"])
        seen[kind_of(leg)] += 1
        tally.sprung += bool(leg.get("springs"))
    return tally, seen


def compare_more(what, compare, options, folder):
    """Runs a comparison of its own: `compare` gives its tally and what was compared too seldom."""
    began = time.perf_counter()
    tally, few = compare(options.gearswing, folder, options.draw)
    print(f"{what} compared in {time.perf_counter() - began:.1f} s")
    print("\n".join(tally.report()))
    wrong = few + tally.failures[:SHOWN_FAILURES]
    for text in wrong:
        print(f"FAILED: {text}")
    if not wrong:
        print(f"{what} agree, {sum(tally.count.values())} comparisons")
    return not wrong


def judge(tally, seen):
    """Prints what was compared; whether it is enough and agrees."""
    print("\n".join(tally.report()))
    good = True
    if sum(seen.values()) < LEAST_LEGS:
        print(f"FAILED: only {sum(seen.values())} legs were compared, {LEAST_LEGS} are asked for")
        good = False
    print(f"{tally.sprung} of them carry springs")
    if tally.sprung < LEAST_SPRUNG:
        print(f"FAILED: {LEAST_SPRUNG} legs with springs are asked for")
        good = False
    missing = [kind for kind in kinds() if not seen[kind]]
    if missing:
        print(f"FAILED: kinds of leg that were never compared: {missing}")
        good = False
    for quantity, skipped in tally.skipped.items():
        if skipped > MOST_SKIPPED * (skipped + tally.count[quantity]):
            print(f"FAILED: {quantity} was skipped {skipped} times of "
                  f"{skipped + tally.count[quantity]}")
            good = False
    for failure in tally.failures[:SHOWN_FAILURES]:
        print(f"FAILED: {failure}")
    if tally.failures:
        print(f"{len(tally.failures)} disagreements on {sum(seen.values())} legs")
        good = False
    if good:
        print(f"{sum(seen.values())} legs of {len(seen)} kinds agree, "
              f"{sum(tally.count.values())} comparisons")
    return good


if __name__ == "__main__":
    sys.exit(main())
