"""The whole seated driver: invariants and hand checks."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.geometry.degrees import included, length
from fitcalc.making.pedal_motion import pad_chord
from fitcalc.making.pedal_work import motion
from fitcalc.posture.cases import spread
from fitcalc.posture.limbs import arm_to
from fitcalc.posture.sit import hands_at, sit
from fitcalc.posture.trunk import trunk_on
from fitcalc.present.joints import angles_of, joints_of
from tests.posture.cars import car, links, of_stature

PAIR = ("clutch", "brake")
CARS = ("hillclimb", "student", "upright")


def moved_car(name, dx, dz):
    """The whole car moved: every x and z that stands in car coordinates."""
    found = car(name)
    values = {}
    for path in point_paths(found):
        values |= {f"{path}.x": np.array([value_of(found, f"{path}.x") + dx])}
        values |= {f"{path}.z": np.array([value_of(found, f"{path}.z") + dz])}
    shifted = spread(found, values)
    floor = tuple((x + dx, z + dz) for x, z in found.footwell.floor)
    return shifted.model_copy(update={"footwell": shifted.footwell.model_copy(update={"floor": floor})})


def point_paths(found):
    pedals = [f"pedals.{name}.pivot" for name in found.fitted_pedals()]
    mounts = [f"seat.mounts.{i}" for i in range(len(found.seat.mounts))]
    return ["seat.junction", "steering_wheel.centre", *pedals, *mounts]


def value_of(document, path):
    for step in path.split("."):
        document = document[int(step)] if step.isdigit() else getattr(document, step)
    return document


@given(st.sampled_from(CARS), st.floats(-300, 300), st.floats(-100, 100))
def test_moving_the_whole_car_changes_no_angle(name, dx, dz):
    still = angles_of(sit(car(name), links(), Setup()))
    moved = angles_of(sit(moved_car(name, dx, dz), links(), Setup()))
    for angle in still:
        assert moved[angle] == pytest.approx(still[angle], abs=1e-7), angle


@pytest.mark.parametrize("name", CARS)
def test_mirroring_the_car_swaps_sides(name):
    found = car(name)
    other = {"left": "right", "right": "left"}
    swapped = spread(
        found, {f"pedals.{p}.pad_y": np.array([-pedal.pad_y]) for p, pedal in found.fitted_pedals().items()}
    )
    swapped = spread(
        swapped, {f"pedals.{p}.foot": other[pedal.foot] for p, pedal in found.fitted_pedals().items()}
    )
    before, after = sit(found, links(), Setup()), sit(swapped, links(), Setup())
    for p in before.pedals:
        assert after.pedals[p].full.knee_angle == pytest.approx(before.pedals[p].full.knee_angle)
        assert after.pedals[p].rest.knee * [1, -1, 1] == pytest.approx(before.pedals[p].rest.knee)


@pytest.mark.parametrize("name", CARS)
def test_links_keep_their_length(name):
    body = of_stature(1780.0)
    at = sit(car(name), body, Setup())
    for on in at.pedals.values():
        assert length(on.rest.knee - on.rest.hip) == pytest.approx(body.thigh)
        if on.rest.shortfall[0] == 0:
            assert length(on.rest.ankle - on.rest.knee) == pytest.approx(body.shank)


def test_hip_angle_identity():
    """Trunk-thigh = 90 + recline - thigh above level, in the side view of a leg without splay."""
    at = sit(car(), of_stature(1780.0), Setup())
    straight = at.trunk.hip * [1, 0, 1]
    knee = at.pedals["brake"].rest.knee * [1, 0, 1]
    thigh = np.degrees(np.arctan2((knee - straight)[:, 2], -(knee - straight)[:, 0]))
    flat = included(at.trunk.shoulder, straight, knee)
    assert flat == pytest.approx(90 + at.trunk.recline - thigh)


def test_many_drivers_and_seats_in_one_call_equal_one_by_one():
    places = np.array([0.0, 20.0, 60.0])
    together = joints_of(sit(car(), links(), spread(Setup(), {"seat_travel": places})))
    for i, travel in enumerate(places):
        alone = joints_of(sit(car(), links(), Setup(seat_travel=float(travel))))
        for name, point in alone.items():
            assert together[name][min(i, len(together[name]) - 1)] == pytest.approx(point[0]), name


def test_hands_stay_on_the_rim_when_the_wheel_turns():
    at = sit(car(), links(), Setup())
    left, right = hands_at(car(), links(), Setup(), at.trunk, np.array([60.0]))
    radius = (270.0 - 28.0) / 2
    assert length(left.grip - right.grip)[0] == pytest.approx(2 * radius)
    assert left.grip[0, 2] > right.grip[0, 2]


@settings(max_examples=30)
@given(st.floats(1450, 1990), st.floats(-40, 60))
def test_everything_is_finite_for_any_driver(stature, travel):
    at = sit(car(), of_stature(stature), Setup(seat_travel=travel))
    for name, value in (joints_of(at) | angles_of(at)).items():
        assert np.all(np.isfinite(value)), name


@pytest.mark.parametrize(("recline", "behind_hip", "above_hip"), [(25, 58, 627), (40, 181, 575)])
def test_eyes_fall_where_the_eyellipse_puts_them(recline, behind_hip, above_hip):
    """SAE J941 (1997 style) eyellipse centre moved to the mean hip point: second-hand formula, own arithmetic.

    Mean of a man and a woman of mean stature; 40 mm allowed, since the hip joint is not the SAE H-point.
    """
    leaning = np.array([float(recline)])
    bodies = (of_stature(1756.0), of_stature(1628.0, "female"))
    eye = np.mean([trunk_on(np.zeros((1, 3)), leaning, body).eye[0] for body in bodies], axis=0)
    assert eye[0] == pytest.approx(behind_hip, abs=40)
    assert eye[2] == pytest.approx(above_hip, abs=40)


def test_the_helmet_stands_off_the_head_alike_on_top_and_behind():
    body = links()
    trunk = trunk_on(np.zeros((1, 3)), np.array([30.0]), body)
    top = trunk.helmet[0, 2] + body.helmet_height / 2 - trunk.head_top[0, 2]
    behind = trunk.helmet[0, 0] + body.helmet_length / 2 - (trunk.head_top[0, 0] + body.head_length / 2)
    assert top == pytest.approx(body.helmet_above_vertex)
    assert behind == pytest.approx(body.helmet_above_vertex)


@pytest.mark.parametrize("side", [-1.0, 1.0])
def test_an_elbow_hangs_down_and_half_as_far_out(side):
    """Arm straight ahead and level: the elbow leaves its line toward (0, 0.5, -1), outward on either side."""
    at = sit(car(), links(), Setup())
    shoulder = at.trunk.shoulder + [0.0, 180.0 * side, 0.0]
    arm = arm_to(shoulder, shoulder - [400.0, 0.0, 0.0], at.trunk, links())
    _, out, up = (arm.elbow - shoulder)[0]
    assert up < 0.0
    assert out / up == pytest.approx(-0.5 * side)


@pytest.mark.parametrize("name", CARS)
def test_a_pressed_pad_has_gone_the_chord_that_was_measured(name):
    found = car(name)
    for pedal, on in sit(found, links(), Setup()).pedals.items():
        way = length(on.full_pad.centre - on.rest_pad.centre)
        assert way == pytest.approx(pad_chord(motion(found.fitted_pedals()[pedal], PedalRework())))


@pytest.mark.parametrize("height", [20.0, 60.0])
def test_the_ball_of_the_throttle_foot_stays_on_its_pad(height):
    found = spread(car(), {"pedals.throttle.pad_height": np.array([height])})
    on = sit(found, links(), Setup()).pedals["throttle"]
    along = np.sum((on.full.foot.ball - on.full_pad.centre) * on.full_pad.up)
    assert abs(along) <= height / 2 + 1e-6


def test_top_of_the_head_lies_over_its_middle():
    """The eye stands 20 mm behind the forehead (design inference): half a head further back is the middle."""
    trunk, body = sit(car(), links(), Setup()).trunk, links()
    middle = trunk.eye[0, 0] - 20.0 + body.head_length[0] / 2
    assert trunk.head_top[0] == pytest.approx([middle, 0.0, trunk.eye[0, 2] + body.eye_below_vertex[0]])


def test_head_and_helmet_stay_on_the_seat_s_middle_plane():
    trunk = sit(spread(car(), {"seat.junction.y": np.array([12.0])}), links(), Setup()).trunk
    for name in ("hip", "shoulder", "cervicale", "eye", "head_top", "helmet"):
        assert getattr(trunk, name)[0, 1] == pytest.approx(12.0), name


def furthest(start, end, first, second, toward):
    """Of all places of a joint between two links the one furthest along a direction, tried one by one."""
    axis = (end - start) / np.linalg.norm(end - start)
    along = (first**2 - second**2 + (end - start) @ (end - start)) / (2 * np.linalg.norm(end - start))
    square = np.linalg.svd(axis[None])[2][1:]
    turns = np.linspace(0, 2 * np.pi, 36001)[:, None]
    ring = np.cos(turns) * square[0] + np.sin(turns) * square[1]
    places = start + along * axis + np.sqrt(first**2 - along**2) * ring
    return places[np.argmax(places @ toward)]


def test_knees_point_up_and_elbows_down_and_half_as_much_out():
    """Probed every 0.01 deg: 0.03 mm on a circle of 150 mm."""
    body, sitting = links("otto"), sit(car(), links("otto"), Setup())
    for arm, out in zip(sitting.hands, (-0.5, 0.5), strict=True):
        found = furthest(
            arm.shoulder[0], arm.grip[0], body.upper_arm[0], body.forearm[0], np.array([0.0, out, -1.0])
        )
        assert arm.elbow[0] == pytest.approx(found, abs=0.05)
    for worked in sitting.pedals.values():
        leg = worked.rest
        found = furthest(leg.hip[0], leg.ankle[0], body.thigh[0], body.shank[0], np.array([0.0, 0.0, 1.0]))
        assert leg.knee[0] == pytest.approx(found, abs=0.05)


def test_a_seat_set_far_aside_mirrors_the_arms_about_itself():
    """Seat, wheel and all 400 mm to the right: shoulders on the same side of the car, elbows still out to either side."""
    aside = spread(
        car(), {"seat.junction.y": np.array([400.0]), "steering_wheel.centre.y": np.array([400.0])}
    )
    (left, right), (here, there) = sit(car(), links(), Setup()).hands, sit(aside, links(), Setup()).hands
    assert here.elbow == pytest.approx(left.elbow + [0.0, 400.0, 0.0])
    assert there.elbow == pytest.approx(right.elbow + [0.0, 400.0, 0.0])


def test_the_clutch_is_met_with_the_sole_flat_and_the_others_with_the_heel_down():
    """Clutch and brake 60 mm higher: both would let the foot hang clear of the floor."""
    high = {
        f"pedals.{name}.pivot.z": np.array([value_of(car(), f"pedals.{name}.pivot.z") + 60.0])
        for name in PAIR
    }
    pedals = sit(spread(car(), high), links("otto"), Setup()).pedals
    clutch = pedals["clutch"].rest
    assert np.sum(clutch.foot.sole * pedals["clutch"].rest_pad.up) == pytest.approx(1.0)
    assert {name: bool(on.rest.foot.grounded[0]) for name, on in pedals.items()} == {
        "clutch": False,
        "brake": True,
        "throttle": True,
    }
