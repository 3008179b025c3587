"""Holds one leg's clearances against shapely's over a dense sample of the path."""

import math

import numpy as np
from scipy.optimize import minimize_scalar

from clearances import SPACING, Barrier, clearance, depth, stacks, steps
from mechanism import NotClosed
from outlines import outlines

# Poses of the swing; a tenth of it in each earlier phase.
SAMPLES = 121
# Accuracy that the program is asked for [m].
ACCURACY = 1e-5
# Where the core itself is in the obstacle the program certifies the depth less closely [m].
DEPTH_ACCURACY = 5e-5
# A point between two samples may leave the straight line between its places: slack on its move.
BULGE = 1.05
PARTS = (
    "wheel",
    "leg_body",
    "sliding_strut",
    "upper_link",
    "lower_link",
    "link_arm",
    "sliding_brace",
    "actuator_body",
    "actuator_rod",
)
# Figures of the program's own rule where the gear gives none [m]: common practice, no source.
DEFAULTS = {"new": 0.0127, "grown": 0.003, None: 0.003}


class Sample:
    """Every moving outline of a leg at every pose of a dense sample of its path."""

    def __init__(self, mechanism, tire, until):
        self.mechanism, self.tire, self.until = mechanism, tire, until
        self.path = mechanism.path(SAMPLES, until)
        self.moving = stacks(mechanism, [pose for _, _, pose in self.path], tire)

    def at_swing(self, swing):
        """Pose of the swing; the straight one where rounding leaves the brace a hair short."""
        mechanism = self.mechanism
        try:
            return mechanism.shortened(mechanism.at_swing(swing))
        except NotClosed:
            return mechanism.shortened(mechanism.at_fold(0.0, swing))

    def refined(self, barrier, part, index):
        """Least clearance near one pose of the sample, by a bounded search between its neighbors."""
        phase, share, _ = self.path[index]
        ends = [share]
        for other in (index - 1, index + 1):
            if 0 <= other < len(self.path) and self.path[other][0] == phase:
                ends.append(self.path[other][1])

        def value(at):
            pose = self.mechanism.at(phase, at, self.until)
            drawn = outlines(self.mechanism, pose, self.tire, part[0])
            return float(clearance(barrier, drawn[part].core[None], drawn[part].radius)[0][0])

        found = minimize_scalar(
            value, bounds=(min(ends), max(ends)), method="bounded", options={"xatol": 1e-7}
        )
        return min(float(found.fun), value(share))


def wanted_clearance(gear, obstacle, part):
    """(clearance asked for [m], whose figure it is)."""
    if "required_clearance_m" in obstacle:
        return obstacle["required_clearance_m"], "obstacle"
    key = {"new": "tire_new_m", "grown": "tire_grown_m", None: "parts_m"}[part[1]]
    rule = gear.get("clearance_rule", {})
    if key in rule:
        return rule[key], "gear"
    return DEFAULTS[part[1]], "common_practice"


def expected_rows(leg, moving):
    """Rows in the order that the result promises: obstacle, part, new before grown."""
    for number, obstacle in enumerate(leg.get("well", [])):
        for part in PARTS:
            if part in obstacle.get("ignores", []):
                continue
            for size in ("new", "grown", None):
                if (part, size) in moving:
                    yield number, (part, size)


def compare_clearances(tally, gear, mechanism, result):
    """Every pair of one leg; returns how many could be refined to the accuracy, and how many."""
    leg = mechanism.leg
    last = result["stations"][-1]
    if last["phase"] != "swing":
        tally.skip("clearance")
        return
    try:
        sample = Sample(mechanism, leg["wheel"]["tire"], last["swing_rad"])
    except NotClosed:
        tally.skip("clearance")
        return
    rows = list(expected_rows(leg, sample.moving))
    pairs = result["clearance"]["pairs"]
    tally.same(
        "pairs of part and obstacle",
        [(p["obstacle"], (p["part"], p["tire"])) for p in pairs],
        rows,
    )
    barriers = [Barrier(o) for o in leg.get("well", [])]
    where = tally.where
    for pair, (number, part) in zip(pairs, rows):
        obstacle = leg["well"][number]
        tally.where = f"{where}, {part[0]} {part[1] or ''} to {obstacle['name']}"
        compare_pair(tally, sample, barriers[number], part, pair)
        asked, basis = wanted_clearance(gear, obstacle, part)
        tally.check("clearance asked for", pair["requirement"]["clearance_m"], asked, 1e-12)
        tally.same("whose clearance", pair["requirement"]["basis"], basis)
    tally.where = where
    compare_governing(tally, result["clearance"])


def compare_governing(tally, found):
    """The governing pair is the deepest contact, or else the one with the least spare."""
    clear = [p["tightest"]["clearance_m"] for p in found["pairs"]]
    spare = [c - p["requirement"]["clearance_m"] for c, p in zip(clear, found["pairs"])]
    if clear:
        row = found["governing"]
        ruling = clear if min(clear) < 0.0 else spare
        tally.check("governing pair", ruling[row], min(ruling), 0.0)


def compare_pair(tally, sample, barrier, part, pair):
    """One moving part and one obstacle."""
    cores, radius = sample.moving[part]
    values, inside = clearance(barrier, cores, radius)
    least = float(values.min())
    tightest = pair["tightest"]["clearance_m"]
    accuracy = DEPTH_ACCURACY if inside.any() else ACCURACY
    tally.check("certified to", pair["certified_to_m"], accuracy / 2, accuracy / 2)
    tally.below("clearance at most the sample's", tightest, least, accuracy)
    if inside.any():
        compare_depth(tally, sample, barrier, part, inside, pair)
        compare_contact(tally, sample, barrier, part, inside | (values < 0.0), pair)
        return
    moves = steps(cores)
    between = np.minimum(values[:-1], values[1:]) - 0.5 * BULGE * moves
    bound = min(least, float(between.min()))
    tally.below("clearance at least the bound", bound, tightest, 1e-9)
    refined = sample.refined(barrier, part, int(np.argmin(values)))
    tally.below("clearance at most the refined", tightest, refined, ACCURACY)
    if tightest < refined - ACCURACY:
        other_minimum(tally, sample, barrier, part, tightest, values, moves)
    else:
        tally.check("refined clearance", tightest, refined, ACCURACY)
    if least < 0.0 or refined < -ACCURACY:
        compare_contact(tally, sample, barrier, part, values < 0.0, pair)
    elif bound > 0.0:
        tally.same("no contact is told", pair["first_contact"], None)


def compare_depth(tally, sample, barrier, part, inside, pair):
    """Depth of contact where the core itself is in the obstacle."""
    cores, radius = sample.moving[part]
    places = np.nonzero(inside)[0]
    some = places[np.unique(np.linspace(0, len(places) - 1, 7).round().astype(int))]
    deepest = max(depth(barrier, cores[i]) for i in some)
    tightest = pair["tightest"]
    tally.below("depth at least the sample's", deepest + radius, -tightest["clearance_m"], DEPTH_ACCURACY)
    place = tightest["place"]
    if place["phase"] != "swing":
        tally.skip("depth at its place")
        return
    pose = sample.at_swing(place["swing_rad"])
    if pose.fold is not None and abs(math.sin(pose.fold)) < 0.05:
        tally.skip("depth at its place")
        return
    core = outlines(sample.mechanism, pose, sample.tire)[part].core
    there = depth(barrier, core) + radius
    tally.below("depth at its place", -tightest["clearance_m"], there, SPACING + DEPTH_ACCURACY)


def other_minimum(tally, sample, barrier, part, tightest, values, moves):
    """Searches every place of the sample that could hold a lesser clearance."""
    reach = np.concatenate([moves, moves[-1:]])
    reach = np.maximum(reach, np.concatenate([moves[:1], moves])) * BULGE
    places = np.nonzero(values - reach <= tightest)[0]
    if not places.size:
        tally.below("clearance at least what the sample can hide", min(values - reach), tightest, 1e-9)
        return
    refined = min(sample.refined(barrier, part, int(i)) for i in places)
    tally.check("refined clearance", tightest, refined, ACCURACY)


def compare_contact(tally, sample, barrier, part, touches, pair):
    """First contact on the way up, bracketed between samples and then halved."""
    contact = pair["first_contact"]
    if contact is None:
        tally.same("contact is told", False, True)
        return
    if not touches.any():
        # a graze between samples
        earlier(tally, sample, barrier, part, contact)
        return
    first = int(np.argmax(touches))
    if first == 0:
        tally.same("contact at the start", contact["place"]["phase"], sample.path[0][0])
        return
    phase, high, pose = sample.path[first]
    before_phase, low, before = sample.path[first - 1]
    if phase != before_phase or phase != "swing":
        tally.skip("first contact not late")
        return

    def touch(at):
        here = sample.mechanism.at(phase, at, sample.until)
        drawn = outlines(sample.mechanism, here, sample.tire, part[0])
        value, inside = clearance(barrier, drawn[part].core[None], drawn[part].radius)
        return bool(inside[0]) or value[0] < 0.0

    # an earlier touch between samples is the program's to find
    told = contact["place"]["swing_rad"]
    towards = math.copysign(1.0, sample.mechanism.up)
    if towards * told < towards * before.swing - 1e-6:
        earlier(tally, sample, barrier, part, contact)
        return
    for _ in range(60):
        middle = 0.5 * (low + high)
        low, high = (low, middle) if touch(middle) else (middle, high)
    ours = sample.mechanism.at(phase, high, sample.until).swing
    tally.below("first contact not late", towards * told, towards * ours, 1e-6)
    # which side of a surface's end a part is on can turn at once: the program errs early there
    latest = towards * told + contact["bracket_rad"]
    tally.below("first contact not early", towards * ours, latest, 1e-5)


def earlier(tally, sample, barrier, part, contact):
    """A touch that the sample stepped over: where it is told, no clearance is left.

    The sample asks the corners of a core only; behind the middle of a surface an edge may pass
    with both of its corners off the ends.
    """
    place = contact["place"]
    phase, _, start = sample.path[0]
    if place["phase"] == phase and contact["bracket_rad"] == 0.0:
        pose = start
    elif place["phase"] == "swing":
        pose = sample.at_swing(place["swing_rad"])
    else:
        tally.skip("earlier contact")
        return
    drawn = outlines(sample.mechanism, pose, sample.tire)[part]
    past = depth(barrier, drawn.core)
    apart = float(clearance(barrier, drawn.core[None], drawn.radius)[0][0])
    tally.below("earlier contact", -past if past > 0.0 else apart, 0.0, ACCURACY)
