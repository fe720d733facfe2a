"""The as-built page: boxes to fill in at the car, and the page that holds what was filled in against the prediction."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from fitcalc.paper.flow import SMALL, Strip, flowed, heading, paragraph, space, table
from fitcalc.paper.frame import About, area, framed
from fitcalc.paper.lettering import ASCENT, LEADING, printable, wrapped
from fitcalc.paper.page import GREY, PALE, Mark, Page, Paper, Stroke, Words
from fitcalc.present.as_built_record import BuiltRecord, WantedRecord
from fitcalc.present.as_built_tables import (
    WANTED_HEADER,
    explanation_table,
    history_table,
    reading_notes,
    readings_table,
    wanted_cells,
    work_table,
)

SHARES = (0.34, 0.13, 0.11, 0.17, 0.12)
"""Of the width: what, tool, expected, interval, allowed; the box has the rest."""
BOX = 6.4
HINT = 2.0
LINE = 55.0


def as_built_pages(record: BuiltRecord, about: About, paper: Paper) -> list[Page]:
    """To fill in where nothing was read yet; else what was, all framed and numbered."""
    box = area(paper)
    room = box[2] - box[0]
    strips = [*_filled(record, room), *_blank(record, room)]
    pages = flowed(strips, box[0], box[3], box[3] - box[1])
    return framed([Page("As built", "no scale", marks) for marks in pages], about, paper)


def _filled(record: BuiltRecord, room: float) -> Iterator[Strip]:
    for content in (work_table(record), readings_table(record)):
        if content.rows:
            yield from table(content, room)
            yield space(3.0)
    if record.explanation is not None:
        told = explanation_table(record)
        yield from heading(told.title, room)
        yield from paragraph(record.explanation.verdict, room)
        yield from table(told, room, title=False)
        for note in reading_notes(record):
            yield from paragraph(note, room, SMALL)
        yield space(3.0)
    yield from table(history_table(record), room)


def _blank(record: BuiltRecord, room: float) -> Iterator[Strip]:
    if not record.wanted:
        return
    told = (
        "Driver belted in, full kit, as when driving. Write what the tool says, not what is expected. "
        "Leave empty what was not measured."
    )
    yield from paragraph(told, room)
    yield _signature(room)
    head = _header(room)
    for title, rows in groupby(record.wanted, key=lambda row: row.group):
        named = heading(title, room)
        first, *rest = (replace(_row(row, room), again=(*named, head)) for row in rows)
        yield from (*named, head, first, *rest)
        yield space(2.0)


def _signature(room: float) -> Strip:
    """Places for date, name and build."""
    marks: list[Mark] = []
    for at, word in enumerate(("date", "measured by", "car as on sheet, changed:")):
        left = at * (room / 3)
        marks += [Words(word, (left, -6.0), SMALL), Stroke(((left, -11.0), (left + LINE, -11.0)), 0.25)]
    return Strip(14.0, tuple(marks))


def _lefts(room: float) -> list[float]:
    return [room * sum(SHARES[:at]) for at in range(len(SHARES) + 1)]


def _header(room: float) -> Strip:
    words = zip((*WANTED_HEADER, "measured"), _lefts(room), strict=True)
    marks: list[Mark] = [Words(word, (left, -ASCENT * SMALL), SMALL, bold=True) for word, left in words]
    height = LEADING * SMALL + 1.0
    marks.append(Stroke(((0.0, -height), (room, -height)), 0.35, GREY))
    return Strip(height, tuple(marks), keep=True)


def _row(row: WantedRecord, room: float) -> Strip:
    lefts = _lefts(room)
    cells = [
        wrapped(printable(cell), SMALL, room * share - 2.0)
        for cell, share in zip(wanted_cells(row), SHARES, strict=True)
    ]
    how = wrapped(printable(row.how), HINT, room * SHARES[0] - 2.0)
    marks = [mark for lines, left in zip(cells, lefts, strict=False) for mark in _lines(lines, left)]
    below = len(cells[0]) * LEADING * SMALL
    marks += [
        Words(line, (0.0, -0.8 - below - ASCENT * HINT - at * LEADING * HINT), HINT, colour=GREY)
        for at, line in enumerate(how)
    ]
    tall = max(len(lines) for lines in cells) * LEADING * SMALL
    height = max(below + len(how) * LEADING * HINT, tall, BOX) + 1.8
    marks += _box(row, lefts[-1], room, height)
    return Strip(height, tuple(marks))


def _lines(lines: Sequence[str], left: float) -> Iterator[Mark]:
    for at, line in enumerate(lines):
        if line:
            yield Words(line, (left, -0.8 - ASCENT * SMALL - at * LEADING * SMALL), SMALL)


def _box(row: WantedRecord, left: float, room: float, height: float) -> list[Mark]:
    right, top = room - 8.0, -0.8
    corners = ((left, top), (right, top), (right, top - BOX), (left, top - BOX))
    unit = row.unit.replace("-", "")
    marks: list[Mark] = [
        Stroke(corners, 0.25, closed=True),
        Stroke(((0.0, -height), (room, -height)), 0.13, PALE),
    ]
    return [*marks, *([Words(unit, (right + 1.0, top - BOX / 2 - 0.35 * SMALL), SMALL)] if unit else [])]
