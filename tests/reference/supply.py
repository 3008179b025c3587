"""A gear that goes up or down on one source, from this reference's own statics.

Each leg is a chain of stages (ways.py). At every instant the source (sources.py) says at which manifold
pressure it gives what the legs take through their orifices; scipy's solve_ivp (LSODA) follows the fluid from stage end to stage end. With electric actuators the
strokes take the place of the fluid, and one battery that of the manifold. Held against
`against_time.cycle` by compare_supply.py.
"""

import collections

import numpy as np
from scipy.integrate import solve_ivp

from curves import Curve
from sources import source_of
from ways import Stage, stages_of, swing_efforts, swing_path

TOLERANCES = {"rtol": 1e-9, "atol": 1e-13}
# A gear still moving after this stalls for what is compared here [s].
LONGEST = 900.0


class Moving:
    """A gear on its way: state is what each leg has taken in its stage, then the budgets."""

    # what is summed up beside the legs
    budgets = ()

    def __init__(self, ways):
        self.ways = ways
        self.at = [0] * len(ways)

    def solve(self):
        """What happens: {(leg, kind): time}, total time, what the stages try, the budgets by name."""
        time, arrivals = 0.0, {}
        state = np.zeros(len(self.ways) + len(self.budgets))
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
                max_step=0.5,
                **TOLERANCES,
            )
            if found.status != 1:
                raise RuntimeError(f"the gear does not arrive: {found.message}")
            time, state = float(found.t[-1]), found.y[:, -1].copy()
            for leg, way in enumerate(self.ways):
                at = self.at[leg]
                # mirror images come to their ends together
                if at < len(way) and state[leg] >= way[at].extent * (1 - 1e-9):
                    arrivals[leg, way[at].kind] = time
                    self.at[leg], state[leg] = at + 1, 0.0
        sums = {name: state[len(self.ways) + at] * scale
                for at, (name, scale) in enumerate(self.budgets)}
        has = collections.Counter(what for way in self.ways for stage in way for what in stage.has())
        return {"arrivals": arrivals, "time": time, "has": has, **sums}

    def ends(self, leg):
        """Event: the leg at the end of its stage."""
        extent = self.ways[leg][self.at[leg]].extent

        def left(_, state):
            return state[leg] - extent

        left.terminal, left.direction = True, 1.0
        return left

    def now(self, state):
        """(stage, load) of every leg; None of one that has arrived."""
        return [
            (way[at], way[at].load(x)) if at < len(way) else None
            for way, at, x in zip(self.ways, self.at, state)
        ]


class OnFluid(Moving):
    """Hydraulic."""

    # joules beside litres: one tolerance for all
    budgets = (("pumped", 1.0), ("drawn", 1.0), ("relieved", 1.0), ("stored", 1.0), ("battery", 1e6))

    def __init__(self, gear, down, paths):
        super().__init__(
            [stages_of(gear, leg, down, path) for leg, path in zip(gear["legs"], paths)]
        )
        self.source = source_of(gear["supply"])

    def rates(self, state):
        """Rates of the fluid of every leg and of the budgets."""
        now = self.now(state)

        def flows(pressure):
            return [0.0 if leg is None else leg[0].flow(pressure, leg[1]) for leg in now]

        stored = getattr(self.source, "first", 0.0) + state[len(self.ways) + 3]
        pressure, pumped, drawn, relieved = self.source.stand(lambda p: sum(flows(p)), stored)
        into = flows(pressure)
        gained = pumped + drawn - relieved - sum(into)
        power = self.source.power(pressure) * 1e-6
        return np.array([*into, pumped, drawn, relieved, gained, power])


class OnMotors(Moving):
    """An electric actuator on every leg: strokes [m] in the place of fluid."""

    budgets = (("battery", 1e6), ("given", 1e6))

    def __init__(self, gear, down, paths):
        battery = gear["supply"]["battery"]
        self.open = battery["open_circuit_v"]
        self.ohms = battery["internal_ohm"] + battery["wires_ohm"]
        self.motors = [leg["drive"]["electric"] for leg in gear["legs"]]
        ways = []
        for leg, path in zip(gear["legs"], paths):
            pieces, _ = swing_efforts(path, leg, down)
            ways.append([Stage("swing_done", pieces[-1][0][-1], Curve(pieces), None)])
        super().__init__(ways)

    def rates(self, state):
        """Rates of the stroke of every leg and of the budgets."""
        pushed = [
            None if leg is None else (motor, max(leg[1], 0.0))
            for leg, motor in zip(self.now(state), self.motors)
        ]

        def amps(leg):
            motor, force = leg
            rise = (motor["locked_a"] - motor["idle_a"]) / motor["stall_force_n"]
            return motor["idle_a"] + rise * force

        current = sum(amps(leg) for leg in pushed if leg is not None)
        volts = self.open - self.ohms * current
        speeds = []
        for leg in pushed:
            if leg is None:
                speeds.append(0.0)
                continue
            motor, force = leg
            share = volts / motor["motor_v"] - force / motor["stall_force_n"]
            if share <= 0.0:
                raise RuntimeError("an actuator stalls, which is not compared here")
            speeds.append(motor["free_speed_m_s"] * share)
        given = sum(leg[1] * speed for leg, speed in zip(pushed, speeds) if leg is not None)
        return np.array([*speeds, self.open * current * 1e-6, given * 1e-6])


def run(gear):
    """What happens to a gear: (on its way up, on its way down)."""
    electric = gear["supply"].get("source") == "electric_actuators"
    paths = [swing_path(gear, leg) for leg in gear["legs"]]
    kind = OnMotors if electric else OnFluid
    return tuple(kind(gear, down, paths).solve() for down in (False, True))
