"""What the tape leaves open of a car and its driver, drawn: cars and bodies that may stand behind the numbers."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
from pydantic import BaseModel

from fitcalc.body.dimensions import FIELDS, measured, titles
from fitcalc.body.estimate import sample
from fitcalc.body.links import Links, links_of
from fitcalc.body.relations import relation_errors
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.fields import Point, SideMark
from fitcalc.fit.propagation import within
from fitcalc.posture.cases import spread
from fitcalc.units import Floats

WORDS = {
    **dict.fromkeys(("pedals", "harness", "hoops", "footwell", "gear_lever", "at"), ""),
    "knobs": "gear lever knobs",
    "crotch": "crotch anchors",
    **{
        f"{strap}_{side}": f"{side} {strap} anchor"
        for strap in ("shoulder", "lap")
        for side in ("left", "right")
    },
    "main_top": "top of the main hoop",
    "front_top": "top of the front hoop",
    "brace_foot": "foot of the hoop's brace",
}
"""Steps of a path that are told in words of their own; empty for those that say nothing."""
AXES = {Point: ("x", "y", "z"), SideMark: ("x", "z")}


@dataclass(frozen=True, eq=False)
class Drawn:
    """Cars and bodies, n of each.

    Attributes:
        car: with arrays over cases in place of what the tape gave.
        links: of the bodies.
        errors: what was drawn for each measurement, by path in the car file or field of the driver file, `(k, n)`.
    """

    car: Car
    links: Links
    errors: dict[str, Floats]


def toleranced(car: Car) -> dict[str, Point | SideMark]:
    """Every point of the car with a tolerance above 0, by its path."""
    return {path: mark for path, mark in _marks(car, ()) if mark.tolerance > 0.0}


def drawn(car: Car, driver: Driver, count: int, seed: int) -> Drawn:
    """Draw cars and bodies: points even within plus or minus their tolerance, bodies as tape and survey leave them."""
    random = np.random.default_rng(seed)
    errors: dict[str, Floats] = {}
    values: dict[str, Floats] = {}
    for path, mark in toleranced(car).items():
        axes = AXES[type(mark)]
        errors[path] = np.stack([within(random, mark.tolerance, count) for _ in axes])
        for axis, error in zip(axes, errors[path], strict=True):
            values[f"{path}.{axis}"] = getattr(mark, axis) + error
    own, constants = (int(part) for part in random.integers(2**31, size=2))
    bodies = sample(driver, count, own)
    links = links_of(bodies, driver, relation_errors(count, constants))
    body = {name: bodies[dimension][None] for name, dimension in FIELDS.items()}
    return Drawn(spread(car, values), links, errors | body)


def measurements(car: Car, driver: Driver) -> dict[str, str]:
    """What may be measured (again): path in the car or driver file, with plain words."""
    given, words = measured(driver), titles()
    again = {True: "again", False: "not yet measured"}
    points = {path: f"{place_words(car, path)} (again)" for path in toleranced(car)}
    body = {name: f"{words[dimension]} ({again[dimension in given]})" for name, dimension in FIELDS.items()}
    return points | body


def place_words(car: Car, path: str) -> str:
    """What a point of the car is, as in `left shoulder anchor`, `clutch pivot`, `seat mount 2`."""
    node: Any = car
    words: list[str] = []
    for step in path.split("."):
        if step.isdecimal():
            node = node[int(step)]
            name = getattr(node, "name", "")
            words[-1] = name or f"{words[-1].removesuffix('s')} {int(step) + 1}"
        else:
            node = getattr(node, step)
            words.append(WORDS.get(step, step.replace("_", " ")))
    return " ".join(filter(None, words))


def _marks(node: Any, path: tuple[str, ...]) -> Iterator[tuple[str, Point | SideMark]]:
    if isinstance(node, (Point, SideMark)):
        yield ".".join(path), node
    elif isinstance(node, BaseModel):
        for name in type(node).model_fields:
            yield from _marks(getattr(node, name), (*path, name))
    elif isinstance(node, tuple):
        for at, part in enumerate(node):
            yield from _marks(part, (*path, str(at)))
