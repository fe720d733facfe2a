"""Where slots belong in the shell, against cases worked by hand."""

import numpy as np
import pytest
from cockpits import by_id, seated, value, with_links, with_trunk

from fitcalc.checks.harness import harness_figures
from fitcalc.checks.pelvis_straps import slotted_lap, straight_lap
from fitcalc.checks.shoulder_straps import slotted_shoulder, straight_shoulder
from fitcalc.checks.slot_figures import slotted_straps
from fitcalc.checks.slots import SlotRange, allowed_range, in_seat_frame, shared_slot
from fitcalc.documents.car_seat import Slot
from fitcalc.documents.setup import Setup
from fitcalc.geometry.crossing import crossing

UPRIGHT_BACK = {
    "seat.profile": ((-400.0, 0.0), (0.0, 0.0), (0.001, 900.0)),
    "seat.junction": {"x": 1500.0, "y": 0.0, "z": 0.0},
    "seat.shell_thickness": 10.0,
}
MM = np.array([1.0])


def level_straps(slots=(), **values):
    """Shoulder joint at 1400, 500, strap 100 mm above it, level to anchors at 1800: it crosses the back at 600."""
    anchors = {
        f"harness.shoulder_{side}": {"x": 1800.0, "y": y, "z": 600.0}
        for side, y in (("left", -80.0), ("right", 80.0))
    }
    case = seated({**UPRIGHT_BACK, **anchors, "seat.slots": slots, **values})
    case = with_links(case, strap_above_shoulder=100.0, strap_half_spacing=80.0)
    return with_trunk(case, shoulder=(1400, 0, 500), recline=25.0)


def slot(z, y=-80.0, length=85.0):
    return Slot(strap="shoulder_left", x=0.0, y=y, z=z, length=length, edge_radius=4.0)


def test_level_strap_crosses_an_upright_back_at_its_own_height():
    figures = harness_figures(level_straps())
    assert value(figures, "harness.shoulder_left.slot_z") == pytest.approx(600)
    assert value(figures, "harness.shoulder_left.slot_y") == pytest.approx(-80)
    assert value(figures, "harness.shoulder_left.slot_x") == pytest.approx(0, abs=0.01)


def test_slot_needed_by_hand():
    """75 mm strap square to the shell: 75 + 2 x 5 long, 3 + 2 x 5 high."""
    figures = harness_figures(level_straps())
    assert value(figures, "harness.shoulder_left.slot_length") == pytest.approx(85)
    assert value(figures, "harness.shoulder_left.slot_height") == pytest.approx(13, abs=1e-3)


def test_slot_positions_stay_with_the_seat_when_anchors_move_with_it():
    """A point of the seat has the same place in the seat's frame whatever the rework does to the seat."""
    moved = seated(setup=Setup(seat_travel=40.0, seat_raise=10.0, recline=5.0))
    found = seated()
    for here in (moved, found):
        straps = {each.name: each for each in slotted_straps(here.car.harness, here)}
        back = in_seat_frame(straps["shoulder_left"].cut.at, here)[0]
        profile = np.array([(x, 0.0, z) for x, z in here.car.seat.profile[3:]])[None]
        off = crossing(back[None] - [[50.0, 0, 0]], back[None] + [[50.0, 0, 0]], profile).at[0] - back
        assert np.hypot(off[0], off[2]) == pytest.approx(0, abs=1e-6)


def test_slot_where_the_strap_crosses_leaves_it_straight():
    figures = harness_figures(level_straps((slot(600.0),)))
    assert value(figures, "harness.shoulder_left.slot_turn") == pytest.approx(0, abs=1e-3)
    assert value(figures, "harness.shoulder_left.slot_offset") == pytest.approx(0, abs=1e-3)
    assert value(figures, "harness.shoulder_left.slot_end_gap") == pytest.approx(5)


def test_low_slot_bends_the_strap_by_hand():
    """Slot 80 mm below the strap, 300 mm ahead of the anchor: the strap leaves it rising atan(80/300) = 14.93 deg.

    From the shoulder it drops to the slot along the tangent of a circle: joint at 0, 0, radius 100, slot at 100, 20.
    """
    case = level_straps((slot(520.0),))
    strap = slotted_shoulder(case.car.harness, "left", case.car.seat.slots[0], case)
    apart = np.hypot(100, 20)
    tangent = np.degrees(np.arcsin(100 / apart) - np.arctan2(20, 100))
    assert strap.turn[0] == pytest.approx(tangent + 14.931417, abs=1e-3)


def test_straps_edge_at_the_end_of_a_slot_set_aside():
    """A slot 85 long and 20 mm off leaves the edge of a 75 mm strap 15 mm beyond its end."""
    figures = harness_figures(level_straps((slot(600.0, y=-100.0),)))
    assert value(figures, "harness.shoulder_left.slot_end_gap") == pytest.approx(-15)


def test_edge_force_goes_with_the_bend():
    figures = harness_figures(level_straps((slot(520.0),)))
    turn = value(figures, "harness.shoulder_left.slot_turn")
    force = value(figures, "harness.shoulder_left.slot_edge_force")
    assert force == pytest.approx(2000 * np.sin(np.radians(turn / 2)))


@pytest.mark.parametrize(("top", "clearance"), [(580.0, 20), (600.0, 0), (630.0, -30)])
def test_strap_over_a_back_without_slots(top, clearance):
    """Level strap at 600 over a back that ends at `top`."""
    profile = ((-400.0, 0.0), (0.0, 0.0), (0.001, top))
    figures = harness_figures(level_straps(**{"seat.profile": profile}))
    assert value(figures, "harness.shoulder_left.shell_clearance") == pytest.approx(clearance, abs=1e-6)


@pytest.mark.parametrize(
    ("top", "over", "needed"),
    [(700.0, 0.0, True), (603.0, 3.5, True), (598.0, 8.5, False), (580.0, 26.5, False)],
)
def test_a_strap_over_the_rim_needs_no_slot(top, over, needed):
    """Level strap at 600, slot 13 mm high: it reaches to 606.5, over a back that ends at `top`."""
    case = level_straps(**{"seat.profile": ((-400.0, 0.0), (0.0, 0.0), (0.001, top))})
    cut = next(each.cut for each in slotted_straps(case.car.harness, case) if each.name == "shoulder_left")
    assert cut.over[0] == pytest.approx(over, abs=1e-3)
    assert bool(cut.needed[0]) is needed


def test_a_crotch_strap_ahead_of_the_cushion_needs_no_slot():
    """Groin above the front edge: anchors 200 mm ahead of the edge leave the cushion alone, right under it they don't."""
    needed = []
    for x in (900.0, 1400.0):
        crotch = ({"x": x, "y": -40.0, "z": -150.0}, {"x": x, "y": 40.0, "z": -150.0})
        case = level_straps(**{"harness.crotch": crotch})
        case = with_trunk(case, hip=(1150.0, 0.0, 90.0))
        straps = {each.name: each.cut for each in slotted_straps(case.car.harness, case)}
        needed.append(bool(straps["crotch_left"].needed[0]))
    assert needed == [False, True]


def test_lap_strap_without_a_slot_is_not_assessed():
    figures = by_id(harness_figures(level_straps()))
    assert figures["harness.lap_left.slot_turn"].value is None
    assert "lap_left" in figures["harness.lap_left.slot_turn"].missing


def test_allowed_range_bends_the_strap_by_just_what_is_allowed():
    """100 mm before and 300 mm behind the shell, 10 deg: 13.08 mm to either side, as atan(d/100) + atan(d/300)."""
    case = level_straps()
    straight = straight_shoulder(case.car.harness, "left", case)
    cut = next(each.cut for each in slotted_straps(case.car.harness, case) if each.name == "shoulder_left")
    span = allowed_range(cut, straight, np.array([10.0]), 75 * MM)
    aside = (span.high - span.low) / 2
    bend = np.degrees(np.arctan(aside / 100) + np.arctan(aside / 300))
    assert bend == pytest.approx(10, abs=1e-3)
    assert (span.low + span.high) / 2 == pytest.approx(600)


def test_one_slot_for_all_is_what_their_ranges_share():
    shared = shared_slot(
        [
            SlotRange(500 * MM, 540 * MM, -125 * MM, -40 * MM),
            SlotRange(520 * MM, 560 * MM, -130 * MM, -45 * MM),
        ]
    )
    assert (shared.low[0], shared.high[0], shared.shortfall[0]) == (520, 540, 0)
    assert (shared.left[0], shared.right[0]) == (-130, -40)


def test_no_one_slot_for_drivers_too_far_apart():
    shared = shared_slot(
        [
            SlotRange(500 * MM, 510 * MM, -125 * MM, -40 * MM),
            SlotRange(530 * MM, 560 * MM, -125 * MM, -40 * MM),
        ]
    )
    assert shared.shortfall[0] == 20
    assert shared.low[0] == shared.high[0] == 520


def test_the_tall_and_the_short_driver_need_two_slots():
    spans = []
    for driver in ("ines", "magnus"):
        case = seated(driver=driver)
        strap = next(each for each in slotted_straps(case.car.harness, case) if each.name == "shoulder_left")
        spans.append(allowed_range(strap.cut, strap.straight, np.array([5.0]), strap.width))
    assert shared_slot(spans).shortfall[0] > 0


@pytest.mark.parametrize(
    ("end", "at", "miss"),
    [((200, 100), (100, 50), 0), ((50, 25), (100, 50), 50 * 5**0.5 / 2), ((200, -100), (100, -50), 0)],
)
def test_crossing_by_hand(end, at, miss):
    """A line from the origin and an upright at x = 100, carried straight on below its foot at 0."""
    profile = np.array([[[100.0, 0, 0], [100.0, 0, 80], [100.0, 0, 160]]])
    found = crossing(np.zeros((1, 3)), np.array([[end[0], 0.0, end[1]]], dtype=float), profile)
    assert found.at[0, [0, 2]] == pytest.approx(at)
    assert found.along[0] == pytest.approx(at[1])
    assert found.miss[0] == pytest.approx(miss)


def test_crossing_of_a_parallel_line_is_finite():
    profile = np.array([[[100.0, 0, 0], [100.0, 0, 80]]])
    found = crossing(np.zeros((1, 3)), np.array([[0.0, 0, 50]]), profile)
    assert np.isfinite(found.at).all()


@pytest.mark.parametrize(
    ("values", "by"),
    [
        ({"harness.shoulder_left.y": -20.0}, "plan_angle"),
        ({"harness.shoulder_left.z": 500.0}, "side_angle"),
    ],
)
def test_slot_of_a_strap_that_passes_the_shell_askew(values, by):
    """10 mm of shell: run inward by `a` asks 10 tan a more length; dropping by it 10 tan a more height.

    Either way 3 mm of webbing crosses the shell's face over 3 / cos a. Back 0.001 in 900 off plumb: 1e-3 mm.
    """
    figures = harness_figures(level_straps(**values))
    turn = np.radians(value(figures, f"harness.shoulder_left.{by}"))
    assert turn > 0.1
    longer, higher = (np.tan(turn), 0.0) if by == "plan_angle" else (0.0, np.tan(turn))
    assert value(figures, "harness.shoulder_left.slot_length") == pytest.approx(85 + 10 * longer, abs=1e-3)
    assert value(figures, "harness.shoulder_left.slot_height") == pytest.approx(
        10 + 3 / np.cos(turn) + 10 * higher, abs=1e-3
    )


@pytest.mark.parametrize("driver", ["magnus", "otto"])
def test_lap_slot_where_the_strap_passes_leaves_it_as_it_was(driver):
    bare = seated({"seat.slots": ()}, driver=driver)
    straight = straight_lap(bare.car.harness, "left", bare)
    cut = next(each.cut for each in slotted_straps(bare.car.harness, bare) if each.name == "lap_left")
    x, y, z = map(float, cut.in_seat[0])
    mine = Slot(strap="lap_left", x=x, y=y, z=z, length=90.0, edge_radius=4.0)
    slotted = slotted_lap(bare.car.harness, "left", mine, bare)
    assert slotted.leaves == pytest.approx(straight.leaves, abs=1e-3)
    assert slotted.length == pytest.approx(straight.length, abs=1e-3)
    assert slotted.turn[0] == pytest.approx(0.0, abs=0.01)


def test_a_slot_lies_from_the_middle_of_a_seat_that_stands_aside():
    """Seat and anchors 150 mm to the left: the slot has the same place in the seat, and a cut one fits as well."""
    sides = {"shoulder_left": -230.0, "shoulder_right": -70.0, "lap_left": -375.0, "lap_right": 75.0}
    aside = {
        "seat.junction": {"x": 1500.0, "y": -150.0, "z": 0.0},
        **{f"harness.{name}.y": y for name, y in sides.items()},
    }
    case = with_trunk(level_straps((slot(600.0),), **aside), shoulder=(1400, -150, 500))
    figures = harness_figures(case)
    assert value(figures, "harness.shoulder_left.slot_y") == pytest.approx(-80)
    assert value(figures, "harness.shoulder_left.slot_end_gap") == pytest.approx(5)
