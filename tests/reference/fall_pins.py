"""Fall of a leg whose pins rub, by Newton's and Euler's equations of every body.

Each pin resists the turn of one part in the other with a moment μ·r·|R| + C, C its couple, R being its load in the
motion: weights, air, springs, thrust of the actuator (seals and fluid) and inertia of all parts. The
acceleration of the coordinate is an unknown of the balance beside the joint forces. At one place the
solution is linear in thrust, square of the speed and friction moments, which Newton's method then
fits to the loads that they come from. Masses sit at the points of fall.py. A telescopic brace and the
actuator are two tubes each: what pulls at their middle goes to their pins in halves.
"""

import numpy as np

from fall import Falling
from friction import joints_of
from springs import forces_of_springs

# A pin that turns by less than this share of the fastest one does not rub.
REST = 1e-12
# Error left in the friction moments, as a share of their sum.
SETTLED = 1e-12
MOST_STEPS = 20
# Steps in which the friction is raised from nothing where no solution is near.
RISES = 8
# Columns of everything that is linear in them: standing loads, thrust, square of the speed, then one
# for each friction moment, and the acceleration last.
STILL, THRUST, SQUARE, FIRST_PIN = range(4)
# What is between two pins and carries only couples across itself: its pins and their points.
TUBES = {"brace": ("brace_pivot", "leg_attach"), "actuator": ("actuator_mount", "actuator_attach")}


class Binds(RuntimeError):
    """No friction goes with the loads that it makes."""


def quarter(vector):
    """A vector turned by a right angle, counter-clockwise."""
    return np.array([-vector[1], vector[0]])


def moment_of(arms, forces):
    """Moments of forces at arms, coordinates in the second but last place of `forces` [N·m]."""
    return arms[..., :1] * forces[..., 1, :] - arms[..., 1:] * forces[..., 0, :]


class RubbingFall(Falling):
    """One leg that falls with rubbing pins."""

    def __init__(self, gear, leg, stands=None):
        super().__init__(gear, leg, stands)
        pins = leg.get("pins", {})
        self.joints = joints_of(self.mechanism)
        circles = [
            pins.get(name, {}).get("radius_m", 0.0) * pins.get(name, {}).get("friction", 0.0)
            for name, _, _ in self.joints
        ]
        couples = [pins.get(name, {}).get("couple_n_m", 0.0) for name, _, _ in self.joints]
        # pins that rub, the radius of their friction circle [m], and their loads at the place before [N]
        self.rubbing = [j for j in range(len(circles)) if circles[j] > 0.0 or couples[j] > 0.0]
        self.circles = np.array([circles[j] for j in self.rubbing])
        self.couples = np.array([couples[j] for j in self.rubbing])
        self.pressed = np.zeros(len(self.rubbing))
        self.columns = FIRST_PIN + len(self.rubbing) + 1
        self.bodies, self.bars = ["leg"], {"actuator": 2}
        if self.mechanism.kind == "folding":
            self.bodies = ["leg", "upper_link", "lower_link"]
            self.bars = {"upper_link": 2, "lower_link": 5, "actuator": 8}
        elif self.mechanism.kind == "sliding":
            self.bars = {"brace": 2, "actuator": 5}
        self.carried = self.masses_carried()

    def masses_carried(self):
        """Where every mass pulls: names, and rows (name, point it pulls at, point it moves with,
        share) of bodies and of pins that a tube hands its masses to. Points as in `points`."""
        rows = [("leg", 0, 0, 1.0), ("leg", 1, 1, 1.0)]
        for part, at in self.bars.items():
            if part in TUBES:
                first, last = TUBES[part]
                rows += [(first, at, at, 1.0), (first, at, at + 1, 0.5)]
                rows += [(last, at + 2, at + 1, 0.5), (last, at + 2, at + 2, 1.0)]
            else:
                rows += [(part, at + i, at + i, 1.0) for i in range(3)]
        names = list(dict.fromkeys(name for name, *_ in rows))
        onto = np.array([[share * (name == each) for name, _, _, share in rows] for each in names])
        pulls_at, moves_with = (np.array([row[i] for row in rows]) for i in (1, 2))
        return names, onto, pulls_at, moves_with

    # ---- balance of bodies -------------------------------------------------------------------
    def pin_rates(self, at):
        """Rates of turn of the pins that rub [rad]."""
        turns = {"leg": at["swing"]}
        for part, first in self.bars.items():
            bar, rate = (at[key][first + 2] - at[key][first] for key in ("points", "rates"))
            turns[part] = float(quarter(bar) @ rate / (bar @ bar))
        pins = np.array([turns[on] - turns.get(other, 0.0) for _, on, other in self.joints])
        slow = np.abs(pins) <= REST * np.max(np.abs(pins))
        return np.where(slow, 0.0, pins)[self.rubbing]

    def balance(self, at):
        """(acceleration, {pin: its load [N]}), by column, the acceleration being no column more."""
        pose, trunnion = at["pose"], self.mechanism.trunnion
        carried = self.pulls(at)
        # what a tube does to the part that it ends on, but for the masses
        across = {part: np.zeros((2, self.columns)) for part in self.bars if part in TUBES}
        across["actuator"][:, THRUST] = (pose.attach - self.mechanism.mount) / pose.length
        for part, moment in self.moments(at):
            if part in across:
                first = self.bars[part]
                bar = at["points"][first + 2] - at["points"][first]
                across[part] += np.outer(quarter(bar), moment) / float(bar @ bar)
            elif part in self.bodies:
                carried[part][2] += moment
        loads = {}
        for part, push in across.items():
            first, last = TUBES[part]
            loads[first], loads[last] = push - carried[first][:2], push + carried[last][:2]
            body = "leg" if part == "brace" else self.mechanism.attach_to
            arm = at["points"][self.bars[part] + 2] - trunnion
            carried[body][:2] += loads[last]
            carried[body][2] += moment_of(arm, loads[last])
        matrix, names = self.joint_matrix(pose)
        wrench = np.concatenate([carried[body] for body in self.bodies])
        matrix[:, -1] = wrench[:, -1]
        found = np.linalg.solve(matrix, -wrench[:, :-1])
        acceleration = found[-1]
        loads = {
            pin: load[:, :-1] + np.outer(load[:, -1], acceleration) for pin, load in loads.items()
        }
        loads |= {pin: found[2 * i : 2 * i + 2] for i, pin in enumerate(names)}
        return acceleration, loads

    def pulls(self, at):
        """{body or pin: force [N] and moment about the trunnion [N·m]} of weights, inertia, air and
        springs, by column."""
        names, onto, pulls_at, moves_with = self.carried
        trunnion = self.mechanism.trunnion
        forces = np.zeros((len(pulls_at), 2, self.columns))
        masses = self.masses[moves_with, None]
        forces[:, :, STILL] = self.weighed[moves_with, None] * self.loads.pull
        forces[:, :, SQUARE] = -masses * at["bends"][moves_with]
        forces[:, :, -1] = -masses * at["rates"][moves_with]
        moments = moment_of(at["points"][pulls_at] - trunnion, forces)
        rows = np.concatenate([forces, moments[:, None]], axis=1)
        carried = dict(zip(names, np.tensordot(onto, rows, 1)))
        carried["leg"][2, SQUARE] -= self.inertia * at["swing_bend"]
        carried["leg"][2, -1] -= self.inertia * at["swing"]
        loads, axle = self.loads, at["points"][1]
        blown = [("leg", axle, loads.wheel_area * loads.wind)]
        blown.append(("leg", 0.5 * (axle + trunnion), loads.leg_area * loads.wind))
        springs = forces_of_springs(loads.springs, self.mechanism, at["pose"])[0]
        for part, point, force in [*blown, *springs]:
            on = carried["leg" if part == "sliding_strut" else part]
            on[:2, STILL] += force
            on[2, STILL] += (point - trunnion) @ -quarter(force)
        return carried

    def moments(self, at):
        """[(part, moment by column [N·m])] of torsion springs and of friction."""
        units = np.eye(self.columns)
        springs = forces_of_springs(self.loads.springs, self.mechanism, at["pose"])[1]
        found = [(part, units[STILL] * moment) for part, moment in springs]
        for column, joint in enumerate(self.rubbing, FIRST_PIN):
            _, on, other = self.joints[joint]
            found += [(on, units[column]), (other, -units[column])]
        return found

    def joint_matrix(self, pose):
        """(what a force of 1 at each joint does to the bodies, their names); a last column is empty."""
        trunnion = self.mechanism.trunnion
        joints = [("trunnion", trunnion, "leg", None)]
        if len(self.bodies) > 1:
            joints += [
                ("brace_pivot", self.mechanism.pivot, "upper_link", None),
                ("knee", pose.knee, "lower_link", "upper_link"),
                ("leg_attach", pose.brace_attach, "leg", "lower_link"),
            ]
        matrix = np.zeros((3 * len(self.bodies), 2 * len(joints) + 1))
        for j, (_, point, *parts) in enumerate(joints):
            block = np.array([[1.0, 0.0], [0.0, 1.0], quarter(point - trunnion)])
            for part, sign in zip(parts, (1.0, -1.0)):
                if part is not None:
                    row = 3 * self.bodies.index(part)
                    matrix[row : row + 3, 2 * j : 2 * j + 2] = sign * block
        return matrix, [name for name, *_ in joints]

    # ---- friction ----------------------------------------------------------------------------
    def motion(self, at, speed):
        """Acceleration at a place and a speed, and the push against it by seals, pins and fluid."""
        if "balance" not in at:
            at |= {"turns": self.pin_rates(at), "balance": self.balance(at)}
        fluid = self.fluid(at, speed)
        given = np.array([1.0, -np.sign(at["stroke"]) * (self.seal + fluid), speed**2])
        acceleration, loads = at["balance"]
        by_column = np.array([loads[self.joints[j][0]] for j in self.rubbing])
        by_column = by_column.reshape(-1, 2, self.columns - 1)
        still, influence = by_column[..., :FIRST_PIN] @ given, by_column[..., FIRST_PIN:]
        way = -np.sign(at["turns"])
        moments = self.fitted(way * self.circles, way * self.couples, still, influence)
        rubbed = -float(moments @ at["turns"])
        return (
            float(acceleration[:FIRST_PIN] @ given + acceleration[FIRST_PIN:] @ moments),
            at["friction"] + rubbed,
            fluid * abs(at["stroke"]),
        )

    def fitted(self, against, couples, still, influence):
        """Friction moments that go with their own loads [N·m].

        `against`: friction circles, and `couples`, with the sign of the moment [m, N·m]; `still`: loads without friction
        [N]; `influence`: loads by moments [1/m].
        """
        found = newton(against, couples, still, influence, against * self.pressed + couples)
        if found is None:
            found = np.zeros(len(against))
            for rise in range(1, RISES + 1):
                share = rise / RISES
                found = newton(against * share, couples * share, still, influence, found)
                if found is None:
                    raise Binds(f"{self.leg['name']}: the pins bind")
        self.pressed = np.linalg.norm(still + influence @ found, axis=1)
        return found


def newton(against, couples, still, influence, moments):
    """Friction moments from a guess [N·m]; None where none are found, or only such as do not grow
    out of no friction: there the determinant of the derivative, 1 without friction, is above 0."""
    for _ in range(MOST_STEPS):
        loads = still + influence @ moments
        sizes = np.linalg.norm(loads, axis=1)
        miss = moments - against * sizes - couples
        along = loads / np.maximum(sizes, 1e-300)[:, None]
        slope = np.eye(len(moments)) - against[:, None] * np.einsum("ia,iaj->ij", along, influence)
        if np.sum(np.abs(miss)) <= SETTLED * np.sum(np.abs(against) * sizes + np.abs(couples)):
            return moments if np.linalg.det(slope) > 0.0 else None
        moments = moments - np.linalg.solve(slope, miss)
    return None
