"""Pad heights against the foot, and brake against throttle for heel and toe."""

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured
from fitcalc.geometry.lines import height_at
from fitcalc.geometry.side import dot, scaled
from fitcalc.posture.cases import column
from fitcalc.posture.foot import floor_line, heel_to_ball
from fitcalc.posture.pads import pad_at

BRAKING_DEPTH = 0.5
"""Part of the brake's travel where it is pressed hard: design inference, no source."""


def pad_height_figures(case: Case) -> list[Figure]:
    """Heights of the pads."""
    return [*(_height(case, name) for name in case.sitting.pedals), *_heel_and_toe(case)]


def _height(case: Case, name: str) -> Figure:
    pad = case.sitting.pedals[name].rest_pad
    heel = pad.centre - scaled(pad.up, heel_to_ball(case.links))
    above = heel[:, 2] - height_at(heel[:, 0], floor_line(case.car))
    return measured(case, f"height.{name}.pad", above, (heel, pad.centre), "height.pad", name)


def _heel_and_toe(case: Case) -> list[Figure]:
    setup = case.setup
    brake = pad_at(case.car.pedals.brake, setup.brake, column(setup.box_travel), BRAKING_DEPTH)
    throttle = case.sitting.pedals["throttle"].rest_pad
    apart = brake.centre - throttle.centre
    points = (throttle.centre, brake.centre)
    return [
        measured(case, "height.heel_toe_step", dot(apart, throttle.normal), points),
        measured(case, "height.heel_toe_height", apart[:, 2], points),
    ]
