"""The way of a leg as its source sees it: stages, each with what it takes to move over the fluid.

Thrust by the balance of bodies (forces.py) at many poses, where pins rub with their friction
(friction.py) in the sense in which each turns; a cubic spline between (curves.py). A stage of a leg
with an electric actuator has its stroke in the place of fluid and a force in the place of pressure.
"""

import functools
import math
from dataclasses import dataclass
from typing import Callable

import numpy as np

from curves import Curve, Level, turning_points
from forces import Loads, free_bodies
from friction import by_moments, friction_radii, moments_of, relative_turns
from mechanism import Mechanism
from sources import ATMOSPHERE
from stood import stood

# Red mineral fluid, as the file format documents for an absent density [kg/m3].
DENSITY = 860.0
# Sharp edge, as documented for an absent coefficient.
DISCHARGE = 0.62
# What an open line counts as: the program documents so wide a hole as its own estimate, the file format
# says no more than that a line is open.
OPEN_LINE = {"hole_m": 2e-3}
# The flow of an orifice goes over to a straight line about here, as documented [Pa].
LAMINAR = 100.0
# Poses of the swing between which the load is a spline; with friction, each of which costs ten times
# as much, half of them.
POSES = 321
# Poses between which the pins are looked at for a turn back, and the least of a piece.
LOOKS, LEAST = 121, 12


@dataclass
class Stage:
    """One stroke of a leg."""

    # "strut" or "swing".
    kind: str
    # Fluid of the whole stroke [m3].
    extent: float
    # Area on which the fluid works [m2].
    area: float
    # Travel of the leg over the fluid [1].
    travel: Callable[[float], float]
    # Pressure at the manifold from which it moves, over the fluid [Pa].
    load: Callable[[float], float]
    # Flow into it at a pressure at the manifold, with the load [m3/s].
    flow: Callable[[float, float], float]
    # Fluid between which the knee is on its way from the lock to the straight line [m3].
    unlocks: tuple = (0.0, 0.0)
    # Pressure at which the valve before it opens; none before a first stage [Pa].
    opens: float | None = None
    # Least that a load that pulls can draw the pressure behind the orifice down to [Pa].
    lowest: float = -math.inf
    # Load that starts it where it has stood [Pa].
    against: float = -math.inf

    def stays_under(self, most):
        """Leaves it where it is if the most of the source does not start it."""
        if self.against >= most:
            self.load = HeldBack(self.load, self.against)

    @functools.cached_property
    def sampled(self):
        """Loads at places all along it [Pa]."""
        return [self.load(x) for x in np.linspace(0.0, self.extent, 61)]

    @property
    def least(self):
        """Least load [Pa]."""
        return min(self.sampled)

    def phase(self, fluid):
        """Part of the path after so much fluid, as the result names it."""
        if self.kind == "strut":
            return "shorten"
        return "unlock" if self.unlocks[0] <= fluid < self.unlocks[1] else "swing"

    def has(self):
        """What of the model this stage tries."""
        return [
            *(["driven by its weight"] if self.least < 0.0 else []),
            *(["that pull ahead of the fluid"] if self.least < self.lowest else []),
            *(["held back by its valve"] if self.opens in self.sampled else []),
        ]


class HeldBack:
    """A load behind a valve that opens at a pressure [Pa]."""

    def __init__(self, load, opens):
        self.load, self.opens = load, opens

    def __call__(self, fluid):
        return max(self.load(fluid), self.opens)

    def peak(self, start, end):
        """Largest load from one place to another [Pa]."""
        return max(self.load.peak(start, end), self.opens)


@dataclass
class Path:
    """The stroke of an actuator from down to up, in pieces at whose ends a pin turns back."""

    # Of every piece: strokes toward up [m], and thrusts that move the leg up and down, both counted
    # in the direction of the stroke up [N].
    strokes: list
    up: list
    down: list
    # Travel of the leg there [1].
    travels: list
    # Stroke at which the knee is straight; 0 where it does not unlock [m].
    straight: float
    # +1 where the actuator lengthens on the way up, −1 where it shortens.
    towards_up: float


def pieces_of(mechanism, radii):
    """[(phase, first share, last share, sense in which each pin turns on the way up)] of the way that
    the actuator drives; ends where a pin that rubs turns back."""
    found = []
    for phase in mechanism.phases():
        if phase == "shorten":
            continue
        if not np.any(radii > 0.0):
            found.append((phase, 0.0, 1.0, None))
            continue
        shares = np.linspace(0.0, 1.0, LOOKS)
        poses = [mechanism.at(phase, float(share)) for share in shares]
        steps = [relative_turns(mechanism, a, b) for a, b in zip(poses, poses[1:])]
        turned = np.vstack([np.zeros(len(radii)), np.cumsum(steps, axis=0)])
        breaks = sorted(
            place
            for pin, radius in enumerate(radii)
            if radius > 0.0
            for place in turning_points(turned[:, pin])
        )
        for low, high in zip([0.0, *breaks], [*breaks, 1.0]):
            ends = [[np.interp(at, shares, column) for column in turned.T] for at in (low, high)]
            found.append((phase, low, high, np.subtract(ends[1], ends[0])))
    return found


def thrusts(loads, mechanism, radii, poses, turned):
    """[(thrust up, thrust down)] at the poses of a piece [N]; None of pins that bind."""
    if turned is None:
        free = [free_bodies(loads, mechanism, pose, check=False)["thrust"] for pose in poses]
        return list(zip(free, free))
    found, near = [], [None, None]
    for pose in poses:
        stands = by_moments(loads, mechanism, pose)
        near = [
            moments_of(stands, radii, sense * turned, moments)
            for sense, moments in zip((1.0, -1.0), near)
        ]
        if any(moments is None for moments in near):
            return None
        found.append(tuple(float(stands[0][0] + stands[1][0] @ moments) for moments in near))
    return found


def places(phase, low, high, count):
    """Shares of a piece of a phase, of which the swing has so many: closer together at both ends, where
    a toggle may be near."""
    whole = count if phase == "swing" else count // 8
    wanted = max(round(whole * (high - low)), LEAST)
    return low + (high - low) * 0.5 * (1.0 - np.cos(np.linspace(0.0, math.pi, wanted)))


def swing_path(gear, leg, count=POSES):
    """The Path of a leg through so many poses; None where the length turns back, or its pins bind."""
    mechanism, loads = Mechanism(leg), Loads(gear, leg)
    radii = friction_radii(loads, mechanism)
    starts = {phase: mechanism.at(phase, 0.0).length for phase in mechanism.phases()}
    first, straight = starts.get("unlock", starts["swing"]), starts["swing"]
    towards_up = math.copysign(1.0, mechanism.at("swing", 1.0).length - first)
    path = Path([], [], [], [], towards_up * (straight - first), towards_up)
    for phase, low, high, turned in pieces_of(mechanism, radii):
        shares = places(phase, low, high, count if turned is None else count // 2)
        poses = [mechanism.at(phase, float(share)) for share in shares]
        stroke = towards_up * (np.array([pose.length for pose in poses]) - first)
        if np.any(np.diff(stroke) < -1e-12):
            return None
        found = thrusts(loads, mechanism, radii, poses, turned)
        if found is None:
            return None
        # near a toggle of the actuator the stroke stands, but for rounding
        keep = np.concatenate(([True], np.diff(np.maximum.accumulate(stroke)) > 1e-14))
        path.strokes.append(stroke[keep])
        path.up.append(towards_up * np.array([up for up, _ in found])[keep])
        path.down.append(towards_up * np.array([down for _, down in found])[keep])
        path.travels.append(np.array([pose.swing for pose in poses])[keep] / mechanism.up)
    return path


def along(path, values, down):
    """Values given over a Path, by pieces (strokes, values) in the direction of the motion."""
    if not down:
        return list(zip(path.strokes, values))
    end = path.strokes[-1][-1]
    return [((end - stroke)[::-1], value[::-1])
            for stroke, value in zip(path.strokes[::-1], values[::-1])]


def swing_efforts(path, leg, down):
    """([(strokes in the direction of the motion [m], forces that the source must make [N])] by pieces,
    whether it pushes the pins apart) along a Path."""
    friction = leg["actuator"].get("seal_friction_n", 0.0)
    # the other way round what held the leg up drives it
    sense, thrusts = (-1.0, path.down) if down else (1.0, path.up)
    pieces = [
        (stroke, friction + sense * thrust) for stroke, thrust in along(path, thrusts, down)
    ]
    return pieces, (path.towards_up > 0.0) != down


def swing_loads(path, gear, leg, down):
    """([(fluid [m3], load pressures [Pa])] by pieces, area that the fluid fills, area that it leaves
    [m2]) along a Path, in the direction of the motion."""
    pieces, pushes = swing_efforts(path, leg, down)
    loads = Loads(gear, leg)
    sides = (loads.bore, loads.annulus)
    working, emptied = sides if pushes else sides[::-1]
    back = gear["supply"].get("return_pressure_pa", 0.0)
    needed = [
        (working * stroke, (force + back * emptied) / working) for stroke, force in pieces
    ]
    return needed, working, emptied


def stood_end(path, gear, leg, down):
    """A Path of one pose, where a leg that has stood starts: its thrusts there."""
    mechanism, loads = Mechanism(leg), Loads(gear, leg)
    radii = friction_radii(loads, mechanism)
    phase, low, high, turned = pieces_of(mechanism, radii)[-1 if down else 0]
    found = thrusts(loads, mechanism, radii, [mechanism.at(phase, high if down else low)], turned)
    if found is None:
        raise RuntimeError("pins that have stood bind")
    up, down = ([np.array([path.towards_up * thrust])] for thrust in found[0])
    return Path([np.zeros(1)], up, down, [], 0.0, path.towards_up)


def swing_stage(path, pieces, area, flow, down):
    """The stage of the swing, by its loads over the fluid or the stroke on an area."""
    travels = Curve([(area * x, t) for x, t in along(path, path.travels, down)])
    extent = pieces[-1][0][-1]
    straight = area * path.straight
    unlocks = (extent - straight, extent) if down else (0.0, straight)
    return Stage("swing", extent, area, travels, Curve(pieces), flow, unlocks)


def conductance(gear, leg, down):
    """Flow of the leg's orifice in a direction per root of the pressure across it [m3/s/Pa^0.5]."""
    drive, fall = leg["drive"], leg.get("fall", {})
    orifice = drive.get("orifice_down" if down else "orifice_up")
    if orifice is None and down and "return_orifice_m" in fall:
        # the one of the fall stands in
        orifice = {
            "hole_m": fall["return_orifice_m"],
            "discharge": fall.get("discharge_coefficient", DISCHARGE),
        }
    orifice = OPEN_LINE if orifice is None else orifice
    area = math.pi / 4 * orifice["hole_m"] ** 2
    density = gear.get("fluid", {}).get("density_kg_m3", DENSITY)
    return orifice.get("discharge", DISCHARGE) * area * math.sqrt(2.0 / density)


def through(orifice, across):
    """Flow of an orifice under a pressure across it; none backwards [m3/s]."""
    if across <= 0.0:
        return 0.0
    # with q the flow over that of 1 Pa, across⁴ = q⁴·(q⁴ + LAMINAR²)
    both = LAMINAR**2 + math.sqrt(LAMINAR**4 + 4.0 * across**4)
    return orifice * across * (2.0 / both) ** 0.25


def flow_in(orifice):
    """The orifice meters what enters: it takes the pressure that the load leaves over."""
    return lambda pressure, load: through(orifice, pressure - load)


def flow_out(orifice, working, emptied):
    """The orifice meters what leaves: the piston hands what the load leaves over on to the fluid on
    its other side, on another area, and the fluid that enters follows the piston."""
    ratio = working / emptied
    return lambda pressure, load: ratio * through(orifice, ratio * (pressure - load))


def stages_of(gear, leg, down, path):
    """The stages of a leg that goes up, or down, along its Path."""
    drive = leg["drive"]
    orifice = conductance(gear, leg, down)
    pieces, working, emptied = swing_loads(path, gear, leg, down)
    flow = flow_out(orifice, working, emptied) if down else flow_in(orifice)
    found = [swing_stage(path, pieces, working, flow, down)]
    still = stood(leg)
    end, _, _ = swing_loads(stood_end(path, gear, still, down), gear, still, down)
    found[0].against = float(end[0][1][0])
    if not down:
        found[0].lowest = -ATMOSPHERE
    jack = drive.get("jack")
    shortening = leg["strut"].get("shortening", "none")
    if jack is not None and shortening != "none":
        own = jack.get("lengthen_pa", 0.0) if down else jack["shorten_pa"]
        against = own + gear["supply"].get("return_pressure_pa", 0.0)
        extent = jack["area_m2"] * shortening["before_swing"]["amount_m"]
        # the same area on both sides of the jack
        strut = Stage(
            "strut", extent, jack["area_m2"], Level(0.0), Level(against), flow_in(orifice)
        )
        found.insert(len(found) if down else 0, strut)
    opens = drive.get("stage_valve_pa")
    if opens is not None and len(found) > 1:
        found[1].load = HeldBack(found[1].load, opens)
        found[1].opens = opens
    return found
