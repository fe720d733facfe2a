"""What a rework does to pedals and seat mounts, and what to make, as one JSON record: `fitcalc pedals`."""

from typing import Literal

import numpy as np
from pydantic import Field

from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.fit.result import Result
from fitcalc.making.actuation import EFFORT, CableWork, CylinderWork
from fitcalc.making.bar_check import thinnest_stock
from fitcalc.making.pedal_bars import bar_job, extended, mix_in_band, wanted_safety
from fitcalc.making.pedal_work import PedalWork
from fitcalc.making.stock import stock_sizes
from fitcalc.present.bar_record import BarRecord, bar_record
from fitcalc.present.mount_record import MountsRecord, mounts_record
from fitcalc.present.parts import Record
from fitcalc.present.record import CheckRecord, check_rows
from fitcalc.present.shoe_record import ShoeRecord, shoe_records
from fitcalc.present.wording import CAUTIONS
from fitcalc.units import Floats

SHOWN = ("pedal.", "height.", "seat.mount_", "seat.bracket_")
"""Checks that belong to this command start so."""

CYLINDER = (
    "ratio_rest",
    "ratio_mean",
    "ratio_full",
    "off_square",
    "stroke",
    "stroke_left",
    "pressure",
    "rear_pressure",
    "release",
    "release_left",
)
CABLE = ("pull", "pull_left", "stop_error")
"""Figures of what a pedal works, by the same names as in the record."""


class WorkRecord(Record):
    """One pedal from rest to its stop; mm, deg, N, MPa. None where it has no such part."""

    pad_travel: float
    ratio_rest: float | None
    ratio_mean: float | None
    ratio_full: float | None
    foot_force: float = Field(description="For what 500 N does with the pedal as found, N.")
    off_square: float | None
    stroke: float | None
    stroke_left: float | None
    pressure: float | None = Field(
        description="At 500 N of foot force; of the front circuit where there are two."
    )
    rear_pressure: float | None
    release: float | None
    release_left: float | None
    pull: float | None
    pull_left: float | None
    stop_error: float | None
    slide: float = Field(description="Pad along the shoe because its face stands off the arm's line.")
    height: float = Field(description="Pad above the ball of a foot with its heel on the floor.")


class StockRecord(Record):
    """The least size of the same shape that reaches the wanted factor of safety; the strongest where none does."""

    section: str
    safety: float
    enough: bool


class MixRecord(Record):
    """The mix that brings the pad as near with the ratio inside the band; stand-off square to the arm, mm."""

    reach: float = Field(description="How much nearer the pad comes to the hip.")
    longer_arm: float
    stand_off: float
    ratio_change: float = Field(description="Against the pedal as found, %.")
    shortfall: float


class ChangeRecord(Record):
    """One pedal before and after, and what to make for it."""

    stand_off: float
    longer_arm: float
    found: WorkRecord
    after: WorkRecord
    bar: BarRecord | None
    stock: StockRecord | None
    mix: MixRecord | None


class PedalsRecord(Record):
    """Everything about the pedals and seat mounts of one car, reworked for one driver."""

    format: Literal[1] = 1
    car: str
    driver: str
    rules: str
    setup: Setup
    band: float = Field(description="Change of ratio that the mixes may make, %.")
    pedals: dict[str, ChangeRecord]
    shoes: dict[str, ShoeRecord]
    seat: MountsRecord
    checks: list[CheckRecord]
    cautions: list[str]


def pedals_record(found: Result, after: Result, band: float) -> PedalsRecord:
    """The record of a rework beside the car as found.

    Args:
        found: the car as found.
        after: with the rework.
        band: change of ratio that a mix may make, %.
    """
    return PedalsRecord(
        car=after.car.name,
        driver=after.driver.name,
        rules=after.rules.id,
        setup=after.setup,
        band=band,
        pedals={name: _change(name, found, after, band) for name in after.work},
        shoes=shoe_records(after),
        seat=mounts_record(after),
        checks=[check for check in check_rows(after) if check.id.startswith(SHOWN)],
        cautions=list(CAUTIONS),
    )


def _change(name: str, found: Result, after: Result, band: float) -> ChangeRecord:
    rework: PedalRework = getattr(after.setup, name)
    made = bool(extended(rework)[0])
    return ChangeRecord(
        stand_off=rework.stand_off,
        longer_arm=rework.longer_arm,
        found=_work(found.work[name], _height(found, name)),
        after=_work(after.work[name], _height(after, name)),
        bar=bar_record(name, after),
        stock=_stock(name, after) if made else None,
        mix=_mix(name, after, band) if made else None,
    )


def _work(work: PedalWork, height: float) -> WorkRecord:
    return WorkRecord(
        pad_travel=work.pad_travel[0],
        foot_force=EFFORT * work.force_factor[0],
        slide=work.slide[0],
        height=height,
        **_parts(work.cylinder, CYLINDER),
        **_parts(work.cable, CABLE),
    )


def _parts(works: CylinderWork | CableWork | None, names: tuple[str, ...]) -> dict[str, float | None]:
    return {name: _first(getattr(works, name, None)) for name in names}


def _stock(name: str, result: Result) -> StockRecord:
    pedal = result.car.fitted_pedals()[name]
    job = bar_job(name, pedal, getattr(result.setup, name), result.sitting.pedals[name])
    choice = thinnest_stock(job, stock_sizes(pedal.bar.shape), np.array([wanted_safety(pedal.bar)]))
    return StockRecord(
        section=choice.stock[choice.index[0]].name,
        safety=choice.safety[0],
        enough=bool(choice.shortfall[0] == 0.0),
    )


def _mix(name: str, result: Result, band: float) -> MixRecord:
    pedal, rework = result.car.fitted_pedals()[name], getattr(result.setup, name)
    mix, reach = mix_in_band(pedal, rework, result.sitting.pedals[name], np.array([band / 100.0]))
    return MixRecord(
        reach=reach[0],
        longer_arm=mix.longer[0],
        stand_off=mix.stand_off[0],
        ratio_change=100.0 * (mix.ratio_factor[0] - 1.0),
        shortfall=mix.shortfall[0],
    )


def _height(result: Result, name: str) -> float:
    value = next(figure.value for figure in result.figures if figure.id == f"height.{name}.pad")
    return 0.0 if value is None else float(value[0])


def _first(value: Floats | None) -> float | None:
    return None if value is None else float(value[0])
