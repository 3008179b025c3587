"""The way of a leg as its source sees it: stages, each with what it takes to move over the fluid.

Thrust by the balance of bodies (forces.py) at many poses, scipy's cubic spline between. A stage of a
leg with an electric actuator has its stroke in the place of fluid and a force in the place of pressure.
"""

import math
from dataclasses import dataclass
from typing import Callable

import numpy as np
from scipy.interpolate import CubicSpline

from forces import Loads, free_bodies
from mechanism import Mechanism

# Red mineral fluid, as the file format documents for an absent density [kg/m3].
DENSITY = 860.0
# Sharp edge, as documented for an absent coefficient.
DISCHARGE = 0.62
# The flow of an orifice goes over to a straight line about here, as documented [Pa].
LAMINAR = 1e3
# Poses of the swing between which the load is a spline.
POSES = 481


@dataclass
class Stage:
    """One stroke of a leg."""

    kind: str
    # Fluid of the whole stroke [m3].
    extent: float
    # Pressure at the manifold from which it moves, over the fluid [Pa].
    load: Callable[[float], float]
    # Flow into it at a pressure at the manifold, with the load [m3/s].
    flow: Callable[[float, float], float]
    # Pressure at which the valve before it opens; none before a first stage [Pa].
    opens: float | None = None

    def has(self):
        """What of the model this stage tries, by the load at places all along it."""
        loads = [self.load(x) for x in np.linspace(0.0, self.extent, 61)]
        return [
            *(["driven by its weight"] if min(loads) < 0.0 else []),
            *(["held back by its valve"] if self.opens in loads else []),
        ]


def swing_path(gear, leg):
    """(stroke towards up [m], thrust of the actuator in that direction [N], sign) from down to up;
    None where the length turns back."""
    mechanism, loads = Mechanism(leg), Loads(gear, leg)
    poses = [pose for phase, _, pose in mechanism.path(POSES) if phase != "shorten"]
    lengths = np.array([pose.length for pose in poses])
    towards_up = math.copysign(1.0, lengths[-1] - lengths[0])
    stroke = towards_up * (lengths - lengths[0])
    # the straight knee is the end of one phase and the start of the next
    keep = np.concatenate(([True], np.diff(stroke) > 1e-12))
    if np.any(np.diff(stroke) < -1e-12):
        return None
    thrust = np.array([
        free_bodies(loads, mechanism, pose, check=False)["thrust"]
        for pose, kept in zip(poses, keep)
        if kept
    ])
    return stroke[keep], towards_up * thrust, towards_up


def swing_efforts(path, leg, down):
    """(stroke in the direction of the motion [m], force that the source must make [N], whether it
    pushes the pins apart) along a swing_path."""
    stroke, holding, towards_up = path
    friction = leg["actuator"].get("seal_friction_n", 0.0)
    if down:
        # the other way round: what held the leg up now drives it
        stroke, holding = (stroke[-1] - stroke)[::-1], -holding[::-1]
    return stroke, holding + friction, (towards_up > 0.0) != down


def swing_loads(path, gear, leg, down):
    """(fluid [m3], load pressure [Pa], area that the fluid fills, area that it leaves [m2]) along a
    swing_path, in the direction of the motion."""
    stroke, force, pushes = swing_efforts(path, leg, down)
    loads = Loads(gear, leg)
    sides = (loads.bore, loads.annulus)
    working, emptied = sides if pushes else sides[::-1]
    back = gear["supply"].get("return_pressure_pa", 0.0)
    return working * stroke, (force + back * emptied) / working, working, emptied


def conductance(gear, leg, down):
    """Flow of the leg's orifice in a direction per root of the pressure across it [m3/s/Pa^0.5]."""
    drive, fall = leg["drive"], leg.get("fall", {})
    orifice = drive.get("orifice_down" if down else "orifice_up")
    if orifice is None and down:
        # the one of the fall stands in
        orifice = {
            "hole_m": fall["return_orifice_m"],
            "discharge": fall.get("discharge_coefficient", DISCHARGE),
        }
    area = math.pi / 4 * orifice["hole_m"] ** 2
    density = gear.get("fluid", {}).get("density_kg_m3", DENSITY)
    return orifice.get("discharge", DISCHARGE) * area * math.sqrt(2.0 / density)


def through(orifice, across):
    """Flow of an orifice under a pressure across it; none backwards [m3/s]."""
    if across <= 0.0:
        return 0.0
    return orifice * across / (across * across + LAMINAR * LAMINAR) ** 0.25


def flow_in(orifice):
    """The orifice meters what enters: it takes the pressure that the load leaves over."""
    return lambda pressure, load: through(orifice, pressure - load)


def flow_out(orifice, working, emptied):
    """The orifice meters what leaves: the piston hands what the load leaves over on to the fluid on
    its other side, on another area, and the fluid that enters follows the piston."""
    ratio = working / emptied
    return lambda pressure, load: ratio * through(orifice, ratio * (pressure - load))


def stages_of(gear, leg, down):
    """The stages of a leg that goes up, or down."""
    drive = leg["drive"]
    orifice = conductance(gear, leg, down)
    fluid, needed, working, emptied = swing_loads(swing_path(gear, leg), gear, leg, down)
    load = CubicSpline(fluid, needed)
    flow = flow_out(orifice, working, emptied) if down else flow_in(orifice)
    found = [Stage("swing_done", fluid[-1], lambda x: float(load(x)), flow)]
    jack = drive.get("jack")
    shortening = leg["strut"].get("shortening", "none")
    if jack is not None and shortening != "none":
        own = jack.get("lengthen_pa", 0.0) if down else jack["shorten_pa"]
        against = own + gear["supply"].get("return_pressure_pa", 0.0)
        extent = jack["area_m2"] * shortening["before_swing"]["amount_m"]
        # the same area on both sides of the jack
        strut = Stage("strut_done", extent, lambda _: against, flow_in(orifice))
        found.insert(len(found) if down else 0, strut)
    opens = drive.get("stage_valve_pa")
    if opens is not None and len(found) > 1:
        own = found[1].load
        found[1].load = lambda x: max(own(x), opens)
        found[1].opens = opens
    return found
