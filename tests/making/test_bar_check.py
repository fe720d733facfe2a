"""The whole check of a bar: own reference cases run through it, and what governs when."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.making import loads
from fitcalc.making.bar_check import BarJob, check_bar, thinnest_stock
from fitcalc.making.bar_loads import FootForce, Reach, foot_parts, on_longer_arm, on_stand_off
from fitcalc.making.bolts import bolt
from fitcalc.making.joints import Bolted, Welded
from fitcalc.making.loads import SIDEWAYS, design_load
from fitcalc.making.materials import material
from fitcalc.making.modes import AMPLE
from fitcalc.making.shapes import flat_bar, round_tube
from fitcalc.making.stock import stock_sizes

LAP = Bolted(bolt("M8"), "8.8", 2, np.r_[40.0], np.r_[16.0])
WELD = Welded(np.r_[4.0])


def foot(force=2000.0, lean=0.0, sideways=0.0):
    return FootForce(np.r_[force], np.r_[lean], np.r_[sideways])


def reach(longer=0.0, stand_off=0.0, offset=0.0):
    return Reach(np.r_[longer], np.r_[stand_off], np.r_[offset])


def job(**changes):
    start = BarJob(foot(), reach(longer=120.0), flat_bar(np.r_[30.0], np.r_[8.0]), material("S355J2"), WELD)
    return replace(start, **changes)


def mode(check, name):
    return next(each for each in check.modes if each.name == name)


def governing(check):
    return check.modes[check.governing[0]].name


def test_reference_bar_in_bending():
    check = check_bar(job())
    assert mode(check, "longer arm: bending and direct stress").safety == pytest.approx(1.775)
    assert check.deflection == pytest.approx(0.3047619, rel=1e-6)


def test_reference_lap():
    check = check_bar(job(reach=reach(longer=100.0), joint=LAP))
    assert mode(check, "longer arm: bolt shear").demand == pytest.approx(7000.0)
    assert mode(check, "longer arm: bearing, elastic").demand == pytest.approx(109.375)
    assert mode(check, "longer arm: net section").demand == pytest.approx(200000.0 / 1173.6576, rel=1e-6)


@pytest.mark.parametrize(("pitch", "factor"), [(20.0, 20.0 / 25.2 - 0.25), (40.0, 15.0 / 25.2)])
def test_bearing_is_limited_by_the_closer_of_next_bolt_and_edge(pitch, factor):
    """EN 1993-1-8 Table 3.4 by hand: k1 = 2.5, 470 MPa, 8 x 8 mm, half the depth the nearest edge."""
    check = check_bar(job(joint=replace(LAP, pitch=np.r_[pitch])))
    assert mode(check, "longer arm: bearing").allowed == pytest.approx(2.5 * factor * 470.0 * 64.0 / 1.25)


def test_foot_force_keeps_its_size_when_it_leans():
    parts = foot_parts(foot(lean=10.0, sideways=SIDEWAYS))
    assert np.linalg.norm(parts) == pytest.approx(2000.0)


@pytest.mark.parametrize("lean", [-12.0, 12.0])
@pytest.mark.parametrize("aside", [-10.0, 10.0])
def test_load_at_the_root_is_the_same_whichever_way_the_foot_leans(lean, aside):
    """Moments by hand: 2000 N split into 1926.6 square, 409.5 along, 347.3 aside; the worst signs taken together."""
    leaning, arms = foot(lean=lean, sideways=aside), reach(longer=50.0, stand_off=30.0, offset=-8.0)
    longer, off = on_longer_arm(leaning, arms), on_stand_off(leaning, arms)
    assert longer.bend_depth == pytest.approx(1926.57 * 50 + 409.51 * 30, rel=1e-4)
    assert (longer.bend_width, longer.twist) == pytest.approx((347.30 * 50, 347.30 * 30), rel=1e-4)
    assert off.bend_depth == pytest.approx(409.51 * 30 + 1926.57 * 8, rel=1e-4)
    assert (off.bend_width, off.twist) == pytest.approx((347.30 * 30, 347.30 * 8), rel=1e-4)
    assert (longer.sideways, off.sideways) == pytest.approx((347.30, 347.30), rel=1e-4)
    assert (longer.offset, off.offset) == (0.0, 8.0)
    assert (longer.across, off.across) == pytest.approx((1926.57, 409.51), rel=1e-4)
    assert (longer.push, off.push) == pytest.approx((-np.sign(lean) * 409.51, 1926.57), rel=1e-4)


def test_a_bar_that_is_pulled_is_stressed_like_one_that_is_pushed():
    pushed, pulled = (
        mode(check_bar(job(foot=foot(lean=lean))), "longer arm: bending and direct stress").demand
        for lean in (-12.0, 12.0)
    )
    assert pushed == pytest.approx(pulled)


def test_only_a_flat_tips_over_sideways():
    flat, tube = job(), job(section=round_tube(np.r_[25.0], np.r_[2.0]))
    named = [[each.name for each in check_bar(one).modes] for one in (flat, tube)]
    assert ["longer arm: tipping sideways" in names for names in named] == [True, False]


def test_design_load_and_its_safety_by_hand():
    """10 deg aside (design inference), 1.5 on yield of steel, 2 beside welds of aluminium: common practice."""
    assert (loads.SIDEWAYS, loads.STEEL_SAFETY, loads.WELDED_ALLOY_SAFETY) == (10.0, 1.5, 2.0)


def test_bar_that_is_not_there_cannot_fail():
    check = check_bar(job())
    absent = [each.safety[0] for each in check.modes if each.name.startswith("stand-off")]
    assert absent == pytest.approx([AMPLE] * len(absent))


def test_square_stand_off_is_pure_compression():
    load = on_stand_off(foot(), reach(stand_off=60.0))
    assert (load.push[0], load.bend_depth[0], load.bend_width[0]) == pytest.approx((2000.0, 0.0, 0.0))


def test_leaning_foot_bends_and_twists_the_longer_arm_through_the_stand_off():
    load = on_longer_arm(foot(lean=30.0, sideways=30.0), reach(longer=100.0, stand_off=50.0))
    square, along, aside = 2000 * 0.75, 2000 * np.sqrt(0.75) * 0.5, 2000 * 0.5
    assert load.bend_depth == pytest.approx(square * 100.0 + along * 50.0)
    assert load.bend_width == pytest.approx(aside * 100.0)
    assert load.twist == pytest.approx(aside * 50.0)
    assert load.push == pytest.approx(-along)


def test_leaning_foot_bends_the_stand_off():
    load = on_stand_off(foot(lean=30.0, sideways=30.0), reach(stand_off=50.0))
    assert load.bend_depth == pytest.approx(2000 * np.sqrt(0.75) * 0.5 * 50.0)
    assert (load.across[0], load.sideways[0]) == pytest.approx((2000 * np.sqrt(0.75) * 0.5, 1000.0))


def test_offset_foot_bends_a_stand_off():
    check = check_bar(job(reach=reach(stand_off=60.0, offset=20.0)))
    wanted = 2000.0 / 240.0 + 2000.0 * 20.0 / 1200.0
    assert mode(check, "stand-off: bending and direct stress").demand == pytest.approx(wanted)


def test_flat_lying_down_fails_where_it_stands_up():
    lying = check_bar(job(section=flat_bar(np.r_[8.0], np.r_[30.0]))).safety
    assert lying < 1.0 < check_bar(job()).safety


def test_sideways_force_finds_the_weak_way_of_a_flat():
    assert check_bar(job(foot=foot(sideways=SIDEWAYS))).safety < check_bar(job()).safety


def test_sideways_force_pulls_on_the_bolts():
    """By hand: 347 N, 176 mm from the bar's end, levers 16 and 56 mm; tension counts 1/1.4."""
    name = "longer arm: bolt shear and tension"
    shear = mode(check_bar(job(foot=foot(sideways=SIDEWAYS), joint=LAP)), "longer arm: bolt shear")
    pulled = 2000.0 * np.sin(np.radians(10.0)) * 176.0 * 56.0 / (16.0**2 + 56.0**2)
    used = mode(check_bar(job(foot=foot(sideways=SIDEWAYS), joint=LAP)), name).demand
    assert used == pytest.approx(shear.demand / 14054.4 + pulled / (1.4 * 21081.6))


def test_bolt_pulls_through_a_thin_wall_before_it_breaks():
    """EN 1993-1-8 Table 3.4 by hand: M8, 13 mm across flats, 470 MPa; the pull is the one that the bolt takes."""
    name = "longer arm: bolt pull-through"
    thick, thin = (
        mode(check_bar(job(foot=foot(sideways=SIDEWAYS), joint=LAP, section=section)), name)
        for section in (flat_bar(np.r_[30.0], np.r_[8.0]), round_tube(np.r_[30.0], np.r_[1.0]))
    )
    assert (thick.allowed[0], thin.allowed[0]) == pytest.approx((73709.3, 9213.7), rel=1e-5)
    assert thick.demand == pytest.approx(
        2000.0 * np.sin(np.radians(10.0)) * 176.0 * 56.0 / (16.0**2 + 56.0**2)
    )
    assert thin.allowed < 21081.6 < thick.allowed


def test_weld_in_alloy_counts_the_heat_affected_strength():
    """6082-T6: 185 MPa beside the weld, correlation factor 1; throat of a 4 mm leg."""
    allowed = mode(check_bar(job(material=material("6082-T6"))), "longer arm: weld throat").allowed
    assert allowed == pytest.approx(185.0 / (np.sqrt(3.0) * 1.25) * 4.0 / np.sqrt(2.0))


def test_small_weld_governs():
    assert governing(check_bar(job(joint=Welded(np.r_[1.0])))) == "longer arm: weld throat"


def test_close_bolts_govern():
    tight = Bolted(bolt("M6"), "8.8", 2, np.r_[20.0], np.r_[16.0])
    assert "bolt shear" in governing(check_bar(job(joint=tight)))


def test_thin_plate_is_governed_by_its_holes():
    thin = check_bar(job(reach=reach(longer=60.0), section=flat_bar(np.r_[60.0], np.r_[2.0]), joint=LAP))
    assert any(word in governing(thin) for word in ("bearing", "tear-out"))


@pytest.mark.parametrize("depth", [6.0, 8.0, 9.0])
def test_hole_as_big_as_the_bar_fails(depth):
    drilled = check_bar(job(section=flat_bar(np.r_[depth], np.r_[8.0]), joint=LAP))
    assert 0.0 < drilled.safety[0] < 0.1
    assert 0.0 < mode(drilled, "longer arm: net section").safety[0] < 0.15
    assert mode(drilled, "stand-off: bearing").safety == pytest.approx(AMPLE)


def test_slender_stand_off_is_governed_by_stability():
    wire = round_tube(np.r_[8.0], np.r_[1.0])
    check = check_bar(job(reach=reach(stand_off=400.0), section=wire))
    euler = np.pi**2 * 210000.0 * np.pi * (8.0**4 - 6.0**4) / 64.0 / 800.0**2
    assert governing(check) == "stand-off: buckling"
    assert check.safety == pytest.approx(euler / 2000.0)


@pytest.mark.parametrize("name", ["6082-T6", "6082-T6 plate", "6061-T6"])
def test_welded_alloy_loses_about_half_and_says_so(name):
    welded, bolted = (check_bar(job(material=material(name), joint=joint)) for joint in (WELD, LAP))
    bending = "longer arm: bending and direct stress"
    assert mode(welded, bending).allowed <= 0.51 * mode(bolted, bending).allowed
    assert "do not weld" in welded.advice[0]


def test_steel_keeps_its_strength_beside_a_weld():
    bending = "longer arm: bending and direct stress"
    allowed = [mode(check_bar(job(joint=joint)), bending).allowed[0] for joint in (WELD, LAP)]
    assert allowed == pytest.approx([355.0, 355.0])


@given(st.floats(100, 5000), st.floats(1.1, 3.0), st.floats(10, 150), st.floats(0, 80))
def test_more_force_is_never_safer(force, factor, longer, stand_off):
    there = reach(longer, stand_off, 10.0)
    less, more = (
        check_bar(job(foot=foot(size, 10.0, 10.0), reach=there, joint=LAP))
        for size in (force, force * factor)
    )
    assert more.safety <= less.safety


def test_cases_are_independent():
    forces = FootForce(np.r_[2000.0, 500.0], np.zeros(2), np.zeros(2))
    two = job(foot=forces, reach=Reach(np.r_[120.0, 60.0], np.r_[0.0, 40.0], np.zeros(2)))
    alone = (check_bar(job()), check_bar(job(foot=foot(500.0), reach=reach(60.0, 40.0))))
    assert check_bar(two).safety == pytest.approx([each.safety[0] for each in alone])
    assert check_bar(two).deflection == pytest.approx([each.deflection[0] for each in alone])


@pytest.mark.parametrize("shape", ["flat", "round bar", "round tube", "square tube", "angle"])
@pytest.mark.parametrize("joint", [LAP, WELD], ids=["bolted", "welded"])
def test_thinnest_stock_passes_and_every_smaller_size_does_not(shape, joint):
    task = job(foot=foot(1000.0, 10.0, 10.0), reach=reach(60.0, 40.0, 10.0), joint=joint)
    choice = thinnest_stock(task, stock_sizes(shape), np.r_[1.5])
    smaller = [
        check_bar(replace(task, section=size.section)).safety[0] for size in choice.stock[: choice.index[0]]
    ]
    assert choice.safety >= 1.5
    assert choice.shortfall == 0.0
    assert all(safety < 1.5 for safety in smaller)


def test_no_stock_size_passes_an_absurd_load():
    choice = thinnest_stock(job(foot=foot(1e6)), stock_sizes("flat"), np.r_[1.5])
    assert choice.shortfall == pytest.approx(1.5 - choice.safety)
    assert choice.shortfall[0] > 0


@pytest.mark.parametrize(("pedal", "force"), [("brake", 2000.0), ("clutch", 1000.0), ("throttle", 500.0)])
def test_design_loads(pedal, force):
    assert design_load(pedal).force == force


def test_only_the_brake_load_is_a_rule():
    assert design_load("brake").source.confidence == "seen in text"
    assert {design_load(pedal).source.confidence for pedal in ("clutch", "throttle")} == {"design inference"}


@pytest.mark.parametrize(
    ("size", "apart", "end"), [("M8", "24 mm apart", "16 mm from"), ("M10", "30 mm apart", "20 mm from")]
)
def test_bolts_are_to_stand_three_diameters_apart_and_two_from_the_end(size, apart, end):
    advice = check_bar(job(joint=replace(LAP, bolt=bolt(size)))).advice[0]
    assert apart in advice
    assert end in advice


@pytest.mark.parametrize(
    ("size", "pitch", "given"),
    [
        ("M8", 40.0, ""),
        ("M10", 40.0, "gives 16 mm from the end."),
        ("M10", 25.0, "gives 25 mm apart and 16 mm from"),
    ],
)
def test_a_joint_tighter_than_advised_is_told_so(size, pitch, given):
    lap = replace(LAP, bolt=bolt(size), pitch=np.r_[pitch])
    advice = check_bar(job(joint=lap)).advice[0]
    assert given in advice
    assert ("the car file gives" in advice) == bool(given)


@pytest.mark.parametrize("lean", [30.0, -30.0, 150.0])
def test_deflection_is_that_of_both_bars_bent_at_their_ends(lean):
    """E I = 210,000 x 18,000; 120 mm bent by 2000 cos 30 at its end and by 1000 x 40 of the stand-off, 40 mm by 1000.

    F L^3 / 3 E I and M L^2 / 2 E I, added up however the foot leans.
    """
    stiffness = 210_000.0 * 18_000.0
    square, along = 2000.0 * np.cos(np.radians(30)), 1000.0
    longer = square * 120.0**3 / 3 + along * 40.0 * 120.0**2 / 2
    expected = (longer + along * 40.0**3 / 3) / stiffness
    found = check_bar(job(foot=foot(lean=lean), reach=reach(longer=120.0, stand_off=40.0))).deflection
    assert found == pytest.approx(expected)


def test_tear_out_is_to_the_nearest_edge():
    """M8 lap: 16 mm to the bar's end, but 15 to its side; two planes of 15 x 8 mm for the worst bolt's 7000 N."""
    check = check_bar(job(reach=reach(longer=100.0), joint=LAP))
    assert mode(check, "longer arm: tear-out, elastic").demand == pytest.approx(7000.0 / (2 * 15.0 * 8.0))
