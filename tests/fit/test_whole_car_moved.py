"""Moving or mirroring the whole car changes no answer but those that name the axle."""

import re

import numpy as np
import pytest

from fitcalc.documents.car import Car
from fitcalc.documents.samples import sample_path
from fitcalc.documents.store import load_car, load_driver
from fitcalc.fit.evaluate import evaluate

CARS = ("hillclimb", "student", "upright")
AXLE = ("feet.axle_line", "balance.")
ALONG = {"x", "bulkhead", "opening_front", "opening_rear"}
UP = {"z", "z_low", "z_high", "side_top", "ground"}
LINES = {"floor", "roof", "behind_seat", "sight_edges", "outline"}
IN_SEAT_FRAME = {"profile", "slots"}


def moved(node, dx, dz, key=""):
    """Every coordinate of the dumped car moved; what stands in the seat's own frame stays."""
    if node is None or key in IN_SEAT_FRAME:
        return node
    if key in LINES:
        return [(x + dx, z + dz) for x, z in node]
    if key == "half_widths":
        return [(x + dx, width) for x, width in node]
    if isinstance(node, dict):
        return {name: moved(value, dx, dz, name) for name, value in node.items()}
    if isinstance(node, list | tuple):
        return [moved(value, dx, dz) for value in node]
    return node + dx * (key in ALONG) + dz * (key in UP) if isinstance(node, float) else node


def figures(car, driver="robin"):
    return {f.id: f.value for f in evaluate(car, load_driver(sample_path(driver))).figures}


@pytest.mark.parametrize("name", CARS)
@pytest.mark.parametrize(("dx", "dz"), [(40.0, 0.0), (0.0, 35.0), (-25.0, 10.0)])
def test_moving_the_whole_car_changes_no_figure(name, dx, dz):
    found = load_car(sample_path(name))
    there = Car.model_validate(moved(found.model_dump(), dx, dz))
    before, after = figures(found), figures(there)
    for id, value in before.items():
        if not id.startswith(AXLE):
            assert after[id] == pytest.approx(value, abs=1e-6), id


def mirrored(node, key=""):
    """The car seen in a mirror: y turned, left and right exchanged."""
    if isinstance(node, dict):
        turned = {swapped(name): mirrored(value, name) for name, value in node.items()}
        if {"y_low", "y_high"} <= turned.keys():
            turned["y_low"], turned["y_high"] = turned["y_high"], turned["y_low"]
        return turned
    if isinstance(node, list | tuple) and key not in LINES | {"profile", "half_widths"}:
        return [mirrored(value) for value in node]
    if key in ("y", "pad_y", "y_low", "y_high"):
        return -node
    return swapped(node) if key in ("foot", "hand", "strap") else node


def swapped(word):
    other = {"left": "right", "right": "left"}
    return re.sub(r"(?<![a-z])(left|right)(?![a-z])", lambda side: other[side[1]], word)


@pytest.mark.parametrize("name", CARS)
def test_mirroring_the_car_swaps_sides(name):
    found = load_car(sample_path(name))
    before, after = figures(found), figures(Car.model_validate(mirrored(found.model_dump())))
    for side in ("left", "right"):
        for id in (id for id in before if side in id and "harness.crotch" not in id):
            other = after.get(swapped(id))
            if before[id] is not None and other is not None and not id.endswith("slot_y"):
                assert np.asarray(other) == pytest.approx(before[id], abs=1e-6), id
