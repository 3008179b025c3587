"""Friction of a leg that has stood: more to start than to run."""

import copy

# As documented where none is given: seals twice, pins half as much again.
SEALS, PINS = 2.0, 1.5


def stood(leg):
    """The same leg with the friction of what has stood in the place of its running friction."""
    leg = copy.deepcopy(leg)
    actuator = leg["actuator"]
    runs = actuator.get("seal_friction_n", 0.0)
    actuator["seal_friction_n"] = max(runs, actuator.get("seal_break_out_n", SEALS * runs))
    times = max(1.0, leg.get("fall", {}).get("pin_break_out", PINS))
    for pin in leg.get("pins", {}).values():
        for key in ("friction", "couple_n_m"):
            if key in pin:
                pin[key] *= times
    return leg


def begins(stations):
    """{motion: progress of the station at which it begins}: up where the actuator first has the leg, down
    at the end of the way up."""
    loaded = [station["progress"] for station in stations if station["force"] is not None]
    return {"retract": loaded[0] if loaded else None, "extend": 1.0}
