"""The full result as one JSON record; `fitcalc schema result` prints its schema."""

from collections.abc import Mapping
from typing import Literal

import numpy as np
from pydantic import Field

from fitcalc.body.estimate import estimate
from fitcalc.checks.check import Check, Figure, Status
from fitcalc.checks.checklist import Tick, checklist
from fitcalc.checks.limits import workshop_limits
from fitcalc.documents.setup import Setup
from fitcalc.fit.extension import Extension
from fitcalc.fit.result import Result
from fitcalc.fit.rework import Fit
from fitcalc.posture.cases import xyz
from fitcalc.posture.seat import carried
from fitcalc.present.bar_record import BarRecord, bar_record
from fitcalc.present.joints import angles_of, joints_of
from fitcalc.present.parts import Record
from fitcalc.present.wording import CAUTIONS
from fitcalc.units import Floats

Place = tuple[float, float, float]


class BodyRow(Record):
    """One body dimension, mm (mass in kg); the interval holds 90 %."""

    name: str
    value: float
    low: float
    high: float
    measured: bool


class CarRecord(Record):
    """Which car was calculated."""

    name: str
    rules: str = Field(description="The limit set it was checked against.")


class DriverRecord(Record):
    """Which driver was calculated, and what was taken for the body."""

    name: str
    stature: float
    body: list[BodyRow]
    flags: list[str] = Field(
        description="Measurements that do not go together, and estimates beyond the survey."
    )


class MountRecord(Record):
    """One seat mount, as found and after the rework, mm."""

    found: Place
    after: Place


class SeatRecord(Record):
    """What is done to the seat. Travel: mm along the rail, positive forward. Recline: deg, positive further back."""

    travel: float
    holes: int | None = Field(description="Holes of a drilled rail; null for other rails.")
    raised: float
    recline: float
    dx: float = Field(description="Movement of the mounts, positive rearward.")
    dz: float = Field(description="Movement of the mounts, positive upward.")
    mounts: list[MountRecord]


class ExtensionRecord(Record):
    """What a pedal needs, mm."""

    stand_off: float
    longer_arm: float
    enough: bool = Field(description="The leg is bent enough with it.")
    too_near: bool = Field(description="The knee is bent more than wished already without it.")


class PedalRecord(Record):
    """What is done to one pedal and what follows; lengths in mm, ratio = pad force over rod force."""

    stand_off: float
    longer_arm: float
    shift: Place = Field(description="Movement of the pad's centre at rest: x rearward, y right, z up.")
    pad_travel_found: float
    pad_travel: float
    foot_force_factor: float = Field(description="Foot force after over foot force as found, same work done.")
    ratio_rest: float | None
    ratio_mean: float | None
    ratio_full: float | None
    cylinder_stroke: float | None
    cylinder_stroke_left: float | None
    cable_pull: float | None
    foot_at_rest: Literal["heel down", "sole flat"]
    foot_pressed: Literal["heel down", "sole flat"]
    needed_with_seat_as_found: ExtensionRecord | None
    bar: BarRecord | None = Field(description="What to make; null where the pedal stays as found.")


class CheckRecord(Record):
    """One figure against one limit. `margin` is the distance to the nearer bound, negative when it is broken."""

    id: str
    label: str
    value: float | None
    unit: str
    low: float | None
    high: float | None
    recommended_low: float | None
    recommended_high: float | None
    margin: float | None
    status: Status
    rules: str
    source: str
    remedy: str


class TickRecord(Record):
    """A rule that geometry cannot judge: to be ticked by hand."""

    rules: str
    text: str
    source: str


class FigureRecord(Record):
    """One figure that no limit bounds, for information."""

    id: str
    label: str
    value: float | None
    unit: str


class FoundRecord(Record):
    """How the driver sits before anything is changed."""

    joints: dict[str, Place]
    angles: dict[str, float]
    checks: list[CheckRecord]


class ResultRecord(Record):
    """Everything about one driver in one car with one rework. Frame: x rearward, y right, z up; mm, deg, kg."""

    format: Literal[1] = 1
    command: Literal["check", "fit"]
    car: CarRecord
    driver: DriverRecord
    setup: Setup
    joints: dict[str, Place]
    angles: dict[str, float]
    seat: SeatRecord
    pedals: dict[str, PedalRecord]
    checks: list[CheckRecord]
    figures: list[FigureRecord] = Field(description="Measured, and bounded by no limit of the chosen sets.")
    checklist: list[TickRecord] = Field(description="Rules of the set that geometry cannot judge.")
    as_found: FoundRecord | None = Field(description="Only after `fit`.")
    cautions: list[str]


def check_record(result: Result) -> ResultRecord:
    """The record of one result."""
    return _record("check", result, {}, None)


def fit_record(fit: Fit) -> ResultRecord:
    """The record of a fit: the result after the rework, with how the driver sat as found."""
    found = FoundRecord(
        joints=_places(joints_of(fit.found.sitting)),
        angles=_numbers(angles_of(fit.found.sitting)),
        checks=check_rows(fit.found),
    )
    return _record("fit", fit.after, fit.with_seat_as_found, found)


def check_rows(result: Result) -> list[CheckRecord]:
    """Every check of the first case, worst first."""
    return [_check(check) for check in result.worst_first()]


def _record(
    command: Literal["check", "fit"],
    result: Result,
    needed: Mapping[str, Extension],
    found: FoundRecord | None,
) -> ResultRecord:
    return ResultRecord(
        command=command,
        car=CarRecord(name=result.car.name, rules=result.rules.id),
        driver=_driver(result),
        setup=result.setup,
        joints=_places(joints_of(result.sitting)),
        angles=_numbers(angles_of(result.sitting)),
        seat=_seat(result),
        pedals={name: _pedal(name, result, needed.get(name)) for name in result.work},
        checks=check_rows(result),
        figures=[_figure(figure) for figure in result.unlimited()],
        checklist=[_tick(tick) for tick in checklist(result.rules, workshop_limits())],
        as_found=found,
        cautions=list(CAUTIONS),
    )


def _driver(result: Result) -> DriverRecord:
    body = estimate(result.driver)
    rows = zip(body.names, body.mean, body.low, body.high, body.measured, strict=True)
    return DriverRecord(
        name=result.driver.name,
        stature=result.driver.measurements.stature,
        body=[BodyRow(name=n, value=v, low=a, high=b, measured=bool(m)) for n, v, a, b, m in rows],
        flags=list(body.remarks),
    )


def _seat(result: Result) -> SeatRecord:
    rails, setup = result.car.rails, result.setup
    mounts = [(xyz(mount), carried(xyz(mount), result.car, setup)) for mount in result.car.seat.mounts]
    shift = (mounts[0][1] - mounts[0][0])[0]
    return SeatRecord(
        travel=setup.seat_travel,
        holes=round(setup.seat_travel / rails.hole_pitch) if rails.kind == "drilled" else None,
        raised=setup.seat_raise,
        recline=setup.recline,
        dx=shift[0],
        dz=shift[2],
        mounts=[MountRecord(found=_place(found), after=_place(after)) for found, after in mounts],
    )


def _pedal(name: str, result: Result, needed: Extension | None) -> PedalRecord:
    rework, work, at = getattr(result.setup, name), result.work[name], result.sitting.pedals[name]
    cylinder, cable = work.cylinder, work.cable
    return PedalRecord(
        stand_off=rework.stand_off,
        longer_arm=rework.longer_arm,
        shift=_place(work.shift),
        pad_travel_found=work.pad_travel_found[0],
        pad_travel=work.pad_travel[0],
        foot_force_factor=work.force_factor[0],
        ratio_rest=None if cylinder is None else cylinder.ratio_rest[0],
        ratio_mean=None if cylinder is None else cylinder.ratio_mean[0],
        ratio_full=None if cylinder is None else cylinder.ratio_full[0],
        cylinder_stroke=None if cylinder is None else cylinder.stroke[0],
        cylinder_stroke_left=None if cylinder is None else cylinder.stroke_left[0],
        cable_pull=None if cable is None else cable.pull[0],
        foot_at_rest="heel down" if at.rest.foot.grounded[0] else "sole flat",
        foot_pressed="heel down" if at.full.foot.grounded[0] else "sole flat",
        needed_with_seat_as_found=None if needed is None else _extension(needed),
        bar=bar_record(name, result),
    )


def _extension(needed: Extension) -> ExtensionRecord:
    return ExtensionRecord(
        stand_off=needed.stand_off[0],
        longer_arm=needed.longer_arm[0],
        enough=bool(needed.enough[0]),
        too_near=bool(needed.too_near[0]),
    )


def _check(check: Check) -> CheckRecord:
    figure = check.figure
    return CheckRecord(
        id=check.id,
        label=check.label,
        value=_first(figure.value),
        unit=figure.unit,
        low=_first(check.low),
        high=_first(check.high),
        recommended_low=_first(check.recommended_low),
        recommended_high=_first(check.recommended_high),
        margin=_first(check.margin),
        status=check.status,
        rules=check.rules,
        source="" if check.source is None else str(check.source),
        remedy=check.remedy,
    )


def _figure(figure: Figure) -> FigureRecord:
    return FigureRecord(id=figure.id, label=figure.label, value=_first(figure.value), unit=figure.unit)


def _tick(tick: Tick) -> TickRecord:
    return TickRecord(rules=tick.rules, text=tick.rule.text, source=str(tick.rule.source))


def _first(value: Floats | float | None) -> float | None:
    return None if value is None else float(np.ravel(value)[0])


def _place(point: Floats) -> Place:
    x, y, z = (float(value) for value in np.round(point[0], 3))
    return x, y, z


def _places(joints: Mapping[str, Floats]) -> dict[str, Place]:
    return {name: _place(point) for name, point in joints.items()}


def _numbers(angles: Mapping[str, Floats]) -> dict[str, float]:
    return {name: float(np.round(value[0], 3)) for name, value in angles.items()}
