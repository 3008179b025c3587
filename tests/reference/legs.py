"""One leg on its way: the stages it has behind it and the places that it comes to."""

# Share of a stage after which a leg has left its end.
SOON = 1e-6
# Share of a stage within which a place is reached: mirror images come to their ends together.
REACHED = 1e-9


class OnItsWay:
    """A leg that goes through its stages."""

    def __init__(self, leg, stages):
        self.stages = stages
        self.at = 0
        # Fluid in the present stage when the gear is selected, and before it [m3].
        self.begins = 0.0
        self.before = 0.0
        self.first = first_phase(leg, stages)
        # (stage, fluid, kind of event) that lie ahead, in order
        self.ahead = [
            (number, stage.extent, f"{stage.kind}_done") for number, stage in enumerate(stages)
        ]

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
            if kind.endswith("_done"):
                self.at, fluid = self.at + 1, 0.0
        return events, fluid

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


def first_phase(leg, stages):
    """Part of the path of a leg that has not moved: a strut without a jack is part of it as well."""
    up_next = stages[0].travel(0.0) < 0.5
    if up_next and leg["strut"].get("shortening", "none") != "none":
        return "shorten"
    return stages[0].phase(0.0)
