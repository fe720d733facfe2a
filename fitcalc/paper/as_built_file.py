"""The as-built sheet as CSV and XLSX to fill in, and the filled-in sheet read back."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from pathlib import Path

from fitcalc.documents.amounts import units_for
from fitcalc.paper.sheet_reading import Line, read_lines
from fitcalc.paper.tables_file import csv_bytes, xlsx_bytes
from fitcalc.present.as_built_entry import Typed
from fitcalc.present.as_built_record import BuiltRecord

SHEET = "as built"
KEY, ENTERED = "key", "entered"


@dataclass(frozen=True)
class Blank:
    """One line of the file to fill in; `entered` is left empty, unit and error may be written over."""

    key: str
    title: str
    how: str
    allowed: str
    expected: float | None
    low: float | None
    high: float | None
    tool: str
    error: float
    unit: str
    entered: float | None = None
    note: str = ""


def as_built_csv(record: BuiltRecord) -> bytes:
    """Everything that may be entered as lines of CSV."""
    return csv_bytes(_blanks(record), Blank)


def as_built_xlsx(record: BuiltRecord, about: Mapping[str, str]) -> bytes:
    """The same as a workbook, which offers units."""
    blanks = _blanks(record)
    offered = {("unit", at): units_for(row.unit) for at, row in enumerate(blanks)}
    return xlsx_bytes({SHEET: (Blank, blanks)}, about, offered)


def read_as_built(path: Path) -> tuple[Typed, ...]:
    """What was filled in; lines left empty are passed over.

    Raises:
        InputError: the file can't be read, or a column is missing.
    """
    columns = tuple(field.name for field in fields(Blank))
    lines = read_lines(path, (KEY, ENTERED), columns, SHEET)
    return tuple(_typed(line) for line in lines if line[ENTERED])


def _typed(line: Line) -> Typed:
    told = {name: line[name] for name in ("unit", "error", "tool", "note")}
    return Typed(key=line[KEY], text=line[ENTERED], where=line.where, **told)


def _blanks(record: BuiltRecord) -> list[Blank]:
    return [
        Blank(
            key=row.key,
            title=row.title,
            how=row.how,
            allowed=row.allowed,
            expected=_short(row.expected),
            low=_short(row.low),
            high=_short(row.high),
            tool=row.tool,
            error=row.error,
            unit=row.unit,
        )
        for row in record.wanted
    ]


def _short(value: float | None) -> float | None:
    return None if value is None else round(value, 2)
