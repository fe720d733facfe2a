"""One call for many cases gives what one call each gives, and any valid car gives finite figures."""

from dataclasses import fields

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from fitcalc.body.links import Links, links_for
from fitcalc.checks.balance_figures import balance_figures
from fitcalc.checks.bar_figures import bar_figures
from fitcalc.checks.case import Case
from fitcalc.checks.cleats import cleat_figures
from fitcalc.checks.feet import feet_figures
from fitcalc.checks.head import head_figures
from fitcalc.checks.knees import knee_figures
from fitcalc.checks.opening import opening_figures
from fitcalc.checks.pad_heights import pad_height_figures
from fitcalc.checks.pedal_figures import pedal_figures
from fitcalc.checks.posture_figures import leg_figures, posture_figures
from fitcalc.checks.quantities import quantities
from fitcalc.checks.reach import reach_figures
from fitcalc.checks.seat import seat_figures
from fitcalc.checks.seat_mount_figures import seat_mount_figures
from fitcalc.checks.sight import sight_figures
from fitcalc.checks.template import template_figures
from fitcalc.checks.wheel import wheel_figures
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_driver
from fitcalc.posture.cases import spread
from fitcalc.posture.sit import sit
from tests import strategies
from tests.checks.cockpits import car

MEASURES = (
    balance_figures,
    bar_figures,
    cleat_figures,
    feet_figures,
    head_figures,
    knee_figures,
    opening_figures,
    pad_height_figures,
    pedal_figures,
    posture_figures,
    leg_figures,
    reach_figures,
    seat_figures,
    seat_mount_figures,
    sight_figures,
    template_figures,
    wheel_figures,
)
PATHS = (
    "seat.junction.x",
    "pedals.brake.arm",
    "pedals.clutch.pad_y",
    "footwell.obstacles.0.centre.x",
    "footwell.obstacles.1.outline.2.0",
    "footwell.bulkhead",
    "steering_wheel.centre.z",
    "steering_wheel.lock",
    "hoops.main_top.z",
    "head_restraint.x",
    "cockpit.side_half_width",
    "reference.ground",
    "reference.rear_axle_load",
)
SHIFTS = np.array([0.0, 7.0, -11.0])
DRIVERS = ("robin", "otto", "magnus")


def case_of(chassis, links, setup):
    return Case(chassis, load_driver(sample_path("robin")), links, setup, sit(chassis, links, setup))


def moved(chassis, shift):
    places = {path: _value(chassis, path) + shift for path in PATHS}
    return spread(chassis, places)


def _value(node, path):
    for step in path.split("."):
        node = node[int(step)] if step.isdigit() else getattr(node, step)
    return node


def stacked(bodies):
    names = [field.name for field in fields(Links)]
    return Links(**{name: np.concatenate([getattr(body, name) for body in bodies]) for name in names})


@pytest.mark.parametrize("measure", MEASURES)
def test_many_cases_in_one_call_equal_one_call_each(measure):
    chassis, travels = car(), np.array([0.0, 20.0, -15.0])
    bodies = [links_for(load_driver(sample_path(name))) for name in DRIVERS]
    boxes = np.array([0.0, 15.0, 30.0])
    setup = spread(Setup(), {"seat_travel": travels, "box_travel": boxes})
    together = measure(case_of(moved(chassis, SHIFTS), stacked(bodies), setup))
    for at, body in enumerate(bodies):
        own = spread(Setup(), {"seat_travel": travels[[at]], "box_travel": boxes[[at]]})
        alone = measure(case_of(moved(chassis, SHIFTS[[at]]), body, own))
        present = [figure for figure in together if figure.absent is None or not figure.absent[at]]
        for many, one in zip(present, alone, strict=True):
            assert many.value.shape == (3,), many.id
            assert many.value[at] == pytest.approx(one.value[0], abs=1e-9), many.id
            assert all(place.shape == (3, 3) for place in many.evidence), many.id


@settings(max_examples=15, suppress_health_check=list(HealthCheck))
@given(strategies.cars(), strategies.setups(), st.sampled_from(DRIVERS))
def test_any_valid_car_gives_finite_figures_of_known_quantities(chassis, setup, driver):
    case = case_of(chassis, links_for(load_driver(sample_path(driver))), setup)
    figures = [figure for measure in MEASURES for figure in measure(case)]
    assert len({figure.id for figure in figures}) == len(figures)
    for figure in figures:
        assert figure.unit == quantities()[figure.quantity].unit
        assert (figure.value is None) == bool(figure.missing), figure.id
        assert figure.value is None or np.all(np.isfinite(figure.value)), figure.id


def test_cases_are_those_of_whatever_has_most():
    """Car, body or rework alone may be of several cases."""
    robin = links_for(load_driver(sample_path("robin")))
    bodies = stacked([links_for(load_driver(sample_path(name))) for name in DRIVERS])
    higher = spread(car(), {"seat.junction.z": 60.0 + SHIFTS})
    further = spread(Setup(), {"seat_travel": SHIFTS})
    found = [case_of(*each).count for each in ((higher, robin, Setup()), (car(), bodies, Setup()))]
    assert [*found, case_of(car(), robin, further).count, case_of(car(), robin, Setup()).count] == [
        3,
        3,
        3,
        1,
    ]
