"""Typed rows as CSV and XLSX: one column for each field of the row, numbers as numbers."""

import csv
import io
from collections.abc import Mapping, Sequence
from dataclasses import astuple, fields
from types import MappingProxyType
from typing import Any

from openpyxl import Workbook
from openpyxl.styles import Alignment, Font
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

Rows = Sequence[Any]
"""Rows of one frozen dataclass; an empty list gives an empty sheet."""
Offered = Mapping[tuple[str, int], tuple[str, ...]]
NOTHING: Offered = MappingProxyType({})
WIDEST = 60
FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""A text that starts so would be run as a formula by a spreadsheet."""


def csv_bytes(rows: Rows, kind: type) -> bytes:
    """Rows under the names of their fields; UTF-8 with a byte order mark, which spreadsheets want."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(field.name for field in fields(kind))
    writer.writerows([plain(cell) for cell in astuple(row)] for row in rows)
    return b"\xef\xbb\xbf" + text.getvalue().encode()


def xlsx_bytes(
    sheets: Mapping[str, tuple[type, Rows]], about: Mapping[str, str], offered: Offered = NOTHING
) -> bytes:
    """A workbook with one sheet for each list of rows, and one on what it belongs to.

    Args:
        sheets: their rows by name.
        about: what they belong to.
        offered: words that a cell of the first sheet offers to choose from, by its column and row from 0.
    """
    book = Workbook()
    first = book.active
    if first is not None:
        book.remove(first)
    for name, (kind, rows) in sheets.items():
        _fill(
            book.create_sheet(name),
            [[field.name for field in fields(kind)], *(list(astuple(row)) for row in rows)],
        )
    _offer(book.worksheets[0], offered)
    _fill(book.create_sheet("about"), [["what", "value"], *([key, value] for key, value in about.items())])
    content = io.BytesIO()
    book.save(content)
    return content.getvalue()


def _offer(sheet: Worksheet, offered: Offered) -> None:
    """Lists to choose from; any other word may be written too."""
    names = [cell.value for cell in sheet[1]]
    lists: dict[tuple[str, ...], DataValidation] = {}
    for (column, row), words in offered.items():
        known = lists.get(words)
        if known is None:
            known = lists[words] = DataValidation(
                type="list", formula1=f'"{",".join(words)}"', allow_blank=True
            )
            sheet.add_data_validation(known)
        known.add(f"{get_column_letter(names.index(column) + 1)}{row + 2}")


def plain(cell: Any) -> Any:
    """A cell that no spreadsheet takes for a formula."""
    return f"'{cell}" if isinstance(cell, str) and cell.startswith(FORMULA) and len(cell) > 1 else cell


def _fill(sheet: Worksheet, rows: list[list[Any]]) -> None:
    for row in rows:
        sheet.append([plain(cell) for cell in row])
    for cell in sheet[1]:
        cell.font = Font(bold=True)
    for at, column in enumerate(zip(*rows, strict=True), start=1):
        longest = max(len(str(cell)) for cell in column if cell is not None)
        sheet.column_dimensions[get_column_letter(at)].width = min(longest + 2, WIDEST)
    for line in sheet.iter_rows(min_row=2):
        for cell in line:
            cell.alignment = Alignment(wrap_text=True, vertical="top")
    sheet.freeze_panes = "A2"
