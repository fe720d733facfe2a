"""Five worked cases of the conditional normal on the survey.

Independent: worked from the same survey figures before this program was written; `ansur2_worked_examples.csv`
has means to 0.1 mm and spreads to 0.1 mm.
"""

import csv
from pathlib import Path

import numpy as np
import pytest

from fitcalc.body.dimensions import prior
from fitcalc.body.posterior import posterior

CASES = list(
    csv.DictReader(Path(__file__).with_name("ansur2_worked_examples.csv").read_text("utf-8").splitlines())
)
A_ROW = {"acromialheight": 1.0, "stature": -1.0, "sittingheight": 1.0}
C7_ROW = {"cervicaleheight": 1.0, "stature": -1.0, "sittingheight": 1.0}


def figures(case):
    """Mean and spread of one dimension, which may be an exact sum of the model's."""
    sex = {"men": "male", "women": "female"}[case["sex"]]
    given = dict(part.split("=") for part in case["given"].split("; "))
    values = {name: np.array([float(text)]) for name, text in given.items() if name != "log_weightkg"}
    values["weightkg"] = np.exp([float(given["log_weightkg"])])
    (component,) = posterior(values, sex, 0.0).components
    sums = {"acromialheightsitting_A": A_ROW, "cervicaleheightsitting": C7_ROW}
    shares = sums.get(case["dimension"], {case["dimension"]: 1.0})
    row = np.array([shares.get(name, 0.0) for name in prior(sex).names])
    spread = 0.0 if case["dimension"] in values else np.sqrt(max(row @ component.after.covariance @ row, 0.0))
    return row @ component.mean[0], spread


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case['case']}-{case['dimension']}")
def test_worked_case(case):
    mean, spread = figures(case)
    # Figures of the survey are shipped with five digits: mass as logarithm moves breadths by up to 0.1 mm.
    assert mean == pytest.approx(float(case["cond_mean_mm"]), abs=0.15)
    # The cases state the residual's spread with the degrees of freedom lost, a factor of at most 1.001.
    assert spread == pytest.approx(float(case["cond_sd_mm"]), abs=0.1)
