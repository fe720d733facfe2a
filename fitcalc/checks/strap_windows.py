"""Where an anchor may be for a limit on its strap's angle to hold, with everything else as it is."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Check
from fitcalc.checks.pelvis_straps import groin, lap_contact
from fitcalc.checks.strap_heights import HeightWindow, rim_heights, shoulder_heights
from fitcalc.checks.straps import crotch_anchors, lap_anchor
from fitcalc.documents.car_cockpit import Harness
from fitcalc.geometry.degrees import cosd, sind, tand
from fitcalc.units import Bools, Deg, Floats, Mm

Axis = Literal["x", "z"]
Bounds = tuple[Floats | None, Floats | None]
STEEPEST = 89.0
"""Steeper bounds leave a window open in practice; keeps tangents finite, deg."""
LEAST_SINE = 0.02


@dataclass(frozen=True, eq=False)
class Window:
    """Places of one anchor that pass, along one axis of the car, `(n,)`.

    Attributes:
        moves: what is moved: the anchor, or the guide that the strap bends over.
        low, high: None where the limit leaves that side open.
        present: where it is.
    """

    axis: Axis
    moves: str
    low: Mm | None
    high: Mm | None
    present: Mm

    @property
    def move(self) -> Mm:
        """The shortest move that passes, positive along the axis; 0 inside. Into an empty window: its middle."""
        low = -np.inf if self.low is None else self.low
        high = np.inf if self.high is None else self.high
        middle = (np.where(self.is_empty, low, 0.0) + np.where(self.is_empty, high, 0.0)) / 2
        inside = np.minimum(np.maximum(self.present, low), high)
        return np.where(self.is_empty, middle, inside) - self.present

    @property
    def is_empty(self) -> Bools:
        """Where no place passes."""
        if self.low is None or self.high is None:
            return np.zeros(len(self.present), dtype=bool)
        return self.low > self.high


@dataclass(frozen=True, eq=False)
class LimitWindows:
    """What one limit leaves open: where it must hold, and where it should."""

    check: Check
    strap: str
    must: tuple[Window, ...]
    should: tuple[Window, ...]


def windows(checks: Iterable[Check], harness: Harness, case: Case) -> Iterator[LimitWindows]:
    """Every limit on a strap's angle, as places of its anchor."""
    for check in checks:
        place, strap = PLACES.get(check.figure.quantity), check.figure.id.split(".")[1]
        if place is None or check.figure.value is None:
            continue
        must, should = (check.low, check.high), (check.recommended_low, check.recommended_high)
        must_hold, should_hold = (_placed(place, harness, strap, bounds, case) for bounds in (must, should))
        yield LimitWindows(check, strap, must_hold, should_hold)


def shared_window(every: Iterable[Window]) -> Window | None:
    """What several windows along one axis leave together; None for none."""
    given = list(every)
    if not given:
        return None
    low = [each.low for each in given if each.low is not None]
    high = [each.high for each in given if each.high is not None]
    first = given[0]
    least = np.max(np.broadcast_arrays(*low), axis=0) if low else None
    most = np.min(np.broadcast_arrays(*high), axis=0) if high else None
    return Window(first.axis, first.moves, least, most, first.present)


Place = Callable[[Harness, str, Bounds, Case], list[Window]]


def _placed(place: Place, harness: Harness, strap: str, bounds: Bounds, case: Case) -> tuple[Window, ...]:
    side = strap.partition("_")[2]
    return () if bounds == (None, None) else tuple(place(harness, side, bounds, case))


def _shoulder(harness: Harness, side: str, bounds: Bounds, case: Case) -> list[Window]:
    return [_of_height(shoulder_heights(harness, side, *bounds, case))]


def _rim(harness: Harness, side: str, bounds: Bounds, case: Case) -> list[Window]:
    return [_of_height(rim_heights(harness, side, *bounds, case))]


def _spine(harness: Harness, side: str, bounds: Bounds, case: Case) -> list[Window]:
    """A load per kN is the sine of drop less recline, see `strap_forces.spine_load`."""
    low, high = (
        None if bound is None else _arcsine(bound / 1000.0) + case.sitting.trunk.recline for bound in bounds
    )
    return _shoulder(harness, side, (low, high), case)


def _arcsine(share: Floats) -> Deg:
    return np.degrees(np.arcsin(np.clip(share, -1.0, 1.0)))


def _of_height(window: HeightWindow) -> Window:
    moves = "guide" if window.on_guide[0] else "anchor"
    return Window("z", moves, window.low, window.high, window.present)


def _lap(harness: Harness, side: str, bounds: Bounds, case: Case) -> list[Window]:
    """Height at the anchor's place, where it lies behind the contact; fore and aft at its height."""
    contact, anchor = lap_contact(case), lap_anchor(harness, side, case)
    behind, under = anchor[:, 0] - contact[:, 0], contact[:, 2] - anchor[:, 2]

    def height(angle: Deg) -> Mm:
        return contact[:, 2] - behind * tand(np.clip(angle, -STEEPEST, STEEPEST))

    def place(angle: Deg) -> Mm:
        return contact[:, 0] + under * cosd(angle) / np.maximum(sind(angle), LEAST_SINE)

    low, high = bounds
    heights = Window("z", "anchor", _at(height, high), _at(height, low), anchor[:, 2])
    places = Window("x", "anchor", _at(place, high), _at(place, low), anchor[:, 0])
    return [heights, places] if np.all(behind > 0.0) else [places]


def _crotch(harness: Harness, side: str, bounds: Bounds, case: Case) -> list[Window]:
    """Fore and aft at the anchors' height; where they are on the floor nothing else moves."""
    start, anchors = groin(case), crotch_anchors(harness, case)
    middle = (anchors[:, 0] + anchors[:, -1]) / 2

    def place(lean: Deg) -> Mm:
        return start[:, 0] + (start[:, 2] - middle[:, 2]) * tand(np.clip(lean, -STEEPEST, STEEPEST))

    low, high = bounds
    return [Window("x", "anchors", _at(place, low), _at(place, high), middle[:, 0])]


def _single_crotch(harness: Harness, side: str, bounds: Bounds, case: Case) -> list[Window]:
    """Ahead of the chest's line: leaning forward by recline and so much more."""
    low, high = (None if bound is None else -bound - case.sitting.trunk.recline for bound in bounds)
    return _crotch(harness, side, (high, low), case)


def _at(where: Callable[[Deg], Mm], angle: Floats | None) -> Mm | None:
    return None if angle is None else where(angle)


PLACES: Mapping[str, Place] = {
    "harness.shoulder.side_angle": _shoulder,
    "harness.shoulder.rim_angle": _rim,
    "harness.shoulder.spine_load": _spine,
    "harness.lap.side_angle": _lap,
    "harness.crotch.side_angle": _crotch,
    "harness.crotch.chest_line_angle": _single_crotch,
}
"""Quantities that an anchor's place alone decides."""
