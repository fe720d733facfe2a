"""A seated driver for tests of what is measured, with any value of the car replaced."""

from dataclasses import replace
from functools import reduce
from operator import getitem

import numpy as np

from fitcalc.body.links import links_for
from fitcalc.checks.case import Case
from fitcalc.documents.car import Car
from fitcalc.documents.samples import sample_path
from fitcalc.documents.setup import Setup
from fitcalc.documents.store import load_car, load_driver
from fitcalc.geometry.side import point
from fitcalc.posture.sit import sit

AS_FOUND = Setup()


def car(values=(), name="hillclimb"):
    """A sample car with values replaced by their paths, all at once."""
    data = load_car(sample_path(name)).model_dump()
    for path, given in dict(values).items():
        *sections, last = path.split(".")
        reduce(getitem, sections, data)[last] = given
    return Car.model_validate(data)


def seated(values=(), name="hillclimb", driver="otto", setup=AS_FOUND):
    return seated_in(car(values, name), driver, setup)


def seated_in(chassis, driver="otto", setup=AS_FOUND):
    who = load_driver(sample_path(driver))
    links = links_for(who)
    return Case(chassis, who, links, setup, sit(chassis, links, setup))


def with_trunk(case, **joints):
    """The same case with joints of the trunk put where the test wants them."""
    places = {name: np.array([place], dtype=float) for name, place in joints.items()}
    return replace(case, sitting=replace(case.sitting, trunk=replace(case.sitting.trunk, **places)))


def with_links(case, **sizes):
    return replace(
        case, links=replace(case.links, **{name: np.array([size]) for name, size in sizes.items()})
    )


def by_id(figures):
    return {figure.id: figure for figure in figures}


def value(figures, id):
    figure = by_id(figures)[id]
    assert figure.value is not None, figure.missing
    return figure.value[0]


def at(x, z, y=0.0):
    return point(np.array([x]), np.array([y]), np.array([z]))


def mirrored(chassis):
    """The car seen in a mirror: left is right."""
    return Car.model_validate(_swapped(chassis.model_dump()))


def _swapped(node):
    if isinstance(node, (list, tuple)):
        return type(node)(_swapped(each) for each in node)
    if not isinstance(node, dict):
        return node
    turned = {_other_side(key): _swapped(each) for key, each in node.items()}
    for key in ("y", "pad_y"):
        if turned.get(key) is not None:
            turned[key] = -turned[key]
    if "y_low" in turned:
        turned["y_low"], turned["y_high"] = -turned["y_high"], -turned["y_low"]
    for key in ("foot", "hand", "strap"):
        if isinstance(turned.get(key), str):
            turned[key] = _other_side(turned[key])
    return turned


def _other_side(words):
    return "_".join({"left": "right", "right": "left"}.get(word, word) for word in words.split("_"))
