"""One number of the car, the setup or the body as an array over cases gives what a call for each of them gives."""

from dataclasses import replace

import numpy as np
import pytest

from fitcalc.body.links import links_for
from fitcalc.checks.catalogue import CLOSED_FORM
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.chunks import CHUNK, evaluated
from fitcalc.fit.evaluate import AS_FOUND, evaluate
from fitcalc.posture.cases import spread

CAR, ROBIN = load_car(sample_path("hillclimb")), load_driver(sample_path("robin"))
LINKS = links_for(ROBIN)
SHIFTS = np.array([0.0, 1.0, 3.0])
SAME = 1e-6
"""mm, deg, N and the like; the same arithmetic on arrays of another length differs in its last digits."""
SETUP = (
    "seat_travel",
    "seat_raise",
    "recline",
    "box_travel",
    "wheel_spacer",
    "shoulder_anchor_raise",
    "cushion_insert",
    "back_insert",
    "clutch.stand_off",
    "brake.longer_arm",
    "throttle.stand_off",
)
CAR_ONLY = (
    "reference.rear_axle_load",
    "seat.junction.z",
    "seat.half_width",
    "seat.mass",
    "seat.mounts.0.x",
    "seat.slots.0.x",
    "rails.angle",
    "pedals.clutch.pivot.x",
    "pedals.brake.pad_width",
    "pedals.throttle.rest_angle",
    "pedals.brake.cylinder.bore",
    "footwell.bulkhead",
    "footwell.obstacles.0.radius",
    "footwell.obstacles.1.outline.2.0",
    "steering_wheel.rim_diameter",
    "steering_wheel.lock",
    "harness.shoulder_left.z",
    "harness.lap_width",
    "hoops.front_top.x",
    "head_restraint.x",
    "cockpit.side_half_width",
)
BODY = ("thigh", "shank", "heel_to_ball", "trunk", "hip_breadth", "shoe_length", "thigh_radius", "mass")


def value(node, path):
    for step in path.split("."):
        node = node[int(step)] if step.isdigit() else getattr(node, step)
    return float(node)


def of_setup(path, shifts):
    return evaluate(CAR, ROBIN, spread(Setup(), {path: shifts}), links=LINKS)


def of_car(path, shifts):
    return evaluate(spread(CAR, {path: value(CAR, path) + shifts}), ROBIN, links=LINKS)


def of_body(name, shifts):
    return evaluate(CAR, ROBIN, AS_FOUND, links=replace(LINKS, **{name: getattr(LINKS, name) + shifts}))


NUMBERS = [
    (way, name) for way, names in ((of_setup, SETUP), (of_car, CAR_ONLY), (of_body, BODY)) for name in names
]


@pytest.mark.parametrize(("way", "name"), NUMBERS, ids=[name for _, name in NUMBERS])
def test_a_number_over_cases_equals_a_call_for_each(way, name):
    together, alone = way(name, SHIFTS), [way(name, SHIFTS[[at]]) for at in range(len(SHIFTS))]
    for at, one in enumerate(alone):
        own = {figure.id: figure for figure in one.figures}
        there = [each for each in together.figures if each.absent is None or not each.absent[at]]
        assert {each.id for each in there} >= own.keys()
        measured = [each for each in there if each.value is not None]
        assert [each.value[at] for each in measured] == pytest.approx(
            [own[each.id].value[0] for each in measured], abs=SAME
        )


@pytest.mark.parametrize(("way", "name"), NUMBERS[::6], ids=[name for _, name in NUMBERS[::6]])
def test_every_figure_and_point_has_the_cases_as_its_axis(way, name):
    for figure in way(name, SHIFTS).figures:
        assert figure.value is None or figure.value.shape == SHIFTS.shape, figure.id
        assert all(place.shape == (3, 3) for place in figure.evidence), figure.id


def test_closed_form_leaves_out_what_moves_and_nothing_else():
    whole, closed = evaluate(CAR, ROBIN).figures, evaluate(CAR, ROBIN, measures=CLOSED_FORM).figures
    left_out = {figure.id.split(".")[0] for figure in whole} - {figure.id.split(".")[0] for figure in closed}
    assert left_out == {"wheel", "knee", "leg", "cleat"}
    same = [figure for figure in whole if figure.id.split(".")[0] not in left_out]
    assert [(each.id, each.value) for each in closed] == [(each.id, each.value) for each in same]


def test_chunk_by_chunk_every_case_is_what_it_is_in_one_call():
    count = CHUNK + 3
    setup = spread(Setup(), {"seat_travel": np.linspace(-40.0, 60.0, count)})
    knees, seen = np.zeros(count), []
    for place, part in evaluated(CAR, ROBIN, setup, LINKS, progress=lambda done: seen.append(done) or True):
        knees[place] = part.sitting.pedals["brake"].rest.knee_angle
    whole = evaluate(CAR, ROBIN, setup, measures=()).sitting.pedals["brake"].rest.knee_angle
    assert knees == pytest.approx(whole, abs=SAME)
    assert seen == pytest.approx([CHUNK / count, 1.0])


def test_chunks_end_where_they_are_told_to():
    setup = spread(Setup(), {"seat_travel": np.zeros(CHUNK + 3)})
    places = [place for place, _ in evaluated(CAR, ROBIN, setup, LINKS, progress=lambda done: False)]
    assert places == [slice(0, CHUNK)]
