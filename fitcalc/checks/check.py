"""A figure, the limit it meets, and what follows."""

import math
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, Protocol

import numpy as np

from fitcalc.sources import Source
from fitcalc.units import Bools, Floats, Points

Status = Literal["pass", "advise", "fail", "not assessed"]
STATUSES: tuple[Status, ...] = ("fail", "advise", "not assessed", "pass")
"""Worst first."""
ROUNDING = 1e-9
"""A figure that stands on its limit holds it; arithmetic must not decide (mm, deg)."""


class Mend(Protocol):
    """What mends one figure, worked out from the case itself."""

    def too_low(self, bound: float) -> str:
        """One imperative sentence for the first case, whose figure lies below `bound`."""
        ...


@dataclass(frozen=True, eq=False)
class Figure:
    """One thing measured on the case.

    Attributes:
        id: dotted and stable, as in `harness.shoulder_left.side_angle`.
        quantity: the limit key it is held against, as in `harness.shoulder.side_angle`.
        label: what it is, in words.
        unit: of the value and of its limits.
        value: `(n,)`; None where it could not be measured, and then `missing` says for want of what.
        evidence: the points it was measured between, each `(n, 3)`, for the drawing.
        missing: path of the measurement that is lacking, with a word on it.
        absent: `(n,)`, cases that have no such part, as no bar; None where every case has it.
        mend: says what mends it in place of the quantity's own sentence, where the case tells more.
    """

    id: str
    quantity: str
    label: str
    unit: str
    value: Floats | None
    evidence: tuple[Points, ...] = ()
    missing: str = ""
    absent: Bools | None = None
    mend: Mend | None = None

    @property
    def is_absent(self) -> bool:
        """Whether the first case has no such part."""
        return self.absent is not None and bool(self.absent[0])


def not_measured(id: str, quantity: str, label: str, unit: str, missing: str) -> Figure:
    """A figure that could not be measured for want of `missing`."""
    return Figure(id, quantity, label, unit, None, (), missing)


@dataclass(frozen=True, eq=False)
class Check:
    """A figure against one limit.

    Attributes:
        id: the figure's own; where several rows limit it, the further ones carry `@` and the row's id.
        low, high: must hold; None where there is no such bound. A bound may differ by case, `(n,)`.
        recommended_low, recommended_high: should hold.
        rules: id of the limit set.
        limit: id of the row in that set; empty when no row limits this figure.
        source: where the bounds come from.
        too_low, too_high: what would mend it; `{margin}` stands for what is lacking.
    """

    id: str
    figure: Figure
    low: Floats | None
    high: Floats | None
    recommended_low: Floats | None
    recommended_high: Floats | None
    rules: str
    limit: str
    source: Source | None
    too_low: str
    too_high: str

    @property
    def label(self) -> str:
        """What is checked, in words."""
        return self.figure.label

    @cached_property
    def margin(self) -> Floats | None:
        """Distance to the nearer bound that must hold, `(n,)`; negative = broken, None = nothing to tell."""
        return _room(self.figure.value, self.low, self.high)

    @cached_property
    def comfort_margin(self) -> Floats | None:
        """Distance to the nearer recommended bound, `(n,)`; negative = outside the recommendation."""
        return _room(self.figure.value, self.recommended_low, self.recommended_high)

    @property
    def fails(self) -> Bools:
        """Where a bound that must hold is broken, `(n,)`."""
        return self._broken(self.margin)

    @property
    def advises(self) -> Bools:
        """Where only a recommendation is broken, `(n,)`."""
        return self._broken(self.comfort_margin) & ~self.fails

    def _broken(self, margin: Floats | None) -> Bools:
        broken = np.zeros(1, dtype=bool) if margin is None else margin < -ROUNDING
        return broken if self.figure.absent is None else broken & ~self.figure.absent

    @cached_property
    def status(self) -> Status:
        """Of the first case."""
        if self.figure.value is None or (self.margin is None and self.comfort_margin is None):
            return "not assessed"
        if self.fails[0]:
            return "fail"
        return "advise" if self.advises[0] else "pass"

    @property
    def remedy(self) -> str:
        """What would mend the first case; for one that was not assessed, what is missing; else empty."""
        if self.figure.value is None:
            return f"measure {self.figure.missing}" if self.figure.missing else ""
        if self.status == "not assessed":
            return f"No limit on this was found for the set {self.rules}: look in the rule book."
        if self.status == "pass":
            return ""
        failed = bool(self.fails[0])
        low, room = (self.low, self.margin) if failed else (self.recommended_low, self.comfort_margin)
        is_low = low is not None and self.figure.value[0] < np.ravel(low)[0]
        if low is not None and is_low and self.figure.mend is not None:
            return self.figure.mend.too_low(float(np.ravel(low)[0]))
        lacking = 0.0 if room is None else -float(room[0])
        return (self.too_low if is_low else self.too_high).replace(
            "{margin}", enough(lacking, self.figure.unit)
        )


def enough(lacking: float, unit: str) -> str:
    """What is lacking with its unit, rounded up: making it up is enough."""
    decimals = 0 if unit == "mm" and lacking >= 10.0 else 1
    steps = 10.0**decimals
    return f"{math.ceil(lacking * steps - ROUNDING) / steps:.{decimals}f} {unit}"


def _room(value: Floats | None, low: Floats | None, high: Floats | None) -> Floats | None:
    if value is None:
        return None
    above = None if low is None else value - low
    below = None if high is None else high - value
    if above is None or below is None:
        return below if above is None else above
    return np.minimum(above, below)
