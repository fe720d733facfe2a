"""Blocks that flow down a page and on to the next: headings, paragraphs, tables, drawings."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest

from fitcalc.paper.lettering import ASCENT, LEADING, longest_word, printable, width, wrapped
from fitcalc.paper.page import GREY, PALE, Mark, Stroke, Words, moved
from fitcalc.present.tables import Table

TEXT, SMALL, HEADING = 3.0, 2.5, 3.8
"""Heights of lettering, mm."""
GUTTER = 3.0
ROW_LINES = 30
"""A row with more lines than this goes on in a second one, so that every row fits a page."""


@dataclass(frozen=True)
class Strip:
    """Something across the page; its marks are measured from its upper left corner, y down negative.

    Attributes:
        keep: stays with the next strip.
        again: strips that are repeated above it where a page begins with it.
    """

    height: float
    marks: tuple[Mark, ...] = ()
    keep: bool = False
    again: tuple["Strip", ...] = ()


def flowed(strips: Iterable[Strip], left: float, top: float, room: float) -> list[tuple[Mark, ...]]:
    """Marks page by page, for a column that starts at a corner and has this much room."""
    pages: list[list[Mark]] = [[]]
    y = top
    for group in _groups(strips):
        if y - sum(strip.height for strip in group) < top - room and y < top:
            pages.append([])
            y, group = top, [*group[0].again, *group]
        for strip in group:
            pages[-1].extend(moved(strip.marks, left, y))
            y -= strip.height
    return [tuple(page) for page in pages]


def _groups(strips: Iterable[Strip]) -> Iterator[list[Strip]]:
    group: list[Strip] = []
    for strip in strips:
        group.append(strip)
        if not strip.keep:
            yield group
            group = []
    if group:
        yield group


def together(strips: Sequence[Strip]) -> list[Strip]:
    """The same strips on one page, as far as one page goes."""
    return [replace(strip, keep=at < len(strips) - 1) for at, strip in enumerate(strips)]


def beside(left: Sequence[Strip], right: Sequence[Strip], start: float) -> Strip:
    """Two columns as one strip; the right one begins so far from the left edge."""
    marks: list[Mark] = []
    for column, x in ((left, 0.0), (right, start)):
        y = 0.0
        for strip in column:
            marks += moved(strip.marks, x, y)
            y -= strip.height
    return Strip(max(sum(strip.height for strip in column) for column in (left, right)), tuple(marks))


def space(height: float) -> Strip:
    """Nothing, this high."""
    return Strip(height)


def heading(text: str, room: float) -> list[Strip]:
    """A heading that stays with what follows."""
    lines = wrapped(printable(text), HEADING, room, bold=True)
    return [replace(_line(line, HEADING, bold=True), keep=True) for line in lines]


def paragraph(text: str, room: float, size: float = TEXT) -> list[Strip]:
    """Running words."""
    return [_line(line, size) for line in wrapped(printable(text), size, room)]


def bullets(lines: Iterable[str], room: float, size: float = TEXT, mark: str = "-") -> list[Strip]:
    """A list, each entry behind its mark."""
    inset = width(mark + "  ", size)
    return [strip for line in lines for strip in _bullet(printable(line), mark, inset, room, size)]


def _bullet(text: str, mark: str, inset: float, room: float, size: float) -> Iterator[Strip]:
    for at, line in enumerate(wrapped(text, size, room - inset)):
        strip = _line(line, size, left=inset)
        dot = (Words(mark, (0.0, -ASCENT * size), size),) if at == 0 else ()
        yield replace(strip, marks=(*dot, *strip.marks))


def _line(text: str, size: float, bold: bool = False, left: float = 0.0) -> Strip:
    words = (Words(text, (left, -ASCENT * size), size, bold),) if text else ()
    return Strip(LEADING * size, words)


def table(content: Table, room: float, size: float = SMALL, title: bool = True) -> list[Strip]:
    """A table with its title; cells wrap, the header is repeated on every page."""
    if not content.rows:
        return []
    rows = [tuple(printable(cell) for cell in row) for row in content.rows]
    header = tuple(printable(cell) for cell in content.header)
    widths = column_widths([header, *rows], room, size)
    head = replace(_row([[cell] for cell in header], widths, size, bold=True), keep=True)
    if any(width(cell, size, True) > wide for cell, wide in zip(header, widths, strict=True)):
        head = replace(
            _row(
                [wrapped(c, size, w, True) for c, w in zip(header, widths, strict=True)], widths, size, True
            ),
            keep=True,
        )
    named = heading(content.title, room) if title else []
    body = [replace(strip, again=(head,)) for row in rows for strip in _rows(row, widths, size)]
    return [*named, head, *body]


def column_widths(rows: Sequence[Sequence[str]], room: float, size: float) -> list[float]:
    """Widths that fit the room: the widest columns give way first, none below its longest word while that can be."""
    columns = list(zip(*rows, strict=True))
    natural = [max(width(cell, size, bold=True) for cell in column) + 0.1 for column in columns]
    least = [max(longest_word(cell, size, bold=True) for cell in column) + 0.1 for column in columns]
    free = room - GUTTER * (len(columns) - 1)
    if sum(natural) <= free:
        return natural
    if sum(least) >= free:
        return [free * each / sum(least) for each in least]
    return _levelled(natural, least, free)


def _levelled(natural: list[float], least: list[float], free: float) -> list[float]:
    """Natural widths cut at one level, but for what a column needs at least."""
    low, high = 0.0, max(natural)
    for _ in range(40):
        level = (low + high) / 2
        total = sum(max(min(wide, level), need) for wide, need in zip(natural, least, strict=True))
        low, high = (level, high) if total <= free else (low, level)
    return [max(min(wide, low), need) for wide, need in zip(natural, least, strict=True)]


def _rows(row: Sequence[str], widths: Sequence[float], size: float) -> Iterator[Strip]:
    cells = [wrapped(cell, size, wide) for cell, wide in zip(row, widths, strict=True)]
    for start in range(0, max(len(cell) for cell in cells), ROW_LINES):
        yield _row([cell[start : start + ROW_LINES] for cell in cells], widths, size)


def _row(cells: Sequence[Sequence[str]], widths: Sequence[float], size: float, bold: bool = False) -> Strip:
    marks: list[Mark] = []
    for at, line in enumerate(zip_longest(*cells, fillvalue="")):
        left, y = 0.0, -0.4 * size - ASCENT * size - at * LEADING * size
        for text, wide in zip(line, widths, strict=True):
            marks += [Words(text, (left, y), size, bold)] if text else []
            left += wide + GUTTER
    height = (max(len(cell) for cell in cells) * LEADING + 0.7) * size
    rule = sum(widths) + GUTTER * (len(widths) - 1)
    marks.append(Stroke(((0.0, -height), (rule, -height)), 0.35 if bold else 0.13, GREY if bold else PALE))
    return Strip(height, tuple(marks))
