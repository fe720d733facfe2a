"""Certainty as plots: the odds of each check, and the interval of each angle against what is wanted."""

from collections.abc import Iterator, Sequence

from fitcalc.present.certainty_record import CertaintyRecord, IntervalRecord, OddsRecord
from fitcalc.present.certainty_tables import SURE, percent
from fitcalc.present.chart import Axis, Chart, ChartLegend, ChartMark, Spot, even_ticks, row_axis
from fitcalc.present.picture import Area, Line, Style
from fitcalc.present.wanted import unmade_text
from fitcalc.present.wording import number

ROWS = 28
"""At most so many rows on one plot."""
THICK = 0.3
"""Half the thickness of a bar, in rows."""
LIKELY = 0.9


def certainty_charts(record: CertaintyRecord) -> list[Chart]:
    """The odds, then the angles."""
    return [odds_chart(record), *interval_charts(record.angles)]


def odds_chart(record: CertaintyRecord) -> Chart:
    """How likely each check passes, least likely on top."""
    shown = [each for each in record.odds if each.passes < SURE][:ROWS]
    rest = record.odds[len(shown) :]
    notes = [f"All of them together hold with {percent(record.all_hold)}."]
    if record.unmade:
        notes.append(unmade_text(record.unmade))
    if rest:
        least = percent(rest[0].passes)
        sure = {"100 %": "in all of them", "over 99 %": "with over 99 %"}.get(least, f"with {least} or more")
        notes.append(f"{len(rest)} more pass {sure}.")
    return Chart(
        title="How likely each check passes",
        x=Axis("passes in so many of 100 drawn cars and bodies", 0.0, 100.0, even_ticks(0.0, 100.0, 11)),
        y=row_axis([f"{each.label}, {each.wanted}" for each in shown]),
        marks=tuple(_odds(shown)),
        legend=(
            ChartLegend("fail", f"under {100 * LIKELY:.0f} %", "area"),
            ChartLegend("pass", f"{100 * LIKELY:.0f} % and more", "area"),
        ),
        notes=tuple(notes),
        aspect=_aspect(len(shown)),
    )


def _odds(shown: Sequence[OddsRecord]) -> Iterator[ChartMark]:
    for at, each in enumerate(shown):
        y, share = -float(at), 100.0 * each.passes
        style: Style = "pass" if each.passes >= LIKELY else "fail"
        corners = ((0.0, y - THICK), (share, y - THICK), (share, y + THICK), (0.0, y + THICK))
        yield Area(f"odds.{each.id}", style, each.id, corners)
        yield Spot(f"share.{each.id}", "note", each.id, (100.0, y), "none", percent(each.passes), "right")


def interval_charts(figures: Sequence[IntervalRecord]) -> list[Chart]:
    """Intervals against what is wanted, so many to a plot as it has room for."""
    bounded = [each for each in figures if each.wanted]
    parts = [bounded[start : start + ROWS] for start in range(0, len(bounded), ROWS)]
    return [_intervals(part) for part in parts]


def _intervals(figures: Sequence[IntervalRecord]) -> Chart:
    ends = [end for each in figures for end in (each.low, each.high, each.value)]
    bounds = [bound for each in figures for bound in (each.wanted_low, each.wanted_high) if bound is not None]
    low, high = min(ends + bounds) - 5.0, max(ends + bounds) + 5.0
    return Chart(
        title="Angles: what the measurements leave open, and what is wanted",
        x=Axis("deg", low, high, even_ticks(low, high, 10)),
        y=row_axis([each.label for each in figures]),
        marks=tuple(mark for at, each in enumerate(figures) for mark in _row(at, each, low, high)),
        legend=(
            ChartLegend("limit area", "wanted", "area"),
            ChartLegend("outline", "in 9 of 10 drawn cars and bodies"),
            ChartLegend("rework", "as measured", "spot", "dot"),
        ),
        aspect=_aspect(len(figures)),
    )


def _row(at: int, each: IntervalRecord, low: float, high: float) -> Iterator[ChartMark]:
    y = -float(at)
    left = low if each.wanted_low is None else each.wanted_low
    right = high if each.wanted_high is None else each.wanted_high
    corners = ((left, y - THICK), (right, y - THICK), (right, y + THICK), (left, y + THICK))
    yield Area(f"wanted.{each.id}", "limit area", each.id, corners)
    yield Line(f"interval.{each.id}", "outline", each.id, ((each.low, y), (each.high, y)))
    yield Spot(f"value.{each.id}", "rework", each.id, (each.value, y), "dot")
    words = f"{number(each.low, 'deg')} to {number(each.high, 'deg')}"
    yield Spot(f"words.{each.id}", "note", each.id, (high, y), "none", words, "right")


def _aspect(rows: int) -> float:
    return max(0.2, 0.05 * rows)
