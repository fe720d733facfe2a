"""The worksheet as CSV and XLSX to fill in, and the filled-in sheet read back: first a preview, then the documents."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, fields
from itertools import pairwise
from pathlib import Path
from typing import Any, TypeVar

from pydantic import ValidationError

from fitcalc.documents.amounts import amount_of, factor_of, units_for
from fitcalc.documents.declared import Declared, declared_at
from fitcalc.documents.fields import Document
from fitcalc.documents.messages import explained, nearest_hint, shown
from fitcalc.errors import InputError
from fitcalc.paper.sheet_reading import Line, read_lines
from fitcalc.paper.tables_file import csv_bytes, xlsx_bytes
from fitcalc.present.tables import Table
from fitcalc.present.worksheet_rows import TYPES, Entry, Kind, Value

SHEET, ENTERED = "measurements", "entered"
ENTERED_KINDS = ("number", "choice", "text")
CHOICE_MARK = " | "
Filled = TypeVar("Filled", bound=Document)


@dataclass(frozen=True)
class Blank:
    """One line of the file to fill in; `entered` is left empty, the unit may be written over."""

    document: Kind
    path: str
    title: str
    unit: str
    tolerance: float | None
    low: float | None
    high: float | None
    choices: str
    now: Value | None
    entered: Value | None = None


@dataclass(frozen=True)
class Entered:
    """One value that was filled in, and the line of the file that it stands in."""

    document: Kind
    path: str
    value: Value
    line: int


@dataclass(frozen=True)
class Change:
    """What an import would change; `old` is None where nothing stood."""

    document: Kind
    path: str
    old: Value | None
    new: Value


def worksheet_csv(entries: Iterable[Entry]) -> bytes:
    """Every line of a worksheet as CSV."""
    return csv_bytes(_blanks(entries), Blank)


def worksheet_xlsx(entries: Iterable[Entry], about: Mapping[str, str]) -> bytes:
    """The same as a workbook, which offers units and choices."""
    blanks = _blanks(entries)
    return xlsx_bytes({SHEET: (Blank, blanks)}, about, _offered(blanks))


def _offered(blanks: Sequence[Blank]) -> dict[tuple[str, int], tuple[str, ...]]:
    units = {("unit", at): units_for(row.unit) for at, row in enumerate(blanks)}
    several = {cell: words for cell, words in units.items() if len(words) > 1}
    choices = {
        (ENTERED, at): tuple(row.choices.split(CHOICE_MARK)) for at, row in enumerate(blanks) if row.choices
    }
    return several | choices


def read_worksheet(path: Path) -> tuple[Entered, ...]:
    """What was filled in; lines left empty are passed over.

    Raises:
        InputError: the file can't be read, a column is missing, or a line names no measurement, no number in a unit
            that belongs there, or none of what may be chosen.
    """
    columns = tuple(field.name for field in fields(Blank))
    lines = read_lines(path, ("document", "path", ENTERED), columns, SHEET)
    return _once(tuple(_entered(line) for line in lines if line[ENTERED]), path)


def preview(entered: Sequence[Entered], kind: Kind, document: Document | None) -> tuple[Change, ...]:
    """What the numbers would change in one document, or say in a new one; those that are there already are left out."""
    own = [each for each in entered if each.document == kind]
    changes = (Change(kind, each.path, _old(document, each.path), each.value) for each in own)
    return tuple(change for change in changes if change.old != change.new)


def applied(changes: Sequence[Change], document: Filled) -> Filled:
    """The document with the changes in it, validated whole.

    Raises:
        InputError: the numbers don't fit the document; its field is the path.
    """
    data = filled_in(document.model_dump(exclude_unset=True), changes)
    try:
        return type(document).model_validate(data)
    except ValidationError as error:
        raise explained(error, type(document)) from None


def filled_in(data: dict[str, Any], changes: Sequence[Change]) -> dict[str, Any]:
    """The content of a document with the changes in it, not validated.

    Raises:
        InputError: an entry of a list is filled in before the one ahead of it.
    """
    for change in sorted(changes, key=lambda change: [_step(step) for step in change.path.split(".")]):
        _put(data, change)
    return data


def changes_table(kind: Kind, changes: Sequence[Change]) -> Table:
    """The preview for a person: what will change, from what to what."""
    rows = tuple(_changed(change) for change in changes)
    return Table(f"What changes in the {kind} file", ("measurement", "path", "from", "to"), rows)


def _changed(change: Change) -> tuple[str, ...]:
    declared = declared_at(TYPES[change.document], change.path)
    title, unit = (change.path, "") if declared is None else (declared.title, declared.unit)
    return (title, change.path, _told(change.old, unit), _told(change.new, unit))


def _told(value: Value | None, unit: str) -> str:
    if value is None:
        return "not given"
    return f"{value:g} {unit}".removesuffix(" -").strip() if isinstance(value, int | float) else shown(value)


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
            CHOICE_MARK.join(row.choices),
            row.value,
        )
        for entry in entries
        for row in entry.rows
    ]


def _entered(line: Line) -> Entered:
    kind, path = line["document"], line["path"]
    if kind not in TYPES:
        told = f"document must be one of {', '.join(TYPES)}"
        raise InputError(line.where, shown(kind), told, "leave that column alone")
    declared = declared_at(TYPES[kind], path)
    if declared is None or declared.kind not in ENTERED_KINDS:
        told = f"is no measurement of a {kind} file"
        raise InputError(line.where, shown(path), told, "leave that column alone")
    return Entered(kind, path, _value(line, declared), line.number)


def _value(line: Line, declared: Declared) -> Value:
    match declared.kind:
        case "number":
            return _number(line, declared)
        case "choice":
            return _choice(line, declared)
    return line[ENTERED]


def _number(line: Line, declared: Declared) -> float:
    """A number as a person writes it; a unit in its cell or in the unit column is turned into the file's."""
    unit, given = line["unit"], line[ENTERED]
    known = units_for(declared.unit)
    if factor_of(unit, declared.unit) is None:
        raise InputError(
            line.where, shown(unit), f"the unit must be one of {', '.join(known)}", "mend the unit column"
        )
    value = amount_of(given, declared.unit, unit)
    if value is None:
        told = f"must be a number in {declared.unit}".removesuffix(" in -")
        hint = "write it as 12.5" + (
            f", or with one of {', '.join(known)} behind it" if len(known) > 1 else ""
        )
        raise InputError(line.where, shown(given), told, hint)
    return value


def _choice(line: Line, declared: Declared) -> Value:
    """One of what may be chosen, however it is capitalised or spaced."""
    by_word = {_plain(str(choice)): choice for choice in declared.choices}
    given = _plain(line[ENTERED])
    if given not in by_word:
        words = [str(choice) for choice in declared.choices]
        told = f"{declared.title} must be one of {', '.join(words)}"
        raise InputError(line.where, shown(line[ENTERED]), told, nearest_hint(line[ENTERED], words))
    choice: Value = by_word[given]
    return choice


def _plain(word: str) -> str:
    return " ".join(word.casefold().replace("_", " ").split())


def _once(entered: tuple[Entered, ...], path: Path) -> tuple[Entered, ...]:
    seen: dict[tuple[str, str], Entered] = {}
    for each in entered:
        first = seen.setdefault((each.document, each.path), each)
        if first is not each and first.value != each.value:
            told = f"line {first.line} says {_told(first.value, '')}"
            raise InputError(
                f"{path.name}, line {each.line}", _told(each.value, ""), told, "keep one of the two"
            )
    return tuple(seen.values())


def _old(document: Document | None, path: str) -> Value | None:
    holder: Any = document
    for step in path.split("."):
        if isinstance(holder, tuple):
            holder = holder[int(step)] if step.isdecimal() and int(step) < len(holder) else None
        else:
            holder = getattr(holder, step, None)
    return holder if isinstance(holder, int | float | str) else None


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
            f"{change.document}.{change.path}", _told(change.new, ""), told, "fill in the entries in order"
        )
