"""One leg on its way: the stages it has behind it, the places that it comes to, its switches."""

from scipy.optimize import brentq

# Share of a stage after which a leg has left its end.
SOON = 1e-6
# Share of a stage within which a place is reached: mirror images come to their ends together.
REACHED = 1e-9
# Where the switches make when the file says nothing: each at the very end.
SWITCHES = {"shortened_at": 1.0, "up_at_travel": 1.0, "down_at_travel": 0.0}


class OnItsWay:
    """A leg that goes through its stages."""

    def __init__(self, leg, stages, down):
        self.stages = stages
        self.at = 0
        self.down = down
        # Fluid in the present stage when the gear is selected, and in all up to there [m3].
        self.begins = 0.0
        self.before = 0.0
        self.first = first_phase(leg, stages, down)
        self.switched = False
        # (stage, fluid, kind of event) that lie ahead, in order
        self.ahead = marks(leg, stages, down)
        travel = leg["drive"].get("start_travel", 0.0)
        if travel > 0.0 and not down:
            self.start_at(travel)

    def start_at(self, travel):
        """Puts a leg that is to go up part of the way; what lies behind it has been."""
        self.at = len(self.stages) - 1
        self.begins = fluid_at(self.now, travel)
        self.before = self.begins + sum(stage.extent for stage in self.stages[: self.at])
        behind = [
            mark for mark in self.ahead
            if not mark[2].endswith("_done") and mark[:2] <= (self.at, self.begins)
        ]
        self.switched = any(kind == "up_made" for _, _, kind in behind)
        self.ahead = [
            mark for mark in self.ahead if mark not in behind and mark[0] == self.at
        ]

    def stays_under(self, most):
        """Leaves it where it has stood if the most of its source does not start it there."""
        for at, stage in enumerate(self.stages):
            if self.begins == 0.0 or at != self.at:
                stage.stays_under(most)

    @property
    def now(self):
        """The present stage; None of a leg that is at the end of its way."""
        return self.stages[self.at] if self.at < len(self.stages) else None

    def next(self):
        """Fluid in the present stage at the next place."""
        return self.ahead[0][1]

    def arrive(self, fluid):
        """(events of the places that are reached, fluid in what is then the present stage)."""
        events = []
        while self.ahead:
            stage, place, kind = self.ahead[0]
            if stage != self.at or fluid < place - REACHED * self.now.extent:
                break
            self.ahead.pop(0)
            events.append(kind)
            if kind == ("down_made" if self.down else "up_made"):
                self.switched = True
            if kind.endswith("_done"):
                self.at, fluid = self.at + 1, 0.0
                if self.ahead and self.ahead[0][0] is None:
                    # what happens with the end of the way
                    events.append(self.ahead.pop(0)[2])
        return events, fluid

    def wants_no_more(self):
        """Whether its switch at the end of the way is made; no switch tells that a jack has let its
        strut out, which keeps the pump running."""
        return self.switched and not (self.down and self.now and len(self.stages) > 1)

    def swept(self, fluid):
        """Fluid taken since the gear is selected [m3]."""
        return sum(stage.extent for stage in self.stages[: self.at]) + fluid - self.before

    def has_left(self, fluid):
        """Whether it has moved at all, or did not stand at an end when the gear was selected."""
        return self.before > 0.0 or self.swept(fluid) > 0.0

    def phase(self, fluid):
        """Part of the path where it is."""
        return self.now.phase(fluid) if self.has_left(fluid) else self.first

    def travel(self, fluid):
        """Travel where it is [1]."""
        return self.now.travel(fluid)


def first_phase(leg, stages, down):
    """Part of the path of a leg that has not moved: a strut without a jack is part of it as well."""
    if not down and leg["strut"].get("shortening", "none") != "none":
        return "shorten"
    return stages[0].phase(0.0)


def fluid_at(stage, travel):
    """Fluid of a swing at a travel [m3]."""
    rises = stage.travel(stage.extent) > stage.travel(0.0)
    low, high = (stage.unlocks[1], stage.extent) if rises else (0.0, stage.unlocks[0])

    def past(fluid):
        return stage.travel(fluid) - travel

    if past(low) * past(high) >= 0.0:
        # an end, but for rounding
        return min(low, high, key=lambda end: abs(past(end)))
    return brentq(past, low, high, xtol=1e-18, rtol=1e-14)


def marks(leg, stages, down):
    """[(stage, fluid, kind of event)] all along the way of a leg, in order; last, without a stage, what
    happens with its end."""
    switches = SWITCHES | leg["drive"].get("switches", {})
    found = []
    for number, stage in enumerate(stages):
        soon, end = SOON * stage.extent, stage.extent

        def at(travel, ends, otherwise):
            return otherwise if travel == ends else max(fluid_at(stage, travel), soon)

        if stage.kind == "strut":
            share = switches["shortened_at"]
            place = max((1.0 - share) * end, soon) if down else share * end
            found.append((number, place, "shortened_open" if down else "shortened_made"))
        else:
            leaves, makes = soon, end
            up, locked = switches["up_at_travel"], switches["down_at_travel"]
            if down:
                found.append((number, at(up, 1.0, leaves), "up_open"))
                found.append((number, at(locked, 0.0, makes), "down_made"))
            else:
                found.append((number, at(locked, 0.0, leaves), "down_open"))
                found.append((number, at(up, 1.0, makes), "up_made"))
        found.append((number, end, f"{stage.kind}_done"))
    found.sort(key=lambda mark: (mark[:2], mark[2].endswith("_done")))
    alone = leg["strut"].get("shortening", "none") != "none" and "strut" not in {
        stage.kind for stage in stages
    }
    return [*found, (None, 0.0, "shortened_open")] if alone and down else found
