"""The small drawings of the measuring guide, as plain data: where the tape or the angle finder goes."""

from dataclasses import dataclass
from math import cos, radians, sin
from typing import Any

Spot = tuple[float, float]
Line = tuple[Spot, ...]


@dataclass(frozen=True)
class Tape:
    """One distance.

    Attributes:
        ends: where the tape starts and where it is read.
        label: what to write beside it.
    """

    ends: tuple[Spot, Spot]
    label: str


@dataclass(frozen=True)
class Arc:
    """One angle, between two legs from a corner.

    Attributes:
        corner: where the legs meet.
        radius: length of the legs.
        start: direction of the leg that is measured from, deg, counter-clockwise from rightward.
        end: direction of the leg that is measured, deg, counter-clockwise from rightward.
    """

    corner: Spot
    radius: float
    start: float
    end: float

    def curve(self, steps: int = 24) -> Line:
        """Points along the arc, from the leg that is measured from to the one that is measured."""
        turns = (radians(self.start + (self.end - self.start) * at / steps) for at in range(steps + 1))
        return tuple(
            (self.corner[0] + self.radius * cos(at), self.corner[1] + self.radius * sin(at)) for at in turns
        )

    def legs(self) -> Line:
        """End of the first leg, corner, end of the second leg."""
        first, *_, last = self.curve()
        return (first, self.corner, last)


@dataclass(frozen=True)
class Drawing:
    """A line drawing in a box 100 wide and 100 high, x to the right, y up.

    Attributes:
        lines: outlines, each a run of points.
        circles: centre x, centre y, radius.
        thin: axle line, level plane, centre plane, and what moves in its other position.
        tapes: the measured distances; a point has one for each coordinate.
        arcs: the measured angles.
        spots: points that are measured, or the place where a scale is read.
        label: what to write beside an arc, or beside the spots where there is no tape.
    """

    lines: tuple[Line, ...]
    circles: tuple[tuple[float, float, float], ...]
    thin: tuple[Line, ...]
    tapes: tuple[Tape, ...]
    arcs: tuple[Arc, ...]
    spots: tuple[Spot, ...]
    label: str


def drawing(row: dict[str, Any], figures: dict[str, Any], label: str) -> Drawing:
    """One entry's drawing.

    Args:
        row: names its `figure`, or several drawn together, and gives any of `tape` (two ends), `tapes` (by label),
            `arcs`, `spots`, and `point`: x, z and perhaps y of a point whose tapes start at the figure's `origin`.
        figures: the base figures by name.
        label: what is measured.
    """
    names = row["figure"] if isinstance(row["figure"], list) else [row["figure"]]
    pieces = [figures[name] for name in names]
    tapes = {label: row["tape"]} if "tape" in row else row.get("tapes", {})
    if "point" in row:
        tapes = tapes | _point(next(piece["origin"] for piece in pieces if "origin" in piece), row["point"])
    return Drawing(
        lines=_together(pieces, "lines"),
        circles=_together(pieces, "circles"),
        thin=_together(pieces, "thin"),
        tapes=tuple(Tape(_fixed(ends), name) for name, ends in tapes.items()),
        arcs=tuple(Arc(**{key: _fixed(value) for key, value in arc.items()}) for arc in row.get("arcs", ())),
        spots=_fixed(row.get("spots", [row["point"][:2]] if "point" in row else [])),
        label=label,
    )


def _together(pieces: list[dict[str, Any]], kind: str) -> tuple[Any, ...]:
    return tuple(_fixed(one) for piece in pieces for one in piece.get(kind, ()))


def _fixed(value: Any) -> Any:
    """Lists as tuples, whole numbers as floats."""
    return tuple(_fixed(one) for one in value) if isinstance(value, list | tuple) else float(value)


def _point(origin: list[float], point: list[float]) -> dict[str, tuple[Spot, Spot]]:
    """The tapes of a point's coordinates; none for one that is zero."""
    axle, level, centre = origin
    x, z, y = (*point, centre)[:3]
    tapes = {"x": ((axle, z), (x, z)), "z": ((x, level), (x, z)), "y": ((x, centre), (x, y))}
    return {name: ends for name, ends in tapes.items() if ends[0] != ends[1]}
