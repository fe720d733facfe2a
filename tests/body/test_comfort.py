"""Posture sets, windows and wishes."""

import pytest

from fitcalc.body.comfort import (
    motion_limits,
    motion_tables,
    posture_sets,
    single_seater,
    single_seater_source,
    windows_for,
)
from fitcalc.documents.driver import Driver


def driver(**targets):
    return Driver(name="x", measurements={"stature": 1756.0}, targets=targets)


def test_recommended_lies_inside_permitted():
    for window in single_seater().values():
        (low, high), (least, most) = window.recommended, window.permitted
        assert least <= low < high <= most


def test_single_seater_is_marked_as_inference():
    assert single_seater_source().confidence == "design inference"


def test_knee_is_never_straight_at_full_brake():
    window = single_seater()["knee_pressed"]
    assert (window.recommended[1], window.permitted[1]) == (155.0, 165.0)


@pytest.mark.parametrize("table", motion_tables().values(), ids=lambda table: table.id)
@pytest.mark.parametrize("sex", ["female", "male"])
def test_permitted_angles_lie_within_what_joints_can_do(table, sex):
    limits = motion_limits(table, sex)
    windows = {"hip": "hip", "knee_released": "knee", "knee_pressed": "knee", "elbow": "elbow"}
    for name, joint in windows.items():
        low, high = single_seater()[name].permitted
        assert limits[joint][0] < low < high < limits[joint][1]


def test_own_wishes_replace_what_is_recommended_only():
    windows = windows_for(driver(knee_released_high=140.0, elbow_low=100.0, elbow_high=120.0))
    assert windows["knee_released"].recommended == (110.0, 140.0)
    assert windows["knee_released"].permitted == single_seater()["knee_released"].permitted
    assert windows["elbow"].recommended == (100.0, 120.0)
    assert windows["hip"] == single_seater()["hip"]


@pytest.mark.parametrize(
    ("wish", "expected"),
    [({"knee_released_low": 140.0}, (140.0, 140.0)), ({"knee_released_high": 105.0}, (105.0, 105.0))],
)
def test_a_wish_beyond_the_other_end_carries_it_along(wish, expected):
    assert windows_for(driver(**wish))["knee_released"].recommended == expected


def test_published_sets_name_author_and_confidence():
    assert len(posture_sets()) == 6
    for row in posture_sets().values():
        assert str(row.source)
        assert all(ends[0] < ends[1] for ends in row.angles.values())
