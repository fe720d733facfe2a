"""The worksheet as CSV and XLSX to fill in, and the filled-in sheet read back: first a preview, then the documents."""

import csv
import io
import zipfile
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, fields
from itertools import pairwise
from pathlib import Path
from typing import Any, TypeVar

from openpyxl import load_workbook
from pydantic import ValidationError

from fitcalc.documents.declared import declared_at
from fitcalc.documents.fields import Document
from fitcalc.documents.messages import explained, shown
from fitcalc.errors import InputError
from fitcalc.paper.tables_file import csv_bytes, xlsx_bytes
from fitcalc.present.tables import Table
from fitcalc.present.worksheet_rows import TYPES, Entry, Kind

MOST_ROWS = 20_000
MOST_COLUMNS = 40
LARGEST = 5_000_000
"""Most bytes that are read of a filled-in sheet."""
UNPACKED = 5_000_000
"""Most bytes that a workbook may unpack to; a filled-in worksheet has half a million."""
SHEET = "measurements"
Filled = TypeVar("Filled", bound=Document)


@dataclass(frozen=True)
class Blank:
    """One line of the file to fill in; `entered` is left empty."""

    document: Kind
    path: str
    title: str
    unit: str
    tolerance: float
    low: float | None
    high: float | None
    now: float | None
    entered: float | None = None


@dataclass(frozen=True)
class Entered:
    """One number that was filled in, and the line of the file that it stands in."""

    document: Kind
    path: str
    value: float
    line: int


@dataclass(frozen=True)
class Change:
    """What an import would change; `old` is None where nothing stood."""

    document: Kind
    path: str
    old: float | None
    new: float


def worksheet_csv(entries: Iterable[Entry]) -> bytes:
    """Every number of a worksheet as a line of CSV."""
    return csv_bytes(_blanks(entries), Blank)


def worksheet_xlsx(entries: Iterable[Entry], about: Mapping[str, str]) -> bytes:
    """The same as a workbook."""
    return xlsx_bytes({SHEET: (Blank, _blanks(entries))}, about)


def read_worksheet(path: Path) -> tuple[Entered, ...]:
    """What was filled in; lines left empty are passed over.

    Raises:
        InputError: the file can't be read, a column is missing, or a line names no measurement or no number.
    """
    lines = _xlsx_lines(path) if path.suffix.lower() in (".xlsx", ".xlsm") else _csv_lines(path)
    if not lines:
        raise InputError(str(path), "empty", "must hold the worksheet", "fill in the file that was written")
    header = [str(cell or "").strip() for cell in lines[0]]
    missing = [name for name in ("document", "path", "entered") if name not in header]
    if missing:
        wanted = ", ".join(field.name for field in fields(Blank))
        raise InputError(
            str(path), "", f"has no column {', '.join(missing)}", f"its first line must be {wanted}"
        )
    places = {name: header.index(name) for name in ("document", "path", "entered")}
    entered = (_entered(line, number, places, path) for number, line in enumerate(lines[1:], start=2))
    return _once(tuple(each for each in entered if each is not None), path)


def preview(entered: Sequence[Entered], kind: Kind, document: Document) -> tuple[Change, ...]:
    """What the numbers would change in one document; those that are there already are left out."""
    own = [each for each in entered if each.document == kind]
    changes = (Change(kind, each.path, _old(document, each.path), each.value) for each in own)
    return tuple(change for change in changes if change.old != change.new)


def applied(changes: Sequence[Change], document: Filled) -> Filled:
    """The document with the changes in it, validated whole.

    Raises:
        InputError: the numbers don't fit the document; its field is the path.
    """
    data = document.model_dump(exclude_unset=True)
    for change in sorted(changes, key=lambda change: [_step(step) for step in change.path.split(".")]):
        _put(data, change)
    try:
        return type(document).model_validate(data)
    except ValidationError as error:
        raise explained(error, type(document)) from None


def changes_table(kind: Kind, changes: Sequence[Change]) -> Table:
    """The preview for a person."""
    rows = tuple(
        (change.path, "-" if change.old is None else f"{change.old:g}", f"{change.new:g}")
        for change in changes
    )
    return Table(f"What changes in the {kind} file", ("measurement", "now", "new"), rows)


def _blanks(entries: Iterable[Entry]) -> list[Blank]:
    return [
        Blank(
            row.document,
            row.path,
            f"{entry.title}: {row.label}",
            row.unit,
            row.tolerance,
            row.low,
            row.high,
            row.value,
        )
        for entry in entries
        for row in entry.rows
    ]


def _csv_lines(path: Path) -> list[list[Any]]:
    try:
        text = _content(path).decode("utf-8-sig")
        head = text.partition("\n")[0]
        mark = ";" if head.count(";") > head.count(",") else ","
        return list(csv.reader(io.StringIO(text, newline=""), delimiter=mark))[:MOST_ROWS]
    except (UnicodeDecodeError, csv.Error) as error:
        raise InputError(
            str(path), "not a table", shown(str(error)), "save it as CSV in UTF-8, or as XLSX"
        ) from None


def _xlsx_lines(path: Path) -> list[list[Any]]:
    content = io.BytesIO(_content(path))
    try:
        _require_small(content, path)
        book = load_workbook(content, read_only=True, data_only=True, keep_links=False)
        sheet = book[SHEET] if SHEET in book.sheetnames else book.worksheets[0]
        rows = sheet.iter_rows(values_only=True, max_row=MOST_ROWS, max_col=MOST_COLUMNS)
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
        raise InputError(str(path), f"{size / 1e6:.0f} MB when unpacked", allowed, "is this the right file?")


def _content(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST + 1)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise InputError(str(path), "unreadable", reason, "check name and folder") from None
    if len(content) > LARGEST:
        raise InputError(
            str(path), "too large", f"must be {LARGEST / 1e6:g} MB or less", "is this the right file?"
        )
    return content


def _entered(line: list[Any], number: int, places: Mapping[str, int], path: Path) -> Entered | None:
    kind, field, given = (_cell(line, places[name]) for name in ("document", "path", "entered"))
    if given in ("", None):
        return None
    where = f"{path.name}, line {number}"
    if kind not in TYPES:
        raise InputError(
            where, shown(kind), f"document must be one of {', '.join(TYPES)}", "leave that column alone"
        )
    declared = declared_at(TYPES[kind], str(field))
    if declared is None or declared.kind != "number":
        raise InputError(
            where, shown(field), f"is no measurement of a {kind} file", "leave that column alone"
        )
    value = _number(given)
    if value is None:
        raise InputError(
            where, shown(given), f"must be a number in {declared.unit}", "write it without a unit"
        )
    return Entered(kind, str(field), value, number)


def _cell(line: list[Any], at: int) -> Any:
    cell = line[at] if at < len(line) else None
    return cell.strip() if isinstance(cell, str) else cell


def _number(given: Any) -> float | None:
    """A number as a person writes it, with a point or a comma; None where it is none."""
    if isinstance(given, bool):
        return None
    try:
        value = float(str(given).replace(",", ".").replace("\N{MINUS SIGN}", "-"))
    except ValueError:
        return None
    return value if abs(value) < 1e9 else None


def _once(entered: tuple[Entered, ...], path: Path) -> tuple[Entered, ...]:
    seen: dict[tuple[str, str], Entered] = {}
    for each in entered:
        first = seen.setdefault((each.document, each.path), each)
        if first is not each and first.value != each.value:
            told = f"line {first.line} says {first.value:g}"
            raise InputError(f"{path.name}, line {each.line}", f"{each.value:g}", told, "keep one of the two")
    return tuple(seen.values())


def _old(document: Document, path: str) -> float | None:
    holder: Any = document
    for step in path.split("."):
        if isinstance(holder, tuple):
            holder = holder[int(step)] if step.isdecimal() and int(step) < len(holder) else None
        else:
            holder = getattr(holder, step, None)
    return float(holder) if isinstance(holder, int | float) else None


def _step(step: str) -> tuple[int, int, str]:
    return (0, int(step), "") if step.isdecimal() else (1, 0, step)


def _put(data: dict[str, Any], change: Change) -> None:
    """Puts a number where it belongs, making sections and entries that are not there yet."""
    steps = change.path.split(".")
    holder: Any = data
    for step, below in pairwise(steps):
        holder = _below(holder, step, [] if below.isdecimal() else {}, change)
    _set(holder, steps[-1], change.new, change)


def _below(holder: Any, step: str, empty: Any, change: Change) -> Any:
    there = (
        holder.get(step)
        if isinstance(holder, dict)
        else holder[int(step)]
        if int(step) < len(holder)
        else None
    )
    made = empty if there is None else list(there) if isinstance(there, tuple) else there
    _set(holder, step, made, change)
    return made


def _set(holder: Any, step: str, value: Any, change: Change) -> None:
    if isinstance(holder, dict):
        holder[step] = value
    elif int(step) < len(holder):
        holder[int(step)] = value
    elif int(step) == len(holder):
        holder.append(value)
    else:
        told = f"entry {len(holder) + 1} before it is empty"
        raise InputError(
            f"{change.document}.{change.path}", f"{change.new:g}", told, "fill in the entries in order"
        )
