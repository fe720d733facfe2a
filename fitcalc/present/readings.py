"""What can be measured on the car after the work: which figures, by which tool, how well."""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

import numpy as np
from pydantic import BaseModel, ConfigDict, Field

from fitcalc.checks.check import Figure
from fitcalc.documents.as_built import Tool
from fitcalc.fit.predicted import Readout
from fitcalc.fit.result import Result
from fitcalc.present.joints import angles_of
from fitcalc.units import Floats

FILE = Path(__file__).parent / "data" / "as_built.toml"


class HowRead(BaseModel):
    """How one quantity is read; `error` is what the tool promises by hand, in the quantity's unit."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False)

    quantity: str
    group: str
    tool: Tool
    error: float = Field(gt=0)
    how: str


DEFAULT = HowRead(quantity="", group="Further", tool="other", error=1.0, how="")
ANGLE = HowRead(quantity="", group="Further", tool="angle finder", error=2.0, how="")
"""Of a figure that the list does not name: common practice, no source."""


@cache
def readings() -> Mapping[str, HowRead]:
    """Everything that is asked for, by its quantity, in the order of reading."""
    rows = tomllib.loads(FILE.read_text(encoding="utf-8"))["reading"]
    return MappingProxyType({row["quantity"]: HowRead.model_validate(row) for row in rows})


def reading_of(figure: Figure | None, unit: str) -> HowRead:
    """How a figure is read."""
    known = None if figure is None else readings().get(figure.quantity)
    return known or (ANGLE if unit == "deg" else DEFAULT)


def readable(result: Result) -> tuple[Figure, ...]:
    """The figures of a result that are asked for after the work, in the order of reading."""
    order = list(readings())
    there = [f for f in result.figures if f.value is not None and f.quantity in order and not f.is_absent]
    return tuple(sorted(there, key=lambda figure: order.index(figure.quantity)))


def named_values(result: Result) -> dict[str, Floats]:
    """Every figure by its id and every joint angle by its name, over the cases."""
    figures = {figure.id: figure.value for figure in result.figures if figure.value is not None}
    return {**angles_of(result.sitting), **figures}


def readout(names: tuple[str, ...]) -> Readout:
    """What reads these figures and angles off a result, `(m, n)`."""

    def read(result: Result) -> Floats:
        values = named_values(result)
        return np.stack(np.broadcast_arrays(*(values[name] for name in names)))

    return read
