"""Bolt groups and weld lines: own reference case, equilibrium of random groups, exact line integrals."""

import numpy as np
import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.making import bolts, welds
from fitcalc.making.bar_loads import RootLoad
from fitcalc.making.joints import Bolted, Welded, bolt_shear, bolt_tension, net_stress, welded_modes
from fitcalc.making.materials import material
from fitcalc.making.shapes import equal_angle, flat_bar, round_tube

FLAT = flat_bar(np.r_[30.0], np.r_[8.0])
LAP = Bolted(bolts.bolt("M8"), "8.8", 2, np.r_[40.0], np.r_[16.0])
coordinates = st.lists(st.tuples(st.floats(-100, 100), st.floats(-100, 100)), min_size=2, max_size=6)


def root_load(**given_values):
    none = dict.fromkeys(
        ("length", "push", "across", "sideways", "bend_depth", "bend_width", "twist", "offset"), np.r_[0.0]
    )
    return RootLoad(**none | {name: np.r_[value] for name, value in given_values.items()})


def cross(arm, load):
    return arm[..., 0] * load[..., 1] - arm[..., 1] * load[..., 0]


@given(coordinates, st.floats(-1e6, 1e6))
def test_bolt_forces_balance_the_moment(places, moment):
    places = np.array([[*places, (150.0, 0.0)]])
    lever = places - places.mean(axis=1, keepdims=True)
    each = bolts.turning_forces(lever, np.r_[moment])
    assert np.sum(each, axis=1) == pytest.approx(np.zeros((1, 2)), abs=1e-6)
    assert np.sum(cross(places, each)) == pytest.approx(moment, abs=1e-4)


def test_worst_bolt_of_a_two_bolt_lap():
    """2 kN at 100 mm before the first of two bolts 40 mm apart: 5 kN and 7 kN."""
    load = root_load(length=100.0, across=2000.0, bend_depth=200000.0)
    assert bolt_shear(load, LAP) == pytest.approx(7000.0)


@given(st.floats(20, 60), st.floats(1.5, 3.0))
def test_pitch_is_the_lever(pitch, factor):
    load = root_load(length=100.0, across=2000.0, bend_depth=200000.0)
    wide = Bolted(bolts.bolt("M8"), "8.8", 2, np.r_[pitch * factor], np.r_[16.0])
    assert bolt_shear(load, wide) < bolt_shear(
        load, Bolted(bolts.bolt("M8"), "8.8", 2, np.r_[pitch], np.r_[16.0])
    )


def test_bar_pushed_sideways_pries_about_its_end():
    """100 N at 84 mm before the first bolt, 140 mm from the bar's end; levers 16 and 56 mm."""
    pulled = bolt_tension(root_load(sideways=100.0, bend_width=8400.0), FLAT, LAP)
    assert pulled == pytest.approx(14000.0 * 56.0 / (16.0**2 + 56.0**2))


def test_twisted_bar_pries_about_its_side():
    assert bolt_tension(root_load(twist=6000.0), FLAT, LAP) == pytest.approx(6000.0 / 15.0 / 2.0)


@pytest.mark.parametrize(
    ("change", "stress"), [({"push": 7000.0}, 7000.0 / (240.0 - 67.2)), ({"push": -7000.0}, 40.509)]
)
def test_net_section_in_tension_and_compression(change, stress):
    assert net_stress(root_load(**change), FLAT, np.r_[8.4]) == pytest.approx(stress, rel=1e-4)


def test_net_section_bent_the_weak_way():
    """A central hole leaves (30 - 8.4) x 8 mm: W = 21.6 x 64 / 6."""
    assert net_stress(root_load(bend_width=1e4), FLAT, np.r_[8.4]) == pytest.approx(1e4 / 230.4)


def test_weld_of_a_bent_flat():
    """Outline 30 x 8 as lines: I = 8100 mm3 in depth, 1045.333 mm3 in width; greatest pull at a corner."""
    load = root_load(bend_depth=81000.0, bend_width=10453.33, push=760.0)
    mode = welded_modes(load, FLAT, material("S235JR"), Welded(np.r_[4.0]))[0]
    assert mode.demand == pytest.approx(10.0 * 15.0 + 10.0 * 4.0 + 10.0, rel=1e-4)


def test_hole_stresses_of_the_reference_lap():
    assert bolts.bearing_stress(np.r_[7000.0], np.r_[8.0], np.r_[8.0]) == pytest.approx(109.375)
    assert bolts.tear_out_stress(np.r_[7000.0], np.r_[16.0], np.r_[8.0]) == pytest.approx(27.34375)


def test_net_section_of_the_reference_lap():
    stress = net_stress(root_load(bend_depth=1e6), FLAT, np.r_[8.4])
    assert 1e6 / stress == pytest.approx(1173.6576, rel=1e-6)


def test_hole_in_an_angle_is_off_its_centroid():
    angle = equal_angle(np.r_[40.0], np.r_[4.0])
    assert bolts.hole_offset(angle) == pytest.approx(20.0 - 11.473684, rel=1e-6)
    assert bolts.hole_offset(FLAT) == pytest.approx(0.0)


@given(st.floats(100, 1e5), st.lists(st.floats(5, 300), min_size=1, max_size=5))
def test_tipping_bracket_is_in_balance_about_its_edge(moment, levers):
    tension = bolts.edge_pivot_tension(np.r_[moment], np.array([levers]))
    assert np.sum(tension * levers) == pytest.approx(moment)


def test_m8_design_resistances():
    """Own reference case: EN 1993-1-8 Table 3.4 with ISO 898-1's stress area."""
    shear = bolts.shear_resistance(np.r_[0.6], np.r_[800.0], np.r_[36.6])
    assert (shear[0], bolts.tension_resistance(np.r_[800.0], np.r_[36.6])[0]) == pytest.approx(
        (14054.4, 21081.6)
    )


@pytest.mark.parametrize(("grade", "factor"), [("8.8", 0.6), ("10.9", 0.5), ("12.9", 0.5)])
def test_harder_bolts_count_less_in_shear_through_the_thread(grade, factor):
    """EN 1993-1-8 Table 3.4, alpha_v, for 8.8 and 10.9; 12.9, which it does not list, as the harder of them."""
    assert bolts.thread_shear_factor(grade) == factor


def test_plain_tension_is_not_allowed_1_4_times():
    limits = (np.r_[10000.0], np.r_[20000.0])
    assert bolts.interaction(np.r_[0.0], np.r_[20000.0], limits) == pytest.approx(1.0)


def test_wide_spacing_leaves_bearing_to_the_plate():
    strengths = (np.r_[800.0], np.r_[360.0])
    sideways, end = bolts.bearing_factors(np.r_[9.0], np.r_[100.0], np.r_[100.0], strengths)
    assert (sideways[0], end[0]) == pytest.approx((2.5, 1.0))
    assert bolts.inner_bearing_factor(np.r_[9.0], np.r_[100.0], strengths) == pytest.approx(1.0)


def exact_line(depth, width):
    """Second moment in depth of a rectangle's outline as four lines, integrated by sympy."""
    t, half = sympy.Symbol("t"), sympy.Rational(depth, 2)
    return float(2 * sympy.integrate(t**2, (t, -half, half)) + 2 * width * half**2)


def test_weld_all_round_a_flat():
    line = welds.all_round(FLAT)
    assert line.length == pytest.approx(76.0)
    assert line.inertia_depth == pytest.approx(exact_line(30, 8))
    assert line.inertia_width == pytest.approx(exact_line(8, 30))


def test_weld_all_round_a_tube_is_a_thin_ring():
    """A ring of wall 1e-4 mm has the line's second moment times its wall."""
    thin = round_tube(np.r_[25.0 + 5e-5], np.r_[1e-4])
    line = welds.all_round(round_tube(np.r_[25.0], np.r_[2.0]))
    assert line.inertia_depth == pytest.approx(thin.inertia_depth / 1e-4, rel=1e-4)


def test_weld_round_an_angle_is_balanced_about_its_own_centre():
    line = welds.all_round(equal_angle(np.r_[40.0], np.r_[4.0]))
    assert line.length == pytest.approx(160.0)
    assert line.inertia_depth == pytest.approx(line.inertia_width)


def test_pull_spreads_evenly_over_a_weld():
    pull = np.array([[1520.0, 0.0, 0.0]])
    pulled = welds.line_force(welds.all_round(FLAT), pull, np.r_[0.0], np.zeros((1, 2)))
    assert pulled == pytest.approx(1520.0 / 76.0)


@pytest.mark.parametrize(
    ("tensile", "beta", "strength"), [(360, 0.8, 207.8), (430, 0.85, 233.7), (490, 0.9, 251.5)]
)
def test_weld_strength_by_steel_grade(tensile, beta, strength):
    """Own reference: f_u / (sqrt(3) beta 1.25), rounded to 0.1 MPa."""
    assert welds.weld_strength(np.r_[float(tensile)], np.r_[beta]) == pytest.approx(strength, abs=0.06)


def test_weld_along_an_outline_is_the_same_wherever_the_outline_lies():
    corners = np.array([[[0.0, 0.0], [30.0, 0.0], [30.0, 8.0], [0.0, 8.0]]])
    here, there = welds.polygon_line(corners), welds.all_round(FLAT)
    assert here.inertia_depth == pytest.approx(there.inertia_depth)
    assert here.inertia_width == pytest.approx(there.inertia_width)
    assert np.max(np.abs(here.ends), axis=1) == pytest.approx(np.array([[15.0, 4.0]]))


def test_twist_and_shear_add_where_they_run_the_same_way():
    """One run 20 deep and 10 wide of the centre, polar 2000: 10 N/mm along the width by the push.

    A twist of 1000 N mm gives 0.5 N/mm for each mm: 10 along the width at 20 in depth, -5 along the depth.
    """
    one = welds.WeldLine(np.r_[100.0], np.r_[1500.0], np.r_[500.0], np.array([[[20.0, 10.0]]]))
    for side, expected in ((1000.0, np.hypot(20.0, 5.0)), (-1000.0, 5.0)):
        force = welds.line_force(one, np.array([[0.0, 0.0, side]]), np.r_[1000.0], np.zeros((1, 2)))
        assert force == pytest.approx(expected)


def test_bending_stress_is_that_of_the_farthest_fibre_on_either_side():
    """An angle 40 x 4 has its centroid 11.474 mm from one side and 28.526 from the other; no hole."""
    angle = equal_angle(np.r_[40.0], np.r_[4.0])
    stress = net_stress(root_load(bend_depth=1e5), angle, np.r_[0.0])
    assert stress == pytest.approx(1e5 * 28.526316 / 46081.123, rel=1e-6)
