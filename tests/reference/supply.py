"""A gear that goes up on one motor pump, from this reference's own statics.

Each leg is a chain of stages, strut then swing, with a load pressure over the fluid taken: thrust by
the balance of bodies (forces.py) at many poses, scipy's cubic spline between. At every instant
scipy's brentq finds the manifold pressure at which the pump gives what the orifices take (plain square
root, no laminar part); scipy's solve_ivp (LSODA) follows the fluid from stage end to stage end. Held
against `against_time.cycle.up` by compare_supply.py.
"""

import math
from dataclasses import dataclass
from typing import Callable

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

from forces import Loads, free_bodies
from mechanism import Mechanism

# Red mineral fluid, as the file format documents for an absent density [kg/m3].
DENSITY = 860.0
# Sharp edge, as documented for an absent coefficient.
DISCHARGE = 0.62
# Poses of the swing between which the load is a spline.
POSES = 481
TOLERANCES = {"rtol": 1e-9, "atol": 1e-13}
# A gear still moving after this stalls for what is compared here [s].
LONGEST = 600.0


@dataclass
class Stage:
    """One stroke of a leg."""

    kind: str
    # Fluid of the whole stroke [m3].
    extent: float
    # Pressure at the manifold from which it moves, over the fluid [Pa].
    load: Callable[[float], float]


def swing_loads(gear, leg):
    """(fluid [m3], load pressure [Pa]) at poses from down to up; None where the length turns back."""
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
    working, emptied = loads.bore, loads.annulus
    if towards_up < 0.0:
        working, emptied = emptied, working
    friction = leg["actuator"].get("seal_friction_n", 0.0)
    back = gear["supply"].get("return_pressure_pa", 0.0)
    needed = (towards_up * thrust + friction + back * emptied) / working
    return working * stroke[keep], needed


def stages_of(gear, leg):
    """The stages of a leg that goes up."""
    found = []
    drive = leg.get("drive", {})
    jack = drive.get("jack")
    shortening = leg["strut"].get("shortening", "none")
    if jack is not None and shortening != "none":
        against = jack["shorten_pa"] + gear["supply"].get("return_pressure_pa", 0.0)
        extent = jack["area_m2"] * shortening["before_swing"]["amount_m"]
        found.append(Stage("strut_done", extent, lambda _: against))
    fluid, needed = swing_loads(gear, leg)
    load = CubicSpline(fluid, needed)
    opens = drive.get("stage_valve_pa") if found else None
    if opens is not None:
        found.append(Stage("swing_done", fluid[-1], lambda x: max(float(load(x)), opens)))
    else:
        found.append(Stage("swing_done", fluid[-1], lambda x: float(load(x))))
    return found


class Pump:
    """A pump on a DC motor: flow, current, largest pressure."""

    def __init__(self, supply):
        source, battery = supply["source"]["motor_pump"], supply["battery"]
        self.source = source
        self.open = battery["open_circuit_v"]
        self.ohms = battery["internal_ohm"] + battery["wires_ohm"]
        self.least = supply.get("return_pressure_pa", 0.0)
        dead = brentq(self.flow, 0.0, 10 * source["stall_pressure_pa"], xtol=1e-3)
        self.most = min(dead, source["relief_pressure_pa"])

    def current(self, pressure):
        """Current at a pressure [A]."""
        source = self.source
        share = pressure / source["stall_pressure_pa"]
        return source["idle_a"] + (source["stall_a"] - source["idle_a"]) * share

    def flow(self, pressure):
        """Flow at a pressure [m3/s], below zero where it would run back."""
        source = self.source
        volts = self.open - self.ohms * self.current(pressure)
        loss = pressure / source["stall_pressure_pa"]
        return source["free_flow_m3_s"] * (volts / source["rated_v"] - loss)


class Rising:
    """A gear on its way up."""

    def __init__(self, gear):
        self.pump = Pump(gear["supply"])
        self.ways = [stages_of(gear, leg) for leg in gear["legs"]]
        self.at = [0] * len(self.ways)
        density = gear.get("fluid", {}).get("density_kg_m3", DENSITY)
        self.conductances = []
        for leg in gear["legs"]:
            orifice = leg["drive"]["orifice_up"]
            area = math.pi / 4 * orifice["hole_m"] ** 2
            coefficient = orifice.get("discharge", DISCHARGE)
            self.conductances.append(coefficient * area * math.sqrt(2.0 / density))

    def manifold(self, fluid):
        """(pressure [Pa], flow into each leg [m3/s], flow out of the pump [m3/s])."""
        needs = [
            way[at].load(x) if at < len(way) else math.inf
            for way, at, x in zip(self.ways, self.at, fluid)
        ]

        def flows(pressure):
            return [
                c * math.sqrt(pressure - need) if pressure > need else 0.0
                for c, need in zip(self.conductances, needs)
            ]

        def spare(pressure):
            return sum(flows(pressure)) - self.pump.flow(pressure)

        low, high = self.pump.least, self.pump.most
        if spare(high) <= 0.0:
            # over the relief valve goes the rest
            return high, flows(high), self.pump.flow(high)
        if spare(low) >= 0.0:
            return low, flows(low), self.pump.flow(low)
        pressure = brentq(spare, low, high, xtol=1e-6, rtol=1e-14)
        return pressure, flows(pressure), sum(flows(pressure))

    def rates(self, fluid):
        """Rate of the fluid of every leg, of the pumped fluid and of the battery's energy."""
        pressure, into, pumped = self.manifold(fluid)
        power = self.pump.open * self.pump.current(pressure)
        # joules beside litres: one tolerance for both
        return np.array([*into, pumped, power * 1e-6])

    def solve(self):
        """What happens: {(leg, kind): time}, total time, pumped fluid and battery energy."""
        time, arrivals = 0.0, {}
        state = np.zeros(len(self.ways) + 2)
        while any(at < len(way) for way, at in zip(self.ways, self.at)):
            events = [
                self.ends(leg) for leg, way in enumerate(self.ways) if self.at[leg] < len(way)
            ]
            found = solve_ivp(
                lambda _, state: self.rates(state),
                (time, LONGEST),
                state,
                method="LSODA",
                events=events,
                max_step=0.05,
                **TOLERANCES,
            )
            if found.status != 1:
                raise RuntimeError(f"the gear does not come up: {found.message}")
            time, state = float(found.t[-1]), found.y[:, -1].copy()
            for leg, way in enumerate(self.ways):
                at = self.at[leg]
                # mirror images come to their ends together
                if at < len(way) and state[leg] >= way[at].extent * (1 - 1e-9):
                    arrivals[leg, way[at].kind] = time
                    self.at[leg], state[leg] = at + 1, 0.0
        return {
            "arrivals": arrivals,
            "time": time,
            "pumped": float(state[-2]),
            "battery": float(state[-1]) * 1e6,
        }

    def ends(self, leg):
        """Event: the leg at the end of its stage."""
        extent = self.ways[leg][self.at[leg]].extent

        def left(_, state):
            return state[leg] - extent

        left.terminal, left.direction = True, 1.0
        return left
