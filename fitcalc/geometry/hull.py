"""The corners of an outline that its hull has: all that counts of one that is not convex."""

from functools import lru_cache
from typing import Any

Pair = tuple[Any, Any]
FEW = 12
"""So few corners are left as they are: the hull of them saves nothing."""


def hull(corners: tuple[Pair, ...]) -> tuple[Pair, ...]:
    """The convex hull of many corners, in order round it; few of them, or such as differ by case, are left alone.

    Source: monotone chain, Andrew 1979, "Another efficient algorithm for convex hulls in two dimensions".
    """
    if len(corners) <= FEW or not all(isinstance(each, int | float) for pair in corners for each in pair):
        return corners
    return _hull(corners)


@lru_cache(maxsize=8)
def _hull(corners: tuple[Pair, ...]) -> tuple[Pair, ...]:
    ordered = sorted(set(corners))
    return (*_chain(ordered), *_chain(ordered[::-1])) if len(ordered) > 2 else tuple(ordered)


def _chain(ordered: list[Pair]) -> list[Pair]:
    """One half of the hull, without its last corner."""
    kept: list[Pair] = []
    for corner in ordered:
        while len(kept) > 1 and _turn(kept[-2], kept[-1], corner) <= 0.0:
            kept.pop()
        kept.append(corner)
    return kept[:-1]


def _turn(a: Pair, b: Pair, c: Pair) -> float:
    return float((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))
