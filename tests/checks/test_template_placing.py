"""The student template in plain seats: arithmetic on the published dimensions (FSAE F.5.6.5, FS T4.3)."""

import numpy as np
import pytest

from fitcalc.checks.opening import opening_figures
from fitcalc.checks.template import fully_apart, placed_template, template_figures
from fitcalc.documents.setup import Setup
from tests.checks.cockpits import by_id, car, seated, value

NEAR = 1e-6
PEDALS = ("clutch", "brake", "throttle")
TO_0_01 = 0.005 + 1e-9
"""The worked figures are rounded to 0.01 mm."""


def straight_seat(back):
    """A level cushion and a straight back, bare."""
    lean = np.tan(np.radians(back))
    return {
        "seat.junction": {"x": 1200.0, "y": 0.0, "z": 50.0},
        "seat.profile": ((-400.0, 0.0), (0.0, 0.0), (700.0 * lean, 700.0)),
        "seat.cushion_padding": 0.0,
        "seat.back_padding": 0.0,
        "head_restraint": None,
        "rails.rearward_travel": 40.0,
        "rails.angle": 0.0,
    }


WORKED = [
    (20.0, (167.59, 460.45), 740.45, 990.45),
    (30.0, (245.00, 424.35), 704.35, 954.35),
    (45.0, (346.48, 346.48), 626.48, 876.48),
]


@pytest.mark.parametrize(("back", "shoulder", "head", "top"), WORKED)
def test_template_in_a_straight_seat(back, shoulder, head, top):
    """Shoulder and head from the hip circle's centre, helmet circle's top above the seat's bottom; neck upright."""
    placed = placed_template(car(straight_seat(back)), Setup())
    assert (placed.shoulder - placed.hip)[0, [0, 2]] == pytest.approx(shoulder, abs=TO_0_01)
    assert (placed.head - placed.hip)[0, 2] == pytest.approx(head, abs=TO_0_01)
    assert placed.head[0, 2] + 150.0 - 50.0 == pytest.approx(top, abs=TO_0_01)


@pytest.mark.parametrize("back", [20.0, 30.0, 45.0])
def test_torso_line_follows_a_straight_back(back):
    assert value(template_figures(seated(straight_seat(back))), "template.torso_angle") == pytest.approx(
        back, abs=NEAR
    )


def test_hip_circle_touches_cushion_and_back():
    """Back of 30 deg: 100 above the cushion, and 100 square to the back, whose normal is (cos 30, -sin 30)."""
    hip = placed_template(car(straight_seat(30.0)), Setup()).hip[0]
    s, c = np.sin(np.radians(30)), np.cos(np.radians(30))
    assert hip[2] - 50.0 == pytest.approx(100.0, abs=NEAR)
    assert (hip[0] - 1200.0) * c - (hip[2] - 50.0) * s == pytest.approx(-100.0, abs=NEAR)


def test_hip_circle_stands_off_cushion_and_back_by_the_padding_of_each():
    """An upright back at 1200 padded by 15, a cushion at 50 padded by 20: 115 ahead of the one, 120 above the other."""
    padded = straight_seat(0.0) | {"seat.cushion_padding": 20.0, "seat.back_padding": 15.0}
    assert placed_template(car(padded), Setup()).hip[0] == pytest.approx([1085.0, 0.0, 170.0], abs=NEAR)


def test_head_circle_stands_25_mm_from_the_restraint():
    values = straight_seat(30.0) | {
        "head_restraint": {"x": 1560.0, "z_low": 600.0, "z_high": 950.0, "width": 200.0}
    }
    placed = placed_template(car(values), Setup())
    assert placed.head[0, 0] == pytest.approx(1560.0 - 25.0 - 150.0, abs=NEAR)
    assert np.linalg.norm(placed.head - placed.shoulder) == pytest.approx(280.0, abs=NEAR)


def test_pedal_distance_with_seat_back_and_pedals_forward():
    """Hip at (1200 + 40 + 100 tan 30 - 100 / cos 30, 150); face at (400 - 50, 250): both moved fully apart."""
    pedal = {"rest_angle": 0.0, "pad_tilt": 0.0, "arm": 200.0, "stand_off": 0.0, "pivot.z": 450.0}
    values = {f"pedals.{name}.{key}": given for name in PEDALS for key, given in pedal.items()}
    ahead = {"clutch": 380.0, "brake": 390.0, "throttle": 400.0}
    values |= {f"pedals.{name}.pivot.x": x for name, x in ahead.items()} | {"pedals.box_forward": 50.0}
    figures = template_figures(seated(straight_seat(30.0) | values))
    hip = 1240.0 + 100.0 * np.tan(np.radians(30)) - 100.0 / np.cos(np.radians(30))
    assert value(figures, "template.pedal_distance") == pytest.approx(np.hypot(hip - 350.0, 100.0), abs=NEAR)


def test_helmet_circle_below_a_level_line():
    """Top of the circle at 50 + 954.35; both hoops at 1100."""
    hoops = {"hoops.main_top": {"x": 1700.0, "z": 1100.0}, "hoops.front_top": {"x": 800.0, "z": 1100.0}}
    figures = template_figures(seated(straight_seat(30.0) | hoops))
    assert value(figures, "template.helmet_line") == pytest.approx(1100.0 - 50.0 - 954.35, abs=TO_0_01)


def test_the_sample_is_moved_fully_apart():
    chassis = car({"rails.rearward_travel": 40.0, "pedals.box_forward": 30.0})
    apart = fully_apart(chassis, Setup())
    assert (apart.seat_travel, apart.box_travel) == (-40.0, -30.0)


def test_section_ends_100_mm_behind_the_rearmost_pad():
    """Half width falls from 250 at x = 900 to 160 at x = 0; rearmost face at 350, section ends at 450: 2 * 205."""
    upright = {"rest_angle": 0.0, "pad_tilt": 0.0, "stand_off": 0.0, "pivot.x": 350.0}
    pads = {f"pedals.{name}.{key}": given for name in PEDALS for key, given in upright.items()}
    values = pads | {
        "pedals.box_forward": 0.0,
        "cockpit.opening_front": 900.0,
        "footwell.half_widths": ((0.0, 160.0), (900.0, 250.0)),
        "footwell.floor": ((-500.0, 10.0), (1500.0, 10.0)),
        "footwell.roof": ((0.0, 300.0), (900.0, 480.0)),
    }
    figures = opening_figures(seated(values))
    assert value(figures, "cockpit.section_width") == pytest.approx(410.0, abs=NEAR)
    assert value(figures, "cockpit.section_height") == pytest.approx(300.0 + 90.0 - 10.0, abs=NEAR)


def test_what_was_not_measured_is_named():
    assert by_id(template_figures(seated({"hoops": None})))["template.helmet_line"].missing == "hoops"
    assert {figure.missing for figure in opening_figures(seated({"cockpit": None}))} == {"cockpit"}
