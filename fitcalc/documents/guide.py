"""The measuring guide for car and driver: what is measured and how, usual error, what it decides, a small drawing.

What to measure and how stands once, in the fields of the car and driver file; `data/guide_*.toml` adds the rest.
"""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any

from fitcalc.documents.car import Car
from fitcalc.documents.declared import Declared, declared_at
from fitcalc.documents.driver import Driver
from fitcalc.documents.fields import Document
from fitcalc.documents.guide_drawing import Drawing, drawing

DATA = Path(__file__).with_name("data")
FILES: Mapping[type[Document], str] = MappingProxyType({Car: "guide_car.toml", Driver: "guide_driver.toml"})
DRAWN = ("figure", "tape", "tapes", "arcs", "spots", "point")


@dataclass(frozen=True)
class Guide:
    """How to take one measurement.

    Attributes:
        field: its path in the file, as in `measurements.knee_height`; `*` stands for any pedal and any entry of a
            list, as in `pedals.*.arm`. A point or a line has one guide for all its coordinates.
        title: what is measured.
        how: where the tape or the angle finder goes.
        care: what commonly goes wrong.
        error: usual error by hand, plus or minus, in `unit`; common practice, no source.
        unit: unit of the field.
        decides: what it influences most, in words.
        informs: dimensions of the body whose estimate it sharpens most.
        drawing: where the tape or the angle finder goes.
    """

    field: str
    title: str
    how: str
    care: str
    error: float
    unit: str
    decides: str
    drawing: Drawing
    informs: tuple[str, ...] = ()


@cache
def guides(document_type: type[Document]) -> Mapping[str, Guide]:
    """Every measurement's guide by its path, in the order of measuring; empty for a document that is not measured."""
    if document_type not in FILES:
        return MappingProxyType({})
    file = tomllib.loads((DATA / FILES[document_type]).read_text(encoding="utf-8"))
    rows = file["guide"]
    return MappingProxyType({row["field"]: _guide(document_type, row, file["figure"]) for row in rows})


def guide_for(document_type: type[Document], path: str) -> Guide | None:
    """The guide of a field, or of the point, line or list that it belongs to; None where it is no measurement."""
    steps = path.split(".")
    fitting = (guide for guide in guides(document_type).values() if _covers(guide.field, steps))
    return max(fitting, key=lambda guide: guide.field.count("."), default=None)


def example_path(field: str) -> str:
    """A path that a pattern stands for: the brake pedal, the first entry of a list."""
    return field.replace("pedals.*", "pedals.brake").replace("*", "0")


def _covers(field: str, steps: list[str]) -> bool:
    pattern = field.removesuffix(".*").split(".")
    return len(pattern) <= len(steps) and all(
        one in ("*", step) for one, step in zip(pattern, steps, strict=False)
    )


def _guide(document_type: type[Document], row: dict[str, Any], figures: dict[str, Any]) -> Guide:
    declared = _declared(document_type, row["field"])
    told = {key: value for key, value in row.items() if key not in (*DRAWN, "informs")}
    return Guide(
        title=declared.title,
        how=declared.description,
        unit=declared.unit or "mm",
        drawing=drawing(row, figures, declared.title),
        informs=tuple(row.get("informs", ())),
        **told,
    )


def _declared(document_type: type[Document], field: str) -> Declared:
    """What is declared about a measured field; an entry of a list has the list's own words."""
    declared = declared_at(document_type, example_path(field.removesuffix(".*")))
    assert declared is not None, field
    return declared
