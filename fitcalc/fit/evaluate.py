"""The whole calculation on one screen: links, joints, pedals, figures, checks."""

from collections.abc import Sequence

import numpy as np

from fitcalc.body.links import Links, links_for
from fitcalc.checks.case import Case
from fitcalc.checks.catalogue import MEASURES, Measure, figures_of
from fitcalc.checks.check import Figure
from fitcalc.checks.judge import is_reclined, judge
from fitcalc.checks.limits import load_limit_set, workshop_limits
from fitcalc.checks.posture_limits import with_posture
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.fit.result import Result
from fitcalc.making.pedal_work import pedal_work
from fitcalc.posture.cases import column
from fitcalc.posture.sit import sit

AS_FOUND = Setup()


def evaluate(
    car: Car,
    driver: Driver,
    setup: Setup = AS_FOUND,
    rules: str | None = None,
    links: Links | None = None,
    measures: Sequence[Measure] = MEASURES,
) -> Result:
    """Measure and judge one driver in one car with one rework, or many cases of them in one call.

    Args:
        car: as found; any number may be an array over cases (`posture.cases.spread`).
        driver: whose kit and wishes count, and whose body where `links` is not given.
        setup: the rework; any number may be an array over cases.
        rules: id of the limit set, or path of the user's own; the car's own set when None.
        links: one body per case, in place of the driver's own.
        measures: which figures; `checks.catalogue.CLOSED_FORM` leaves out the clearances of what moves, which
            take half the time.
    """
    body = links_for(driver) if links is None else links
    chosen = load_limit_set(rules or car.rules)
    case = Case(car, driver, body, setup, sit(car, body, setup))
    figures = figures_of(case, measures)
    _require_finite(figures)
    work = {
        name: pedal_work(pedal, getattr(setup, name), column(setup.box_travel))
        for name, pedal in car.fitted_pedals().items()
    }
    checks = judge(figures, chosen, with_posture(workshop_limits(), driver), is_reclined(case))
    return Result(car, driver, body, setup, chosen, case.sitting, work, tuple(figures), checks)


def _require_finite(figures: list[Figure]) -> None:
    """NaN and infinity never leave: a figure that is neither is a bug, and is named."""
    for figure in figures:
        if figure.value is not None and not np.all(np.isfinite(figure.value)):
            raise ArithmeticError(f"{figure.id} is not finite")
