"""Tables of a study as rich text."""

from collections.abc import Iterable
from html import escape

from fitcalc.present.tables import Table
from fitcalc.window.colours import Colours
from fitcalc.window.shown import Shown
from fitcalc.window.studies.units import IN_MM, table_in

MEASURE = "measure:"
"""How a link to a measurement begins."""


def tables_text(
    tables: Iterable[Table], again: Iterable[tuple[str, str]], colours: Colours, shown: Shown = IN_MM
) -> str:
    """Every table that has rows, in the units shown; the measurements to take again as links."""
    parts = [_table(table_in(each, shown), colours) for each in tables if each.rows]
    links = "<br>".join(f'<a href="{MEASURE}{escape(path)}">{escape(title)}</a>' for path, title in again)
    if links:
        parts.append(f"<h4>Go to a measurement that is worth taking again</h4>{links}")
    return "".join(parts)


def _table(table: Table, colours: Colours) -> str:
    head = "".join(f'<th align="left">{escape(cell)}</th>' for cell in table.header)
    rows = "".join(f"<tr>{''.join(f'<td>{escape(cell)}</td>' for cell in row)}</tr>" for row in table.rows)
    style = f'cellspacing="0" cellpadding="3" border="1" style="border-color: {colours.rule}; border-collapse: collapse"'
    return f'<h4>{escape(table.title)}</h4><table width="100%" {style}><tr>{head}</tr>{rows}</table>'
