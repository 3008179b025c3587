"""Random structure around the way of a leg: solids and surfaces, near, touching and far."""

import math

import numpy as np
import shapely

from clearances import Barrier, clearance, stacks
from outlines import outlines

# Share of obstacles that every moving part must pass.
FREE = 0.7


def rounded(points):
    """Points to a hundredth of a millimeter."""
    return [[round(float(x), 5), round(float(y), 5)] for x, y in points]


def near_point(rng, mechanism, path):
    """A point on the wheel's or the leg's outline somewhere on the way, and the way out of it."""
    _, pose = rng.choice(path)
    drawn = outlines(mechanism, pose, mechanism.leg["wheel"]["tire"])
    part = ("wheel", "new") if rng.random() < 0.65 else ("leg_body", None)
    shape = drawn[part].drawn()
    ring = shape.exterior
    at = rng.random() * ring.length
    here = np.array(ring.interpolate(at).coords[0])
    centre = np.array(shape.centroid.coords[0])
    return here, (here - centre) / np.linalg.norm(here - centre)


def star(rng, centre, corners):
    """A closed polygon around its center, convex or not."""
    angles = sorted(rng.uniform(0.0, 2 * math.pi) for _ in range(corners))
    gaps = [b - a for a, b in zip(angles, angles[1:] + [angles[0] + 2 * math.pi])]
    if min(gaps) < 0.15 or max(gaps) > 0.95 * math.pi:
        return None
    size = rng.uniform(0.015, 0.12)
    return [
        centre + size * rng.uniform(0.5, 1.0) * np.array([math.cos(a), math.sin(a)])
        for a in angles
    ]


def draw_solid(rng, mechanism, path):
    """A solid beside the way; None when the draw is not a simple polygon."""
    here, out = near_point(rng, mechanism, path)
    away = rng.choice((rng.uniform(0.0, 0.05), rng.uniform(0.02, 0.3)))
    points = star(rng, here + (away + 0.06) * out, rng.randint(3, 9))
    if points is None:
        return None
    points = rounded(points)
    polygon = shapely.Polygon(points)
    if not polygon.is_valid or polygon.area < 1e-5:
        return None
    return {"solid": {"points_m": points}}


def draw_surface(rng, mechanism, path):
    """A skin beside the way, its free side toward the leg."""
    here, out = near_point(rng, mechanism, path)
    here = here + rng.choice((rng.uniform(0.0, 0.03), rng.uniform(0.02, 0.2))) * out
    # left of `along` is toward the leg
    along = np.array([-out[1], out[0]])
    count = rng.randint(2, 6)
    reach = rng.uniform(0.1, 0.6)
    points = []
    for place in np.linspace(-reach, reach, count):
        points.append(here + place * along + rng.uniform(0.0, 0.04) * out)
    return {"surface": {"points_m": rounded(points)}}


def draw_well(rng, mechanism, path):
    """Two to five obstacles, most of them free of the coarse path."""
    poses = [pose for _, pose in path[::2]]
    moving = stacks(mechanism, poses, mechanism.leg["wheel"]["tire"]).values()
    well = []
    wanted = rng.randint(2, 5)
    free = rng.random() < FREE
    for _ in range(200):
        if len(well) == wanted:
            break
        draw = draw_solid if rng.random() < 0.6 else draw_surface
        shape = draw(rng, mechanism, path)
        if shape is None:
            continue
        obstacle = {"name": f"Obstacle {len(well) + 1}", "shape": shape}
        least = min(clearance(Barrier(obstacle), *core)[0].min() for core in moving)
        if free and least < 0.0005:
            continue
        if rng.random() < 0.3:
            obstacle["required_clearance_m"] = round(rng.uniform(0.0, 0.03), 4)
        if rng.random() < 0.2:
            obstacle["ignores"] = [rng.choice(("leg_body", "actuator_body", "wheel"))]
        well.append(obstacle)
        free = rng.random() < FREE
    return well
