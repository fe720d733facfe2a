"""The seat's mounts at every load level that the program knows, as part of a JSON record."""

from pydantic import Field

from fitcalc.checks.case import Case
from fitcalc.checks.seat_mount_figures import seat_and_driver
from fitcalc.fit.result import Result
from fitcalc.making.seat_levels import SeatLevel, directions, fixing_rules, seat_levels
from fitcalc.making.seat_work import (
    BOLT,
    GRADE,
    Carried,
    Mounts,
    empty_seat,
    hold,
    leans_on_seat,
    point_safety,
    seat_mounts,
)
from fitcalc.present.parts import Record


class LevelRecord(Record):
    """One load level in one direction; bolts as the mounts stand after the rework."""

    level: str
    direction: str
    mass: float | None = Field(
        description="That the mounts hold, kg; null where the level is a force at each mount."
    )
    multiple: float | None = Field(description="Of its weight.")
    tension: float = Field(description="In the bolt pulled most, N.")
    shear: float = Field(description="Across the bolt sheared most, N.")
    safety: float
    bracket_thickness: float = Field(
        description="Of steel 40 mm wide that just does not yield, mm; 0 without one."
    )
    source: str


class FixingRecord(Record):
    """One published rule on points, bolts or plates."""

    quantity: str
    low: float
    unit: str
    source: str


class MountsRecord(Record):
    """Bolts and brackets of the seat, the harness fixed to the car."""

    bolts: str
    bracket_reach: float = Field(
        description="From the nearest old hole to the moved mount, mm; 0 = none needed."
    )
    levels: list[LevelRecord]
    rules: list[FixingRecord]


def mounts_record(result: Result) -> MountsRecord:
    """The mounts of the first case after the rework."""
    mounts = seat_mounts(result.car, result.setup)
    case = Case(result.car, result.driver, result.links, result.setup, result.sitting)
    alone = empty_seat(result.car, result.setup)
    whole = alone if result.sitting.hands is None else seat_and_driver(case)
    return MountsRecord(
        bolts=f"{mounts.after.shape[1]} x {BOLT} {GRADE}",
        bracket_reach=mounts.reach[0],
        levels=[row for level in seat_levels() for row in _rows(level, mounts, alone, whole)],
        rules=[
            FixingRecord(quantity=rule.quantity, low=rule.low, unit=rule.unit, source=str(rule.source))
            for rule in fixing_rules()
        ],
    )


def _rows(level: SeatLevel, mounts: Mounts, alone: Carried, whole: Carried) -> list[LevelRecord]:
    if level.kind == "point":
        return [_point(level)]
    rows = [
        _row(level, way, factor, mounts, whole if leans_on_seat(level, way) else alone)
        for way, factor in directions(level)
    ]
    rearward = dict(directions(level)).get("rearward")
    if rearward is None or leans_on_seat(level, "rearward"):
        return rows
    pushed = _row(level, "rearward", rearward, mounts, whole)
    told = {
        "direction": "rearward, driver leaning on it",
        "source": f"{pushed.source}; the driver: design inference",
    }
    return [*rows, LevelRecord(**pushed.model_dump() | told)]


def _row(
    level: SeatLevel, way: str, factor: tuple[float, float, float], mounts: Mounts, load: Carried
) -> LevelRecord:
    held = hold(mounts, load, factor)
    return LevelRecord(
        level=level.id,
        direction=way,
        mass=load.mass[0],
        multiple=max(abs(part) for part in factor),
        tension=held.seat.tension[0].max(),
        shear=held.seat.shear[0].max(),
        safety=held.safety[0],
        bracket_thickness=held.thickness[0],
        source=str(level.source),
    )


def _point(level: SeatLevel) -> LevelRecord:
    return LevelRecord(
        level=level.id,
        direction="any, at each mount",
        mass=None,
        multiple=None,
        tension=level.force,
        shear=level.force,
        safety=point_safety(level)[0],
        bracket_thickness=0.0,
        source=str(level.source),
    )
