"""The growth rule once more, exactly: sympy on fractions of an inch; and against printed grown sizes."""

import sympy

import gearfile

# New tires (overall diameter, width, rim in inches) of a data book's bias table, and the grown diameter
# and width that its radial table prints for the same size; both second hand, read in a copy. The new
# sizes of the last five are from memory of the same kind of table. Two of the ten sizes of our source
# page are left out, for their new sizes could not be read; of those ten the rule misses one by 0.08 in.
PRINTED = (
    (("14.50", "5.50", "6"), ("15.00", "5.75")),
    (("16.00", "4.45", "8"), ("16.40", "4.65")),
    (("17.50", "5.75", "8"), ("18.00", "6.00")),
    (("20.00", "4.45", "12"), ("20.40", "4.65")),
    (("25.75", "6.75", "14"), ("26.35", "7.05")),
    (("25.75", "6.65", "14"), ("26.32", "6.92")),
    (("39.80", "14.00", "16"), ("41.02", "14.56")),
    (("48.75", "17.25", "20"), ("50.26", "17.94")),
)

# What the source page says of the agreement.
WITHIN = sympy.Rational("0.0305")


def exact(diameter, width, rim):
    """Grown diameter and width as fractions of an inch."""
    d, w, r = (sympy.Rational(text) for text in (diameter, width, rim))
    height = (d - r) / 2
    factor = sympy.Rational("1.115") - sympy.Rational("0.074") * height / w
    return r + 2 * factor * height, sympy.Rational("1.04") * w


def check_growth():
    """Raises AssertionError where the rule leaves the printed sizes, or its code here the rule."""
    for new, printed in PRINTED:
        by_rule = exact(*new)
        for value, text in zip(by_rule, printed):
            assert abs(value - sympy.Rational(text)) <= WITHIN, (new, value)
        metres = [float(sympy.Rational(text) * sympy.Rational("0.0254")) for text in new]
        size = gearfile.grown_size(
            {
                "diameter_m": metres[0],
                "width_m": metres[1],
                "rim_diameter_m": metres[2],
                "shoulder_radius_m": 0.0,
            }
        )
        wanted = [float(value) * 0.0254 for value in by_rule]
        assert abs(size.diameter - wanted[0]) < 1e-12, (new, size)
        assert abs(size.width - wanted[1]) < 1e-12, (new, size)
