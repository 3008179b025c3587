"""Gear files: reading, and the values that an absent key stands for."""

import json
import math
from dataclasses import dataclass

ENVELOPE = {"format": "gearswing-gear", "version": 1}

# Standard acceleration of gravity [m/s2], 3rd CGPM 1901 (exact by definition).
GRAVITY = 9.80665
METRE_PER_INCH = 0.0254

CONDITIONS = {
    "load_factor": 1.0,
    "pitch_rad": 0.0,
    "bank_rad": 0.0,
    "airspeed_m_s": 0.0,
    "sideslip_rad": 0.0,
    "air_density_kg_m3": 1.225,
}


def read(path):
    """The gear of one file, without its envelope."""
    with open(path, encoding="utf-8") as file:
        document = json.load(file)
    if {key: document.get(key) for key in ENVELOPE} != ENVELOPE:
        raise ValueError(f"{path}: not a gear file of version 1")
    return document["gear"]


def write(path, gear):
    """Writes a gear file."""
    with open(path, "w", encoding="utf-8") as file:
        json.dump({**ENVELOPE, "gear": gear}, file, separators=(",", ":"))


def conditions(gear):
    """Attitude, load factor and air of a gear, defaults filled in."""
    return {**CONDITIONS, **gear.get("conditions", {})}


def brace_of(leg):
    """Kind of the brace ("none", "folding", "sliding") and its data."""
    brace = leg["brace"]
    if brace == "none":
        return "none", {}
    [(kind, data)] = brace.items()
    return kind, data


def shortening_of(leg):
    """Kind of the shortening ("none", "before_swing", "with_travel") and its data."""
    shortening = leg["strut"].get("shortening", "none")
    if shortening == "none":
        return "none", {}
    [(kind, data)] = shortening.items()
    return kind, data


@dataclass(frozen=True)
class TireSize:
    """Overall diameter, section width and shoulder radius [m]."""

    diameter: float
    width: float
    shoulder: float


def new_size(tire):
    """Size as fitted new."""
    return TireSize(tire["diameter_m"], tire["width_m"], tire["shoulder_radius_m"])


def grown_size(tire):
    """Largest size in service.

    Growth rule of the tire and rim association's year book for bias tires (from memory, as
    repeated in handbooks of gear design): width × 1.04, section height × (1.115 − 0.074 AR).
    """
    grown = tire.get("grown", "by_rule")
    shoulder = tire["shoulder_radius_m"]
    if grown != "by_rule":
        return TireSize(grown["given"]["diameter_m"], grown["given"]["width_m"], shoulder)
    rim, width = tire["rim_diameter_m"], tire["width_m"]
    height = (tire["diameter_m"] - rim) / 2
    factor = 1.115 - 0.074 * height / width
    return TireSize(rim + 2 * factor * height, 1.04 * width, shoulder)


def gravity_in_plane(view, case):
    """Acceleration of gravity in the leg's plane [m/s2], airplane turned by pitch and bank."""
    pitch, bank = case["pitch_rad"], case["bank_rad"]
    down = -math.cos(pitch) * math.cos(bank)
    if view == "side":
        return (GRAVITY * math.sin(pitch), GRAVITY * down)
    return (-GRAVITY * math.sin(bank) * math.cos(pitch), GRAVITY * down)
