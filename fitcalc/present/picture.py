"""A drawing as plain data: primitives in mm, up positive, with line types by name and no colours.

Every primitive has a `key` that stays the same from one picture of the same view to the next, a `style` that names a
line type or a role, and a `ref`: the path of what it shows, with its document in front (`car.hoops.main_top`,
`setup.seat_travel`, `driver.helmet`), or the id of the check it annotates; empty where nothing stands behind it.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Literal, TypeAlias

import numpy as np

from fitcalc.units import Points

XY: TypeAlias = tuple[float, float]
View = Literal["side", "plan", "pads"]
AXES: dict[View, tuple[int, int]] = {"side": (0, 2), "plan": (0, 1), "pads": (1, 2)}
"""Which axes of the car's frame run to the right and up in each view; the pads are seen looking forward."""

Style = Literal[
    "outline",
    "thin outline",
    "hidden",
    "centre",
    "extreme",
    "assumed",
    "solid",
    "ground",
    "seat",
    "pad",
    "strap",
    "body",
    "joint",
    "link",
    "kit",
    "shoe",
    "as found",
    "other driver",
    "other joint",
    "limit area",
    "keep out area",
    "dimension",
    "pass",
    "advise",
    "fail",
    "not assessed",
    "rework",
    "note",
    "handle",
]
"""Line types of ISO 128-2 (outline: continuous wide; hidden: dashed narrow; centre: long-dashed dotted narrow; extreme:
long-dashed double-dotted narrow, for the far position of what moves) and roles that a painter gives its pens to."""


@dataclass(frozen=True)
class Line:
    """An open line through points."""

    key: str
    style: Style
    ref: str
    points: tuple[XY, ...]


@dataclass(frozen=True)
class Area:
    """A closed outline, filled as its style says."""

    key: str
    style: Style
    ref: str
    points: tuple[XY, ...]


@dataclass(frozen=True)
class Circle:
    """A circle, filled as its style says."""

    key: str
    style: Style
    ref: str
    centre: XY
    radius: float


@dataclass(frozen=True)
class Arc:
    """An angle with its value: from `start`, through `sweep`, degrees, 0 = to the right, positive = toward up."""

    key: str
    style: Style
    ref: str
    centre: XY
    radius: float
    start: float
    sweep: float
    text: str


@dataclass(frozen=True)
class Dimension:
    """A distance with its value after ISO 129-1.

    Attributes:
        start, end: what it is measured between.
        aside: how far the dimension line stands off the measured points, to the left of the way from start to end.
        inches: the same words with the length in inches; empty where they have none.
    """

    key: str
    style: Style
    ref: str
    start: XY
    end: XY
    text: str
    aside: float = 0.0
    inches: str = ""


@dataclass(frozen=True)
class Text:
    """Words beside a point; `inches` are the same with their length in inches, empty where it has none."""

    key: str
    style: Style
    ref: str
    at: XY
    text: str
    inches: str = ""


@dataclass(frozen=True)
class Handle:
    """A grip that a person can drag.

    Attributes:
        ref: path of what the drag changes.
        along: the only direction it moves in, as a unit vector; None when it moves freely in the view.
    """

    key: str
    style: Style
    ref: str
    at: XY
    along: XY | None = None


Primitive: TypeAlias = Line | Area | Circle | Arc | Dimension | Text | Handle
Bounds: TypeAlias = tuple[float, float, float, float]


@dataclass(frozen=True)
class Legend:
    """What one style stands for in this picture."""

    style: Style
    text: str


@dataclass(frozen=True)
class Picture:
    """One view, drawn back to front.

    Attributes:
        axes: names of the axes to the right and up.
        runs_out: starts of the keys of what may run out of the page.
    """

    view: View
    title: str
    axes: tuple[str, str]
    primitives: tuple[Primitive, ...]
    runs_out: tuple[str, ...] = ()
    legend: tuple[Legend, ...] = ()

    @cached_property
    def frame(self) -> Bounds:
        """Left, bottom, right and top of what should fill the page; worked out when it is first asked for."""
        return bounds_of(each for each in self.primitives if not each.key.startswith(self.runs_out))

    @property
    def bounds(self) -> Bounds:
        """Left, bottom, right and top of everything drawn."""
        return bounds_of(self.primitives)

    def about(self, ref: str) -> Iterator[Primitive]:
        """What shows a path, anything below that path, or a check."""
        return (each for each in self.primitives if is_about(each, ref))


def in_inches(picture: Picture) -> Picture:
    """The same picture with its lengths in inches; the geometry stays in mm."""
    return replace(picture, primitives=tuple(_in_inches(each) for each in picture.primitives))


def _in_inches(primitive: Primitive) -> Primitive:
    match primitive:
        case Text() | Dimension() if primitive.inches:
            return replace(primitive, text=primitive.inches)
    return primitive


def is_about(primitive: Primitive, ref: str) -> bool:
    """Whether a primitive shows this path, anything below it, or this check."""
    return primitive.ref == ref or primitive.ref.startswith(f"{ref}.")


def points_of(primitive: Primitive) -> tuple[XY, ...]:
    """The points that span a primitive."""
    match primitive:
        case Line() | Area():
            return primitive.points
        case Circle() | Arc():
            (x, y), r = primitive.centre, primitive.radius
            return ((x - r, y - r), (x + r, y + r))
        case Dimension():
            return (primitive.start, primitive.end, *offset_line(primitive))
    return (primitive.at,)


def offset_line(dimension: Dimension) -> tuple[XY, XY]:
    """Start and end of the dimension line: the measured points, moved aside."""
    (x1, y1), (x2, y2) = dimension.start, dimension.end
    size = float(np.hypot(x2 - x1, y2 - y1)) or 1.0
    dx, dy = -(y2 - y1) / size * dimension.aside, (x2 - x1) / size * dimension.aside
    return (x1 + dx, y1 + dy), (x2 + dx, y2 + dy)


def bounds_of(primitives: Iterable[Primitive]) -> Bounds:
    """Left, bottom, right and top; all zero for nothing."""
    points = [point for primitive in primitives for point in points_of(primitive)]
    if not points:
        return (0.0, 0.0, 0.0, 0.0)
    across, up = zip(*points, strict=True)
    return (min(across), min(up), max(across), max(up))


def seen(points: Points, view: View) -> XY:
    """The first case of points `(n, 3)` as seen in a view."""
    right, up = AXES[view]
    return float(points[0, right]), float(points[0, up])
