"""Sections: sectionproperties (independent finite-element library, 0.1 %) and own reference cases.

Round shapes are meshed as 256-gons, whose second moment is 0.02 % low. Torsion of a thin-walled section is
compared at 1 to 3 %: the program uses the thin-wall formula there, the library solves the warping problem.
"""

from functools import cache

import numpy as np
import pytest
from sectionproperties.analysis import Section as Meshed
from sectionproperties.pre.library import (
    angle_section,
    circular_hollow_section,
    circular_section,
    rectangular_hollow_section,
    rectangular_section,
)
from shapely import LineString, box

from fitcalc.making.shapes import equal_angle, flat_bar, rectangular_tube, round_bar, round_tube
from fitcalc.making.stock import StockRow, bar_section, stock_name, stock_sizes
from fitcalc.making.tables import read_rows

SHAPES = {
    "flat": (flat_bar(np.r_[30.0], np.r_[8.0]), rectangular_section(d=30, b=8)),
    "round bar": (round_bar(np.r_[16.0]), circular_section(d=16, n=256)),
    "round tube": (round_tube(np.r_[25.0], np.r_[2.0]), circular_hollow_section(d=25, t=2, n=256)),
    "sharp tube": (
        rectangular_tube(np.r_[40.0], np.r_[20.0], np.r_[2.0], np.r_[0.0]),
        rectangular_hollow_section(d=40, b=20, t=2, r_out=0, n_r=1),
    ),
    "rounded tube": (
        rectangular_tube(np.r_[30.0], np.r_[30.0], np.r_[2.0], np.r_[4.0]),
        rectangular_hollow_section(d=30, b=30, t=2, r_out=4, n_r=64),
    ),
    "angle": (
        equal_angle(np.r_[40.0], np.r_[4.0]),
        angle_section(d=40, b=40, t=4, r_r=0, r_t=0, n_r=1),
    ),
}
TORSION = {
    "flat": 1e-3,
    "round bar": 1e-3,
    "round tube": 1e-3,
    "sharp tube": 0.03,
    "rounded tube": 0.01,
    "angle": 0.03,
}
EVERY = pytest.mark.parametrize("name", SHAPES)


@cache
def meshed(name):
    section = Meshed(SHAPES[name][1].create_mesh([2.0]))
    section.calculate_geometric_properties()
    section.calculate_plastic_properties()
    return section


@cache
def warped(name):
    """A finer mesh, with its warping solved."""
    section = Meshed(SHAPES[name][1].create_mesh([0.5]))
    section.calculate_geometric_properties()
    section.calculate_warping_properties()
    return section


@EVERY
def test_area_and_second_moments(name):
    section, other = SHAPES[name][0], meshed(name)
    depth, width, product = other.get_ic()
    assert section.area == pytest.approx(other.get_area(), rel=1e-3)
    assert (section.inertia_depth[0], section.inertia_width[0]) == pytest.approx((depth, width), rel=1e-3)
    assert section.product == pytest.approx(product, rel=1e-3, abs=1e-3 * depth)


@EVERY
def test_principal_second_moments(name):
    most, least = SHAPES[name][0].principal
    assert (most[0], least[0]) == pytest.approx(meshed(name).get_ip(), rel=1e-3)


@EVERY
def test_elastic_moduli_at_the_farthest_fibre(name):
    section, other = SHAPES[name][0], meshed(name)
    up, down, right, left = other.get_z()
    assert section.modulus_depth == pytest.approx(min(up, down), rel=1e-3)
    assert section.modulus_width == pytest.approx(min(left, right), rel=1e-3)


@EVERY
def test_plastic_moduli(name):
    section, other = SHAPES[name][0], meshed(name)
    assert section.plastic_depth[0] == pytest.approx(other.get_s()[0], rel=1e-3)


@pytest.mark.parametrize(("name", "tolerance"), list(TORSION.items()))
def test_torsion_constant(name, tolerance):
    assert SHAPES[name][0].torsion == pytest.approx(warped(name).get_j(), rel=tolerance)


@pytest.mark.parametrize(("ratio", "share"), [(1.0, 0.1406), (2.0, 0.229), (10.0, 0.312)])
def test_torsion_constant_of_a_rectangle(ratio, share):
    """Share of depth x width^3: the table of k1 in Timoshenko and Goodier, Theory of Elasticity, from memory, as rounded."""
    bar = flat_bar(np.r_[30.0 * ratio], np.r_[30.0])
    digits = 4 if ratio == 1.0 else 3
    assert bar.torsion[0] / (ratio * 30.0**4) == pytest.approx(share, rel=0, abs=0.51 * 10**-digits)


@EVERY
def test_greatest_shear_is_at_the_neutral_axis(name):
    """V Q / (I b), both cut from the library's outline by shapely; the thin-tube factor 2 is 0.5 % high."""
    section, outline = SHAPES[name][0], SHAPES[name][1].geom
    left, _, right, top = outline.bounds
    level = outline.centroid.y
    above = outline.intersection(box(left, level, right, top))
    width = outline.intersection(LineString([(left - 1, level), (right + 1, level)])).length
    peak = above.area * (above.centroid.y - level) / (section.inertia_depth * width) * section.area
    assert section.shear_peak == pytest.approx(peak, rel=0.006)


def twisted(name):
    """Finite-element shear stress of a torque of 10 N m, and each node's place along the width."""
    other = warped(name)
    return other.calculate_stress(mzz=1e4).get_stress()[0]["sig_zxy"], other.mesh_nodes[:, 0]


@pytest.mark.parametrize(("name", "tolerance"), [("flat", 0.06), ("round bar", 0.01), ("round tube", 0.01)])
def test_greatest_shear_of_a_torque(name, tolerance):
    """Torsion constant over thickness is a rule of thumb for a flat, 5 % off at this shape."""
    assert 1e4 / SHAPES[name][0].twist_modulus == pytest.approx(np.max(twisted(name)[0]), rel=tolerance)


@pytest.mark.parametrize(("name", "low", "high"), [("rounded tube", 12.0, 18.0), ("angle", 15.0, 30.0)])
def test_shear_of_a_torque_in_a_thin_wall(name, low, high):
    """Middle of a wall, away from the corners, where the stress peaks locally; thin-wall theory, 4 %."""
    stress, across = twisted(name)
    wall = np.max(stress[(across > low) & (across < high)])
    assert 1e4 / SHAPES[name][0].twist_modulus == pytest.approx(wall, rel=0.04)


def test_round_tube_reference_case():
    tube = round_tube(np.r_[25.0], np.r_[2.0])
    values = (
        tube.area,
        tube.inertia_depth,
        tube.modulus_depth,
        tube.plastic_depth,
        tube.torsion,
        tube.gyration,
    )
    expected = (144.51326, 9628.1961, 770.25569, 1060.6667, 19256.392, 8.1624139)
    assert [value[0] for value in values] == pytest.approx(expected, rel=1e-6)


def test_angle_reference_case():
    angle = equal_angle(np.r_[40.0], np.r_[4.0])
    values = (angle.area, angle.inertia_depth, angle.product, *angle.principal, angle.torsion)
    expected = (304.0, 46081.123, -27284.211, 73365.333, 18796.912, 1621.3333)
    assert [value[0] for value in values] == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize("shape", ["flat", "round bar", "round tube", "square tube", "angle"])
def test_every_stock_size_has_a_sound_section(shape):
    for size in stock_sizes(shape):
        most, least = size.section.principal
        assert most >= least > 0
        assert size.section.plastic_depth > size.section.modulus_depth


@pytest.mark.parametrize("shape", ["flat", "round bar", "round tube", "square tube", "angle"])
def test_stock_is_of_the_shape_asked_for(shape):
    """As many sizes as the file lists for it, named and outlined by their own size."""
    listed = next(row.sizes for row in read_rows("stock_sizes.toml", StockRow) if row.id == shape)
    assert [size.name for size in stock_sizes(shape)] == [stock_name(shape, *size) for size in listed]
    for size in stock_sizes(shape):
        words = size.name.removeprefix(f"{shape} ").split(" x ")
        section = size.section
        assert float(words[0]) == section.depth
        assert float(words[-1]) == (section.depth if shape == "round bar" else section.wall)
        assert section.shape.split()[-1] in ("bar" if shape == "flat" else shape)


@EVERY
def test_outline_is_as_deep_and_wide_as_what_is_bought(name):
    section = SHAPES[name][0]
    spans = np.ptp(section.fibres[0], axis=0)
    assert spans == pytest.approx([section.depth[0], section.width[0]])


@pytest.mark.parametrize("name", ["flat", "round bar", "round tube", "sharp tube"])
def test_outline_lies_about_the_middle_in_order(name):
    """Side by side its points go round once: the shoelace formula gives the rectangle, or the square on its corner."""
    section = SHAPES[name][0]
    depth, width = section.fibres[0].T
    around = abs(np.sum(depth * np.roll(width, -1) - width * np.roll(depth, -1))) / 2
    bought = section.depth[0] * section.width[0]
    assert around == pytest.approx(bought / 2 if section.round else bought)
    assert np.sum(section.fibres[0], axis=0) == pytest.approx([0.0, 0.0])


def test_square_tube_is_named_by_both_sides():
    assert stock_name("square tube", 30, 2) == "square tube 30 x 30 x 2"


@pytest.mark.parametrize(("shape", "area"), [("round tube", np.pi * 25.0), ("square tube", np.pi * 25.0)])
def test_wall_thicker_than_the_tube_makes_it_solid(shape, area):
    """A square tube's corners are then as round as the tube."""
    assert bar_section(shape, np.r_[10.0], np.r_[8.0]).area == pytest.approx(area)


def test_flat_stock_stands_on_edge():
    flat = bar_section("flat", np.r_[30.0], np.r_[6.0])
    assert flat.inertia_depth > flat.inertia_width


def test_sections_of_several_cases_stay_apart():
    both = round_tube(np.r_[25.0, 30.0], np.r_[2.0, 3.0])
    assert both.inertia_depth[1] == pytest.approx(round_tube(np.r_[30.0], np.r_[3.0]).inertia_depth[0])
