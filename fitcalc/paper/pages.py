"""The pages of a set of bench sheets, in the order in which they are used."""

from collections.abc import Iterable

from fitcalc.documents.digest import digest
from fitcalc.paper.chart import chart_pages, shared_pages
from fitcalc.paper.drawing import drawn, scale_for, scale_text
from fitcalc.paper.flow import (
    GUTTER,
    SMALL,
    Strip,
    beside,
    bullets,
    flowed,
    heading,
    paragraph,
    space,
    table,
    together,
)
from fitcalc.paper.frame import area, framed
from fitcalc.paper.job import Job
from fitcalc.paper.page import Box, Page, Paper
from fitcalc.paper.templates import template_pages
from fitcalc.present.bench_parts import Part
from fitcalc.present.cut_list import cut_table, reading_notes, sizes_table
from fitcalc.present.findings import OPEN, findings_table, mending_table
from fitcalc.present.part_drawing import part_bounds, part_drawing
from fitcalc.present.picture import Picture
from fitcalc.present.posture_chart import posture_chart
from fitcalc.present.record import ResultRecord, check_rows
from fitcalc.present.side_view import side_view
from fitcalc.present.summary import checklist_table, pedal_table, posture_table
from fitcalc.present.tables import Table
from fitcalc.present.travel_chart import travel_charts
from fitcalc.present.wording import MARKS

NO_SCALE = "no scale"
SUMMARY_SKETCH = 66.0
"""Height of the sketch on the summary, mm."""
DRAWING = (70.0, 130.0)
"""Least and most height of one part's drawing, mm."""
AROUND = (34.0, 40.0)
"""Room for dimension lines beside and above or below a part, mm."""
SECTION = 40.0
BAR_DRAWING = 66.0
"""Most height of the drawing of a bar, so that two parts share a page, mm."""
SIZES = 0.56
"""Share of the width that a part's sizes have; its notes stand beside them."""
ENLARGED = 30.0
"""Parts up to this size are drawn larger than they are, mm."""
WORST = 5
"""Most findings on the summary; fewer where the page has no room for them."""


def sheet_pages(job: Job, paper: Paper) -> list[Page]:
    """Every page, framed and numbered."""
    pages = [
        *summary_pages(job, paper),
        side_view_page(job, paper),
        *cut_list_pages(job, paper),
        *drawing_pages(job, paper),
        *template_pages(job.bench.parts, paper),
        *finding_pages(job, paper),
        *checklist_pages(job, paper),
        *plot_pages(job, paper),
    ]
    return framed(pages, job.about, paper)


def summary_pages(job: Job, paper: Paper) -> list[Page]:
    """What to do and how the driver then sits, on one page with as many findings as it has room for."""
    box = area(paper)
    room = box[2] - box[0]
    picture = side_view(job.after, job.found, emphasis=())
    scale = _fitted(picture, (room, SUMMARY_SKETCH))
    sketch = Strip(SUMMARY_SKETCH, drawn(picture, (0.0, -SUMMARY_SKETCH, room, 0.0), scale, 2.0))
    above = [*paragraph(_counts(job.record), room), sketch, *_to_do(job, room)]
    below = [space(2.0), *paragraph(_digests(job), room, SMALL)]
    tries = (
        _flowed(
            "Fit summary",
            f"sketch {scale_text(scale)}",
            [*above, *_worst(job.record, count, room), *below],
            box,
        )
        for count in range(WORST, -1, -1)
    )
    first = next(tries)
    return first if len(first) == 1 else next((pages for pages in tries if len(pages) == 1), first)


def _to_do(job: Job, room: float) -> list[Strip]:
    return [
        *paragraph("Grey: as found. Black and blue: after the rework.", room, SMALL),
        space(2.0),
        *heading("What to do", room),
        *bullets(_work(job), room),
        space(2.0),
        *table(pedal_table(job.record), room),
    ]


def _worst(record: ResultRecord, count: int, room: float) -> list[Strip]:
    worst = [check for check in record.checks if check.status in OPEN][:count]
    return [
        space(2.0),
        *table(findings_table(worst, "What is worst after the rework (all: pages Findings)"), room),
    ]


def side_view_page(job: Job, paper: Paper) -> Page:
    """Car and driver before and after, as large as a lying page allows."""
    box, picture = area(paper.turned), side_view(job.after, job.found)
    scale = _fitted(picture, (box[2] - box[0], box[3] - box[1]))
    marks = drawn(picture, box, scale, SMALL)
    return Page("Side view, as found (grey) and after", f"scale {scale_text(scale)}", marks, lying=True)


def cut_list_pages(job: Job, paper: Paper) -> list[Page]:
    """What to move and what to make."""
    box = area(paper)
    room = box[2] - box[0]
    strips = [
        *heading("To move and set", room),
        *bullets([f"{step.title}: {step.text}" for step in job.bench.steps] or ["nothing"], room),
        space(3.0),
        *(table(cut_table(job.bench), room) or heading("Nothing to make", room)),
        space(3.0),
        *bullets(reading_notes() if job.bench.parts else (), room, SMALL),
    ]
    return _flowed("Cut list", NO_SCALE, strips, box)


def drawing_pages(job: Job, paper: Paper) -> list[Page]:
    """One dimensioned drawing for each part."""
    box = area(paper)
    strips = [strip for part in job.bench.parts for strip in _part_strips(part, box[2] - box[0])]
    return _flowed("Drawings", "scale by each part, mm", strips, box) if strips else []


def finding_pages(job: Job, paper: Paper) -> list[Page]:
    """Every check with its source, and the remedies."""
    box = area(paper)
    room = box[2] - box[0]
    strips = [
        *paragraph(_counts(job.record), room),
        space(2.0),
        *table(mending_table(job.record), room),
        space(3.0),
        *table(findings_table(job.record.checks, "Every check, worst first"), room),
        space(3.0),
        *together(table(_short(posture_table(job.record)), room)),
    ]
    return _flowed("Findings", NO_SCALE, strips, box)


def checklist_pages(job: Job, paper: Paper) -> list[Page]:
    """Rules that geometry cannot judge."""
    box = area(paper)
    strips = table(checklist_table(job.record), box[2] - box[0])
    return _flowed("Checklist", NO_SCALE, strips, box) if strips else []


def plot_pages(job: Job, paper: Paper) -> list[Page]:
    """Where people would rather look than read: angles, shoes over the travel, and what else was asked for."""
    angles = posture_chart(job.record.checks, check_rows(job.found))
    first = shared_pages("Angles and shoes", [angles, *travel_charts(job.after)], paper)
    return [*first, *chart_pages(job.charts, paper)]


def _part_strips(part: Part, room: float) -> list[Strip]:
    """Title, drawing, sizes and notes of one part, kept together."""
    named = heading(f"{part.title}: make {part.quantity}", room)
    stock = f"{part.id}; {part.stock}; {part.material}"
    scale = _part_scale(part, room) if part.drawn else 1.0
    told = paragraph(f"{stock}; scale {scale_text(scale)}, sizes in mm" if part.drawn else stock, room, SMALL)
    shape = [_shape_strip(part, scale, room)] if part.drawn else []
    sizes = table(sizes_table(part), SIZES * room, title=False)
    notes = bullets(part.notes, (1.0 - SIZES) * room - GUTTER, SMALL)
    below = beside(sizes, notes, SIZES * room + GUTTER)
    return together([*named, *told, *shape, below, space(3.0)])


def _part_scale(part: Part, room: float) -> float:
    left, bottom, right, top = part_bounds(part)
    wide, high = right - left, top - bottom
    across = AROUND[0] + (SECTION if part.section else 0.0)
    most = BAR_DRAWING if part.section else DRAWING[1]
    largest = 1.0 if max(wide, high) > ENLARGED else 2.0
    return min(scale_for(wide, high, (room - across, most - AROUND[1])), largest)


def _shape_strip(part: Part, scale: float, room: float) -> Strip:
    picture = part_drawing(part, scale)
    low, up = picture.frame[1], picture.frame[3]
    height = min(max(scale * (up - low) + 7.0, DRAWING[0] / 2), DRAWING[1])
    return Strip(height, drawn(picture, (0.0, -height, room, 0.0), scale))


def _flowed(title: str, scale: str, strips: Iterable[Strip], box: Box) -> list[Page]:
    pages = flowed(strips, box[0], box[3], box[3] - box[1])
    return [Page(title if at == 0 else f"{title}, continued", scale, marks) for at, marks in enumerate(pages)]


def _fitted(picture: Picture, room: tuple[float, float]) -> float:
    left, bottom, right, top = picture.frame
    return scale_for(right - left, top - bottom, room)


def _work(job: Job) -> list[str]:
    steps = [f"{step.title}: {step.text}." for step in job.bench.steps]
    parts = [f"Make {part.quantity} x {part.title.lower()} ({part.id})." for part in job.bench.parts]
    return [*steps, *parts] or ["Nothing: the car stays as found."]


def _short(posture: Table) -> Table:
    """The joint angles with two of them to a row."""
    half = (len(posture.rows) + 1) // 2
    blank = ("",) * len(posture.header)
    pairs = zip(posture.rows[:half], (*posture.rows[half:], blank)[:half], strict=True)
    return Table(posture.title, posture.header * 2, tuple((*a, *b) for a, b in pairs))


def _counts(record: ResultRecord) -> str:
    counts = [(status, sum(check.status == status for check in record.checks)) for status in MARKS]
    return "Checks after the rework: " + ", ".join(f"{count} {status}" for status, count in counts) + "."


def _digests(job: Job) -> str:
    after = job.after
    named = (("car", after.car), ("driver", after.driver), ("rework", after.setup))
    each = ", ".join(f"{name} {digest(document)}" for name, document in named)
    return f"Digests (SHA-256, first digits): {each}; all three together {job.about.digest}."
