"""The shoe through the pedal's travel, against shapely (independent) and by hand."""

from dataclasses import replace

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from fitcalc.checks.cleats import cleat_figures, closest_shoe, pair_room
from fitcalc.checks.shoe_sweep import STATIONS, half_width_turned, shoe_outline, shoe_sweep
from fitcalc.checks.shoe_travel import rooms_by_travel
from fitcalc.geometry.outlines import path_distance
from fitcalc.geometry.side import point
from fitcalc.posture.cases import column
from fitcalc.posture.pads import pad_at
from fitcalc.posture.sit import foot_pressed
from tests.checks.cockpits import mirrored, seated, seated_in, value, with_links

CHORD = 0.7
"""mm; what an arc of a shoe's corner stands off its chord over a quarter of the travel, 400 mm from the pivot."""
NEAR = 1e-6


def tube(x, z, radius=25.0, y=(-300.0, 300.0)):
    return {"name": "tube", "centre": {"x": x, "z": z}, "radius": radius, "y_low": y[0], "y_high": y[1]}


def plain(name, y, width):
    """A pad without cleats."""
    values = {"pad_y": y, "pivot.y": y, "pad_width": width, "cleat_height": 0.0, "cleat_spacing": None}
    return [(f"pedals.{name}.{key}", given) for key, given in values.items()]


def finely_swept(case, name):
    """Everything that the shoe covers at 81 places of its travel."""
    pedal, worked = case.car.fitted_pedals()[name], case.sitting.pedals[name]
    pads = [pad_at(pedal, getattr(case.setup, name), column(0.0), part) for part in np.linspace(0, 1, 81)[1:]]
    feet = [foot_pressed(name, worked.rest.foot, pad, pedal, case.links, case.car) for pad in pads]
    outlines = [shoe_outline(foot, case.links)[0] for foot in (worked.rest.foot, *feet)]
    return shapely.unary_union([shapely.Polygon(outline[:, [0, 2]]) for outline in outlines])


TALL_PAD = {"pedals.throttle.pad_height": 160.0}
"""So tall that the ball stays on it over the whole travel while the heel is planted."""


@given(st.sampled_from(["clutch", "brake", "throttle"]), st.floats(50, 500), st.floats(20, 420))
@settings(max_examples=40, deadline=None)
def test_room_to_a_tube_agrees_with_a_finely_swept_shoe(name, x, z):
    """Independent: shapely's union of 81 places."""
    case = seated(TALL_PAD | {"footwell.obstacles": (tube(x, z),)})
    expected = finely_swept(case, name).distance(shapely.Point(x, z)) - 25.0
    found = value(cleat_figures(case), f"cleat.{name}.tube")
    assert max(found, -25.0) == pytest.approx(expected, abs=CHORD) or (found < 0 and expected < 0)


def test_a_swept_bar_agrees_with_a_ring_sector():
    """A bar from 160 to 300 mm about a pivot, turned 20 deg: the sector's area is 11239.92 mm2.

    Independent: shapely's distance to a sector of 800 sides; four chords stand 0.3 mm off the outer arc.
    """
    turns = np.radians(np.linspace(0, 20, 801))
    arc = np.stack([np.cos(turns), np.sin(turns)], axis=1)
    sector = shapely.Polygon([*(300 * arc), *(160 * arc[::-1])])
    assert sector.area == pytest.approx(11239.92, rel=1e-5)
    angles = np.radians(20 * np.array(STATIONS))
    bars = np.stack(
        [point(r * np.cos(angles), 0 * angles, r * np.sin(angles)) for r in (160.0, 300.0)], axis=1
    )
    probe = point(np.array([320.0]), np.array([0.0]), np.array([50.0]))
    expected = sector.distance(shapely.Point(320.0, 50.0))
    assert path_distance(bars[None], probe[:, None]) == pytest.approx(expected, abs=0.3)


def test_closest_shoe_says_when_and_where():
    """A tube ahead of the toes is nearest with the pedal at its stop, and the points lie the room apart."""
    case = seated({"footwell.obstacles": (tube(20.0, 230.0),)})
    least = closest_shoe(case, "brake")["cleat.brake.tube"]
    assert least.travel == 1.0
    assert np.linalg.norm(least.points[1] - least.points[0]) == pytest.approx(least.room[0], abs=NEAR)


@given(st.floats(0, 50), st.floats(50, 400), st.floats(20, 400))
@settings(max_examples=25, deadline=None)
def test_a_thicker_tube_never_leaves_more_room(more, x, z):
    rooms = [
        value(cleat_figures(seated({"footwell.obstacles": (tube(x, z, radius),)})), "cleat.brake.tube")
        for radius in (25.0, 25.0 + more)
    ]
    assert rooms[1] <= rooms[0] + NEAR


@given(st.floats(1.0, 1.5))
@settings(max_examples=20, deadline=None)
def test_a_larger_box_never_leaves_more_room(size):
    def room(scale):
        box = tuple(
            (60 + scale * x, 300 + scale * z) for x, z in ((-30, -30), (30, -30), (30, 30), (-30, 30))
        )
        thing = {"name": "box", "outline": box, "y_low": -40.0 * scale, "y_high": 40.0 * scale}
        return value(cleat_figures(seated({"footwell.obstacles": (thing,)})), "cleat.brake.box")

    assert room(size) <= room(1.0) + NEAR


def test_a_tube_beside_the_shoe_is_measured_sideways():
    """Shoe 100 wide on the brake at y = 0; a tube that ends 70 mm to the right leaves 20 mm."""
    case = with_links(
        seated({"footwell.obstacles": (tube(250.0, 150.0, y=(70.0, 200.0)),)}), shoe_width=100.0
    )
    shoe = half_width_turned(case.links, np.array([5.0]))[0]
    assert value(cleat_figures(case), "cleat.brake.tube") == pytest.approx(70.0 - shoe, abs=NEAR)


def test_play_between_cleats_and_on_a_plain_pad():
    """Shoe 98 wide: 108 between the cleats leaves 10; a plain pad 60 wide lets it stand 38 over."""
    cleats = {"pad_width": 120.0, "cleat_height": 10.0, "cleat_spacing": 108.0}
    values = {f"pedals.brake.{key}": given for key, given in cleats.items()}
    figures = cleat_figures(
        with_links(seated(values | dict(plain("throttle", 140.0, 60.0))), shoe_width=98.0)
    )
    assert value(figures, "cleat.brake.play") == pytest.approx(10.0, abs=NEAR)
    assert value(figures, "cleat.throttle.play") == pytest.approx(-38.0, abs=NEAR)


def test_gap_between_pads():
    """Brake 84 wide at y = 0, throttle 46 wide at 104: 104 - 42 - 23."""
    widths = {"brake": (0.0, 84.0), "throttle": (104.0, 46.0)}
    figures = cleat_figures(
        seated({path: given for name, pad in widths.items() for path, given in plain(name, *pad)})
    )
    assert value(figures, "cleat.brake_throttle.pads") == pytest.approx(39.0, abs=NEAR)


def test_shoe_to_neighbouring_pad_is_what_its_overhang_leaves():
    """Side views overlap, so sideways counts: pads 104 apart, the other pad 46 wide: 104 - half a shoe - 23."""
    case = with_links(seated({"pedals.brake.pad_y": 0.0}), shoe_width=110.0)
    brake, throttle = (shoe_sweep(case, name) for name in ("brake", "throttle"))
    near = replace(throttle, pad_low=np.array([104.0 - 23.0]), pad_high=np.array([104.0 + 23.0]))
    half = half_width_turned(case.links, np.array([5.0]))[0]
    assert pair_room(brake, near)[0] == pytest.approx(104.0 - half - 23.0, abs=NEAR)


def test_a_shoe_that_stays_behind_the_other_pad_clears_it_in_depth():
    """The other pad 60 mm ahead of the shoe's foremost corner, straight ahead of it."""
    case = seated()
    brake = shoe_sweep(case, "brake")
    toe = brake.shoes[:, :, 1]
    wall = np.stack([toe - [0.0, 0.0, 300.0], toe + [0.0, 0.0, 300.0]], axis=2) * [0.0, 1.0, 1.0]
    ahead = replace(brake, pads=wall + [brake.shoes[..., 0].min() - 60.0, 0.0, 0.0])
    assert pair_room(brake, ahead)[0] == pytest.approx(60.0, abs=NEAR)


def test_side_wall():
    """Half width 200 throughout, shoe 100 wide on a pad at y = -138."""
    values = {"footwell.half_widths": ((-500.0, 200.0), (1500.0, 200.0)), "pedals.clutch.pad_y": -138.0}
    case = with_links(seated(values), shoe_width=100.0)
    half = half_width_turned(case.links, np.array([5.0]))[0]
    assert value(cleat_figures(case), "cleat.clutch.wall") == pytest.approx(200.0 - 138.0 - half, abs=NEAR)


@pytest.mark.parametrize(("toe_out", "expected"), [(0.0, 50.0), (20.0, 35.0 * 0.9396926 + 200.0 * 0.3420201)])
def test_a_shoe_turned_out_reaches_aside_with_its_heel(toe_out, expected):
    """Shoe 100 wide and 280 long, heel 200 behind the ball and 35 half wide; cos and sin of 20 deg."""
    case = with_links(
        seated(), shoe_width=100.0, shoe_length=280.0, heel_to_ball=190.0, shoe_heel_margin=10.0
    )
    assert half_width_turned(case.links, np.array([toe_out]))[0] == pytest.approx(expected, abs=1e-4)


def test_heel_on_the_floor_touches_it():
    assert value(cleat_figures(seated()), "cleat.brake.floor") == pytest.approx(0.0, abs=NEAR)


def test_a_mirror_leaves_every_clearance_of_the_shoes():
    chassis = seated({"footwell.obstacles": (tube(60.0, 200.0, y=(-200.0, -20.0)),)}).car
    here, there = (cleat_figures(seated_in(each)) for each in (chassis, mirrored(chassis)))
    for one, other in zip(here, there, strict=True):
        assert one.id == other.id
        assert other.value == pytest.approx(one.value, abs=NEAR)


@pytest.mark.parametrize("key", ["roof", "bulkhead", "half_widths"])
def test_what_was_not_measured_is_named(key):
    missing = {figure.missing for figure in cleat_figures(seated({f"footwell.{key}": None}))}
    assert missing == {"", f"footwell.{key}"}


def test_things_of_one_name_keep_apart():
    things = (tube(60.0, 200.0), tube(300.0, 200.0), tube(60.0, 200.0) | {"name": "Roof"})
    ids = {figure.id for figure in cleat_figures(seated({"footwell.obstacles": things}))}
    assert {f"cleat.brake.{key}" for key in ("tube", "tube_2", "roof", "roof_2")} <= ids


def test_what_was_not_measured_has_no_line_over_the_travel():
    whole, bare = (
        set(rooms_by_travel(seated(values), "brake"))
        for values in ({}, {"footwell.bulkhead": None, "footwell.half_widths": None, "footwell.roof": None})
    )
    assert whole - bare == {"cleat.brake.bulkhead", "cleat.brake.wall", "cleat.brake.roof"}


def test_room_along_the_travel_comes_down_to_the_checks_own_figure():
    """Every surface and thing that a figure is on; every station is among the 41 parts.

    In between the corners move straight, so that a line's least lies no more than 0.3 mm from the figure.
    """
    case = seated({"footwell.bulkhead": -200.0, "footwell.obstacles": (tube(20.0, 230.0),)})
    rooms = rooms_by_travel(case, "brake")
    assert rooms.keys() == {f"cleat.brake.{key}" for key in ("roof", "bulkhead", "tube", "wall")}
    for id, line in rooms.items():
        assert line.min() == pytest.approx(value(cleat_figures(case), id), abs=0.3), id
