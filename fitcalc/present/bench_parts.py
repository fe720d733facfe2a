"""Parts to make as plain data: sizes with tolerance and interval, outlines to cut, holes to drill, lines to scribe.

Coordinates are mm in the part's own plane, x to the right, y up. Every number is already rounded to what the bench can
set, so that paper, DXF, SVG and tables all say the same.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from types import MappingProxyType
from typing import Literal

from fitcalc.present.picture import XY
from fitcalc.present.tolerances import Work, tolerance

Layer = Literal["CUT", "DRILL", "ENGRAVE"]
Basis = Literal["90 %", "tape", ""]
Vertex = tuple[float, float, float]
"""x, y, and the bulge of the edge to the next vertex: tangent of a quarter of its arc, positive = anticlockwise."""
Ends = tuple[float, float]
NOTHING: Mapping[str, Ends] = MappingProxyType({})
QUARTER = math.tan(math.pi / 8.0)
ARC_STEPS = 12
WIDE, HAIR = 10.0, 1e-6


@dataclass(frozen=True)
class Size:
    """One dimension of a part.

    Attributes:
        key: stable within the part, as in `length`.
        name: in trade words.
        tolerance: to make it to, plus or minus.
        interval: low and high of what the measurements leave open; None where it follows from none.
        basis: of the interval: "90 %" of the drawn cars and bodies, or "tape" tolerances alone.
    """

    key: str
    name: str
    value: float
    unit: Literal["mm", "deg"]
    tolerance: float
    interval: tuple[float, float] | None = None
    basis: Basis = ""


@dataclass(frozen=True)
class Outline:
    """A closed line to cut."""

    vertices: tuple[Vertex, ...]

    def points(self) -> tuple[XY, ...]:
        """The line as points, arcs in short chords."""
        closed = (*self.vertices, self.vertices[0])
        return tuple(point for a, b in pairwise(closed) for point in _edge(a, b))


@dataclass(frozen=True)
class Hole:
    """A hole to drill."""

    at: XY
    diameter: float


@dataclass(frozen=True)
class Scribe:
    """An open line to scribe, with a word beside its start."""

    points: tuple[XY, ...]
    text: str = ""


@dataclass(frozen=True)
class Callout:
    """Where the drawing shows a size.

    Attributes:
        key: of the size.
        start, end: what it is measured between.
        row: which dimension line off the part: 1, 2... below or to the right, -1, -2... above or to the left.
    """

    key: str
    start: XY
    end: XY
    row: int = 1


@dataclass(frozen=True)
class Part:
    """One thing to make.

    Attributes:
        id: stable, as in `brake.stand_off`.
        stock: what it is made from, as one asks for it.
        outlines: to cut; empty where the shape is traced from another part.
        openings: cut inside a larger thing that is not drawn whole, as a slot in the shell.
        section: outline of the cross-section, or of a plate or spacer seen from its edge; empty for a mere cut.
        bore: inside of the section of a tube.
        section_text: what its dimension says, as the thickness.
        notes: what else the maker must know.
    """

    id: str
    title: str
    quantity: int
    material: str
    stock: str
    sizes: tuple[Size, ...]
    outlines: tuple[Outline, ...] = ()
    holes: tuple[Hole, ...] = ()
    scribed: tuple[Scribe, ...] = ()
    callouts: tuple[Callout, ...] = ()
    section: tuple[XY, ...] = ()
    bore: tuple[XY, ...] = ()
    section_text: str = ""
    notes: tuple[str, ...] = ()

    @property
    def drawn(self) -> bool:
        """Whether there is a shape to draw."""
        return bool(self.outlines or self.holes)

    def size(self, key: str) -> Size:
        """The size with this key."""
        return next(size for size in self.sizes if size.key == key)

    def points(self) -> Iterator[XY]:
        """Points that span the part."""
        for outline in self.outlines:
            yield from outline.points()
        for hole in self.holes:
            (x, y), r = hole.at, hole.diameter / 2
            yield from ((x - r, y - r), (x + r, y + r))
        for line in self.scribed:
            yield from line.points


@dataclass(frozen=True)
class Step:
    """Work without a new part: something is moved or set."""

    title: str
    text: str


@dataclass(frozen=True)
class Bench:
    """Everything that one rework asks of the bench."""

    steps: tuple[Step, ...]
    parts: tuple[Part, ...]


def bench_number(value: float) -> str:
    """A size as it is set at the bench, to 0.1 mm."""
    return f"{value:.1f}".removesuffix(".0")


def set_length(value: float) -> float:
    """A length as the bench can set it: to 0.1 mm, without a negative zero."""
    return round(float(value), 1) + 0.0


def rounded_out(low: float, high: float) -> tuple[float, float]:
    """An interval as it is told: ends to a whole mm where it is wide, and never narrower than it is."""
    step = 1.0 if high - low > WIDE else 0.1
    return set_length(math.floor(low / step + HAIR) * step), set_length(math.ceil(high / step - HAIR) * step)


def size(key: str, name: str, value: float, work: Work, doubt: float | None = None) -> Size:
    """A length with the tolerance of its kind of work, and plus or minus `doubt` as its interval."""
    nominal = set_length(value)
    interval = None if doubt is None else (set_length(nominal - doubt), set_length(nominal + doubt))
    basis: Basis = "" if interval is None else "tape"
    return Size(key, name, nominal, "mm", tolerance(nominal, work), interval, basis)


def edge_view(thickness: float, height: float) -> tuple[XY, ...]:
    """A plate or spacer seen from its edge, from its lower left corner."""
    return ((0.0, 0.0), (thickness, 0.0), (thickness, height), (0.0, height))


def rectangle(left: float, bottom: float, right: float, top: float) -> Outline:
    """A rectangle, anticlockwise."""
    return Outline(((left, bottom, 0.0), (right, bottom, 0.0), (right, top, 0.0), (left, top, 0.0)))


def round_ended(length: float, height: float, radius: float) -> Outline:
    """A level slot about the origin with rounded corners, anticlockwise."""
    x, y, r = length / 2, height / 2, radius
    corners = (
        (-x + r, -y, 0.0), (x - r, -y, QUARTER), (x, -y + r, 0.0), (x, y - r, QUARTER),
        (x - r, y, 0.0), (-x + r, y, QUARTER), (-x, y - r, 0.0), (-x, -y + r, QUARTER),
    )  # fmt: skip
    return Outline(tuple(corners))


def _edge(start: Vertex, end: Vertex) -> Iterator[XY]:
    """Points of one edge without its end."""
    (x1, y1, bulge), (x2, y2, _) = start, end
    yield x1, y1
    if bulge == 0.0 or (x1, y1) == (x2, y2):
        return
    sweep = 4.0 * math.atan(bulge)
    off = math.hypot(x2 - x1, y2 - y1) / 2.0 / math.tan(sweep / 2.0)
    half = math.hypot(x2 - x1, y2 - y1)
    cx, cy = (x1 + x2) / 2 - (y2 - y1) / half * off, (y1 + y2) / 2 + (x2 - x1) / half * off
    for step in range(1, ARC_STEPS):
        turn = sweep * step / ARC_STEPS
        c, s = math.cos(turn), math.sin(turn)
        yield cx + c * (x1 - cx) - s * (y1 - cy), cy + s * (x1 - cx) + c * (y1 - cy)
