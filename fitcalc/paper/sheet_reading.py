"""Filled-in sheets read back: CSV with either mark and XLSX, line by line, under the names of their columns."""

import csv
import io
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import islice
from pathlib import Path
from typing import Any

from openpyxl import load_workbook

from fitcalc.documents.messages import shown
from fitcalc.errors import InputError

MOST_ROWS = 20_000
MOST_COLUMNS = 40
LARGEST = 5_000_000
"""Most bytes that are read of a filled-in sheet."""
UNPACKED = 5_000_000
"""Most bytes that a workbook may unpack to; a filled-in worksheet has half a million."""


@dataclass(frozen=True)
class Line:
    """One line of a sheet: its cells by column, as text; an empty or missing cell is the empty text."""

    number: int
    file: str
    cells: Mapping[str, str]

    @property
    def where(self) -> str:
        """For the sentence that refuses it."""
        return f"{self.file}, line {self.number}"

    def __getitem__(self, column: str) -> str:
        return self.cells.get(column, "")


def read_lines(path: Path, wanted: Sequence[str], columns: Sequence[str], sheet: str) -> Iterator[Line]:
    """Every line below the header.

    Args:
        path: of the sheet.
        wanted: columns that must be there.
        columns: all that the sheet had when it was written, for the sentence.
        sheet: of a workbook; its first one where it has none of that name.

    Raises:
        InputError: the file can't be read, or a column is missing.
    """
    rows = _xlsx_rows(path, sheet) if path.suffix.lower() in (".xlsx", ".xlsm") else _csv_rows(path)
    if not rows:
        raise InputError(str(path), "empty", "must hold the worksheet", "fill in the file that was written")
    header = [_text(cell) for cell in rows[0]]
    missing = [name for name in wanted if name not in header]
    if missing:
        told = f"has no column {', '.join(missing)}"
        raise InputError(str(path), "", told, f"its first line must be {', '.join(columns)}")
    for number, row in enumerate(rows[1:], start=2):
        yield Line(number, path.name, dict(zip(header, map(_text, row), strict=False)))


def _text(cell: Any) -> str:
    """A cell as it would be typed: numbers without a needless point."""
    if isinstance(cell, bool):
        return "TRUE" if cell else "FALSE"
    if isinstance(cell, float) and cell.is_integer() and abs(cell) < 1e15:
        return str(int(cell))
    return "" if cell is None else str(cell).strip()


def _csv_rows(path: Path) -> list[list[Any]]:
    try:
        text = _content(path).decode("utf-8-sig")
        head = text.partition("\n")[0]
        mark = max(",;\t", key=head.count)
        rows = csv.reader(io.StringIO(text, newline=""), delimiter=mark)
        return [row[:MOST_COLUMNS] for row in islice(rows, MOST_ROWS)]
    except (UnicodeDecodeError, csv.Error) as error:
        raise InputError(
            str(path), "not a table", shown(str(error)), "save it as CSV in UTF-8, or as XLSX"
        ) from None


def _xlsx_rows(path: Path, sheet: str) -> list[list[Any]]:
    content = io.BytesIO(_content(path))
    try:
        _require_small(content, path)
        book = load_workbook(content, read_only=True, data_only=True, keep_links=False)
        page = book[sheet] if sheet in book.sheetnames else book.worksheets[0]
        rows = page.iter_rows(values_only=True, max_row=MOST_ROWS, max_col=MOST_COLUMNS)
        return [list(row) for row in rows]
    except InputError:
        raise
    except Exception as error:  # noqa: BLE001 - a spoilt workbook makes its reader raise almost anything
        told = shown(str(error) or type(error).__name__)
        raise InputError(str(path), "not a workbook", told, "save it as XLSX, or as CSV") from None


def _require_small(content: io.BytesIO, path: Path) -> None:
    with zipfile.ZipFile(content) as packed:
        size = sum(each.file_size for each in packed.infolist())
    if size > UNPACKED:
        allowed = f"must unpack to {UNPACKED / 1e6:g} MB or less"
        raise InputError(
            str(path), f"{size / 1e6:.0f} MB when unpacked", allowed, "check that it is the right file"
        )


def _content(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputError(str(path), "unreadable", reason, "check name and folder") from None
    if len(content) > LARGEST:
        raise InputError(
            str(path), "too large", f"must be {LARGEST / 1e6:g} MB or less", "check that it is the right file"
        )
    return content
