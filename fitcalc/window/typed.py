"""What a person types for a number, read as it is meant."""

import re

from fitcalc.errors import InputError
from fitcalc.units import KG_PER_POUND, MM_PER_INCH
from fitcalc.window.shown import Shown

NUMBER = re.compile(r"\s*([+-]?(?:\d+[.,]?\d*|[.,]\d+))\s*([a-zA-Z\"°]*)\s*", re.ASCII)
TO_STORED = {
    "mm": {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH, '"': MM_PER_INCH},
    "kg": {"kg": 1.0, "lb": KG_PER_POUND, "lbs": KG_PER_POUND},
    "deg": {"deg": 1.0, "°": 1.0},
}
"""Units that may be typed behind a number, by the unit it is stored in."""


def stored_number(text: str, unit: str, shown: Shown, field: str) -> float:
    """The number in its stored unit; without a unit behind it, it is in the unit shown.

    Raises:
        InputError: it is no number, or its unit does not belong here.
    """
    found = NUMBER.fullmatch(text)
    units = TO_STORED.get(unit, {})
    if found is None or (found[2] and found[2].lower() not in units):
        behind = f", with or without one of {', '.join(units)}" if units else ""
        raise InputError(field, f'"{text.strip()}"', f"must be a number{behind}")
    value = float(found[1].replace(",", "."))
    return value * units[found[2].lower()] if found[2] else shown.stored(value, unit)
