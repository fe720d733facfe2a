"""Where the words of a drawing go, so that none hides another, at a given scale.

Lettering keeps its size on the screen or the page while the drawing is scaled, so that places are found for one size
of a lettering unit in mm of the car. The same picture and the same scale always give the same places.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

import numpy as np

from fitcalc.present.ink import Ink
from fitcalc.present.picture import (
    XY,
    Arc,
    Bounds,
    Dimension,
    Handle,
    Picture,
    Primitive,
    Style,
    Text,
    offset_line,
    points_of,
)
from fitcalc.units import Floats

LETTER, HEIGHT, PADDING = 0.60, 1.3, 0.5
"""Mean width of a letter, height of a line and room at the two ends, in heights of the lettering."""
LETTERS_ONLY = np.array([0.2, 0.35, -0.2, -0.35])
"""From the room of a text to its bare letters, left, bottom, right, top, in heights of the lettering."""
GRIP = 0.34
"""Half of what a grip covers with its outline, in heights of the lettering."""
RINGS = (0.0, 1.2, 2.2, 3.4, 5.0, 7.0, 9.5)
"""How far from home a text is tried, in heights of the lettering."""
DIRECTIONS = 12
LINE_COST, CUT_COST, HIT_COST = 0.3, 1e3, 1e6
"""What a cell of line under a text, an edge of the page across it and another text cost, in letter heights of way."""


FIRST: Mapping[Style, int] = {"fail": 0, "advise": 0, "rework": 0, "note": 2}
"""Where words thin out: what is wrong and what is changed finds its place first, the names of things last."""
FAR = 0.35
"""Where words thin out, the furthest that one may stand from home, as a part of the page's height."""


@dataclass(frozen=True)
class Place:
    """Where one text stands.

    Attributes:
        at: its middle.
        turn: of the text, degrees, positive = toward up.
        leader: where a thin line from the text ends; None when it stands at home.
    """

    at: XY
    turn: float
    leader: XY | None


@dataclass(frozen=True)
class Way:
    """How far from home a text stands, mm.

    Attributes:
        at_home: it stands where it would rather be, turned along its line.
        leads: a thin line runs from it to its point.
    """

    right: float
    up: float
    at_home: bool
    leads: bool


@dataclass(frozen=True)
class Wish:
    """A text with the place it would rather have, and the point it belongs to."""

    key: str
    text: str
    home: XY
    turn: float
    owner: XY


def lettering(primitive: Primitive) -> str:
    """The words that a primitive carries."""
    return primitive.text if isinstance(primitive, Text | Arc | Dimension) else ""


def width(text: str, size: float) -> float:
    """Room that a text takes along its line."""
    return (LETTER * len(text) + PADDING) * size


def places(
    picture: Picture, size: float, page: Bounds | None = None, thins_out: bool = False
) -> Mapping[str, Place]:
    """A place for every text of a picture, by the key of its primitive.

    Args:
        picture: the drawing.
        size: height of the lettering, in mm of the car.
        page: what of the drawing can be seen; a text is kept on it where it can be.
        thins_out: a text that would lie on another one is left out, the names of things first.
    """
    wishes = [wish(each, size) for each in picture.primitives if lettering(each)]
    if not wishes:
        return {}
    ink, taken = Ink.of(picture, size), _grips(picture, size)
    found: dict[str, Place] = {}
    order = {each.key: FIRST.get(each.style, 1) for each in picture.primitives} if thins_out else {}
    for each in sorted(wishes, key=lambda wish: (order.get(wish.key, 1), len(wish.text))):
        place, box = _settled(each, size, taken, ink, page)
        if thins_out and (_overlap(box, taken)[0] or _is_far(each, place, page)):
            continue
        taken = np.vstack([taken, box])
        found[each.key] = place
    return found


def carried(picture: Picture, size: float, before: Mapping[str, Way]) -> Mapping[str, Place]:
    """Places of a picture in motion: every text keeps the way from home that it had; one that is new is left out.

    Args:
        picture: the drawing.
        size: height of the lettering, in mm of the car.
        before: as from `ways`, of the picture when it last stood still.
    """
    found: dict[str, Place] = {}
    for each in picture.primitives:
        way = before.get(each.key) if lettering(each) else None
        if way is not None:
            now = wish(each, size)
            at = now.home[0] + way.right, now.home[1] + way.up
            found[each.key] = Place(at, now.turn if way.at_home else 0.0, now.owner if way.leads else None)
    return found


def ways(picture: Picture, size: float, places: Mapping[str, Place]) -> dict[str, Way]:
    """How far each text stands from home, by the key of its primitive."""
    found: dict[str, Way] = {}
    for each in picture.primitives:
        place = places.get(each.key)
        if place is not None:
            home = wish(each, size).home
            right, up = place.at[0] - home[0], place.at[1] - home[1]
            found[each.key] = Way(right, up, right == 0.0 == up, place.leader is not None)
    return found


def _grips(picture: Picture, size: float) -> Floats:
    """What the grips cover, which no text may hide behind: boxes left, bottom, right, top."""
    at = np.array([each.at for each in picture.primitives if isinstance(each, Handle)]).reshape(-1, 2)
    return np.concatenate([at - GRIP * size, at + GRIP * size], axis=1)


def _is_far(wish: Wish, place: Place, page: Bounds | None) -> bool:
    """Whether a text has to stand so far away that nobody sees what it belongs to."""
    if page is None:
        return False
    return math.dist(wish.home, place.at) > FAR * (page[3] - page[1])


def wish(primitive: Primitive, size: float) -> Wish:
    """The usual place of a text: above its dimension line, outside its arc, or beside its point."""
    text = lettering(primitive)
    match primitive:
        case Dimension():
            return _on_dimension(primitive, text, size)
        case Arc():
            middle = np.radians(primitive.start + primitive.sweep / 2)
            out = primitive.radius + 0.35 * size + 0.5 * _extent(text, size, float(middle))
            owner = _from(primitive.centre, middle, primitive.radius)
            return Wish(primitive.key, text, _from(primitive.centre, middle, out), 0.0, owner)
    at = points_of(primitive)[0]
    return Wish(primitive.key, text, (at[0], at[1] + 0.9 * size), 0.0, at)


def _on_dimension(dimension: Dimension, text: str, size: float) -> Wish:
    (x1, y1), (x2, y2) = offset_line(dimension)
    middle, span = ((x1 + x2) / 2, (y1 + y2) / 2), float(np.hypot(x2 - x1, y2 - y1))
    way = float(np.arctan2(y2 - y1, x2 - x1))
    turn = readable(float(np.degrees(way)))
    if span < width(text, size) + 0.8 * size:
        beyond = 1.8 * size + 0.5 * _extent(text, size, way)
        return Wish(dimension.key, text, _from((x2, y2), way, beyond), 0.0, middle)
    lift = np.radians(turn + 90.0)
    return Wish(dimension.key, text, _from(middle, lift, 0.8 * size), turn, middle)


def _extent(text: str, size: float, way_rad: float) -> float:
    """Room that a level text takes in a direction."""
    return float(width(text, size) * abs(np.cos(way_rad)) + HEIGHT * size * abs(np.sin(way_rad)))


def readable(angle: float) -> float:
    """The turn of a text along a line at an angle, so that it reads from below or from the right."""
    turn = (angle + 90.0) % 180.0 - 90.0
    return 90.0 if turn <= -89.9 else turn


def _from(start: XY, angle_rad: float, distance: float) -> XY:
    return start[0] + distance * float(np.cos(angle_rad)), start[1] + distance * float(np.sin(angle_rad))


def _settled(wish: Wish, size: float, taken: Floats, ink: Ink, page: Bounds | None) -> tuple[Place, Floats]:
    """The cheapest of the places round home that touches no other text."""
    boxes, moved = _tries(wish, size)
    hits = HIT_COST * _overlap(boxes, taken) + CUT_COST * _outside(boxes, page)
    cost = moved / size + LINE_COST * ink.under(boxes + LETTERS_ONLY * size) + hits
    best = int(np.argmin(cost))
    left, bottom, right, top = boxes[best].tolist()
    at = ((left + right) / 2, (bottom + top) / 2)
    away = moved[best] > 0.0 and _gap(wish.owner, boxes[best]) > 0.9 * size
    turn = wish.turn if moved[best] == 0.0 else 0.0
    return Place(at, turn, wish.owner if away else None), boxes[best : best + 1]


def _tries(wish: Wish, size: float) -> tuple[Floats, Floats]:
    """Boxes left, bottom, right, top of every place to try, and how far each lies from home."""
    long, high = width(wish.text, size) / 2, HEIGHT * size / 2
    way, ring = _web()
    (x, y), turn = wish.home, math.radians(wish.turn)
    c, s = abs(math.cos(turn)), abs(math.sin(turn))
    wide, tall = c * long + s * high, s * long + c * high
    boxes = size * np.tile(way, 2) + np.array([x - long, y - high, x + long, y + high])
    boxes[0] = x - wide, y - tall, x + wide, y + tall
    return boxes, size * ring


@cache
def _web() -> tuple[Floats, Floats]:
    """Ways from home to every place to try, in heights of the lettering, home first; and the ring each lies on."""
    ring = np.concatenate([[0.0], np.repeat(RINGS[1:], DIRECTIONS)])
    spoke = 2.0 * np.pi * np.arange(len(ring)) / DIRECTIONS
    return np.stack([1.4 * ring * np.cos(spoke), ring * np.sin(spoke)], axis=1), ring


def _overlap(boxes: Floats, taken: Floats) -> Floats:
    """How many of the taken boxes each box touches."""
    a, b = boxes[:, None], taken[None]
    apart = (
        (a[..., 0] >= b[..., 2])
        | (b[..., 0] >= a[..., 2])
        | (a[..., 1] >= b[..., 3])
        | (b[..., 1] >= a[..., 3])
    )
    return np.sum(~apart, axis=1)


def _outside(boxes: Floats, page: Bounds | None) -> Floats:
    """Which boxes do not lie wholly on the page."""
    if page is None:
        return np.zeros(len(boxes))
    left, bottom, right, top = page
    inside = (boxes[:, 0] >= left) & (boxes[:, 1] >= bottom) & (boxes[:, 2] <= right) & (boxes[:, 3] <= top)
    return (~inside).astype(float)


def _gap(point: XY, box: Floats) -> float:
    """Distance from a point to a box; 0 inside."""
    dx = max(box[0] - point[0], 0.0, point[0] - box[2])
    dy = max(box[1] - point[1], 0.0, point[1] - box[3])
    return float(np.hypot(dx, dy))
