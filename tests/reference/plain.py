"""A leg station by station with scipy root finding and shapely shapes: the plain form, for timing."""

import numpy as np
import shapely

from forces import Loads, free_bodies
from mechanism import Mechanism
from outlines import obstacle, outlines


def solve(gear, leg, count):
    """Arc, forces and sampled clearances of one leg, written as one would write it first."""
    mechanism = Mechanism(leg)
    loads = Loads(gear, leg)
    tire = leg["wheel"]["tire"]
    well = []
    for described in leg.get("well", []):
        points, solid = obstacle(described["shape"])
        well.append(shapely.Polygon(points) if solid else shapely.LineString(points))
    least = {}
    thrust = []
    for share in np.linspace(0.0, 1.0, count):
        pose = mechanism.at("swing", float(share))
        try:
            thrust.append(free_bodies(loads, mechanism, pose, check=False)["thrust"])
        except np.linalg.LinAlgError:
            thrust.append(float("nan"))
        for part, outline in outlines(mechanism, pose, tire).items():
            drawn = outline.drawn()
            for number, shape in enumerate(well):
                apart = drawn.distance(shape)
                least[number, part] = min(least.get((number, part), np.inf), apart)
    return thrust, least
