"""What was compared, how well it agreed, and what did not."""

import math
from collections import defaultdict

import numpy as np


class Tally:
    """Counts comparisons by quantity and keeps every disagreement."""

    def __init__(self):
        self.count = defaultdict(int)
        self.worst = defaultdict(float)
        self.skipped = defaultdict(int)
        self.failures = []
        self.sprung = 0
        self.where = ""

    def check(self, quantity, found, wanted, tolerance):
        """Compares numbers or points; `tolerance` is absolute."""
        found, wanted = np.asarray(found, float), np.asarray(wanted, float)
        self.count[quantity] += 1
        off = float(np.max(np.abs(found - wanted)))
        # written so that a NaN fails
        if not off <= tolerance:
            self._fail(quantity, found, wanted, f"differ by {off:.3e}, allowed {tolerance:.3e}")
        elif tolerance > 0.0:
            self.worst[quantity] = max(self.worst[quantity], off / tolerance)

    def below(self, quantity, low, high, slack):
        """Requires low ≤ high + slack."""
        self.count[quantity] += 1
        if not low <= high + slack:
            self._fail(quantity, low, high, f"the first is above the second by {low - high:.3e}")

    def same(self, quantity, found, wanted):
        """Compares anything else."""
        self.count[quantity] += 1
        if found != wanted:
            self._fail(quantity, found, wanted, "differ")

    def skip(self, quantity):
        """Counts a comparison that a singular pose forbids."""
        self.skipped[quantity] += 1

    def add(self, other):
        """Takes in another tally."""
        for quantity, count in other.count.items():
            self.count[quantity] += count
        for quantity, worst in other.worst.items():
            self.worst[quantity] = max(self.worst[quantity], worst)
        for quantity, skipped in other.skipped.items():
            self.skipped[quantity] += skipped
        self.failures += other.failures
        self.sprung += other.sprung

    def _fail(self, quantity, found, wanted, why):
        self.failures.append(f"{self.where}: {quantity}: program {found}, here {wanted}: {why}")

    def report(self):
        """Lines of a table: quantity, comparisons, skipped, worst share of the tolerance."""
        names = sorted(set(self.count) | set(self.skipped))
        wide = max(map(len, names), default=0)
        yield f"{'quantity':{wide}}  compared  skipped  worst/tolerance"
        for name in names:
            worst = self.worst.get(name, math.nan)
            shown = "" if math.isnan(worst) else f"{worst:.2g}"
            yield f"{name:{wide}}  {self.count[name]:8d}  {self.skipped[name]:7d}  {shown}"
