"""Force and reactions of one pose, twice: by energy over a small step and by free bodies."""

import copy
import math

import numpy as np

from gearfile import brace_of, conditions, gravity_in_plane
from mechanism import cross, turn
from springs import energy_of_springs, forces_of_springs, springs_of


class Loads:
    """Weights and air loads of one leg in one case."""

    def __init__(self, gear, leg):
        case = conditions(gear)
        self.leg = leg
        self.load_factor = case["load_factor"]
        self.pull = case["load_factor"] * np.array(gravity_in_plane(leg["view"], case))
        pressure = 0.5 * case["air_density_kg_m3"] * case["airspeed_m_s"] ** 2
        self.wind = pressure * self._wind_direction(leg["view"], case["sideslip_rad"])
        air = leg.get("air", {})
        self.wheel_area = air.get("wheel_drag_area_m2", 0.0)
        self.leg_area = air.get("leg_drag_area_m2", 0.0)
        self.kind, self.brace = brace_of(leg)
        self.springs = springs_of(leg)
        self.supply = gear["supply"]
        actuator = leg["actuator"]
        self.bore = math.pi / 4 * actuator["bore_m"] ** 2
        self.annulus = self.bore - math.pi / 4 * actuator["rod_m"] ** 2
        self.least_area = min(self.bore, self.annulus)

    def at_most_1_g(self):
        """The same loads, weights at no more than 1 g."""
        held = copy.copy(self)
        held.pull = self.pull * min(1.0, self.load_factor) / self.load_factor
        return held

    def without_air(self):
        """The same loads, weights only."""
        still = copy.copy(self)
        still.wind = np.zeros(2)
        return still

    @staticmethod
    def _wind_direction(view, sideslip):
        """Direction of the air over the leg in its plane: aft, and from the right to the left."""
        if view == "side":
            return np.array([math.cos(sideslip), 0.0])
        return np.array([math.sin(sideslip), 0.0])

    def on_parts(self, mechanism, pose, halfway=None):
        """(part, point, force) of every weight and air load.

        The air load of the leg acts on the part that only turns, halfway to the axle; `halfway`
        (at gear down) holds that point of it still on the leg while a step is taken.
        """
        leg, pull, trunnion = self.leg, self.pull, mechanism.trunnion
        middle = 0.5 * (trunnion + pose.axle)
        if halfway is not None:
            middle = mechanism.on_leg(halfway, pose.swing)
        centre = mechanism.on_leg(leg["body"]["centre_m"], pose.swing)
        loads = [
            ("leg", centre, leg["body"]["mass_kg"] * pull),
            ("leg", pose.axle, leg["wheel"]["mass_kg"] * pull + self.wheel_area * self.wind),
            ("leg", middle, self.leg_area * self.wind),
        ]
        if self.kind == "folding":
            upper = 0.5 * self.brace["upper"].get("mass_kg", 0.0) * pull
            lower = 0.5 * self.brace["lower"].get("mass_kg", 0.0) * pull
            loads += [("upper_link", mechanism.pivot, upper), ("upper_link", pose.knee, upper)]
            loads += [("lower_link", pose.knee, lower), ("lower_link", pose.brace_attach, lower)]
        if self.kind == "sliding":
            half = 0.5 * self.brace.get("mass_kg", 0.0) * pull
            loads += [("brace", mechanism.pivot, half), ("leg", pose.brace_attach, half)]
        half = 0.5 * leg["actuator"].get("mass_kg", 0.0) * pull
        loads += [(mechanism.attach_to, pose.attach, half), ("mount", mechanism.mount, half)]
        return loads


def energy(loads, mechanism, pose, halfway):
    """Potential of all loads: constant forces and springs [J]."""
    parts = loads.on_parts(mechanism, pose, halfway)
    sprung = energy_of_springs(loads.springs, mechanism, pose)
    return sprung - sum(float(np.dot(force, point)) for _, point, force in parts)


def slopes(function, at, step):
    """Derivative by central differences with two steps of Richardson extrapolation."""
    rows = []
    for k in range(3):
        h = step / 2**k
        rows.append((function(at + h) - function(at - h)) / (2 * h))
    first = [(4 * rows[1] - rows[0]) / 3, (4 * rows[2] - rows[1]) / 3]
    return (16 * first[1] - first[0]) / 15


def holding_by_energy(loads, mechanism, pose_at, at, step):
    """(thrust that holds the leg [N], dℓ per unit of the parameter).

    `pose_at` gives the pose at a value of any parameter of the path, as swing or fold.
    """
    here = pose_at(at)
    middle = 0.5 * (here.axle - mechanism.trunnion)
    halfway = mechanism.trunnion + turn(-here.swing) @ middle

    def values(parameter):
        pose = pose_at(parameter)
        return np.array([energy(loads, mechanism, pose, halfway), pose.length, pose.swing])

    slope = slopes(values, at, step)
    # at a dead point no thrust does it
    holding = slope[0] / slope[1] if slope[1] != 0.0 else math.inf
    return holding, slope[1], slope[2]


def free_bodies(loads, mechanism, pose, check=True, more=((), ())):
    """Thrust and joint forces by the balance of every body, one linear system.

    `more`: forces (part, point, force) and moments (part, moment) beside loads and springs.
    Returns a dict: thrust [N], trunnion, brace_pivot, knee, brace_attach, mount [N], and with
    `check` the condition number of the system.
    """
    bodies = ["leg"]
    # joint: (name, point, part it acts on, part that answers)
    joints = [("trunnion", mechanism.trunnion, "leg", None)]
    if loads.kind == "folding":
        bodies += ["upper_link", "lower_link"]
        joints += [
            ("brace_pivot", mechanism.pivot, "upper_link", None),
            ("knee", pose.knee, "lower_link", "upper_link"),
            ("brace_attach", pose.brace_attach, "leg", "lower_link"),
        ]
    columns = 2 * len(joints) + 1
    matrix = np.zeros((3 * len(bodies), columns))
    right = np.zeros(3 * len(bodies))
    row = {body: 3 * i for i, body in enumerate(bodies)}
    scale = float(np.linalg.norm(mechanism.axle - mechanism.trunnion))

    def put(body, column, point, direction, sign):
        r = row[body]
        matrix[r : r + 2, column] += sign * direction
        matrix[r + 2, column] += sign * cross(point - mechanism.trunnion, direction) / scale

    for j, (_, point, on, answers) in enumerate(joints):
        for axis in range(2):
            unit = np.eye(2)[axis]
            put(on, 2 * j + axis, point, unit, 1.0)
            if answers is not None:
                put(answers, 2 * j + axis, point, unit, -1.0)
    line = (pose.attach - mechanism.mount) / pose.length
    put(mechanism.attach_to, columns - 1, pose.attach, line, 1.0)
    for part, point, force in loads.on_parts(mechanism, pose):
        if part in row:
            r = row[part]
            right[r : r + 2] -= force
            right[r + 2] -= cross(point - mechanism.trunnion, force) / scale
    forces, moments = forces_of_springs(loads.springs, mechanism, pose)
    forces, moments = [*forces, *more[0]], [*moments, *more[1]]
    square, brace_couple = across_brace(loads, mechanism, pose, moments)
    if brace_couple != 0.0:
        forces.append(("leg", pose.brace_attach, square))
    for part, point, force in forces:
        r = row["leg" if part == "sliding_strut" else part]
        right[r : r + 2] -= force
        right[r + 2] -= cross(point - mechanism.trunnion, force) / scale
    for part, moment in moments:
        if part in row:
            right[row[part] + 2] -= moment / scale
    sliding = sum((force for part, _, force in forces if part == "sliding_strut"), np.zeros(2))
    right[row["leg"] + 2] -= drive_couple(loads, mechanism, pose, sliding) / scale
    solution = np.linalg.solve(matrix, right)
    found = {name: solution[2 * j : 2 * j + 2] for j, (name, *_) in enumerate(joints)}
    found["thrust"] = float(solution[-1])
    if check:
        found["condition"] = float(np.linalg.cond(matrix))
    weight = 0.5 * loads.leg["actuator"].get("mass_kg", 0.0) * loads.pull
    found["mount"] = found["thrust"] * line - weight
    if loads.kind == "sliding":
        half = 0.5 * loads.brace.get("mass_kg", 0.0) * loads.pull
        found["brace_pivot"] = square - half
        found["brace_attach"] = square + half
    return found


def across_brace(loads, mechanism, pose, moments):
    """Force of a telescopic brace on the leg square to it [N], and the couple it carries [N·m]."""
    couple = sum(moment for part, moment in moments if part == "brace")
    if loads.kind != "sliding":
        return np.zeros(2), 0.0
    arm = pose.brace_attach - mechanism.pivot
    return couple * np.array([-arm[1], arm[0]]) / float(np.dot(arm, arm)), couple


def drive_couple(loads, mechanism, pose, sliding):
    """Couple on the leg by what shortens its strut with the swing [N·m].

    The load along the strut works on dc/dφ; the linkage that ties the two hands it to the leg.
    `sliding` are the springs on what slides [N].
    """
    if mechanism.shortening_kind != "with_travel":
        return 0.0
    rows = mechanism.shortening_data["table"]
    travel = pose.swing / mechanism.up
    slope = 0.0
    for low, high in zip(rows, rows[1:]):
        if low["travel"] <= travel < high["travel"]:
            slope = (high["amount_m"] - low["amount_m"]) / (high["travel"] - low["travel"])
    if travel == rows[-1]["travel"] and len(rows) > 1:
        low, high = rows[-2:]
        slope = (high["amount_m"] - low["amount_m"]) / (high["travel"] - low["travel"])
    along = turn(pose.swing) @ mechanism.axis
    wheel = loads.leg["wheel"]["mass_kg"] * loads.pull + loads.wheel_area * loads.wind
    return float(np.dot(wheel + sliding, along)) * slope / mechanism.up


def pressures(loads, holding, towards_up, leg=None):
    """Efforts [N] and pressures [Pa] to retract and to extend.

    `towards_up` is +1 where the actuator lengthens on the way up, −1 where it shortens; `leg` has other
    seals than the loads.
    """
    bore, annulus = loads.bore, loads.annulus
    friction = (leg or loads.leg)["actuator"].get("seal_friction_n", 0.0)
    back = loads.supply.get("return_pressure_pa", 0.0)
    retract = towards_up * holding + friction
    extend = -towards_up * holding + friction
    areas = (bore, annulus) if towards_up > 0 else (annulus, bore)
    return {
        "retract_effort_n": retract,
        "extend_effort_n": extend,
        "retract_pressure_pa": max(0.0, (retract + back * areas[1]) / areas[0]),
        "extend_pressure_pa": max(0.0, (extend + back * areas[0]) / areas[1]),
    }
