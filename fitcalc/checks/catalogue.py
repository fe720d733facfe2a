"""Every check there is: what is measured on a case, in reading order."""

from collections.abc import Callable

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.harness import harness_figures

MEASURES: tuple[Callable[[Case], list[Figure]], ...] = (harness_figures,)


def figures_of(case: Case) -> list[Figure]:
    """All figures of a case."""
    return [figure for measure in MEASURES for figure in measure(case)]
