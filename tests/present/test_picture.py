"""Primitives, shapes and the places of words."""

import math

import pytest

from fitcalc.present.labels import places, width
from fitcalc.present.outlines import as_points, ellipse, smooth, wrapped
from fitcalc.present.picture import (
    Arc,
    Area,
    Circle,
    Dimension,
    Line,
    Picture,
    Text,
    bounds_of,
    is_about,
    offset_line,
)

SIZE = 10.0


def picture(*primitives):
    return Picture("side", "title", ("x", "z"), primitives)


def box(place, text):
    wide, high = width(text, SIZE) / 2, 0.5 * SIZE
    return place.at[0] - wide, place.at[1] - high, place.at[0] + wide, place.at[1] + high


def touch(a, b):
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def test_bounds_hold_everything():
    drawn = (Line("a", "outline", "", ((0.0, 0.0), (10.0, 5.0))), Circle("b", "outline", "", (0.0, 0.0), 4.0))
    assert bounds_of(drawn) == (-4.0, -4.0, 10.0, 5.0)


def test_bounds_of_nothing_are_nothing():
    assert bounds_of(()) == (0.0, 0.0, 0.0, 0.0)


def test_dimension_line_stands_to_the_left_of_the_way():
    dimension = Dimension("a", "dimension", "", (0.0, 0.0), (100.0, 0.0), "100", aside=20.0)
    assert offset_line(dimension) == ((0.0, 20.0), (100.0, 20.0))


@pytest.mark.parametrize(
    ("ref", "shown"), [("car.hoops", True), ("car.hoops.main_top", True), ("car.hoop", False)]
)
def test_a_section_is_shown_by_its_parts(ref, shown):
    assert is_about(Circle("a", "outline", "car.hoops.main_top", (0.0, 0.0), 1.0), ref) is shown


def test_a_belt_round_one_disc_is_its_rim():
    assert all(math.isclose(math.hypot(x - 3.0, y), 5.0) for x, y in wrapped([((3.0, 0.0), 5.0)]))


def test_a_belt_reaches_over_every_disc():
    left, bottom, right, top = bounds_of(
        [Area("a", "body", "", wrapped([((0.0, 0.0), 30.0), ((100.0, 0.0), 10.0)]))]
    )
    assert (left, bottom, right, top) == pytest.approx((-30.0, -30.0, 110.0, 30.0))


def test_a_belt_swallows_a_disc_inside_another():
    assert wrapped([((0.0, 0.0), 30.0), ((5.0, 0.0), 2.0)]) == wrapped([((0.0, 0.0), 30.0)])


def test_a_smooth_line_runs_through_its_points():
    corners = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    assert set(corners) <= set(as_points(smooth(corners, 4)))


def test_an_ellipse_keeps_its_axes():
    outline = bounds_of([Area("a", "kit", "", ellipse((1.0, 2.0), 30.0, 20.0))])
    assert outline == pytest.approx((-29.0, -18.0, 31.0, 22.0))


def test_words_at_one_point_do_not_hide_each_other():
    texts = [Text(f"t{at}", "note", "", (0.0, 0.0), f"word number {at}") for at in range(12)]
    found = places(picture(*texts), SIZE)
    boxes = [box(found[text.key], text.text) for text in texts]
    assert not any(touch(a, b) for at, a in enumerate(boxes) for b in boxes[:at])


def test_a_moved_word_points_to_what_it_names():
    texts = [Text(f"t{at}", "note", "", (0.0, 0.0), f"word number {at}") for at in range(12)]
    found = places(picture(*texts), SIZE)
    far = [place for place in found.values() if math.dist(place.at, (0.0, 0.0)) > 8.0 * SIZE]
    assert far
    assert all(place.leader == (0.0, 0.0) for place in far)


def test_the_same_picture_has_the_same_places():
    texts = [Text(f"t{at}", "note", "", (5.0 * at, 0.0), "some words") for at in range(6)]
    assert places(picture(*texts), SIZE) == places(picture(*texts), SIZE)


def test_a_value_stands_above_its_dimension_line():
    dimension = Dimension("a", "dimension", "", (0.0, 0.0), (200.0, 0.0), "200")
    place = places(picture(dimension), SIZE)["a"]
    assert place.at == pytest.approx((100.0, 0.8 * SIZE))
    assert place.turn == 0.0


def test_a_value_beside_an_upright_dimension_reads_from_the_right():
    dimension = Dimension("a", "dimension", "", (0.0, 0.0), (0.0, 200.0), "200")
    place = places(picture(dimension), SIZE)["a"]
    assert place.turn == 90.0
    assert place.at == pytest.approx((-0.8 * SIZE, 100.0))


def test_a_value_too_wide_for_its_dimension_stands_beyond_it():
    dimension = Dimension("a", "dimension", "", (0.0, 0.0), (10.0, 0.0), "10 too wide")
    left = box(places(picture(dimension), SIZE)["a"], "10 too wide")[0]
    assert left > 10.0


def test_a_value_stands_outside_its_arc():
    arc = Arc("a", "pass", "", (0.0, 0.0), 80.0, 30.0, 60.0, "60")
    assert math.dist(places(picture(arc), SIZE)["a"].at, (0.0, 0.0)) > 80.0


def test_words_stay_on_the_page():
    text = Text("a", "note", "", (98.0, 50.0), "a long word")
    _, _, right, top = box(places(picture(text), SIZE, (0.0, 0.0, 100.0, 100.0))["a"], text.text)
    assert right <= 100.0
    assert top <= 100.0


def test_a_picture_without_words_has_no_places():
    assert places(picture(Circle("a", "outline", "", (0.0, 0.0), 1.0)), SIZE) == {}
