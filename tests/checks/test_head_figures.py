"""Helmet to hoop lines and head restraint: cases worked by hand."""

from dataclasses import replace

import numpy as np
import pytest

from fitcalc.checks.head import head_figures
from fitcalc.documents.driver import Kit
from tests.checks.cockpits import by_id, seated, value, with_trunk

NEAR = 1e-6
HOOPS = {
    "hoops.main_top": {"x": 1700.0, "z": 1050.0},
    "hoops.front_top": {"x": 800.0, "z": 720.0},
    "hoops.brace_foot": {"x": 2200.0, "z": 550.0},
    "hoops.tube": 40.0,
    "head_restraint": {"x": 1600.0, "z_low": 700.0, "z_high": 900.0, "width": 160.0},
}


@pytest.fixture
def case():
    """A round helmet of 130 mm radius, its centre 260 mm ahead of the main hoop and 250 mm below its top."""
    round_helmet = {"helmet_length": 260.0, "helmet_height": 260.0}
    return with_trunk(seated(HOOPS), helmet=(1440.0, 0.0, 800.0), **round_helmet)


def test_helmet_below_the_line_over_the_hoops(case):
    """The line rises 330 in 900: the centre lies (250 * 900 - 260 * 330) / hypot = 145.21287 below it, less 130."""
    assert value(head_figures(case), "head.hoop_line") == pytest.approx(15.21287, abs=1e-5)


def test_line_to_a_brace_of_45_degrees(case):
    """Line x + z = 2750; the centre's sum is 2240, so 510 / sqrt 2 = 360.624 away, less 130."""
    assert value(head_figures(case), "head.brace_line") == pytest.approx(510 / np.sqrt(2) - 130, abs=NEAR)


def test_lowered_line_ends_75_mm_below_the_main_hoop(case):
    """From (800, 720) to (1700, 975): 640 on it stands at 901.333; cos of its slope 900 / hypot(900, 255)."""
    expected = (720 + 640 * 255 / 900 - 800) * 900 / np.hypot(900, 255) - 130
    assert value(head_figures(case), "head.lowered_line") == pytest.approx(expected, abs=NEAR)


@pytest.mark.parametrize(
    ("id", "expected"),
    [
        ("head.main_top", 1050 - 930),
        ("head.main_hoop_fore_aft", 1680 - 1570),
        ("head.restraint_gap", 1600 - 1570),
        ("head.restraint_edge", 80.0),
    ],
)
def test_level_and_upright_distances(case, id, expected):
    """Helmet back to 1570 and up to 930; hoop's tube from 1680; the restraint's edge 80 aside, 100 up and down."""
    assert value(head_figures(case), id) == pytest.approx(expected, abs=NEAR)


def test_a_longer_helmet_reaches_further_through_a_sloping_line(case):
    """The ellipse's own reach counts, not a circle's: half axes 180 and 130, normal (-0.34425, 0.93888)."""
    longer = with_trunk(case, helmet_length=360.0)
    normal = np.array([330.0, 900.0]) / np.hypot(330, 900)
    expected = 145.21287 - np.hypot(180 * normal[0], 130 * normal[1])
    assert value(head_figures(longer), "head.hoop_line") == pytest.approx(expected, abs=1e-5)


@pytest.mark.parametrize(
    ("path", "id", "missing"),
    [
        ("hoops", "head.hoop_line", "hoops"),
        ("hoops.brace_foot", "head.brace_line", "hoops.brace_foot"),
        ("head_restraint", "head.restraint_gap", "head_restraint"),
    ],
)
def test_what_was_not_measured_is_named(path, id, missing):
    figures = {figure.id: figure for figure in head_figures(seated({path: None}))}
    assert figures[id].value is None
    assert figures[id].missing == missing


def worn(case, **kit):
    return replace(case, driver=case.driver.model_copy(update={"kit": Kit(**kit)}))


def test_room_behind_a_head_and_neck_restraint(case):
    """Helmet's back at 1440 + 130 = 1570, head restraint at 1600: 30 mm, less 45 of collar."""
    figures = head_figures(worn(case, restraint=20.0, collar=45.0))
    assert value(figures, "head.collar_room") == pytest.approx(-15.0, abs=NEAR)


def test_a_collar_that_was_not_measured_is_not_judged(case):
    assert "head.collar_room" not in by_id(head_figures(worn(case, restraint=20.0)))
