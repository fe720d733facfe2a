"""One car for several drivers as one JSON record: what is fixed for all, and what each sets. `fitcalc shared`."""

from collections.abc import Sequence
from typing import Literal

from pydantic import Field

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.documents.setup import Setup
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.result import Result
from fitcalc.fit.shared import Shared
from fitcalc.fit.variables import AS_GIVEN, HAIR, Variable, value_at, variables_for
from fitcalc.present.change_words import told
from fitcalc.present.parts import Record
from fitcalc.present.solve_record import ChangeRecord, change_record
from fitcalc.present.wanted import BrokenRecord, broken_records, unmade_in
from fitcalc.present.wording import CAUTIONS

UNSET = {
    "seat_travel": "seat where it was found",
    "box_travel": "pedal box where it was found",
    "cushion_insert": "no insert under the driver",
    "back_insert": "no insert behind the back",
}
"""Quick changes that a driver leaves alone, as they are told."""


class DriverRecord(Record):
    """What one driver sets in the shared car, and what that leaves broken."""

    driver: str
    setup: Setup
    passes: bool
    sets: list[ChangeRecord] = Field(description="Each change from as found; `minutes` is once, to make it.")
    words: list[str] = Field(description="The same as orders, what stays as found among them.")
    broken: list[BrokenRecord]


class SharedCarRecord(Record):
    """Fixed for all, and set by each driver. mm, deg, minutes."""

    format: Literal[1] = 1
    command: Literal["shared"] = "shared"
    car: str
    rules: str
    verdict: str
    fits_all: bool
    minutes: float
    fixed: list[ChangeRecord]
    quick: list[str] = Field(description="Paths that each driver may set.")
    drivers: list[DriverRecord]
    unmade: int = Field(
        description="Checks that could not be made for want of a measurement: no part of the verdict."
    )
    complete: bool
    cautions: list[str]


def shared_car_record(
    car: Car, drivers: Sequence[Driver], shared: Shared, rules: str | None = None, effort: Effort = AS_GIVEN
) -> SharedCarRecord:
    """The record of a shared car.

    Args:
        car: as found.
        drivers: in the order that the search had them.
        shared: what it found.
        rules: as the search had them.
        effort: as the search had it.
    """
    variables = variables_for(car, effort)
    results = [evaluate(car, each, setup, rules) for each, setup in zip(drivers, shared.setups, strict=True)]
    fixed = [each for each in variables if each.path not in shared.quick]
    several = [
        _driver(result, variables, shared.quick, settled)
        for result, settled in zip(results, shared.settled, strict=True)
    ]
    return SharedCarRecord(
        car=car.name,
        rules=results[0].rules.id,
        verdict=_verdict(several, shared),
        fits_all=all(each.passes for each in several),
        minutes=shared.effort,
        fixed=[change_record(each, results[0]) for each in fixed if _moved(each, results[0])],
        quick=list(shared.quick),
        drivers=several,
        unmade=max(unmade_in(result) for result in results),
        complete=shared.complete,
        cautions=list(CAUTIONS),
    )


def _driver(
    result: Result, variables: Sequence[Variable], quick: Sequence[str], settled: frozenset[str]
) -> DriverRecord:
    own = [each for each in variables if each.path in quick]
    broken = broken_records(result, settled)
    return DriverRecord(
        driver=result.driver.name,
        setup=result.setup,
        passes=not broken,
        sets=[change_record(each, result) for each in own if _moved(each, result)],
        words=[_order(each, result) for each in own],
        broken=broken,
    )


def _moved(each: Variable, result: Result) -> bool:
    return abs(float(value_at(result.setup, each.path)[0])) > HAIR


def _order(each: Variable, result: Result) -> str:
    if _moved(each, result):
        return told(each.path, float(value_at(result.setup, each.path)[0]), result.car)
    pedal, _, kind = each.path.rpartition(".")
    if kind == "stand_off":
        return f"no pad on the {pedal} pedal"
    return UNSET.get(kind, f"{each.title} as found")


def _verdict(drivers: Sequence[DriverRecord], shared: Shared) -> str:
    fitting = [each.driver for each in drivers if each.passes]
    if len(fitting) == len(drivers):
        whom = "the one driver" if len(drivers) == 1 else f"all {len(drivers)} drivers"
        return f"One set of holes and bars fits {whom}, with about {shared.effort:.0f} minutes at the bench."
    best = "" if shared.complete else " found before it was stopped"
    whom = f"It fits {', '.join(fitting)}" if fitting else "It fits nobody as a whole"
    return f"No one set of holes and bars fits all of them. The best compromise{best} is below. {whom}."
