"""How sure a rework is, as one JSON record: intervals, odds, and what to measure again. `fitcalc certainty`."""

from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from fitcalc.checks.check import Check
from fitcalc.documents.setup import Setup
from fitcalc.fit.certainty import Certainty, Interval
from fitcalc.fit.result import Result
from fitcalc.fit.sweep import required_room
from fitcalc.present.bench import bench
from fitcalc.present.parts import Record
from fitcalc.present.wanted import BrokenRecord, broken_records, required_bounds, unmade_in, wanted_span
from fitcalc.present.wording import CAUTIONS

TELLING = 0.005
"""A measurement that brings in less of the variance than this is not worth taking again."""


class LengthRecord(Record):
    """One length to cut, mm, with the interval that holds the right one in 90 of 100 drawn cars and bodies."""

    part: str
    title: str
    size: str
    value: float
    low: float
    high: float


class IntervalRecord(Record):
    """One figure with its 90 % interval; `value` is what the measurements as they stand give."""

    id: str
    label: str
    unit: str
    value: float
    low: float
    high: float
    draws: int
    wanted: str
    wanted_low: float | None
    wanted_high: float | None


class OddsRecord(Record):
    """How likely a check passes, 0 to 1; a knee passes where it is recommended to be."""

    id: str
    label: str
    wanted: str
    passes: float
    draws: int


class AgainRecord(Record):
    """A measurement, with the share of what is undecided that goes with it, 0 to 1."""

    path: str
    title: str
    share: float
    most: float = Field(description="Largest share in any one outcome.")
    most_in: str


class CertaintyRecord(Record):
    """What tape tolerances and body estimates leave open of one rework. Intervals hold 90 %."""

    format: Literal[1] = 1
    command: Literal["certainty"] = "certainty"
    car: str
    driver: str
    rules: str
    setup: Setup
    draws: int
    few: int = Field(description="Draws behind lengths to cut and clearances of swept outlines.")
    all_hold: float = Field(description="Probability that everything that the draws move holds together.")
    lengths: list[LengthRecord]
    needed: list[IntervalRecord] = Field(description="The stand-off that each pedal really needs.")
    figures: list[IntervalRecord] = Field(description="Every figure that the draws move.")
    odds: list[OddsRecord] = Field(
        description="Every check that is not the same in all draws, least likely first."
    )
    never: list[BrokenRecord] = Field(description="Broken in every draw, all alike.")
    unmade: int = Field(
        description="Checks that could not be made for want of a measurement: no part of the verdict."
    )
    again: list[AgainRecord] = Field(description="What to measure again, the most telling first.")
    complete: bool
    cautions: list[str]

    @property
    def angles(self) -> list[IntervalRecord]:
        """The figures that are angles."""
        return [each for each in self.figures if each.unit == "deg"]


def certainty_record(result: Result, sure: Certainty) -> CertaintyRecord:
    """The record of one rework's certainty.

    Args:
        result: of the measurements as they stand.
        sure: of the same rework.
    """
    checks = {check.id: check for check in result.checks}
    moved = {each.id for each in sure.odds}
    return CertaintyRecord(
        car=result.car.name,
        driver=result.driver.name,
        rules=result.rules.id,
        setup=result.setup,
        draws=max((each.draws for each in sure.odds), default=0),
        few=min((each.draws for each in sure.odds), default=0),
        all_hold=sure.all_hold,
        lengths=list(_lengths(result, sure)),
        needed=[_interval(each, None, _needed_value(result, each)) for each in sure.lengths],
        figures=list(_figures(result, sure)),
        odds=odds_records(result, sure),
        never=[each for each in broken_records(result) if each.id not in moved],
        unmade=unmade_in(result),
        again=list(_again(sure, checks)),
        complete=sure.complete,
        cautions=list(CAUTIONS),
    )


def odds_records(result: Result, sure: Certainty) -> list[OddsRecord]:
    """How likely each check passes, the least likely first."""
    wanted = {check.id: wanted_span(check) for check in result.checks}
    return [
        OddsRecord(
            id=each.id,
            label=each.label,
            wanted=wanted.get(each.id, ""),
            passes=each.passes,
            draws=each.draws,
        )
        for each in sure.odds
    ]


def _lengths(result: Result, sure: Certainty) -> Iterator[LengthRecord]:
    """The sizes of the parts to make that the draws say something about, as on the bench sheets."""
    for part in bench(result, sure).parts:
        for size in part.sizes:
            if size.interval is not None and size.basis == "90 %":
                low, high = size.interval
                yield LengthRecord(
                    part=part.id, title=part.title, size=size.name, value=size.value, low=low, high=high
                )


def _figures(result: Result, sure: Certainty) -> Iterator[IntervalRecord]:
    bounding = {check.figure.id: check for check in reversed(result.checks)}
    for each in sure.figures:
        check = bounding.get(each.id)
        if check is not None and check.figure.value is not None:
            yield _interval(each, check, float(check.figure.value[0]))


def _interval(each: Interval, check: Check | None, value: float) -> IntervalRecord:
    held = check if check is not None and required_room(check) is not None else None
    low, high = (None, None) if held is None else required_bounds(held)
    return IntervalRecord(
        id=each.id,
        label=each.label,
        unit=each.unit,
        value=value,
        low=each.low,
        high=each.high,
        draws=each.draws,
        wanted="" if held is None else wanted_span(held),
        wanted_low=low,
        wanted_high=high,
    )


def _needed_value(result: Result, each: Interval) -> float:
    pedal, _, way = each.id.rpartition(".")
    return float(getattr(getattr(result.setup, pedal), way))


def _again(sure: Certainty, checks: dict[str, Check]) -> Iterator[AgainRecord]:
    lengths = {each.id: each.label for each in sure.lengths}
    for each in sure.again:
        most, where = each.most
        label = lengths.get(where) or (checks[where].label if where in checks else where)
        if each.share >= TELLING:
            yield AgainRecord(path=each.path, title=each.title, share=each.share, most=most, most_in=label)
