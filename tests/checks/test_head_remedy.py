"""How much lower or further reclined a tall driver must sit: checked by sitting so."""

import re
from dataclasses import replace

import numpy as np
import pytest

from fitcalc.checks.check import Check
from fitcalc.checks.head import head_figures
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import taken
from fitcalc.posture.cases import spread
from fitcalc.posture.trunk import trunk_on
from tests.checks.cockpits import at, by_id, seated, seated_in, value, with_trunk

WANTED = np.array([60.0])
LOW = {"hoops.main_top.z": 1000.0, "rails.lower_travel": 200.0}


def under(case, id="head.hoop_line"):
    return by_id(head_figures(case))[id].mend


def test_sitting_that_much_lower_gives_the_room():
    case = seated(LOW, driver="magnus")
    down = under(case).lower_by(WANTED)[0]
    lowered = seated_in(case.car, "magnus", Setup(seat_raise=-down))
    assert down > 0
    assert value(head_figures(lowered), "head.hoop_line") == pytest.approx(60.0, abs=1e-6)


def test_leaning_that_much_further_gives_the_room():
    case = seated(LOW, driver="otto")
    lean, lacking = under(case).recline_by(WANTED)
    trunk = trunk_on(case.sitting.trunk.hip, case.sitting.trunk.recline + lean, case.links)
    assert lean > 0
    assert lacking == pytest.approx(0.0, abs=1e-4)
    assert under(case).lower_by(WANTED) > 0
    assert trunk.helmet[0, 2] < case.sitting.trunk.helmet[0, 2]


def test_nothing_is_asked_where_the_room_is_there():
    case = seated({"hoops.main_top.z": 1300.0}, driver="robin")
    assert under(case).lower_by(WANTED) == 0.0
    assert under(case).recline_by(WANTED) == (0.0, 0.0)


def test_a_hoop_that_no_leaning_clears_leaves_a_lack():
    case = seated({"hoops.main_top.z": 700.0, "hoops.front_top.z": 650.0}, driver="magnus")
    assert under(case).recline_by(WANTED)[1] > 0


def sentence(id, bound=60.0, driver="otto", **values):
    case = seated({**LOW, **values}, driver=driver)
    figure = by_id(head_figures(case))[id]
    bounds = np.array([bound]), None, None, None
    return case, Check(id, figure, *bounds, "ours", "row", None, "Raise it.", "").remedy


def said_numbers(text):
    return [float(number) for number in re.findall(r"[\d.]+(?= mm| deg)", text)]


def test_the_finding_says_how_much_lower_or_further_back():
    """The sentence's own numbers, carried out, give the room: they are rounded up, to 1 mm and 0.1 deg."""
    case, said = sentence("head.hoop_line", bound=80.0)
    lower, lean = said_numbers(said)
    lowered = seated_in(case.car, "otto", Setup(seat_raise=-lower))
    assert value(head_figures(lowered), "head.hoop_line") == pytest.approx(80.5, abs=0.5)
    back = trunk_on(case.sitting.trunk.hip, case.sitting.trunk.recline + lean, case.links)
    leant = replace(case, sitting=replace(case.sitting, trunk=back))
    assert value(head_figures(leant), "head.hoop_line") == pytest.approx(80.5, abs=0.5)


def test_under_a_brace_the_finding_says_how_much_lower_or_further_forward():
    case, said = sentence("head.brace_line", bound=250.0)
    lower, forward = said_numbers(said)
    lowered = seated_in(case.car, "otto", Setup(seat_raise=-lower))
    ahead = at(*(case.sitting.trunk.helmet[0, [0, 2]] - [forward, 0.0]))
    moved = with_trunk(case, helmet=ahead[0])
    assert value(head_figures(lowered), "head.brace_line") == pytest.approx(250.5, abs=0.5)
    assert value(head_figures(moved), "head.brace_line") == pytest.approx(250.5, abs=0.5)


def test_the_finding_says_when_leaning_does_not_help():
    _, said = sentence(
        "head.hoop_line", driver="magnus", **{"hoops.main_top.z": 700.0, "hoops.front_top.z": 650.0}
    )
    assert "does not give the room" in said


def test_one_case_of_many_keeps_its_own_sentence():
    many = seated(LOW, setup=spread(Setup(), {"seat_raise": np.array([0.0, -30.0])}))
    figure = taken(by_id(head_figures(many))["head.hoop_line"], np.array([1]))
    alone = under(seated(LOW, setup=Setup(seat_raise=-30.0)))
    assert figure.mend.too_low(100.0) == alone.too_low(100.0)
