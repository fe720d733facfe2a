"""Picking cases out of anything that has them as its leading axis."""

from collections.abc import Iterable, Mapping
from dataclasses import is_dataclass, replace
from typing import Any, TypeVar

import numpy as np

from fitcalc.checks.check import Check, Figure
from fitcalc.documents.setup import Setup
from fitcalc.fit.result import Result
from fitcalc.fit.variables import PEDAL_WAYS, value_at
from fitcalc.posture.cases import spread
from fitcalc.units import Floats

Anything = TypeVar("Anything")
PEDALS = ("clutch", "brake", "throttle")
PATHS = (
    "seat_travel",
    "seat_raise",
    "recline",
    "box_travel",
    "wheel_spacer",
    "shoulder_anchor_raise",
    "cushion_insert",
    "back_insert",
    *(f"{name}.{way}" for name in PEDALS for way in PEDAL_WAYS),
)
"""Every number of a setup."""


def taken(thing: Anything, at: np.ndarray) -> Anything:
    """The same thing with these cases; an array of one case stands for all and is left as it is."""
    return _taken(thing, at)


def _taken(thing: Any, at: np.ndarray) -> Any:
    if isinstance(thing, np.ndarray):
        return thing if len(thing) == 1 else thing[at]
    if thing is None or isinstance(thing, (str, float, bool)):
        return thing
    if isinstance(thing, tuple):
        return tuple(_taken(part, at) for part in thing)
    if isinstance(thing, Mapping):
        return {name: _taken(part, at) for name, part in thing.items()}
    if is_dataclass(thing) and not isinstance(thing, type):
        return type(thing)(*(_taken(getattr(thing, name), at) for name in thing.__dataclass_fields__))
    return thing


def setup_at(setup: Setup, case: int) -> Setup:
    """One case of a setup over cases, as a document."""
    values = {path: float(np.resize(value_at(setup, path), case + 1)[case]) for path in PATHS}
    plain = {path: value for path, value in values.items() if "." not in path}
    pedals = {name: {way: values[f"{name}.{way}"] for way in PEDAL_WAYS} for name in PEDALS}
    return Setup.model_validate({"name": setup.name, "note": setup.note, **plain, **pedals})


def result_at(result: Result, case: int) -> Result:
    """One case of a result over cases."""
    at = np.array([case])
    one = {figure.id: taken(figure, at) for figure in result.figures}
    figures = tuple(figure for figure in one.values() if not figure.is_absent)
    checks = tuple(_check_at(check, one[check.figure.id], at) for check in result.checks)
    return replace(
        result,
        setup=setup_at(result.setup, case),
        links=taken(result.links, at),
        sitting=taken(result.sitting, at),
        work=taken(dict(result.work), at),
        figures=figures,
        checks=tuple(check for check in checks if not check.figure.is_absent),
    )


def _check_at(check: Check, figure: Figure, at: np.ndarray) -> Check:
    bounds = {name: getattr(check, name) for name in ("low", "high", "recommended_low", "recommended_high")}
    moving = {name: bound[at] for name, bound in bounds.items() if bound is not None and len(bound) > 1}
    return replace(check, figure=figure, **moving)


def setup_of(values: Mapping[str, Floats]) -> Setup:
    """A setup of which every number is an array over the same cases; what is not named stays as found."""
    count = max((len(value) for value in values.values()), default=1)
    named = {path: np.zeros(1) for path in PATHS} | dict(values)
    return spread(Setup(), {path: np.broadcast_to(value, (count,)) for path, value in named.items()})


def moving(setup: Setup, paths: Iterable[str] = PATHS) -> tuple[str, ...]:
    """Numbers of the setup that differ from case to case."""
    return tuple(path for path in paths if np.ptp(value_at(setup, path)) > 0.0)


def crossed(axes: Mapping[str, Floats]) -> dict[str, Floats]:
    """Every combination of the values of several variables, flat, the last one running fastest."""
    grids = np.meshgrid(*axes.values(), indexing="ij")
    return dict(zip(axes, (grid.ravel() for grid in grids), strict=True))


def joined(setups: Iterable[Mapping[str, Floats]]) -> dict[str, Floats]:
    """Lists of reworks one after another; a variable that one of them lacks is 0 there."""
    every = [dict(each) for each in setups]
    paths = {path: None for each in every for path in each}
    sizes = [max((len(value) for value in each.values()), default=1) for each in every]
    return {
        path: np.concatenate(
            [
                np.broadcast_to(each.get(path, np.zeros(1)), (size,))
                for each, size in zip(every, sizes, strict=True)
            ]
        )
        for path in paths
    }
