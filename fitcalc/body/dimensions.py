"""Names of the body's dimensions, and which of them a driver file gives.

The model's dimensions are the survey's columns and a directly measured sitting shoulder height (`SHOULDER`),
which the survey did not take: it is the mean of the two ways to derive it, with the scatter that
`data/links.toml` states for it. Outside the model mass stands in kg (`MASS`), inside it as its logarithm.
"""

import csv
from functools import cache
from types import MappingProxyType

import numpy as np

from fitcalc.body.conditional import Normal
from fitcalc.body.relations import relations
from fitcalc.body.survey import DATA, Sex, survey
from fitcalc.documents.driver import Driver
from fitcalc.units import Floats

MASS, LOG_MASS = "weightkg", "log_weightkg"
SHOULDER, CERVICALE = "acromialheightsitting", "cervicaleheightsitting"

FIELDS = MappingProxyType(
    {
        "stature": "stature",
        "sitting_height": "sittingheight",
        "eye_height_sitting": "eyeheightsitting",
        "shoulder_height_sitting": SHOULDER,
        "buttock_knee": "buttockkneelength",
        "knee_height": "kneeheightsitting",
        "hip_breadth": "hipbreadthsitting",
        "shoulder_breadth": "bideltoidbreadth",
        "upper_arm": "shoulderelbowlength",
        "forearm_grip": "forearmcenterofgriplength",
        "foot_length": "footlength",
        "foot_breadth": "footbreadthhorizontal",
        "mass": MASS,
    }
)
"""Field of the driver file -> dimension."""

SHOULDER_SHARES = {
    "acromialheight": 0.5,
    "stature": -0.5,
    "sittingheight": 0.5,
    "elbowrestheight": 0.5,
    "shoulderelbowlength": 0.5,
}
"""Mean of acromial height less (stature less sitting height) and elbow rest height plus upper arm length."""


@cache
def titles() -> MappingProxyType[str, str]:
    """Plain words for each dimension outside the model, in the order in which they are reported."""
    with (DATA / "dimensions.csv").open(encoding="utf-8", newline="") as file:
        return MappingProxyType({row["dimension"]: row["title"] for row in csv.DictReader(file)})


def measured(driver: Driver) -> dict[str, float]:
    """The dimensions that a driver file gives, mm and kg, in the order of `FIELDS`."""
    given = {FIELDS[field]: value for field, value in driver.measurements if value is not None}
    return given if driver.mass is None else given | {MASS: driver.mass}


def tolerance(dimension: str, tape: float) -> float:
    """What one measurement can promise, plus or minus: mm, and for mass the step of its logarithm."""
    return relations()["scale_tolerance"].men if dimension == MASS else tape


@cache
def prior(sex: Sex) -> Normal:
    """The model of one sex before anything is measured: the survey and the sitting shoulder height."""
    table = survey(sex)
    shares = np.array([SHOULDER_SHARES.get(name, 0.0) for name in table.names])
    lift = np.vstack([np.eye(len(table.names)), shares])
    covariance = lift @ table.covariance @ lift.T
    covariance[-1, -1] += relations()["shoulder_landmark"].spread ** 2
    return Normal((*table.names, SHOULDER), lift @ table.mean, covariance)


@cache
def reported(names: tuple[str, ...]) -> Floats:
    """What leads from the model's dimensions to the reported ones, (reported, model); mass as logarithm."""
    rows = {name: {name: 1.0} for name in names}
    rows[MASS] = {LOG_MASS: 1.0}
    rows[CERVICALE] = {"cervicaleheight": 1.0, "stature": -1.0, "sittingheight": 1.0}
    return np.array([[rows[title].get(name, 0.0) for name in names] for title in titles()])
