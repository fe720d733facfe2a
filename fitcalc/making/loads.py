"""Design loads at the foot, each with the rule it comes from or the word assumption."""

from functools import cache
from typing import Literal

from fitcalc.making.tables import Row, read_rows

SIDEWAYS = 10.0
"""Foot forces are also taken as leaning this far sideways, degrees: this project's assumption."""

STEEL_SAFETY = 1.5
"""Factor of safety on yield to aim for in steel: common practice, no source."""

WELDED_ALLOY_SAFETY = 2.0
"""Factor of safety on yield to aim for in welded aluminium: common practice, no source."""


class FootLoad(Row):
    """One foot load in N at the pad."""

    use: Literal["brake", "clutch", "throttle", "comparison", "fatigue"]
    force: float
    meaning: str


@cache
def foot_loads() -> tuple[FootLoad, ...]:
    """Every foot load that the program knows, those for comparison included."""
    return read_rows("design_loads.toml", FootLoad)


def design_load(pedal: str) -> FootLoad:
    """The load that clutch, brake or throttle must carry."""
    return next(row for row in foot_loads() if row.use == pedal)
