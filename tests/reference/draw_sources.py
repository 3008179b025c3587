"""Random sources for drawn gears, as strong or as weak as their legs ask for."""

from draw_driven import grazes


def levels(gear, asked, down):
    """[[pressures that a stage asks for, in the direction of the motion [Pa]]] of every leg."""
    found = []
    for leg, of_leg in zip(gear["legs"], asked):
        swing = of_leg.loads[down]
        stages, drive = [swing], leg["drive"]
        jack = drive.get("jack")
        if jack is not None:
            own = jack["lengthen_pa" if down else "shorten_pa"]
            level = own + gear["supply"]["return_pressure_pa"]
            stages.insert(len(stages) if down else 0, 0.0 * swing[:3] + level)
            if "stage_valve_pa" in drive:
                stages[1] = stages[1].clip(drive["stage_valve_pa"])
        found.append(stages)
    return found


def highest(gear, asked):
    """Largest pressure that any stage of a gear asks for [Pa]."""
    ways = [leg for down in (False, True) for leg in levels(gear, asked, down)]
    return max(1e6, *(stage.max() for leg in ways for stage in leg))


def too_low(rng, gear, asked):
    """A pressure at which a gear starts both ways, but which is too low for one of its legs, and not
    almost enough at any place; None where there is no such."""
    ways = [levels(gear, asked, down) for down in (False, True)]
    stages = [stage for way in ways for leg in way for stage in leg]
    starts = max(min(leg[0][0] for leg in way) for way in ways)
    peak = max(stage.max() for stage in stages)
    low = max(1.3 * starts, 0.3 * peak, 2.0 * gear["supply"]["return_pressure_pa"])
    if peak < 1e6 or low > 0.9 * peak:
        return None
    for _ in range(20):
        level = rng.uniform(low, 0.95 * peak)
        if not grazes(stages, level):
            return level
    return None


def draw_source(rng, kind, gear, asked, number):
    """The source and what belongs to it; None where these legs do not fit it."""
    if kind.endswith("electric actuators"):
        return {"source": "electric_actuators"}
    if "weak" in kind:
        return draw_weak(rng, kind, gear, asked, number)
    peak = highest(gear, asked)
    if kind == "constant pressure":
        return {"available_pressure_pa": round(peak * rng.uniform(1.2, 2.0))}
    if kind.startswith("emptied"):
        return draw_emptied(rng, kind, gear, asked, peak)
    if kind.startswith("filled"):
        return draw_filled(rng, kind, gear, asked, peak)
    if kind.startswith("accumulator above"):
        return draw_above(rng, kind, gear, asked, peak)
    if kind == "pressure switch":
        found = motor_pump(rng, 2.5 * peak, 1.6 * peak)
        # makes on the way, with the last leg at its end, or never
        share = (rng.uniform(0.4, 0.9), rng.uniform(1.2, 1.5), 1.8)[number % 3]
        return found | {"pressure_switch_pa": round(share * peak)}
    if kind == "hand pump":
        return hand_pump(rng, peak * rng.uniform(1.05, 1.5))
    found = {}
    if kind.startswith("accumulator"):
        # of all swings up and down: the struts take little
        fluid = swept(gear, asked)
        exponent = round(rng.uniform(1.1, 1.5), 2)
        precharge, charged = peak * 1.15, peak * rng.uniform(1.8, 2.2)
        held = 1.0 - (precharge / charged) ** (1.0 / exponent)
        volume = rng.uniform(0.7, 1.5) * fluid / held
        found |= accumulator(volume, precharge, charged, exponent)
    if kind.endswith("pump"):
        # beside an accumulator neither valve nor stall is reached
        spare = 3.0 if "accumulator" in found else 1.0
        found |= motor_pump(rng, peak * spare * rng.uniform(1.8, 2.5), peak * spare * 1.6)
        if number % 2 and spare == 1.0:
            # the valve of the odd ones opens while the last leg comes up
            pump = found["source"]["motor_pump"]
            pump["relief_pressure_pa"] = round(1.05 * peak)
            pump["free_flow_m3_s"] = round(2.0 * pump["free_flow_m3_s"], 7)
    return found


def draw_emptied(rng, kind, gear, asked, peak):
    """An accumulator with too little fluid for a way, above what most of the loads ask for."""
    exponent = round(rng.uniform(1.1, 1.5), 2)
    precharge, charged = peak * rng.uniform(0.5, 1.1), peak * rng.uniform(1.5, 2.0)
    held = 1.0 - (precharge / charged) ** (1.0 / exponent)
    volume = rng.uniform(0.15, 0.35) * swept(gear, asked) / held
    found = accumulator(volume, precharge, charged, exponent)
    if kind.endswith("alone"):
        return found
    if kind.endswith("hand pump"):
        return found | hand_pump(rng, 1.1 * charged)
    return found | motor_pump(rng, 2.0 * charged, rng.uniform(1.1, 1.3) * charged)


def draw_filled(rng, kind, gear, asked, peak):
    """A pump that gives more than the last legs take, and soon fills its accumulator."""
    precharge, charged = 0.7 * peak, peak * rng.uniform(1.05, 1.2)
    most = rng.uniform(1.02, 1.1) * charged
    volume = rng.uniform(0.5, 1.0) * swept(gear, asked)
    found = accumulator(volume, precharge, charged, round(rng.uniform(1.1, 1.5), 2))
    if kind.endswith("hand pump"):
        found |= hand_pump(rng, most)
        hand = found["source"]["hand_pump"]
        hand["stroke_volume_m3"] = round(1.2e-4 * hand["stroke_time_s"], 8)
        return found
    if kind.endswith("switched pump"):
        found |= motor_pump(rng, 3.0 * most, 2.0 * most) | {"pressure_switch_pa": round(most)}
    else:
        found |= motor_pump(rng, 3.0 * most, most)
    found["source"]["motor_pump"]["free_flow_m3_s"] = round(rng.uniform(1.5e-4, 2.5e-4), 7)
    return found


def draw_above(rng, kind, gear, asked, peak):
    """An accumulator charged above what its pump makes, or above the switch that stops it."""
    most = peak * rng.uniform(1.1, 1.3)
    charged, exponent = most * rng.uniform(1.1, 1.3), round(rng.uniform(1.1, 1.5), 2)
    volume = rng.uniform(0.7, 1.5) * swept(gear, asked)
    found = accumulator(volume, 0.7 * peak, charged, exponent)
    if kind.endswith("hand pump"):
        return found | hand_pump(rng, most)
    return found | motor_pump(rng, 3.0 * most, 2.0 * most) | {"pressure_switch_pa": round(most)}


def draw_weak(rng, kind, gear, asked, number):
    """A source that is too weak for one of the legs at least, or, far too weak, for the start of any;
    None where these legs do not fit it."""
    if kind == "far too weak hand pump":
        least = min(leg[0][0] for leg in levels(gear, asked, False))
        most = 0.7 * least
        return None if most < 2.0 * gear["supply"]["return_pressure_pa"] + 1e5 else hand_pump(rng, most)
    most = too_low(rng, gear, asked)
    if most is None:
        return None
    if kind == "weak constant pressure":
        return {"available_pressure_pa": round(most)}
    if kind == "weak hand pump":
        return hand_pump(rng, most)
    if kind == "weak accumulator":
        # its pressure comes down to that after more than half of the way up
        peak, fluid = highest(gear, asked), sum(leg.fluids[0] for leg in asked)
        exponent, charged = round(rng.uniform(1.1, 1.5), 2), 1.5 * peak
        gas = rng.uniform(0.5, 0.8) * fluid / ((charged / most) ** (1.0 / exponent) - 1.0)
        precharge = 0.2 * most
        volume = gas * (charged / precharge) ** (1.0 / exponent)
        return accumulator(volume, precharge, charged, exponent)
    if number % 3 == 0:
        # too low a relief valve
        return motor_pump(rng, rng.uniform(1.3, 2.0) * most, most)
    found = motor_pump(rng, 0.0, 2.0 * highest(gear, asked))
    pump, battery = found["source"]["motor_pump"], dict(gear["supply"]["battery"])
    ohms = battery["internal_ohm"] + battery["wires_ohm"]
    rise = pump["stall_a"] - pump["idle_a"]
    if number % 3 == 1:
        # too weak a pump: it stands where p/Ps = V/Vn, V = E − R·(I0 + rise·p/Ps)
        volts = battery["open_circuit_v"] - ohms * pump["idle_a"]
        pump["stall_pressure_pa"] = round(most * (pump["rated_v"] + ohms * rise) / volts)
        return found
    # a tired battery
    pump["stall_pressure_pa"] = round(1.4 * most)
    share = most / pump["stall_pressure_pa"]
    volts = pump["rated_v"] * share + ohms * (pump["idle_a"] + rise * share)
    battery["open_circuit_v"] = round(volts, 4)
    return found | {"battery": battery}


def swept(gear, asked):
    """Fluid of all stages of a gear, up and down [m3]."""
    whole = sum(sum(leg.fluids) for leg in asked)
    for leg in gear["legs"]:
        jack = leg["drive"].get("jack")
        if jack is not None:
            whole += 2.0 * jack["area_m2"] * leg["strut"]["shortening"]["before_swing"]["amount_m"]
    return whole


def hand_pump(rng, most):
    """A pump worked by hand against so much [Pa]."""
    return {"source": {"hand_pump": {
        "stroke_volume_m3": round(rng.uniform(5e-6, 2e-5), 8),
        "stroke_time_s": round(rng.uniform(0.8, 2.0), 2),
        "largest_pressure_pa": round(most),
    }}}


def motor_pump(rng, stall, relief):
    """A pump on a motor that stands at a pressure, with a relief valve [Pa]."""
    return {"source": {"motor_pump": {
        "free_flow_m3_s": round(rng.uniform(3e-5, 8e-5), 7),
        "rated_v": 12.0,
        "stall_pressure_pa": round(stall),
        "idle_a": round(rng.uniform(8.0, 15.0), 1),
        "stall_a": round(rng.uniform(60.0, 120.0), 1),
        "relief_pressure_pa": round(relief),
    }}}


def accumulator(volume, precharge, charged, exponent):
    """Gas of a volume [m3] between two pressures [Pa]."""
    return {"accumulator": {
        "gas_volume_m3": round(volume, 8),
        "precharge_pa": round(precharge),
        "charged_pa": round(charged),
        "exponent": exponent,
    }}
