"""Numbers that look as if they were written in another unit."""

Factors = tuple[tuple[float, str], ...]

LENGTH: Factors = (
    (10, "in cm"),
    (25.4, "in inches"),
    (1000, "in metres"),
    (0.1, "ten times too large"),
    (1 / 25.4, "turned from inches into mm twice"),
    (0.001, "a thousand times too large"),
    (-1, "on the wrong side of zero"),
)
MASS: Factors = (
    (0.45359237, "in pounds"),
    (1 / 9.80665, "in newtons"),
    (0.001, "in grams"),
    (10, "ten times too small"),
    (0.1, "ten times too large"),
    (-1, "on the wrong side of zero"),
)
FACTORS = {"mm": LENGTH, "kg": MASS}


def slip_hint(value: float, low: float, high: float, unit: str = "mm") -> str:
    """What a number outside its span looks like; empty when nothing plausible brings it inside.

    That a number made smaller fits tells nothing where 0 does too.

    Args:
        value: what was given.
        low: least number allowed.
        high: greatest number allowed.
        unit: the unit it should be in.
    """
    telling = [pair for pair in FACTORS.get(unit, ()) if abs(pair[0]) >= 1 or not low <= 0 <= high]
    inside = [(value * factor, slip) for factor, slip in telling if low <= value * factor <= high]
    guesses = [f"{slip} ({right:.4g} {unit} would fit)" for right, slip in inside]
    return f"it looks as if it is {' or '.join(guesses)}" if guesses else ""
