"""As built against as predicted: difference, whether the interval holds it, and the check's verdict on what was measured."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from fitcalc.checks.check import Status
from fitcalc.documents.as_built import Build, Reading
from fitcalc.fit.certainty import Certainty
from fitcalc.fit.result import Result
from fitcalc.present.joints import angles_of
from fitcalc.present.tables import Table
from fitcalc.present.wording import MARKS, amount, signed


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


def built_rows(build: Build, result: Result, sure: Certainty | None = None) -> tuple[BuiltRow, ...]:
    """Every reading of a build against the first case of a result of the same rework."""
    return tuple(_rows(build, result, sure))


def built_table(build: Build, rows: tuple[BuiltRow, ...]) -> Table:
    """The comparison for a person."""
    header = ("what", "measured", "predicted", "difference", "interval", "agrees", "verdict")
    return Table(f"As built, {build.date}: {build.car}", header, tuple(_line(row) for row in rows))


def _rows(build: Build, result: Result, sure: Certainty | None) -> Iterator[BuiltRow]:
    spread = {} if sure is None else {each.id: (each.low, each.high) for each in sure.figures}
    angles = angles_of(result.sitting)
    figures = {figure.id: figure for figure in result.figures}
    for reading in build.readings:
        name, figure = reading.figure, figures.get(reading.figure)
        if figure is not None:
            predicted = None if figure.value is None else float(figure.value[0])
            row = (figure.label, figure.unit, predicted)
        else:
            row = (name.replace("_", " "), "deg", float(angles[name][0]) if name in angles else None)
        yield _row(reading, row, spread.get(name), _status(reading, result))


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


def _line(row: BuiltRow) -> tuple[str, ...]:
    ends = (
        "-"
        if row.low is None or row.high is None
        else f"{amount(row.low, row.unit)} to {amount(row.high, row.unit)}"
    )
    agrees = {None: "-", True: "yes", False: "no"}[row.expected]
    verdict = "-" if row.status is None else f"{MARKS[row.status]} {row.status}"
    gap = "-" if row.difference is None else signed(row.difference, row.unit)
    return (
        row.label,
        amount(row.measured, row.unit),
        amount(row.predicted, row.unit),
        gap,
        ends,
        agrees,
        verdict,
    )
