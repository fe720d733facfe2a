"""The sweep gives what `evaluate` gives, and reads no more than it says."""

import numpy as np
import pytest

from fitcalc.body.links import links_for
from fitcalc.documents.samples import sample_cars, sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.cases import setup_of
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.sweep import sweep
from fitcalc.fit.variables import variables_for

ROBIN = load_driver(sample_path("robin"))
LINKS = links_for(ROBIN)
CASES = 24


def random_setup(car):
    random = np.random.default_rng(5)
    return setup_of({each.path: random.choice(each.places()[::4], CASES) for each in variables_for(car)})


@pytest.mark.parametrize("name", sample_cars())
def test_every_margin_is_that_of_evaluate(name):
    car = load_car(sample_path(name))
    setup = random_setup(car)
    mine = {check.id: (at, check) for at, check in sweep(car, ROBIN, setup, LINKS).each()}
    checks = evaluate(car, ROBIN, setup, links=LINKS).checks
    assert set(mine) == {check.id for check in checks}
    for check in checks:
        at, own = mine[check.id]
        for kind in ("margin", "comfort_margin"):
            full, few = getattr(check, kind), getattr(own, kind)
            if full is not None:
                spread = np.broadcast_to(few, (int(at.max()) + 1,))[at]
                assert spread == pytest.approx(np.broadcast_to(full, (CASES,)), abs=1e-6), (check.id, kind)
