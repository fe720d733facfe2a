"""As built against as predicted: difference, whether the interval holds it, and the check's verdict on what was measured."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

import numpy as np

from fitcalc.checks.check import Status
from fitcalc.documents.as_built import Measured, Reading
from fitcalc.fit.result import Result
from fitcalc.present.readings import named_values

Ends = Mapping[str, tuple[float, float]]
NOTHING: Ends = MappingProxyType({})


@dataclass(frozen=True)
class BuiltRow:
    """One reading beside its prediction.

    Attributes:
        predicted: None where the result has no such figure.
        low, high: 90 % interval of the prediction; None where none was worked out.
        expected: whether reading and interval agree within the tool's error; None without an interval.
        status: of the check with the reading in place of the prediction; None where no check limits it.
    """

    figure: str
    label: str
    unit: str
    measured: float
    error: float
    predicted: float | None
    low: float | None
    high: float | None
    expected: bool | None
    status: Status | None

    @property
    def difference(self) -> float | None:
        """Measured less predicted."""
        return None if self.predicted is None else self.measured - self.predicted


def built_rows(build: Measured, result: Result, ends: Ends = NOTHING) -> tuple[BuiltRow, ...]:
    """Every reading of a build against the first case of a result of the same rework.

    Args:
        build: what was read.
        result: the prediction.
        ends: of its 90 % intervals, by figure.
    """
    return tuple(_rows(build, result, ends))


def _rows(build: Measured, result: Result, ends: Ends) -> Iterator[BuiltRow]:
    values = named_values(result)
    figures = {figure.id: figure for figure in result.figures}
    for reading in build.readings:
        name, figure = reading.figure, figures.get(reading.figure)
        label, unit = (name.replace("_", " "), "deg") if figure is None else (figure.label, figure.unit)
        predicted = float(values[name][0]) if name in values else None
        yield _row(reading, (label, unit, predicted), ends.get(name), _status(reading, result))


def _row(
    reading: Reading,
    told: tuple[str, str, float | None],
    ends: tuple[float, float] | None,
    status: Status | None,
) -> BuiltRow:
    label, unit, predicted = told
    low, high = ends or (None, None)
    agrees = None if ends is None else ends[0] - reading.error <= reading.value <= ends[1] + reading.error
    return BuiltRow(
        reading.figure, label, unit, reading.value, reading.error, predicted, low, high, agrees, status
    )


def _status(reading: Reading, result: Result) -> Status | None:
    """The worst verdict of all limits on this figure, the reading in its place."""
    order: tuple[Status, ...] = ("fail", "advise", "pass")
    limited = (check for check in result.checks if check.figure.id == reading.figure)
    judged = {replace(c, figure=replace(c.figure, value=np.array([reading.value]))).status for c in limited}
    return next((status for status in order if status in judged), None)
