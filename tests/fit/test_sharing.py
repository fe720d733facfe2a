"""Several drivers in one car, and who of the population fits it."""

import numpy as np
import pytest

from fitcalc.body.survey import mean_of
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.coverage import coverage, population
from fitcalc.fit.shared import QUICK, share

STUDENT = load_car(sample_path("student"))
ROBIN, OTTO = (load_driver(sample_path(name)) for name in ("robin", "otto"))


@pytest.fixture(scope="module")
def both():
    return share(STUDENT, [ROBIN, OTTO])


def test_drivers_share_all_but_the_quick_changes(both):
    first, second = (setup.model_dump(exclude=set(QUICK)) for setup in both.setups)
    assert first == second
    assert both.setups[0].box_travel != both.setups[1].box_travel


def test_compromise_is_told_for_each_driver(both):
    assert len(both.lacking) == 2
    assert both.fits_all == (max(both.lacking) <= 0.0)


def test_shared_search_can_be_stopped():
    assert not share(STUDENT, [ROBIN], progress=lambda done: False).complete


@pytest.mark.parametrize("sex", ["female", "male"])
def test_population_has_the_survey_s_mean(sex):
    """2000 bodies: the mean of 65 mm of spread stands within 4.5 mm (three standard errors)."""
    assert np.mean(population(sex, 2_000, 1)["stature"]) == pytest.approx(mean_of(sex, "stature"), abs=4.5)


def test_coverage_counts_add_up():
    found = coverage(STUDENT, "male", count=60)
    assert found.fits == pytest.approx(np.mean(found.fitting))
    assert all(each.alone <= each.share <= 1.0 - found.fits for each in found.turned_away)


def test_nobody_fits_below_a_hoop_that_is_too_low():
    low = STUDENT.hoops.model_copy(
        update={"main_top": STUDENT.hoops.main_top.model_copy(update={"z": 700.0})}
    )
    found = coverage(STUDENT.model_copy(update={"hoops": low}), "male", count=30)
    assert found.fits == 0.0
    assert "head.hoop_line" in {each.check for each in found.turned_away if each.share == 1.0}


def test_stopped_coverage_says_so():
    stopped = coverage(STUDENT, "male", count=1_000, progress=lambda done: False)
    assert not stopped.complete
    assert stopped.bodies < 1_000
