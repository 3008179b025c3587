"""Holds one leg's result of the program against this reference: path, forces, lock."""

import math

import numpy as np

from stood import begins, stood
from forces import Loads, energy, free_bodies, holding_by_energy, pressures
from gearfile import brace_of
from mechanism import SMALL_FOLD, Mechanism, cross
from springs import forces_of_springs, slack

# Positions and lengths [m], angles [rad].
POSITION = 1e-9
ANGLE = 1e-9
STATICS = 1e-9
DIFFERENCES = 1e-7
# A pose this near to a singular one has no forces worth comparing: condition of the balance
# equations, and moment arm of the actuator in shares of the leg's length.
WORST_CONDITION = 1e6
LEAST_ARM = 1e-3
# Stations compared per phase.
STATIONS = 9
STEP = 2e-4


def chosen(stations):
    """A few stations of every phase, ends included."""
    for phase in ("shorten", "unlock", "swing"):
        rows = [s for s in stations if s["phase"] == phase]
        if rows:
            places = np.unique(np.linspace(0, len(rows) - 1, STATIONS).round().astype(int))
            yield from (rows[i] for i in places)


def is_singular(station):
    """Whether the knee stands so straight or so folded that its angle is the better parameter."""
    return station["fold_rad"] is not None and abs(math.sin(station["fold_rad"])) < SMALL_FOLD


def pose_at(mechanism, station):
    """Our pose at the station's own parameter: shortening, fold or swing; and a way along it.

    Returns (pose, function of that parameter, its value, +1 if it rises toward up else −1).
    """
    if station["phase"] == "shorten":
        side = mechanism.down_side if mechanism.kind == "folding" else None
        return mechanism.at_swing(0.0, side, station["shortening_m"]), None, 0.0, 1.0
    if station["phase"] == "unlock" or is_singular(station):
        fold = station["fold_rad"]

        def along(value):
            return mechanism.shortened(mechanism.at_fold(value, station["swing_rad"]))

        rises = 1.0
        if station["phase"] == "swing":
            ahead = mechanism.span(station["swing_rad"] + 1e-6 * math.copysign(1, mechanism.up))
            rises = 1.0 if ahead < mechanism.span(station["swing_rad"]) else -1.0
            if abs(station["swing_rad"] - getattr(mechanism, "swing_straight", math.inf)) < 1e-7:
                rises = 1.0
        return along(fold), along, fold, rises

    def along(value):
        return mechanism.shortened(mechanism.at_swing(value))

    swing = station["swing_rad"]
    return along(swing), along, swing, math.copysign(1.0, mechanism.up)


def near_kink(mechanism, swing):
    """Whether the shortening table has a corner within a few steps of a swing."""
    if mechanism.shortening_kind != "with_travel":
        return False
    rows = mechanism.shortening_data["table"]
    return any(abs(row["travel"] * mechanism.up - swing) < 5 * STEP for row in rows)


def compare_pose(tally, mechanism, station, pose):
    """Joints, lengths and angles of one station."""
    tally.check("swing", station["swing_rad"], pose.swing, ANGLE)
    tally.check("travel", station["travel"], pose.swing / mechanism.up, ANGLE)
    tally.check("shortening", station["shortening_m"], pose.shortening, POSITION)
    tally.check("axle", station["axle_m"], pose.axle, POSITION)
    tally.check("actuator attach", station["actuator_attach_m"], pose.attach, POSITION)
    tally.check("actuator length", station["actuator_length_m"], pose.length, POSITION)
    tally.same("brace attach given", station["brace_attach_m"] is None, pose.brace_attach is None)
    if pose.brace_attach is not None:
        tally.check("brace attach", station["brace_attach_m"], pose.brace_attach, POSITION)
    tally.same("knee given", station["knee_m"] is None, pose.knee is None)
    if pose.knee is not None:
        tally.check("knee", station["knee_m"], pose.knee, POSITION)
        tally.check("fold", station["fold_rad"], pose.fold, ANGLE)
        between = min(abs(pose.fold), math.pi - abs(pose.fold))
        tally.check("transmission angle", station["transmission_rad"], between, ANGLE)


def compare_force(tally, loads, mechanism, station, pose, along, at, rises, starts):
    """Moment arm, thrust, reactions and pressures of one station."""
    size = float(np.linalg.norm(mechanism.axle - mechanism.trunnion))
    ahead, behind = along(at + STEP), along(at - STEP)
    slackens = slack(loads.springs, mechanism, ahead) != slack(loads.springs, mechanism, behind)
    if near_kink(mechanism, pose.swing) or slackens:
        tally.skip("thrust by energy")
        return
    by_energy, per_step, turned = holding_by_energy(loads, mechanism, along, at, STEP)
    small = abs(per_step) < LEAST_ARM * size
    if abs(turned) > 1e-3:
        arm = per_step / turned
        tally.check("moment arm", station["moment_arm_m"], arm, DIFFERENCES * (size + abs(arm)))
    else:
        tally.skip("moment arm")
    brace = brace_of(mechanism.leg)[1]
    # the separate device has the knee until it is as far past the straight pose as it locks before it
    separate = False
    if brace.get("unlocked_by") == "separate":
        held_to = max(abs(mechanism.locked_fold), math.radians(1.0))
        # the station where it lets go carries the force, to the rounding of its angle
        separate = station["progress"] <= 0.0 or pose.fold < held_to - 1e-9
    tally.same("force left out", station["force"] is None and not small, separate and not small)
    if station["force"] is None:
        return
    bodies = free_bodies(loads, mechanism, pose)
    if small or bodies["condition"] > WORST_CONDITION:
        tally.skip("thrust by energy")
        tally.skip("thrust by free bodies")
        return
    force = station["force"]
    weight = weight_of(loads, mechanism, pose, size)
    # a thrust that nearly cancels out still carries the errors of what it cancels
    scale = abs(bodies["thrust"]) + weight * size / abs(per_step)
    tally.check("thrust by energy", force["holding_n"], by_energy, DIFFERENCES * scale)
    tally.check("thrust by free bodies", force["holding_n"], bodies["thrust"], STATICS * scale)
    compare_reactions(tally, force["reactions"], bodies, STATICS * (scale + weight))
    local = rises * math.copysign(1.0, per_step)
    tolerance = STATICS * scale
    running, standing = (
        pressures(loads, bodies["thrust"], local, leg) for leg in (loads.leg, stood(loads.leg))
    )
    for key in running:
        begins_here = station["progress"] == starts[key.split("_")[0]]
        value = (standing if begins_here else running)[key]
        name = key.rsplit("_", 1)[0].replace("_", " ")
        area = 1.0 if key.endswith("_n") else loads.least_area
        tally.check(name, force[key], value, tolerance / area)


def weight_of(loads, mechanism, pose, size):
    """Sum of all loads without their directions, moments over the leg's length [N]."""
    parts = loads.on_parts(mechanism, pose)
    forces, moments = forces_of_springs(loads.springs, mechanism, pose)
    loads_alone = sum(float(np.linalg.norm(force)) for _, _, force in parts + forces)
    return loads_alone + sum(abs(moment) for _, moment in moments) / size


def compare_reactions(tally, reactions, bodies, tolerance):
    """Joint and mount forces."""
    for name in ("trunnion", "brace_pivot", "knee", "brace_attach", "mount"):
        found = reactions[f"{name}_n"]
        tally.same(f"{name} force given", found is None, name not in bodies)
        if found is not None and name in bodies:
            largest = float(np.linalg.norm(bodies[name]))
            tally.check(f"{name} force", found, bodies[name], tolerance + STATICS * largest)


def compare_end(tally, mechanism, result):
    """Where the path ends, and why: up, or where the actuator reaches an end."""
    stations = result["stations"]
    last = stations[-1]["swing_rad"]
    stop = first_stop(mechanism)
    tally.same("comes up", not result["jams"], stop is None)
    if stop is None or not result["jams"]:
        tally.check("swing at up", last, mechanism.up, ANGLE)
        return
    cause, phase, limit, pose = stop
    jam = result["jams"][0]
    tally.same("cause of the stop", list(jam["cause"])[0], cause)
    tally.same("phase of the stop", jam["place"]["phase"], phase)
    # an end may be passed by a micrometer: as much of an arc as that is at this arm
    ahead = mechanism.at_swing(pose.swing - 1e-5 * math.copysign(1.0, mechanism.up)).length
    rate = max(abs(pose.length - ahead) / 1e-5, 1e-3)
    tally.check("swing at the stop", jam["place"]["swing_rad"], pose.swing, 2e-6 / rate + ANGLE)
    tally.check("actuator at the stop", limit, stations[-1]["actuator_length_m"], 2e-6)


def first_stop(mechanism):
    """(cause, phase, limit, pose) where the actuator first reaches an end, None if it never does.

    Found by halving between samples of the path.
    """
    actuator = mechanism.leg["actuator"]
    ends = (
        ("actuator_ends_short", actuator["shortest_m"], 1.0),
        ("actuator_ends_long", actuator["longest_m"], -1.0),
    )
    previous = 0.0
    for phase, share, pose in mechanism.path(241):
        for cause, limit, sign in ends:
            if sign * (pose.length - limit) < 0.0:
                low, high = previous, share
                while high - low > 1e-14:
                    middle = 0.5 * (low + high)
                    if middle in (low, high):
                        break
                    beyond = sign * (mechanism.at(phase, middle).length - limit) < 0.0
                    low, high = (low, middle) if beyond else (middle, high)
                return cause, phase, limit, mechanism.at(phase, low)
        previous = share
    return None


def compare_lock(tally, mechanism, loads, result):
    """Offset of the knee, the way through the straight line, and what loads do to the lock."""
    lock = result["lock"]
    names = {"none": "no_brace", "sliding": "sliding_brace"}
    if mechanism.kind != "folding":
        tally.same("kind of lock", lock["kind"], names[mechanism.kind])
        if mechanism.kind == "sliding":
            data = mechanism.leg["brace"]["sliding"]
            span = mechanism.span(0.0)
            gap = min(span - data["shortest_m"], data["longest_m"] - span)
            tally.check("end gap", lock["end_gap_m"], gap, POSITION)
        return
    locked = mechanism.at_swing(0.0, mechanism.down_side)
    to_attach = locked.brace_attach - mechanism.pivot
    offset = abs(cross(locked.knee - mechanism.pivot, to_attach)) / np.linalg.norm(to_attach)
    past = 1.0 if mechanism.through_centre else -1.0
    kind = "over_centre" if mechanism.through_centre else "folds_on"
    tally.same("kind of lock", lock["kind"], kind)
    tally.check("over-centre offset", lock["over_centre_m"], past * offset, POSITION)
    tally.check("angle past centre", lock["past_centre_rad"], past * abs(locked.fold), ANGLE)
    if not mechanism.through_centre:
        return
    excursion = result["excursion"]
    tally.check("excursion", excursion["swing_rad"], mechanism.swing_straight, ANGLE)
    shortened = mechanism.shortening_data.get("amount_m", 0.0)
    if mechanism.shortening_kind == "with_travel":
        shortened = mechanism.shortening("unlock", 0.0)
    reach = np.linalg.norm(mechanism.axle + shortened * mechanism.axis - mechanism.trunnion)
    path = abs(mechanism.swing_straight) * float(reach)
    tally.check("excursion at axle", excursion["at_axle_m"], path, POSITION)
    compare_pushes(tally, mechanism, loads, lock, locked)


def compare_pushes(tally, mechanism, loads, lock, locked):
    """Work over a small step of the brace, against that of a push at the knee."""
    to_attach = locked.brace_attach - mechanism.pivot
    square = np.array([-to_attach[1], to_attach[0]]) / np.linalg.norm(to_attach)
    side = cross(to_attach, locked.knee - mechanism.pivot)
    square *= math.copysign(1.0, side)
    step, fold = 1e-4, locked.fold
    ahead, behind = (mechanism.at_fold(fold + s, 0.0) for s in (step, -step))
    ahead2, behind2 = (mechanism.at_fold(fold + s, 0.0) for s in (step / 2, -step / 2))

    def moved(value):
        coarse = value(ahead) - value(behind)
        fine = value(ahead2) - value(behind2)
        return (8 * fine - coarse) / 3

    knee = moved(lambda pose: float(np.dot(pose.knee, square)))
    lift = moved(lambda pose: float(pose.axle[1]))
    into = lock["ground_load"]["into_lock"]
    tally.check("ground load into lock", into, lift / knee, 1e-6 * (1.0 + abs(lift / knee)))
    dead = loads.at_most_1_g().without_air()
    work = moved(lambda pose: -energy(dead, mechanism, pose, None))
    size = float(np.linalg.norm(mechanism.axle - mechanism.trunnion))
    weight = weight_of(dead, mechanism, locked, size)
    tally.check("knee push", lock["knee_push_n"], work / knee, 1e-6 * (weight + abs(work / knee)))


def compare_summary(tally, loads, result):
    """Worst places and areas against the stations they sum up."""
    force = result["force"]
    tally.check("bore area", force["bore_area_m2"], loads.bore, 1e-12)
    tally.check("annulus area", force["annulus_area_m2"], loads.annulus, 1e-12)
    rows = [s["force"] for s in result["stations"] if s["force"] is not None]
    for peak, key in (("peak", "retract_pressure_pa"), ("extend_peak", "extend_pressure_pa")):
        if rows and force[peak] is not None:
            highest = max(row[key] for row in rows)
            tally.below(f"{peak} covers every station", highest, force[peak]["pressure_pa"], 1e-6)
    if force["peak"] is not None:
        available = loads.supply["available_pressure_pa"]
        tally.same("available there", force["peak"]["available_pa"], available)
        margin = (available - force["peak"]["pressure_pa"]) / available
        tally.check("pressure margin", force["peak"]["margin"], margin, 1e-12 * (1 + abs(margin)))


def compare_leg(tally, gear, leg, result):
    """Everything but the clearances of one leg. Returns its mechanism."""
    mechanism = Mechanism(leg)
    loads = Loads(gear, leg)
    compare_end(tally, mechanism, result)
    where = tally.where
    starts = begins(result["stations"])
    for station in chosen(result["stations"]):
        tally.where = f"{where}, {station['phase']} at {station['progress']:.4f}"
        pose, along, at, rises = pose_at(mechanism, station)
        compare_pose(tally, mechanism, station, pose)
        if along is not None:
            compare_force(tally, loads, mechanism, station, pose, along, at, rises, starts)
        else:
            tally.same("no force while shortening", station["force"], None)
    tally.where = where
    compare_lock(tally, mechanism, loads, result)
    compare_summary(tally, loads, result)
    return mechanism
