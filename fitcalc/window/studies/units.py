"""Tables and charts of a study in the units that the person reads; a study itself is in mm."""

import re
from dataclasses import replace

from fitcalc.present.chart import Axis, Chart, ChartMark, Spot, Tick, even_ticks
from fitcalc.present.tables import Table
from fitcalc.window.shown import Shown

IN_MM = Shown()
NAMED = re.compile(r", mm\b")
"""The unit of bare numbers, in a title or beside an axis."""


def table_in(table: Table, shown: Shown) -> Table:
    """The table with its lengths in the units shown."""
    if not shown.inches:
        return table
    rows = tuple(
        tuple(_cell(cell, at in table.lengths, shown) for at, cell in enumerate(row)) for row in table.rows
    )
    return replace(table, title=_told(table.title, shown), rows=rows)


def chart_in(chart: Chart, shown: Shown) -> Chart:
    """The chart with its words and the ticks of its axes in the units shown; places on it stay in mm."""
    if not shown.inches:
        return chart
    return replace(
        chart,
        title=_told(chart.title, shown),
        x=_axis(chart.x, shown),
        y=_axis(chart.y, shown),
        marks=tuple(_mark(mark, shown) for mark in chart.marks),
        legend=tuple(replace(entry, text=shown.words(entry.text)) for entry in chart.legend),
        notes=tuple(shown.words(note) for note in chart.notes),
    )


def _cell(cell: str, is_length: bool, shown: Shown) -> str:
    worded = shown.words(cell)
    return shown.lengths(cell) if is_length and worded == cell else worded


def _told(text: str, shown: Shown) -> str:
    return NAMED.sub(f", {shown.unit('mm')}", shown.words(text))


def _axis(axis: Axis, shown: Shown) -> Axis:
    if axis.unit != "mm":
        return replace(axis, ticks=tuple(Tick(tick.at, shown.words(tick.text)) for tick in axis.ticks))
    low, high = (shown.value(end, axis.unit) for end in (axis.low, axis.high))
    ticks = even_ticks(low, high, max(len(axis.ticks), 2))
    return replace(
        axis,
        label=_told(axis.label, shown),
        ticks=tuple(Tick(shown.stored(tick.at, axis.unit), tick.text) for tick in ticks),
    )


def _mark(mark: ChartMark, shown: Shown) -> ChartMark:
    return replace(mark, text=shown.words(mark.text)) if isinstance(mark, Spot) else mark
