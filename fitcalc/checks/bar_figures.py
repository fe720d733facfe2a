"""Whether the bars that extend the pedals hold, and how far they give."""

from dataclasses import replace

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured
from fitcalc.making.bar_check import check_bar
from fitcalc.making.pedal_bars import bar_job, is_extended


def bar_figures(case: Case) -> list[Figure]:
    """Factor of safety and deflection of each pedal that is extended; nothing for a pedal as found."""
    return [
        figure
        for name in case.sitting.pedals
        if is_extended(getattr(case.setup, name))
        for figure in _bar(case, name)
    ]


def _bar(case: Case, name: str) -> list[Figure]:
    pedal, rework, worked = case.car.fitted_pedals()[name], getattr(case.setup, name), case.sitting.pedals[name]
    check = check_bar(bar_job(name, pedal, rework, worked))
    points = (worked.rest_pad.pivot, worked.rest_pad.centre)
    key = "pedal.brake_bar_safety" if name == "brake" else "pedal.bar_safety"
    safety = measured(case, f"pedal.{name}.bar_safety", check.safety, points, key, name)
    governs = check.modes[check.governing[0]].name
    return [
        replace(safety, label=f"{safety.label} ({governs})"),
        measured(case, f"pedal.{name}.bar_deflection", check.deflection, points, "pedal.bar_deflection", name),
    ]
