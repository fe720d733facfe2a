"""Pedals at work: travel, ratio, stroke, line pressure, release, cable and throttle stop."""

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, unmeasured
from fitcalc.making.actuation import CableWork, CylinderWork
from fitcalc.making.pedal_work import PedalWork, pedal_work
from fitcalc.posture.cases import column
from fitcalc.units import Floats


def pedal_figures(case: Case) -> list[Figure]:
    """What each pedal does from rest to its stop."""
    return [figure for name in case.sitting.pedals for figure in _one_pedal(case, name)]


def _one_pedal(case: Case, name: str) -> list[Figure]:
    rework, box = getattr(case.setup, name), column(case.setup.box_travel)
    work = pedal_work(case.car.fitted_pedals()[name], rework, box)
    values = _arm_values(work) | _cylinder_values(work.cylinder) | _cable_values(work.cable)
    figures = [_figure(case, name, key, value) for key, value in values.items()]
    if work.cylinder is None and work.cable is None:
        works = "cable" if name == "throttle" else "cylinder"
        figures.append(unmeasured(f"pedal.{name}.ratio", f"pedals.{name}.{works}", _key(name, "ratio"), name))
    return figures


def _arm_values(work: PedalWork) -> dict[str, Floats]:
    return {"travel": work.pad_travel, "ratio_change": work.ratio_change, "slide": work.slide}


def _cylinder_values(work: CylinderWork | None) -> dict[str, Floats]:
    if work is None:
        return {}
    always = {"ratio": work.ratio_mean, "stroke_left": work.stroke_left, "rod_angle": work.off_square}
    if work.release_left is not None:
        return always | {"release_left": work.release_left}
    if work.rear_pressure is None:
        return always | {"line_pressure": work.pressure}
    return always | {"front_pressure": work.pressure, "rear_pressure": work.rear_pressure}


def _cable_values(work: CableWork | None) -> dict[str, Floats]:
    return {} if work is None else {"pull_left": work.pull_left, "stop_error": work.stop_error}


def _figure(case: Case, name: str, key: str, value: Floats) -> Figure:
    worked = case.sitting.pedals[name]
    ends = (worked.rest_pad.centre, worked.full_pad.centre)
    return measured(case, f"pedal.{name}.{key}", value, ends, _key(name, key), name)


def _key(name: str, key: str) -> str:
    return "pedal.brake_ratio" if (name, key) == ("brake", "ratio") else f"pedal.{key}"
