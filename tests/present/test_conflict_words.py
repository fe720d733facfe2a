"""Sentences on what stands in the way, on made-up conflicts."""

import numpy as np
import pytest

from fitcalc.checks.check import Check, Figure
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car
from fitcalc.fit.conflict import Clash, Conflict, Way
from fitcalc.present.change_words import told
from fitcalc.present.conflict_words import conflict_sentences, way_sentences
from fitcalc.present.wanted import named


def check(id, label, low):
    figure = Figure(id, id.rpartition(".")[0], label, "mm", np.zeros(1))
    return Check(id, figure, np.array([low]), None, None, None, "club", "row", None, "", "")


HELMET = check("head.hoop_line", "helmet below the line over the hoops", 50.0)
LEFT = check("leg.roof.left", "left: leg to the dash", 10.0)
ROOM = check("knee.room", "knee room", 5.0)
RIGHT = check("leg.roof.right", "right: leg to the dash", 10.0)


def test_two_limits_that_shut_each_other_out_share_a_sentence():
    conflict = Conflict((Clash(HELMET, LEFT, 0.0), Clash(LEFT, HELMET, 0.0)), ())
    assert conflict_sentences(conflict) == [
        "No allowed rework gives both helmet below the line over the hoops at least 50 mm and leg to the dash (left) "
        "at least 10 mm."
    ]


def test_left_and_right_are_told_together():
    conflict = Conflict((Clash(LEFT, HELMET, 0.0), Clash(RIGHT, HELMET, 0.0)), ())
    (sentence,) = conflict_sentences(conflict)
    assert "leg to the dash (left, right) at least 10 mm" in sentence


def test_what_holds_nowhere_says_how_near_it_comes():
    conflict = Conflict((Clash(LEFT, None, 4.26), Clash(RIGHT, None, 5.0)), ())
    assert conflict_sentences(conflict) == [
        "No allowed rework gives leg to the dash at least 10 mm: the nearest lacks 4.3 mm (left), 5.0 mm (right)."
    ]


@pytest.mark.parametrize(
    ("rest", "wanted"), [(True, "let everything pass"), (False, "mend all that can be moved")]
)
def test_single_changes_that_mend_all_are_one_sentence(rest, wanted):
    ways = (Way("seat_down", 18.0, ""), Way("main_hoop_up", 26.0, ""))
    assert way_sentences(Conflict((), ways), rest) == [
        f"Setting the seat 18 mm lower than the car file allows, or a main hoop 26 mm higher would {wanted}."
    ]


def test_part_that_mends_several_is_moved_far_enough_for_all():
    conflict = Conflict(
        (Clash(LEFT, None, 1.0), Clash(RIGHT, None, 1.0)),
        (Way("brake.stand_off", 8.0, LEFT.id), Way("brake.stand_off", 12.0, RIGHT.id)),
    )
    assert way_sentences(conflict, True) == [
        "Standing the brake pad off 12 mm more than is allowed would mend leg to the dash (left, right); not everything "
        "would pass then."
    ]


@pytest.mark.parametrize(
    ("path", "value", "words"),
    [
        ("seat_travel", 40.0, "move the seat 40 mm forward along its rail: 2 holes"),
        ("seat_travel", -20.0, "move the seat 20 mm rearward along its rail: 1 hole"),
        ("seat_travel", 30.0, "move the seat 30 mm forward along its rail, between two holes of the rail"),
        ("recline", -1.5, "turn the seat 1.5 deg more upright about its front mounts"),
        ("box_travel", 10.0, "slide the pedal box 10 mm rearward"),
        ("brake.longer_arm", 12.0, "lengthen the brake arm by 12 mm"),
        ("clutch.stand_off", 46.0, "stand the clutch pad off 46 mm toward the driver"),
    ],
)
def test_a_change_is_told_as_an_order(path, value, words):
    """The hillclimb car's rail has a hole every 20 mm."""
    assert told(path, value, load_car(sample_path("hillclimb"))) == words


@pytest.mark.parametrize(
    ("label", "inside"),
    [("clutch: knee, pedal released", "knee, pedal released (clutch)"), ("helmet to hoop", "helmet to hoop")],
)
def test_label_inside_a_sentence(label, inside):
    assert named(label) == inside


def test_what_several_limits_shut_out_is_told_once():
    conflict = Conflict((Clash(LEFT, HELMET, 0.0), Clash(ROOM, HELMET, 0.0)), ())
    assert conflict_sentences(conflict) == [
        "No allowed rework gives helmet below the line over the hoops at least 50 mm together with any one of: "
        "leg to the dash (left) at least 10 mm; knee room at least 5 mm."
    ]
