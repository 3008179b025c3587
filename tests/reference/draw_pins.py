"""Random rubbing pins of a leg."""

from friction import joints_of
from mechanism import Mechanism


def draw_pins(rng, leg, radii, frictions, most_left_out=0, couples=None):
    """Radius [m] and coefficient of friction of the pins of a leg, by their names in the gear file.

    `radii` and `frictions` are the least and the largest; up to `most_left_out` pins do not rub; with `couples`, as
    least and largest [N·m], a third of the others are tight besides.
    """
    names = [name for name, _, _ in joints_of(Mechanism(leg))]
    for _ in range(rng.randint(0, most_left_out) if most_left_out else 0):
        names.remove(rng.choice(names))
    pins = {
        name: {
            "radius_m": round(rng.uniform(*radii), 4),
            "friction": round(rng.uniform(*frictions), 3),
        }
        for name in names
    }
    if couples is not None:
        for pin in pins.values():
            if rng.random() < 1 / 3:
                pin["couple_n_m"] = round(rng.uniform(*couples), 3)
    return pins
