"""Legs on one drive: what the drive needs, from the balance of every body of each leg at the same travel.

By virtual work (any statics text) the drive carries the sum of what its legs need, each times the ratio of
its movement to that of the drive."""

import math
import random

import numpy as np

import program
from compare import LEAST_ARM, WORST_CONDITION, first_stop
from draw import draw_leg, kind_of, kinds
from draw_driven import is_driven
from forces import Loads, free_bodies
from mechanism import Mechanism
from stood import stood
from tally import Tally

# The program takes the other leg's need as even between its own stations: its share of the largest effort.
ALLOWED = 5e-4
# Travel between which the length of an actuator is differenced.
STEP = 1e-6
# Stations compared of a leg, pairs drawn, and comparisons there must be on average of a pair.
STATIONS = 15
PAIRS = 6
LEAST_PLACES = 12


def draw_pairs(draw):
    """Gears of two legs on one drive, of kinds whose swing starts at once."""
    rng = random.Random(draw + 77)
    wanted = [kind for kind in kinds() if kind[0] != "through_centre" and kind[3] != "with_travel"]
    gears = []
    for number in range(PAIRS):
        legs = []
        while len(legs) < 2:
            leg = draw_leg(rng, *rng.choice(wanted), f"Leg {len(legs) + 1}")
            if leg is None or not is_driven(leg) or first_stop(Mechanism(leg)) is not None:
                continue
            leg.pop("well", None)
            leg["shared_drive"] = "drive"
            leg["drive_ratio"] = round(rng.uniform(0.4, 2.0), 3)
            legs.append(leg)
        gears.append(
            {
                "name": f"Shared {number + 1}",
                "legs": legs,
                "supply": {
                    "available_pressure_pa": 7e6,
                    "return_pressure_pa": round(rng.uniform(0.0, 3e5)),
                },
                "conditions": {"load_factor": round(rng.uniform(0.8, 1.5), 3)},
            }
        )
    return gears


class Beside:
    """One leg of a pair."""

    def __init__(self, gear, leg):
        self.loads = Loads(gear, leg)
        self.mechanism = Mechanism(leg)
        self.runs, self.starts = (one["actuator"].get("seal_friction_n", 0.0) for one in (leg, stood(leg)))
        self.ratio = leg["drive_ratio"]

    def pose(self, travel):
        """Its pose at a travel of the swing."""
        return self.mechanism.shortened(self.mechanism.at_swing(travel * self.mechanism.up))

    def rate(self, travel):
        """Change of its actuator's length over travel [m]."""
        low, high = max(travel - STEP, 0.0), min(travel + STEP, 1.0)
        return (self.pose(high).length - self.pose(low).length) / (high - low)

    def efforts(self, travel):
        """Efforts to retract and to extend [N]; None at a pose too near to a singular one."""
        pose, rate = self.pose(travel), self.rate(travel)
        bodies = free_bodies(self.loads, self.mechanism, pose)
        reach = float(np.linalg.norm(self.mechanism.axle - self.mechanism.trunnion))
        if abs(rate) < LEAST_ARM * reach or bodies["condition"] > WORST_CONDITION:
            return None
        towards_up = math.copysign(1.0, rate) * bodies["thrust"]
        # up begins at the start of the swing, down at its end, by legs that have stood
        friction = [self.starts if travel == start else self.runs for start in (0.0, 1.0)]
        return np.array([towards_up, -towards_up]) + friction

    def pushes(self):
        """Whether its actuator lengthens on the whole on the way up."""
        return self.pose(1.0).length > self.pose(0.0).length


def compare_shared(program_path, folder, draw):
    """Draws, solves and compares all pairs; (tally, texts of what was compared too seldom)."""
    gears = draw_pairs(draw)
    tally = Tally()
    places = 0
    for gear, (file, document) in zip(gears, program.solved(program_path, folder, "shared", gears)):
        pair = [Beside(gear, leg) for leg in gear["legs"]]
        bore, annulus = pair[0].loads.bore, pair[0].loads.annulus
        areas = (bore, annulus) if pair[0].pushes() else (annulus, bore)
        back = gear["supply"]["return_pressure_pa"]
        for answer in document["legs"]:
            leg = gear["legs"][answer["index"]]
            tally.where = f"{file.name}, {leg['name']} {kind_of(leg)}"
            tally.same("usable", answer.get("faults"), None)
            force = answer["result"]["force"]
            tally.same("shares its drive with", force["shares_drive_with"], [1 - answer["index"]])
            rows = [s for s in answer["result"]["stations"] if s["phase"] == "swing"]
            for at in np.unique(np.linspace(0, len(rows) - 1, STATIONS).round().astype(int)):
                row = rows[at]
                efforts = [one.efforts(row["travel"]) for one in pair]
                if row["force"] is None or any(effort is None for effort in efforts):
                    tally.skip("pressure of the drive")
                    continue
                places += 1
                needs = sum(one.ratio * effort for one, effort in zip(pair, efforts))
                size = sum(one.ratio * abs(effort).max() for one, effort in zip(pair, efforts))
                for way, key in enumerate(("retract_pressure_pa", "extend_pressure_pa")):
                    working, other = areas[way], areas[1 - way]
                    wanted = max(0.0, (needs[way] + back * other) / working)
                    tolerance = ALLOWED * (size + back * other) / working
                    tally.check("pressure of the drive", row["force"][key], wanted, tolerance)
    few = []
    if places < LEAST_PLACES * 2 * PAIRS:
        few.append(f"only {places} places of legs on one drive were compared")
    return tally, few
