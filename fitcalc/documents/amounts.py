"""Numbers as a person writes them: decimal point or comma, inches with fractions, a unit behind."""

import re
from collections.abc import Mapping
from types import MappingProxyType

from fitcalc.units import KG_PER_POUND, MM_PER_INCH

FACTORS: Mapping[str, Mapping[str, float]] = MappingProxyType(
    {
        "mm": {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH},
        "kg": {"kg": 1.0, "lb": KG_PER_POUND},
        "deg": {"deg": 1.0},
    }
)
"""By the unit that the files have: what other units may be written, and what a number in them is multiplied by."""
MINUS = "\N{MINUS SIGN}"
NUMBER = re.compile(
    r"(?P<sign>[-+]?)\s*(?:(?P<whole>\d+)[\s-]+(?P<over>\d+)/(?P<under>\d+)|(?P<top>\d+)/(?P<low>\d+)"
    r"|(?P<plain>(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?))\s*(?P<unit>[^\d\s]*)"
)
SIGNS: Mapping[str, str] = MappingProxyType({'"': "in", "inch": "in", "\N{DEGREE SIGN}": "deg", "lbs": "lb"})
LARGEST = 1e9


def amount_of(text: str, unit: str, written_in: str = "") -> float | None:
    """A number in `unit`; None where the text is none, or stands in a unit that does not belong there.

    Args:
        text: as written, as in "271.5", "271,5", "10 5/8 in" or "-3".
        unit: of the field.
        written_in: unit of a number that names none; the field's own when empty.
    """
    found = NUMBER.fullmatch(text.strip().replace(",", ".").replace(MINUS, "-"))
    factor = None if found is None else factor_of(found["unit"] or written_in, unit)
    if found is None or factor is None:
        return None
    try:
        value = factor * _size(found) * (-1.0 if found["sign"] == "-" else 1.0)
    except (ZeroDivisionError, OverflowError):
        return None
    return value if abs(value) < LARGEST else None


def factor_of(written_in: str, unit: str) -> float | None:
    """What a number in one unit is multiplied by to stand in the field's own; None where they don't go together."""
    plain = written_in.strip().lower()
    given = SIGNS.get(plain, plain)
    if given in ("", "-", unit):
        return 1.0
    return FACTORS.get(unit, {}).get(given)


def units_for(unit: str) -> tuple[str, ...]:
    """The units that may be written where the files have this one."""
    return tuple(FACTORS.get(unit, {unit: 1.0}))


def _size(found: re.Match[str]) -> float:
    if found["plain"]:
        return float(found["plain"])
    over, under = found["over"] or found["top"], found["under"] or found["low"]
    return int(found["whole"] or 0) + int(over) / int(under)
