"""Whether the bars that extend the pedals hold, and how far they give."""

from dataclasses import replace

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured
from fitcalc.making.bar_check import check_bar
from fitcalc.making.pedal_bars import bar_job, extended


def bar_figures(case: Case) -> list[Figure]:
    """Factor of safety and deflection of each pedal that is extended; nothing for a pedal as found."""
    return [
        figure
        for name in case.sitting.pedals
        if np.any(extended(getattr(case.setup, name)))
        for figure in _bar(case, name)
    ]


def _bar(case: Case, name: str) -> list[Figure]:
    pedal, rework, worked = (
        case.car.fitted_pedals()[name],
        getattr(case.setup, name),
        case.sitting.pedals[name],
    )
    check = check_bar(bar_job(name, pedal, rework, worked))
    points = (worked.rest_pad.pivot, worked.rest_pad.centre)
    key = "pedal.brake_bar_safety" if name == "brake" else "pedal.bar_safety"
    figures = [
        measured(case, f"pedal.{name}.bar_safety", check.safety, points, key, name),
        measured(
            case, f"pedal.{name}.bar_deflection", check.deflection, points, "pedal.bar_deflection", name
        ),
    ]
    without = np.broadcast_to(~extended(rework), (case.count,))
    return [replace(figure, absent=without) for figure in figures]
