"""Ways in which a part can fail, and how far it is from each."""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from fitcalc.units import Floats

AMPLE = 100.0
"""Greatest factor of safety that is told apart."""

LEAST = 1e-9
"""Demands are taken as no smaller than this in their own unit, so that nothing is divided by 0."""


@dataclass(frozen=True, eq=False)
class Mode:
    """One way to fail.

    Attributes:
        name: in trade words.
        unit: of demand and allowed value; empty for a plain number.
        demand: stress or force that acts.
        allowed: stress or force at which it yields or fails.
        sense: "yield" where nothing bends for good up to `allowed`, "failure" where nothing comes apart.
        source: method or clause behind `allowed`.
    """

    name: str
    unit: Literal["MPa", "N", "N/mm", "N mm", ""]
    demand: Floats
    allowed: Floats
    sense: Literal["yield", "failure"]
    source: str

    @property
    def safety(self) -> Floats:
        """Factor of safety, at most `AMPLE`."""
        return self.allowed / np.maximum(self.demand, np.maximum(self.allowed / AMPLE, LEAST))


def safeties(modes: tuple[Mode, ...]) -> Floats:
    """Factor of safety of every mode, `(n, modes)`."""
    return np.stack(np.broadcast_arrays(*(mode.safety for mode in modes)), axis=-1)
