"""Legs that stand: what the rest of their way asks for, and what the source makes of it."""

from dataclasses import dataclass


@dataclass
class Stall:
    """A leg that is not at the end of its way."""

    leg: int
    # Part of the path and travel where it stands.
    phase: str
    travel: float
    # Most needed on the rest of its way, and most that the source makes [Pa or N].
    needed: float
    available: float
    # Area on which the fluid works there [m2].
    area: float = 1.0
    # Thrust at the actuator that is too much [N]; None where a valve asks for the pressure.
    thrust_over: float | None = None
    # Open-circuit voltage that the battery lacks [V]; None where volts do not free it.
    volts_short: float | None = None
    # Whether the relief valve opens below what is needed.
    relief_too_low: bool = False

    @property
    def lack(self):
        """By how much the source is too weak [Pa or N]."""
        return self.needed - self.available


def hardest(leg, place):
    """(largest load on the rest of the way of a leg, its stage)."""
    rest = []
    for stage in leg.stages[leg.at :]:
        start = place if stage is leg.now else 0.0
        rest.append((stage.load.peak(start, stage.extent), stage))
    return max(rest, key=lambda one: one[0])


def on_fluid(number, leg, place, source, available, stopped):
    """The Stall of a leg on a source of fluid that makes so much [Pa]; `stopped` by its pressure
    switch."""
    needed, stage = hardest(leg, place)
    found = Stall(number, leg.phase(place), leg.travel(place), needed, available, stage.area)
    if stage.opens is None or needed > stage.opens:
        found.thrust_over = found.lack * stage.area
    pump = getattr(source, "pump", source)
    if hasattr(pump, "volts_short"):
        found.relief_too_low = pump.source["relief_pressure_pa"] < needed
        if not (found.relief_too_low or stopped):
            found.volts_short = pump.volts_short(needed)
    return found


def on_motor(number, leg, place, motor, open_volts, ohms):
    """The Stall of a leg on an electric actuator, alone on its battery."""
    needed, _ = hardest(leg, place)
    # F/Fs = V/Vn with V = E − R·I, I = I0 + (Is − I0)·F/Fs
    rise = motor["locked_a"] - motor["idle_a"]
    most = (open_volts - ohms * motor["idle_a"]) / (motor["motor_v"] + ohms * rise)
    share = needed / motor["stall_force_n"]
    asked = motor["motor_v"] * share + ohms * (motor["idle_a"] + rise * share)
    found = Stall(number, leg.phase(place), leg.travel(place), needed, most * motor["stall_force_n"])
    found.volts_short = max(0.0, asked - open_volts)
    return found
