"""Plots on paper: axes, lines, areas and marks with the same pens as the drawings; legend and notes below."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from fitcalc.paper.flow import SMALL, Strip, flowed, heading, paragraph, space
from fitcalc.paper.frame import area
from fitcalc.paper.lettering import ASCENT, DESCENT, LEADING, printable, width, wrapped
from fitcalc.paper.page import BLACK, GREY, PALE, Box, Mark, Page, Paper, Stroke, Words, circle
from fitcalc.paper.pens import FINE, Pen, pen_for
from fitcalc.present.chart import Axis, Chart, ChartLegend, ChartMark, Shape, Spot
from fitcalc.present.picture import XY, Area, Line, Style

LETTERS = 2.3
"""Height of lettering in a plot, mm."""
TICK, GAP = 1.4, 1.2
NAMES = 0.5
"""Row names take at most this part of the width."""
ROW = 1.6
"""Room above and below the words of a row together, mm."""
RIGHT = 21.0
"""Room right of the plot of rows for words that stand there, mm."""
EDGE = 4.0
"""Room right of any other plot, for half of the last tick's words, mm."""
DOT = 1.1
SWATCH = (8.0, 2.2)
PLOT = "plot"
"""What stands in the place of a page's scale."""
FILLS: Mapping[Style, Pen] = {
    "pass": Pen(0.0, fill="#A9D8C4"),
    "fail": Pen(0.0, fill="#F0B79C"),
    "advise": Pen(0.0, fill="#F2E0A6"),
    "body": Pen(0.0, fill="#C7D9E6"),
}
"""Areas of plots that are filled in strength."""


@dataclass(frozen=True)
class Plot:
    """Where a plot stands in its strip, mm; y down negative."""

    chart: Chart
    box: Box

    def paper(self, place: XY) -> XY:
        """A place of the axes on paper."""
        (x, y), (left, bottom, right, top) = (self.chart.x, self.chart.y), self.box
        return (
            left + (place[0] - x.low) / (x.high - x.low) * (right - left),
            bottom + (place[1] - y.low) / (y.high - y.low) * (top - bottom),
        )


def chart_pages(charts: Sequence[Chart], paper: Paper) -> list[Page]:
    """One page for each plot."""
    box = area(paper)
    room, high = box[2] - box[0], box[3] - box[1]
    return [
        Page(chart.title, PLOT, flowed(chart_strips(chart, room, high), box[0], box[3], high)[0])
        for chart in charts
    ]


def shared_pages(title: str, charts: Sequence[Chart], paper: Paper) -> list[Page]:
    """Plots under headings of their own, as many to a page as it has room for."""
    box = area(paper)
    room, high = box[2] - box[0], box[3] - box[1]
    strips = [strip for chart in charts for strip in (*heading(chart.title, room), *_kept(chart, room, high))]
    pages = flowed(strips, box[0], box[3], high)
    return [Page(title if at == 0 else f"{title}, continued", PLOT, marks) for at, marks in enumerate(pages)]


def _kept(chart: Chart, room: float, high: float) -> list[Strip]:
    """A plot with what belongs to it, kept together."""
    strips = [*chart_strips(chart, room, high / 2), space(5.0)]
    return [replace(strip, keep=at < len(strips) - 1) for at, strip in enumerate(strips)]


def chart_strips(chart: Chart, room: float, most: float) -> list[Strip]:
    """A plot, its legend and its notes, so high altogether at most."""
    below = [*_legend_strips(chart.legend, room), space(1.5), *_note_strips(chart.notes, room)]
    return [plot_strip(chart, room, most - sum(strip.height for strip in below)), *below]


def plot_strip(chart: Chart, room: float, most: float) -> Strip:
    """The plot itself, as wide as the page and at most so high."""
    names = _names(chart.y, NAMES * room)
    left = max((width(line, LETTERS) for lines in names for line in lines), default=0.0) + TICK + GAP
    left += 0.0 if not chart.y.label else LEADING * LETTERS + GAP
    foot = TICK + GAP + 2 * LEADING * LETTERS + GAP
    right = room - (RIGHT if not chart.y.ruled else EDGE)
    high = min(_height(chart, names, right - left), most - foot - GAP)
    plot = Plot(chart, (left, -GAP - high, right, -GAP))
    marks = (*_ground(plot, names), *_drawn(plot), *_rim(plot))
    return Strip(high + foot + GAP, marks)


def _names(axis: Axis, room: float) -> list[list[str]]:
    return [wrapped(printable(tick.text), LETTERS, room) for tick in axis.ticks]


def _height(chart: Chart, names: Sequence[Sequence[str]], wide: float) -> float:
    if chart.y.ruled:
        return chart.aspect * wide
    return max(len(names), 1) * (max((len(lines) for lines in names), default=1) * LEADING * LETTERS + ROW)


def _ground(plot: Plot, names: Sequence[Sequence[str]]) -> Iterator[Mark]:
    """Rules, ticks, and what stands beside the axes."""
    left, bottom, right, top = plot.box
    for tick in plot.chart.x.ticks:
        x = plot.paper((tick.at, plot.chart.y.low))[0]
        yield Stroke(((x, bottom), (x, top)), 0.13, PALE)
        yield Stroke(((x, bottom), (x, bottom - TICK)), FINE)
        yield Words(
            printable(tick.text), (x, bottom - TICK - GAP - ASCENT * LETTERS), LETTERS, align="centre"
        )
    for tick, lines in zip(plot.chart.y.ticks, names, strict=True):
        y = plot.paper((plot.chart.x.low, tick.at))[1]
        if plot.chart.y.ruled:
            yield Stroke(((left, y), (right, y)), 0.13, PALE)
        yield Stroke(((left - TICK, y), (left, y)), FINE)
        base = y + (len(lines) / 2 - 1) * LEADING * LETTERS + (LEADING - ASCENT + DESCENT) * LETTERS / 2
        for at, line in enumerate(lines):
            place = (left - TICK - GAP, base - at * LEADING * LETTERS)
            yield Words(line, place, LETTERS, align="right")
    yield from _labels(plot)


def _labels(plot: Plot) -> Iterator[Words]:
    left, bottom, right, top = plot.box
    low = bottom - TICK - GAP - LEADING * LETTERS - ASCENT * LETTERS - 0.6
    if plot.chart.x.label:
        yield Words(printable(plot.chart.x.label), ((left + right) / 2, low), LETTERS, align="centre")
    if plot.chart.y.label:
        at = (ASCENT * LETTERS, (bottom + top) / 2)
        yield Words(printable(plot.chart.y.label), at, LETTERS, align="centre", turn=90.0)


def _rim(plot: Plot) -> Iterator[Stroke]:
    left, bottom, right, top = plot.box
    yield Stroke(((left, bottom), (right, bottom), (right, top), (left, top)), FINE, BLACK, closed=True)


def _drawn(plot: Plot) -> Iterator[Mark]:
    spots = [mark for mark in plot.chart.marks if isinstance(mark, Spot)]
    for mark in plot.chart.marks:
        if not isinstance(mark, Spot):
            yield _shape(mark, plot)
    for spot in spots:
        yield from _symbol(spot.shape, plot.paper(spot.at), spot.style)
        if spot.text:
            yield from _spot_words(spot, plot)


def _shape(mark: ChartMark, plot: Plot) -> Stroke:
    assert isinstance(mark, Line | Area)
    points = tuple(plot.paper(point) for point in mark.points)
    if isinstance(mark, Line):
        pen = pen_for(mark.style)
        return Stroke(points, pen.width, pen.colour, pen.dash, clip=plot.box)
    pen = _fill(mark.style)
    return Stroke(points, pen.width, pen.colour, pen.dash, closed=True, fill=pen.fill, clip=plot.box)


def _fill(style: Style) -> Pen:
    return FILLS.get(style, pen_for(style))


def _symbol(shape: Shape, at: XY, style: Style) -> Iterator[Stroke]:
    colour, (x, y) = pen_for(style).colour, at
    match shape:
        case "cross":
            yield Stroke(((x - DOT, y - DOT), (x + DOT, y + DOT)), 0.35, colour)
            yield Stroke(((x - DOT, y + DOT), (x + DOT, y - DOT)), 0.35, colour)
        case "ring":
            yield Stroke(circle(at, 1.6 * DOT), 0.35, colour, closed=True)
        case "dot":
            yield Stroke(circle(at, 0.8 * DOT), 0.0, colour, closed=True, fill=colour)
        case "tick":
            yield Stroke(((x, y - 1.5 * DOT), (x, y + 1.5 * DOT)), 0.5, colour)


def _spot_words(spot: Spot, plot: Plot) -> Iterator[Mark]:
    """Words beside a spot, kept on the page; framed ones in the middle of it."""
    text, (x, y) = printable(spot.text), plot.paper(spot.at)
    long, reach = width(text, LETTERS), 1.8 * DOT + 0.4 if spot.shape != "none" else 1.0
    left, bottom, right, top = plot.box
    beyond = right + (RIGHT if not plot.chart.y.ruled else 0.0)
    side = "left" if spot.side == "right" and x + reach + long > beyond else spot.side
    start = {"right": x + reach, "left": x - reach - long}.get(side, x - long / 2)
    start = min(max(start, left + 0.4), beyond - long - 0.4)
    up = {"above": 1.0, "below": -1.0}.get(side, 0.0) * (reach + LETTERS / 2)
    crowded = not bottom + 0.7 * LETTERS <= y + up <= top - 0.7 * LETTERS
    middle = min(max(y - up if crowded else y + up, bottom + 0.7 * LETTERS), top - 0.7 * LETTERS)
    base = middle - (ASCENT - DESCENT) * LETTERS / 2
    if spot.framed:
        yield _frame(start, middle, long)
    yield Words(text, (start, base), LETTERS, colour=BLACK, backed=side in ("above", "below"))


def _frame(start: float, middle: float, long: float) -> Stroke:
    half = 0.62 * LETTERS
    corners = (
        (start - 0.5, middle - half),
        (start + long + 0.5, middle - half),
        (start + long + 0.5, middle + half),
        (start - 0.5, middle + half),
    )
    return Stroke(corners, 0.13, GREY, closed=True, fill="#FFFFFF")


def _legend_strips(legend: Sequence[ChartLegend], room: float) -> list[Strip]:
    return [
        _legend_strip(each, line, at == 0) for each in legend for at, line in enumerate(_told(each, room))
    ]


def _told(each: ChartLegend, room: float) -> list[str]:
    return wrapped(printable(each.text), SMALL, room - SWATCH[0] - 2 * GAP)


def _legend_strip(each: ChartLegend, line: str, first: bool) -> Strip:
    high = LEADING * SMALL
    middle = -high / 2
    words = Words(line, (SWATCH[0] + 2 * GAP, middle - (ASCENT - DESCENT) * SMALL / 2), SMALL)
    return Strip(high, (*(_swatch(each, middle) if first else ()), words))


def _swatch(each: ChartLegend, middle: float) -> Iterator[Stroke]:
    long, high = SWATCH
    if each.kind == "spot":
        yield from _symbol(each.shape, (long / 2, middle), each.style)
    elif each.kind == "line":
        pen = pen_for(each.style)
        yield Stroke(((0.0, middle), (long, middle)), pen.width, pen.colour, pen.dash)
    else:
        pen = replace(_fill(each.style), width=FINE)
        corners = (
            (0.0, middle - high / 2),
            (long, middle - high / 2),
            (long, middle + high / 2),
            (0.0, middle + high / 2),
        )
        yield Stroke(corners, pen.width, GREY, closed=True, fill=pen.fill)


def _note_strips(notes: Sequence[str], room: float) -> list[Strip]:
    return [strip for note in notes for strip in paragraph(note, room, SMALL)]
