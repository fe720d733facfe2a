"""Joint angles as limits: the single-seater's windows with the driver's own wishes.

Only the knee must hold, since a straight leg cannot push and a folded one cannot move; every other angle is advice.
"""

from dataclasses import replace

from fitcalc.body.comfort import Window, posture_sets, single_seater_source, windows_for
from fitcalc.checks.limit_rows import Limit
from fitcalc.checks.limits import LimitSet
from fitcalc.documents.driver import Driver
from fitcalc.sources import Source

MUST_HOLD = ("knee_released", "knee_pressed")
FOR_EVERY_SEAT = ("knee_released", "knee_pressed", "hip", "ankle", "elbow", "shoulder")
UPRIGHT_RECLINE = "wolf_2022"


def with_posture(workshop: LimitSet, driver: Driver) -> LimitSet:
    """The always-on set with one row for each joint angle."""
    windows = windows_for(driver)
    rows = tuple(_row(name, windows[name]) for name in FOR_EVERY_SEAT)
    return replace(workshop, limits=(*workshop.limits, *rows, *_recline(windows["recline"])))


def _row(name: str, window: Window) -> Limit:
    low, high = window.permitted if name in MUST_HOLD else (None, None)
    return _limit(name, window.recommended, single_seater_source(), low=low, high=high)


def _recline(window: Window) -> tuple[Limit, Limit]:
    """A reclined seat by the single-seater's window, an upright one by what was seen of road-car drivers."""
    seen = posture_sets()[UPRIGHT_RECLINE]
    upright = (seen.angles["recline"][0], seen.angles["recline"][1])
    return (
        _limit("recline", window.recommended, single_seater_source(), when="reclined"),
        _limit("recline", upright, seen.source, when="upright"),
    )


def _limit(name: str, recommended: tuple[float, float], source: Source, **more: object) -> Limit:
    when = more.get("when", "")
    return Limit.model_validate(
        {
            "id": f"posture_{name}{when and f'_{when}'}",
            "quantity": f"posture.{name}",
            "unit": "deg",
            "recommended_low": recommended[0],
            "recommended_high": recommended[1],
            "applies_to": "open single-seaters",
            "measured": "true angle between the joint centres",
            **source.model_dump(),
            "clause": source.clause or "joint angles",
            **more,
        }
    )
