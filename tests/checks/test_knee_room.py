"""Knees and legs against what surrounds them."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.checks.knees import COLUMN_RADIUS, knee_figures
from tests.checks.cockpits import at, mirrored, seated, seated_in, value, with_links

NEAR = 1e-6
CAR = {
    "footwell.roof": ((0.0, 600.0), (2000.0, 600.0)),
    "footwell.obstacles": (
        {
            "name": "Fire bottle",
            "centre": {"x": 700.0, "z": 120.0},
            "radius": 60.0,
            "y_low": -90.0,
            "y_high": -20.0,
        },
    ),
    "steering_wheel.centre": {"x": 1000.0, "y": 0.0, "z": 500.0},
    "steering_wheel.column_foot": {"x": 300.0, "z": 500.0},
    "hoops.front_top": {"x": 800.0, "z": 640.0},
    "hoops.tube": 40.0,
}


@pytest.fixture
def case():
    """Left leg: hip (1100, -80, 150), knee (800, -80, 400), ankle (400, -80, 150), at rest and pressed alike."""
    found = with_links(seated(CAR), knee_top=50.0, thigh_radius=70.0, shank_radius=55.0)
    clutch = found.sitting.pedals["clutch"]
    joints = {"hip": at(1100, 150, -80), "knee": at(800, 400, -80), "ankle": at(400, 150, -80)}
    leg = replace(clutch.rest, **joints)
    pedals = dict(found.sitting.pedals) | {"clutch": replace(clutch, rest=leg, full=leg)}
    return replace(found, sitting=replace(found.sitting, pedals=pedals))


@pytest.mark.parametrize(
    ("id", "expected"),
    [
        ("knee.left.roof", 600 - 400 - 50),
        ("knee.left.column", np.hypot(80, 100) - COLUMN_RADIUS - 50),
        ("knee.left.hoop", 620 - 400 - 20 - 50),
        ("leg.left.roof", 600 - 400 - 55),
    ],
)
def test_left_knee(case, id, expected):
    """The column runs level at z = 500 over the car's middle; the hoop's tube has its middle at z = 620."""
    assert value(knee_figures(case), id) == pytest.approx(expected, abs=NEAR)


def test_shank_over_a_fire_bottle(case):
    """Shank from (800, 400) to (400, 150): its line passes (700, 120) at (700, 337.5); 217.5 cos, less 60 and 55."""
    expected = 217.5 * 400 / np.hypot(400, 250) - 60 - 55
    assert value(knee_figures(case), "leg.left.fire_bottle") == pytest.approx(expected, abs=NEAR)


def test_the_bottle_is_shown_beside_the_shank_above_it(case):
    """Square from (700, 120) onto the shank's line: 217.5 sin along it from (700, 337.5), slope 250 in 400."""
    figure = next(each for each in knee_figures(case) if each.id == "leg.left.fire_bottle")
    down = 217.5 * 250 * 400 / (400**2 + 250**2)
    on_leg = [700 - down, -80, 337.5 - down * 250 / 400]
    assert figure.evidence[0][0] == pytest.approx(on_leg, abs=NEAR)


def test_a_leg_beside_a_thing_counts_sideways(case):
    """Bottle from y = 10 on, at the height of the shank, which reaches y = -25 with its 55 mm of flesh."""
    bottle = {
        "name": "Fire bottle",
        "centre": {"x": 600.0, "z": 250.0},
        "radius": 60.0,
        "y_low": 10.0,
        "y_high": 90.0,
    }
    chassis = seated(CAR | {"footwell.obstacles": (bottle,)}).car
    room = value(knee_figures(replace(case, car=chassis)), "leg.left.fire_bottle")
    assert room == pytest.approx(35.0, abs=NEAR)


@given(st.floats(0, 40))
def test_a_thicker_thing_never_leaves_more_room(more):
    def room(radius):
        bottle = {
            "name": "b",
            "centre": {"x": 600.0, "z": 120.0},
            "radius": radius,
            "y_low": -90.0,
            "y_high": 90.0,
        }
        return value(knee_figures(seated({"footwell.obstacles": (bottle,)})), "leg.left.b")

    assert room(40.0 + more) <= room(40.0) + NEAR


def test_a_mirror_swaps_the_legs():
    chassis = seated(CAR).car
    here, there = (knee_figures(seated_in(each)) for each in (chassis, mirrored(chassis)))
    for key in ("roof", "column", "wheel", "hoop"):
        assert value(there, f"knee.right.{key}") == pytest.approx(value(here, f"knee.left.{key}"), abs=NEAR)
    assert value(there, "leg.right.fire_bottle") == pytest.approx(
        value(here, "leg.left.fire_bottle"), abs=NEAR
    )


@pytest.mark.parametrize(
    ("values", "missing"),
    [
        ({"steering_wheel": None}, "steering_wheel"),
        ({"steering_wheel.column_foot": None}, "steering_wheel.column_foot"),
    ],
)
def test_a_column_that_was_not_measured_is_asked_for(values, missing):
    figure = next(each for each in knee_figures(seated(values)) if each.id == "knee.left.column")
    assert (figure.value, figure.missing) == (None, missing)
    assert figure.label.startswith("left: ")
