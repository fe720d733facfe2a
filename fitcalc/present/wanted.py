"""What a check asks for in a sentence, and which checks that must hold do not."""

from collections.abc import Iterator

import numpy as np
from pydantic import Field

from fitcalc.checks.check import Check
from fitcalc.fit.result import Result
from fitcalc.fit.sweep import required_room, shortfall
from fitcalc.present.parts import Record
from fitcalc.present.wording import amount, span
from fitcalc.units import Floats


class BrokenRecord(Record):
    """One check that must hold and does not; a knee must lie where it is recommended."""

    id: str
    label: str
    value: float
    unit: str
    wanted: str
    lacking: float = Field(description="What it lacks, in its unit.")
    movable: bool = Field(description="False where no change that is allowed moves it.")
    remedy: str


def broken_records(result: Result, settled: frozenset[str] = frozenset()) -> list[BrokenRecord]:
    """The checks of the first case that must hold and do not, what lacks most first.

    Args:
        result: as found or after a rework.
        settled: ids of checks that nothing allowed moves.
    """
    return sorted(_broken(result, settled), key=lambda each: (not each.movable, -each.lacking))


def unmade_in(result: Result) -> int:
    """How many checks could not be made for want of a measurement."""
    return sum(check.figure.value is None for check in result.checks)


def unmade_text(count: int) -> str:
    """The same as a sentence."""
    checks, they = ("1 check", "it") if count == 1 else (f"{count} checks", "they")
    return f"{checks} could not be made for want of a measurement: {they} may fail all the same (see `fitcalc check`)."


def wanted_span(check: Check) -> str:
    """The bounds that must hold, as in `110.0 to 135.0 deg`; for a knee the recommended ones."""
    low, high = required_bounds(check)
    return span(low, high, check.figure.unit)


def required_bounds(check: Check) -> tuple[float | None, float | None]:
    """Lower and upper bound that must hold in the first case."""
    wished = check.margin is None or required_room(check) is check.comfort_margin
    low, high = (check.recommended_low, check.recommended_high) if wished else (check.low, check.high)
    return _first(low), _first(high)


def named(label: str) -> str:
    """A label inside a sentence: `clutch: knee, pedal released` becomes `knee, pedal released (clutch)`."""
    head, colon, rest = label.partition(": ")
    return f"{rest} ({head})" if colon else label


def asked(check: Check) -> str:
    """A check with what it asks for, inside a sentence."""
    return f"{named(check.label)} {wanted_span(check)}"


def lacking_text(broken: BrokenRecord) -> str:
    """What is lacking, rounded up so that nobody stops short."""
    return _rounded_up(broken.lacking, broken.unit)


def _rounded_up(lacking: float, unit: str) -> str:
    """Tenths of a degree, and of a mm below ten."""
    fine = unit != "mm" or lacking < 10.0
    tenths = float(np.ceil(10.0 * lacking - 1e-6) / 10.0)
    return f"{tenths:.1f} {unit}" if fine else amount(float(np.ceil(lacking - 1e-6)), unit)


def _remedy(check: Check, value: float, lacking: float) -> str:
    """What mends it, as far as its required bound."""
    low, _ = required_bounds(check)
    is_low = low is not None and value < low
    if low is not None and is_low and check.figure.mend is not None:
        return check.figure.mend.too_low(low)
    text = check.too_low if is_low else check.too_high
    return text.replace("{margin}", _rounded_up(lacking, check.figure.unit))


def _broken(result: Result, settled: frozenset[str]) -> Iterator[BrokenRecord]:
    for check in result.checks:
        short = shortfall(check)
        if short is None or short[0] <= 0.0 or check.figure.value is None:
            continue
        value, lacking = float(check.figure.value[0]), float(short[0])
        yield BrokenRecord(
            id=check.id,
            label=check.label,
            value=value,
            unit=check.figure.unit,
            wanted=wanted_span(check),
            lacking=lacking,
            movable=check.id not in settled,
            remedy=_remedy(check, value, lacking),
        )


def _first(value: Floats | float | None) -> float | None:
    return None if value is None else float(np.ravel(value)[0])
