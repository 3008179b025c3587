"""Runs the native command over gear files and reads its results."""

import json
import subprocess

import gearfile

RESULT = {"format": "gearswing-result", "version": 2}


class Refused(Exception):
    """The command did not give what it promises."""


def results(program, files):
    """One result document per file, in their order. The command runs once for all of them."""
    done = subprocess.run(
        [program, *map(str, files), "--format", "json"], capture_output=True, text=True
    )
    # 0 all answers good, 1 some answer bad, 2 unusable input
    if done.returncode not in (0, 1):
        raise Refused(f"exit code {done.returncode}: {done.stderr.strip()[:2000]}")
    documents = list(each_document(done.stdout))
    if len(documents) != len(files):
        raise Refused(f"{len(documents)} results for {len(files)} files")
    for document in documents:
        if {key: document.get(key) for key in RESULT} != RESULT:
            raise Refused(f"not a result of version 1: {str(document)[:200]}")
    return documents


def solved(program, folder, name, gears):
    """[(file, result)] of gears that are written to files of this name."""
    files = [folder / f"{name}-{number + 1:02}.json" for number in range(len(gears))]
    for file, gear in zip(files, gears):
        gearfile.write(file, gear)
    return list(zip(files, results(program, files), strict=True))


def each_document(text):
    """JSON documents that follow one another, or one array of them."""
    decoder = json.JSONDecoder()
    at = 0
    while True:
        while at < len(text) and text[at].isspace():
            at += 1
        if at == len(text):
            return
        document, at = decoder.raw_decode(text, at)
        yield from document if isinstance(document, list) else [document]


def seconds_per_leg(timer, files, repeats):
    """[{"file", "leg", "seconds"}] of every leg, by the timing program."""
    done = subprocess.run(
        [timer, "--repeat", str(repeats), *map(str, files)],
        capture_output=True,
        text=True,
        check=True,
    )
    return json.loads(done.stdout)
