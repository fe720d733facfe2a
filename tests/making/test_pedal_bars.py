"""From car file and rework to the bars to make: loads, lengths, joints, and the mix inside a band."""

from dataclasses import replace
from typing import get_args

import numpy as np
import pytest

from fitcalc.documents.car_pedals import BarMaterial
from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.geometry.side import scaled
from fitcalc.making.bar_check import check_bar
from fitcalc.making.joints import Welded
from fitcalc.making.materials import materials
from fitcalc.making.modes import AMPLE
from fitcalc.making.pedal_bars import (
    bar_job,
    cut_length,
    extended,
    foot_lean,
    joint_of,
    mix_in_band,
    wanted_safety,
)
from fitcalc.making.pedal_motion import contact_radius, pad_contact
from fitcalc.making.pedal_work import motion
from fitcalc.posture.cases import spread
from fitcalc.posture.pads import arm_normal
from tests.checks.cockpits import seated


def bar(**values):
    return seated({f"pedals.brake.bar.{key}": value for key, value in values.items()}).car.pedals.brake.bar


def job(name="brake", **rework):
    made = PedalRework(**rework)
    case = seated(setup=Setup(**{name: made}))
    return bar_job(name, case.car.fitted_pedals()[name], made, case.sitting.pedals[name])


@pytest.mark.parametrize("along", [-1.0, 0.0, 1.0])
@pytest.mark.parametrize("name", ["student", "hillclimb"])
def test_lean_is_positive_toward_the_free_end(name, along):
    """The hip put square behind the ball of the foot, then as far toward the pivot: 45 deg toward the free end."""
    case = seated(name=name)
    pedal, worked = case.car.pedals.brake, case.sitting.pedals["brake"]
    pad, ball = worked.full_pad, worked.full.foot.ball
    hip = ball + scaled(arm_normal(pad, pedal), np.r_[500.0]) - scaled(pad.arm, np.r_[500.0 * along])
    moved = replace(worked, full=replace(worked.full, hip=hip))
    assert foot_lean(pedal, moved) == pytest.approx(45.0 * along, abs=1e-9)


@pytest.mark.parametrize(("joint", "expected"), [("bolted", 30.0 + 45.0 + 32.0), ("welded", 30.0)])
def test_length_to_cut(joint, expected):
    """Bolts 45 mm apart, 16 mm from either end of the lap."""
    assert cut_length(np.r_[30.0], bar(joint=joint)) == pytest.approx(expected)
    assert cut_length(np.r_[0.0], bar(joint=joint)) == 0.0


def test_bolted_bar_is_held_at_its_first_bolt():
    reach = job(stand_off=30.0, longer_arm=20.0).reach
    assert (reach.stand_off[0], reach.longer[0]) == (46.0, 36.0)


def test_bar_that_is_not_made_cannot_fail():
    modes = check_bar(job(stand_off=30.0)).modes
    absent = [mode.safety[0] for mode in modes if mode.name.startswith("longer arm")]
    assert absent == pytest.approx([AMPLE] * len(absent))


@pytest.mark.parametrize(("name", "force"), [("clutch", 1000.0), ("brake", 2000.0), ("throttle", 500.0)])
def test_each_pedal_has_its_design_load(name, force):
    assert job(name, stand_off=20.0).foot.force == force


@pytest.mark.parametrize(("thickness", "leg"), [(4.0, 4.0), (10.0, 6.0)])
def test_weld_is_as_thick_as_the_bar_up_to_six(thickness, leg):
    joint = joint_of(bar(joint="welded", thickness=thickness))
    assert isinstance(joint, Welded)
    assert joint.leg == leg


@pytest.mark.parametrize(
    ("material", "joint", "wanted"),
    [("S355J2", "welded", 1.5), ("6082-T6", "welded", 2.0), ("6082-T6", "bolted", 1.5)],
)
def test_welded_alloy_needs_more_in_hand(material, joint, wanted):
    assert wanted_safety(bar(material=material, joint=joint)) == wanted


def test_every_material_of_a_car_file_is_known():
    assert get_args(BarMaterial) == tuple(row.id for row in materials())


@pytest.mark.parametrize("band", [0.02, 0.03, 0.1])
def test_mix_comes_as_near_and_stays_in_its_band(band):
    case = seated(driver="ines")
    pedal, worked = case.car.pedals.clutch, case.sitting.pedals["clutch"]
    mix, reach = mix_in_band(pedal, PedalRework(stand_off=40.0), worked, np.array([band]))
    found = motion(pedal, PedalRework())
    after = replace(found, stand_off=found.stand_off + mix.stand_off, arm=found.arm + mix.longer)
    moved = (pad_contact(after, after.rest[:, None]) - pad_contact(found, found.rest[:, None]))[:, 0]
    toward = (worked.rest.hip - worked.rest.foot.ball)[:, [0, 2]]
    nearer = np.sum(moved * toward) / np.hypot(*toward[0])
    assert mix.ratio_factor[0] - 1.0 <= band + 1e-12
    assert mix.ratio_factor == pytest.approx(contact_radius(after) / contact_radius(found))
    assert nearer + mix.shortfall == pytest.approx(reach)
    assert mix.shortfall == pytest.approx(0.0)
    assert 30.0 < reach[0] <= 40.0


def test_a_trifle_is_not_bought_with_a_longer_arm():
    case = seated(driver="ines")
    worked = case.sitting.pedals["clutch"]
    mix, _ = mix_in_band(case.car.pedals.clutch, PedalRework(stand_off=0.1), worked, np.array([0.1]))
    assert mix.longer[0] < 0.5


def test_each_case_is_extended_or_not():
    rework = spread(PedalRework(), {"longer_arm": np.array([0.0, 5.0])})
    assert list(extended(rework)) == [False, True]
