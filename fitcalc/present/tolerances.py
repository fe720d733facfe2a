"""How exactly a dimension must be made, and how well the tape knows what it follows from."""

import math
import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Literal

from fitcalc.sources import Source

Work = Literal["medium", "coarse"]
"""Tolerance class: medium for what is marked out, punched and drilled, coarse for what is sawn."""
FILE = Path(__file__).parent / "data" / "iso_2768_1.toml"
Steps = tuple[tuple[float, float], ...]


def tolerance(nominal: float, work: Work) -> float:
    """General tolerance of a length, plus or minus, mm; longer than the table counts as its last step."""
    steps = _classes()[work]
    return next((value for most, value in steps if abs(nominal) <= most), steps[-1][1])


@cache
def tolerance_source() -> Source:
    """Where the tolerances come from."""
    file = tomllib.loads(FILE.read_text(encoding="utf-8"))
    return Source(document=file["document"], edition=file["edition"], confidence=file["confidence"])


def tape_doubt(*tolerances: float) -> float:
    """What several tape readings leave open together, plus or minus, mm: the root of their summed squares.

    Source: independent errors add so (textbook, from memory); estimates of the body are not in it.
    """
    return math.hypot(*tolerances)


@cache
def _classes() -> Mapping[Work, Steps]:
    rows = tomllib.loads(FILE.read_text(encoding="utf-8"))["class"]
    return MappingProxyType({name: tuple((a, b) for a, b in row["steps"]) for name, row in rows.items()})
