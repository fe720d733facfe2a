"""Reads this room's tables of sourced figures."""

import tomllib
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel, ConfigDict

from fitcalc.sources import Source

DATA = Path(__file__).parent / "data"


class Row(BaseModel):
    """One row of a table; a row without a source does not load."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)

    id: str
    source: Source


AnyRow = TypeVar("AnyRow", bound=Row)


def read_rows(name: str, model: type[AnyRow]) -> tuple[AnyRow, ...]:
    """All rows of a table in `making/data`, in file order."""
    rows = tomllib.loads((DATA / name).read_text(encoding="utf-8"))["row"]
    return tuple(model.model_validate(row) for row in rows)
