"""Random sources for drawn gears, as strong or as weak as their legs ask for."""


def highest(gear, loads):
    """Largest pressure that any stage of a gear asks for [Pa], by the loads of its swings."""
    drives = [leg["drive"] for leg in gear["legs"]]
    jacks = [drive["jack"] for drive in drives if "jack" in drive]
    back = gear["supply"]["return_pressure_pa"]
    return max(
        *(load.max() for _, load in loads),
        *(jack["shorten_pa"] + back for jack in jacks),
        *(drive.get("stage_valve_pa", 0.0) for drive in drives),
        1e6,
    )


def draw_source(rng, kind, gear, loads, number):
    """The source and what belongs to it, strong enough for the legs."""
    if kind == "electric actuators":
        return {"source": "electric_actuators"}
    peak = highest(gear, loads)
    if kind == "constant pressure":
        return {"available_pressure_pa": round(peak * rng.uniform(1.2, 2.0))}
    if kind == "hand pump":
        return {"source": {"hand_pump": {
            "stroke_volume_m3": round(rng.uniform(5e-6, 2e-5), 8),
            "stroke_time_s": round(rng.uniform(0.8, 2.0), 2),
            "largest_pressure_pa": round(peak * rng.uniform(1.05, 1.5)),
        }}}
    found = {}
    if kind.startswith("accumulator"):
        # of all swings up and down: the struts take little
        fluid = sum(load[0][-1] for load in loads)
        exponent = round(rng.uniform(1.1, 1.5), 2)
        precharge, charged = peak * 1.15, peak * rng.uniform(1.8, 2.2)
        held = 1.0 - (precharge / charged) ** (1.0 / exponent)
        found["accumulator"] = {
            "gas_volume_m3": round(rng.uniform(0.7, 1.5) * fluid / held, 7),
            "precharge_pa": round(precharge),
            "charged_pa": round(charged),
            "exponent": exponent,
        }
    if kind.endswith("pump"):
        # beside an accumulator neither valve nor stall is reached
        spare = 3.0 if "accumulator" in found else 1.0
        found["source"] = {"motor_pump": {
            "free_flow_m3_s": round(rng.uniform(3e-5, 8e-5), 7),
            "rated_v": 12.0,
            "stall_pressure_pa": round(peak * spare * rng.uniform(1.8, 2.5)),
            "idle_a": round(rng.uniform(8.0, 15.0), 1),
            "stall_a": round(rng.uniform(60.0, 120.0), 1),
            # the valve of the odd ones opens while the last leg comes up
            "relief_pressure_pa": round(peak * spare * (1.05 if number % 2 else 1.6)),
        }}
    return found
