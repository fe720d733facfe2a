"""Pens for the line types of a picture on paper: ISO 128-2, line group 0.5 (wide 0.5 mm, narrow 0.25 mm)."""

from collections.abc import Mapping
from dataclasses import dataclass

from fitcalc.paper.page import BLACK, GREY
from fitcalc.present.picture import Style

WIDE, NARROW, FINE = 0.5, 0.25, 0.18
DASHED, CHAIN, DOUBLE_CHAIN = (3.0, 0.75), (6.0, 0.75, 0.5, 0.75), (6.0, 0.75, 0.5, 0.75, 0.5, 0.75)
"""Lines and gaps in mm: 12 d, 24 d, 3 d and 0.5 d of ISO 128-2 at d = 0.25, the dots drawn as short dashes."""
PALE_BODY, PALE_KIT, PALE_SOLID = "#EDF2F6", "#F6F6F6", "#DEDEDE"
ALLOWED, REFUSED, FOUND, FAIL = "#E2F2EC", "#FAE9E0", "#8C8C8C", "#9E2F00"


@dataclass(frozen=True)
class Pen:
    """How one style is drawn; sizes in mm on paper. A width of 0 leaves the line out."""

    width: float = NARROW
    colour: str = BLACK
    dash: tuple[float, ...] = ()
    fill: str | None = None


PENS: Mapping[Style, Pen] = {
    "outline": Pen(WIDE),
    "thin outline": Pen(),
    "hidden": Pen(dash=DASHED),
    "centre": Pen(FINE, BLACK, CHAIN),
    "extreme": Pen(FINE, GREY, DOUBLE_CHAIN),
    "assumed": Pen(FINE, GREY, DASHED),
    "solid": Pen(fill=PALE_SOLID),
    "ground": Pen(0.0, fill=PALE_SOLID),
    "seat": Pen(0.7),
    "pad": Pen(fill=BLACK),
    "strap": Pen(0.7, "#7A3E00"),
    "body": Pen(0.35, "#0B4F7A", fill=PALE_BODY),
    "joint": Pen(0.25, "#0B4F7A", fill="#FFFFFF"),
    "link": Pen(FINE, "#0B4F7A", CHAIN),
    "kit": Pen(0.35, "#0B4F7A", fill=PALE_KIT),
    "as found": Pen(FINE, FOUND),
    "other driver": Pen(NARROW, GREY),
    "other joint": Pen(NARROW, GREY, fill="#FFFFFF"),
    "limit area": Pen(0.0, fill=ALLOWED),
    "keep out area": Pen(0.0, fill=REFUSED),
    "dimension": Pen(FINE),
    "advise": Pen(NARROW),
    "fail": Pen(0.35, FAIL),
    "not assessed": Pen(FINE, GREY, DASHED),
    "note": Pen(FINE, GREY),
    "rework": Pen(0.3),
}
"""A style that is not here is drawn with a narrow black line."""


def pen_for(style: Style) -> Pen:
    """The pen of a style."""
    return PENS.get(style, Pen())
