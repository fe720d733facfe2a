"""A section of the worksheet as plain lines, before any widget is made."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal

from fitcalc.documents.declared import Declared
from fitcalc.errors import InputError
from fitcalc.window.work import Work, at_ref, declared_for
from fitcalc.window.worksheet.order import Section

Form = Literal["value", "point", "pair", "heading", "list", "absent"]
POINT = ("x", "y", "z", "tolerance", "note")
HIDDEN = ("format",)
ALONE = (
    "car.rails",
    "car.pedals.clutch",
    "car.pedals.brake",
    "car.pedals.throttle",
    "car.harness",
    "car.footwell",
)
"""Parts that fill a section, whose heading names them already."""


@dataclass(frozen=True)
class Row:
    """One line.

    Attributes:
        form: one value; a point with its coordinates; a pair of a profile; the name of a part; the name of a list,
            which can grow; a part that is not given.
        title: what it is called.
        depth: how far it is set in.
    """

    form: Form
    ref: str
    title: str
    depth: int
    declared: Declared


def lines_of(work: Work, section: Section) -> tuple[Row, ...]:
    """Every line of a section, for the documents as they are now."""
    return tuple(row for ref in section.refs for row in _lines(work, ref, 0, ""))


def _lines(work: Work, ref: str, depth: int, title: str) -> Iterator[Row]:
    declared, value = declared_for(ref), _value(work, ref)
    name = title or declared.title
    match declared.kind:
        case "section":
            yield from _section(work, ref, depth, name, declared, value)
        case "list":
            yield from _list(work, ref, depth, name, declared, value)
        case _:
            yield Row("value", ref, name, depth, declared)


def _section(work: Work, ref: str, depth: int, name: str, declared: Declared, value: Any) -> Iterator[Row]:
    if value is None:
        yield Row("absent", ref, name, depth, declared)
    elif set(declared.names) <= set(POINT):
        yield Row("point", ref, name, depth, declared)
    else:
        if depth or ref not in ALONE:
            yield Row("heading", ref, name, depth, declared)
        for each in declared.names:
            if each not in HIDDEN:
                yield from _lines(work, f"{ref}.{each}", depth + 1, "")


def _list(work: Work, ref: str, depth: int, name: str, declared: Declared, value: Any) -> Iterator[Row]:
    if value is None:
        yield Row("absent", ref, name, depth, declared)
        return
    yield Row("list", ref, name, depth, declared)
    for at, entry in enumerate(value):
        below = f"{ref}.{at}"
        if isinstance(entry, tuple):
            yield Row("pair", below, f"{at + 1}", depth + 1, declared)
        else:
            yield from _lines(work, below, depth + 1, _entry_title(entry, at))


def _entry_title(entry: Any, at: int) -> str:
    named = getattr(entry, "name", "") or getattr(entry, "strap", "").replace("_", " ")
    return named or f"{at + 1}"


def _value(work: Work, ref: str) -> Any:
    try:
        return at_ref(work, ref)
    except InputError:
        return None
