"""Writes `docs/limits.md`, a page for each limit set and a drawing for each check from what the program reads.

Run: python docs/make_limits.py
"""

from collections.abc import Iterator, Mapping
from math import cos, radians, sin
from pathlib import Path
from xml.sax.saxutils import escape

from fitcalc.checks.quantities import quantities
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.present.limit_pictures import LimitPicture, examples, limit_pictures
from fitcalc.present.limits_page import pages
from fitcalc.present.picture import XY, Arc, Area, Circle, Dimension, Line, Primitive, Text, offset_line

DOCS = Path(__file__).parent
WIDTH = 480
"""Width of a drawing, px."""
THIN, THICK, LETTERS = 0.9, 2.2, 15.0
"""Lines and lettering, px."""
GREY, ACCENT, PAPER = "#8a8f94", "#b3261e", "#ffffff"


def drawings() -> Mapping[str, LimitPicture]:
    """A drawing for every check that has a place in the car."""
    cars = (load_car(sample_path(name)) for name in ("hillclimb", "upright"))
    drivers = (load_driver(sample_path(name)) for name in ("otto", "robin"))
    return limit_pictures(examples(*cars, *drivers), quantities())


def svg(picture: LimitPicture) -> str:
    """One drawing; up on the page is up in the car, so y is turned over."""
    left, bottom, right, top = picture.frame
    unit = (right - left) / WIDTH
    height = WIDTH * (top - bottom) / (right - left)
    context = "".join(part for each in picture.context for part in _drawn(each, unit))
    accent = "".join(part for each in picture.accent for part in _drawn(each, unit))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH}" height="{height:.0f}" '
        f'viewBox="{left:.0f} {-top:.0f} {right - left:.0f} {top - bottom:.0f}">\n'
        f"<title>{escape(picture.quantity)}: {escape(picture.title)}</title>\n"
        f'<rect x="{left:.0f}" y="{-top:.0f}" width="{right - left:.0f}" height="{top - bottom:.0f}" fill="{PAPER}"/>\n'
        f'<g fill="none" stroke="{GREY}" stroke-width="{THIN * unit:.2f}">{context}</g>\n'
        f'<g fill="none" stroke="{ACCENT}" stroke-width="{THICK * unit:.2f}">{accent}</g>\n'
        "</svg>\n"
    )


def _drawn(each: Primitive, unit: float) -> Iterator[str]:
    match each:
        case Line():
            yield _path(each.points)
        case Area():
            yield _path(each.points, "Z")
        case Circle():
            (x, y), fill = each.centre, f' fill="{ACCENT}"' if each.key.startswith("dot") else ""
            yield f'<circle cx="{x:.0f}" cy="{-y:.0f}" r="{each.radius:.1f}"{fill}/>'
        case Arc():
            yield from _arc(each, unit)
        case Dimension():
            yield from _dimension(each, unit)
        case Text():
            x, y = each.at
            yield _text((x + 8 * unit, y + 8 * unit), each.text, unit, "start")


def _arc(arc: Arc, unit: float) -> Iterator[str]:
    steps = [arc.start + arc.sweep * at / 16 for at in range(17)]
    yield _path(tuple(_out(arc.centre, angle, arc.radius) for angle in steps))
    yield _text(_out(arc.centre, arc.start + arc.sweep / 2, arc.radius + 26 * unit), arc.text, unit, "middle")


def _dimension(dimension: Dimension, unit: float) -> Iterator[str]:
    (x1, y1), (x2, y2) = ends = offset_line(dimension)
    yield _path(ends)
    level = abs(x2 - x1) > abs(y2 - y1)
    aside = (0.0, 9 * unit) if level else (9 * unit, -LETTERS * unit / 3)
    yield _text(
        ((x1 + x2) / 2 + aside[0], (y1 + y2) / 2 + aside[1]),
        dimension.text,
        unit,
        "middle" if level else "start",
    )


def _text(at: XY, words: str, unit: float, anchor: str) -> str:
    x, y = at
    look = f'x="{x:.0f}" y="{-y:.0f}" font-family="sans-serif" font-size="{LETTERS * unit:.1f}" text-anchor="{anchor}"'
    halo = f'stroke="{PAPER}" stroke-width="{4 * unit:.1f}" stroke-linejoin="round"'
    return f'<text {look} {halo}>{escape(words)}</text><text {look} fill="{ACCENT}" stroke="none">{escape(words)}</text>'


def _out(centre: XY, angle: float, distance: float) -> XY:
    return centre[0] + distance * cos(radians(angle)), centre[1] + distance * sin(radians(angle))


def _path(points: tuple[XY, ...], closed: str = "") -> str:
    return f'<path d="M{" ".join(f"{x:.0f},{-y:.0f}" for x, y in points)}{closed}"/>'


def main() -> None:
    """Write every page and drawing, and take away drawings of what is no longer measured."""
    pictures = drawings()
    (DOCS / "limits").mkdir(exist_ok=True)
    for old in (DOCS / "limits").iterdir():
        old.unlink()
    for quantity, picture in pictures.items():
        (DOCS / "limits" / f"{quantity}.svg").write_text(svg(picture), encoding="utf-8")
    for path, text in pages(pictures).items():
        (DOCS / path).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
