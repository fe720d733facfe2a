"""What is measured: for each limit key its name, its points, and what mends it.

One file per topic in `data/quantities/`; figures and limit rows both name these keys.
"""

import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from pydantic import BaseModel, ConfigDict

DATA = Path(__file__).parent / "data"


class Quantity(BaseModel):
    """One thing that can be measured and limited.

    Attributes:
        id: dotted key, as in `harness.shoulder.side_angle`.
        label: what it is, in words.
        unit: of the figure and of every limit on it.
        points: what it is measured between, and the sign; one sentence.
        too_low: one imperative sentence on what mends it; `{margin}` stands for what is lacking, with its
            unit.
        too_high: the same for a figure above its bound.
        always_show: listed as a finding even where no rule limits it.
    """

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True)

    id: str
    label: str
    unit: str
    points: str
    too_low: str = ""
    too_high: str = ""
    always_show: bool = False


@cache
def quantities() -> Mapping[str, Quantity]:
    """Every quantity by its id, in file order."""
    files = sorted((DATA / "quantities").glob("*.toml"))
    rows = [row for file in files for row in tomllib.loads(file.read_text(encoding="utf-8"))["quantity"]]
    return MappingProxyType({row["id"]: Quantity.model_validate(row) for row in rows})
