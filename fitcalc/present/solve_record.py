"""The least rework that passes, or what stands in its way, as one JSON record: `fitcalc solve`."""

from typing import Literal

from pydantic import Field

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort, Kind
from fitcalc.documents.setup import Setup
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.result import Result
from fitcalc.fit.robust import Robust
from fitcalc.fit.solve import Rework, Solution
from fitcalc.fit.variables import AS_GIVEN, Variable, value_at, variables_for
from fitcalc.present.certainty_record import OddsRecord, odds_records
from fitcalc.present.change_words import title_of, told
from fitcalc.present.conflict_words import conflict_sentences, way_sentences
from fitcalc.present.parts import Record
from fitcalc.present.record import CheckRecord, check_rows
from fitcalc.present.wanted import BrokenRecord, broken_records, unmade_in
from fitcalc.present.wording import CAUTIONS

UNSURE = 6
"""So many checks are named that are least sure."""


class ChangeRecord(Record):
    """One change of a rework."""

    path: str
    value: float
    unit: str
    words: str
    work: Kind
    minutes: float


class ReworkRecord(Record):
    """One rework: what it changes, the minutes it takes, and what it leaves broken."""

    setup: Setup
    minutes: float
    passes: bool
    changes: list[ChangeRecord]
    broken: list[BrokenRecord]


class AllowedRecord(Record):
    """One thing that may be changed: how far, in which steps, for how many minutes."""

    path: str
    title: str
    unit: str
    low: float
    high: float
    step: float
    work: Kind
    fixed: float
    per_unit: float


class ChanceRecord(Record):
    """The probability, 0 to 1, that all that can be moved holds with the best rework."""

    asked: float
    reached: float
    enough: bool


class SolveRecord(Record):
    """The best rework, the next best of other kinds, and what shuts out a better one. mm, deg, minutes."""

    format: Literal[1] = 1
    command: Literal["solve"] = "solve"
    car: str
    driver: str
    rules: str
    verdict: str
    passes: bool
    best: ReworkRecord
    others: list[ReworkRecord]
    conflict: list[str] = Field(description="Which limits shut each other out.")
    ways: list[str] = Field(description="What single change of the car would make room.")
    chance: ChanceRecord | None = Field(description="Only where a probability was asked for.")
    uncertain: list[OddsRecord] = Field(
        description="The checks least likely to pass; with a probability only."
    )
    allowed: list[AllowedRecord]
    checks: list[CheckRecord] = Field(description="With the best rework.")
    unmade: int = Field(
        description="Checks that could not be made for want of a measurement: no part of the verdict."
    )
    complete: bool = Field(description="False where the search was stopped before its end.")
    cautions: list[str]


def solve_record(
    car: Car, driver: Driver, solution: Solution, rules: str | None = None, effort: Effort = AS_GIVEN
) -> SolveRecord:
    """The record of a solution.

    Args:
        car: as found.
        driver: as measured.
        solution: what the solver found.
        rules: as the solver had them.
        effort: as the solver had it.
    """
    variables = variables_for(car, effort)
    results = [evaluate(car, driver, each.setup, rules) for each in (solution.best, *solution.others)]
    best, *others = (
        _rework(rework, result, variables, solution.settled)
        for rework, result in zip((solution.best, *solution.others), results, strict=True)
    )
    conflict = solution.conflict
    return SolveRecord(
        car=car.name,
        driver=driver.name,
        rules=results[0].rules.id,
        verdict=_verdict(best, variables),
        passes=best.passes,
        best=best,
        others=others,
        conflict=[] if conflict is None else conflict_sentences(conflict),
        ways=[] if conflict is None else way_sentences(conflict, all(each.movable for each in best.broken)),
        chance=None,
        uncertain=[],
        allowed=[_allowed(each) for each in variables],
        checks=check_rows(results[0]),
        unmade=unmade_in(results[0]),
        complete=solution.complete,
        cautions=list(CAUTIONS),
    )


def robust_record(
    car: Car,
    driver: Driver,
    found: Robust,
    asked: float,
    rules: str | None = None,
    effort: Effort = AS_GIVEN,
) -> SolveRecord:
    """The record of a rework that is to pass with a probability, 0 to 1."""
    plain = solve_record(car, driver, found.solution, rules, effort)
    result = evaluate(car, driver, found.solution.best.setup, rules)
    open_ones = [each for each in odds_records(result, found.certainty) if each.passes < 1.0][:UNSURE]
    chance = ChanceRecord(asked=asked, reached=found.probability, enough=found.reached)
    more = {"chance": chance, "uncertain": open_ones, "others": []}
    if not plain.passes:
        return plain.model_copy(update=more)
    # what shuts out a task with margins added is no news where the rework passes without them
    verdict = f"With room for what is uncertain: {_amount_of_work(plain.best)}. It passes as measured."
    return plain.model_copy(update=more | {"verdict": verdict, "conflict": [], "ways": []})


def _rework(
    rework: Rework, result: Result, variables: tuple[Variable, ...], settled: frozenset[str]
) -> ReworkRecord:
    broken = broken_records(result, settled)
    return ReworkRecord(
        setup=rework.setup,
        minutes=rework.effort,
        passes=not broken,
        changes=[change_record(each, result) for each in variables if each.path in rework.changes],
        broken=broken,
    )


def change_record(each: Variable, result: Result) -> ChangeRecord:
    """One change of a result's rework."""
    value = value_at(result.setup, each.path)
    return ChangeRecord(
        path=each.path,
        value=float(value[0]),
        unit=each.unit,
        words=told(each.path, float(value[0]), result.car),
        work=each.work,
        minutes=float(each.cost(value)[0]),
    )


def _allowed(each: Variable) -> AllowedRecord:
    return AllowedRecord(
        path=each.path,
        title=title_of(each.path),
        unit=each.unit,
        low=each.low,
        high=each.high,
        step=each.step,
        work=each.work,
        fixed=each.fixed,
        per_unit=each.per_unit,
    )


def _verdict(best: ReworkRecord, variables: tuple[Variable, ...]) -> str:
    movable = sum(each.movable for each in best.broken)
    still = len(best.broken) - movable
    left = (
        f" {_limits(still)} broken whatever is changed: no allowed change moves {_them(still)}."
        if still
        else ""
    )
    if not variables:
        return f"Nothing may be changed on this car.{left}".strip()
    if movable:
        return f"No allowed rework passes. The nearest to it leaves {_limits(movable, False)} broken.{left}"
    if not best.changes:
        return (
            f"Nothing to change{': everything that was checked passes as found' if not still else ''}.{left}"
        )
    much = _amount_of_work(best)
    return (
        f"The least work that passes: {much}."
        if not still
        else f"All that can be mended is, with {much}.{left}"
    )


def _amount_of_work(best: ReworkRecord) -> str:
    plural = "change" if len(best.changes) == 1 else "changes"
    return f"{len(best.changes)} {plural}, about {best.minutes:.0f} minutes at the bench"


def _limits(count: int, stay: bool = True) -> str:
    return f"{count} {'limit' if count == 1 else 'limits'}{(' stays' if count == 1 else ' stay') if stay else ''}"


def _them(count: int) -> str:
    return "it" if count == 1 else "them"
