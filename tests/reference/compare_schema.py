"""Every result satisfies the schema that describes it, and every drawn file that of gear files: by the
general-purpose validator jsonschema-rs, on random gears with stops seen at random, and on the fixtures."""

import collections
import concurrent.futures
import functools
import json
import pathlib
import random
import subprocess

import jsonschema_rs

import gearfile
import program
from draw import draw_gears
from draw_pins import draw_pins
from draw_supply import draw_supplied
from tally import Tally

FIXTURES = pathlib.Path(__file__).resolve().parents[2] / "fixtures"
SCHEMAS = FIXTURES / "schema"
# Legs drawn for it beside the supplied gears.
LEGS = 120
# Share of them the pins of which may bind, or the actuator of which may come to a dead point: no force
# moves such a leg, and no reading is near it.
BINDING = 0.15
# Share of the pumps the switch of which stops them at next to nothing.
LOW = 0.4
# What no result can be had of.
UNUSABLE = {
    "empty": "",
    "cut": '{"format": "gearswing-gear", "version": 1, "gear": {',
    "another": '{"format": "another", "version": 1}',
    "newer": '{"format": "gearswing-gear", "version": 1000, "gear": {}}',
    "list": "[1, 2]",
}
# A table of few stations says no less of the schema.
STATIONS = "9"


def compare_schema(program_path, folder, draw):
    """Validates all results; (tally, texts of what was tried too seldom)."""
    rng = random.Random(f"schema {draw}")
    gears = draw_gears(draw + 1000, LEGS) + [gear for _, gear in draw_supplied(draw + 1000)]
    for gear in gears:
        for leg in gear["legs"]:
            leg["seen_stop"] = draw_stop(rng)
            if rng.random() < BINDING:
                leg["pins"] = draw_pins(rng, leg, (0.02, 0.06), (0.3, 0.9))
            elif rng.random() < BINDING:
                mount_elsewhere(rng, leg["actuator"])
        if "motor_pump" in gear["supply"].get("source", "") and rng.random() < LOW:
            # the line takes all that such a switch leaves to one leg
            del gear["legs"][1:]
            gear["supply"]["pressure_switch_pa"] = round(rng.uniform(2e4, 2e5))
    files = [folder / f"seen-{number + 1:03}.json" for number in range(len(gears))]
    for file, gear in zip(files, gears):
        gearfile.write(file, gear)
    unusable = [folder / f"unusable-{what}.json" for what in UNUSABLE]
    for file, text in zip(unusable, UNUSABLE.values()):
        file.write_text(text)
    kept = sorted(path for path in FIXTURES.rglob("*.json") if path.parent != SCHEMAS)
    kept = [changed(folder, path) for path in kept]
    tally, has = Tally(), {"stops": 0, "cycles": 0, "refused": 0, "beyond": 0}
    for file in files:
        tally.where = file.name
        valid(tally, "gear file", validator("gear"), json.loads(file.read_text()))
    jobs = [(program_path, file) for file in [*files, *unusable, *kept]]
    with concurrent.futures.ProcessPoolExecutor() as pool:
        for part, found in pool.map(validate, jobs):
            tally.add(part)
            for what, count in found.items():
                has[what] += count
    print("results:", ", ".join(f"{count} {what}" for what, count in has.items()))
    least = {"stops": 100, "cycles": 30, "refused": 3, "beyond": 1}
    return tally, [
        f"only {has[what]} {what} were validated, {count} are asked for"
        for what, count in least.items() if has[what] < count
    ]


def changed(folder, path):
    """The file itself, or where it lists changes (JSON Patch, RFC 6902) the one sound leg with them."""
    changes = json.loads(path.read_text())
    if not isinstance(changes, list):
        return path
    file = {"": json.loads((FIXTURES / "base.json").read_text())}
    for change in changes:
        *way, last = change["path"].split("/")
        place = file
        for step in way:
            place = place[int(step) if isinstance(place, list) else step]
        last = int(last) if isinstance(place, list) else last
        if change["op"] == "remove":
            del place[last]
        elif isinstance(place, list) or change["op"] not in ("add", "replace"):
            raise ValueError(f"{path.name}: {change['op']} is not made here")
        else:
            place[last] = change["value"]
    written = folder / f"{path.parent.name}-{path.name}"
    written.write_text(json.dumps(file[""]))
    return written


def validate(job):
    """Validates all that is printed of one file; (tally, what it has)."""
    program_path, file = job
    tally, has = Tally(), collections.Counter()
    tally.where = file.name
    for document in printed(program_path, file):
        valid(tally, "result", validator("result"), document)
        has["refused"] += "error" in document
        has["cycles"] += "against_time" in document
        has["stops"] += len(document.get("stops", []))
        has["beyond"] += json.dumps(document.get("stops", [])).count('"off": null')
    return tally, has


@functools.cache
def validator(name):
    """The validator of one of the two schemas, which is itself a schema."""
    schema = json.loads((SCHEMAS / f"{name}.schema.json").read_text())
    jsonschema_rs.meta.validate(schema)
    return jsonschema_rs.Draft202012Validator(schema)


def valid(tally, what, schema, document):
    """Holds a document against a schema."""
    errors = [
        f"{'.'.join(map(str, error.instance_path))}: {error.message[:200]}"
        for error in schema.iter_errors(document)
    ]
    tally.same(what, errors[:3], [])


def printed(program_path, file):
    """The documents that the program prints of one file, good or not."""
    done = subprocess.run(
        [program_path, str(file), "--format", "json", "--stations", STATIONS],
        capture_output=True,
        text=True,
    )
    if done.returncode not in (0, 1, 2):
        raise program.Refused(f"exit code {done.returncode}: {done.stderr.strip()[:2000]}")
    return program.each_document(done.stdout)


def mount_elsewhere(rng, actuator):
    """Moves an actuator's mount: on the way its pull may pass through a pivot, where no force moves the leg."""
    actuator["mount_m"] = [round(at + rng.uniform(-0.3, 0.3), 4) for at in actuator["mount_m"]]
    actuator |= {"shortest_m": 0.05, "longest_m": 2.0, "body_length_m": 0.04}


def draw_stop(rng):
    """A stop as it may have been seen, likely or not."""
    stop = {
        "how_far": {
            "travel": {
                "travel": round(rng.uniform(0.02, 0.98), 4),
                "travel_within": round(rng.uniform(0.01, 0.08), 4),
            }
        },
        "pump": rng.choice(["running", "stopped"]),
    }
    if rng.random() < 0.7:
        stop["gauge_pa"] = round(rng.uniform(2e5, 1.2e7))
    if rng.random() < 0.7:
        stop["posts_v"] = round(rng.uniform(6.0, 26.0), 2)
    if rng.random() < 0.3:
        stop["selected"] = "down"
    return stop
