"""The trade between two changes, as in seat travel against a pedal's bar: what passes, and where each limit lies.

Limits in closed form are worked out at every point of the map. Clearances of swept outlines, balance and seat bolts are
worked out on a coarser mesh and interpolated between; the solver and `evaluate` have the last word on them.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from fitcalc.body.links import Links, links_for
from fitcalc.checks.catalogue import SWEPT, Measure
from fitcalc.checks.check import ROUNDING, Check
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS, crossed, setup_of
from fitcalc.fit.contours import Polyline, with_good_side_left, zero_lines
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.sweep import CLOSED, NOT_THERE, READS, SMOOTH, required_room, sweep
from fitcalc.fit.variables import value_at
from fitcalc.units import Bools, Floats

COLUMNS = 100
"""Columns worked out at a time: what bounds the memory."""
MESH = 17
"""Points each way of the mesh for swept clearances."""


@dataclass(frozen=True, eq=False)
class Boundary:
    """Where one limit is just met: lines in the two variables, `(k, 2)` each; it holds to the left, going along."""

    check: str
    label: str
    interpolated: bool
    lines: tuple[Polyline, ...]


@dataclass(frozen=True, eq=False)
class TradeMap:
    """A map of two changes, all else as in one setup.

    Attributes:
        paths: of the two numbers of the setup; x runs along the first.
        x, y: their values.
        room: (x, y), the least margin of all that must hold and that the two move, mm or deg.
        tightest: (x, y), which check has that margin, as its place in `checks`.
        checks: ids of the checks on the map.
        blocked: ids of checks that are broken all over the map, whatever the two are.
        boundaries: where each limit that crosses the map lies.
        as_found, chosen, recommended: points on the map; None where there is none.
        complete: False where it was stopped before its end.
    """

    paths: tuple[str, str]
    x: Floats
    y: Floats
    room: Floats
    tightest: np.ndarray
    checks: tuple[str, ...]
    blocked: tuple[str, ...]
    boundaries: tuple[Boundary, ...]
    as_found: tuple[float, float]
    chosen: tuple[float, float]
    recommended: tuple[float, float] | None
    complete: bool

    @property
    def passes(self) -> Bools:
        """Where nothing that the two move is broken, (x, y)."""
        return self.room >= -ROUNDING


@dataclass(frozen=True, eq=False)
class MapOptions:
    """What a map shows.

    Attributes:
        rules: id of the limit set; the car's own when None.
        recommended: a rework to be marked on the map.
        meshed: whether clearances of swept outlines, balance and seat bolts are mapped too.
        without: pedals whose own checks are left off, because their bars are chosen by themselves.
    """

    rules: str | None = None
    recommended: Setup | None = None
    meshed: bool = True
    without: tuple[str, ...] = ()


@dataclass(frozen=True, eq=False)
class Layer:
    """One check over the map."""

    check: str
    label: str
    interpolated: bool
    room: Floats


def trade_map(
    car: Car,
    driver: Driver,
    setup: Setup,
    axes: tuple[tuple[str, Floats], tuple[str, Floats]],
    options: MapOptions = MapOptions(),
    progress: Progress = unheeded,
) -> TradeMap:
    """Map two changes.

    Args:
        car: as found.
        driver: whose body it is.
        setup: where all other changes stay, and the chosen point.
        axes: path and rising values of each of the two, as from `spans`.
        options: which rules, and what is shown.
        progress: told the part done; answers whether to go on.
    """
    (first, x), (second, y) = axes
    ground = _Ground(car, driver, setup, options.rules, links_for(driver))
    every, complete = _layers(ground, axes, options.meshed, progress)
    layers = [layer for layer in every if not own_of(layer.check, options.without)]
    crossing = [layer for layer in layers if layer.room.max() >= -ROUNDING]
    shown = crossing or layers
    stack = np.stack([layer.room for layer in shown]) if shown else np.zeros((1, len(x), len(y)))
    return TradeMap(
        paths=(first, second),
        x=x,
        y=y,
        room=stack.min(axis=0),
        tightest=stack.argmin(axis=0),
        checks=tuple(layer.check for layer in shown),
        blocked=tuple(layer.check for layer in layers if layer not in crossing),
        boundaries=tuple(_boundaries(x, y, crossing)),
        as_found=(0.0, 0.0),
        chosen=_point(setup, first, second),
        recommended=None if options.recommended is None else _point(options.recommended, first, second),
        complete=complete,
    )


def own_of(check: str, pedals: Sequence[str]) -> bool:
    """Whether a check, by its id, is about one of these pedals alone, as `posture.knee_pressed.clutch` is."""
    return not set(check.partition("@")[0].split(".")).isdisjoint(pedals)


@dataclass(frozen=True, eq=False)
class _Ground:
    car: Car
    driver: Driver
    setup: Setup
    rules: str | None
    links: Links


Axes = tuple[tuple[str, Floats], tuple[str, Floats]]


def _layers(ground: _Ground, axes: Axes, meshed: bool, progress: Progress) -> tuple[list[Layer], bool]:
    (first, x), (second, y) = axes
    both = [each for each in CLOSED if {first, second} <= _reads(each)]
    layers = [*_along(ground, axes, 0), *_along(ground, axes, 1)]
    parts: dict[str, list[tuple[int, Check, Floats]]] = {}
    for start in range(0, len(x), COLUMNS):
        for check, room in _rooms(ground, axes, x[start : start + COLUMNS], y, both):
            parts.setdefault(check.id, []).append((start, check, room))
        if not progress((start + COLUMNS) / (len(x) + COLUMNS)):
            return _moved([*layers, *_whole(parts, x, y)]), False
    layers += _whole(parts, x, y)
    if meshed:
        layers += _meshed(ground, axes)
    progress(1.0)
    return _moved(layers), True


def _reads(measure: Measure) -> set[str]:
    return set(READS.get(measure, PATHS))


def _along(ground: _Ground, axes: Axes, own: int) -> Iterator[Layer]:
    """Checks that only one of the two moves."""
    path, other = axes[own][0], axes[1 - own][0]
    measures = [each for each in CLOSED if path in _reads(each) and other not in _reads(each)]
    x, y = (values if at == own else values[:1] for at, (_, values) in enumerate(axes))
    shape = (len(axes[0][1]), len(axes[1][1]))
    for check, room in _rooms(ground, axes, x, y, measures):
        yield Layer(check.id, check.label, False, np.broadcast_to(room, shape))


def _whole(parts: dict[str, list[tuple[int, Check, Floats]]], x: Floats, y: Floats) -> Iterator[Layer]:
    """Columns put together; where a part was not there, nothing is lacking."""
    for id, pieces in parts.items():
        room = np.full((len(x), len(y)), NOT_THERE)
        for start, _, piece in pieces:
            room[start : start + len(piece)] = piece
        yield Layer(id, pieces[0][1].label, False, room)


def _moved(layers: list[Layer]) -> list[Layer]:
    """The layers that the two changes move, or that are broken."""
    return [layer for layer in layers if np.ptp(layer.room) > 1e-6]


def _meshed(ground: _Ground, axes: Axes) -> Iterator[Layer]:
    (_, x), (_, y) = axes
    mesh_x, mesh_y = (np.linspace(values[0], values[-1], MESH) for values in (x, y))
    for check, room in _rooms(ground, axes, mesh_x, mesh_y, (*SWEPT, *SMOOTH)):
        yield Layer(check.id, check.label, True, _between(x, y, mesh_x, mesh_y, room))


def _rooms(
    ground: _Ground, axes: Axes, x: Floats, y: Floats, measures: Sequence[Measure]
) -> Iterator[tuple[Check, Floats]]:
    """Each check that the two move, with its margin at every point, (x, y)."""
    (first, _), (second, _) = axes
    steady = {path: value_at(ground.setup, path)[:1] for path in PATHS}
    values = steady | crossed({first: x, second: y})
    swept = sweep(ground.car, ground.driver, setup_of(values), ground.links, ground.rules, measures)
    for at, check in swept.each():
        room = required_room(check)
        if room is not None and len(room) > 1:
            yield check, np.broadcast_to(room, (int(at.max()) + 1,))[at].reshape(len(x), len(y))


def _between(x: Floats, y: Floats, mesh_x: Floats, mesh_y: Floats, room: Floats) -> Floats:
    """Linear both ways between the points of the mesh, (x, y)."""
    along = np.stack([np.interp(x, mesh_x, column) for column in room.T], axis=1)
    return np.stack([np.interp(y, mesh_y, row) for row in along])


def _boundaries(x: Floats, y: Floats, layers: list[Layer]) -> Iterator[Boundary]:
    for layer in layers:
        if layer.room.min() < 0.0 <= layer.room.max():
            lines = zero_lines(x, y, layer.room)
            turned = tuple(with_good_side_left(line, x, y, layer.room) for line in lines)
            yield Boundary(layer.check, layer.label, layer.interpolated, turned)


def _point(setup: Setup, first: str, second: str) -> tuple[float, float]:
    return float(value_at(setup, first)[0]), float(value_at(setup, second)[0])
