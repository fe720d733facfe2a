"""The lines on which a figure over a grid is zero.

Source: marching squares with linear interpolation along the sides of each cell; a saddle is cut by its middle value.
"""

from collections import defaultdict
from collections.abc import Iterator

import numpy as np

from fitcalc.units import Floats

Polyline = Floats
"""Points of one line in order, `(k, 2)`."""
CLEAR = 1e-12
BESIDE = 0.4
"""How far to either side of a line the sides are told apart, in cells."""


def zero_lines(x: Floats, y: Floats, values: Floats) -> tuple[Polyline, ...]:
    """Where `values[i, j]`, given at `x[i]`, `y[j]`, passes through zero; a closed line ends at its first point."""
    keys, places = _segments(x, y, np.where(values == 0.0, CLEAR, values))
    return _joined(keys, places)


def with_good_side_left(line: Polyline, x: Floats, y: Floats, values: Floats) -> Polyline:
    """A zero line turned so that the figure is not negative to the left of the way along it."""
    at = np.stack(
        [np.interp(line[:, 0], x, np.arange(len(x))), np.interp(line[:, 1], y, np.arange(len(y)))], 1
    )
    middle, way = (at[1:] + at[:-1]) / 2, np.diff(at, axis=0)
    size = np.maximum(np.hypot(*way.T), CLEAR)[:, None]
    aside = BESIDE * np.stack([-way[:, 1], way[:, 0]], axis=1) / size
    gain = _at(values, middle + aside) - _at(values, middle - aside)
    return line if np.sum(gain) >= 0.0 else line[::-1]


def _at(values: Floats, place: Floats) -> Floats:
    """Values between the points of the grid, at places counted in them, `(m, 2)`."""
    last = np.array(values.shape) - 1
    place = np.clip(place, 0.0, last)
    low = np.minimum(place.astype(int), last - 1)
    (i, j), (s, t) = low.T, (place - low).T
    below = (1.0 - s) * values[i, j] + s * values[i + 1, j]
    above = (1.0 - s) * values[i, j + 1] + s * values[i + 1, j + 1]
    return np.asarray((1.0 - t) * below + t * above)


def _segments(x: Floats, y: Floats, values: Floats) -> tuple[np.ndarray, dict[int, tuple[float, float]]]:
    """Segments as pairs of crossed grid sides `(m, 2)`, and where each side is crossed."""
    rows, columns = values.shape
    across = np.signbit(values[:-1]) != np.signbit(values[1:])
    along = np.signbit(values[:, :-1]) != np.signbit(values[:, 1:])
    places = _crossings(x, y, values, across, along)
    i, j = np.nonzero(across[:, :-1] | across[:, 1:] | along[:-1] | along[1:])
    base = rows * columns
    sides = np.stack(
        [i * columns + j, base + (i + 1) * columns + j, i * columns + j + 1, base + i * columns + j], 1
    )
    crossed = np.stack([across[i, j], along[i + 1, j], across[i, j + 1], along[i, j]], axis=1)
    return np.array(list(_paired(sides, crossed, _tilted(values, i, j))), dtype=int).reshape(-1, 2), places


def _crossings(
    x: Floats, y: Floats, values: Floats, across: np.ndarray, along: np.ndarray
) -> dict[int, tuple[float, float]]:
    rows, columns = values.shape
    i, j = np.nonzero(across)
    part = values[i, j] / (values[i, j] - values[i + 1, j])
    found = zip(i * columns + j, zip(x[i] + part * (x[i + 1] - x[i]), y[j], strict=True), strict=True)
    k, m = np.nonzero(along)
    part = values[k, m] / (values[k, m] - values[k, m + 1])
    more = zip(
        rows * columns + k * columns + m, zip(x[k], y[m] + part * (y[m + 1] - y[m]), strict=True), strict=True
    )
    return {int(key): (float(place[0]), float(place[1])) for key, place in (*found, *more)}


def _tilted(values: Floats, i: np.ndarray, j: np.ndarray) -> np.ndarray:
    """Whether a saddle's first corner is cut off from the middle."""
    middle = values[i, j] + values[i + 1, j] + values[i, j + 1] + values[i + 1, j + 1]
    return np.signbit(middle) != np.signbit(values[i, j])


def _paired(sides: np.ndarray, crossed: np.ndarray, tilted: np.ndarray) -> Iterator[tuple[int, int]]:
    """The segments of each cell: which of its sides they join."""
    for own, which, cut in zip(sides, crossed, tilted, strict=True):
        hit = own[which]
        if len(hit) == 2:
            yield hit[0], hit[1]
        else:
            yield from ((own[0], own[3]), (own[1], own[2])) if cut else ((own[0], own[1]), (own[2], own[3]))


def _joined(segments: np.ndarray, places: dict[int, tuple[float, float]]) -> tuple[Polyline, ...]:
    """Segments strung together, open lines first."""
    next_to: dict[int, list[int]] = defaultdict(list)
    for first, last in segments.tolist():
        next_to[first].append(last)
        next_to[last].append(first)
    ends = [key for key, others in next_to.items() if len(others) == 1]
    lines, used = [], set[int]()
    for start in (*ends, *next_to):
        if start in used:
            continue
        line = _walked(start, next_to, used)
        closed = len(next_to[start]) == 2 and len(line) > 2
        lines.append(np.array([places[key] for key in (*line, *(line[:1] if closed else []))]))
    return tuple(lines)


def _walked(start: int, next_to: dict[int, list[int]], used: set[int]) -> list[int]:
    line, here = [start], start
    used.add(start)
    while (further := next((key for key in next_to[here] if key not in used), None)) is not None:
        line.append(further)
        used.add(further)
        here = further
    return line
