"""Every result satisfies the schema that describes it, and every drawn file that of gear files: by the
general-purpose validator jsonschema, on random gears with stops seen at random, and on the fixtures."""

import json
import pathlib
import random
import subprocess

import jsonschema

import gearfile
import program
from draw import draw_gears
from draw_supply import draw_supplied
from tally import Tally

FIXTURES = pathlib.Path(__file__).resolve().parents[2] / "fixtures"
SCHEMAS = FIXTURES / "schema"
# Legs drawn for it beside the supplied gears.
LEGS = 120
# A table of few stations says no less of the schema.
STATIONS = "9"


def compare_schema(program_path, folder, draw):
    """Validates all results; (tally, texts of what was tried too seldom)."""
    rng = random.Random(f"schema {draw}")
    gears = draw_gears(draw + 1000, LEGS) + [gear for _, gear in draw_supplied(draw + 1000)]
    for gear in gears:
        for leg in gear["legs"]:
            leg["seen_stop"] = draw_stop(rng)
    files = [folder / f"seen-{number + 1:03}.json" for number in range(len(gears))]
    for file, gear in zip(files, gears):
        gearfile.write(file, gear)
    wells = sorted(
        path for path in FIXTURES.rglob("*.json")
        if path.parent != SCHEMAS
    )
    tally, has = Tally(), {"stops": 0, "cycles": 0, "refused": 0, "beyond": 0}
    gear_schema, result_schema = (validator(name) for name in ("gear", "result"))
    for file in files:
        tally.where = file.name
        valid(tally, "gear file", gear_schema, json.loads(file.read_text()))
    for file in [*files, *wells]:
        tally.where = file.name
        for document in printed(program_path, file):
            valid(tally, "result", result_schema, document)
            has["refused"] += "error" in document
            has["cycles"] += "against_time" in document
            has["stops"] += len(document.get("stops", []))
            has["beyond"] += json.dumps(document.get("stops", [])).count('"off": null')
    print("results:", ", ".join(f"{count} {what}" for what, count in has.items()))
    least = {"stops": 100, "cycles": 30, "refused": 3, "beyond": 1}
    return tally, [
        f"only {has[what]} {what} were validated, {count} are asked for"
        for what, count in least.items() if has[what] < count
    ]


def validator(name):
    """The validator of one of the two schemas, which is itself a schema."""
    schema = json.loads((SCHEMAS / f"{name}.schema.json").read_text())
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def valid(tally, what, schema, document):
    """Holds a document against a schema."""
    errors = [
        f"{'.'.join(map(str, error.absolute_path))}: {error.message[:200]}"
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
