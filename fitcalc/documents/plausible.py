"""What must agree between the parts of one car: a second guard against slips of unit, sign and side.

A point written in cm stays inside its own bounds but lands far from everything around it. Each span below
is wider than any single-seater that people fit into, and narrower than what such a slip does to one
(design inference).
"""

from collections import Counter
from collections.abc import Iterator
from typing import Any, NamedTuple

from pydantic_core import PydanticCustomError

from fitcalc.documents.fields import Document, clash
from fitcalc.documents.slips import slip_hint


class Span(NamedTuple):
    """How much greater than another figure a figure may be, mm; `*` stands for every entry.

    Attributes:
        field: the figure that is named when the two disagree.
        other: the figure that it is held against.
        low: least difference, `field` minus `other`.
        high: greatest difference.
    """

    field: str
    other: str
    low: float
    high: float


SPANS = (
    Span("pedals.*.pivot.x", "seat.junction.x", -1700, -300),
    Span("seat.mounts.*.x", "seat.junction.x", -800, 500),
    Span("seat.mounts.*.y", "seat.junction.y", -400, 400),
    Span("seat.mounts.*.z", "seat.junction.z", -400, 400),
    Span("seat.h_point.x", "seat.junction.x", -300, 100),
    Span("seat.h_point.z", "seat.junction.z", 0, 300),
    Span("steering_wheel.centre.x", "seat.junction.x", -1000, 0),
    Span("steering_wheel.centre.y", "seat.junction.y", -200, 200),
    Span("steering_wheel.centre.z", "seat.junction.z", 100, 800),
    Span("steering_wheel.column_foot.x", "steering_wheel.centre.x", -1800, 0),
    Span("gear_lever.knobs.*.x", "seat.junction.x", -1200, 300),
    Span("gear_lever.knobs.*.x", "steering_wheel.centre.x", -400, 900),
    Span("gear_lever.knobs.*.z", "seat.junction.z", -100, 800),
    Span("harness.shoulder_*.x", "seat.junction.x", -50, 1500),
    Span("harness.shoulder_*.z", "seat.junction.z", 150, 1100),
    Span("harness.shoulder_right.y", "harness.shoulder_left.y", 50, 700),
    Span("harness.lap_*.x", "seat.junction.x", -500, 500),
    Span("harness.lap_*.z", "seat.junction.z", -300, 400),
    Span("harness.lap_right.y", "harness.lap_left.y", 200, 900),
    Span("harness.crotch.*.x", "seat.junction.x", -700, 400),
    Span("harness.crotch.*.z", "seat.junction.z", -350, 250),
    Span("harness.guide.x", "seat.junction.x", -50, 1300),
    Span("harness.guide.z", "seat.junction.z", 150, 1000),
    Span("hoops.main_top.x", "seat.junction.x", -200, 1300),
    Span("hoops.main_top.z", "seat.junction.z", 450, 1500),
    Span("hoops.front_top.x", "seat.junction.x", -1300, 0),
    Span("hoops.front_top.x", "steering_wheel.centre.x", -600, 300),
    Span("hoops.front_top.z", "seat.junction.z", 150, 1200),
    Span("hoops.main_top.x", "hoops.brace_foot.x", -1800, 1800),
    Span("head_restraint.x", "seat.junction.x", -50, 1300),
    Span("head_restraint.z_high", "seat.junction.z", 350, 1300),
    Span("head_restraint.z_high", "head_restraint.z_low", 30, 600),
    Span("behind_seat.*.0", "seat.junction.x", -100, 1500),
    Span("sight_edges.*.0", "seat.junction.x", -4000, 0),
    Span("cockpit.opening_rear", "cockpit.opening_front", 250, 2500),
    Span("cockpit.opening_rear", "seat.junction.x", -200, 1500),
    Span("cockpit.opening_front", "steering_wheel.centre.x", -700, 200),
    Span("cockpit.side_top", "seat.junction.z", 50, 900),
)


PAIRS = (
    ("harness.shoulder_left.y", "harness.shoulder_right.y", 40.0),
    ("harness.lap_left.y", "harness.lap_right.y", 80.0),
)
"""Anchors that mirror each other about the seat, and how far off it their middle may be, mm (inference)."""


class Disagreement(NamedTuple):
    """A figure that lies outside what another one allows."""

    field: str
    value: float
    low: float
    high: float
    other: str
    base: float

    def turned(self) -> "Disagreement":
        """The same, with the other figure to blame."""
        low, high = self.base + self.value - self.high, self.base + self.value - self.low
        return Disagreement(self.other, self.base, low, high, self.field, self.value)


def require_agreement(car: Document) -> None:
    """Nothing, when every figure lies where the others say it can.

    Raises:
        PydanticCustomError: figures disagree; it names the one that disagrees with most others.
    """
    found = [*_apart(car), *_lopsided(car)]
    if not found:
        return
    most = Counter(name for one in found for name in (one.field, one.other)).most_common(1)[0][0]
    first = next(one for one in found if most in (one.field, one.other))
    raise _refusal(first if first.field == most else first.turned())


def figures(holder: Any, pattern: str) -> Iterator[tuple[str, Any]]:
    """Path and value of everything present that a pattern names."""
    head, _, rest = pattern.partition(".")
    for name, value in _entries(holder, head):
        if value is None:
            continue
        below = figures(value, rest) if rest else [("", value)]
        yield from ((f"{name}.{path}".rstrip("."), found) for path, found in below)


def _entries(holder: Any, head: str) -> Iterator[tuple[str, Any]]:
    if isinstance(holder, tuple):
        wanted = range(len(holder)) if head == "*" else [int(head)]
        yield from ((str(index), holder[index]) for index in wanted)
    elif "*" not in head:
        yield head, getattr(holder, head)
    else:
        names = (name for name in type(holder).model_fields if name.startswith(head.rstrip("*")))
        yield from ((name, value) for name in names if isinstance(value := getattr(holder, name), Document))


def _apart(car: Document) -> Iterator[Disagreement]:
    for span in SPANS:
        others = list(figures(car, span.other))
        for field, value in figures(car, span.field):
            for other, base in others:
                if not span.low <= value - base <= span.high:
                    yield Disagreement(field, value, base + span.low, base + span.high, other, base)


def _lopsided(car: Any) -> Iterator[Disagreement]:
    centre = car.seat.junction.y
    for left, right, aside in PAIRS:
        pair = [figure for name in (left, right) for figure in figures(car, name)]
        if pair and abs(sum(y for _, y in pair) / 2 - centre) > aside:
            (inner, near), (outer, far) = sorted(pair, key=lambda figure: abs(figure[1] - centre))
            mirrored = 2 * centre - far
            yield Disagreement(inner, near, mirrored - 2 * aside, mirrored + 2 * aside, outer, far)


def _refusal(found: Disagreement) -> PydanticCustomError:
    span = f"must be a number from {found.low:g} to {found.high:g} mm"
    allowed = f"{span} to agree with {found.other}, which is {found.base:g}"
    hint = slip_hint(found.value, found.low, found.high)
    return clash(found.field, found.value, allowed, hint or "one of the two is wrong")
