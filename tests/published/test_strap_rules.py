"""Strap figures as rule books print them.

Formula SAE Rules 2024 v1.0 and 2026 v1.0; Formula Student Rules 2024 v1.1 and 2025 v1.0; FIA Appendix J Art. 253
(2013); CAMS Schedule I; NZ Speedway Rule Book 2010. Strap gap: a restraint maker's sums as passed on in the trade.
"""

import pytest

from fitcalc.checks.limits import load_limit_set
from fitcalc.units import MM_PER_INCH

PRINTED = [
    ("student", "fs_shoulder_angle", -10, 20, "T.2.6.1"),
    ("student", "fs_shoulder_angle", -10, 20, "T5.5.5"),
    ("student", "fsae24_shoulder_spacing", 175, 235, "T.2.6.2"),
    ("student", "fs_shoulder_spacing", 180, 230, "T5.5.4"),
    ("student", "fs_lap_upright", 45, 65, "T.2.5.4.a"),
    ("student", "fs_lap_reclined", 60, 80, "T.2.5.5"),
    ("student", "fs_lap_junction", 0, 76, "T5.4.6"),
    ("student", "fs_sub6_angle", 0, 20, "T.2.7.2"),
    ("student", "fs_helmet_hoopline", 50, None, "T4.3.1"),
    ("student", "template_pedal", 915, None, "T4.3.4"),
    ("fia_253", "fia253_shoulder_down_max", 0, 45, "253-6.2"),
    ("fia_253", "fia253_shoulder_plan_max", -20, 20, "253-6.2"),
    ("motorsport_australia", "cams_shoulder_down_max", None, 45, "Sched. I Art. 2"),
    ("speedway_nz", "nzs_shoulder_angle", 1, 10, "p. 93"),
    ("speedway_nz", "nzs_guide_spacing", None, 150, "p. 93"),
    ("club", "msuk_helmet", 50, None, "Ch.12 App.14 (G)"),
    ("club", "msuk_seat_depth", 152.5, None, "Ch.7 App.7 Art. 1.4"),
    ("single_seater", "f1_wheel_opening", 50, None, "12.5.3"),
]


@pytest.mark.published
@pytest.mark.parametrize(("rules", "id", "low", "high", "clause"), PRINTED)
def test_bounds_stand_as_printed(rules, id, low, high, clause):
    row = next(row for row in load_limit_set(rules).limits if row.id == id)
    assert (row.low, row.high) == (low, high)
    assert clause in row.clause
    assert row.edition


@pytest.mark.published
@pytest.mark.parametrize(("strap", "apart"), [(3, 6), (2, 5)])
def test_gap_of_three_inches_between_straps(strap, apart):
    """3 in between straps of 3 in are 6 in from middle to middle; of 2 in, 5 in."""
    gap = next(row for row in load_limit_set("club").limits if row.id == "fhr_inner_gap_max").high
    assert round((apart - strap) * MM_PER_INCH) == gap
