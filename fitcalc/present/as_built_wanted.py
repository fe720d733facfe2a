"""What may be entered after the work: what is set and cut, and the figures that can be measured."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from fitcalc.documents.edit import field_at
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS
from fitcalc.fit.result import Result
from fitcalc.fit.sweep import INSERTS
from fitcalc.fit.variables import PEDAL_WAYS, value_at
from fitcalc.making.pedal_bars import lap
from fitcalc.present.bench_parts import set_length
from fitcalc.present.readings import named_values, reading_of
from fitcalc.present.wording import span

SET = "Set and cut"
MADE, LENGTH = "made.", ".length"
"""Keys of what was made start so; those of the length of a bar end so too, as `made.brake.stand_off.length`."""
RULED, SET_ERROR, CUT_ERROR = "rule", 1.0, 0.5
"""Tool of what is set and cut, and what it promises by hand, plus or minus: common practice, no source."""


@dataclass(frozen=True)
class Wanted:
    """One thing that may be entered.

    Attributes:
        group: heading that it stands under.
        key: as it is named in a file or on the command line.
        tool: that it is measured with; empty where it is set, not measured.
        error: what the tool promises, plus or minus.
        expected: as planned, or as predicted; None where nothing is.
        allowed: by the limits, in words.
    """

    group: str
    key: str
    title: str
    unit: str
    tool: str
    error: float
    expected: float | None
    how: str
    allowed: str


def wanted_made(result: Result) -> tuple[Wanted, ...]:
    """What is set and cut: every number of the rework that belongs to this car, and the lengths of its bars."""
    return tuple(_wanted_made(result))


def wanted_reading(name: str, result: Result) -> Wanted:
    """What is known about one figure or angle."""
    figure = next((each for each in result.figures if each.id == name), None)
    unit = "deg" if figure is None else figure.unit
    value = named_values(result).get(name)
    how = reading_of(figure, unit)
    limits = [check for check in result.checks if check.figure.id == name]
    bounds = [span(_number(c.low), _number(c.high), unit) for c in limits if c.margin is not None]
    return Wanted(
        how.group,
        name,
        name.replace("_", " ") if figure is None else figure.label,
        unit,
        how.tool,
        how.error,
        None if value is None else float(value[0]),
        how.how,
        "; ".join(dict.fromkeys(bounds)),
    )


def _wanted_made(result: Result) -> Iterator[Wanted]:
    pedals = result.car.fitted_pedals()
    for path in PATHS:
        name, _, way = path.rpartition(".")
        planned = float(value_at(result.setup, path)[0])
        if (planned == 0.0 and (name or path in INSERTS)) or (name and name not in pedals):
            continue
        yield _setting(path, planned)
        if way in PEDAL_WAYS:
            yield _bar_length(path, set_length(planned + float(lap(pedals[name].bar)[0])))


def _setting(path: str, planned: float) -> Wanted:
    declared = field_at(Setup, path)
    tool = RULED if declared.unit == "mm" else "angle finder"
    title = f"{path.rpartition('.')[0]}: {declared.title}".removeprefix(": ")
    return Wanted(SET, MADE + path, title, declared.unit, tool, SET_ERROR, planned, declared.description, "")


def _bar_length(path: str, planned: float) -> Wanted:
    title = f"{path.rpartition('.')[0]}: {field_at(Setup, path).title} bar, length"
    how = "Over all, end to end."
    return Wanted(SET, f"{MADE}{path}{LENGTH}", title, "mm", RULED, CUT_ERROR, planned, how, "")


def _number(value: Any) -> float | None:
    return None if value is None else float(np.ravel(value)[0])
