"""The bars that extend a pedal, as part of a JSON record."""

from pydantic import Field

from fitcalc.documents.car_pedals import Bar
from fitcalc.documents.setup import PedalRework
from fitcalc.fit.result import Result
from fitcalc.making.bar_check import check_bar
from fitcalc.making.bolts import bolt
from fitcalc.making.joints import Welded
from fitcalc.making.loads import design_load
from fitcalc.making.materials import material
from fitcalc.making.pedal_bars import (
    BOLTS,
    GRADE,
    bar_job,
    cut_length,
    extended,
    joint_of,
    lap,
    wanted_safety,
)
from fitcalc.making.stock import stock_name
from fitcalc.posture.cases import column
from fitcalc.present.parts import Record


class BarRecord(Record):
    """The bar or bars to make for one pedal; lengths in mm, 0 where there is no such bar."""

    cut_stand_off: float = Field(description="Length to cut of the bar that stands the pad off.")
    cut_longer_arm: float = Field(description="Length to cut of the bar that runs on along the arm.")
    section: str
    material: str
    joint: str
    holes: str = Field(description="In each bar, at the end that meets the old arm; empty when welded.")
    design_load: float = Field(description="On the pad, N.")
    safety: float = Field(description="Least factor of safety of all modes.")
    wanted: float = Field(description="Factor of safety to aim for.")
    governing: str = Field(description="Mode with the least factor of safety.")
    governing_source: str = Field(description="Method or clause behind it.")
    deflection: float = Field(description="Give of the pad at the design load, mm, upper bound.")
    advice: list[str]


def bar_record(name: str, result: Result) -> BarRecord | None:
    """The bars of one pedal of the first case; None where it stays as found."""
    pedal, rework = result.car.fitted_pedals()[name], getattr(result.setup, name)
    if not extended(rework)[0]:
        return None
    job = bar_job(name, pedal, rework, result.sitting.pedals[name])
    check, bar = check_bar(job), pedal.bar
    governing = check.modes[check.governing[0]]
    return BarRecord(
        cut_stand_off=cut_length(column(rework.stand_off), bar)[0],
        cut_longer_arm=cut_length(column(rework.longer_arm), bar)[0],
        section=stock_name(bar.shape, bar.depth, bar.thickness),
        material=f"{bar.material} ({material(bar.material).standard})",
        joint=joint_text(bar),
        holes=holes_text(bar),
        design_load=job.foot.force[0],
        safety=check.safety[0],
        wanted=wanted_safety(bar),
        governing=governing.name,
        governing_source=governing.source,
        deflection=check.deflection[0],
        advice=[_load_advice(name), *check.advice, *_lap_advice(bar, rework)],
    )


def joint_text(bar: Bar) -> str:
    """The joint in words."""
    joint = joint_of(bar)
    if isinstance(joint, Welded):
        return f"fillet weld all round, leg {joint.leg[0]:g} mm"
    return f"{BOLTS} x {bar.bolt} {GRADE}, through the width"


def holes_text(bar: Bar) -> str:
    """The holes to drill."""
    if bar.joint == "welded":
        return ""
    return f"{BOLTS} x {bolt(bar.bolt).hole:g} mm, {bar.edge:g} mm from the end, {bar.bolt_pitch:g} mm apart"


def _load_advice(name: str) -> str:
    load = design_load(name)
    return f"Design load of {load.force:g} N on the {name} pedal: {load.meaning} ({load.source})."


def _lap_advice(bar: Bar, rework: PedalRework) -> list[str]:
    if bar.joint == "welded" or rework.stand_off == 0.0:
        return []
    return [
        f"A bolted stand-off bar lies {lap(bar)[0]:g} mm on the old arm, across it: where the arm is narrower, "
        "bolt both to a plate of at least the same thickness, or weld the bar."
    ]
