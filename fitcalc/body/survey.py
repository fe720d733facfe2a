"""The body survey: published means, spreads and correlations of ANSUR II, one table per sex.

Source: ANSUR II, US Army Natick TR-15/007 (Gordon et al. 2014): 4082 men, 1986 women, aged 17 to 58; summary
figures computed from the public data file. Columns that are exact sums of others are left out, so that the
covariance is positive definite; mass enters as its natural logarithm, whose skew is near zero.
"""

import csv
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Literal

import numpy as np

from fitcalc.units import Floats

Sex = Literal["female", "male"]
DATA = Path(__file__).parent / "data"
TABLES: tuple[tuple[Sex, str], ...] = (("female", "women"), ("male", "men"))


@dataclass(frozen=True, eq=False)
class Survey:
    """One sex's table: names of the dimensions, means (d,) and covariance (d, d); mm, mass as ln(kg)."""

    sex: Sex
    names: tuple[str, ...]
    mean: Floats
    covariance: Floats


def table_name(sex: Sex) -> str:
    """How the survey calls a sex in its file names."""
    return dict(TABLES)[sex]


def summary(sex: Sex) -> dict[str, dict[str, str]]:
    """The published summary row (unit, n, mean, sd, percentiles p1 to p99, as text) of each dimension."""
    path = DATA / f"ansur2_tr15007_summary_{table_name(sex)}.csv"
    with path.open(encoding="utf-8", newline="") as file:
        return {row["dimension"]: row for row in csv.DictReader(file)}


@cache
def survey(sex: Sex) -> Survey:
    """The table of one sex, read once."""
    path = DATA / f"ansur2_tr15007_correlation_{table_name(sex)}.csv"
    with path.open(encoding="utf-8", newline="") as file:
        head, *rows = csv.reader(file)
    names = tuple(head[1:])
    published = summary(sex)
    mean, spread = (np.array([float(published[name][key]) for name in names]) for key in ("mean", "sd"))
    correlation = np.array([[float(cell) for cell in row[1:]] for row in rows])
    covariance = (correlation + correlation.T) / 2 * np.outer(spread, spread)
    mean.setflags(write=False)
    covariance.setflags(write=False)
    return Survey(sex, names, mean, covariance)


def mean_of(sex: Sex, dimension: str) -> float:
    """The survey's mean of one dimension for one sex, mm."""
    table = survey(sex)
    return float(table.mean[table.names.index(dimension)])
