"""Feet against axle line and bulkhead, pad heights, heel and toe: cases worked by hand."""

from dataclasses import replace

import numpy as np
import pytest

from fitcalc.checks.feet import feet_figures
from fitcalc.checks.pad_heights import pad_height_figures
from tests.checks.cockpits import at, seated, value, with_links

NEAR = 1e-6
UPRIGHT_PADS = {
    f"pedals.{name}.{key}": given
    for name in ("brake", "throttle")
    for key, given in {"rest_angle": 0.0, "pad_tilt": 0.0, "arm": 250.0}.items()
} | {
    "pedals.brake.pivot": {"x": 230.0, "y": 0.0, "z": 420.0},
    "pedals.throttle.pivot": {"x": 220.0, "y": 136.0, "z": 420.0},
    "pedals.brake.travel_angle": 20.0,
}


def test_a_toe_ahead_of_the_axle_line_is_negative():
    """The brake's foot pressed with its toe 25 mm ahead of the line; every other sole is behind it."""
    case = seated()
    foot = case.sitting.pedals["brake"].full.foot
    ahead = replace(case.sitting.pedals["brake"].full, foot=replace(foot, toe=at(-25.0, 200.0)))
    pedals = dict(case.sitting.pedals) | {"brake": replace(case.sitting.pedals["brake"], full=ahead)}
    moved = replace(case, sitting=replace(case.sitting, pedals=pedals))
    assert value(feet_figures(moved), "feet.axle_line") == pytest.approx(-25.0, abs=NEAR)


def test_pad_to_bulkhead_at_full_travel():
    """Arm 250 from a pivot at x = 230, upright at rest, pressed 20 deg: the pad's lower edge 20 mm below its centre."""
    case = seated(UPRIGHT_PADS | {"footwell.bulkhead": -100.0, "pedals.brake.pad_height": 40.0})
    foremost = 230 - (250 + 20) * np.sin(np.radians(20))
    assert value(feet_figures(case), "pedal.brake.bulkhead") == pytest.approx(foremost + 100, abs=NEAR)


def test_room_for_a_foot_rest():
    """Wall at -230, the clutch's pad centred at -140, shoe 45 wide."""
    values = {"footwell.half_widths": ((-500.0, 230.0), (1500.0, 230.0)), "pedals.clutch.pad_y": -140.0}
    case = seated(values)
    width = case.car.pedals.clutch.pad_width
    shod = with_links(case, shoe_width=45.0)
    assert value(feet_figures(shod), "pedal.rest_room") == pytest.approx(230 - 140 - width / 2 - 45, abs=NEAR)


def test_pad_height_is_what_the_heel_stands_above_the_floor():
    """Upright pad 170 mm above a level floor, heel to ball 190 along the upright sole: 20 mm below the floor."""
    values = UPRIGHT_PADS | {"footwell.floor": ((-500.0, 0.0), (1500.0, 0.0)), "footwell.heel_rest": None}
    case = with_links(seated(values), heel_to_ball=182.0, shoe_heel_margin=8.0)
    assert value(pad_height_figures(case), "height.brake.pad") == pytest.approx(170.0 - 190.0, abs=NEAR)


def test_heel_and_toe_at_half_the_brake_travel():
    """Brake pressed 10 of its 20 deg from x = 230: (230 - 250 sin 10 - 220) rearward, 250 (1 - cos 10) up."""
    figures = pad_height_figures(seated(UPRIGHT_PADS))
    s, c = np.sin(np.radians(10)), np.cos(np.radians(10))
    assert value(figures, "height.heel_toe_step") == pytest.approx(10 - 250 * s, abs=NEAR)
    assert value(figures, "height.heel_toe_height") == pytest.approx(250 * (1 - c), abs=NEAR)


def test_without_a_bulkhead_it_is_named():
    missing = {figure.missing for figure in feet_figures(seated({"footwell.bulkhead": None}))}
    assert missing == {"", "footwell.bulkhead"}
