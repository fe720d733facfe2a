"""Tables as plain data, and as text for a terminal."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Table:
    """Rows of words under a header."""

    title: str
    header: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def as_text(table: Table) -> str:
    """The table with aligned columns; empty when it has no rows."""
    if not table.rows:
        return ""
    widths = [max(len(row[i]) for row in (table.header, *table.rows)) for i in range(len(table.header))]
    lines = [_line(row, widths) for row in (table.header, *table.rows)]
    rule = "  ".join("-" * width for width in widths)
    return "\n".join([table.title, lines[0], rule, *lines[1:]])


def _line(row: tuple[str, ...], widths: list[int]) -> str:
    return "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
