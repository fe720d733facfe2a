"""Joint angles as limits: the single-seater's windows with the driver's own wishes.

The knee's window must hold, since a straight leg cannot push and a folded one cannot move; every other window is advice.
Hip and ankle must besides stay where the joint itself can go.
"""

from dataclasses import replace
from typing import get_args

from fitcalc.body.comfort import (
    Window,
    motion_limits,
    motion_tables,
    posture_sets,
    single_seater_source,
    windows_for,
)
from fitcalc.body.survey import Sex
from fitcalc.checks.limit_rows import Limit
from fitcalc.checks.limits import LimitSet
from fitcalc.documents.driver import Driver
from fitcalc.sources import Source

MUST_HOLD = ("knee_released", "knee_pressed")
FOR_EVERY_SEAT = ("knee_released", "knee_pressed", "hip", "ankle", "elbow", "shoulder")
UPRIGHT_RECLINE = "wolf_2022"
ENDS = ("hip", "ankle")
"""Angles that a seat can ask for beyond what the joint does."""
MOTION = "aaos"
"""Table of what joints do: the widest for the ankle's bending, in which two of the three agree."""


def with_posture(workshop: LimitSet, driver: Driver) -> LimitSet:
    """The always-on set with one row for each joint angle."""
    windows = windows_for(driver)
    rows = tuple(_row(name, windows[name]) for name in FOR_EVERY_SEAT)
    ends = tuple(_end(name, driver.sex) for name in ENDS)
    return replace(workshop, limits=(*workshop.limits, *rows, *ends, *_recline(windows["recline"])))


def _row(name: str, window: Window) -> Limit:
    low, high = window.permitted if name in MUST_HOLD else (None, None)
    advised = {"recommended_low": window.recommended[0], "recommended_high": window.recommended[1]}
    return _limit(f"posture_{name}", name, single_seater_source(), **advised, low=low, high=high)


def _end(name: str, sex: Sex | None) -> Limit:
    """How far the joint goes; of both sexes where none is given."""
    table = motion_tables()[MOTION]
    spans = [motion_limits(table, each)[name] for each in get_args(Sex) if sex in (None, each)]
    low, high = min(low for low, _ in spans), max(high for _, high in spans)
    return _limit(f"posture_{name}_motion", name, table.source, low=low, high=high)


def _recline(window: Window) -> tuple[Limit, Limit]:
    """A reclined seat by the single-seater's window, an upright one by what was seen of road-car drivers."""
    seen = posture_sets()[UPRIGHT_RECLINE]
    reclined, upright = window.recommended, seen.angles["recline"]
    return (
        _when("reclined", reclined[0], reclined[1], single_seater_source()),
        _when("upright", upright[0], upright[1], seen.source),
    )


def _when(seat: str, low: float, high: float, source: Source) -> Limit:
    advised = {"recommended_low": low, "recommended_high": high}
    return _limit(f"posture_recline_{seat}", "recline", source, **advised, when=seat)


def _limit(id: str, name: str, source: Source, **bounds: object) -> Limit:
    return Limit.model_validate(
        {
            "id": id,
            "quantity": f"posture.{name}",
            "unit": "deg",
            "applies_to": "open single-seaters",
            "measured": "true angle between the joint centres",
            **source.model_dump(),
            "clause": source.clause or "joint angles",
            **bounds,
        }
    )
