"""The lettering of a page: how wide words are, where lines break, which letters the font has."""

from functools import cache
from pathlib import Path

import matplotlib
from matplotlib.ft2font import FT2Font, LoadFlags

REGULAR, BOLD = "DejaVuSans.ttf", "DejaVuSans-Bold.ttf"
ASCENT, DESCENT = 0.93, 0.24
"""Reach of letters above and below their line, in heights of the lettering: DejaVu's own figures."""
LEADING = 1.35
"""From line to line, in heights of the lettering."""
MISSING = "?"


def font_file(bold: bool) -> Path:
    """The font that is embedded."""
    return Path(matplotlib.get_data_path()) / "fonts" / "ttf" / (BOLD if bold else REGULAR)


def width(text: str, size: float, bold: bool = False) -> float:
    """Width of a line of words in mm; `size` is the height of the lettering in mm."""
    return size * sum(_advance(letter, bold) for letter in text)


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
def _font(bold: bool) -> FT2Font:
    font = FT2Font(str(font_file(bold)))
    font.set_size(100.0, 72.0)
    return font


@cache
def _letters() -> frozenset[int]:
    return frozenset(_font(False).get_charmap()) & frozenset(_font(True).get_charmap())


@cache
def _advance(letter: str, bold: bool) -> float:
    glyph = _font(bold).load_char(ord(letter), flags=LoadFlags.NO_HINTING)
    return float(glyph.linearHoriAdvance) / 65536.0 / 100.0
