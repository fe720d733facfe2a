"""The measuring worksheet as plain data: every measurement in walking order, with a place for its value."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby
from typing import Any, Literal, TypeAlias

from fitcalc.documents.car import PEDALS, Car
from fitcalc.documents.declared import Declared, declared_at
from fitcalc.documents.driver import Driver
from fitcalc.documents.edit import value_at
from fitcalc.documents.fields import Document
from fitcalc.documents.guide import Guide, guides
from fitcalc.errors import InputError

Kind = Literal["car", "driver"]
Value: TypeAlias = float | str
TYPES: dict[Kind, type[Document]] = {"car": Car, "driver": Driver}
BLANKS = {"seat.slots": 6, "seat.profile": 8, "harness.crotch": 2, "footwell.obstacles": 2}
"""Entries of a list that an empty worksheet has room for; others have `BLANK`."""
BLANK = 4
WHOLE = "as a whole"
"""What stands at the top of a file."""
NO_WORDS = ("note", "format", "photo")
ALTERNATIVE = ("travel_angle", "pad_travel")
CHOSEN = ("pedals.", "footwell.obstacles.")
"""Parts of which a car has the one or the other: what one of them leaves out is not missing."""


@dataclass(frozen=True)
class WorksheetRow:
    """One number to measure, one thing to choose or one word to write.

    Attributes:
        path: in the file, as in `pedals.brake.arm`.
        label: beside its box.
        tolerance: that is wanted, plus or minus; None where it is no number.
        value: what the file says now; None where it says nothing.
        choices: of which one holds; empty for numbers and words.
    """

    document: Kind
    path: str
    label: str
    unit: str
    tolerance: float | None
    low: float | None
    high: float | None
    value: Value | None
    choices: tuple[str, ...] = ()


@dataclass(frozen=True)
class Entry:
    """One measurement with its guide and its boxes, or kinds and names, which need no guide."""

    title: str
    guide: Guide | None
    rows: tuple[WorksheetRow, ...]


def worksheet(car: Car | None, driver: Driver | None, everything: bool = False) -> tuple[Entry, ...]:
    """What to measure and to note, the car first, in walking order.

    Args:
        car: as far as it was measured; None gives an empty worksheet for the whole car.
        driver: likewise.
        everything: also what is measured already.
    """
    documents: tuple[tuple[Kind, Document | None], ...] = (("car", car), ("driver", driver))
    return tuple(
        entry
        for kind, document in documents
        for entry in _with_kinds(kind, document, everything or document is None)
    )


def _with_kinds(kind: Kind, document: Document | None, everything: bool) -> Iterator[Entry]:
    """The measurements, before those of each part its kinds and names."""
    words = {part_of(entry): entry for entry in _word_entries(kind, document, everything)}
    if (first := words.pop(WHOLE, None)) is not None:
        yield first
    for entry in _entries(kind, document, everything):
        if (own := words.pop(part_of(entry), None)) is not None:
            yield own
        yield entry
    yield from words.values()


def _word_entries(kind: Kind, document: Document | None, everything: bool) -> Iterator[Entry]:
    """By part, what is chosen or written there."""
    rows = [_word_row(kind, path, document) for path in _word_paths(TYPES[kind], document, "")]
    wanted = [row for row in rows if everything or row.value is None]
    for part, some in groupby(wanted, key=lambda row: _part_of(row.path)):
        yield Entry("names" if part == WHOLE else "kinds and names", None, tuple(some))


def _word_paths(document_type: type[Document], document: Document | None, path: str) -> Iterator[str]:
    """Every choice and text below a path, but for notes; a section or list that the document lacks has none."""
    declared = declared_at(document_type, path) if path else None
    for name in declared.names if declared else document_type.model_fields:
        below = f"{path}.{name}".lstrip(".")
        field = declared_at(document_type, below)
        if field is None or name in NO_WORDS or (document is not None and _value(document, below) is None):
            if field is not None and field.kind == "choice" and document is not None and name not in NO_WORDS:
                yield below
            continue
        if field.kind == "section":
            yield from _word_paths(document_type, document, below)
        elif field.kind == "list" and _is_of_sections(document_type, below):
            for at in _names(below, document):
                yield from _word_paths(document_type, document, f"{below}.{at}")
        elif field.kind in ("choice", "text"):
            yield below


def _is_of_sections(document_type: type[Document], path: str) -> bool:
    entry = declared_at(document_type, f"{path}.0")
    return entry is not None and entry.kind == "section"


def _word_row(kind: Kind, path: str, document: Document | None) -> WorksheetRow:
    declared = declared_at(TYPES[kind], path)
    assert declared is not None, path
    value = None if document is None else _value(document, path)
    words = tuple(str(choice) for choice in declared.choices)
    within = (str(int(s) + 1) if s.isdecimal() else s for s in path.split(".")[1:-1])
    label = " ".join((*within, declared.title)).replace("_", " ")
    return WorksheetRow(kind, path, label, "", None, None, None, value, words)


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
    own = [] if declared.title == guide.title else [declared.title]
    return " ".join((*_owner(path), *own))


def _owner(path: str) -> list[str]:
    *above, _ = path.split(".")
    return [
        step if step in PEDALS else str(int(step) + 1) for step in above if step in PEDALS or step.isdecimal()
    ]


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
    grouped = groupby(entries, key=lambda entry: (entry.rows[0].document, part_of(entry)))
    return tuple((f"{document}: {part}", tuple(some)) for (document, part), some in grouped)


def part_of(entry: Entry) -> str:
    """The part that an entry belongs to, in words."""
    return _part_of(entry.rows[0].path)


def _part_of(path: str) -> str:
    first, dot, _ = path.partition(".")
    return first.replace("_", " ") if dot else WHOLE
