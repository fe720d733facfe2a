"""How much lower or further reclined a tall driver must sit: checked by sitting so."""

import numpy as np
import pytest

from fitcalc.checks.head import head_figures
from fitcalc.checks.head_remedy import lower_by, recline_by
from fitcalc.documents.setup import Setup
from fitcalc.posture.trunk import trunk_on
from tests.checks.cockpits import seated, seated_in, value

WANTED = np.array([60.0])
LOW = {"hoops.main_top.z": 1000.0, "rails.lower_travel": 200.0}


def test_sitting_that_much_lower_gives_the_room():
    case = seated(LOW, driver="magnus")
    down = lower_by(case, case.car.hoops, WANTED)[0]
    lowered = seated_in(case.car, "magnus", Setup(seat_raise=-down))
    assert down > 0
    assert value(head_figures(lowered), "head.hoop_line") == pytest.approx(60.0, abs=1e-6)


def test_leaning_that_much_further_gives_the_room():
    case = seated(LOW, driver="otto")
    lean, lacking = recline_by(case, case.car.hoops, WANTED)
    trunk = trunk_on(case.sitting.trunk.hip, case.sitting.trunk.recline + lean, case.links)
    assert lean > 0
    assert lacking == pytest.approx(0.0, abs=1e-4)
    assert lower_by(case, case.car.hoops, WANTED) > 0
    assert trunk.helmet[0, 2] < case.sitting.trunk.helmet[0, 2]


def test_nothing_is_asked_where_the_room_is_there():
    case = seated({"hoops.main_top.z": 1300.0}, driver="robin")
    assert lower_by(case, case.car.hoops, WANTED) == 0.0
    assert recline_by(case, case.car.hoops, WANTED) == (0.0, 0.0)


def test_a_hoop_that_no_leaning_clears_leaves_a_lack():
    case = seated({"hoops.main_top.z": 700.0, "hoops.front_top.z": 650.0}, driver="magnus")
    assert recline_by(case, case.car.hoops, WANTED)[1] > 0
