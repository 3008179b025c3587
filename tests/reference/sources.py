"""What drives a gear: what it gives at a pressure at the manifold, and how the manifold stands.

`stand(taken, stored)` gives (pressure [Pa], out of the pump [m3/s], drawn from the return line [m3/s],
through the relief valve [m3/s]); `taken` is the flow of all legs at a pressure, `stored` the fluid in the
accumulator [m3]. By scipy's brentq. `most` is what the source makes against stopped legs [Pa], `free`
its flow without pressure [m3/s], None where that is for the lines to say; `left(stored)` is the most
that it still makes [Pa].
"""

from scipy.optimize import brentq

# Standard atmosphere, gauge to absolute [Pa].
ATMOSPHERE = 101_325.0
# Share of an accumulator's fluid within which it is empty or full.
NEARLY = 1e-9


class MotorPump:
    """A pump on a DC motor: flow falls and current rises in a straight line with the pressure."""

    def __init__(self, supply):
        source, battery = supply["source"]["motor_pump"], supply["battery"]
        self.source = source
        self.open = battery["open_circuit_v"]
        self.ohms = battery["internal_ohm"] + battery["wires_ohm"]
        self.least = supply.get("return_pressure_pa", 0.0)
        dead = brentq(self.flow, 0.0, 10 * source["stall_pressure_pa"], xtol=1e-3)
        self.most = min(dead, source["relief_pressure_pa"])
        self.relieves = source["relief_pressure_pa"] < dead
        self.free = self.flow(0.0)

    def current(self, pressure):
        """Current at a pressure [A]."""
        source = self.source
        share = pressure / source["stall_pressure_pa"]
        return source["idle_a"] + (source["stall_a"] - source["idle_a"]) * share

    def flow(self, pressure):
        """Flow at a pressure [m3/s], below zero where it would run back."""
        source = self.source
        volts = self.open - self.ohms * self.current(pressure)
        loss = pressure / source["stall_pressure_pa"]
        return source["free_flow_m3_s"] * (volts / source["rated_v"] - loss)

    def volts_short(self, pressure):
        """By how much the battery's voltage is too low for a pressure against stopped legs [V]."""
        at_motor = self.source["rated_v"] * pressure / self.source["stall_pressure_pa"]
        return max(0.0, at_motor + self.ohms * self.current(pressure) - self.open)

    def power(self, pressure):
        """(out of the battery, lost in it and the wires) [W]."""
        amps = self.current(pressure)
        return self.open * amps, self.ohms * amps**2

    def left(self, _):
        """It does not tire [Pa]."""
        return self.most

    def stand(self, taken, _):
        """The manifold in balance."""
        low, high = self.least, self.most
        if taken(high) <= self.flow(high):
            # over the relief valve goes the rest
            return high, self.flow(high), 0.0, self.flow(high) - taken(high)
        if taken(low) >= self.flow(low):
            # legs that their weight drives take more than the pump gives
            return low, self.flow(low), taken(low) - self.flow(low), 0.0
        pressure = brentq(lambda p: taken(p) - self.flow(p), low, high, xtol=1e-6, rtol=1e-14)
        return pressure, self.flow(pressure), 0.0, 0.0


class HandPump:
    """A steady beat until the handle is too heavy; then no more than the legs take."""

    def __init__(self, supply):
        source = supply["source"]["hand_pump"]
        self.beat = source["stroke_volume_m3"] / source["stroke_time_s"]
        self.least = supply.get("return_pressure_pa", 0.0)
        self.most = source["largest_pressure_pa"]
        self.free = self.beat

    def flow(self, _):
        """Flow at a pressure that the handle can be worked against [m3/s]."""
        return self.beat

    def current(self, _):
        """No battery."""
        return None

    def power(self, _):
        """No battery."""
        return 0.0, 0.0

    def left(self, _):
        """It does not tire [Pa]."""
        return self.most

    def stand(self, taken, _):
        """The manifold in balance."""
        low, high = self.least, self.most
        if taken(high) <= self.beat:
            return high, taken(high), 0.0, 0.0
        if taken(low) >= self.beat:
            return low, self.beat, taken(low) - self.beat, 0.0
        pressure = brentq(lambda p: taken(p) - self.beat, low, high, xtol=1e-6, rtol=1e-14)
        return pressure, self.beat, 0.0, 0.0


class Constant:
    """A pressure that any flow leaves as it is."""

    free = None

    def __init__(self, supply):
        self.most = supply["available_pressure_pa"]

    def current(self, _):
        """No battery."""
        return None

    def power(self, _):
        """No battery."""
        return 0.0, 0.0

    def left(self, _):
        """It does not tire [Pa]."""
        return self.most

    def stand(self, taken, _):
        """The manifold in balance."""
        return self.most, taken(self.most), 0.0, 0.0


class Switched:
    """A pump that a switch stops at a pressure and starts again: there it gives what the legs take."""

    def __init__(self, pump, most):
        if most >= pump.most:
            raise RuntimeError("a switch above its pump is not compared here")
        self.pump, self.most, self.free = pump, most, pump.free
        self.flow, self.current, self.power = pump.flow, pump.current, pump.power

    def stand(self, taken, stored):
        """The manifold in balance."""
        if taken(self.most) <= self.flow(self.most):
            return self.most, taken(self.most), 0.0, 0.0
        return self.pump.stand(taken, stored)


class Accumulator:
    """Gas behind the manifold, alone or beside a pump; p·V^n stays, absolute.

    It holds the pressure while it has fluid, and fills while the pump gives more than the legs take.
    Empty it keeps its gas in and leaves the pump alone. Full, at the most that the pump makes, it takes
    no more: the rest goes over the relief valve, or a hand pump, or one that a switch stops and starts
    again, gives no more than the legs take. Charged above that, it has the pump give nothing until it is
    down to it.
    """

    def __init__(self, supply, pump):
        gas = supply["accumulator"]
        self.pump = pump
        self.volume = gas["gas_volume_m3"]
        self.exponent = gas.get("exponent", 1.4)
        self.precharge = gas["precharge_pa"]
        self.most = gas["charged_pa"] if pump is None else pump.most
        self.free = None if pump is None else pump.free
        self.least = supply.get("return_pressure_pa", 0.0)
        self.first = self.held(gas["charged_pa"])
        self.brim = self.held(self.most)
        self.relieves = getattr(pump, "relieves", False)
        if self.first > self.brim and self.relieves:
            raise RuntimeError("an accumulator above its relief valve is not compared here")
        self.mode = "above" if self.first > self.brim else "holds"
        self.most_at_first = max(self.most, gas["charged_pa"] if self.first > 0.0 else 0.0)

    def held(self, pressure):
        """Fluid in it at a gauge pressure [m3]."""
        share = (self.precharge + ATMOSPHERE) / (pressure + ATMOSPHERE)
        return self.volume * (1.0 - share ** (1.0 / self.exponent))

    def pressure(self, stored):
        """Gauge pressure with so much fluid in it [Pa]."""
        base = self.precharge + ATMOSPHERE
        return base * (self.volume / (self.volume - stored)) ** self.exponent - ATMOSPHERE

    def settle(self, taken, stored, passed):
        """Finds out how it stands, with what the legs take at a pressure [m3/s], the fluid in it [m3]
        and the kinds of changes that have just happened; that fluid, to the bit where it is empty or
        full."""
        if self.mode == "above" and "accumulator_down" not in passed:
            return stored
        self.mode = "holds"
        if stored <= NEARLY * self.brim:
            stored = 0.0
            gains = self.pump is not None and self.pump.flow(self.precharge) > taken(self.precharge)
            if not (gains or "accumulator_fills" in passed):
                self.mode = "empty"
        elif self.pump is not None and stored >= (1.0 - NEARLY) * self.brim:
            stored = self.brim
            loses = taken(self.most) > self.pump.flow(self.most)
            if not (loses or "accumulator_gives" in passed):
                self.mode = "full"
        return stored

    def changes(self):
        """[(kind of event, value of what the legs take and the fluid)]: it stands another way from
        where the value rises through nothing."""
        if self.mode == "holds":
            found = [("accumulator_empty", lambda taken, stored: -stored)]
            if self.pump is not None:
                kind = "relief_open" if self.relieves else "accumulator_full"
                found.append((kind, lambda taken, stored: stored - self.brim))
            return found
        if self.mode == "above":
            return [("accumulator_down", lambda taken, stored: self.brim - stored)]
        if self.pump is None:
            return []
        level, sense = (self.precharge, 1.0) if self.mode == "empty" else (self.most, -1.0)
        kind = "accumulator_fills" if self.mode == "empty" else "accumulator_gives"
        return [(kind, lambda taken, _: sense * (self.pump.flow(level) - taken(level)))]

    def current(self, pressure):
        """Current at a pressure [A], which for the pump behind its non-return valve is no more than its
        most; None without a motor."""
        return None if self.pump is None else self.pump.current(min(pressure, self.most))

    @property
    def kept_off(self):
        """The gas stands above the switch, which keeps the pump off."""
        return isinstance(self.pump, Switched) and self.mode == "above"

    def on(self, pumped):
        """Share of the time in which the pump's motor is on at a flow [1]: a switch has it stand above
        its pressure, and start and stop at it."""
        if not isinstance(self.pump, Switched) or self.mode not in ("above", "full"):
            return 1.0
        return 0.0 if self.mode == "above" else min(1.0, pumped / self.pump.flow(self.most))

    def power(self, pressure):
        """(out of the battery, lost in it and the wires) [W]."""
        return (0.0, 0.0) if self.pump is None else self.pump.power(min(pressure, self.most))

    def left(self, stored):
        """Most that it still makes [Pa]: nothing but a pump fills it again, and empty it makes none."""
        if self.pump is not None:
            return self.pressure(stored) if self.mode == "above" else self.most
        return self.least if self.mode == "empty" else self.pressure(stored)

    def stand(self, taken, stored):
        """The manifold at the pressure of the gas, or at what the pump makes of it alone."""
        if self.mode == "empty":
            if self.pump is not None:
                return self.pump.stand(taken, stored)
            # what its weight drives draws from the return line
            return self.least, 0.0, taken(self.least), 0.0
        if self.mode == "full":
            return self.pump.stand(taken, stored)
        idle = self.pump is None or self.mode == "above"
        pumped = 0.0 if idle else self.pump.flow(self.pressure(stored))
        return self.pressure(stored), pumped, 0.0, 0.0


def source_of(supply):
    """The source that a supply names."""
    source = supply.get("source", "constant_pressure")
    if source == "constant_pressure":
        return Accumulator(supply, None) if "accumulator" in supply else Constant(supply)
    pump = HandPump(supply) if "hand_pump" in source else MotorPump(supply)
    if "accumulator" in supply and "pressure_switch_pa" in supply:
        pump = Switched(pump, supply["pressure_switch_pa"])
    return Accumulator(supply, pump) if "accumulator" in supply else pump
