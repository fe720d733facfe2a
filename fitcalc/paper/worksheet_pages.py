"""The measuring worksheet to print: drawing, how to measure, and a box for every number."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from fitcalc.documents.guide import Guide
from fitcalc.documents.guide_drawing import Drawing, Line
from fitcalc.paper.flow import SMALL, TEXT, Strip, flowed, heading
from fitcalc.paper.frame import About, area, framed
from fitcalc.paper.lettering import ASCENT, LEADING, printable, width, wrapped
from fitcalc.paper.page import GREY, Mark, Page, Paper, Stroke, Words, circle, moved
from fitcalc.present.bench_parts import bench_number
from fitcalc.present.worksheet_rows import Entry, WorksheetRow, walks

FIGURE = 34.0
"""Size of the guide's drawing, mm."""
BOX = (20.0, 7.0)
CELL = (48.5, 9.0)
BESIDE = FIGURE + 5.0
LABEL, WORD, TICK = 46.0, 90.0, 2.6
THIN, WIDE = 0.15, 0.4
HINT = 2.2


def worksheet_pages(entries: Sequence[Entry], about: About, paper: Paper) -> list[Page]:
    """Every entry, framed and numbered."""
    box = area(paper)
    room = box[2] - box[0]
    strips = [strip for part, some in walks(tuple(entries)) for strip in _part(part, some, room)]
    pages = flowed(strips, box[0], box[3], box[3] - box[1])
    return framed([Page("Measuring worksheet", "no scale", marks) for marks in pages], about, paper)


def _part(part: str, entries: Sequence[Entry], room: float) -> Iterator[Strip]:
    yield from heading(part.capitalize(), room)
    for entry in entries:
        yield from _entry(entry, room)


def _entry(entry: Entry, room: float) -> Iterator[Strip]:
    """Words and boxes beside the drawing, kept together as far as one page goes; kinds and names without one."""
    if entry.guide is None:
        yield from _kinds(entry, room)
        return
    words = [*_words(entry, entry.guide, room - BESIDE), *_boxes(entry.rows, room - BESIDE)]
    beside = [replace(strip, marks=moved(strip.marks, BESIDE, 0.0), keep=True) for strip in words]
    height = sum(strip.height for strip in beside)
    figure = Strip(0.0, _figure(entry.guide.drawing), keep=True)
    rule = Stroke(((0.0, -1.0), (room, -1.0)), THIN, GREY)
    yield figure
    yield from beside
    yield Strip(max(FIGURE + 2.0 - height, 0.0) + 3.0, moved((rule,), 0.0, -max(FIGURE + 2.0 - height, 0.0)))


def _kinds(entry: Entry, room: float) -> Iterator[Strip]:
    """What to tick, and lines to write a word on."""
    yield replace(_line(entry.title, TEXT, bold=True), keep=True)
    for row in entry.rows:
        yield _ticks(row, room) if row.choices else _word(row)
    yield Strip(3.0, (Stroke(((0.0, -1.0), (room, -1.0)), THIN, GREY),))


def _word(row: WorksheetRow) -> Strip:
    marks: list[Mark] = [
        Words(printable(row.label), (0.0, -4.5), SMALL),
        Stroke(((LABEL, -5.3), (LABEL + WORD, -5.3)), 0.25),
    ]
    if row.value is not None:
        marks.append(Words(f"now {row.value}", (LABEL + 1.0, -4.6), 1.8, colour=GREY))
    return Strip(7.0, tuple(marks))


def _ticks(row: WorksheetRow, room: float) -> Strip:
    """A square to tick for each choice; what the file says now is marked."""
    marks: list[Mark] = [Words(printable(row.label), (0.0, -4.0), SMALL)]
    left, y = LABEL, -4.0
    for choice in row.choices:
        text = printable(choice.replace("_", " ") + (" (now)" if choice == str(row.value) else ""))
        wide = TICK + 1.2 + width(text, SMALL) + 5.0
        if left + wide > room:
            left, y = LABEL, y - 5.0
        square = ((left, y), (left + TICK, y), (left + TICK, y + TICK), (left, y + TICK))
        marks += [Stroke(square, 0.25, closed=True), Words(text, (left + TICK + 1.2, y), SMALL)]
        left += wide
    return Strip(-y + 2.5, tuple(marks))


def _words(entry: Entry, guide: Guide, room: float) -> Iterator[Strip]:
    yield _line(entry.title, TEXT, bold=True)
    for text in (guide.how, guide.care):
        for line in wrapped(printable(text), HINT, room) if text else ():
            yield _line(line, HINT)
    for line in wrapped(printable(f"Wanted within {_wanted(guide)}. Decides: {guide.decides}"), HINT, room):
        yield _line(line, HINT, colour=GREY)


def _wanted(guide: Guide) -> str:
    return f"\N{PLUS-MINUS SIGN}{guide.error:g} {guide.unit}".removesuffix(" -")


def _line(text: str, size: float, bold: bool = False, colour: str = "#000000") -> Strip:
    return Strip(LEADING * size, (Words(printable(text), (0.0, -ASCENT * size), size, bold, colour=colour),))


def _boxes(rows: Sequence[WorksheetRow], room: float) -> Iterator[Strip]:
    """A grid of boxes, each with its label before and its unit behind."""
    paired = all(row.path.rpartition(".")[2].isdecimal() for row in rows)
    across = 2 if paired else max(1, int(room // CELL[0]))
    for start in range(0, len(rows), across):
        cells = (_box(row, at * CELL[0]) for at, row in enumerate(rows[start : start + across]))
        yield Strip(CELL[1], tuple(mark for cell in cells for mark in cell))


def _box(row: WorksheetRow, left: float) -> Iterator[Mark]:
    label = CELL[0] - BOX[0] - 9.0
    text = printable(row.label)
    while width(text, SMALL) > label:
        text = text[:-1]
    base = -1.0 - BOX[1] / 2 - 0.35 * SMALL
    if text:
        yield Words(text, (left, base), SMALL)
    edge, top = left + label + 1.0, -1.0
    corners = ((edge, top), (edge + BOX[0], top), (edge + BOX[0], top - BOX[1]), (edge, top - BOX[1]))
    yield Stroke(corners, 0.25, closed=True)
    if isinstance(row.value, int | float):
        now = f"now {bench_number(row.value)}"
        yield Words(now, (edge + BOX[0] - 0.8, top - BOX[1] + 0.7), 1.8, align="right", colour=GREY)
    yield Words(row.unit.replace("-", ""), (edge + BOX[0] + 1.0, base), SMALL)


def _figure(drawing: Drawing) -> tuple[Mark, ...]:
    """The guide's drawing, its upper left corner at the origin; what is measured stands out."""
    scale = FIGURE / 100.0

    def paper(line: Line) -> Line:
        return tuple((x * scale, (y - 100.0) * scale - 1.0) for x, y in line)

    marks: list[Mark] = [Stroke(paper(line), THIN, GREY) for line in drawing.thin]
    marks += [Stroke(paper(line), 0.25) for line in drawing.lines]
    for x, y, radius in drawing.circles:
        marks.append(Stroke(circle(paper(((x, y),))[0], radius * scale), 0.25, closed=True))
    for tape in drawing.tapes:
        ends = paper(tape.ends)
        marks.append(Stroke(ends, WIDE))
        marks += [Stroke(circle(end, 0.6, 12), 0.0, closed=True, fill="#000000") for end in ends]
    for arc in drawing.arcs:
        marks += [Stroke(paper(arc.legs()), THIN), Stroke(paper(arc.curve()), WIDE)]
    for spot in drawing.spots:
        marks.append(Stroke(circle(paper((spot,))[0], 0.9, 16), 0.25, closed=True, fill="#000000"))
    return tuple(mark for mark in marks if not (isinstance(mark, Stroke) and len(mark.points) < 2))
