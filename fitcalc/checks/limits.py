"""Limit sets: those that come with the program, and the user's own."""

import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path
from typing import TypeVar

from pydantic import ValidationError

from fitcalc.checks.limit_rows import Limit, LimitFile, Rule, Sourced
from fitcalc.checks.quantities import DATA
from fitcalc.documents.messages import explained, nearest_hint
from fitcalc.documents.store import read_text
from fitcalc.errors import InputError

BUILT_IN = DATA / "limits"
WORKSHOP = "workshop"
"""The set that is always on beside the chosen one."""
AnyRow = TypeVar("AnyRow", bound=Sourced)


@dataclass(frozen=True)
class LimitSet:
    """The limits of one family of rule documents.

    Attributes:
        id: stands beside every finding.
        editions: publications and editions that the rows were taken from.
        missing: what was looked for and not found.
        limits: rows to judge by.
        checklist: what is ticked by hand.
    """

    id: str
    title: str
    editions: tuple[str, ...]
    missing: tuple[str, ...]
    limits: tuple[Limit, ...]
    checklist: tuple[Rule, ...]

    def on(self, quantity: str) -> tuple[Limit, ...]:
        """The rows that limit a quantity."""
        return self._by_quantity.get(quantity, ())

    @cached_property
    def _by_quantity(self) -> Mapping[str, tuple[Limit, ...]]:
        rows: dict[str, tuple[Limit, ...]] = {}
        for row in self.limits:
            rows[row.quantity] = (*rows.get(row.quantity, ()), row)
        return rows


def limit_set_names() -> tuple[str, ...]:
    """Sets that come with the program and can be chosen; the workshop set is always on besides."""
    return tuple(sorted(path.stem for path in BUILT_IN.glob("*.toml") if path.stem != WORKSHOP))


def load_limit_set(name: str | Path) -> LimitSet:
    """A set by its name, or from a user's own TOML file.

    Raises:
        InputError: there is no such set or file, or the file cannot be used.
    """
    if str(name) in (*limit_set_names(), WORKSHOP):
        return _built_in(str(name))
    return _read(Path(name))


@cache
def workshop_limits() -> LimitSet:
    """Common practice and design inference that hold whatever the rules say."""
    return _built_in(WORKSHOP)


@cache
def _built_in(name: str) -> LimitSet:
    return _read(BUILT_IN / f"{name}.toml")


def _read(path: Path) -> LimitSet:
    file = _parsed(path)
    base = _base(file, path)
    _require_distinct(file, path)
    limits = _over(base.limits if base else (), file.limit, file.leave_out)
    _require_pairs(limits, path)
    return LimitSet(
        id=file.id,
        title=file.title,
        editions=(*(base.editions if base else ()), *file.editions),
        missing=(*(base.missing if base else ()), *file.missing),
        limits=limits,
        checklist=_over(base.checklist if base else (), file.checklist, file.leave_out),
    )


def _parsed(path: Path) -> LimitFile:
    if not path.is_file():
        names = ", ".join((*limit_set_names(), WORKSHOP))
        hint = nearest_hint(str(path), limit_set_names())
        raise InputError("limit set", str(path), f"must be one of {names}, or a file that can be read", hint)
    try:
        return LimitFile.model_validate(tomllib.loads(read_text(path)))
    except tomllib.TOMLDecodeError as error:
        raise InputError(str(path), "", f"must be TOML in UTF-8; {error}") from error
    except ValidationError as error:
        raise explained(error, LimitFile, where=f" in {path}") from error


def _base(file: LimitFile, path: Path) -> LimitSet | None:
    if not file.extends:
        return None
    names = limit_set_names()
    if file.extends not in names or path.parent == BUILT_IN:
        hint = nearest_hint(file.extends, names)
        raise InputError("extends", f"{file.extends} in {path}", f"must be one of {', '.join(names)}", hint)
    return _built_in(file.extends)


def _over(base: Iterable[AnyRow], own: Iterable[AnyRow], leave_out: Sequence[str]) -> tuple[AnyRow, ...]:
    """The base's rows, each replaced by the own row with the same id, then the further own rows."""
    mine = {row.id: row for row in own}
    kept = {row.id: row for row in base if row.id not in leave_out}
    return tuple((kept | mine).values())


def _require_distinct(file: LimitFile, path: Path) -> None:
    ids = [row.id for row in (*file.limit, *file.checklist)]
    twice = next((id for id in ids if ids.count(id) > 1), None)
    if twice is not None:
        raise InputError("id", f"{twice} in {path}", "must name one row only")


def _require_pairs(limits: Iterable[Limit], path: Path) -> None:
    """A row for upright seats needs one for reclined seats that gives the same bounds."""
    rows = [row for row in limits if row.when]
    for row in rows:
        others = [other for other in rows if other.quantity == row.quantity and other is not row]
        if len(others) != 1 or others[0].when == row.when or others[0].bounded != row.bounded:
            allowed = "needs one row with the same quantity and bounds for the other kind of seat"
            raise InputError("when", f"{row.when} of row {row.id} in {path}", allowed)
