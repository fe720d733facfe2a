"""Bars: sympy's Beam and sectionproperties' stresses (independent), own reference case, limits."""

import numpy as np
import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st
from sectionproperties.analysis import Section as Meshed
from sectionproperties.pre.library import angle_section
from sympy.physics.continuum_mechanics.beam import Beam

from fitcalc.making import bars
from fitcalc.making.shapes import equal_angle, flat_bar, round_bar

FLAT = flat_bar(np.r_[30.0], np.r_[8.0])
STEEL = np.r_[210000.0]
YIELD = np.r_[355.0]


def held(length, stiffness, *loads):
    """Deflection of a bar held at its left end by sympy; loads are (value, place, order)."""
    reaction, moment = sympy.symbols("R M")
    beam = Beam(length, 1, stiffness)
    for load in ((reaction, 0, -1), (moment, 0, -2), *loads):
        beam.apply_load(*load)
    beam.bc_deflection, beam.bc_slope = [(0, 0)], [(0, 0)]
    beam.solve_for_reaction_loads(reaction, moment)
    return beam


def at(expression, place):
    return float(expression.subs(sympy.Symbol("x"), place))


def test_end_load_against_sympy():
    beam, stiffness = held(120, 210000 * 18000, (-2000, 120, -1)), np.r_[210000.0 * 18000]
    assert bars.end_deflection(np.r_[2000.0], np.r_[120.0], stiffness) == pytest.approx(
        abs(at(beam.deflection(), 120))
    )


def test_end_moment_against_sympy():
    beam, stiffness = held(120, 210000 * 18000, (50000, 120, -2)), np.r_[210000.0 * 18000]
    tip = bars.moment_deflection(np.r_[50000.0], np.r_[120.0], stiffness)
    assert tip == pytest.approx(abs(at(beam.deflection(), 120)))


def test_bending_moment_at_the_root_against_sympy():
    beam = held(120, 210000 * 18000, (-2000, 120, -1))
    moment = np.r_[abs(at(beam.bending_moment(), sympy.Rational(1, 10**6)))]
    assert bars.bending_stress(FLAT, moment, np.r_[0.0]) == pytest.approx(200.0, rel=1e-6)


def test_reference_bar():
    assert bars.bending_stress(FLAT, np.r_[240000.0], np.r_[0.0]) == pytest.approx(200.0)
    assert bars.bending_stress(FLAT, np.r_[0.0], np.r_[240000.0]) == pytest.approx(750.0)
    assert bars.shear_stress(FLAT, np.r_[2000.0]) == pytest.approx(12.5)
    assert bars.end_deflection(np.r_[2000.0], np.r_[120.0], STEEL * 18000) == pytest.approx(
        0.3047619, rel=1e-6
    )


def test_unrestrained_angle_bends_about_its_principal_axes():
    """Greatest stress of a moment in depth alone, from the library's finite-element stress field."""
    other = Meshed(angle_section(d=40, b=40, t=4, r_r=0, r_t=0, n_r=1).create_mesh([0.5]))
    other.calculate_geometric_properties()
    other.calculate_warping_properties()
    field = other.calculate_stress(mxx=1e5).get_stress()[0]["sig_zz"]
    stress = bars.bending_stress(equal_angle(np.r_[40.0], np.r_[4.0]), np.r_[1e5], np.r_[0.0])
    assert stress == pytest.approx(np.max(np.abs(field)), rel=1e-3)


def test_round_bar_adds_both_moments_as_vectors():
    bar = round_bar(np.r_[16.0])
    both = bars.bending_stress(bar, np.r_[3e4], np.r_[4e4])
    assert both == pytest.approx(bars.bending_stress(bar, np.r_[5e4], np.r_[0.0]))


def test_buckling_load_has_no_step_at_the_limit_slenderness():
    limit = bars.limit_slenderness(STEEL, YIELD) * FLAT.gyration
    either = [bars.buckling_load(FLAT, STEEL, YIELD, limit * (1 + side)) for side in (-1e-6, 1e-6)]
    assert either[0] == pytest.approx(either[1], rel=1e-5)


def test_limit_slenderness_of_mild_steel():
    """Own reference: 129 for 250 MPa and 210 GPa."""
    assert bars.limit_slenderness(STEEL, np.r_[250.0]) == pytest.approx(129.0, abs=0.5)


def test_slender_bar_buckles_at_eulers_load_of_its_weak_axis():
    load = bars.buckling_load(FLAT, STEEL, YIELD, np.r_[2000.0])
    assert load == pytest.approx(np.pi**2 * STEEL * FLAT.inertia_width / 2000.0**2)


@given(st.floats(10, 400))
def test_stocky_bar_never_carries_more_than_its_yield_load(length):
    assert bars.buckling_load(FLAT, STEEL, YIELD, np.r_[length]) <= FLAT.area * YIELD


def test_secant_formula_without_eccentricity_is_direct_stress():
    stress = bars.secant_stress(FLAT, np.r_[2000.0], np.r_[0.0], STEEL, np.r_[200.0])
    assert stress == pytest.approx(2000.0 / 240.0)


def test_beam_column_against_its_differential_equation():
    """v'' = P (e + d - v) / EI with v(0) = v'(0) = 0 and v(L) = d, integrated by sympy."""
    x, push, stiffness, offset, tip = sympy.symbols("x P B e d", positive=True)
    v = sympy.Function("v")
    line = sympy.dsolve(
        sympy.Eq(v(x).diff(x, 2), push / stiffness * (offset + tip - v(x))),
        v(x),
        ics={v(0): 0, v(x).diff(x).subs(x, 0): 0},
    ).rhs
    numbers = {push: 2000, stiffness: 2.0e8, offset: 15}
    expected = sympy.nsolve((line.subs(x, 80) - tip).subs(numbers), tip, 1.0)
    grown = 15.0 * bars.secant_factor(np.r_[2000.0], np.r_[2.0e8], np.r_[160.0])
    assert grown - 15.0 == pytest.approx(float(expected), rel=1e-9)


def test_buckled_bar_gives_a_large_finite_stress():
    stress = bars.secant_stress(FLAT, np.r_[1e9], np.r_[1.0], STEEL, np.r_[500.0])
    assert 1e6 < stress[0] < np.inf


def test_short_flat_on_edge_reaches_its_plastic_moment():
    assert bars.lateral_moment(FLAT, STEEL, YIELD, np.r_[10.0]) == pytest.approx(YIELD * FLAT.plastic_depth)


@given(st.floats(10, 5000), st.floats(1.01, 2.0))
def test_longer_flat_tips_no_later(length, factor):
    short, long = (
        bars.lateral_moment(FLAT, STEEL, YIELD, np.r_[value]) for value in (length, length * factor)
    )
    assert long <= short * (1 + 1e-9)


def test_elastic_tipping_against_timoshenko():
    """Lateral buckling moment pi/L sqrt(E I_w G J) of a narrow strip; AISC rounds its constant, so 4 %."""
    strip, length = flat_bar(np.r_[100.0], np.r_[3.0]), 1000.0
    exact = np.pi / length * np.sqrt(200000 * strip.inertia_width * 77200 * strip.torsion)
    assert bars.lateral_moment(strip, np.r_[200000.0], YIELD, np.r_[length]) == pytest.approx(exact, rel=0.04)


def test_pure_shear_yields_at_0_577_of_yield():
    assert bars.von_mises(np.r_[0.0], bars.SHEAR_YIELD * YIELD) == pytest.approx(YIELD, rel=1e-3)


def test_tube_wall_carries_torque_as_a_closed_ring():
    bar = round_bar(np.r_[20.0])
    assert bars.twist_stress(bar, np.r_[np.pi * 20.0**3 / 16.0]) == pytest.approx(1.0)
