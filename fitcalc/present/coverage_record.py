"""Who of the published population fits one car, as one JSON record: `fitcalc coverage`."""

from collections.abc import Iterator, Sequence
from typing import Literal

import numpy as np
from pydantic import Field

from fitcalc.documents.setup import Setup
from fitcalc.fit.coverage import Coverage, TurnedAway
from fitcalc.fit.result import Result
from fitcalc.present.change_words import title_of
from fitcalc.present.parts import Record
from fitcalc.present.wanted import unmade_in, wanted_span
from fitcalc.present.wording import CAUTIONS

CLASS = 50.0
"""Width of a class of stature, mm."""


class TurnedAwayRecord(Record):
    """A limit that is broken for some bodies however the car is set; stature in mm, 5 %, 50 % and 95 % of them."""

    id: str
    label: str
    wanted: str
    share: float
    alone: float = Field(description="Share for which it is the only limit broken.")
    stature: tuple[float, float, float]


class ClassRecord(Record):
    """Bodies of one class of stature, mm."""

    low: float
    high: float
    bodies: int
    fits: float


class GroupRecord(Record):
    """One sex: share that fits, 0 to 1, who does, and what turns the others away."""

    sex: Literal["female", "male"]
    bodies: int
    fits: float
    stature: tuple[float, float] | None = Field(
        description="Least and greatest stature that fits; null for none."
    )
    classes: list[ClassRecord]
    turned_away: list[TurnedAwayRecord]
    regardless: list[str] = Field(description="Broken for everybody by the same amount: no part of `fits`.")
    complete: bool


class CoverageRecord(Record):
    """Who fits with the car's own quick adjustments on top of a rework."""

    format: Literal[1] = 1
    command: Literal["coverage"] = "coverage"
    car: str
    rules: str
    setup: Setup
    adjustments: list[str] = Field(description="Paths that are set for each body.")
    groups: list[GroupRecord]
    unmade: int = Field(
        description="Checks that could not be made for want of a measurement: no part of the verdict."
    )
    cautions: list[str]


def coverage_record(
    result: Result, found: Sequence[tuple[Literal["female", "male"], Coverage]]
) -> CoverageRecord:
    """The record of who fits.

    Args:
        result: anybody's, for car, rules, rework and the words of the limits.
        found: by sex.
    """
    return CoverageRecord(
        car=result.car.name,
        rules=result.rules.id,
        setup=result.setup,
        adjustments=list(found[0][1].adjustments) if found else [],
        groups=[_group(sex, each, result) for sex, each in found],
        unmade=unmade_in(result),
        cautions=list(CAUTIONS),
    )


def adjustments_text(record: CoverageRecord) -> str:
    """What is set for each body, in words."""
    return (
        " and ".join(title_of(path) for path in record.adjustments)
        or "nothing: this car has no quick adjustment"
    )


def _group(sex: Literal["female", "male"], found: Coverage, result: Result) -> GroupRecord:
    labels = {check.id: check.label for check in result.checks}
    wanted = {check.id: wanted_span(check) for check in result.checks}
    fitting = found.stature[found.fitting]
    return GroupRecord(
        sex=sex,
        bodies=found.bodies,
        fits=found.fits,
        stature=(float(fitting.min()), float(fitting.max())) if len(fitting) else None,
        classes=list(_classes(found)),
        turned_away=[_turned_away(each, wanted.get(each.check, "")) for each in found.turned_away],
        regardless=[labels.get(id, id) for id in found.regardless],
        complete=found.complete,
    )


def _turned_away(each: TurnedAway, wanted: str) -> TurnedAwayRecord:
    return TurnedAwayRecord(
        id=each.check,
        label=each.label,
        wanted=wanted,
        share=each.share,
        alone=each.alone,
        stature=each.stature,
    )


def _classes(found: Coverage) -> Iterator[ClassRecord]:
    low = CLASS * np.floor(found.stature.min() / CLASS)
    for start in np.arange(low, found.stature.max() + 1e-9, CLASS):
        own = (found.stature >= start) & (found.stature < start + CLASS)
        if np.any(own):
            yield ClassRecord(
                low=float(start),
                high=float(start + CLASS),
                bodies=int(own.sum()),
                fits=float(np.mean(found.fitting[own])),
            )
