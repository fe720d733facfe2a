"""Everything about a car, a body and a rework that was measured or estimated and may be otherwise, with its uncertainty."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

import numpy as np

from fitcalc.body.dimensions import FIELDS, MASS, titles
from fitcalc.body.estimate import estimate, sample
from fitcalc.body.links import Links, links_of
from fitcalc.body.relations import relations
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.edit import field_at
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS
from fitcalc.fit.predicted import Work
from fitcalc.fit.tolerances import AXES, toleranced
from fitcalc.fit.variables import value_at
from fitcalc.posture.cases import spread
from fitcalc.units import Floats

Kind = Literal["body", "proportion", "car", "made"]
BODIES = 4_000
"""Bodies drawn for how the estimates of a body hang together."""
SEED = 1
SETTING = 1.0
"""How well what was set or cut is known, plus or minus, mm or deg: common practice, no source."""
EVEN = 1.0 / np.sqrt(3.0)
"""Standard deviation of an error known only to lie within plus or minus 1 (JCGM 100:2008 4.3.7)."""


@dataclass(frozen=True)
class Suspect:
    """One figure that may be otherwise.

    Attributes:
        path: in the car file, field of the driver file, or id of a constant of the body.
        named: whether a person has it as a figure of its own, and not only the estimate behind others.
        now: what the calculation took; 0 for a proportion, which stands for its difference from the constant.
        u: its standard uncertainty.
    """

    kind: Kind
    path: str
    title: str
    unit: str
    named: bool
    now: float
    u: float


@dataclass(frozen=True, eq=False)
class Suspects:
    """All of them, k, and how their errors hang together, `(k, k)`."""

    work: Work
    each: tuple[Suspect, ...]
    covariance: Floats

    def cases(self, shifts: Floats) -> tuple[Car, Links, Setup]:
        """Cars, bodies and reworks with each figure off by so much, shifts `(k, n)`."""
        by_kind: dict[Kind, dict[str, Floats]] = {"body": {}, "proportion": {}, "car": {}, "made": {}}
        for suspect, shift in zip(self.each, shifts, strict=True):
            by_kind[suspect.kind][suspect.path] = suspect.now + shift
        bodies = {FIELDS.get(path, path): value for path, value in by_kind["body"].items()}
        links = links_of(bodies, self.work.driver, by_kind["proportion"])
        return spread(self.work.car, by_kind["car"]), links, spread(self.work.made, by_kind["made"])


def suspects(work: Work) -> Suspects:
    """The body's dimensions, the proportions behind its links, every coordinate with a tolerance, every setting."""
    body = list(_body(work.driver))
    every = (*body, *_proportions(), *_coordinates(work.car), *_settings(work))
    covariance = np.diag([each.u**2 for each in every])
    covariance[: len(body), : len(body)] = _scatter(work.driver)
    return Suspects(work, every, covariance)


def _body(driver: Driver) -> Iterator[Suspect]:
    fields = {dimension: field for field, dimension in FIELDS.items()}
    body, u = estimate(driver), np.sqrt(np.diag(_scatter(driver)))
    for at, (name, title) in enumerate(titles().items()):
        unit = "kg" if name == MASS else "mm"
        yield Suspect(
            "body", fields.get(name, name), title, unit, name in fields, float(body.mean[at]), float(u[at])
        )


def _scatter(driver: Driver) -> Floats:
    """Covariance of the body's dimensions that tape and estimate leave, `(d, d)`."""
    return np.cov(np.stack(list(sample(driver, BODIES, SEED).values())))


def _proportions() -> Iterator[Suspect]:
    """What a body may differ from the constants between its outside and its links; as found none does."""
    for row in relations().values():
        if row.spread > 0.0:
            unit = "mm" if row.of else row.unit.replace("1", "-")
            yield Suspect("proportion", row.id, row.quantity, unit, True, 0.0, row.spread)


def _coordinates(car: Car) -> Iterator[Suspect]:
    for path, mark in toleranced(car).items():
        for axis in AXES[type(mark)]:
            steps = (f"{int(step) + 1}" if step.isdecimal() else step for step in path.split("."))
            words = f"{', '.join(steps).replace('_', ' ')}: {axis}"
            yield Suspect(
                "car", f"{path}.{axis}", words, "mm", True, getattr(mark, axis), EVEN * mark.tolerance
            )


def _settings(work: Work) -> Iterator[Suspect]:
    """Numbers of the rework; those of a pedal only where it is extended."""
    for path in PATHS:
        now = float(value_at(work.made, path)[0])
        if now != 0.0 or "." not in path:
            declared = field_at(Setup, path)
            words = f"{path.partition('.')[0]}: {declared.title}" if "." in path else declared.title
            yield Suspect("made", path, words, declared.unit, True, now, EVEN * SETTING)
