"""The three views of sample cars and drivers, as found and reworked."""

import math
from dataclasses import replace
from functools import cache

import pytest

from fitcalc.checks.check import Check
from fitcalc.documents.car_cockpit import Obstacle
from fitcalc.documents.edit import with_value
from fitcalc.documents.fields import SideMark
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.rework import fit
from fitcalc.present.annotations import annotation
from fitcalc.present.body_drawing import resting_legs
from fitcalc.present.chosen import value_text, view_of
from fitcalc.present.labels import carried, lettering, places, ways, width
from fitcalc.present.outlines import toward
from fitcalc.present.pad_view import pad_view
from fitcalc.present.picture import Arc, Area, Dimension, Handle, Line, Text, in_inches, points_of, seen
from fitcalc.present.plan_view import plan_view
from fitcalc.present.side_view import side_view

VIEWS = {"side": side_view, "plan": plan_view, "pads": pad_view}
CARS, DRIVERS = ("hillclimb", "student", "upright"), ("robin", "magnus")
AS_FOUND = Setup()
REWORK = Setup(seat_travel=60.0, clutch=PedalRework(stand_off=40.0), brake=PedalRework(stand_off=45.0))
OPTIONAL = (
    "harness",
    "hoops",
    "head_restraint",
    "cockpit",
    "sight_edges",
    "steering_wheel",
    "gear_lever",
    "behind_seat",
    "pedals.clutch",
    "footwell.roof",
    "footwell.half_widths",
    "footwell.bulkhead",
)
views = pytest.mark.parametrize("view", VIEWS)
cars = pytest.mark.parametrize("car", CARS)
drivers = pytest.mark.parametrize("driver", DRIVERS)


@cache
def result(car="hillclimb", driver="robin", setup=AS_FOUND):
    return evaluate(load_car(sample_path(car)), load_driver(sample_path(driver)), setup)


def drawn(picture):
    return {primitive.key: primitive for primitive in picture.primitives}


def bare_car(car):
    document = with_value(load_car(sample_path(car)), "footwell.obstacles", ())
    for path in OPTIONAL:
        document = with_value(document, path, None)
    return document


@views
@cars
@drivers
def test_every_key_stands_once_and_every_number_is_finite(view, car, driver):
    picture = VIEWS[view](result(car, driver), result(car, driver), result(car, "otto"))
    keys = [primitive.key for primitive in picture.primitives]
    assert len(keys) == len(set(keys))
    assert all(math.isfinite(value) for value in (*picture.bounds, *picture.frame))


@views
@cars
def test_a_car_of_which_little_is_known_is_drawn(view, car):
    picture = VIEWS[view](evaluate(bare_car(car), load_driver(sample_path("otto"))))
    assert any(primitive.ref.startswith("car.pedals.brake") for primitive in picture.primitives)


@views
@cars
@drivers
@pytest.mark.parametrize("size", [20.0, 45.0])
def test_no_words_hide_each_other(view, car, driver, size):
    picture = VIEWS[view](result(car, driver))
    found, texts = places(picture, size), {each.key: lettering(each) for each in picture.primitives}
    boxes = [
        (x - width(texts[key], size) / 2, y - size / 2, x + width(texts[key], size) / 2, y + size / 2)
        for key, ((x, y), turned) in ((key, (place.at, place.turn)) for key, place in found.items())
        if turned == 0.0
    ]
    pairs = [(a, b) for at, a in enumerate(boxes) for b in boxes[:at]]
    assert not [1 for a, b in pairs if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]]


@views
def test_a_short_default_keeps_the_drawing_readable(view):
    checked = [each for each in VIEWS[view](result()).primitives if each.key.startswith("check.")]
    assert sum(1 for each in checked if lettering(each)) <= 14


@drivers
def test_knees_are_up_and_the_helmet_is_on_top(driver):
    sitting = result(driver=driver).sitting
    parts = drawn(side_view(result(driver=driver)))
    knee_top = max(z for _, z in parts["body.leg_left.shank"].points)
    helmet = [z for _, z in parts["body.helmet"].points]
    assert knee_top > seen(sitting.pedals["clutch"].rest.ankle, "side")[1]
    assert min(helmet) > seen(sitting.trunk.shoulder, "side")[1]


@drivers
def test_joints_stand_where_the_numbers_have_them(driver):
    sitting = result(driver=driver).sitting
    links = drawn(side_view(result(driver=driver)))["body.leg_left.links"].points
    leg = sitting.pedals["clutch"].rest
    assert links[:3] == tuple(seen(joint, "side") for joint in (leg.hip, leg.knee, leg.ankle))


@drivers
def test_the_helmet_keeps_within_what_the_checks_measure_to(driver):
    trunk = result(driver=driver).sitting.trunk
    (x, z), half = seen(trunk.helmet, "side"), (trunk.helmet_length[0] / 2, trunk.helmet_height[0] / 2)
    outline = drawn(side_view(result(driver=driver)))["body.helmet"].points
    above = [math.hypot((a - x) / half[0], (b - z) / half[1]) for a, b in outline if b > z]
    assert max(above) == pytest.approx(1.0, abs=0.03)


@cars
def test_every_check_with_a_place_can_be_drawn_and_names_itself(car):
    for check in result(car).checks:
        if check.figure.evidence and check.figure.value is not None and check.figure.unit in ("mm", "deg"):
            picture = VIEWS[view_of(check)](result(car), emphasis={check.id})
            assert any(lettering(each) for each in picture.about(check.id)), check.id


@cars
@drivers
def test_a_dimension_of_a_check_is_as_long_as_it_says(car, driver):
    checks = {check.id: check for check in result(car, driver).checks}
    picture = side_view(result(car, driver), emphasis=set(checks))
    for each in picture.primitives:
        if isinstance(each, Dimension):
            said = abs(checks[each.ref].figure.value[0])
            assert toward(each.start, each.end)[1] == pytest.approx(said, abs=1.5)


@cars
@drivers
def test_an_arc_of_a_strap_opens_as_far_as_it_says(car, driver):
    checks: dict[str, Check] = {check.id: check for check in result(car, driver).checks}
    straps = {id for id in checks if id.startswith("harness.shoulder") and id.endswith("side_angle")}
    arcs = [e for e in side_view(result(car, driver), emphasis=straps).primitives if isinstance(e, Arc)]
    assert arcs
    assert all(-arc.sweep == pytest.approx(checks[arc.ref].figure.value[0], abs=1.5) for arc in arcs)


def test_a_strap_within_its_limits_lies_in_the_light_area():
    picture = side_view(result(setup=REWORK), emphasis={"harness.shoulder_left.side_angle"})
    check = result(setup=REWORK).check("harness.shoulder_left.side_angle")
    (corner, *rim) = drawn(picture)["limit.harness.shoulder_left.side_angle"].points
    slopes = [math.degrees(math.atan2(corner[1] - z, x - corner[0])) for x, z in rim]
    assert min(slopes) == pytest.approx(check.low[0])
    assert max(slopes) == pytest.approx(check.high[0])


def test_the_rework_is_dimensioned_from_as_found():
    parts = drawn(side_view(result(setup=REWORK), result()))
    assert parts["rework.seat"].text == "seat 60 forward"
    assert toward(parts["rework.seat"].start, parts["rework.seat"].end)[1] == pytest.approx(60.0)
    assert "+45" in parts["rework.brake"].text


@views
def test_as_found_and_a_second_driver_have_their_own_lines(view):
    picture = VIEWS[view](result(setup=REWORK), result(), result(driver="magnus"))
    styles = {primitive.style for primitive in picture.primitives}
    assert {"as found", "other driver"} <= styles
    assert {"as found", "other driver"} <= {entry.style for entry in picture.legend}


@views
def test_alone_nothing_is_compared(view):
    styles = {primitive.style for primitive in VIEWS[view](result()).primitives}
    assert not styles & {"as found", "other driver", "rework"}


def test_moving_the_seat_leaves_what_does_not_move():
    before, after = drawn(side_view(result())), drawn(side_view(result(setup=REWORK)))
    assert all(before[key] == after[key] for key in ("floor", "bulkhead", "hoop.main_top", "rails"))
    assert before["seat.shell"] != after["seat.shell"]


def test_straps_end_at_their_anchors():
    harness = result().car.harness
    for name in ("shoulder_left", "lap_right"):
        anchor = getattr(harness, name)
        assert drawn(plan_view(result()))[f"strap.{name}"].points[-1] == (anchor.x, anchor.y)


def test_the_drivers_right_is_up_in_plan_and_right_at_the_pads():
    plan, pads = drawn(plan_view(result())), drawn(pad_view(result()))
    assert plan["pedal.throttle.pad"].points[0][1] > plan["pedal.clutch.pad"].points[0][1]
    assert pads["pedal.throttle.pad"].points[0][0] > pads["pedal.clutch.pad"].points[0][0]


@cars
@drivers
def test_soles_stand_over_their_pads(car, driver):
    parts = drawn(pad_view(result(car, driver)))
    for name in result(car).sitting.pedals:
        sole = [y for y, _ in parts[f"shoe.{name}"].points]
        pad = [y for y, _ in parts[f"pedal.{name}.pad"].points]
        assert (min(sole) + max(sole)) / 2 == pytest.approx((min(pad) + max(pad)) / 2, abs=2.0)


def test_every_grip_names_a_field_and_a_seat_grip_moves_along_its_rail():
    grips = {each.ref: each for each in side_view(result()).primitives if isinstance(each, Handle)}
    assert grips["setup.seat_travel"].along == pytest.approx((-1.0, 0.0))
    assert {"setup.recline", "setup.brake.stand_off", "car.hoops.main_top"} <= set(grips)


def test_insert_lies_on_the_seat_s_own_padding():
    """Its faces stand 10 and 40 mm square off the straight back where that is padded by 10 mm."""
    car = with_value(load_car(sample_path("hillclimb")), "seat.back_padding", 10.0)
    parts = drawn(side_view(evaluate(car, load_driver(sample_path("robin")), Setup(back_insert=30.0))))
    shell = parts["seat.shell"].points
    junction, top = shell[car.seat.profile.index((0.0, 0.0))], shell[-1]
    along, _ = toward(junction, top)
    off = [
        along[1] * (junction[0] - x) - along[0] * (junction[1] - z)
        for x, z in parts["seat.back_insert"].points
    ]
    assert off == pytest.approx([10.0, 10.0, 40.0, 40.0])
    assert "seat.cushion_insert" not in parts


def test_grips_of_pedals_do_not_lie_on_each_other():
    grips = [each.at for each in side_view(result()).primitives if isinstance(each, Handle)]
    assert min(math.dist(a, b) for at, a in enumerate(grips) for b in grips[:at]) > 8.0


def test_no_area_or_line_is_empty():
    for view in VIEWS.values():
        for each in view(result()).primitives:
            if isinstance(each, Line | Area):
                assert len(points_of(each)) >= 2, each.key


def test_both_legs_are_drawn_after_a_fit():
    after = fit(load_car(sample_path("hillclimb")), load_driver(sample_path("robin"))).after
    left, right = resting_legs(after.sitting)
    assert len(left) == len(right) == 1


def changed_view(view, car="hillclimb", **values):
    document = load_car(sample_path(car))
    for path, value in values.items():
        document = with_value(document, path.replace("__", "."), value)
    return drawn(VIEWS[view](evaluate(document, load_driver(sample_path("robin")), AS_FOUND)))


def test_a_heel_rest_stands_on_the_floor_where_it_was_measured():
    rest = changed_view("side", footwell__heel_rest=SideMark(x=430.0, z=60.0))["heel_rest"]
    assert [x for x, _ in rest.points] == [430.0, 430.0]
    assert rest.points[1][1] == 60.0


def test_an_obstacle_that_is_not_round_is_drawn_by_its_corners():
    corners = ((500.0, 300.0), (560.0, 300.0), (560.0, 350.0))
    rack = Obstacle(name="rack", outline=corners, y_low=-100.0, y_high=100.0)
    picture = changed_view("side", footwell__obstacles=(rack,))
    assert picture["obstacle0"].points == corners
    assert picture["obstacle0.name"].at == (530.0, 350.0)


@pytest.mark.parametrize("view", ["side", "plan"])
def test_a_wheel_whose_column_was_not_measured_is_drawn_without_it(view):
    whole, bare = changed_view(view), changed_view(view, steering_wheel__column_foot=None)
    assert {key for key in whole if "column" in key} > {key for key in bare if "column" in key}
    assert any(key.startswith("wheel") for key in bare)


def test_a_hoop_whose_brace_was_not_measured_is_drawn_without_it():
    assert "hoop.brace" in changed_view("side")
    assert "hoop.brace" not in changed_view("side", hoops__brace_foot=None)


def test_pads_that_overlap_are_told_at_one_of_them():
    wide = load_car(sample_path("hillclimb"))
    for name in ("brake", "throttle"):
        wide = with_value(wide, f"pedals.{name}.pad_width", 170.0)
    at = evaluate(wide, load_driver(sample_path("robin")), AS_FOUND)
    check = next(
        each for each in at.checks if each.figure.quantity == "cleat.pads" and each.figure.value[0] < 0.0
    )
    marks = drawn(pad_view(at, emphasis={check.id}))
    assert any(key.startswith(f"check.{check.id}") for key in marks)
    assert not any(isinstance(mark, Dimension) and key.startswith("check.") for key, mark in marks.items())


def test_a_check_that_was_measured_nowhere_has_no_mark():
    check = next(each for each in result().checks if each.figure.evidence and each.figure.unit == "mm")
    nowhere = replace(check, figure=replace(check.figure, evidence=()))
    assert list(annotation(check, "side", result()))
    assert not list(annotation(nowhere, "side", result()))


def test_a_check_that_was_not_made_is_marked_so():
    check = next(each for each in result().checks if each.figure.value is not None)
    assert value_text(replace(check, figure=replace(check.figure, value=None))) == "?"


def test_lettering_in_motion_keeps_its_way_from_home_and_new_words_wait():
    picture = side_view(result())
    still = places(picture, 20.0)
    moving = carried(picture, 20.0, ways(picture, 20.0, still))
    assert {key: place.at for key, place in moving.items()} == {
        key: pytest.approx(place.at) for key, place in still.items()
    }
    first = next(iter(still))
    assert set(carried(picture, 20.0, {first: ways(picture, 20.0, still)[first]})) == {first}


def test_crowded_lettering_is_thinned_out_by_what_would_lie_on_another():
    picture = side_view(result(), emphasis={check.id for check in result().checks})
    crowded, few = places(picture, 60.0), places(picture, 60.0, None, thins_out=True)
    assert set(few) < set(crowded)
    assert len(few) > len(crowded) / 3


def test_lengths_are_told_in_inches_and_stay_where_they_are():
    metric, inches = (drawn(picture) for picture in (side_view(result()), in_inches(side_view(result()))))
    told = [key for key, each in metric.items() if isinstance(each, Dimension | Text) and each.inches]
    assert told
    assert all(inches[key].text == metric[key].inches for key in told)
    assert all(points_of(inches[key]) == points_of(metric[key]) for key in metric)
