"""A page as plain data: strokes and words in mm from its lower left corner, before any PDF is written."""

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

from fitcalc.paper.lettering import ASCENT, DESCENT, width
from fitcalc.present.picture import XY

Align = Literal["left", "centre", "right"]
Box: TypeAlias = tuple[float, float, float, float]
"""Left, bottom, right, top."""
BLACK, GREY, PALE = "#000000", "#6B6B6B", "#D9D9D9"


@dataclass(frozen=True)
class Paper:
    """A size of paper, mm."""

    name: str
    width: float
    height: float

    @property
    def turned(self) -> "Paper":
        """The same sheet lying."""
        return Paper(self.name, self.height, self.width)


A4, LETTER = Paper("A4", 210.0, 297.0), Paper("Letter", 215.9, 279.4)
PAPERS = {"a4": A4, "letter": LETTER}


@dataclass(frozen=True)
class Stroke:
    """A line or an area.

    Attributes:
        width: of the line, mm; 0 leaves it out.
        dash: lengths on and off by turns, mm.
        fill: colour inside; None leaves it open.
        clip: nothing is drawn outside it; None = the whole page.
    """

    points: tuple[XY, ...]
    width: float = 0.25
    colour: str = BLACK
    dash: tuple[float, ...] = ()
    closed: bool = False
    fill: str | None = None
    clip: Box | None = None


@dataclass(frozen=True)
class Words:
    """One line of words; `at` is on its base line. `backed` hides what lies behind it."""

    text: str
    at: XY
    size: float
    bold: bool = False
    align: Align = "left"
    turn: float = 0.0
    colour: str = BLACK
    backed: bool = False


Mark: TypeAlias = Stroke | Words


@dataclass(frozen=True)
class Page:
    """One page without its frame.

    Attributes:
        title: what it shows.
        scale: as it is stated on the page.
        true_scale: whether it may be measured and pricked through.
        lying: turned a quarter.
    """

    title: str
    scale: str
    marks: tuple[Mark, ...]
    true_scale: bool = False
    lying: bool = False


def corners_of(words: Words) -> tuple[XY, XY, XY, XY]:
    """The corners of the room that words take, turned with them."""
    long = width(words.text, words.size, words.bold)
    left = {"left": 0.0, "centre": -long / 2, "right": -long}[words.align]
    low, high = -DESCENT * words.size, ASCENT * words.size
    c, s = math.cos(math.radians(words.turn)), math.sin(math.radians(words.turn))
    (x, y) = words.at

    def placed(a: float, b: float) -> XY:
        return x + c * a - s * b, y + s * a + c * b

    return placed(left, low), placed(left + long, low), placed(left + long, high), placed(left, high)


def corner_of(words: Words) -> XY:
    """Where the first letter of words stands on its base line."""
    back = {"left": 0.0, "centre": 0.5, "right": 1.0}[words.align] * width(words.text, words.size, words.bold)
    turn = math.radians(words.turn)
    return words.at[0] - back * math.cos(turn), words.at[1] - back * math.sin(turn)


def moved(marks: Iterable[Mark], dx: float, dy: float) -> tuple[Mark, ...]:
    """The same marks elsewhere on the page."""
    return tuple(_moved(mark, dx, dy) for mark in marks)


def _moved(mark: Mark, dx: float, dy: float) -> Mark:
    if isinstance(mark, Words):
        return replace(mark, at=(mark.at[0] + dx, mark.at[1] + dy))
    clip = mark.clip
    shifted = None if clip is None else (clip[0] + dx, clip[1] + dy, clip[2] + dx, clip[3] + dy)
    return replace(mark, points=tuple((x + dx, y + dy) for x, y in mark.points), clip=shifted)


def circle(centre: XY, radius: float, steps: int = 48) -> tuple[XY, ...]:
    """A circle as points."""
    turns = (2.0 * math.pi * step / steps for step in range(steps))
    return tuple((centre[0] + radius * math.cos(turn), centre[1] + radius * math.sin(turn)) for turn in turns)
