"""What is drawn of something that has not changed since: worked out once, and then the very same primitives again."""

from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Generic, TypeVar

from fitcalc.present.picture import Primitive

Thing = TypeVar("Thing")
FEW = 8
"""Drawings that are kept for each kind of thing: as found, other driver, and a few cars of undo."""


class Same(Generic[Thing]):
    """One object, equal to itself only, however alike another one is."""

    def __init__(self, thing: Thing) -> None:
        self.thing = thing

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Same) and other.thing is self.thing

    def __hash__(self) -> int:
        return id(self.thing)


def once(draw: Callable[[Thing], Iterator[Primitive]]) -> Callable[[Thing], tuple[Primitive, ...]]:
    """A drawing that is made once for each thing; the thing must never change."""

    @lru_cache(maxsize=FEW)
    def kept(same: Same[Thing]) -> tuple[Primitive, ...]:
        return tuple(draw(same.thing))

    def drawn(thing: Thing) -> tuple[Primitive, ...]:
        return kept(Same(thing))

    return drawn
