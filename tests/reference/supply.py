"""A gear that goes up or down on one source, from this reference's own statics.

Each leg is a chain of stages (ways.py, legs.py). At every instant the source (sources.py) says at which
manifold pressure it gives what the legs take through their orifices; scipy's solve_ivp (LSODA) follows
the fluid from one place that a leg comes to to the next. With electric actuators the strokes take the
place of the fluid, and one battery that of the manifold. Held against `against_time.cycle` by
compare_supply.py.
"""

import collections

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

import stalls
from legs import OnItsWay
from sources import source_of
from ways import stages_of, swing_efforts, swing_path, swing_stage

TOLERANCES = {"rtol": 1e-9, "atol": 1e-13}
# Longest step: loads have jumps [s].
LONGEST_STEP = 0.5
# No gear takes as long [s].
LONGEST = 3600.0
# What moves at less than this share of its free flow or speed stands, as the program documents [1].
SLOWEST = 1e-3


# Ends of a way at which legs may stand that are not told off by their switches.
STANDING = ("stalled", "pressure_switch")


class NothingMoves(Exception):
    """The source is too weak for the least loaded leg: carries the least load and what it makes."""


class Moving:
    """A gear on its way: the state is what each leg has taken in its stage, then the budgets."""

    # what is summed up beside the legs: names and the unit that makes all of a size
    budgets = ()

    def __init__(self, gear, legs):
        self.legs = legs
        self.time = 0.0
        self.state = np.array([leg.begins for leg in legs] + [0.0] * len(self.budgets))
        # pressure at which the pump stops [Pa], absent where the position switches stop it
        self.set = gear["supply"].get("pressure_switch_pa")
        self.breaker = gear["supply"].get("battery", {}).get("breaker_a")
        self.largest = None
        self.events = []
        self.end = None

    def solve(self):
        """What happens, as a dict: how the way ends and when, events {(leg, kind): time}, stalls, what
        the stages try, and the budgets by name."""
        self.starts()
        self.arrive()
        self.watch()
        while self.end is None:
            marks = [self.arrives(number) for number, leg in enumerate(self.legs) if leg.now]
            levels = self.levels()
            found = solve_ivp(
                lambda _, state: self.rates(state),
                (self.time, LONGEST),
                self.state,
                method="LSODA",
                events=[rising(level) for _, level in levels] + marks,
                max_step=LONGEST_STEP,
                **TOLERANCES,
            )
            if found.status != 1:
                raise RuntimeError(f"the gear comes to no end: {found.message}")
            self.time, self.state = float(found.t[-1]), found.y[:, -1].copy()
            self.draw([self.current(state) for state in found.y.T])
            for (kind, _), times in zip(levels, found.t_events):
                if len(times) > 0:
                    self.passes(kind)
            self.arrive()
            self.watch()
        return self.told()

    def levels(self):
        """[(kind of event, value of the state)]: it happens where the value rises through nothing."""
        found = [("stalled", lambda state: SLOWEST - self.pace(state))]
        if self.breaker is not None and (None, "breaker_passed") not in dict(self.events):
            if self.current(self.state) is not None:
                found.append(("breaker_passed", lambda state: self.current(state) - self.breaker))
        return found

    def passes(self, kind):
        """Lets happen what a level brings about."""
        if self.end is not None:
            return
        if kind != "stalled":
            self.tell(None, kind)
            self.end = "pressure_switch" if kind == "pressure_switch" else None
            return
        for number, leg in enumerate(self.legs):
            if leg.now:
                self.tell(number, kind)
        self.end = "stalled"

    def tell(self, leg, kind):
        """Notes an event, of a leg or of the supply."""
        self.events.append(((leg, kind), self.time))

    def draw(self, currents):
        """Keeps the largest current."""
        known = [one for one in (self.largest, *currents) if one is not None]
        self.largest = max(known, default=None)

    def told(self):
        """What has happened."""
        sums = {
            name: self.state[len(self.legs) + at] * unit
            for at, (name, unit) in enumerate(self.budgets)
        }
        stages = [stage for leg in self.legs for stage in leg.stages]
        short = [
            self.stands(number, leg, self.state[number])
            for number, leg in enumerate(self.legs)
            if leg.now
        ]
        return {
            "end": self.end,
            "time": self.time,
            "events": dict(self.events),
            "stalls": sorted(short, key=lambda one: -one.lack) if self.end in STANDING else [],
            "largest_current": self.largest,
            "has": collections.Counter(what for stage in stages for what in stage.has()),
            "swept": sum(leg.swept(x) for leg, x in zip(self.legs, self.state)),
            **sums,
        }

    def arrives(self, number):
        """Event: a leg at its next place."""
        place = self.legs[number].next()

        def left(_, state):
            return state[number] - place

        left.terminal, left.direction = True, 1.0
        return left

    def arrive(self):
        """Lets happen what the legs have come to."""
        if self.end is not None:
            return
        for number, leg in enumerate(self.legs):
            kinds, self.state[number] = leg.arrive(self.state[number])
            for kind in kinds:
                self.tell(number, kind)
        home = not any(leg.now for leg in self.legs)
        if self.set is None and all(leg.wants_no_more() for leg in self.legs):
            self.tell(None, "switches_stop")
            self.end = "complete" if home else "switched_off"
        elif home:
            self.stop()
            self.end = "complete"

    def watch(self):
        """Lets happen what a change of the loads has brought about at once."""
        if self.end is None:
            self.draw([self.current(self.state)])
            for kind, level in self.levels():
                if level(self.state) > 0.0:
                    self.passes(kind)

    def now(self, state):
        """(stage, load) of every leg; None of one that has arrived."""
        return [
            (leg.now, leg.now.load(x)) if leg.now else None for leg, x in zip(self.legs, state)
        ]


def rising(level):
    """Event: a value of the state rises through nothing."""

    def value(_, state):
        return level(state)

    value.terminal, value.direction = True, 1.0
    return value


class OnFluid(Moving):
    """Hydraulic."""

    # joules beside litres: one tolerance for all
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
        if self.set is not None:
            found.insert(0, ("pressure_switch", lambda state: self.stand(state)[0][0] - self.set))
        return found

    def current(self, state):
        """Current from the battery [A]; None without a motor."""
        return self.source.current(self.stand(state)[0][0])

    def stop(self):
        """All legs stand at their ends: the pressure rises at once to what stops the pump, or, where
        it makes no more than its switch asks for, it runs on."""
        reached = min(self.source.most, self.set)
        current = self.source.current(reached)
        self.draw([current])
        passed = dict(self.events).get((None, "breaker_passed")) is not None
        if current is not None and self.breaker is not None and current > self.breaker and not passed:
            self.tell(None, "breaker_passed")
        self.tell(None, "pressure_switch" if self.source.most >= self.set else "runs_on")

    def starts(self):
        """Refuses a source that cannot move the least loaded leg."""
        least = min(leg.now.load(leg.begins) for leg in self.legs if leg.now)
        if least >= self.source.most:
            raise NothingMoves(least, self.source.most)

    def stored(self, state):
        """Fluid in the accumulator [m3]."""
        return getattr(self.source, "first", 0.0) + state[len(self.legs) + 3]

    def stand(self, state):
        """(manifold as the source says, flow and load of each leg)."""
        now = self.now(state)

        def flows(pressure):
            return [0.0 if leg is None else leg[0].flow(pressure, leg[1]) for leg in now]

        manifold = self.source.stand(lambda p: sum(flows(p)), self.stored(state))
        return manifold, flows(manifold[0]), [0.0 if leg is None else leg[1] for leg in now]

    def rates(self, state):
        """Rates of the fluid of every leg and of the budgets."""
        (pressure, pumped, drawn, relieved), into, loads = self.stand(state)
        gained = pumped + drawn - relieved - sum(into)
        carried = sum(flow * load for flow, load in zip(into, loads))
        powers = np.array([
            *self.source.power(pressure),
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
            legs.append(OnItsWay(leg, [swing_stage(path, pieces, 1.0, None, down)], down))
        super().__init__(gear, legs)

    def starts(self):
        """Refuses a battery on which no actuator starts even at its open-circuit voltage."""
        lacks = []
        for leg, motor in zip(self.legs, self.motors):
            if leg.now:
                most = motor["stall_force_n"] * self.open / motor["motor_v"]
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

    def stands(self, number, leg, stroke):
        """The Stall of a leg."""
        return stalls.on_motor(number, leg, stroke, self.motors[number], self.open, self.ohms)


def run(gear):
    """What happens to a gear: (on its way up, on its way down)."""
    electric = gear["supply"].get("source") == "electric_actuators"
    paths = [swing_path(gear, leg) for leg in gear["legs"]]
    kind = OnMotors if electric else OnFluid
    return tuple(kind(gear, down, paths).solve() for down in (False, True))
