"""Extension bars as figures: there only where a pedal is extended, weaker with more to carry."""

import numpy as np
import pytest

from fitcalc.checks.bar_figures import bar_figures
from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.posture.cases import spread
from tests.checks.cockpits import by_id, seated, value

LONG = Setup(brake=PedalRework(longer_arm=60.0))


def brake(setup=LONG, **values):
    case = seated({f"pedals.brake.bar.{key}": each for key, each in values.items()}, setup=setup)
    return bar_figures(case)


def test_pedal_as_found_has_no_bar():
    assert bar_figures(seated()) == []
    assert set(by_id(brake())) == {"pedal.brake.bar_safety", "pedal.brake.bar_deflection"}


def test_brake_is_held_against_its_own_rule():
    clutch = bar_figures(seated(setup=Setup(clutch=PedalRework(stand_off=20.0))))
    assert by_id(brake())["pedal.brake.bar_safety"].quantity == "pedal.brake_bar_safety"
    assert by_id(clutch)["pedal.clutch.bar_safety"].quantity == "pedal.bar_safety"


@pytest.mark.parametrize(
    "weaker",
    [{"thickness": 4.0}, {"bolt": "M5"}, {"bolt_pitch": 20.0}, {"material": "S235JR"}, {"depth": 20.0}],
)
def test_less_metal_is_less_safe(weaker):
    assert value(brake(**weaker), "pedal.brake.bar_safety") < value(brake(), "pedal.brake.bar_safety")


def test_case_without_a_bar_is_marked_so():
    figures = brake(spread(Setup(), {"brake.longer_arm": np.array([0.0, 20.0])}))
    assert [list(figure.absent) for figure in figures] == [[True, False]] * 2


def test_cases_are_independent():
    sizes = np.array([0.0, 20.0, 60.0])
    many = by_id(brake(spread(Setup(), {"brake.longer_arm": sizes, "brake.stand_off": sizes[::-1]})))
    for at, (long, off) in enumerate(zip(sizes, sizes[::-1], strict=True)):
        alone = brake(Setup(brake=PedalRework(longer_arm=float(long), stand_off=float(off))))
        for figure in alone:
            assert many[figure.id].value[at] == pytest.approx(figure.value[0])
