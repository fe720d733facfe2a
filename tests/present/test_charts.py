"""Plots as data: axes, filled regions, joint angles, shoes over the travel; and on paper, nothing beyond the page."""

from dataclasses import replace

import numpy as np
import pytest
from shapely.geometry import Polygon

from fitcalc.checks.shoe_travel import PARTS, rooms_by_travel
from fitcalc.documents.samples import sample_cars, sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.rework import fit
from fitcalc.paper.chart import chart_pages, shared_pages
from fitcalc.paper.frame import area
from fitcalc.paper.page import A4, LETTER, Words, corners_of
from fitcalc.present.chart import Axis, Chart, Spot, even_ticks, row_axis
from fitcalc.present.picture import Area, Line
from fitcalc.present.posture_chart import posture_chart
from fitcalc.present.record import check_rows
from fitcalc.present.regions import regions
from fitcalc.present.travel_chart import passed_by, travel_charts

BETWEEN = 0.5
"""What may lie between two of the 41 parts of the travel at which a room is worked out, mm."""


@pytest.fixture(scope="module", params=sample_cars())
def fitted(request):
    return fit(load_car(sample_path(request.param)), load_driver(sample_path("robin")))


@pytest.mark.parametrize(
    ("ends", "wanted"),
    [((0.0, 100.0), [0, 20, 40, 60, 80, 100]), ((-37.0, 61.0), [-20, 0, 20, 40, 60]), ((0.0, 0.7), None)],
)
def test_ticks_are_round_and_inside(ends, wanted):
    places = [tick.at for tick in even_ticks(*ends)]
    assert ends[0] <= min(places)
    assert max(places) <= ends[1]
    assert wanted is None or places == pytest.approx(wanted)


def test_rows_stand_from_the_top_down():
    axis = row_axis(["first", "second"])
    assert [tick.text for tick in axis.ticks] == ["first", "second"]
    assert axis.low < axis.ticks[1].at < axis.ticks[0].at < axis.high


def ring(x, y):
    """Not negative between two circles, with an island in the middle."""
    size = np.hypot(x[:, None], y[None])
    return np.where(size < 0.4, 0.4 - size, np.minimum(size - 1.0, 1.8 - size))


def test_region_with_a_hole_and_an_island_has_its_area():
    x, y = np.linspace(-2.0, 2.0, 161), np.linspace(-2.0, 2.0, 141)
    outlines = regions(x, y, ring(x, y))
    assert len(outlines) == 2
    wanted = np.pi * (1.8**2 - 1.0 + 0.4**2)
    assert sum(_shoelace(outline) for outline in outlines) == pytest.approx(wanted, rel=0.01)


def _shoelace(outline):
    return Polygon(outline).area


def test_region_that_fills_the_grid_is_its_rim():
    x, y = np.linspace(0.0, 3.0, 4), np.linspace(0.0, 2.0, 3)
    (outline,) = regions(x, y, np.ones((4, 3)))
    assert Polygon(outline).bounds == pytest.approx((0.0, 0.0, 3.0, 2.0), abs=1e-4)


def test_nothing_passes_nothing_is_filled():
    assert regions(np.arange(3.0), np.arange(3.0), -np.ones((3, 3))) == ()


def test_least_room_of_a_line_is_the_check_s_own(fitted):
    figures = {figure.id: figure for figure in fitted.after.figures}
    for name in fitted.after.sitting.pedals:
        for id, rooms in rooms_by_travel(fitted.after.case, name).items():
            assert rooms.shape == PARTS.shape
            assert min(rooms) == pytest.approx(figures[id].value[0], abs=BETWEEN)


def test_each_shoe_has_a_plot_with_its_limit(fitted):
    for chart, name in zip(travel_charts(fitted.after), fitted.after.sitting.pedals, strict=True):
        lines = {mark.key: mark for mark in chart.marks if isinstance(mark, Line)}
        nearest = passed_by(fitted.after, name)[0]
        assert [room for _, room in lines[f"room.{nearest.id}"].points] == list(nearest.rooms)
        assert any(key.startswith("limit.") for key in lines)


def test_joint_angles_are_those_of_the_checks(fitted):
    rows = check_rows(fitted.after)
    chart = posture_chart(rows, check_rows(fitted.found))
    spots = {mark.key: mark for mark in chart.marks if isinstance(mark, Spot)}
    bands = {mark.key: mark for mark in chart.marks if isinstance(mark, Area)}
    for check in (row for row in rows if row.id.startswith("posture.knee")):
        assert spots[f"after.{check.id}"].at[0] == check.value
        xs = [x for x, _ in bands[f"comfort.{check.id}"].points]
        assert (min(xs), max(xs)) == (check.recommended_low, check.recommended_high)


def box_of(words):
    """The upright box round words."""
    xs, ys = zip(*corners_of(words), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


@pytest.mark.parametrize("paper", [A4, LETTER], ids=lambda paper: paper.name)
def test_plots_stay_on_their_page(fitted, paper):
    charts = [posture_chart(check_rows(fitted.after), []), *travel_charts(fitted.after)]
    left, bottom, right, top = area(paper)
    for page in (*chart_pages(charts, paper), *shared_pages("Angles and shoes", charts, paper)):
        for mark in page.marks:
            boxes = (
                [box_of(mark)]
                if isinstance(mark, Words)
                else [(x, y, x, y) for x, y in mark.points if mark.clip is None]
            )
            for box in boxes:
                assert left - 0.5 <= box[0]
                assert box[2] <= right + 0.5
                assert bottom - 0.5 <= box[1]
                assert box[3] <= top + 0.5


def test_words_at_the_edge_are_pushed_inside():
    spot = Spot("far", "note", "", (100.0, 50.0), "dot", "a long remark on the last point", "below")
    axis = Axis("x", 0.0, 100.0, even_ticks(0.0, 100.0))
    (page,) = chart_pages([Chart("edge", axis, axis, (spot,))], A4)
    words = next(mark for mark in page.marks if isinstance(mark, Words) and "remark" in mark.text)
    assert box_of(words)[2] <= area(A4)[2]


def test_a_shoe_s_plot_without_limits_speaks_of_none(fitted):
    (chart, *_) = travel_charts(replace(fitted.after, checks=()))
    assert any(mark.key.startswith("room.") for mark in chart.marks)
    assert not any(mark.key.startswith("limit.") for mark in chart.marks)
    assert "least that is allowed" not in [each.text for each in chart.legend]


def test_an_angle_without_recommended_bounds_has_no_band_of_comfort(fitted):
    knee = next(row for row in check_rows(fitted.after) if row.id == "posture.knee_pressed.brake")
    plain = knee.model_copy(update={"recommended_low": None, "recommended_high": None})
    keys = [{mark.key for mark in posture_chart([each], []).marks} for each in (knee, plain)]
    assert keys[0] - keys[1] == {f"comfort.{knee.id}"}
