"""Words and numbers as a person reads them."""

import math

from fitcalc.units import MM_PER_INCH

CAUTIONS = (
    "A wrong belt, seat or pedal can kill. This is arithmetic on your tape measurements, not an approval.",
    "The current rule book of your event, the harness maker's instructions and the scrutineer decide; limits marked "
    "second-hand, from memory or as common practice were not read in the rule itself.",
    "Welded and load-carrying parts belong to somebody qualified: have them checked by a licensed engineer.",
    "Body figures that were not measured are estimates; measure again after each step, belted, in full kit.",
    'A check marked "not assessed" was not made. It says nothing about being safe.',
)

MARKS = {"pass": "+", "advise": "!", "fail": "X", "not assessed": "?"}
"""A mark beside each status word, so that status is never colour alone."""

DECIMALS = {"mm": 0, "in": 2, "deg": 1, "kg": 1, "N": 0, "MPa": 1, "ratio": 2, "-": 2, "%": 1, "points": 0}


FINEST = 3
"""Decimals beyond which a difference is nothing."""


def number(value: float, unit: str) -> str:
    """A value rounded to what its unit deserves, without a negative zero."""
    text = f"{value:.{DECIMALS.get(unit, 2)}f}"
    return text[1:] if text.startswith("-") and float(text) == 0.0 else text


def length(value: float, inches: bool = False) -> str:
    """A length in mm, or the same in inches, rounded and without its unit."""
    return number(value / MM_PER_INCH, "in") if inches else number(value, "mm")


def amount(value: float | None, unit: str) -> str:
    """A rounded value with its unit; a dash for none."""
    if value is None:
        return "-"
    return f"{number(value, unit)}{_suffix(unit)}"


def signed(value: float, unit: str) -> str:
    """A value with its sign and unit, rounded, but never to nothing: a margin tells on which side it lies."""
    decimals = DECIMALS.get(unit, 2)
    while round(value, decimals) == 0.0 and decimals < FINEST:
        decimals += 1
    text = f"{value:+.{decimals}f}" if round(value, decimals) else number(value, unit)
    return f"{text}{_suffix(unit)}"


def span(low: float | None, high: float | None, unit: str) -> str:
    """An allowed range in words; a bound that a rule gives to a tenth keeps it."""
    if low is not None and high is not None:
        return f"{_bound(low, unit)} to {_bound(high, unit)}{_suffix(unit)}"
    if low is not None:
        return f"at least {_bound(low, unit)}{_suffix(unit)}"
    return f"at most {_bound(high, unit)}{_suffix(unit)}" if high is not None else "-"


def seat_move(travel: float) -> str:
    """Seat travel in words; positive = forward."""
    if math.isclose(travel, 0.0, abs_tol=0.05):
        return "leave the seat where it is"
    return f"move the seat {abs(travel):.0f} mm {'forward' if travel > 0 else 'rearward'} along its rail"


def _bound(value: float, unit: str) -> str:
    in_tenths = math.isclose(10.0 * value, round(10.0 * value), abs_tol=1e-9)
    return f"{value:.1f}" if in_tenths and value % 1.0 and DECIMALS.get(unit, 2) == 0 else number(value, unit)


def _suffix(unit: str) -> str:
    return "" if unit in ("-", "ratio") else f" {unit}"
