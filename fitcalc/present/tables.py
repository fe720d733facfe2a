"""Tables as plain data, and as text for a terminal."""

import textwrap
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import zip_longest

GAP = "  "
NARROWEST = 12
"""No column is wrapped to less than this."""


@dataclass(frozen=True)
class Table:
    """Rows of words under a header.

    Attributes:
        lengths: places of the columns of which every number is a length in mm, without its unit.
    """

    title: str
    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    lengths: tuple[int, ...] = ()


def as_text(table: Table, width: int) -> str:
    """The table with aligned columns, cells wrapped so that it fits the width; empty when it has no rows."""
    if not table.rows:
        return ""
    widths = _widths(table, width)
    rule = GAP.join("-" * column for column in widths)
    lines = [line for row in table.rows for line in _lines(row, widths)]
    return "\n".join([table.title, *_lines(table.header, widths), rule, *lines])


def _widths(table: Table, width: int) -> list[int]:
    widths = [max(len(row[i]) for row in (table.header, *table.rows)) for i in range(len(table.header))]
    while sum(widths) + len(GAP) * (len(widths) - 1) > width and max(widths) > NARROWEST:
        widths[widths.index(max(widths))] -= 1
    return widths


def _lines(row: tuple[str, ...], widths: list[int]) -> Iterator[str]:
    cells = [_wrapped(cell, column) for cell, column in zip(row, widths, strict=True)]
    for parts in zip_longest(*cells, fillvalue=""):
        yield GAP.join(part.ljust(column) for part, column in zip(parts, widths, strict=True)).rstrip()


def _wrapped(cell: str, column: int) -> list[str]:
    return [cell] if len(cell) <= column else textwrap.wrap(cell, column)
