"""Pens and brushes for the line types of a picture, on light and on dark ground.

Colours start from the open set of Okabe and Ito (Color Universal Design, 2008), darkened or lightened until lettering
stands out at least 4.5 to 1 (WCAG 2.2, success criterion 1.4.3).
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from PySide6.QtCore import Qt
from PySide6.QtGui import QBrush, QColor, QPen

from fitcalc.present.picture import Style

Ink = Literal[
    "paper", "ink", "soft", "faint", "grey", "body", "skin", "kit", "seat", "strap", "other", "solid", "soil",
    "allowed", "refused", "pass", "advise", "fail", "rework", "grip",
]  # fmt: skip
LIGHT: Mapping[Ink, str] = {
    "paper": "#FCFCFA", "ink": "#1B1F23", "soft": "#4A5158", "faint": "#6B7278", "grey": "#9AA1A7",
    "body": "#0B4F7A", "skin": "#D3E6F2", "kit": "#EEF4F8", "seat": "#5A4632", "strap": "#9A4D00", "other": "#8A3A6B",
    "solid": "#E4E6E8", "soil": "#A9AFB4", "allowed": "#D5EFE6", "refused": "#FBE3D6",
    "pass": "#00654A", "advise": "#7F5600", "fail": "#B03A00", "rework": "#00609A", "grip": "#0072B2",
}  # fmt: skip
DARK: Mapping[Ink, str] = {
    "paper": "#15191D", "ink": "#E9ECEE", "soft": "#B4BBC1", "faint": "#98A0A7", "grey": "#737B82",
    "body": "#7CC4EE", "skin": "#1E3A4C", "kit": "#27414F", "seat": "#D3B48C", "strap": "#F0A050", "other": "#DD9BC3",
    "solid": "#333A41", "soil": "#535B62", "allowed": "#173A31", "refused": "#3A241B",
    "pass": "#45C9A0", "advise": "#EDB53C", "fail": "#FF9160", "rework": "#5DB9EE", "grip": "#56B4E9",
}  # fmt: skip
WIDE, NARROW = 1.9, 0.95
"""Widths of line in pixels at ordinary lettering; two to one as in ISO 128-2."""
DASHED, CHAIN, DOUBLE_CHAIN = (6.0, 3.0), (14.0, 3.0, 2.0, 3.0), (14.0, 3.0, 2.0, 3.0, 2.0, 3.0)
LETTERS = 12.0
"""Pixel size of lettering at which the widths hold."""


@dataclass(frozen=True)
class Stroke:
    """How one style is drawn.

    Attributes:
        line: colour of the line; None leaves it out.
        width: in pixels.
        dashes: lengths in pixels, on and off by turns.
        fill: colour inside; None leaves it open.
        letters: colour of words.
        hatched: the inside is hatched, not filled.
    """

    line: Ink | None
    width: float = NARROW
    dashes: tuple[float, ...] = ()
    fill: Ink | None = None
    letters: Ink = "ink"
    hatched: bool = False


STROKES: Mapping[Style, Stroke] = {
    "outline": Stroke("ink", WIDE),
    "thin outline": Stroke("soft"),
    "hidden": Stroke("soft", NARROW, DASHED),
    "centre": Stroke("soft", NARROW, CHAIN, letters="soft"),
    "extreme": Stroke("faint", NARROW, DOUBLE_CHAIN),
    "assumed": Stroke("grey", NARROW, DASHED),
    "solid": Stroke("ink", NARROW, fill="solid"),
    "ground": Stroke(None, fill="soil", hatched=True),
    "seat": Stroke("seat", 1.5 * WIDE, fill="paper"),
    "pad": Stroke("ink", NARROW, fill="ink"),
    "strap": Stroke("strap", 1.3 * WIDE),
    "body": Stroke("body", 0.8 * WIDE, fill="skin"),
    "joint": Stroke("body", NARROW, fill="paper"),
    "link": Stroke("body", NARROW, CHAIN),
    "kit": Stroke("body", 0.8 * WIDE, fill="kit"),
    "shoe": Stroke("body", WIDE),
    "as found": Stroke("grey", NARROW),
    "other driver": Stroke("other", NARROW),
    "other joint": Stroke("other", NARROW, fill="paper"),
    "limit area": Stroke(None, fill="allowed"),
    "keep out area": Stroke(None, fill="refused"),
    "dimension": Stroke("soft", letters="ink"),
    "pass": Stroke("pass", letters="pass"),
    "advise": Stroke("advise", 1.3 * NARROW, letters="advise"),
    "fail": Stroke("fail", 1.6 * NARROW, letters="fail"),
    "not assessed": Stroke("soft", NARROW, DASHED, letters="soft"),
    "rework": Stroke("rework", 1.3 * NARROW, letters="rework"),
    "note": Stroke("faint", letters="faint"),
    "handle": Stroke("grip", 1.3 * NARROW, fill="paper"),
}


def inks(dark: bool) -> Mapping[Ink, str]:
    """The colours of one theme, as `#RRGGBB`."""
    return DARK if dark else LIGHT


@cache
def pen_for(style: Style, dark: bool, letters: float, marked: bool = False) -> QPen:
    """The pen of a style; its width stays the same on screen at any zoom.

    Args:
        style: of the primitive.
        dark: on dark ground.
        letters: pixel size of the lettering, which the widths follow.
        marked: what it draws is picked out.
    """
    stroke = STROKES[style]
    if stroke.line is None and not marked:
        return QPen(Qt.PenStyle.NoPen)
    width = (stroke.width + (1.6 if marked else 0.0)) * letters / LETTERS
    colour = QColor(inks(dark)["grip" if marked else stroke.line or "grip"])
    pen = QPen(colour, width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap if stroke.dashes else Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    pen.setCosmetic(True)
    if stroke.dashes:
        pen.setDashPattern([dash * letters / LETTERS / width for dash in stroke.dashes])
    return pen


@cache
def brush_for(style: Style, dark: bool) -> QBrush:
    """What a style fills an area with."""
    stroke = STROKES[style]
    if stroke.fill is None:
        return QBrush(Qt.BrushStyle.NoBrush)
    kind = Qt.BrushStyle.BDiagPattern if stroke.hatched else Qt.BrushStyle.SolidPattern
    return QBrush(QColor(inks(dark)[stroke.fill]), kind)


def letters_for(style: Style, dark: bool) -> QColor:
    """Colour of the words of a style."""
    return QColor(inks(dark)[STROKES[style].letters])
