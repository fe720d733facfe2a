"""What every check may look at."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.posture.cases import cases_in, column
from fitcalc.posture.seat import SeatMove, seat_move, shell
from fitcalc.posture.sit import Sitting
from fitcalc.units import Floats, Points


@dataclass(frozen=True, eq=False)
class Case:
    """One driver in one car with one rework, or many cases of them at once."""

    car: Car
    driver: Driver
    links: Links
    setup: Setup
    sitting: Sitting

    @cached_property
    def count(self) -> int:
        """How many cases there are."""
        return max(map(cases_in, (self.car, self.links, self.setup)))

    @cached_property
    def shell(self) -> Points:
        """The surface of the seat where the rework puts it, from the front of the cushion to the top, `(n, k, 3)`."""
        return shell(self.car, self.setup)

    @cached_property
    def seat_move(self) -> SeatMove:
        """What the rework does to everything fixed to the seat."""
        return seat_move(self.car, self.setup)

    def full(self, value: Floats) -> Floats:
        """A figure as `(n,)`, repeated where it is the same for all cases."""
        figure = column(value)
        return figure if len(figure) == self.count else np.broadcast_to(figure, (self.count,))

    def wide(self, points: Points) -> Points:
        """Points as `(n, 3)`, repeated where they are the same for all cases."""
        return points if len(points) == self.count else np.broadcast_to(points, (self.count, 3))
