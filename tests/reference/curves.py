"""Loads over a way: cubic splines, one behind the other where the load jumps."""

import bisect

import numpy as np
from scipy.interpolate import CubicSpline


class Curve:
    """Values over rising places, given as pieces (places, values) that begin where the last ends."""

    def __init__(self, pieces):
        self.splines = [CubicSpline(places, values) for places, values in pieces]
        # scipy's call is made for many places at once: here its coefficients are read for one
        self.starts = np.concatenate([spline.x[:-1] for spline in self.splines]).tolist()
        self.cubics = np.concatenate([spline.c for spline in self.splines], axis=1).T.tolist()

    def __call__(self, place):
        at = max(bisect.bisect_right(self.starts, place) - 1, 0)
        a, b, c, d = self.cubics[at]
        x = place - self.starts[at]
        return ((a * x + b) * x + c) * x + d

    def peak(self, start, end):
        """Largest value from one place to another."""
        found = [self(start)]
        for spline in self.splines:
            low, high = max(start, spline.x[0]), min(end, spline.x[-1])
            if low <= high:
                level = spline.derivative().roots(extrapolate=False)
                inside = level[(level > low) & (level < high)]
                found += [float(spline(x)) for x in (low, high, *inside)]
        return max(found)


class Level:
    """The same value all along."""

    def __init__(self, value):
        self.value = value

    def __call__(self, _):
        return self.value

    def peak(self, *_):
        """Largest value."""
        return self.value


def turning_points(values):
    """Places in 0 … 1 at which values given at even steps of it turn back."""
    places = np.linspace(0.0, 1.0, len(values))
    slope = CubicSpline(places, values).derivative()
    found = slope.roots(extrapolate=False)
    # at the very ends it makes no difference
    return [float(x) for x in found if 1e-6 < x < 1.0 - 1e-6]
