"""Random legs that an actuator drives all the way up and down, with lines or motor of their own."""

import math
from dataclasses import dataclass

import numpy as np

from compare import first_stop
from draw import draw_leg
from draw_springs import draw_springs
from friction import joints_of
from mechanism import Mechanism, NotClosed
from springs import springs_of, turned
from ways import POSES, swing_efforts, swing_loads, swing_path

# Loads beyond this are not for one pump [Pa].
HIGHEST = 8e6
# Poses of the swing through which a drawn leg is looked at.
GLANCE = 41
# Share of the legs that carry springs, and of those whose pins rub.
SPRUNG, RUBBING = 0.4, 0.4
# Share of the legs that start part of the way up.
START = 0.5
# Share of the lines up that are open.
OPEN = 0.2
# Share of the switches that make early.
EARLY = 0.4


def draw_driven(rng, kind, gear, name):
    """A leg that its actuator drives all the way up and down with a load that one source can have,
    its Path at a glance, and what it asks for."""
    for _ in range(4000):
        leg = draw_leg(rng, *kind, name)
        if leg is None:
            continue
        if leg["brace"] != "none" and "unlocked_by" in leg["brace"].get("folding", {}):
            continue
        if not is_driven(leg):
            continue
        # a leg that touches stops there: times are compared of legs with nothing in their way
        leg.pop("well", None)
        leg["out_of_plane"] = {"own_leg": "none"}
        if rng.random() < SPRUNG:
            leg["springs"] = draw_springs(rng, leg, rng.randint(1, 2))
            if passes_half_turn(leg):
                continue
        if within_reach(gear, leg, swing_path(gear, leg, GLANCE)) is None:
            continue
        if rng.random() < RUBBING:
            leg["pins"] = draw_pins(rng, leg)
        path = swing_path(gear, leg, GLANCE)
        asked = within_reach(gear, leg, path)
        if asked is not None:
            return leg, path, asked
    raise RuntimeError(f"no leg of kind {kind} that a source drives can be drawn")


def is_driven(leg):
    """Whether the actuator drives a leg all the way, without an end of it and without turning back."""
    try:
        mechanism = Mechanism(leg)
        if first_stop(mechanism) is not None:
            return False
    except NotClosed:
        return False
    lengths = [pose.length for phase, _, pose in mechanism.path(POSES) if phase != "shorten"]
    steps = np.diff(lengths) * (lengths[-1] - lengths[0])
    return bool(np.all(steps > -1e-15))


def passes_half_turn(leg):
    """Whether a torsion spring sits at a joint that turns by more than half a turn: what its moment is
    there, program and reference do not say (springs.py counts turns from −π to π)."""
    mechanism = Mechanism(leg)
    poses = [pose for _, _, pose in mechanism.path(GLANCE)]
    for kind, data in springs_of(leg):
        if kind == "torsion":
            turns = [turned(mechanism, pose, data["joint"]) for pose in poses]
            if np.max(np.abs(np.diff(turns))) > math.pi:
                return True
    return False


@dataclass
class Asked:
    """What the swing of a leg asks for, up and down."""

    # Pressures all along it [Pa].
    loads: list
    # Fluid [m3].
    fluids: list


def within_reach(gear, leg, path):
    """What a leg asks for along a Path; None of one that a pump does not drive."""
    if path is None:
        return None
    ways = [swing_loads(path, gear, leg, down)[0] for down in (False, True)]
    loads = [np.concatenate([load for _, load in pieces]) for pieces in ways]
    if any(max(abs(load)) > HIGHEST for load in loads):
        return None
    return Asked(loads, [pieces[-1][0][-1] for pieces in ways])


def draw_pins(rng, leg):
    """Pins that rub, one of them perhaps not."""
    pins = {
        name: {
            "radius_m": round(rng.uniform(0.004, 0.015), 4),
            "friction": round(rng.uniform(0.05, 0.25), 3),
        }
        for name, _, _ in joints_of(Mechanism(leg))
    }
    if rng.random() < 0.3:
        del pins[rng.choice(list(pins))]
    return pins


def draw_orifice(rng):
    """A hole, half of the times with a coefficient of its own."""
    orifice = {"hole_m": round(rng.uniform(0.0007, 0.0015), 5)}
    if rng.random() < 0.5:
        orifice["discharge"] = round(rng.uniform(0.58, 0.7), 3)
    return orifice


def draw_lines(rng, kind, leg, timed):
    """Orifices, and the jack of a strut that shortens before the swing. Lines may be open where the
    source alone says how fast the gear moves."""
    drive = {}
    if not timed or rng.random() > OPEN:
        drive["orifice_up"] = draw_orifice(rng)
    chance = rng.random()
    if chance < 0.6:
        drive["orifice_down"] = draw_orifice(rng)
    elif chance < 0.85:
        # the orifice of the fall stands in
        leg["fall"] = {"return_orifice_m": round(rng.uniform(0.0007, 0.0015), 5)}
        if rng.random() < 0.5:
            leg["fall"]["discharge_coefficient"] = round(rng.uniform(0.6, 0.7), 3)
    if kind[3] == "before_swing":
        drive["jack"] = {
            "area_m2": round(rng.uniform(2e-4, 6e-4), 6),
            "shorten_pa": round(rng.uniform(5e5, 3e6)),
            "lengthen_pa": round(rng.uniform(0.0, 1e6)),
        }
        if rng.random() < 0.4:
            drive["stage_valve_pa"] = round(rng.uniform(5e5, 2e6))
    return drive


def draw_start(rng):
    """Where a leg stands when the gear is selected up: down, or part of the way."""
    if rng.random() > START:
        return {}
    return {"start_travel": round(rng.uniform(0.05, 0.95), 3)}


def draw_switches(rng, drive):
    """Position switches that make before the very end."""
    switches = {}
    if rng.random() < EARLY:
        switches["up_at_travel"] = round(rng.uniform(0.8, 0.995), 3)
    if rng.random() < EARLY:
        switches["down_at_travel"] = round(rng.uniform(0.01, 0.2), 3)
    if rng.random() < EARLY and "jack" in drive:
        switches["shortened_at"] = round(rng.uniform(0.5, 0.95), 3)
    return {"switches": switches} if switches else {}


def draw_electric(rng, path, leg, spare, battery):
    """An actuator that on its battery has so many times the force that its leg asks for; None where a
    weak one would just reach."""
    ways = [swing_efforts(path, leg, down)[0] for down in (False, True)]
    forces = [np.concatenate([force for _, force in pieces]) for pieces in ways]
    most = max(force.max() for force in forces)
    wanted = max(most, 200.0) * spare
    if spare < 1.0 and (most < 200.0 or grazes(forces, wanted)):
        return None
    motor = {
        "free_speed_m_s": round(rng.uniform(0.02, 0.06), 4),
        "motor_v": 12.0,
        "idle_a": round(rng.uniform(1.0, 4.0), 1),
        "locked_a": round(rng.uniform(15.0, 40.0), 1),
    }
    ohms = battery["internal_ohm"] + battery["wires_ohm"]
    volts = battery["open_circuit_v"] - ohms * motor["idle_a"]
    share = volts / (motor["motor_v"] + ohms * (motor["locked_a"] - motor["idle_a"]))
    return {"electric": motor | {"stall_force_n": round(wanted / share, 1)}}


def grazes(loads, level):
    """Whether some loads all but reach a level at their start or where they turn back, so that a little
    more or less of it would move the place of a stall a long way."""
    for load in loads:
        inside = load[1:-1]
        crests = inside[(inside - load[:-2]) * (inside - load[2:]) >= 0.0]
        if np.any(np.abs(np.array([load[0], load[-1], *crests]) / level - 1.0) < 0.06):
            return True
    return False
