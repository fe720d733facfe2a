"""Limit sets: every file that comes with the program, and a user's own."""

import numpy as np
import pytest

from fitcalc.checks.check import Figure
from fitcalc.checks.checklist import checklist
from fitcalc.checks.judge import judge
from fitcalc.checks.limits import limit_set_names, load_limit_set, workshop_limits
from fitcalc.checks.limits_table import limits_table
from fitcalc.checks.posture_limits import with_posture
from fitcalc.checks.quantities import quantities
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_driver
from fitcalc.errors import InputError

ROBIN = load_driver(sample_path("robin"))
ALL = (*limit_set_names(), "workshop")
ROWS = [
    (name, row) for name in ALL for row in (*load_limit_set(name).limits, *load_limit_set(name).checklist)
]
OWN = """
id = "ours"
title = "Our club"
extends = "club"

[[limit]]
id = "club_shoulder_window"
quantity = "harness.shoulder.side_angle"
low = 5.0
high = 15.0
unit = "deg"
applies_to = "our club"
measured = "at the shoulder"
document = "our rules"
clause = "7"
edition = "2026"
confidence = "seen in text"
"""


def own(tmp_path, text):
    path = tmp_path / "ours.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_the_named_sets_come_with_the_program():
    assert {"fia_253", "single_seater", "historic", "student", "club"} <= set(limit_set_names())


@pytest.mark.parametrize("name", ALL)
def test_each_set_loads_under_its_own_name_with_editions(name):
    limits = load_limit_set(name)
    assert limits.id == name
    assert limits.title
    assert limits.editions


@pytest.mark.parametrize(("name", "row"), ROWS, ids=lambda value: getattr(value, "id", value))
def test_each_row_names_its_source(name, row):
    assert row.document
    if row.confidence in ("seen in text", "seen in figure", "second-hand", "from memory"):
        assert row.clause
        assert row.edition


@pytest.mark.parametrize("name", ["fia_253", "historic", "student", "club", "single_seater"])
def test_each_set_says_what_was_not_found(name):
    assert load_limit_set(name).missing


def test_second_hand_rows_say_so_where_they_are_shown():
    rows = load_limit_set("historic").limits
    assert all("second-hand" in str(row.source) for row in rows)


def test_an_own_set_replaces_a_row_and_keeps_the_others(tmp_path):
    ours, club = load_limit_set(own(tmp_path, OWN)), load_limit_set("club")
    assert [row.id for row in ours.limits] == [row.id for row in club.limits]
    assert ours.on("harness.shoulder.side_angle")[0].high == 15
    assert ours.id == "ours"
    assert ours.checklist == club.checklist


def test_an_own_set_leaves_rows_out(tmp_path):
    text = OWN.replace('extends = "club"', 'extends = "club"\nleave_out = ["msuk_helmet", "msuk_egress"]')
    ours = load_limit_set(own(tmp_path, text))
    assert not ours.on("head.hoop_line")
    assert "msuk_egress" not in {tick.rule.id for tick in checklist(ours)}


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('extends = "club"', 'extends = "clab"', "perhaps club"),
        ("high = 15.0", "high = 2.0", "low 5 above high 2"),
        ("low = 5.0\nhigh = 15.0", "", "at least one bound"),
        ('unit = "deg"', 'unit = "mm"', "is in deg"),
        (
            "harness.shoulder.side_angle",
            "harness.shoulder.side_angel",
            "perhaps harness.shoulder.side_angle ",
        ),
        ('clause = "7"\n', "", "clause and edition"),
        ('document = "our rules"\n', "", "document"),
        ('confidence = "seen in text"', 'confidence = "sure"', "confidence"),
        ("high = 15.0", 'high = "15"', "without quotes"),
        ("high = 15.0", "high = nan", "high"),
        ("high = 15.0", "hihg = 15.0", "perhaps high"),
        ('id = "ours"', 'id = "ours', "TOML"),
        ('unit = "deg"', 'unit = "deg"\nwhen = "reclined"', "the other kind of seat"),
    ],
)
def test_bad_files_are_explained(tmp_path, old, new, said):
    assert old in OWN
    with pytest.raises(InputError, match=r"ours\.toml") as refused:
        load_limit_set(own(tmp_path, OWN.replace(old, new)))
    assert said in str(refused.value)


def test_one_id_twice_is_refused(tmp_path):
    row = OWN[OWN.index("[[limit]]") :]
    with pytest.raises(InputError, match="one row only"):
        load_limit_set(own(tmp_path, OWN + row))


def test_unknown_set_names_the_known_ones():
    with pytest.raises(InputError, match="fia_253"):
        load_limit_set("fia_254")


def test_the_table_lists_every_quantity_and_row():
    table = limits_table()
    assert [row.quantity.id for row in table] == list(quantities())
    assert sum(len(row.uses) for row in table) == sum(len(load_limit_set(name).limits) for name in ALL)


def test_the_table_words_bounds():
    uses = {use.limit.id: use.bounds for row in limits_table() for use in row.uses}
    assert uses["fia253_shoulder_down_max"] == "0 to 45, better 0 to 10 deg"
    assert uses["cams_shoulder_down_max"] == "at most 45 deg"
    assert uses["fs_lap_reclined"] == "60 to 80 deg (reclined)"


def test_quantities_say_their_points():
    assert all(row.points.endswith(".") and row.unit for row in quantities().values())


def test_what_can_fail_says_what_mends_it():
    rows = [row for name in ALL for row in load_limit_set(name).limits]
    for row in rows:
        quantity = quantities()[row.quantity]
        if row.low is not None or row.recommended_low is not None:
            assert quantity.too_low or quantity.id == "cleat.width_on_pad", row.id


def test_rules_to_tick_carry_their_set_and_clause():
    ticks = checklist(load_limit_set("student"), workshop_limits())
    anchored = next(tick for tick in ticks if tick.rule.id == "lap_pelvis")
    assert anchored.rules == "student"
    assert "T5.4.1" in str(anchored.rule.source)


def test_a_set_that_is_no_ordinary_file_is_refused():
    """A device never ends: a stranger's car file may name one."""
    with pytest.raises(InputError):
        load_limit_set("/dev/zero")


def test_joint_angles_become_rows_with_ids_of_their_own():
    rows = {
        row.id: row.when
        for row in with_posture(workshop_limits(), ROBIN).limits
        if row.id.startswith("posture_")
    }
    joints = ("knee_released", "knee_pressed", "hip", "ankle", "elbow", "shoulder")
    recline = {"posture_recline_upright": "upright", "posture_recline_reclined": "reclined"}
    ends = {"posture_hip_motion": None, "posture_ankle_motion": None}
    assert rows == {f"posture_{joint}": None for joint in joints} | ends | recline


@pytest.mark.parametrize(("ankle", "holds"), [(69.9, False), (70.0, True), (140.0, True), (140.1, False)])
def test_an_ankle_must_stay_where_it_can_go(ankle, holds):
    """20 deg of bending and 50 deg of stretching from square: 70 to 140 (American Academy of Orthopaedic Surgeons)."""
    figure = Figure("posture.ankle.brake", "posture.ankle", "brake: ankle", "deg", np.array([ankle]))
    rows = with_posture(workshop_limits(), ROBIN)
    checks = {each.limit: each for each in judge([figure], load_limit_set("club"), rows, np.array([True]))}
    assert (checks["posture_ankle_motion"].status == "pass") == holds
    assert checks["posture_ankle"].status in ("pass", "advise")
