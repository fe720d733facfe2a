"""Belt friction against printed answers.

Beer, Johnston, Mazurek, Eisenberg: Vector Mechanics for Engineers, Statics, sample problems 8.7 and 8.8 (second-hand,
from the companion file of worked solutions). A study page on belt friction: a rope with 2.5 turns (seen).
"""

import numpy as np
import pytest

from fitcalc.checks.strap_forces import tension_after

TURN = 360.0


@pytest.mark.published
def test_beer_statics_8_7_hawser_two_turns():
    """150 N hold 7500 N with two turns at a friction of 0.311 (printed to three figures: 1 %)."""
    held = tension_after(np.array([7500.0]), np.array([2 * TURN]), 0.311)
    assert held[0] == pytest.approx(150, rel=0.01)


@pytest.mark.published
def test_beer_statics_8_7_hawser_three_turns():
    """With three turns 150 N hold 53.0 kN; the friction carried to four figures, as the printed answer was."""
    friction = np.log(7500 / 150) / (4 * np.pi)
    held = tension_after(np.array([53033.0]), np.array([3 * TURN]), friction)
    assert held[0] == pytest.approx(150, rel=0.01)


@pytest.mark.published
def test_beer_statics_8_8_flat_belt():
    """600 lbf at 0.25 over 120 deg on a pulley of 8 in: 1957 lbf in."""
    slack = tension_after(np.array([600.0]), np.array([120.0]), 0.25)
    assert (600 - slack[0]) * 8 == pytest.approx(1957, abs=0.5)


@pytest.mark.published
def test_rope_with_two_and_a_half_turns():
    """2000 N are held by 39 N at 0.25."""
    assert tension_after(np.array([2000.0]), np.array([2.5 * TURN]), 0.25)[0] == pytest.approx(39, abs=0.5)
