"""One part as a dimensioned drawing: primitives in mm of the part, dimension lines placed for one scale."""

from collections.abc import Iterator

from fitcalc.present.bench_parts import Callout, Part, bench_number
from fitcalc.present.picture import (
    XY,
    Area,
    Bounds,
    Circle,
    Dimension,
    Line,
    Picture,
    Primitive,
    Text,
    bounds_of,
)

FIRST, STEP = 8.0, 7.0
"""From the part to its first dimension line, and from one to the next, mm on paper: ISO 129-1 asks for clear room."""
BEYOND = 3.0
"""How far a centre line runs beyond its hole, mm on paper."""
CORNER = 1.0 - 0.5**0.5
"""Where a quarter round meets the bisector of its corner, in radii from both sides."""
APART = 18.0
"""From the part to its section, mm on paper."""
DIAMETER = "\N{LATIN CAPITAL LETTER O WITH STROKE}"
"""Stands for the diameter sign; every font has it."""


def part_drawing(part: Part, scale: float) -> Picture:
    """The part with its dimensions and the section beside it.

    Args:
        part: with a shape to draw.
        scale: mm on paper for a mm of the part.
    """
    primitives = tuple(_drawn(part, scale))
    return Picture("plan", part.title, ("", ""), primitives)


def part_bounds(part: Part) -> Bounds:
    """Left, bottom, right and top of the part alone."""
    return bounds_of([Line("span", "outline", part.id, tuple(part.points()))])


def _drawn(part: Part, scale: float) -> Iterator[Primitive]:
    for at, outline in enumerate(part.outlines):
        yield Area(f"{part.id}.outline.{at}", "outline", part.id, outline.points())
    for at, hole in enumerate(part.holes):
        yield Circle(f"{part.id}.hole.{at}", "outline", part.id, hole.at, hole.diameter / 2)
        yield from _centre(f"{part.id}.hole.{at}", hole.at, hole.diameter / 2 + BEYOND / scale)
    for at, line in enumerate(part.scribed):
        yield Line(f"{part.id}.scribed.{at}", "centre", part.id, line.points)
        if line.text:
            yield Text(f"{part.id}.scribed.{at}.text", "note", part.id, line.points[0], line.text)
    for callout in part.callouts:
        yield _dimension(callout, part, scale)
    yield from _hole_note(part)
    yield from _radius_note(part)
    yield from _section(part, scale)


def _centre(key: str, at: XY, reach: float) -> Iterator[Primitive]:
    x, y = at
    yield Line(f"{key}.level", "centre", key, ((x - reach, y), (x + reach, y)))
    yield Line(f"{key}.upright", "centre", key, ((x, y - reach), (x, y + reach)))


def _dimension(callout: Callout, part: Part, scale: float) -> Dimension:
    """A dimension line below, above, right or left of the whole part, clear of it."""
    left, bottom, right, top = part_bounds(part)
    (x1, y1), (x2, y2) = callout.start, callout.end
    off = (FIRST + STEP * (abs(callout.row) - 1)) / scale
    level = abs(x2 - x1) >= abs(y2 - y1)
    if level:
        aside = bottom - y1 - off if callout.row > 0 else top - y1 + off
    else:
        aside = -(right - x1 + off) if callout.row > 0 else x1 - left + off
    text = bench_number(part.size(callout.key).value)
    return Dimension(
        f"{part.id}.{callout.key}", "dimension", part.id, callout.start, callout.end, text, aside
    )


def _hole_note(part: Part) -> Iterator[Primitive]:
    if part.holes:
        last = part.holes[-1]
        text = f"{len(part.holes)} x {DIAMETER}{bench_number(part.size('hole').value)}"
        at = (last.at[0] + last.diameter / 2, last.at[1] + last.diameter / 2)
        yield Text(f"{part.id}.holes", "dimension", part.id, at, text)


def _radius_note(part: Part) -> Iterator[Primitive]:
    """The corner radius of a slot, beside its upper left corner."""
    radius = next((size.value for size in part.sizes if size.key == "radius"), None)
    if radius is not None:
        left, _, _, top = bounds_of([Area("span", "outline", part.id, part.outlines[0].points())])
        corner = (left + radius * CORNER, top - radius * CORNER)
        yield Text(f"{part.id}.radius", "dimension", part.id, corner, f"4 x R{bench_number(radius)}")


def _section(part: Part, scale: float) -> Iterator[Primitive]:
    if not part.section:
        return
    _, bottom, right, _ = part_bounds(part)
    rows = max((each.row for each in part.callouts if abs(each.end[0] - each.start[0]) < 1e-9), default=0)
    left = right + (APART + STEP * rows) / scale
    placed, bore = (tuple((x + left, y + bottom) for x, y in line) for line in (part.section, part.bore))
    yield Area(f"{part.id}.section", "thin outline" if bore else "solid", part.id, placed)
    if bore:
        yield Area(f"{part.id}.bore", "thin outline", part.id, bore)
    wide = max(x for x, _ in placed)
    off = -FIRST / scale
    yield Dimension(
        f"{part.id}.section.size",
        "dimension",
        part.id,
        (left, bottom),
        (wide, bottom),
        part.section_text,
        off,
    )
