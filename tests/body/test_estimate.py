"""What a driver gets from a few tape measurements."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import multivariate_normal

from fitcalc.body.dimensions import FIELDS, measured, prior, titles
from fitcalc.body.estimate import estimate, estimate_many, sample
from fitcalc.body.survey import survey
from fitcalc.documents.driver import Driver


def driver(stature=1756.0, sex="male", mass=None, tape=5.0, **further):
    return Driver(name="x", sex=sex, mass=mass, tape=tape, measurements={"stature": stature, **further})


def of(result, name, figure="mean"):
    return getattr(result, figure)[result.names.index(name)]


FULL = {
    "sitting_height": 915.0,
    "eye_height_sitting": 800.0,
    "shoulder_height_sitting": 606.0,
    "buttock_knee": 615.0,
    "knee_height": 552.0,
    "hip_breadth": 375.0,
    "shoulder_breadth": 505.0,
    "upper_arm": 362.0,
    "forearm_grip": 348.0,
    "foot_length": 270.0,
    "foot_breadth": 101.0,
}


def test_measured_values_stay_as_measured_and_carry_the_tape():
    result = estimate(driver(mass=84.0, **FULL))
    for field, value in {"stature": 1756.0, "mass": 84.0, **FULL}.items():
        assert of(result, FIELDS[field]) == pytest.approx(value, rel=1e-12)
    assert result.measured.sum() == len(FIELDS)
    # The survey, and each further measurement, sharpens a measured value a little.
    assert of(estimate(driver()), "stature", "sd") == pytest.approx(5 / np.sqrt(3), rel=0.002)


def test_without_tolerance_a_measured_value_is_certain():
    result = estimate(driver(tape=0.0))
    assert of(result, "stature", "low") == of(result, "stature", "high") == 1756.0


def test_reports_every_dimension_once_with_plain_words():
    result = estimate(driver())
    assert result.names == tuple(titles())
    assert np.all(result.low <= result.mean)
    assert np.all(result.mean <= result.high)


@pytest.mark.parametrize(
    ("further", "dimension", "least_cut"),
    [
        ({"sitting_height": 915.0}, "eyeheightsitting", 0.5),
        ({"buttock_knee": 615.0}, "buttockpopliteallength", 0.4),
        ({"shoulder_height_sitting": 606.0}, "elbowrestheight", 0.3),
        ({"foot_length": 270.0}, "balloffootlength", 0.3),
    ],
)
def test_a_measurement_narrows_its_neighbours(further, dimension, least_cut):
    before = of(estimate(driver(mass=84.0)), dimension, "sd")
    assert of(estimate(driver(mass=84.0, **further)), dimension, "sd") < (1 - least_cut) * before


fields = st.lists(st.sampled_from(sorted(FULL)), unique=True, max_size=6)


@given(taken=fields, further=st.sampled_from(sorted(FULL)), sex=st.sampled_from(["female", "male"]))
@settings(max_examples=40)
def test_intervals_shrink_as_measurements_are_added(taken, further, sex):
    some = {name: FULL[name] for name in taken}
    before, after = (
        estimate(driver(sex=sex, **given_fields)) for given_fields in (some, some | {further: FULL[further]})
    )
    assert np.all(
        after.sd[2:] <= before.sd[2:] + 1e-9
    )  # stature and the mass in kg, whose spread goes with its mean


@given(seed=st.integers(0, 50), sex=st.sampled_from([None, "female", "male"]))
@settings(max_examples=20)
def test_order_of_the_measurements_does_not_matter(seed, sex):
    values = {name: np.array([value]) for name, value in measured(driver(mass=84.0, **FULL)).items()}
    names = list(np.random.default_rng(seed).permutation(list(values)))
    first = estimate_many(values, sex)
    second = estimate_many({name: values[name] for name in names}, sex)
    assert first.mean == pytest.approx(second.mean, rel=1e-9)
    assert first.sd == pytest.approx(second.sd, rel=1e-6)


def test_sex_left_out_weighs_both_by_likelihood():
    """Independent: scipy.stats.multivariate_normal."""
    at = [prior("male").names.index(name) for name in ("stature", "sittingheight")]
    values = np.array([1690.0, 900.0])
    densities = [
        multivariate_normal(prior(sex).mean[at], prior(sex).covariance[np.ix_(at, at)]).pdf(values)
        for sex in ("female", "male")
    ]
    given_values = {"stature": values[:1], "sittingheight": values[1:]}
    parts = [estimate_many(given_values, sex, 0.0).mean[0] for sex in ("female", "male")]
    expected = (densities[0] * parts[0] + densities[1] * parts[1]) / sum(densities)
    ours = estimate_many(given_values, None, 0.0).mean[0]
    mass = list(titles()).index("weightkg")
    assert np.delete(ours, mass) == pytest.approx(np.delete(expected, mass), rel=1e-9)
    assert ours[mass] == pytest.approx(expected[mass], rel=0.02)  # mixed as logarithms


@pytest.mark.parametrize(("stature", "sex"), [(1930.0, "male"), (1470.0, "female")])
def test_sex_left_out_hardly_matters_for_very_tall_and_very_short(stature, sex):
    mixed, known = estimate(driver(stature, None)), estimate(driver(stature, sex))
    assert of(mixed, "kneeheightsitting") == pytest.approx(of(known, "kneeheightsitting"), abs=1.5)


def test_interval_of_a_mixture_is_wider_than_the_mean_of_both():
    widths = [
        np.subtract(*(of(estimate(driver(1690.0, sex)), "hipbreadthsitting", end) for end in ("high", "low")))
        for sex in (None, "female", "male")
    ]
    assert widths[0] > min(widths[1:])


def test_improbable_measurement_is_named_with_what_was_expected():
    (flag,) = estimate(driver(1750.0, knee_height=620.0, sitting_height=920.0, buttock_knee=612.0)).flags
    assert flag.startswith(
        "knee height, sitting 620 is far from what the other measurements suggest, expected 55"
    )
    assert flag.endswith(": measure again?")


def test_one_slip_does_not_accuse_the_good_measurements():
    flags = estimate(driver(mass=84.0, **{**FULL, "forearm_grip": 448.0})).flags
    assert [flag.split(" 4")[0] for flag in flags] == ["forearm to grip"]


def test_two_measurements_that_contradict_each_other_raise_one_flag():
    """A tall man's stature with a child's leg; once either is set aside nothing contradicts the other."""
    assert len(estimate(driver(1950.0, buttock_knee=450.0)).flags) == 1


def test_sitting_shoulder_height_is_the_mean_of_two_ways_to_it():
    """From the shoulder above the floor less what is below the seat, and from the elbow on the seat plus upper arm."""
    for sex in ("female", "male"):
        table, model = survey(sex), prior(sex)
        mean = dict(zip(table.names, table.mean, strict=True))
        standing = mean["acromialheight"] - (mean["stature"] - mean["sittingheight"])
        by_elbow = mean["elbowrestheight"] + mean["shoulderelbowlength"]
        assert model.mean[-1] == pytest.approx((standing + by_elbow) / 2)


def test_the_survey_cannot_be_changed_by_who_reads_it():
    for figures in (survey("male").mean, survey("male").covariance):
        with pytest.raises(ValueError, match="read-only"):
            figures[0] = 0.0


def test_plausible_measurements_raise_no_flag():
    result = estimate(driver(mass=84.0, **FULL))
    assert (result.flags, result.extrapolated, result.reason) == ((), False, "")


@pytest.mark.parametrize(
    ("stature", "sex", "extrapolated"),
    [
        (1300.0, None, True),
        (1500.0, None, False),
        (1500.0, "male", True),
        (2050.0, "male", True),
        (1900.0, "male", False),
    ],
)
def test_body_outside_the_survey_is_extrapolated(stature, sex, extrapolated):
    result = estimate(driver(stature, sex))
    assert result.extrapolated is extrapolated
    assert ("extrapolated" in result.reason) is extrapolated
    assert result.remarks == ((result.reason,) if extrapolated else ())


def test_many_drivers_come_out_as_each_alone():
    statures, masses = np.array([1600.0, 1756.0, 1900.0]), np.array([60.0, 84.0, 95.0])
    many = estimate_many({"stature": statures, "weightkg": masses}, None)
    for case, (stature, mass) in enumerate(zip(statures, masses, strict=True)):
        assert many.mean[case] == pytest.approx(estimate(driver(stature, None, mass)).mean, rel=1e-12)


def test_a_hundred_thousand_drivers_in_one_call():
    random = np.random.default_rng(0)
    values = {"stature": random.normal(1700, 80, 100_000), "weightkg": random.uniform(50, 120, 100_000)}
    many = estimate_many(values, None)
    assert many.mean.shape == (100_000, len(titles()))
    assert np.all(np.isfinite(many.mean))


@pytest.mark.parametrize("sex", [None, "male"])
def test_sample_scatters_as_the_estimate_says(sex):
    who = driver(1700.0, sex, sitting_height=890.0)
    result, bodies = estimate(who), sample(who, 40_000, seed=3)
    inside = [np.mean((bodies[name] >= low) & (bodies[name] <= high)) for name, low, high in _ends(result)]
    assert inside == pytest.approx(np.full(len(inside), 0.9), abs=0.01)  # 6 standard errors
    means = np.array([bodies[name].mean() for name in result.names])
    assert np.delete(means, 1) == pytest.approx(np.delete(result.mean, 1), abs=0.6)


def _ends(result):
    return zip(result.names, result.low, result.high, strict=True)


def test_sample_repeats_with_its_seed():
    first, second, other = (sample(driver(), 5, seed=seed)["sittingheight"] for seed in (1, 1, 2))
    assert np.array_equal(first, second)
    assert not np.array_equal(first, other)
