"""Slots to cut with their intervals, and one slot for several drivers."""

import numpy as np
import pytest

from fitcalc.checks.slot_figures import slotted_straps
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_driver
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.slot_study import guide_wrap, least_radius, most_turn, one_for_all, slot_spreads
from tests.checks.cockpits import car

STRAPS = [f"{kind}_{side}" for kind in ("shoulder", "lap", "crotch") for side in ("left", "right")]


def result(driver, values=(), setup=None, name="hillclimb"):
    return evaluate(car(values, name), load_driver(sample_path(driver)), setup or Setup())


@pytest.mark.parametrize("name", ["hillclimb", "student", "upright"])
def test_the_slot_lies_inside_its_interval(name):
    found = result("otto", name=name)
    spreads = slot_spreads(found)
    for strap in slotted_straps(found.car.harness, found.case):
        for place, spread in zip(
            strap.cut.in_seat[0], (getattr(spreads[strap.name], axis) for axis in "xyz"), strict=True
        ):
            assert spread.low - 1e-6 <= place <= spread.high + 1e-6, strap.name


def test_same_seed_same_interval():
    one, other = (slot_spreads(result("otto"), draws=200) for _ in range(2))
    assert vars(one["shoulder_left"].z) == vars(other["shoulder_left"].z)


def test_a_better_tape_narrows_the_interval():
    rough, fine = load_driver(sample_path("otto")), load_driver(sample_path("robin"))
    assert len(fine.measurements.model_dump(exclude_none=True)) > len(
        rough.measurements.model_dump(exclude_none=True)
    )
    widths = [
        spread.high - spread.low
        for spread in (slot_spreads(result(who))["shoulder_left"].z for who in ("otto", "robin"))
    ]
    assert widths[1] < widths[0]


def test_limits_on_slots_come_from_the_sets():
    """10 deg and 3 mm: rows slot_turn and slot_edge_radius of the workshop set."""
    assert most_turn(result("otto")) == 10.0
    assert least_radius(result("otto")) == 3.0


@pytest.mark.parametrize("strap", STRAPS)
def test_one_driver_twice_has_his_own_slot(strap):
    found = result("otto")
    slot = one_for_all([found, found], strap)
    own = next(each for each in slotted_straps(found.car.harness, found.case) if each.name == strap)
    assert slot.exists
    assert slot.centre == pytest.approx(own.cut.in_seat[0], abs=0.05)
    assert slot.tall == pytest.approx(own.cut.height[0])


def test_the_tall_and_the_short_driver_share_no_shoulder_slot():
    high = {"seat.profile": ((-400.0, 112.0), (0.0, 0.0), (190.0, 240.0), (520.0, 660.0))}
    slot = one_for_all([result("ines", high), result("magnus", high)], "shoulder_left")
    assert not slot.exists
    assert slot.tall > slot.height


@pytest.mark.parametrize("strap", STRAPS)
def test_the_slot_belongs_to_the_seat_and_not_to_the_car(strap):
    """The whole car and everything in it set 100 mm further back: the same slot in the seat."""
    here = one_for_all([result("otto"), result("robin")], strap)
    flipped = one_for_all([result("robin"), result("otto")], strap)
    assert here.centre == pytest.approx(flipped.centre)


@pytest.mark.parametrize("strap", ["shoulder_left", "lap_left"])
def test_a_strap_that_passes_no_shell_needs_no_slot(strap):
    low = ((-400.0, 100.0), (0.0, 0.0), (60.0, 300.0))
    found = result("otto", {"seat.profile": low, "seat.half_width": 390.0, "seat.slots": ()})
    straps = {each.name: each for each in slotted_straps(found.car.harness, found.case)}
    assert (one_for_all([found, found], strap) is None) == (not straps[strap].cut.needed[0])


def test_no_one_slot_where_the_strap_of_one_passes_over_the_rim():
    results = [result("ines"), result("magnus")]
    straps = [next(iter(slotted_straps(each.car.harness, each.case))) for each in results]
    assert [bool(strap.cut.needed[0]) for strap in straps] == [True, False]
    assert one_for_all(results, "shoulder_left") is None


def test_guide_bends_the_strap_by_hand():
    """Level to the guide and from there straight down at 1700 + 20 mm of tube: 90 deg."""
    found = result("otto")
    straps = slotted_straps(found.car.harness, found.case)
    assert [guide_wrap(strap) for strap in straps] == [0.0] * len(straps)
    guide = {"x": 1700.0, "z": 575.0, "diameter": 40.0}
    down = {
        f"harness.shoulder_{side}.{axis}": at
        for side in ("left", "right")
        for axis, at in (("x", 1720.0), ("z", 200.0))
    }
    bent = result("otto", {"harness.guide": guide, "seat.slots": (), **down})
    strap = slotted_straps(bent.car.harness, bent.case)[0]
    before = strap.straight.first[0] - strap.straight.leaves[0]
    drop = np.degrees(np.arctan2(-before[2], before[0]))
    assert guide_wrap(strap) == pytest.approx(90.0 - drop, abs=0.6)


def test_a_car_without_harness_has_no_slots():
    assert slot_spreads(result("robin", {"harness": None})) == {}
