"""How far the segment table lies from another published one.

Source: Dempster's fractions as in Winter, Biomechanics and Motor Control of Human Movement (second-hand).
"""

import dempster
import pytest

from fitcalc.body.mass import table

pytestmark = pytest.mark.published


@pytest.mark.parametrize(("column", "printed"), [("men", 42), ("women", 48)])
def test_thigh_is_heavier_in_de_leva_by(column, printed):
    heavier = float(table()["thigh"][f"mass_{column}"]) / dempster.mass("thigh") - 1
    assert 100 * heavier == pytest.approx(printed, abs=0.5)
