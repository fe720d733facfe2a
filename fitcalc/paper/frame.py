"""What stands on every page: head, cautions, page number, date, digest, and what may be measured."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from fitcalc.paper.flow import SMALL, TEXT
from fitcalc.paper.lettering import ASCENT, LEADING, printable, width, wrapped
from fitcalc.paper.page import GREY, Box, Mark, Page, Paper, Stroke, Words
from fitcalc.present.wording import CAUTIONS

MARGIN = 12.0
HEAD = 15.0
FINE = 2.0
"""Height of lettering of the cautions, mm."""
BAR = 100.0
"""Length of a check bar, mm."""
NOT_TO_SCALE = "Not a template: never measure or prick through from this page."
TRUE_SCALE = "True scale: print at 100 %, then measure both 100 mm bars before use."


@dataclass(frozen=True)
class About:
    """What a set of sheets belongs to.

    Attributes:
        subject: driver and car.
        date: as written on the sheet.
        digest: of the documents, short.
    """

    subject: str
    date: str
    digest: str


def area(paper: Paper) -> Box:
    """The room between head and foot."""
    foot = MARGIN + _foot_height(paper)
    return MARGIN, foot, paper.width - MARGIN, paper.height - MARGIN - HEAD


def sheet_of(page: Page, paper: Paper) -> Paper:
    """The paper as this page lies."""
    return paper.turned if page.lying else paper


def framed(pages: Sequence[Page], about: About, paper: Paper) -> list[Page]:
    """Every page with head and foot, numbered."""
    count = len(pages)
    return [
        replace(
            page, marks=(*page.marks, *_frame(page, about, sheet_of(page, paper), f"page {at} of {count}"))
        )
        for at, page in enumerate(pages, start=1)
    ]


def _frame(page: Page, about: About, paper: Paper, number: str) -> Iterator[Mark]:
    left, right, top = MARGIN, paper.width - MARGIN, paper.height - MARGIN
    scale = printable(page.scale)
    yield Words(printable(page.title), (left, top - ASCENT * 4.6), 4.6, bold=True)
    yield Words(scale, (right, top - ASCENT * 4.6), TEXT, bold=True, align="right")
    yield Words(_fitting(printable(about.subject), right - left), (left, top - 9.0), TEXT)
    yield Stroke(((left, top - 11.5), (right, top - 11.5)), 0.5)
    yield from _foot(page, about, paper, number)


def _foot(page: Page, about: About, paper: Paper, number: str) -> Iterator[Mark]:
    left, right = MARGIN, paper.width - MARGIN
    base = MARGIN + (1.0 - ASCENT) * SMALL
    yield Words(f"{about.date}   documents {about.digest}", (left, base), SMALL)
    yield Words(number, (right, base), SMALL, align="right")
    told = TRUE_SCALE if page.true_scale else NOT_TO_SCALE
    yield Words(told, (left, base + LEADING * SMALL), SMALL, bold=True)
    y = MARGIN + 2 * LEADING * SMALL
    for line in reversed(_cautions(paper)):
        yield Words(line, (left, y + 0.6), FINE, colour=GREY)
        y += LEADING * FINE
    yield Stroke(((left, y + 1.0), (right, y + 1.0)), 0.25)


def _cautions(paper: Paper) -> list[str]:
    return wrapped(printable("CAUTIONS: " + " ".join(CAUTIONS)), FINE, paper.width - 2 * MARGIN)


def _foot_height(paper: Paper) -> float:
    return 2 * LEADING * SMALL + len(_cautions(paper)) * LEADING * FINE + 3.0


def _fitting(text: str, room: float) -> str:
    """As much of a line as fits, with dots where it is cut."""
    while width(text, TEXT) > room and len(text) > 4:
        text = text[:-4].rstrip() + "..."
    return text


def check_bars(left: float, bottom: float) -> Iterator[Mark]:
    """A 100 mm bar to the right and one up, from a corner; the ticks stand inside, so that none lengthens a bar."""
    end_x, end_y = left + BAR, bottom + BAR
    yield Stroke(((left, bottom), (end_x, bottom)), 0.25)
    yield Stroke(((left, bottom), (left, end_y)), 0.25)
    for tick in range(11):
        long = 3.0 if tick % 5 == 0 else 1.8
        yield Stroke(((left + 10.0 * tick, bottom), (left + 10.0 * tick, bottom + long)), 0.18)
        yield Stroke(((left, bottom + 10.0 * tick), (left + long, bottom + 10.0 * tick)), 0.18)
    yield Words("check: 100 mm", (left + BAR / 2, bottom - 3.6), SMALL, align="centre")
    yield Words("check: 100 mm", (left - 1.6, bottom + BAR / 2), SMALL, align="centre", turn=90.0)
