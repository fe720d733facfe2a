"""The bars to make, as tables for the bench."""

from collections.abc import Callable, Iterable, Mapping

from fitcalc.present.bar_record import BarRecord
from fitcalc.present.tables import Table
from fitcalc.present.wording import amount

ROWS: tuple[tuple[str, Callable[[BarRecord], str]], ...] = (
    ("stand-off bar, length to cut", lambda bar: _cut(bar.cut_stand_off)),
    ("longer-arm bar, length to cut", lambda bar: _cut(bar.cut_longer_arm)),
    ("section", lambda bar: bar.section),
    ("material", lambda bar: bar.material),
    ("joint", lambda bar: bar.joint),
    ("holes in each bar", lambda bar: bar.holes or "none"),
    ("design load on the pad", lambda bar: amount(bar.design_load, "N")),
    ("factor of safety", lambda bar: f"{bar.safety:.2f} (aim for {bar.wanted:g})"),
    ("governed by", lambda bar: f"{bar.governing} ({bar.governing_source})"),
    ("give at the pad", lambda bar: f"{bar.deflection:.2f} mm"),
)
"""What is told of a bar."""


def bars_table(bars: Mapping[str, BarRecord | None]) -> Table:
    """What to cut and drill for each pedal that is extended, and whether it holds."""
    made = {name: bar for name, bar in bars.items() if bar is not None}
    rows = tuple((title, *(told(bar) for bar in made.values())) for title, told in ROWS) if made else ()
    return Table("Bars to make (the old arm and its pivot are not checked)", ("what", *made), rows)


def advice_table(bars: Iterable[BarRecord | None]) -> Table:
    """What the person who makes the bars should know, each once."""
    lines = dict.fromkeys(line for bar in bars if bar is not None for line in bar.advice)
    return Table("For the bench", ("advice",), tuple((line,) for line in lines))


def _cut(length: float) -> str:
    return amount(length, "mm") if length else "none"
