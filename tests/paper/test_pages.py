"""Pages before they are written: nothing overlaps, nothing is cut, true scale is true."""

import numpy as np
import pytest
from shapely import STRtree
from shapely.geometry import LineString, Polygon, box
from sheet_jobs import PAIRS, car_and_driver, every_part_job, fitted_job

from fitcalc.paper.frame import NOT_TO_SCALE, TRUE_SCALE, About, sheet_of
from fitcalc.paper.lettering import printable, width, wrapped
from fitcalc.paper.page import A4, LETTER, Stroke, Words, corners_of
from fitcalc.paper.pages import sheet_pages
from fitcalc.paper.templates import OVERLAP, template_area, template_pages
from fitcalc.paper.worksheet_pages import worksheet_pages
from fitcalc.present.part_drawing import part_bounds
from fitcalc.present.worksheet_rows import worksheet

PAPERS = {"a4": A4, "letter": LETTER}
UNPRINTABLE = 6.0
"""Border that a common printer leaves white, mm: common practice, no source."""
TOUCH = 0.05
"""Overlap of two words that the eye does not see, mm2."""


def sets(paper):
    for pair in PAIRS:
        yield sheet_pages(fitted_job(*pair), paper)
    yield sheet_pages(every_part_job(), paper)
    yield worksheet_pages(worksheet(None, None), About("empty", "2026-05-31", "none"), paper)
    yield worksheet_pages(worksheet(*car_and_driver("hillclimb", "robin"), True), About("all", "", ""), paper)


def words_on(page):
    return [mark for mark in page.marks if isinstance(mark, Words)]


def overlaps(page):
    words = words_on(page)
    boxes = [Polygon(corners_of(each)).buffer(-0.12 * each.size) for each in words]
    pairs = STRtree(boxes).query(boxes, predicate="intersects").T
    return [
        (words[a].text, words[b].text)
        for a, b in pairs
        if a < b and boxes[a].intersection(boxes[b]).area > TOUCH
    ]


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_no_words_overlap(paper):
    assert [overlap for pages in sets(paper) for page in pages for overlap in overlaps(page)] == []


def box_of(words):
    """The upright box round words."""
    xs, ys = zip(*corners_of(words), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_no_words_leave_the_printable_page(paper):
    for page in (page for pages in sets(paper) for page in pages):
        sheet = sheet_of(page, paper)
        boxes = np.array([box_of(words) for words in words_on(page)])
        assert boxes[:, :2].min() >= UNPRINTABLE, page.title
        assert boxes[:, 2].max() <= sheet.width - UNPRINTABLE, page.title
        assert boxes[:, 3].max() <= sheet.height - UNPRINTABLE, page.title


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_every_page_says_what_it_belongs_to(paper):
    job = every_part_job()
    pages = sheet_pages(job, paper)
    for at, page in enumerate(pages, start=1):
        said = " ".join(words.text for words in words_on(page))
        for wanted in (
            job.about.digest,
            job.about.date,
            f"page {at} of {len(pages)}",
            "A wrong belt, seat or pedal can kill",
        ):
            assert wanted in said
        assert (TRUE_SCALE if page.true_scale else NOT_TO_SCALE) in said


@pytest.mark.parametrize("paper", PAPERS.values(), ids=PAPERS)
def test_the_summary_is_one_page(paper):
    for pair in PAIRS:
        titles = [page.title for page in sheet_pages(fitted_job(*pair), paper)]
        assert titles[0] == "Fit summary"
        assert "Fit summary, continued" not in titles


def test_templates_show_every_part_with_a_shape():
    job = every_part_job()
    said = " ".join(words.text for page in template_pages(job.bench.parts, A4) for words in words_on(page))
    for part in job.bench.parts:
        assert (part.title in said) == part.drawn


def test_tiles_cover_a_large_part_and_overlap():
    pattern = next(part for part in every_part_job().bench.parts if part.id == "seat.pattern")
    tiles = [page for page in template_pages([pattern], A4) if "tile" in page.title]
    left, bottom, right, top = template_area(A4)
    columns = len({page.title[-2] for page in tiles})
    rows = len(tiles) // columns
    x1, y1, x2, y2 = part_bounds(pattern)
    assert columns * (right - left) - (columns - 1) * OVERLAP >= x2 - x1
    assert rows * (top - bottom) - (rows - 1) * OVERLAP >= y2 - y1
    assert all(any(in_window(mark) for mark in page.marks) for page in tiles)


def in_window(mark):
    """Whether a piece of the part itself can be seen on a tile."""
    if not isinstance(mark, Stroke) or mark.clip is None:
        return False
    return LineString(mark.points).intersects(box(*mark.clip))


def test_wrapped_lines_fit_and_lose_nothing():
    text = "A wrong belt, seat or pedal can kill. " + "unbreakable" * 20
    lines = wrapped(text, 3.0, 40.0)
    assert max(width(line, 3.0) for line in lines) <= 40.0
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")


def test_letters_that_the_font_lacks_become_question_marks():
    name = "M\N{LATIN SMALL LETTER U WITH DIAERESIS}ller"
    assert printable(f"{name}\n\N{CJK UNIFIED IDEOGRAPH-8ECA}") == f"{name} ?"
