"""From outside dimensions to joints and kit."""

import dataclasses

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from fitcalc.body.estimate import estimate, sample
from fitcalc.body.links import Links, eye_from_cervicale, links_for, links_of
from fitcalc.body.relations import relation_errors, relations, rules
from fitcalc.documents.driver import Driver

NAMES = [field.name for field in dataclasses.fields(Links)]
WORN = {
    "sole_ball",
    "sole_heel",
    "shoe_length",
    "shoe_width",
    "shoe_heel_margin",
    "helmet_height",
    "helmet_length",
}
WORN |= {"helmet_width", "helmet_above_vertex"}
BARE = {"suit": 0.0, "restraint": 0.0}


def driver(stature=1756.2, sex="male", **further):
    return Driver(name="x", sex=sex, measurements={"stature": stature}, **further)


@given(
    scale=st.floats(0.7, 1.3), sex=st.sampled_from([None, "female", "male"]), stature=st.floats(1500, 1950)
)
@settings(max_examples=25)
def test_scaled_body_has_scaled_links(scale, sex, stature):
    who = driver(stature, sex, kit=BARE)
    body = estimate(who).means()
    first = links_of(body, who)
    second = links_of({name: value * scale for name, value in body.items()}, who)
    for name in set(NAMES) - WORN:
        assert getattr(second, name) == pytest.approx(scale * getattr(first, name), rel=1e-9), name


def test_every_link_has_one_value_per_body_and_cannot_be_changed():
    who = driver(shoe={"length": 290.0, "width": 108.0})
    links = links_of(sample(who, 7, seed=1), who)
    assert {getattr(links, name).shape for name in NAMES} == {(7,)}
    assert not any(getattr(links, name).flags.writeable for name in NAMES)


@pytest.mark.parametrize("sex", [None, "female", "male"])
@pytest.mark.parametrize("stature", [1250.0, 1500.0, 1756.0, 2000.0, 2200.0])
def test_lengths_are_positive_for_any_stature(stature, sex):
    links = links_for(driver(stature, sex))
    assert all(getattr(links, name)[0] > 0 for name in set(NAMES) - {"groin_above_hip"})


def test_seated_parts_add_up_to_the_measured_heights():
    who = Driver(
        name="x",
        sex="male",
        kit=BARE,
        measurements={
            "stature": 1780.0,
            "shoulder_height_sitting": 620.0,
            "knee_height": 560.0,
            "buttock_knee": 630.0,
        },
    )
    links, body = links_for(who), estimate(who).means()
    below_acromion = 0.104 * body["acromionradialelength"]
    assert links.hip_above_cushion + links.trunk + below_acromion == pytest.approx(620.0)
    assert links.ankle_height + links.shank + links.knee_top == pytest.approx(560.0)
    # The kneecap's allowance closes the buttock-knee length to 7 mm, half of the thigh's own spread.
    assert links.hip_ahead_of_back + links.thigh + links.knee_front == pytest.approx(630.0, abs=7)


def test_kit_thickens_what_it_covers():
    plain, dressed = links_for(driver(kit=BARE)), links_for(driver(kit={"suit": 5.0, "restraint": 20.0}))
    for single in ("knee_top", "knee_front", "thigh_radius", "shank_radius"):
        assert getattr(dressed, single) - getattr(plain, single) == pytest.approx(5)
    for double in ("shoulder_breadth", "hip_breadth"):
        assert getattr(dressed, double) - getattr(plain, double) == pytest.approx(10)
    assert dressed.strap_above_shoulder - plain.strap_above_shoulder == pytest.approx(25)


def test_restraint_draws_the_straps_together():
    assert links_for(driver(kit={"restraint": 20.0})).strap_half_spacing[0] == 76.0
    assert links_for(driver(kit=BARE)).strap_half_spacing[0] > 76.0


def test_shoe_as_measured_replaces_the_allowance():
    links = links_for(driver(shoe={"length": 300.0, "width": 115.0}))
    assert (links.shoe_length[0], links.shoe_width[0]) == (300.0, 115.0)
    assert links.shoe_heel_margin[0] == pytest.approx(0.35 * (300.0 - links.foot_length[0]))


def test_shoe_shorter_than_the_foot_leaves_no_margin():
    assert links_for(driver(shoe={"length": 200.0})).shoe_heel_margin[0] == 0.0


def test_errors_of_the_constants_carry_over():
    who, drawn = driver(), relation_errors(20_000, seed=2)
    body = {name: np.repeat(value, 20_000) for name, value in estimate(who).means().items()}
    links = links_of(body, who, drawn)
    assert links.thigh.std() == pytest.approx(12.0, rel=0.03)
    assert links.hip_above_cushion.std() == pytest.approx(12.0, rel=0.03)
    assert links.thigh.mean() == pytest.approx(links_for(who).thigh[0], abs=0.5)


def test_an_error_of_a_constant_is_added_to_it():
    plain, off = rules("male"), rules("male", {"hip_above_cushion": np.array([7.0])})
    one = np.array([1.0])
    assert off.of("hip_above_cushion", one) - plain.of("hip_above_cushion", one) == pytest.approx(7.0)
    assert off.plain("hip_above_cushion") - plain.plain("hip_above_cushion") == pytest.approx(7.0)


def test_sex_left_out_takes_the_middle_of_both_tables():
    body = estimate(driver()).means()
    tops = [links_of(body, driver(sex=sex, kit=BARE)).knee_top[0] for sex in ("female", None, "male")]
    assert tops[1] == pytest.approx((tops[0] + tops[2]) / 2)


def test_every_constant_has_source_and_spread_and_inference_a_reason():
    for row in relations().values():
        assert row.document
        assert row.spread >= 0
        assert row.note or row.confidence != "design inference", f"{row.id}: no reason given"


@pytest.mark.parametrize(("recline", "forward", "up"), [(5.0, 177, 95), (27.5, 179.5, 122), (40.0, 180, 145)])
def test_head_is_carried_as_the_rows_say(recline, forward, up):
    assert [float(value[0]) for value in eye_from_cervicale(np.array([recline]))] == pytest.approx(
        [forward, up]
    )


def test_head_carriage_goes_on_straight_beyond_its_rows():
    recline = np.array([0.0, 5.0, 40.0, 60.0])
    forward, up = eye_from_cervicale(recline)
    assert forward == pytest.approx([177, 177, 180, 180])
    assert up == pytest.approx([91, 95, 145, 185])
