"""The measuring worksheet as plain data: every measurement in walking order, with a place for its value."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Literal

from fitcalc.documents.car import PEDALS, Car
from fitcalc.documents.declared import Declared, declared_at
from fitcalc.documents.driver import Driver
from fitcalc.documents.edit import value_at
from fitcalc.documents.fields import Document
from fitcalc.documents.guide import Guide, guides
from fitcalc.errors import InputError

Kind = Literal["car", "driver"]
TYPES: dict[Kind, type[Document]] = {"car": Car, "driver": Driver}
BLANKS = {"seat.slots": 6, "seat.profile": 8, "harness.crotch": 2, "footwell.obstacles": 2}
"""Entries of a list that an empty worksheet has room for; others have `BLANK`."""
BLANK = 4
ALTERNATIVE = ("travel_angle", "pad_travel")
CHOSEN = ("pedals.", "footwell.obstacles.")
"""Parts of which a car has the one or the other: what one of them leaves out is not missing."""


@dataclass(frozen=True)
class WorksheetRow:
    """One number to measure.

    Attributes:
        path: in the file, as in `pedals.brake.arm`.
        label: beside its box.
        tolerance: that is wanted, plus or minus.
        value: what the file says now; None where it says nothing.
    """

    document: Kind
    path: str
    label: str
    unit: str
    tolerance: float
    low: float | None
    high: float | None
    value: float | None


@dataclass(frozen=True)
class Entry:
    """One measurement with its guide and its boxes."""

    title: str
    guide: Guide
    rows: tuple[WorksheetRow, ...]


def worksheet(car: Car | None, driver: Driver | None, everything: bool = False) -> tuple[Entry, ...]:
    """What to measure, the car first, in walking order.

    Args:
        car: as far as it was measured; None gives an empty worksheet for the whole car.
        driver: likewise.
        everything: also what is measured already.
    """
    car_entries = _entries("car", car, everything or car is None)
    return (*car_entries, *_entries("driver", driver, everything or driver is None))


def _entries(kind: Kind, document: Document | None, everything: bool) -> Iterator[Entry]:
    """One entry for each guide, whatever it covers: all pedals, all entries of a list, all coordinates."""
    for guide in guides(TYPES[kind]).values():
        paths = _expanded(guide.field, document)
        rows = tuple(row for path in paths for row in _rows(kind, path, guide, document))
        wanted = rows if everything else tuple(row for row in rows if _is_missing(row, document))
        if wanted:
            yield Entry(guide.title, guide, wanted)


def _expanded(field: str, document: Document | None) -> Iterator[str]:
    """The paths that a pattern stands for in this document."""
    head, star, rest = field.partition("*")
    if not star:
        yield field
        return
    above = head.rstrip(".")
    for name in _names(above, document):
        yield from _expanded(f"{above}.{name}{rest}", document)


def _names(above: str, document: Document | None) -> list[str]:
    if above == "pedals":
        return [name for name in PEDALS if document is None or _value(document, f"pedals.{name}") is not None]
    entries = None if document is None else _value(document, above)
    count = BLANKS.get(above, BLANK) if document is None else len(entries or ())
    return [str(at) for at in range(count)]


def _rows(kind: Kind, path: str, guide: Guide, document: Document | None) -> Iterator[WorksheetRow]:
    for number in _numbers(TYPES[kind], path, guide, document):
        declared = declared_at(TYPES[kind], number)
        if declared is not None and declared.kind == "number":
            yield _row(kind, number, declared, guide, document)


def _row(kind: Kind, path: str, declared: Declared, guide: Guide, document: Document | None) -> WorksheetRow:
    value = None if document is None else _value(document, path)
    label = _label(path, declared, guide)
    return WorksheetRow(kind, path, label, declared.unit, guide.error, declared.low, declared.high, value)


def _label(path: str, declared: Declared, guide: Guide) -> str:
    """Which pedal, which entry of a list, which coordinate."""
    *above, _ = path.split(".")
    owner = [
        step if step in PEDALS else str(int(step) + 1) for step in above if step in PEDALS or step.isdecimal()
    ]
    own = [] if declared.title == guide.title else [declared.title]
    return " ".join((*owner, *own))


def _numbers(
    document_type: type[Document], path: str, guide: Guide, document: Document | None
) -> Iterator[str]:
    """The numbers that one guide covers: itself, a point's coordinates, or a line's pairs."""
    declared = declared_at(document_type, path)
    if declared is None:
        return
    if declared.kind == "section":
        own = {
            field.rpartition(".")[2] for field in guides(document_type) if field.startswith(f"{guide.field}.")
        }
        yield from (f"{path}.{name}" for name in declared.names if name not in ("tolerance", "note", *own))
    elif declared.kind == "list":
        entries = None if document is None else _value(document, path)
        count = len(entries) if entries else BLANKS.get(path, BLANK)
        yield from (f"{path}.{at}.{axis}" for at in range(count) for axis in (0, 1))
    else:
        yield path


def _is_missing(row: WorksheetRow, document: Document | None) -> bool:
    if row.value is not None or document is None:
        return False
    name = row.path.rpartition(".")[2]
    if name in ALTERNATIVE:
        above = row.path.removesuffix(name)
        return all(_value(document, above + other) is None for other in ALTERNATIVE)
    return not row.path.startswith(CHOSEN)


def _value(document: Document, path: str) -> Any:
    """What a document says at a path; None where it says nothing, or has no such entry."""
    try:
        return value_at(document, path)
    except InputError:
        return None


def walks(entries: tuple[Entry, ...]) -> tuple[tuple[str, tuple[Entry, ...]], ...]:
    """The entries by the part of the car or body at which they are measured, in order."""
    starts = [
        0,
        *(at for at, (a, b) in enumerate(pairwise(entries), start=1) if _part(a) != _part(b)),
        len(entries),
    ]
    return tuple((_part(entries[a]), entries[a:b]) for a, b in pairwise(starts) if b > a)


def _part(entry: Entry) -> str:
    row = entry.rows[0]
    return f"{row.document}: {row.path.partition('.')[0].replace('_', ' ')}"
