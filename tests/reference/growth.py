"""The growth rule once more, exactly: sympy on fractions of an inch."""

import sympy

import gearfile

# New tires (overall diameter, width, rim in inches) and grown width and diameter by the rule, as
# worked out by hand; the rule is from memory (year book of the tire and rim association).
WORKED = (
    (("14.20", "4.95", "5"), ("5.148", "14.625")),
    (("17.50", "6.30", "6"), ("6.552", "18.046")),
    (("15.20", "6.30", "6"), ("6.552", "15.761")),
    (("21.25", "7.20", "10"), ("7.488", "21.893")),
)


def exact(diameter, width, rim):
    """Grown width and diameter as fractions of an inch."""
    d, w, r = (sympy.Rational(text) for text in (diameter, width, rim))
    height = (d - r) / 2
    factor = sympy.Rational("1.115") - sympy.Rational("0.074") * height / w
    return sympy.Rational("1.04") * w, r + 2 * factor * height


def check_growth():
    """Raises AssertionError where the rule as coded here leaves the worked figures."""
    for new, printed in WORKED:
        width, diameter = exact(*new)
        for value, text in zip((width, diameter), printed):
            assert abs(value - sympy.Rational(text)) <= sympy.Rational("0.0005"), (new, value)
        metres = [float(sympy.Rational(text) * sympy.Rational("0.0254")) for text in new]
        size = gearfile.grown_size(
            {
                "diameter_m": metres[0],
                "width_m": metres[1],
                "rim_diameter_m": metres[2],
                "shoulder_radius_m": 0.0,
            }
        )
        wanted = (float(diameter) * 0.0254, float(width) * 0.0254)
        assert abs(size.diameter - wanted[0]) < 1e-12, (new, size)
        assert abs(size.width - wanted[1]) < 1e-12, (new, size)
