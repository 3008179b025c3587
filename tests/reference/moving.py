"""A gear on its way: from one place that a leg comes to to the next, by scipy's solve_ivp (LSODA).

What drives it says how fast each leg goes (supply.py).
"""

import collections

import numpy as np
from scipy.integrate import solve_ivp

TOLERANCES = {"rtol": 1e-9, "atol": 1e-13}
# No step takes a leg further than this share of its swing, however fast it may go there [1], nor longer
# than that [s]: a short rise of a load must not be stepped over.
LONGEST_SHARE, LONGEST_STEP = 1 / 60, 0.5
# No gear takes as long [s].
LONGEST = 3600.0
# Nor does one come to so many places.
MOST_PIECES = 200
# What moves at less than this share of its free flow or speed stands, as the program documents [1].
SLOWEST = 1e-3

# Ends of a way at which legs may stand that are not told off by their switches.
STANDING = ("stalled", "pressure_switch")


class Moving:
    """A gear on its way: the state is what each leg has taken in its stage, then the budgets."""

    # what is summed up beside the legs: names and the unit that makes all of a size
    budgets = ()

    def __init__(self, gear, legs):
        self.legs = legs
        self.time = 0.0
        self.state = np.array([leg.begins for leg in legs] + [0.0] * len(self.budgets))
        # pressure at which the pump stops [Pa], absent where the position switches stop it
        source = gear["supply"].get("source", "constant_pressure")
        pumped = "motor_pump" in source or "hand_pump" in source
        self.set = gear["supply"].get("pressure_switch_pa") if pumped else None
        # nothing stops a hand or a constant pressure at the ends of the ways
        self.by_position = "motor_pump" in source or source == "electric_actuators"
        # time at which no leg has any way left, while an accumulator is filled again
        self.moved = None
        self.breaker = gear["supply"].get("battery", {}).get("breaker_a")
        self.largest = None
        # kinds of the levels that the last piece has ended at
        self.passed = []
        self.events = []
        self.end = None

    def solve(self):
        """What happens, as a dict: how the way ends and when, events {(leg, kind): time}, stalls, what
        the stages try, and the budgets by name."""
        self.starts()
        self.arrive()
        self.watch()
        for _ in range(MOST_PIECES):
            if self.end is not None:
                return self.told()
            marks = [self.arrives(number) for number, leg in enumerate(self.legs) if leg.now]
            self.settle()
            levels = self.levels()
            found = solve_ivp(
                lambda _, state: self.rates(state),
                (self.time, LONGEST),
                self.state,
                method="LSODA",
                events=[rising(level) for _, level in levels] + marks,
                max_step=self.longest_step(),
                **TOLERANCES,
            )
            if found.status != 1:
                raise RuntimeError(f"the gear comes to no end: {found.message}")
            self.time, self.state = float(found.t[-1]), found.y[:, -1].copy()
            self.draw([self.current(state) for state in found.y.T])
            self.passed = [kind for (kind, _), at in zip(levels, found.t_events) if len(at) > 0]
            for kind in self.passed:
                self.passes(kind)
            self.arrive()
            self.watch()
        raise RuntimeError("the gear comes to too many places")

    def longest_step(self):
        """Longest time step [s]."""
        rates = [
            self.fastest(number, leg.now) / leg.now.extent
            for number, leg in enumerate(self.legs)
            if leg.now and leg.now.kind == "swing"
        ]
        return 1.0 / max(1.0 / LONGEST_STEP, max(rates, default=0.0) / LONGEST_SHARE)

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
        if self.moved is not None and self.fills(kind):
            return
        if kind != "stalled":
            if (None, kind) not in dict(self.events):
                self.tell(None, kind)
            self.end = "pressure_switch" if kind == "pressure_switch" else None
            return
        for number, leg in enumerate(self.legs):
            if leg.now:
                self.tell(number, kind)
        self.stall()
        self.end = "stalled"

    def fills(self, _):
        """Lets a level end the filling of an accumulator; whether it does."""
        return False

    def fills_on(self):
        """Whether an accumulator is filled when all legs are at their ends."""
        return False

    def stall(self):
        """What the source does when nothing moves any more."""

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
            "time": self.time if self.moved is None else self.moved,
            "refilled": None if self.moved is None else self.time,
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
        if self.end is not None or self.moved is not None:
            return
        for number, leg in enumerate(self.legs):
            kinds, self.state[number] = leg.arrive(self.state[number])
            for kind in kinds:
                self.tell(number, kind)
        home = not any(leg.now for leg in self.legs)
        if self.set is None and self.by_position and all(leg.wants_no_more() for leg in self.legs):
            self.tell(None, "switches_stop")
            self.end = "complete" if home else "switched_off"
        elif home and self.fills_on():
            self.moved = self.time
        elif home:
            self.stop()
            self.end = "complete"

    def settle(self):
        """Lets the source find out how it stands."""

    def watch(self):
        """Lets happen what a change of the loads has brought about at once."""
        if self.end is None:
            self.settle()
            self.draw([self.current(self.state)])
            for kind, level in self.levels():
                if level(self.state) > 0.0:
                    self.passes(kind)

    def now(self, state):
        """(stage, load) of every leg; None of one that has arrived."""
        return [
            (leg.now, max(leg.now.load(x), leg.now.lowest)) if leg.now else None for leg, x in zip(self.legs, state)
        ]


def rising(level):
    """Event: a value of the state rises through nothing."""

    def value(_, state):
        return level(state)

    value.terminal, value.direction = True, 1.0
    return value
