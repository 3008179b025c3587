"""Times the program against two honest Python forms of the same job, on the same legs."""

import statistics
import time

import arrays
import gearfile
import plain
import program

STATIONS = 721
# Legs timed in the array form, and how many of them in the plain form (seconds each).
ARRAY_LEGS = 24
PLAIN_LEGS = 4
REPEATS = 30


def fastest(job, repeats):
    """Least time of a few runs [s]: what else the machine does only adds."""
    best = float("inf")
    for _ in range(repeats):
        began = time.perf_counter()
        job()
        best = min(best, time.perf_counter() - began)
    return best


def report(timer, files):
    """Prints milliseconds per leg and the ratios."""
    told = program.seconds_per_leg(timer, files, REPEATS)
    by_leg = {(row["file"], row["leg"]): row["seconds"] for row in told}
    legs = [
        (str(file), number, gear, leg)
        for file in files
        for gear in [gearfile.read(file)]
        for number, leg in enumerate(gear["legs"])
        if (str(file), number) in by_leg
    ]
    every = max(len(legs) // ARRAY_LEGS, 1)
    picked = legs[::every][:ARRAY_LEGS]
    rows = []
    for index, (file, number, gear, leg) in enumerate(picked):
        fast = fastest(lambda: arrays.solve(gear, leg, STATIONS), 5)
        slow = None
        if index % (len(picked) // PLAIN_LEGS or 1) == 0:
            slow = fastest(lambda: plain.solve(gear, leg, STATIONS), 2)
        rows.append((by_leg[file, number], fast, slow))
    program_ms = 1e3 * statistics.median(row[0] for row in rows)
    print(f"{STATIONS} stations a leg; program with certificate: median {program_ms:.3f} ms "
          f"({1e3 * min(r[0] for r in rows):.3f} … {1e3 * max(r[0] for r in rows):.3f})")
    ratios = [row[1] / row[0] for row in rows]
    print(f"arrays, sampled: median {1e3 * statistics.median(r[1] for r in rows):.1f} ms, "
          f"{statistics.median(ratios):.0f} times the program "
          f"({min(ratios):.0f} … {max(ratios):.0f}, {len(ratios)} legs; the aim is 5)")
    plain_rows = [row for row in rows if row[2] is not None]
    ratios = [row[2] / row[0] for row in plain_rows]
    print(f"plain, station by station: median {statistics.median(r[2] for r in plain_rows):.2f} s, "
          f"{statistics.median(ratios):.0f} times the program "
          f"({min(ratios):.0f} … {max(ratios):.0f}, {len(ratios)} legs; the aim is 300)")
