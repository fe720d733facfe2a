"""The constants that lead from outside dimensions to joints, read from `data/links.toml` and applied."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any, Literal

import numpy as np
from pydantic import BaseModel, ConfigDict

from fitcalc.body.survey import DATA, Sex, mean_of
from fitcalc.sources import Confidence, Source
from fitcalc.units import Floats


class Relation(BaseModel):
    """One constant: what it is, what it multiplies, its figure for each sex, its spread and its source."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)

    id: str
    quantity: str
    of: str
    unit: Literal["mm", "deg", "1"]
    men: float
    women: float
    spread: float
    document: str
    clause: str = ""
    edition: str = ""
    confidence: Confidence
    note: str = ""

    @property
    def source(self) -> Source:
        """Where the figure comes from."""
        return Source(
            document=self.document, clause=self.clause, edition=self.edition, confidence=self.confidence
        )

    def factor(self, sex: Sex) -> float:
        """What `of` is multiplied by; for a constant of no dimension the constant itself."""
        value = self.women if sex == "female" else self.men
        return value / mean_of(sex, self.of) if self.unit == "mm" and self.of else value


@cache
def _file() -> dict[str, Any]:
    return tomllib.loads((DATA / "links.toml").read_text(encoding="utf-8"))


@cache
def relations() -> Mapping[str, Relation]:
    """Every constant by its id."""
    rows = (Relation(**row) for row in _file()["relation"])
    return MappingProxyType({row.id: row for row in rows})


@cache
def head_carriage() -> tuple[Floats, Floats, Floats]:
    """Recline (deg), eye ahead of the cervicale and eye above it (mm): the published rows."""
    table = _file()["head_carriage"]
    recline, forward, up = (np.array(table[key]) for key in ("recline", "forward", "up"))
    return recline, forward, up


@dataclass(frozen=True, eq=False)
class Rules:
    """The constants for one driver.

    Attributes:
        factors: by id; sex unknown has the mean of both tables.
        errors: by id, (n,): what a body may differ from the constant, mm; missing means as the constant says.
    """

    factors: Mapping[str, float]
    errors: Mapping[str, Floats]

    def of(self, name: str, dimension: Floats) -> Floats:
        """The constant times the dimension that it is a share of, (n,)."""
        return self.factors[name] * dimension + self.errors.get(name, 0.0)

    def plain(self, name: str) -> Floats:
        """A constant that no dimension carries, (1,) or (n,)."""
        return np.atleast_1d(self.factors[name] + self.errors.get(name, 0.0))


@cache
def _factors(sex: Sex | None) -> Mapping[str, float]:
    sexes: tuple[Sex, ...] = (sex,) if sex else ("female", "male")
    rows = relations().values()
    return MappingProxyType({row.id: sum(row.factor(each) for each in sexes) / len(sexes) for row in rows})


def rules(sex: Sex | None, errors: Mapping[str, Floats] | None = None) -> Rules:
    """The constants for one sex, or for a driver who names none."""
    return Rules(_factors(sex), errors or {})


def relation_errors(count: int, seed: int) -> dict[str, Floats]:
    """Normal draws of what bodies differ from each constant, by id, (count,); mm, deg or share, as it is."""
    random = np.random.default_rng(seed)
    return {row.id: random.normal(0.0, row.spread, count) for row in relations().values() if row.spread > 0}
