"""Several drivers in one car, and who of the population fits it."""

import numpy as np
import pytest

from fitcalc.body.survey import mean_of
from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.effort import Change, Effort
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.cases import crossed, setup_of
from fitcalc.fit.coverage import coverage, population
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.problem import problem_of
from fitcalc.fit.shared import QUICK, share
from fitcalc.fit.sweep import shortfall
from fitcalc.fit.variables import variables_for

STUDENT = load_car(sample_path("student"))
ROBIN, OTTO = (load_driver(sample_path(name)) for name in ("robin", "otto"))
STAYS = Change(low=0.0, high=0.0)


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


@pytest.fixture(scope="module")
def lent():
    """A short and a tall driver in a car whose pedal box comes only 20 mm nearer; two things may be built in."""
    pedals = STUDENT.pedals.model_copy(update={"box_rearward": 20.0})
    car = STUDENT.model_copy(update={"pedals": pedals, "head_restraint": None})
    effort = Effort(
        seat_raise=Change(low=0.0, step=15.0),
        shoulder_anchor_raise=STAYS,
        wheel_spacer=STAYS,
        stand_off=STAYS,
        longer_arm=STAYS,
        cushion_insert=Change(step=20.0),
        back_insert=Change(step=20.0),
    )
    drivers = [Driver(name=str(tall), measurements=Measurements(stature=tall)) for tall in (1705.0, 1750.0)]
    return car, drivers, effort


def with_inserts(car, cushion, back):
    return car.model_copy(
        update={"seat": car.seat.model_copy(update={"cushion_insert_max": cushion, "back_insert_max": back})}
    )


def test_shorter_driver_passes_with_an_insert_only(lent):
    car, drivers, effort = lent
    alone = [share(car, [each], effort=effort).fits_all for each in drivers]
    found = share(with_inserts(car, 40.0, 60.0), drivers, effort=effort)
    short, tall = found.setups
    assert (alone, found.fits_all) == ([False, True], True)
    assert short.back_insert > 0.0
    assert tall.back_insert == 0.0
    assert (short.seat_raise, short.recline) == (tall.seat_raise, tall.recline)


@pytest.mark.parametrize(("cushion", "back"), [(40.0, 60.0), (0.0, 20.0), (20.0, 0.0)])
def test_inserts_are_as_good_as_any_on_the_whole_grid(lent, cushion, back):
    """Every place of seat, box and inserts, each by the plain evaluation: nothing lacks less, nor is built for less."""
    car, drivers, effort = with_inserts(lent[0], cushion, back), lent[1], lent[2]
    grid = crossed({each.path: each.places() for each in variables_for(car, effort)})
    lacking = [lacks_of(problem_of(car, each, effort=effort), grid) for each in drivers]
    built = grid["seat_raise"]
    best = {height: [each[built == height].min() for each in lacking] for height in np.unique(built)}
    found = share(car, drivers, effort=effort)
    assert sum(found.lacking) == pytest.approx(min(map(sum, best.values())), abs=1e-5)
    assert found.lacking == pytest.approx(best[found.setups[0].seat_raise], abs=1e-5)


def lacks_of(problem, grid):
    """What each rework of the grid lacks, from `evaluate` alone."""
    setup = setup_of(grid)
    checks = evaluate(problem.car, problem.driver, setup, links=problem.links).checks
    short = [
        shortfall(each) for each in checks if each.id not in problem.settled and shortfall(each) is not None
    ]
    return sum(np.broadcast_to(each, (len(grid["seat_raise"]),)) for each in short)


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


def test_stopped_while_it_compares_it_hands_back_the_best_so_far(lent):
    car, drivers, effort = lent
    stopped = share(car, drivers, effort=effort, progress=lambda done: done < 0.5)
    assert not stopped.complete
    assert len(stopped.setups) == len(drivers)
