"""Published percentiles of adult bodies against the survey model.

Sources:
    ANSUR II, US Army Natick TR-15/007 (Gordon et al. 2014): percentiles of the public data file, shipped
    beside means.
    Adult percentiles of stature, US: ergonomics page of City University of Hong Kong (seen).
    Sitting shoulder height, British men 540 / 595 / 645 mm, Hong Kong men 555 / 605 / 655 mm: the same page
    (seen).
"""

import numpy as np
import pytest
from scipy.stats import norm

from fitcalc.body.dimensions import LOG_MASS, prior
from fitcalc.body.survey import summary, survey

pytestmark = pytest.mark.published
LEVELS = (0.05, 0.25, 0.5, 0.75, 0.95)


def model_percentiles(sex, name, levels):
    model = prior(sex)
    at = model.names.index(name)
    return norm.ppf(levels, model.mean[at], np.sqrt(model.covariance[at, at]))


@pytest.mark.parametrize("sex", ["female", "male"])
@pytest.mark.parametrize("name", survey("male").names)
def test_percentiles_of_the_survey(sex, name):
    row = summary(sex)[name]
    printed = np.array([float(row[f"p{100 * level:g}"]) for level in LEVELS])
    # A skew g moves a 5 % point by 0.3 g spreads; n people know it to 2.1 / sqrt(n) spreads; the tape reads 1
    # mm.
    spreads = 0.3 * abs(float(row["skewness"])) + 2 * 2.1 / np.sqrt(float(row["n"]))
    reading = 0.005 if name == LOG_MASS else 0.5
    off = model_percentiles(sex, name, LEVELS) - printed
    assert np.abs(off).max() <= spreads * float(row["sd"]) + reading


@pytest.mark.parametrize(("sex", "printed"), [("male", (1640, 1755, 1870)), ("female", (1520, 1625, 1730))])
def test_stature_of_us_adults(sex, printed):
    # Another sample, printed to 5 mm.
    assert model_percentiles(sex, "stature", (0.05, 0.5, 0.95)) == pytest.approx(printed, abs=10)


@pytest.mark.parametrize("printed", [(540, 595, 645), (555, 605, 655)])
def test_sitting_shoulder_height_of_men_elsewhere(printed):
    # Other peoples, so the middle may differ; the spread must not: it holds the scatter of the derived
    # height.
    ours = model_percentiles("male", "acromialheightsitting", (0.05, 0.5, 0.95))
    assert ours == pytest.approx(printed, abs=17)
    assert ours[2] - ours[0] == pytest.approx(printed[2] - printed[0], abs=10)


@pytest.mark.parametrize(("sex", "count"), [("male", "4082"), ("female", "1986")])
def test_people_surveyed(sex, count):
    assert {row["n"] for row in summary(sex).values()} == {count}
