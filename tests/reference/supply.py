"""A gear that goes up or down on one source, from this reference's own statics.

Each leg is a chain of stages (ways.py, legs.py). At every instant the source (sources.py) says at which
manifold pressure it gives what the legs take through their orifices; scipy's solve_ivp (LSODA) follows
the fluid from one place that a leg comes to to the next. With electric actuators the strokes take the
place of the fluid, and one battery that of the manifold. Held against `against_time.cycle` by
compare_supply.py.
"""

import numpy as np
from scipy.optimize import brentq

import stalls
from legs import OnItsWay
from moving import Moving
from sources import Accumulator, MotorPump, Switched, source_of
from stood import stood
from ways import stages_of, stood_end, swing_efforts, swing_path, swing_stage


class NothingMoves(Exception):
    """The source is too weak for the least loaded leg: carries the least load and what it makes."""


class OnFluid(Moving):
    """Hydraulic."""

    # joules beside liters: one tolerance for all
    budgets = (
        ("pumped", 1.0), ("drawn", 1.0), ("relieved", 1.0), ("stored", 1.0), ("battery", 1e6),
        ("wires", 1e6), ("given", 1e6), ("gas", 1e6), ("loads", 1e6), ("lines", 1e6),
    )

    def __init__(self, gear, down, paths):
        ways = [stages_of(gear, leg, down, path) for leg, path in zip(gear["legs"], paths)]
        super().__init__(gear, [OnItsWay(leg, way, down) for leg, way in zip(gear["legs"], ways)])
        self.source = source_of(gear["supply"])

    def levels(self):
        """Beside what every gear has, the pressure switch, told first."""
        found = super().levels()
        for kind, change in getattr(self.source, "changes", list)():
            found.append((kind, self.of_source(change)))
        if self.set is not None and not isinstance(self.source, Accumulator):
            found.insert(0, ("pressure_switch", lambda state: self.stand(state)[0][0] - self.set))
        return found

    def fastest(self, _, stage):
        """More than the flow into a leg ever is in a stage [m3/s]."""
        source = self.source
        if source.free is None or isinstance(source, Accumulator):
            return stage.flow(source.most, stage.least)
        # all that the pump gives, or with its weight as it takes no more than that
        return max(source.free, stage.flow(source.least, stage.least))

    def of_source(self, change):
        """A value of the state, of what the legs take and the fluid in the accumulator."""
        return lambda state: change(self.taken(state), self.stored(state))

    def settle(self):
        """Lets the accumulator find out how it stands."""
        if isinstance(self.source, Accumulator):
            stored = self.source.settle(self.taken(self.state), self.stored(self.state), self.passed)
            self.state[len(self.legs) + 3] = stored - self.source.first

    def current(self, state):
        """Current from the battery [A], no more than what makes the switch; None without a motor."""
        pressure, pumped = self.stand(state)[0][:2]
        if self.set is not None and not isinstance(self.source, Accumulator):
            pressure = min(pressure, self.set)
        current = self.source.current(pressure)
        return None if current is None else self.on(pumped) * current

    def on(self, pumped):
        """Share of the time in which the pump is on [1]."""
        return self.source.on(pumped) if isinstance(self.source, Accumulator) else 1.0

    def stall(self):
        """Nothing moves any more; a motor pump runs on, but for one that a switch stops."""
        if isinstance(getattr(self.source, "pump", self.source), MotorPump):
            self.tell(None, "runs_on")

    def fills_on(self):
        """A pump that a pressure switch stops fills the accumulator until then."""
        source = self.source
        if self.set is None or not isinstance(source, Accumulator) or source.pump is None:
            return False
        return source.mode in ("holds", "empty") and source.precharge < source.most

    def fills(self, kind):
        """Full, or at what the pump makes against it."""
        if kind not in ("accumulator_full", "relief_open", "stalled"):
            return False
        if kind != "stalled":
            self.tell(None, kind)
        if kind == "accumulator_full" and isinstance(self.source.pump, Switched):
            self.tell(None, "pressure_switch")
        elif isinstance(getattr(self.source.pump, "pump", self.source.pump), MotorPump):
            self.tell(None, "runs_on")
        self.end = "complete"
        return True

    def stop(self):
        """All legs stand at their ends: the pressure rises at once to what stops the pump, or, where
        it makes no more than its switch asks for, it runs on."""
        if self.set is None or getattr(self.source, "kept_off", False):
            return
        reached = min(self.source.most, self.set)
        current = self.source.current(reached)
        self.draw([current])
        passed = dict(self.events).get((None, "breaker_passed")) is not None
        if current is not None and self.breaker is not None and current > self.breaker and not passed:
            self.tell(None, "breaker_passed")
        self.tell(None, "pressure_switch" if self.source.most >= self.set else "runs_on")

    def starts(self):
        """Refuses a source that cannot move the least loaded leg."""
        most = getattr(self.source, "most_at_first", self.source.most)
        for leg in self.legs:
            leg.stays_under(most)
        least = min(leg.now.load(leg.begins) for leg in self.legs if leg.now)
        if least >= most:
            raise NothingMoves(least, most)

    def stored(self, state):
        """Fluid in the accumulator [m3]."""
        return getattr(self.source, "first", 0.0) + state[len(self.legs) + 3]

    def taken(self, state):
        """What the legs take at a pressure [m3/s]."""
        now = [leg for leg in self.now(state) if leg]
        return lambda pressure: sum(stage.flow(pressure, load) for stage, load in now)

    def stand(self, state):
        """(manifold as the source says, flow and load of each leg)."""
        manifold = self.source.stand(self.taken(state), self.stored(state))
        now = self.now(state)
        flows = [leg[0].flow(manifold[0], leg[1]) if leg else 0.0 for leg in now]
        return manifold, flows, [leg[1] if leg else 0.0 for leg in now]

    def rates(self, state):
        """Rates of the fluid of every leg and of the budgets."""
        (pressure, pumped, drawn, relieved), into, loads = self.stand(state)
        gained = pumped + drawn - relieved - sum(into)
        carried = sum(flow * load for flow, load in zip(into, loads))
        powers = np.array([
            *(self.on(pumped) * power for power in self.source.power(pressure)),
            pressure * pumped,
            -pressure * gained,
            carried,
            pressure * sum(into) - carried,
        ])
        return np.array([*into, pumped, drawn, relieved, gained, *powers * 1e-6])

    def pace(self, state):
        """Flow into legs and accumulator as a share of the free one [1]."""
        (_, pumped, drawn, relieved), into, _ = self.stand(state)
        gained = pumped + drawn - relieved - sum(into)
        free = self.source.free
        if free is None:
            most = self.source.most
            free = sum(leg.now.flow(most, 0.0) for leg in self.legs if leg.now)
        return (sum(into) + max(gained, 0.0)) / free

    def told(self):
        """What has happened, with the energy that goes over the relief valve."""
        found = super().told()
        return found | {"relief": found["relieved"] * self.source.most}

    def stands(self, number, leg, fluid):
        """The Stall of a leg."""
        available, stopped = self.source.left(self.stored(self.state)), self.end == "pressure_switch"
        if stopped:
            available = min(available, self.set)
        return stalls.on_fluid(number, leg, fluid, self.source, available, stopped)


class OnMotors(Moving):
    """An electric actuator on every leg: strokes [m] in the place of fluid."""

    budgets = (("battery", 1e6), ("wires", 1e6), ("given", 1e6))

    def __init__(self, gear, down, paths):
        battery = gear["supply"]["battery"]
        self.open = battery["open_circuit_v"]
        self.ohms = battery["internal_ohm"] + battery["wires_ohm"]
        self.motors = [leg["drive"]["electric"] for leg in gear["legs"]]
        legs = []
        for leg, path in zip(gear["legs"], paths):
            pieces, _ = swing_efforts(path, leg, down)
            stage, still = swing_stage(path, pieces, 1.0, None, down), stood(leg)
            ends, _ = swing_efforts(stood_end(path, gear, still, down), still, down)
            stage.against = float(ends[0][1][0])
            legs.append(OnItsWay(leg, [stage], down))
        super().__init__(gear, legs)

    def starts(self):
        """Refuses a battery on which no actuator starts even at its open-circuit voltage."""
        lacks = []
        for leg, motor in zip(self.legs, self.motors):
            if leg.now:
                most = motor["stall_force_n"] * self.open / motor["motor_v"]
                leg.stays_under(most)
                lacks.append((leg.now.load(leg.begins) - most, most))
        lack, most = min(lacks)
        if lack >= 0.0:
            raise NothingMoves(lack + most, most)

    def bus(self, state):
        """(current [A], speed of each actuator [m/s], its force [N]): the battery gives what the motors
        take. One whose load is too much takes what the force that it can make needs."""
        forces = [None if leg is None else max(leg[1], 0.0) for leg in self.now(state)]
        pushed = [(m, f) for m, f in zip(self.motors, forces) if f is not None]

        def current(volts):
            total = 0.0
            for motor, force in pushed:
                share = min(force / motor["stall_force_n"], volts / motor["motor_v"])
                total += motor["idle_a"] + (motor["locked_a"] - motor["idle_a"]) * share
            return total

        volts = brentq(
            lambda v: v + self.ohms * current(v) - self.open, 0.0, self.open, xtol=1e-13, rtol=1e-14
        )
        speeds = []
        for motor, force in zip(self.motors, forces):
            share = 0.0
            if force is not None:
                share = max(volts / motor["motor_v"] - force / motor["stall_force_n"], 0.0)
            speeds.append(motor["free_speed_m_s"] * share)
        return current(volts), speeds, forces

    def fastest(self, number, _):
        """More than the speed of an actuator ever is [m/s]."""
        motor = self.motors[number]
        return motor["free_speed_m_s"] * self.open / motor["motor_v"]

    def current(self, state):
        """Current from the battery [A]."""
        return self.bus(state)[0]

    def rates(self, state):
        """Rates of the stroke of every leg and of the budgets."""
        current, speeds, forces = self.bus(state)
        given = sum(force * speed for force, speed in zip(forces, speeds) if force is not None)
        powers = np.array([self.open * current, self.ohms * current**2, given])
        return np.array([*speeds, *powers * 1e-6])

    def pace(self, state):
        """Largest speed as a share of the free one [1]."""
        _, speeds, _ = self.bus(state)
        return max(speed / motor["free_speed_m_s"] for speed, motor in zip(speeds, self.motors))

    def stands(self, number, *_):
        """The Stall of a leg."""
        standing = {
            at: (one, self.state[at], self.motors[at]) for at, one in enumerate(self.legs) if one.now
        }
        return stalls.on_motor(number, standing, self.open, self.ohms)


def run(gear):
    """What happens to a gear: (on its way up, on its way down), each a NothingMoves where nothing does."""
    electric = gear["supply"].get("source") == "electric_actuators"
    paths = [swing_path(gear, leg) for leg in gear["legs"]]
    kind = OnMotors if electric else OnFluid
    return tuple(solve(kind(gear, down, paths)) for down in (False, True))


def solve(way):
    """What happens on a way, or that nothing moves."""
    try:
        return way.solve()
    except NothingMoves as nothing:
        return nothing
