"""The moved seat and what surrounds it: cases worked by hand."""

import pytest

from fitcalc.checks.seat import seat_figures
from fitcalc.documents.setup import Setup
from tests.checks.cockpits import by_id, seated, value, with_links, with_trunk

NEAR = 1e-6
CAR = {
    "seat.junction": {"x": 1200.0, "y": 0.0, "z": 40.0},
    "seat.profile": ((-400.0, 40.0), (0.0, 0.0), (300.0, 500.0)),
    "seat.cushion_padding": 0.0,
    "seat.shell_thickness": 5.0,
    "seat.half_width": 200.0,
    "behind_seat": ((1550.0, 900.0), (1550.0, 0.0)),
    "cockpit.side_top": 450.0,
    "rails.angle": 0.0,
}


@pytest.mark.parametrize(("travel", "expected"), [(0.0, 45.0), (60.0, 105.0), (-60.0, -15.0)])
def test_seat_to_an_upright_firewall(travel, expected):
    """Top of the back at 1500, firewall at 1550, shell 5 thick; forward travel adds to the gap."""
    figures = seat_figures(seated(CAR, setup=Setup(seat_travel=travel)))
    assert value(figures, "seat.behind") == pytest.approx(expected, abs=NEAR)


def test_cushion_below_the_body_side():
    """Cushion rises 40 in 400; under hips 100 ahead of the junction it stands at 50: 450 - 50."""
    case = with_trunk(seated(CAR), hip=(1100.0, 0.0, 150.0))
    assert value(seat_figures(case), "seat.side_depth") == pytest.approx(400.0, abs=NEAR)


def test_padding_stands_square_on_the_cushion():
    """Cushion rising 300 in 400, a 3-4-5: padding of 40 stands 50 above it; under hips 100 ahead, 40 + 75 + 50."""
    steep = CAR | {
        "seat.profile": ((-400.0, 300.0), (0.0, 0.0), (300.0, 500.0)),
        "seat.cushion_padding": 40.0,
    }
    case = with_trunk(seated(steep), hip=(1100.0, 0.0, 250.0))
    assert value(seat_figures(case), "seat.side_depth") == pytest.approx(450.0 - 165.0, abs=NEAR)


def test_room_at_the_hips_and_mounts():
    figures = seat_figures(with_links(seated(CAR), hip_breadth=385.0))
    assert value(figures, "seat.hip_room") == pytest.approx(15.0, abs=NEAR)
    assert value(figures, "seat.mount_count") == 4


@pytest.mark.parametrize(("path", "id"), [("behind_seat", "seat.behind"), ("cockpit", "seat.side_depth")])
def test_what_was_not_measured_is_named(path, id):
    assert by_id(seat_figures(seated({path: None})))[id].missing == path
