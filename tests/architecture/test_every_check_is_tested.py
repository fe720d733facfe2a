"""Every quantity that can be judged is measured by name in at least one test outside the lists of limits."""

import re
from functools import cache
from pathlib import Path

import pytest

from fitcalc.checks.quantities import quantities

TESTS = Path(__file__).resolve().parents[1]
WHERE = ("checks", "published", "making", "posture", "fit")
LISTS = ("test_limits.py", "test_judge.py")
"""Tests that name quantities only to load or judge rows."""
SIDE = r"(?:_(?:left|right))?"
PART = r"(?:[\w{}]+\.)?"
"""Names of a pedal, a leg, a strap: figures have them between the words of their quantity."""
STRAP = r"harness\.(?:[\w{}]+)"
NAMED = {
    "leg.obstacle": r"leg\.left\.fire_bottle",
    "cleat.obstacle": r"cleat\.brake\.tube",
    "cleat.width_on_pad": r"cleat\.throttle\.play",
    "reach.elbow_room": r"reach\.elbow_left",
    "balance.mass_shift": r"balance\.mass\.battery",
    "pedal.brake_ratio": r"pedal\.brake\.ratio\b",
}
"""Quantities whose figures go by the name of a thing."""


@cache
def text():
    files = (
        path for room in WHERE for path in sorted((TESTS / room).glob("test_*.py")) if path.name not in LISTS
    )
    return "\n".join(path.read_text(encoding="utf-8") for path in files)


def pattern(quantity):
    """Ids that figures of a quantity have: with a side, a pedal's name, a thing's, or a slot's strap before it."""
    if quantity.startswith("harness.slot."):
        return rf"{STRAP}\.slot_{quantity.rpartition('.')[2]}\b"
    if quantity.startswith("harness.shoulder.shell"):
        return rf"{STRAP}\.shell_clearance\b"
    first, *rest = quantity.split(".")
    middle = "".join(rf"{SIDE}\.{PART}{re.escape(word)}" for word in rest)
    return rf"\b{first}{middle}{SIDE}"


@pytest.mark.parametrize("quantity", quantities())
def test_every_check_has_a_test(quantity):
    wanted = NAMED.get(quantity, pattern(quantity))
    assert re.search(wanted, text()), f"no test measures {quantity} ({wanted})"
