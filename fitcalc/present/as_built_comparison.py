"""What was made and measured held against plan and prediction, as the record of it."""

from collections.abc import Iterator

import numpy as np

from fitcalc.documents.as_built import Build, History, Tool
from fitcalc.fit.explain import Explanation, Shift, explain
from fitcalc.fit.predicted import Work, interval
from fitcalc.fit.result import Result
from fitcalc.fit.variables import value_at
from fitcalc.present.as_built_record import (
    BuildRecord,
    BuiltRecord,
    ExplanationRecord,
    MadeRecord,
    ReadingRecord,
    ShiftRecord,
    WantedRecord,
)
from fitcalc.present.as_built_rows import BuiltRow, Ends, built_rows
from fitcalc.present.as_built_wanted import LENGTH, MADE, Wanted, wanted_made, wanted_reading
from fitcalc.present.readings import readable, readout
from fitcalc.present.tolerances import tolerance
from fitcalc.present.wording import CAUTIONS

LEAST_STRAIN = 0.1
"""Shifts smaller than this part of a figure's own uncertainty are not told."""
MOST, MOST_ALONE = 6, 4
"""Most shifts that are told: shared ones, and figures that might alone be behind the difference."""
TELLING, FARTHEST = 0.3, 4.0
"""The latter explain at least this part of it, off by at most so many standard uncertainties: design inference."""
EXPECTED, ODD = 1.5, 3.0
"""Up to the first the differences are ordinary, from the second on they are hardly chance: design inference."""


def built_record(
    build: Build, planned: Result, made: Result, history: History | None = None, rules: str | None = None
) -> BuiltRecord:
    """The record of one build.

    Args:
        build: what was made and read.
        planned: the result of the rework as planned.
        made: the result of the rework as made: the prediction of the readings.
        history: the builds so far, this one among them where it was saved.
        rules: as both results were asked for.
    """
    work = Work(made.car, made.driver, made.setup, rules)
    names = tuple(reading.figure for reading in build.readings)
    asked = () if names else tuple(figure.id for figure in readable(made))
    ends = _ends(work, names or asked)
    explained = _explained(build, work, names) if names else None
    left = {} if explained is None else dict(zip(names, explained.left.tolist(), strict=True))
    rows = zip(built_rows(build, made, ends), build.readings, strict=True)
    return BuiltRecord(
        date=build.date,
        car=made.car.name,
        driver=made.driver.name,
        rules=planned.rules.id,
        documents=build.documents,
        planned=planned.setup,
        made=made.setup,
        wanted=list(_wanted(planned, made, asked, ends)),
        work=list(_work(build, planned)) if build.readings or made.setup != planned.setup else [],
        readings=[
            _reading(row, reading.tool, reading.note, left.get(reading.figure)) for row, reading in rows
        ],
        explanation=None if explained is None else _explanation(explained),
        history=[_build(each) for each in (history.builds if history else ())],
        cautions=list(CAUTIONS),
    )


def with_history(record: BuiltRecord, history: History) -> BuiltRecord:
    """The record with these builds as its history."""
    return record.model_copy(update={"history": [_build(each) for each in history.builds]})


def with_predictions(build: Build, record: BuiltRecord) -> Build:
    """The build with what the calculation said beside each reading, for the history."""
    told = {row.figure: row for row in record.readings}
    readings = [
        reading.model_copy(
            update={
                name: _to_keep(getattr(told[reading.figure], name)) for name in ("predicted", "low", "high")
            }
        )
        for reading in build.readings
    ]
    return build.model_copy(update={"readings": tuple(readings)})


def _to_keep(value: float | None) -> float | None:
    return None if value is None else round(value, 2)


def _ends(work: Work, names: tuple[str, ...]) -> Ends:
    if not names:
        return {}
    low, high = interval(work, readout(names))
    return {name: (float(a), float(b)) for name, a, b in zip(names, low, high, strict=True)}


def _explained(build: Build, work: Work, names: tuple[str, ...]) -> Explanation:
    values = np.array([reading.value for reading in build.readings])
    errors = np.array([reading.error for reading in build.readings])
    return explain(work, readout(names), values, errors)


def _wanted(planned: Result, made: Result, asked: tuple[str, ...], ends: Ends) -> Iterator[WantedRecord]:
    if asked:
        for each in (*wanted_made(planned), *(wanted_reading(name, made) for name in asked)):
            yield _want(each, ends.get(each.key, (None, None)))


def _want(wanted: Wanted, ends: tuple[float | None, float | None]) -> WantedRecord:
    told = {name: getattr(wanted, name) for name in wanted.__dataclass_fields__}
    return WantedRecord(**told, low=ends[0], high=ends[1])


def _work(build: Build, planned: Result) -> Iterator[MadeRecord]:
    cut = {bar.bar: bar.length for bar in build.bars}
    for each in wanted_made(planned):
        path = each.key.removeprefix(MADE)
        bar = path.removesuffix(LENGTH)
        if path != bar and bar not in cut:
            continue
        made = cut[bar] if path != bar else float(value_at(build.made, path)[0])
        expected = each.expected or 0.0
        if made == expected == 0.0:
            continue
        off, bound = made - expected, tolerance(expected, "coarse") if each.unit == "mm" else None
        within = None if bound is None else abs(off) <= bound + 1e-9
        yield MadeRecord(
            key=each.key, title=each.title, unit=each.unit, planned=expected, made=made, difference=off,
            tolerance=bound, within=within,
        )  # fmt: skip


def _reading(row: BuiltRow, tool: Tool, note: str, left: float | None) -> ReadingRecord:
    told = {name: getattr(row, name) for name in row.__dataclass_fields__}
    return ReadingRecord(**told, tool=tool, note=note, difference=row.difference, left=left)


def _explanation(found: Explanation) -> ExplanationRecord:
    told = [shift for shift in found.shifts if shift.strain >= LEAST_STRAIN][:MOST]
    told += [shift for shift in _plausible_alone(found) if shift not in told]
    return ExplanationRecord(
        surprise=found.surprise,
        verdict=_verdict(found.surprise),
        would_explain=[_shift(shift) for shift in told],
    )


def _plausible_alone(found: Explanation) -> list[Shift]:
    """Figures that a person can measure again and that might alone be behind it, the most telling first."""
    can = [shift for shift in found.shifts if shift.suspect.kind != "proportion"]
    may = [
        shift for shift in can if shift.explains >= TELLING and abs(shift.alone) <= FARTHEST * shift.suspect.u
    ]
    return sorted(may, key=lambda shift: -shift.explains)[:MOST_ALONE]


def _verdict(surprise: float) -> str:
    if surprise <= EXPECTED:
        return (
            "The readings differ no more than tape, estimates and tools let expect: nothing has to be wrong."
        )
    if surprise <= ODD:
        return (
            "The readings differ more than is ordinary: read the largest difference again, "
            "then measure the first figures below."
        )
    return "The readings differ far more than the uncertainties let expect: something was misread, or is not as the files say."


def _shift(shift: Shift) -> ShiftRecord:
    s = shift.suspect
    return ShiftRecord(
        kind=s.kind, path=s.path, title=s.title, unit=s.unit, now=s.now, u=s.u, together=shift.together,
        alone=shift.alone, explains=shift.explains,
    )  # fmt: skip


def _build(build: Build) -> BuildRecord:
    return BuildRecord(
        date=build.date,
        car=build.car,
        documents=build.documents,
        note=build.note,
        made=build.made,
        readings={each.figure: each.value for each in build.readings},
        predicted={each.figure: each.predicted for each in build.readings if each.predicted is not None},
    )
