"""True-scale templates: parts at 1:1 with check bars, on several pages with overlap marks where one is too small."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from fitcalc.paper.flow import SMALL, TEXT, Strip, flowed
from fitcalc.paper.frame import area, check_bars
from fitcalc.paper.lettering import ASCENT, LEADING, printable, wrapped
from fitcalc.paper.page import GREY, Box, Mark, Page, Paper, Stroke, Words, circle, moved
from fitcalc.present.bench_parts import Hole, Outline, Part, Scribe, bench_number
from fitcalc.present.part_drawing import DIAMETER, part_bounds
from fitcalc.present.picture import XY

BESIDE, BELOW = 10.0, 10.0
"""Room for the upright and the level check bar, mm."""
OVERLAP = 12.0
PADDING = 4.0
CAPTION, LOW = 62.0, 120.0
"""Least width that a part has on a shelf, and greatest height of one that shares it, mm."""
CROSS = 4.0
CHAIN = (6.0, 0.75, 0.5, 0.75)
LINE = 0.2
TITLE = "Templates"
SCALE = "1:1 TRUE SCALE"


def template_pages(parts: Sequence[Part], paper: Paper) -> list[Page]:
    """Every part that has a shape; small ones share a page."""
    room = template_area(paper)
    drawn = [_lying(part, room) for part in parts if part.drawn]
    small = [part for part in drawn if _fits(part, room)]
    strips = [_shelf(shelf, room) for shelf in _shelves(small, room)]
    shared = flowed(strips, room[0], room[3], room[3] - room[1]) if strips else []
    tiled = [page for part in drawn if part not in small for page in _tiles(part, room)]
    plain = [Page(TITLE, SCALE, marks, true_scale=True) for marks in shared]
    bars = tuple(check_bars(room[0] - BESIDE + 5.0, room[1] - BELOW + 5.5))
    return [replace(page, marks=(*bars, *page.marks)) for page in (*plain, *tiled)]


def template_area(paper: Paper) -> Box:
    """The room beside and above the check bars."""
    left, bottom, right, top = area(paper)
    return left + BESIDE, bottom + BELOW, right, top


def _size(part: Part) -> XY:
    left, bottom, right, top = part_bounds(part)
    return right - left, top - bottom


def _fits(part: Part, room: Box) -> bool:
    wide, high = _size(part)
    lines = 3 * LEADING * TEXT
    return wide + 2 * PADDING <= room[2] - room[0] and high + 2 * PADDING + lines <= room[3] - room[1]


def _lying(part: Part, room: Box) -> Part:
    """The part, stood upright where it only fits so."""
    return part if _fits(part, room) or not _fits(quarter_turned(part), room) else quarter_turned(part)


def quarter_turned(part: Part) -> Part:
    """The part turned a quarter to the left."""

    def turn(point: XY) -> XY:
        return -point[1], point[0]

    outlines = tuple(
        Outline(tuple((*turn((x, y)), bulge) for x, y, bulge in each.vertices)) for each in part.outlines
    )
    holes = tuple(Hole(turn(hole.at), hole.diameter) for hole in part.holes)
    scribed = tuple(Scribe(tuple(turn(p) for p in line.points), line.text) for line in part.scribed)
    return replace(part, outlines=outlines, holes=holes, scribed=scribed)


def _shelves(parts: Sequence[Part], room: Box) -> Iterator[list[Part]]:
    """Parts that stand side by side; a tall one stands alone."""
    shelf: list[Part] = []
    for part in parts:
        free = room[2] - room[0] - sum(_cell(each) for each in shelf)
        if shelf and (_cell(part) > free or max(_size(each)[1] for each in (*shelf, part)) > LOW):
            yield shelf
            shelf = []
        shelf.append(part)
    if shelf:
        yield shelf


def _cell(part: Part) -> float:
    """Width of a part on a shelf with its caption."""
    return max(_size(part)[0] + 2 * PADDING, CAPTION)


def _shelf(parts: Sequence[Part], room: Box) -> Strip:
    """Captions with their parts below."""
    marks: list[Mark] = []
    start = deepest = 0.0
    for part in parts:
        wide = _cell(part) if len(parts) > 1 else room[2] - room[0]
        y = 0.0
        for line in _caption(part, wide - PADDING):
            marks += moved(line.marks, start, y)
            y -= line.height
        left, bottom, _, top = part_bounds(part)
        marks += moved(_shape(part), start + PADDING - left, y - PADDING - top)
        deepest = max(deepest, top - bottom + 2 * PADDING - y)
        start += wide
    return Strip(deepest, tuple(marks))


def _caption(part: Part, room: float) -> Iterator[Strip]:
    lines = wrapped(printable(f"{part.title}: make {part.quantity}"), TEXT, room, bold=True)
    for line in lines:
        yield Strip(LEADING * TEXT, (Words(line, (0.0, -ASCENT * TEXT), TEXT, bold=True),))
    text = printable(f"{part.id}; {part.stock}; {part.material}" + _hole_text(part))
    for line in wrapped(text, SMALL, room):
        yield Strip(LEADING * SMALL, (Words(line, (0.0, -ASCENT * SMALL), SMALL),))


def _hole_text(part: Part) -> str:
    sizes = sorted({hole.diameter for hole in part.holes})
    return "".join(f"; drill {DIAMETER}{bench_number(size)}" for size in sizes)


def _shape(part: Part) -> tuple[Mark, ...]:
    outlines = (Stroke(outline.points(), LINE, closed=True) for outline in part.outlines)
    scribed = (Stroke(line.points, LINE, dash=CHAIN) for line in part.scribed)
    words = (_beside(line) for line in part.scribed if line.text)
    return (*outlines, *(mark for hole in part.holes for mark in _hole(hole)), *scribed, *words)


def _beside(line: Scribe) -> Words:
    (x, y) = line.points[0]
    return Words(printable(line.text), (x, y + 0.8), 2.0, colour=GREY, backed=True)


def _hole(hole: Hole) -> Iterator[Stroke]:
    (x, y), reach = hole.at, hole.diameter / 2 + CROSS / 2
    yield Stroke(circle(hole.at, hole.diameter / 2), LINE, closed=True)
    yield Stroke(((x - reach, y), (x + reach, y)), LINE)
    yield Stroke(((x, y - reach), (x, y + reach)), LINE)


def _tiles(part: Part, room: Box) -> Iterator[Page]:
    """A part over several pages, columns A, B... from the left, rows 1, 2... from the top."""
    lines = 2 * LEADING * TEXT
    window = (room[0], room[1], room[2], room[3] - lines)
    wide, high = window[2] - window[0], window[3] - window[1]
    left, _, _, top = part_bounds(part)
    across, down = (
        _count(size + 2 * PADDING, span) for size, span in zip(_size(part), (wide, high), strict=True)
    )
    for row in range(down):
        for column in range(across):
            dx = window[0] + PADDING - left - column * (wide - OVERLAP)
            dy = window[3] - PADDING - top + row * (high - OVERLAP)
            shape = tuple(mark for mark in moved(_shape(part), dx, dy) if _seen(mark, window))
            clipped = (replace(mark, clip=window) if isinstance(mark, Stroke) else mark for mark in shape)
            name = f"{_letter(column)}{row + 1}"
            caption = _tile_caption(part, name, f"{_letter(across - 1)}{down}", room)
            joints = _joints(window, (column > 0, column < across - 1, row > 0, row < down - 1))
            yield Page(f"{TITLE}: tile {name}", SCALE, (*caption, *clipped, *joints), true_scale=True)


def _count(size: float, span: float) -> int:
    return max(1, math.ceil((size - OVERLAP) / (span - OVERLAP)))


def _letter(column: int) -> str:
    return chr(ord("A") + column % 26) * (column // 26 + 1)


def _seen(mark: Mark, window: Box) -> bool:
    if isinstance(mark, Stroke):
        return True
    (x, y), room = mark.at, 20.0
    return window[0] <= x <= window[2] - room and window[1] <= y <= window[3] - 3.0


def _tile_caption(part: Part, name: str, last: str, room: Box) -> Iterator[Words]:
    text = printable(f"{part.title}: make {part.quantity}; tile {name} of A1 to {last}" + _hole_text(part))
    lines = wrapped(text, SMALL, room[2] - room[0], bold=True)[:2]
    for at, line in enumerate(lines):
        yield Words(line, (room[0], room[3] - (ASCENT + at * LEADING) * SMALL), SMALL, bold=True)


def _joints(window: Box, beside: tuple[bool, bool, bool, bool]) -> Iterator[Mark]:
    """Lines to lay on each other and crosses to line up, where another tile follows: left, right, above, below."""
    left, bottom, right, top = window
    near, far = OVERLAP / 2, OVERLAP / 2
    for there, x in zip(beside[:2], (left + near, right - far), strict=True):
        if there:
            yield Stroke(((x, bottom), (x, top)), LINE, GREY, (2.0, 1.5))
            yield from _crosses([(x, bottom + (top - bottom) * share) for share in (0.25, 0.75)])
    for there, y in zip(beside[2:], (top - near, bottom + far), strict=True):
        if there:
            yield Stroke(((left, y), (right, y)), LINE, GREY, (2.0, 1.5))
            yield from _crosses([(left + (right - left) * share, y) for share in (0.25, 0.75)])


def _crosses(points: Sequence[XY]) -> Iterator[Stroke]:
    for x, y in points:
        yield Stroke(((x - CROSS, y - CROSS), (x + CROSS, y + CROSS)), LINE)
        yield Stroke(((x - CROSS, y + CROSS), (x + CROSS, y - CROSS)), LINE)
        yield Stroke(circle((x, y), CROSS / 2), LINE, closed=True)
