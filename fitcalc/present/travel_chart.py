"""Clearance against pedal travel: what each shoe passes, one plot for each pedal."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from fitcalc.checks.shoe_travel import PARTS, rooms_by_travel
from fitcalc.fit.result import Result
from fitcalc.present.chart import Axis, Chart, ChartLegend, Spot, even_ticks
from fitcalc.present.picture import Line, Style
from fitcalc.present.wanted import named, required_bounds
from fitcalc.present.wording import amount

NEAR = 200.0
"""What never comes nearer than this is left off, mm."""
MOST = 6
STYLES: tuple[Style, ...] = ("outline", "hidden", "centre", "thin outline", "extreme", "assumed")
"""One for each line, nearest first."""
LIMIT: Style = "fail"


@dataclass(frozen=True)
class Passed:
    """One thing that a shoe passes: its room in mm at each part of the travel, and the least that is allowed."""

    id: str
    what: str
    rooms: tuple[float, ...]
    least: float
    allowed: float | None


def travel_charts(result: Result) -> list[Chart]:
    """One plot for each pedal whose shoe passes anything near."""
    found = [(name, passed_by(result, name)) for name in result.sitting.pedals]
    return [_chart(name, passed) for name, passed in found if passed]


def passed_by(result: Result, pedal: str) -> list[Passed]:
    """What the shoe on one pedal passes, the nearest first; the least room is the check's own."""
    checks = {check.id: check for check in result.checks}
    found = []
    for id, rooms in rooms_by_travel(result.case, pedal).items():
        check = checks.get(id)
        figure = next((each for each in result.figures if each.id == id), None)
        if figure is None or figure.value is None or float(figure.value[0]) > NEAR:
            continue
        allowed = None if check is None else required_bounds(check)[0]
        values = tuple(round(float(room), 2) for room in rooms)
        found.append(Passed(id, named(figure.label), values, float(figure.value[0]), allowed))
    return sorted(found, key=lambda each: each.least)[:MOST]


def _chart(pedal: str, passed: Sequence[Passed]) -> Chart:
    every = [room for each in passed for room in each.rooms] + [each.allowed or 0.0 for each in passed]
    low, high = min(0.0, min(every)) - 5.0, max(every) + 10.0
    return Chart(
        title=f"{pedal.capitalize()}: room about the shoe over the pedal's travel",
        x=Axis("part of the travel, % (0 = released)", 0.0, 100.0, even_ticks(0.0, 100.0, 11)),
        y=Axis("room, mm", low, high, even_ticks(low, high, 7)),
        marks=(*_lines(passed), *_limit(passed)),
        legend=tuple(_legend(passed)),
        aspect=0.26,
    )


def _lines(passed: Sequence[Passed]) -> Iterator[Line | Spot]:
    for at, (style, each) in enumerate(zip(STYLES, passed, strict=False), start=1):
        points = tuple((100.0 * part, room) for part, room in zip(PARTS.tolist(), each.rooms, strict=True))
        yield Line(f"room.{each.id}", style, each.id, points)
        place = points[min(4 + 7 * at, len(points) - 1)]
        yield Spot(f"number.{each.id}", "note", each.id, place, "none", f"{at}", "centre", framed=True)


def _limit(passed: Sequence[Passed]) -> Iterator[Line]:
    for bound in sorted({each.allowed for each in passed if each.allowed is not None}):
        yield Line(f"limit.{bound:g}", LIMIT, "", ((0.0, bound), (100.0, bound)))


def _legend(passed: Sequence[Passed]) -> Iterator[ChartLegend]:
    for at, (style, each) in enumerate(zip(STYLES, passed, strict=False), start=1):
        allowed = "" if each.allowed is None else f", at least {amount(each.allowed, 'mm')} wanted"
        yield ChartLegend(style, f"{at}  {each.what}: {amount(each.least, 'mm')} where it is least{allowed}")
    if any(each.allowed is not None for each in passed):
        yield ChartLegend(LIMIT, "least that is allowed")
