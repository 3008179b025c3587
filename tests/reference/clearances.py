"""Signed clearances by shapely, over many poses at once."""

import numpy as np
import shapely

from outlines import obstacle, outlines


class Barrier:
    """An obstacle: its line, and which side of it is free."""

    def __init__(self, described):
        self.points, self.solid = obstacle(described["shape"])
        closed = np.vstack([self.points, self.points[:1]])
        self.line = shapely.LineString(closed if self.solid else self.points)
        self.area = shapely.Polygon(self.points) if self.solid else None
        shapely.prepare(self.line)

    def behind(self, points):
        """Whether each point is inside of the solid, or on the wrong side of the surface.

        A surface's side is that of the nearest edge; at a corner that of both edges' normals
        added; past an end of the surface everything is free.
        """
        if self.solid:
            return shapely.contains_xy(self.area, points[:, 0], points[:, 1])
        a, b = self.points[:-1], self.points[1:]
        along = b - a
        span = np.linalg.norm(along, axis=1)
        unit = along / span[:, None]
        normal = np.stack([-unit[:, 1], unit[:, 0]], axis=1)
        to = points[:, None, :] - a[None]
        place = np.einsum("nej,ej->ne", to, unit)
        foot = a[None] + np.clip(place, 0.0, span)[..., None] * unit[None]
        away = points[:, None, :] - foot
        distance = np.linalg.norm(away, axis=2)
        edge = np.argmin(distance, axis=1)
        row = np.arange(len(points))
        side = normal[edge].copy()
        before, after = place[row, edge] < 0.0, place[row, edge] > span[edge]
        last = len(a) - 1
        free = (before & (edge == 0)) | (after & (edge == last))
        inner = after & (edge < last)
        side[inner] += normal[edge[inner] + 1]
        inner = before & (edge > 0)
        side[inner] += normal[edge[inner] - 1]
        return ~free & (np.einsum("nj,nj->n", away[row, edge], side) < 0.0)


def shapes(cores):
    """Shapely shapes of a stack of cores (poses × points × 2)."""
    if cores.shape[1] == 1:
        return shapely.points(cores[:, 0])
    if cores.shape[1] == 2:
        return shapely.linestrings(cores)
    return shapely.polygons(cores)


def stacks(mechanism, poses, tire):
    """{(part, tire size): (poses × points × 2, radius)} of every moving part."""
    drawn = [outlines(mechanism, pose, tire) for pose in poses]
    return {
        part: (np.array([d[part].core for d in drawn]), drawn[0][part].radius)
        for part in drawn[0]
    }


def clearance(barrier, cores, radius):
    """Clearance of a stack of cores [m], and whether each core itself is in the obstacle.

    A core that is clear of the obstacle gives an exact figure, negative where only the radius
    reaches in. A core in the obstacle gives minus the radius: the depth is at least that.
    """
    made = shapes(cores)
    apart = shapely.distance(made, barrier.line)
    count, corners = cores.shape[:2]
    inside = barrier.behind(cores.reshape(-1, 2)).reshape(count, corners).any(axis=1)
    if barrier.solid and corners >= 3:
        # a small obstacle wholly within a large outline
        inside |= shapely.contains_xy(made, *barrier.points[0])
    inside |= apart == 0.0
    return np.where(inside, 0.0, apart) - radius, inside


def steps(cores):
    """Largest move of any point of the outline between neighboring poses [m].

    Every point of a core lies between its corners, so that none moves farther than they do.
    """
    return np.linalg.norm(np.diff(cores, axis=0), axis=2).max(axis=1)


# Spacing of the points by which a depth is looked at [m].
SPACING = 2e-4


def dense(points, closed):
    """Points along a line, `SPACING` apart at most."""
    ends = np.vstack([points, points[:1]]) if closed and len(points) > 2 else points
    if len(ends) == 1:
        return ends
    rows = []
    for a, b in zip(ends[:-1], ends[1:]):
        count = max(int(np.ceil(np.linalg.norm(b - a) / SPACING)), 1)
        rows.append(a + np.linspace(0.0, 1.0, count + 1)[:, None] * (b - a))
    return np.vstack(rows)


def depth(barrier, core):
    """How deep a core goes past an obstacle, or the obstacle into the core [m], by dense points.

    The true figure is at least this and at most `SPACING` more; 0 when neither is in the other.
    """
    deepest = 0.0
    points = dense(core, len(core) > 2)
    past = points[barrier.behind(points)]
    if len(past):
        deepest = float(shapely.distance(shapely.points(past), barrier.line).max())
    if len(core) > 2:
        made = shapely.Polygon(core)
        points = dense(barrier.points, barrier.solid)
        held = points[shapely.contains_xy(made, points[:, 0], points[:, 1])]
        if len(held):
            deepest = max(
                deepest, float(shapely.distance(shapely.points(held), made.exterior).max())
            )
    return deepest
