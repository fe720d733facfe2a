"""Every check there is: what is measured on a case, in reading order."""

from collections.abc import Callable, Iterable

from fitcalc.checks.balance_figures import balance_figures
from fitcalc.checks.bar_figures import bar_figures
from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.cleats import cleat_figures
from fitcalc.checks.feet import feet_figures
from fitcalc.checks.harness import harness_figures
from fitcalc.checks.head import head_figures
from fitcalc.checks.knees import knee_figures
from fitcalc.checks.mirrors import mirror_figures
from fitcalc.checks.opening import opening_figures
from fitcalc.checks.pad_heights import pad_height_figures
from fitcalc.checks.pedal_figures import pedal_figures
from fitcalc.checks.posture_figures import leg_figures, posture_figures
from fitcalc.checks.reach import reach_figures
from fitcalc.checks.seat import seat_figures
from fitcalc.checks.seat_mount_figures import seat_mount_figures
from fitcalc.checks.sight import sight_figures
from fitcalc.checks.template import template_figures
from fitcalc.checks.wheel import wheel_figures

Measure = Callable[[Case], list[Figure]]
"""What measures some of a case's figures."""
MEASURES: tuple[Measure, ...] = (
    posture_figures,
    leg_figures,
    head_figures,
    harness_figures,
    wheel_figures,
    knee_figures,
    feet_figures,
    cleat_figures,
    pad_height_figures,
    pedal_figures,
    bar_figures,
    reach_figures,
    sight_figures,
    mirror_figures,
    seat_figures,
    seat_mount_figures,
    opening_figures,
    template_figures,
    balance_figures,
)


SWEPT: tuple[Measure, ...] = (wheel_figures, knee_figures, cleat_figures)
"""Clearances of what moves, looked at in several places of pedals and hands: no closed form gives them."""
CLOSED_FORM: tuple[Measure, ...] = tuple(measure for measure in MEASURES if measure not in SWEPT)
"""All others, which follow from the joints by formulas."""


def figures_of(case: Case, measures: Iterable[Measure] = MEASURES) -> list[Figure]:
    """The figures of a case, all of them or those of some measures."""
    return [figure for measure in measures for figure in measure(case)]
