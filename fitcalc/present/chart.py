"""A plot as plain data: two axes, and lines, areas and marks in the axes' own units, with styles and no colours."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, TypeAlias

from fitcalc.present.picture import XY, Area, Legend, Line, Style

Shape = Literal["cross", "ring", "dot", "tick", "none"]
Side = Literal["left", "right", "above", "below", "centre"]
NICE = (1.0, 2.0, 2.5, 5.0, 10.0)


@dataclass(frozen=True)
class Tick:
    """One place of an axis, with what stands beside it."""

    at: float
    text: str


@dataclass(frozen=True)
class Axis:
    """One axis; `low` is at the left or at the bottom.

    Attributes:
        label: with unit and sense; empty where the ticks speak for themselves.
        unit: mm where places along it are lengths; then it stands in the label too.
        ruled: whether thin lines run across the plot at the ticks.
    """

    label: str
    low: float
    high: float
    ticks: tuple[Tick, ...]
    ruled: bool = True
    unit: str = ""


@dataclass(frozen=True)
class Spot:
    """A mark of fixed size at a place, with words on one side of it.

    Attributes:
        framed: whether the words stand on white with a thin frame, as a number that names a line.
    """

    key: str
    style: Style
    ref: str
    at: XY
    shape: Shape
    text: str = ""
    side: Side = "right"
    framed: bool = False


ChartMark: TypeAlias = Line | Area | Spot


@dataclass(frozen=True)
class Chart:
    """One plot, drawn back to front.

    Attributes:
        aspect: height of the plot for its width.
        legend: what styles and shapes stand for; a shape's entry says which shape.
        notes: sentences below it.
    """

    title: str
    x: Axis
    y: Axis
    marks: tuple[ChartMark, ...]
    legend: tuple["ChartLegend", ...] = ()
    notes: tuple[str, ...] = ()
    aspect: float = 0.66


@dataclass(frozen=True)
class ChartLegend(Legend):
    """What a style stands for, as a line, an area or a mark."""

    kind: Literal["line", "area", "spot"] = "line"
    shape: Shape = "none"


def even_ticks(low: float, high: float, most: int = 8) -> tuple[Tick, ...]:
    """At most so many round values between two others."""
    span = high - low
    rough = span / max(most - 1, 1)
    scale = 10.0 ** math.floor(math.log10(rough))
    step = next(scale * nice for nice in NICE if scale * nice >= rough - 1e-12)
    first = math.ceil(low / step - 1e-9)
    count = math.floor(high / step + 1e-9) - first + 1
    places = (round(step * (first + at), 9) for at in range(count))
    return tuple(Tick(place, f"{place:g}") for place in places)


def ticks_at(places: Sequence[float]) -> tuple[Tick, ...]:
    """Ticks at given places."""
    return tuple(Tick(place, f"{place:g}") for place in places)


def row_axis(names: Sequence[str]) -> Axis:
    """Rows from the top, the first at 0, the next at -1."""
    ticks = tuple(Tick(-float(at), name) for at, name in enumerate(names))
    return Axis("", 0.4 - max(len(names), 1), 0.6, ticks, ruled=False)
