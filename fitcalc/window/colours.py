"""The window's two palettes; every pair that text is drawn in has a contrast of 4.5 : 1 or more (WCAG 2.2, 1.4.3).

The status hues are darkened and lightened from the set of Okabe and Ito (2008, "Color universal design"), which
people with the common kinds of colour blindness tell apart.
"""

from dataclasses import dataclass

STATUS_WORDS = ("pass", "advise", "fail", "not assessed")


@dataclass(frozen=True)
class Colours:
    """One palette, as `#rrggbb`.

    Attributes:
        paper: behind text that can be edited, and behind lists.
        panel: behind everything else.
        raised: buttons and headings.
        ink: text.
        quiet: text that matters less.
        rule: lines between parts; no text is drawn in it.
        accent: what is chosen or has the keyboard.
        on_accent: text upon it.
        estimated: a value that nobody measured.
        passed, advised, failed, unassessed: the status words.
    """

    name: str
    paper: str
    panel: str
    raised: str
    ink: str
    quiet: str
    rule: str
    accent: str
    on_accent: str
    estimated: str
    passed: str
    advised: str
    failed: str
    unassessed: str

    def status(self, word: str) -> str:
        """The colour of a status word."""
        by_word = dict(
            zip(STATUS_WORDS, (self.passed, self.advised, self.failed, self.unassessed), strict=True)
        )
        return by_word[word]


LIGHT = Colours(
    name="light",
    paper="#ffffff",
    panel="#f1f2ef",
    raised="#e4e6e1",
    ink="#1b1e22",
    quiet="#50565e",
    rule="#b9beb8",
    accent="#0b5a8a",
    on_accent="#ffffff",
    estimated="#6b4a8a",
    passed="#00694a",
    advised="#7d5200",
    failed="#a83200",
    unassessed="#4f5660",
)
DARK = Colours(
    name="dark",
    paper="#191c1f",
    panel="#23272b",
    raised="#30363b",
    ink="#eceeec",
    quiet="#b4bbc1",
    rule="#4c545b",
    accent="#7cc4ee",
    on_accent="#10181e",
    estimated="#cdb2e8",
    passed="#5fd3a8",
    advised="#f0c05a",
    failed="#ff9d70",
    unassessed="#bcc3ca",
)


def contrast(one: str, other: str) -> float:
    """Contrast of two colours, 1 to 21 (WCAG 2.2, "contrast ratio")."""
    darker, lighter = sorted((_luminance(one), _luminance(other)))
    return (lighter + 0.05) / (darker + 0.05)


def _luminance(colour: str) -> float:
    red, green, blue = (_linear(int(colour[at : at + 2], 16) / 255) for at in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(part: float) -> float:
    return float(part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4)
