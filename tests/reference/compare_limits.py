"""How far a fall can be driven: the limits that the program names, each held between two falls of this
reference, one a little short of the limit that reaches the lock and one a little beyond that does not.
"""

import copy

from fall import Falling
from fall_pins import Binds, RubbingFall

# Relative distance of the two falls from the limit: what is documented for a limit, without and with
# pins that rub, and half as much again.
BESIDE, BESIDE_WITH_PINS = 1.5e-3, 3e-2
LIMITS = ("airspeed", "friction_factor", "seal_friction_limit_n")


def limit_of(found, which):
    """A limit that the program names; None where it names none."""
    value = found[which]
    if which != "airspeed":
        return value
    # otherwise there is none, or none that was found
    return value["up_to"]["airspeed_m_s"] if isinstance(value, dict) and "up_to" in value else None


def changed(gear, leg, which, value):
    """Gear and leg at a value of what is limited."""
    gear, leg = copy.deepcopy(gear), copy.deepcopy(leg)
    if which == "airspeed":
        gear["conditions"]["airspeed_m_s"] = value
    elif which == "friction_factor":
        leg["actuator"]["seal_friction_n"] *= value
        for pin in leg.get("pins", {}).values():
            for key in ("friction", "couple_n_m"):
                if key in pin:
                    pin[key] *= value
    else:
        leg["actuator"]["seal_friction_n"] = value
    return gear, leg


def reaches(gear, leg, stands, slowly):
    """Whether the leg falls to its lock; `slowly`: or is still on its way there after a minute, as one
    is that an orifice slows to a crawl just short of its limit. Pins that bind hold it. At up it has stood
    with the friction of the leg `stands`."""
    try:
        outcome = (RubbingFall if "pins" in leg else Falling)(gear, leg, stands).solve()["outcome"]
    except Binds:
        return False
    return outcome == "reaches_lock" or (slowly and outcome == "creeps")


def compare_limit(tally, gear, leg, found, number):
    """Holds one of the limits of a fall that reaches the lock, another one from leg to leg; its name,
    or None where none of them is named."""
    turned = LIMITS[number % len(LIMITS) :] + LIMITS[: number % len(LIMITS)]
    named = [(which, limit_of(found, which)) for which in turned]
    which, limit = next(((which, limit) for which, limit in named if limit is not None), (None, None))
    if which is None:
        return None
    beside = BESIDE_WITH_PINS if "pins" in leg else BESIDE
    for share, wanted in ((1.0 - beside, True), (1.0 + beside, False)):
        side = "short of" if wanted else "beyond"
        lands = reaches(*changed(gear, leg, which, share * limit), leg, slowly=wanted)
        tally.same(f"reaches the lock just {side} its {which}", lands, wanted)
    return f"limited by {which}"
