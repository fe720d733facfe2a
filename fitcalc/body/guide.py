"""The measuring guide for body and kit: where the tape goes, usual error, what it decides, a small drawing.

What to measure and how stands once, in the driver file's fields; `data/guide.toml` adds the rest.
"""

import tomllib
from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any

from pydantic import BaseModel, ConfigDict

from fitcalc.body.survey import DATA
from fitcalc.documents.driver import Driver

Spot = tuple[float, float]


class Drawing(BaseModel):
    """A line drawing in a box 100 wide and 100 high, x to the right, y up.

    Attributes:
        lines: outlines, each a run of points.
        circles: centre x, centre y, radius.
        tape: the two ends of the measured distance.
        label: what to write beside the tape.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)

    lines: tuple[tuple[Spot, ...], ...]
    circles: tuple[tuple[float, float, float], ...] = ()
    tape: tuple[Spot, Spot]
    label: str


class Guide(BaseModel):
    """How to take one measurement.

    Attributes:
        field: path in the driver file, as in `measurements.knee_height`.
        title: what is measured.
        how: where the tape goes.
        care: what commonly goes wrong.
        error: usual error by hand, plus or minus, in the field's unit; common practice, no source.
        decides: what it influences most, in words.
        informs: dimensions whose estimate it sharpens most.
        drawing: where the tape goes.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)

    field: str
    title: str
    how: str
    care: str
    error: float
    decides: str
    informs: tuple[str, ...] = ()
    drawing: Drawing


@cache
def guides() -> Mapping[str, Guide]:
    """Every body and kit measurement's guide by its path in the driver file, in the order of measuring."""
    file = tomllib.loads((DATA / "guide.toml").read_text(encoding="utf-8"))
    return MappingProxyType({row["field"]: _guide(row, file["figure"]) for row in file["guide"]})


def guide_for(field: str) -> Guide | None:
    """The guide of a field of the driver file, or none where the field is no measurement."""
    return guides().get(field)


def _guide(row: dict[str, Any], figures: dict[str, Any]) -> Guide:
    info = _field(row["field"])
    drawing = Drawing(**figures[row.pop("figure")], tape=row.pop("tape"), label=info.title.split(",")[0])
    return Guide(title=info.title, how=info.description, drawing=drawing, **row)


def _field(path: str) -> Any:
    """How the driver file declares a field."""
    model: Any = Driver
    *parts, last = path.split(".")
    for part in parts:
        model = model.model_fields[part].annotation
    return model.model_fields[last]
