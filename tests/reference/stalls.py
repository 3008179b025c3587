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
        found.thrust_over = max(found.lack, 0.0) * stage.area
    pump = getattr(source, "pump", source)
    if hasattr(pump, "volts_short"):
        found.relief_too_low = pump.source["relief_pressure_pa"] < needed
        if not (found.relief_too_low or stopped):
            found.volts_short = pump.volts_short(needed)
    return found


def on_motor(number, standing, open_volts, ohms):
    """The Stall of a leg on an electric actuator, beside all that stand on the same battery: (leg,
    place, motor) by the number of the leg."""
    leg, place, motor = standing[number]
    needed, _ = hardest(leg, place)

    def amps(motor, volts):
        """What a motor that stands takes at its own voltage [A]."""
        return motor["idle_a"] + (motor["locked_a"] - motor["idle_a"]) * volts / motor["motor_v"]

    def volts_for(motor, force):
        return motor["motor_v"] * force / motor["stall_force_n"]

    motors = [motor for _, _, motor in standing.values()]
    # V = E − R·I(V), a line in V
    idle, per_volt = sum(amps(one, 0.0) for one in motors), sum(amps(one, 1.0) for one in motors)
    volts = (open_volts - ohms * idle) / (1.0 + ohms * (per_volt - idle))
    most = motor["stall_force_n"] * volts / motor["motor_v"]
    own = volts_for(motor, needed)
    drawn = sum(
        amps(other, min(own, volts_for(other, hardest(way, at)[0]))) for way, at, other in standing.values()
    )
    found = Stall(number, leg.phase(place), leg.travel(place), needed, most)
    found.volts_short = max(0.0, own + ohms * drawn - open_volts)
    return found
