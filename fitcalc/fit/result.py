"""The one result that everything reads: screen, tables, command line, report and drawings."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from fitcalc.body.links import Links
from fitcalc.checks.case import Case
from fitcalc.checks.check import STATUSES, Check, Figure
from fitcalc.checks.limits import LimitSet
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.posture.sit import Sitting

if TYPE_CHECKING:
    from fitcalc.making.pedal_work import PedalWork


@dataclass(frozen=True, eq=False)
class Result:
    """One driver in one car with one rework, measured and judged; every array has the cases as its leading axis."""

    car: Car
    driver: Driver
    links: Links
    setup: Setup
    rules: LimitSet
    sitting: Sitting
    work: "Mapping[str, PedalWork]"
    figures: tuple[Figure, ...]
    checks: tuple[Check, ...]

    @cached_property
    def case(self) -> Case:
        """What the checks looked at."""
        return Case(self.car, self.driver, self.links, self.setup, self.sitting)

    def worst_first(self) -> list[Check]:
        """The checks of the first case, failures first, then by the least margin."""
        return list(self._ranked)

    @cached_property
    def _ranked(self) -> tuple[Check, ...]:
        return tuple(sorted(self.checks, key=lambda check: (STATUSES.index(check.status), _closeness(check))))

    def with_status(self, status: str) -> Iterator[Check]:
        """The checks of the first case that came out so."""
        return (check for check in self.checks if check.status == status)

    def check(self, id: str) -> Check:
        """The check with this id; KeyError when there is none."""
        return {check.id: check for check in self.checks}[id]

    def unlimited(self) -> Iterator[Figure]:
        """What was measured and no row of either limit set bounds."""
        limited = {check.figure.id for check in self.checks}
        return (figure for figure in self.figures if figure.id not in limited)

    @property
    def anything_fails(self) -> bool:
        """Whether a limit that must hold is broken in the first case."""
        return any(True for _ in self.with_status("fail"))


def _closeness(check: Check) -> float:
    margin = check.margin if check.margin is not None else check.comfort_margin
    return 0.0 if margin is None else float(margin[0])
