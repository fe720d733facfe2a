"""What is drawn on one page of a PDF: strokes and words as operators, in mm.

Source: ISO 32000-1:2008, 8 (graphics), 9.4 (text).
"""

import math
from collections.abc import Iterator, Mapping
from functools import cache

from fitcalc.paper.page import Box, Mark, Stroke, Words, corner_of, corners_of
from fitcalc.paper.pdf_file import number
from fitcalc.paper.pdf_font import Embedded
from fitcalc.present.picture import XY
from fitcalc.units import MM_PER_INCH

POINTS = 72.0 / MM_PER_INCH
"""Points in a mm."""
WHITE = "#FFFFFF"
FONTS: Mapping[bool, str] = {False: "F1", True: "F2"}


def content_of(marks: tuple[Mark, ...], fonts: Mapping[bool, Embedded]) -> bytes:
    """The operators of a page; all its lengths are mm."""
    lines = [f"{POINTS:.9f} 0 0 {POINTS:.9f} 0 0 cm 0 J 0 j"]
    for mark in marks:
        lines.extend(_words(mark, fonts) if isinstance(mark, Words) else _stroke(mark))
    return "\n".join(lines).encode("ascii")


def _stroke(stroke: Stroke) -> Iterator[str]:
    shown = stroke.width > 0.0
    if not shown and stroke.fill is None:
        return
    if stroke.clip is not None:
        yield f"q {_box(stroke.clip)} re W n"
    if shown:
        dash = " ".join(number(length) for length in stroke.dash)
        yield f"{_colour(stroke.colour)} RG {number(stroke.width)} w [{dash}] 0 d"
    if stroke.fill is not None:
        yield f"{_colour(stroke.fill)} rg"
    is_closed = stroke.closed or stroke.fill is not None
    yield f"{_path(stroke.points)}{' h' if is_closed else ''} {_paint(shown, stroke.fill is not None)}"
    if stroke.clip is not None:
        yield "Q"


def _paint(shown: bool, filled: bool) -> str:
    return {(True, True): "B", (True, False): "S", (False, True): "f"}[shown, filled]


def _words(words: Words, fonts: Mapping[bool, Embedded]) -> Iterator[str]:
    if words.backed:
        yield f"{_colour(WHITE)} rg {_path(corners_of(words))} h f"
    c, s = math.cos(math.radians(words.turn)), math.sin(math.radians(words.turn))
    x, y = corner_of(words)
    turned = " ".join(number(each) for each in (c, s, -s, c, x, y))
    yield f"{_colour(words.colour)} rg BT /{FONTS[words.bold]} {number(words.size)} Tf {turned} Tm"
    yield f"<{fonts[words.bold].encoded(words.text)}> Tj ET"


def _path(points: tuple[XY, ...]) -> str:
    first, *rest = (f"{number(x)} {number(y)}" for x, y in points)
    return " ".join([f"{first} m", *(f"{each} l" for each in rest)])


def _box(box: Box) -> str:
    left, bottom, right, top = box
    return " ".join(number(each) for each in (left, bottom, right - left, top - bottom))


@cache
def _colour(written: str) -> str:
    """Red, green and blue from 0 to 1."""
    return " ".join(number(int(written[at : at + 2], 16) / 255) for at in (1, 3, 5))
