"""Materials, each with the standard it comes from and its strength by thickness."""

from functools import cache

import numpy as np
from pydantic import BaseModel, ConfigDict, Field

from fitcalc.making.tables import Row, read_rows
from fitcalc.units import Floats, Mm, MPa


class Strength(BaseModel):
    """Least yield (or 0.2 % proof) stress and tensile strength up to a thickness."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)

    to: float = Field(gt=0)
    yield_stress: float = Field(gt=0, alias="yield")
    tensile: float = Field(gt=0)


class Material(Row):
    """One material in one form of supply.

    Attributes:
        heat_affected: yield and tensile strength beside a weld, where welding takes the temper away.
        weld_beta: correlation factor of EN 1993-1-8 for fillet welds.
    """

    name: str
    standard: str
    form: str
    modulus: float
    ranges: tuple[Strength, ...] = Field(min_length=1)
    heat_affected: tuple[float, float] | None = None
    weld_beta: float
    weld_advice: str

    @property
    def keeps_temper(self) -> bool:
        """Whether the bar is as strong beside a weld as elsewhere."""
        return self.heat_affected is None


@cache
def materials() -> tuple[Material, ...]:
    """Every material that the program knows."""
    return read_rows("materials.toml", Material)


def material(name: str) -> Material:
    """The material with this id."""
    return next(row for row in materials() if row.id == name)


def yield_stress(of: Material, thickness: Mm) -> MPa:
    """Least yield stress for a thickness; thicker than the standard covers counts as its last range."""
    return _by_thickness(of, thickness, [step.yield_stress for step in of.ranges])


def tensile_strength(of: Material, thickness: Mm) -> MPa:
    """Least tensile strength for a thickness; thicker than the standard covers counts as its last range."""
    return _by_thickness(of, thickness, [step.tensile for step in of.ranges])


def welded_yield(of: Material, thickness: Mm) -> MPa:
    """Least yield stress beside a weld."""
    whole = yield_stress(of, thickness)
    return whole if of.heat_affected is None else np.minimum(whole, of.heat_affected[0])


def welded_tensile(of: Material, thickness: Mm) -> MPa:
    """Least tensile strength beside a weld."""
    whole = tensile_strength(of, thickness)
    return whole if of.heat_affected is None else np.minimum(whole, of.heat_affected[1])


def _by_thickness(of: Material, thickness: Mm, values: list[float]) -> Floats:
    row = np.searchsorted([step.to for step in of.ranges], thickness)
    return np.asarray(values)[np.minimum(row, len(values) - 1)]
