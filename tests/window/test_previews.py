"""Whatever is changed, a preview seats the driver where the evaluation would, and keeps what the change does not reach."""

from dataclasses import fields, is_dataclass

import numpy as np
import pytest

from fitcalc.body.links import links_for
from fitcalc.documents.fields import Document
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.errors import InputError
from fitcalc.fit.seating import seated
from fitcalc.posture.sit import sit
from fitcalc.window.previews import posed
from fitcalc.window.results import Choice, results_of
from fitcalc.window.work import new_work, with_ref

CAR, DRIVER = load_car(sample_path("hillclimb")), load_driver(sample_path("robin"))
REWORK = Setup(recline=1.0, brake=PedalRework(stand_off=5.0))


def numbers_in(thing, path=""):
    """The path of every number of a document, with the number."""
    if isinstance(thing, float):
        yield path.lstrip("."), thing
    below = dict(thing) if isinstance(thing, Document) else {}
    if isinstance(thing, tuple):
        below = dict(enumerate(thing))
    for step, part in below.items():
        yield from numbers_in(part, f"{path}.{step}")


def arrays_in(thing):
    """Every array of a result, in order."""
    if isinstance(thing, np.ndarray):
        yield thing
    elif is_dataclass(thing):
        for field in fields(thing):
            yield from arrays_in(getattr(thing, field.name))
    elif thing is not None:
        for part in thing.values() if isinstance(thing, dict) else thing:
            yield from arrays_in(part)


@pytest.fixture(scope="module")
def work():
    begun = new_work(CAR, DRIVER)
    for name in ("recline", "brake"):
        begun = with_ref(begun, f"setup.{name}", getattr(REWORK, name))
    return begun


@pytest.fixture(scope="module")
def results(work):
    return results_of(work, Choice(), None)


def changes(work):
    """The work with each of its numbers moved a little, where that still is a valid car or rework."""
    for name, document in (("car", CAR), ("setup", work.setup)):
        for path, value in numbers_in(document):
            for after in (value + 1.0, value - 1.0):
                try:
                    yield path, with_ref(work, f"{name}.{path}", after)
                except InputError:
                    continue
                break


def test_any_number_changed_seats_the_driver_as_the_evaluation_does(work, results):
    tried = 0
    for path, changed in changes(work):
        car, setup = changed.car.document, changed.setup
        now, whole = (
            seated(car, results.after.links, setup, results.after),
            sit(car, results.after.links, setup),
        )
        for one, other in zip(arrays_in(now), arrays_in(whole), strict=True):
            np.testing.assert_array_equal(one, other, err_msg=path)
        tried += 1
    assert tried > 200


def test_another_driver_is_seated_anew(results):
    links = links_for(load_driver(sample_path("ines")))
    now, whole = seated(CAR, links, REWORK, results.after), sit(CAR, links, REWORK)
    for one, other in zip(arrays_in(now), arrays_in(whole), strict=True):
        np.testing.assert_array_equal(one, other)


def test_a_hoop_moves_nobody(work, results):
    drawn = posed(with_ref(work, "car.hoops.tube", 40.0), results)
    assert drawn.after.sitting.trunk is results.after.sitting.trunk
    assert drawn.after.sitting.pedals["brake"] is results.after.sitting.pedals["brake"]
    assert drawn.found.sitting.hands is results.found.sitting.hands


def test_a_pad_moves_its_own_leg_only(work, results):
    drawn = posed(with_ref(work, "setup.brake.stand_off", 9.0), results).after.sitting
    assert drawn.pedals["brake"] is not results.after.sitting.pedals["brake"]
    assert drawn.pedals["clutch"] is results.after.sitting.pedals["clutch"]
    assert drawn.trunk is results.after.sitting.trunk


def test_a_seat_leaves_pads_and_feet_where_they_are(work, results):
    drawn = posed(with_ref(work, "setup.seat_travel", 20.0), results).after.sitting.pedals["brake"]
    before = results.after.sitting.pedals["brake"]
    assert drawn.rest.foot is before.rest.foot
    assert drawn.rest.knee[0, 0] != before.rest.knee[0, 0]


def test_a_floor_moves_feet_and_leaves_pads_where_they_are(work, results):
    drawn = posed(with_ref(work, "car.footwell.floor.0.1", 5.0), results).after.sitting.pedals["brake"]
    before = results.after.sitting.pedals["brake"]
    assert drawn.rest_pad is before.rest_pad
    assert drawn.rest.foot is not before.rest.foot
