"""The lettering of a page: how wide words are, where lines break, which letters the font has."""

from collections.abc import Mapping
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from types import MappingProxyType

from reportlab.pdfbase.pdfmetrics import getFont, registerFont
from reportlab.pdfbase.ttfonts import TTFont, TTFontFace

REGULAR, BOLD = "DejaVuSans.ttf", "DejaVuSans-Bold.ttf"
ASCENT, DESCENT = 0.93, 0.24
"""Reach of letters above and below their line, in heights of the lettering: DejaVu's own figures."""
LEADING = 1.35
"""From line to line, in heights of the lettering."""
MISSING = "?"
PER_EM = 1000.0
"""Units of the library's widths in the height of the lettering."""


def font_file(bold: bool) -> Path:
    """The font that is embedded; it comes with matplotlib, which is not loaded for it."""
    found = find_spec("matplotlib")
    assert found is not None, "matplotlib is not installed"
    assert found.submodule_search_locations
    name = BOLD if bold else REGULAR
    return Path(found.submodule_search_locations[0]) / "mpl-data" / "fonts" / "ttf" / name


def width(text: str, size: float, bold: bool = False) -> float:
    """Width of a line of words in mm; `size` is the height of the lettering in mm."""
    advances = _advances(bold)
    return size * sum(advances.get(letter, 0.0) for letter in text)


def wrapped(text: str, size: float, room: float, bold: bool = False) -> list[str]:
    """Lines that fit the room, broken between words, or within a word that is too long alone."""
    lines = [""]
    for word in (piece for long in text.split() for piece in _pieces(long, size, room, bold)):
        longer = f"{lines[-1]} {word}".strip()
        if width(longer, size, bold) <= room:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def longest_word(text: str, size: float, bold: bool = False) -> float:
    """Room that the longest word takes."""
    return max((width(word, size, bold) for word in text.split()), default=0.0)


def printable(text: str) -> str:
    """The text with a question mark in place of each letter that the font has not."""
    known = _letters()
    return "".join(letter if ord(letter) in known else MISSING for letter in " ".join(text.split()))


def _pieces(word: str, size: float, room: float, bold: bool) -> list[str]:
    pieces = [""]
    for letter in word:
        if pieces[-1] and width(pieces[-1] + letter, size, bold) > room:
            pieces.append("")
        pieces[-1] += letter
    return pieces


@cache
def registered_font(bold: bool) -> str:
    """Name under which the PDF library knows the font."""
    font = TTFont(font_file(bold).stem, str(font_file(bold)))
    registerFont(font)
    return str(font.fontName)


def _face(bold: bool) -> TTFontFace:
    return getFont(registered_font(bold)).face


@cache
def _advances(bold: bool) -> Mapping[str, float]:
    """Width of each letter at a height of 1."""
    face = _face(bold)
    return MappingProxyType({chr(code): face.charWidths[code] / PER_EM for code in face.charToGlyph})


@cache
def _letters() -> frozenset[int]:
    return frozenset(_face(False).charToGlyph) & frozenset(_face(True).charToGlyph)
