"""What is drawn of something that has not changed since: worked out once, and then the very same primitives again."""

from collections.abc import Callable, Iterator
from functools import lru_cache, wraps
from typing import Any, Generic, ParamSpec, TypeVar

Thing = TypeVar("Thing")
Drawn = TypeVar("Drawn")
Things = ParamSpec("Things")
FEW = 16
"""Drawings that are kept of each kind: as found, other driver, both sides of a body, and a few steps of undo."""


class Same(Generic[Thing]):
    """One object, equal to itself only, however alike another one is."""

    def __init__(self, thing: Thing) -> None:
        self.thing = thing

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Same) and other.thing is self.thing

    def __hash__(self) -> int:
        return id(self.thing)


def once(draw: Callable[Things, Iterator[Drawn]]) -> Callable[Things, tuple[Drawn, ...]]:
    """A drawing that is made once for the very same things; none of them must ever change."""

    @lru_cache(maxsize=FEW)
    def kept(*same: Same[Any], **named: Same[Any]) -> tuple[Drawn, ...]:
        return tuple(
            draw(*(each.thing for each in same), **{name: each.thing for name, each in named.items()})
        )

    @wraps(draw)
    def drawn(*things: Things.args, **named: Things.kwargs) -> tuple[Drawn, ...]:
        return kept(*map(Same, things), **{name: Same(thing) for name, thing in named.items()})

    return drawn
