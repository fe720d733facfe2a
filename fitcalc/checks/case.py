"""What every check may look at."""

from dataclasses import dataclass

import numpy as np

from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.posture.sit import Sitting
from fitcalc.units import Floats


@dataclass(frozen=True, eq=False)
class Case:
    """One driver in one car with one rework, or many cases of them at once."""

    car: Car
    driver: Driver
    links: Links
    setup: Setup
    sitting: Sitting

    @property
    def count(self) -> int:
        """How many cases there are."""
        parts = [at.full.knee for at in self.sitting.pedals.values()]
        parts += [arm.grip for arm in self.sitting.hands or ()]
        return max(len(points) for points in (self.sitting.trunk.hip, *parts))

    def full(self, value: Floats) -> Floats:
        """A figure as `(n,)`, repeated where it is the same for all cases."""
        return np.broadcast_to(np.asarray(value, dtype=float), (self.count,))
