"""The bars that extend one pedal: what the foot does to them, how long they are cut, which mix keeps the ratio."""

from typing import Literal

import numpy as np

from fitcalc.documents.car_pedals import Bar, Pedal
from fitcalc.documents.setup import PedalRework
from fitcalc.geometry.degrees import atan2d, unit
from fitcalc.geometry.side import at_y, dot
from fitcalc.making.bar_check import BarJob
from fitcalc.making.bar_loads import FootForce, Reach
from fitcalc.making.bolts import Grade, bolt
from fitcalc.making.extension import Mix, mix_for_reach, slide
from fitcalc.making.joints import Bolted, Joint, Welded
from fitcalc.making.loads import SIDEWAYS, STEEL_SAFETY, WELDED_ALLOY_SAFETY, design_load
from fitcalc.making.materials import material
from fitcalc.making.pedal_motion import pad_contact
from fitcalc.making.pedal_work import motion
from fitcalc.making.stock import bar_section
from fitcalc.posture.cases import column
from fitcalc.posture.pads import arm_normal
from fitcalc.posture.sit import OnPedal
from fitcalc.units import Bools, Deg, Floats, Mm

GRADE: Grade = "8.8"
"""Property class that bolts of pedals and seats are taken as: common practice, no source."""

BOLTS: Literal[2] = 2
"""Bolts of a lap joint, as the car file gives their pitch."""

THICKEST_WELD = 6.0
"""Leg of a fillet weld, mm, where the bar is thicker than that: common practice, no source."""

BALL_OFF_MIDDLE = 0.25
"""The ball of the foot may stand off the pad's middle by this share of its height: design inference, no source."""


def extended(rework: PedalRework) -> Bools:
    """Where a bar is needed, `(n,)`."""
    return (column(rework.stand_off) > 0.0) | (column(rework.longer_arm) > 0.0)


def bar_job(name: str, pedal: Pedal, rework: PedalRework, worked: OnPedal) -> BarJob:
    """The bars of one pedal at the stop, with the foot's design load along the line from hip to ball of foot."""
    bar, lean = pedal.bar, foot_lean(pedal, worked)
    return BarJob(
        foot=FootForce(np.full_like(lean, design_load(name).force), lean, np.full_like(lean, SIDEWAYS)),
        reach=_reach(pedal, rework),
        section=bar_section(bar.shape, column(bar.depth), column(bar.thickness)),
        material=material(bar.material),
        joint=joint_of(bar),
    )


def foot_lean(pedal: Pedal, worked: OnPedal) -> Deg:
    """Lean of the foot force off the arm's normal at the stop, positive toward the arm's free end.

    Source: design inference; the leg pushes along the line from hip joint to ball of foot.
    """
    leg, pad = worked.full, worked.full_pad
    push = at_y(leg.foot.ball - leg.hip, np.zeros(len(leg.hip)))
    return atan2d(dot(push, pad.arm), -dot(push, arm_normal(pad, pedal)))


def joint_of(bar: Bar) -> Joint:
    """How the bar meets the old arm: two bolts, or a fillet weld all round with legs as thick as the bar."""
    if bar.joint == "welded":
        return Welded(np.minimum(column(bar.thickness), THICKEST_WELD))
    return Bolted(bolt(bar.bolt), GRADE, BOLTS, column(bar.bolt_pitch), column(bar.edge))


def cut_length(extension: Mm, bar: Bar) -> Mm:
    """Length to cut: a bolted bar also laps the old arm with both bolts and an edge beyond each."""
    return np.where(extension > 0.0, extension + lap(bar), 0.0)


def lap(bar: Bar) -> Mm:
    """How far a bar lies on the old arm."""
    if bar.joint == "welded":
        return column(0.0)
    return (BOLTS - 1) * column(bar.bolt_pitch) + 2.0 * column(bar.edge)


def wanted_safety(bar: Bar) -> float:
    """Factor of safety to aim for; common practice, no source."""
    alloy = not material(bar.material).keeps_temper
    return WELDED_ALLOY_SAFETY if alloy and bar.joint == "welded" else STEEL_SAFETY


def mix_in_band(pedal: Pedal, rework: PedalRework, worked: OnPedal, band: Floats) -> tuple[Mix, Mm]:
    """The mix that brings the pad as near as the rework does, with the ratio changed by at most `band`.

    Args:
        pedal: as found.
        rework: what brings the pad nearer now.
        worked: the pedal with its leg.
        band: share of the ratio as found, as in 0.1.

    Returns:
        The mix, its stand-off square to the arm, and the reach asked of it, from pad to hip.
    """
    found, after = motion(pedal, PedalRework()), motion(pedal, rework)
    leg = worked.rest
    toward = unit(at_y(leg.hip - leg.foot.ball, np.zeros(len(leg.hip))))[:, [0, 2]]
    moved = pad_contact(after, after.rest[:, None]) - pad_contact(found, found.rest[:, None])
    reach = np.sum(moved[:, 0] * toward, axis=-1)
    room = column(pedal.max_longer_arm), column(pedal.max_stand_off)
    return mix_for_reach(found, toward, reach, 1.0 + band, *room), reach


def _reach(pedal: Pedal, rework: PedalRework) -> Reach:
    """Root to pad of both bars: a bolted one is held at its first bolt, an edge distance inside the old arm."""
    inside = column(pedal.bar.edge) if pedal.bar.joint == "bolted" else column(0.0)
    longer, stand_off = (
        np.where(size > 0.0, size + inside, 0.0)
        for size in (column(rework.longer_arm), column(rework.stand_off))
    )
    off = np.maximum(np.abs(slide(motion(pedal, rework))), BALL_OFF_MIDDLE * column(pedal.pad_height))
    return Reach(*np.broadcast_arrays(longer, stand_off, off))
