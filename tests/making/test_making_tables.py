"""Materials, bolts, stock, loads: every row loads, has a source, and is in order."""

import numpy as np
import pytest
from pydantic import ValidationError

from fitcalc.making.bolts import bolts
from fitcalc.making.loads import foot_loads
from fitcalc.making.materials import (
    Material,
    material,
    materials,
    tensile_strength,
    welded_tensile,
    welded_yield,
    yield_stress,
)
from fitcalc.making.seat_levels import fixing_rules, seat_levels
from fitcalc.making.tables import Row, read_rows

EVERY_ROW = [*materials(), *bolts(), *foot_loads(), *seat_levels(), *fixing_rules()]


def test_row_without_a_source_does_not_load():
    with pytest.raises(ValidationError, match="source"):
        Row.model_validate({"id": "bare"})


def test_file_with_unknown_keys_does_not_load():
    with pytest.raises(ValidationError, match="extra"):
        read_rows("materials.toml", Row)


@pytest.mark.parametrize("row", EVERY_ROW, ids=lambda row: row.id)
def test_source_names_a_document(row):
    assert row.source.document.strip()


@pytest.mark.parametrize("row", materials(), ids=lambda row: row.id)
def test_material_strength_is_in_order(row: Material):
    assert [step.to for step in row.ranges] == sorted(step.to for step in row.ranges)
    assert all(step.yield_stress < step.tensile for step in row.ranges)


@pytest.mark.parametrize(
    ("thickness", "expected"), [(5.0, 355.0), (16.0, 355.0), (16.1, 345.0), (99.0, 335.0)]
)
def test_yield_falls_with_thickness(thickness, expected):
    assert yield_stress(material("S355J2"), np.r_[thickness]) == pytest.approx(expected)


@pytest.mark.parametrize("row", materials(), ids=lambda row: row.id)
def test_only_what_loses_its_temper_is_weaker_beside_a_weld(row: Material):
    wall = np.r_[4.0]
    weaker = (welded_yield(row, wall) < yield_stress(row, wall)) & (
        welded_tensile(row, wall) < tensile_strength(row, wall)
    )
    assert bool(weaker[0]) is not row.keeps_temper
    assert row.keeps_temper is not row.id.startswith("6")
    assert ("do not weld" in row.weld_advice) is not row.keeps_temper
