"""Figures that the calculation stands on, said once more beside where each comes from: none changes unnoticed.

Most are this project's own inferences, as their docstrings say; those with a source are marked with it.
"""

import numpy as np
import pytest

from fitcalc.body import estimate, plausible
from fitcalc.checks import (
    balance_figures,
    harness,
    head,
    head_remedy,
    judge,
    knees,
    limit_rows,
    opening,
    pad_heights,
    reach,
    rim,
    shoe_sweep,
    sight,
    slot_figures,
    slots,
    template,
    wheel,
)
from fitcalc.making import (
    actuation,
    bar_modes,
    bars,
    bolts,
    extension,
    loads,
    modes,
    pedal_bars,
    seat_work,
    stock,
)
from fitcalc.posture import foot, trunk

PUBLISHED = [
    (head, "LOWERED", 75.0, "FIA Formula 1, 2023, 12.5.2"),
    (judge, "UPRIGHT_UP_TO", 30.0, "FSAE Rules 2026 T.2.1.d-e, FS Rules 2025 T5.1.3-4"),
    (opening, "BEHIND_PEDALS", 100.0, "FSAE Rules 2026 T.1.2, FS Rules 2025 T4.2"),
    (template, "TORSO_CIRCLE", 100.0, "FSAE Rules 2026 F.5.6.5, FS Rules 2025 T4.3: circles of 200 mm"),
    (template, "HEAD_CIRCLE", 150.0, "the same: circle of 300 mm"),
    (template, "TORSO", 490.0, "the same: hip to shoulder"),
    (template, "NECK", 280.0, "the same: shoulder to head"),
    (template, "RESTRAINT_GAP", 25.0, "FSAE Rules 2026 F.5.6.6: to the head restraint"),
    (bolts, "GAMMA", 1.25, "EN 1993-1-8, gamma_M2"),
    (bars, "SHEAR_YIELD", 0.577, "Shigley, Mechanical Engineering Design, 9th ed.: 1 / sqrt(3)"),
    (actuation, "EFFORT", 500.0, "FMVSS 135 S7.5; UN R13-H, from memory"),
    (actuation, "EFFICIENCY", 0.8, "Limpert, from memory"),
    (seat_work, "BRACKET_YIELD", 235.0, "EN 10025-2 Table 7, S235 up to 16 mm, second-hand"),
    (stock, "CORNER", 2.0, "EN 10219-2, from memory"),
    (bar_modes, "FREE_END", 2.0, "Euler's column, held at one end"),
    (foot, "STEEPEST_SOLE", 73.4, "SAE J4004, second-hand"),
]
INFERRED = [
    (estimate, "TAPE", 5.0),
    (plausible, "FAR", 3.0),
    (trunk, "EYE_BEHIND_FOREHEAD", 20.0),
    (foot, "LOWEST_BALL", 0.25),
    (knees, "COLUMN_RADIUS", 13.0),
    (wheel, "FIST_RADIUS", 45.0),
    (reach, "ELBOW_RADIUS", 45.0),
    (reach, "TURNS", (-1.0, -0.5, 0.0, 0.5, 1.0)),
    (pad_heights, "BRAKING_DEPTH", 0.5),
    (shoe_sweep, "STATIONS", (0.0, 0.25, 0.5, 0.75, 1.0)),
    (shoe_sweep, "TOE_BOX", 50.0),
    (foot, "COLLAR_ABOVE_ANKLE", 15.0),
    (shoe_sweep, "COLLAR_AHEAD_OF_ANKLE", 50.0),
    (shoe_sweep, "TOE_OUT", 5.0),
    (shoe_sweep, "HEEL_SHARE", 0.35),
    (shoe_sweep, "TOE_SHARE", 0.30),
    (sight, "NEVER", 200_000.0),
    (slots, "WEBBING", 3.0),
    (slots, "ROOM", 5.0),
    (slots, "STEEP", 0.2),
    (balance_figures, "KIT_MASS", 4.5),
    (head_remedy, "FURTHEST", 65.0),
    (head_remedy, "NOTICED", 0.05),
    (harness, "KILONEWTON", 1000.0),
    (slot_figures, "KILONEWTON", 1000.0),
    (limit_rows, "WIDEST", (-1e6, 1e6)),
    (loads, "SIDEWAYS", 10.0),
    (loads, "STEEL_SAFETY", 1.5),
    (loads, "WELDED_ALLOY_SAFETY", 2.0),
    (modes, "AMPLE", 100.0),
    (seat_work, "BRACKET_WIDTH", 40.0),
    (seat_work, "STEP", 1.0),
    (seat_work, "PRYING", 1.5),
    (pedal_bars, "THICKEST_WELD", 6.0),
    (pedal_bars, "BALL_OFF_MIDDLE", 0.25),
    (extension, "LEAST_SHARE", 0.1),
]


@pytest.mark.parametrize(("where", "name", "printed", "source"), PUBLISHED)
def test_published_figure_is_as_printed(where, name, printed, source):
    assert getattr(where, name) == printed, source


@pytest.mark.parametrize(("where", "name", "inferred"), INFERRED)
def test_figure_of_design_is_as_inferred(where, name, inferred):
    assert getattr(where, name) == pytest.approx(inferred, rel=0, abs=0)


def test_the_hands_are_probed_from_lock_to_lock():
    """Both ends, and thirteen places evenly between them."""
    turns = rim.TURNS[0]
    assert (turns[0], turns[-1], len(turns)) == (-1.0, 1.0, 13)
    assert np.ptp(np.diff(turns)) == pytest.approx(0.0, abs=1e-12)
