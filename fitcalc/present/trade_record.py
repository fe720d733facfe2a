"""The trade between two changes as one JSON record: what passes, and where each limit lies. `fitcalc trade`."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

import numpy as np
from pydantic import Field
from shapely.geometry import LineString

from fitcalc.checks.check import ROUNDING, Check
from fitcalc.documents.setup import Setup
from fitcalc.fit.result import Result
from fitcalc.fit.trade import Boundary, TradeMap, own_of
from fitcalc.fit.variables import Variable
from fitcalc.present.change_words import sense_of, title_of
from fitcalc.present.parts import Record
from fitcalc.present.picture import XY
from fitcalc.present.regions import regions
from fitcalc.present.wanted import BrokenRecord, broken_records, unmade_in, wanted_span
from fitcalc.present.wording import CAUTIONS
from fitcalc.units import Floats

MOST_COLUMNS = 13
"""At most so many places of the first change are told in the table."""
FINE = 0.002
"""Lines are thinned to this part of the axes' spans."""
SAME = 0.004
"""Lines of left and right that run closer than this part of the spans are told as one."""


class AxisRecord(Record):
    """One of the two changes: as found is 0."""

    path: str
    title: str
    sense: str
    unit: str
    low: float
    high: float
    step: float = Field(description="What can be set.")


class PointRecord(Record):
    """One rework on the map; `room` is the least margin there, negative when a limit is broken, mm or deg."""

    name: Literal["as found", "recommended", "chosen"]
    x: float
    y: float
    room: float
    passes: bool
    check: str
    tightest: str


class RangeRecord(Record):
    """What passes of the second change with the first one set; null where nothing passes.

    `below` and `above` are the limits that end it; empty where the car's own end does.
    """

    x: float
    low: float | None
    high: float | None
    below: str
    above: str
    nearest: str = Field(description="Where nothing passes: the limit that is broken least, and by how much.")


class LineRecord(Record):
    """Where one limit is just met; it holds to the left of each line, going along."""

    number: int
    checks: list[str]
    label: str
    wanted: str
    interpolated: bool
    edge: bool = Field(description="Whether it bounds what passes.")
    lines: list[list[tuple[float, float]]]


class TradeRecord(Record):
    """A map of two changes, all else as in `setup`."""

    format: Literal[1] = 1
    command: Literal["trade"] = "trade"
    car: str
    driver: str
    rules: str
    setup: Setup
    x: AxisRecord
    y: AxisRecord
    share: float = Field(description="Part of the map that passes, 0 to 1.")
    points: list[PointRecord]
    ranges: list[RangeRecord]
    limits: list[LineRecord]
    region: list[list[tuple[float, float]]] = Field(description="Outlines round what passes.")
    everywhere: list[BrokenRecord] = Field(description="Broken all over the map, whatever the two are.")
    elsewhere: list[BrokenRecord] = Field(description="Broken, and moved by neither of the two.")
    without: list[str] = Field(
        description="Pedals whose own checks are left off: their bars are for themselves."
    )
    unmade: int = Field(
        description="Checks that could not be made for want of a measurement: no part of the verdict."
    )
    complete: bool
    cautions: list[str]


def trade_record(
    chosen: Result, trade: TradeMap, axes: tuple[Variable, Variable], without: Sequence[str] = ()
) -> TradeRecord:
    """The record of one map.

    Args:
        chosen: the rework that the map was made about.
        trade: the map.
        axes: the two changes.
        without: pedals whose own checks were left off.
    """
    checks = {check.id: check for check in chosen.checks}
    broken = [each for each in broken_records(chosen) if not own_of(each.id, without)]
    return TradeRecord(
        car=chosen.car.name,
        driver=chosen.driver.name,
        rules=chosen.rules.id,
        setup=chosen.setup,
        x=_axis(axes[0]),
        y=_axis(axes[1]),
        share=float(np.mean(trade.passes)) if not trade.blocked else 0.0,
        points=list(_point_records(trade, checks)),
        ranges=list(_ranges(trade, axes[0], checks)),
        limits=_lines(trade, checks),
        region=[_rounded(outline, trade) for outline in regions(trade.x, trade.y, trade.room + ROUNDING)],
        everywhere=[each for each in broken if each.id in trade.blocked],
        elsewhere=[each for each in broken if each.id not in (*trade.blocked, *trade.checks)],
        without=list(without),
        unmade=unmade_in(chosen),
        complete=trade.complete,
        cautions=list(CAUTIONS),
    )


def _axis(variable: Variable) -> AxisRecord:
    return AxisRecord(
        path=variable.path,
        title=title_of(variable.path),
        sense=sense_of(variable.path),
        unit=variable.unit,
        low=variable.low,
        high=variable.high,
        step=variable.step,
    )


def _label(trade: TradeMap, at: tuple[int, int]) -> str:
    return trade.checks[int(trade.tightest[at])] if trade.checks else ""


def _point_records(trade: TradeMap, checks: Mapping[str, Check]) -> Iterator[PointRecord]:
    named: tuple[tuple[Literal["as found", "recommended", "chosen"], XY | None], ...] = (
        ("as found", trade.as_found),
        ("recommended", trade.recommended),
        ("chosen", trade.chosen),
    )
    for name, place in named:
        if place is None:
            continue
        at = _nearest(trade.x, place[0]), _nearest(trade.y, place[1])
        check = _label(trade, at)
        yield PointRecord(
            name=name,
            x=place[0],
            y=place[1],
            room=float(trade.room[at]),
            passes=bool(trade.passes[at]),
            check=check,
            tightest=checks[check].label if check in checks else "",
        )


def _ranges(trade: TradeMap, first: Variable, checks: Mapping[str, Check]) -> Iterator[RangeRecord]:
    for x in _columns(trade, first):
        yield from _ranges_at(trade, _nearest(trade.x, x), checks)


def _columns(trade: TradeMap, first: Variable) -> list[float]:
    """Places of the first change to be told: all that can be set where they are few, else round ones and the points."""
    places = first.places()
    points = [place[0] for place in (trade.as_found, trade.recommended, trade.chosen) if place is not None]
    if len(places) <= MOST_COLUMNS:
        return sorted({*places.tolist(), *points})
    step = next(each for each in (2, 5, 10, 20, 25, 50, 100) if np.ptp(places) / each < MOST_COLUMNS - 2)
    even = [place for place in places.tolist() if abs(place / step - round(place / step)) < 1e-9]
    return sorted({*even, *points})


def _ranges_at(trade: TradeMap, at: int, checks: Mapping[str, Check]) -> Iterator[RangeRecord]:
    passing = trade.passes[at]
    x = float(trade.x[at])
    if not np.any(passing):
        best = int(np.argmax(trade.room[at]))
        lacking = -float(trade.room[at, best])
        check = checks.get(_label(trade, (at, best)))
        told = "" if check is None else f"{check.label} lacks {lacking:.1f} {check.figure.unit}"
        yield RangeRecord(x=x, low=None, high=None, below="", above="", nearest=told)
        return
    turns = np.flatnonzero(np.diff(np.concatenate([[False], passing, [False]]).astype(int)))
    for start, end in turns.reshape(-1, 2):
        below = _label(trade, (at, start - 1)) if start > 0 else ""
        above = _label(trade, (at, end)) if end < len(passing) else ""
        yield RangeRecord(
            x=x,
            low=float(trade.y[start]),
            high=float(trade.y[end - 1]),
            below=checks[below].label if below in checks else "",
            above=checks[above].label if above in checks else "",
            nearest="",
        )


def _lines(trade: TradeMap, checks: Mapping[str, Check]) -> list[LineRecord]:
    """The limits' lines, those that bound what passes first; left and right told as one where they coincide."""
    edges = _edges(trade)
    groups: list[list[Boundary]] = []
    for boundary in sorted(trade.boundaries, key=lambda each: (each.check not in edges, each.label)):
        group = next((each for each in groups if _alike(each[0], boundary, trade)), None)
        if group is None:
            groups.append([boundary])
        else:
            group.append(boundary)
    return [_line(at, group, trade, checks, edges) for at, group in enumerate(groups, start=1)]


def _line(
    number: int, group: list[Boundary], trade: TradeMap, checks: Mapping[str, Check], edges: set[str]
) -> LineRecord:
    first = group[0]
    heads = [each.label.rpartition(": ")[0] for each in group]
    label = first.label if len(group) == 1 else _both(first.label, heads)
    return LineRecord(
        number=number,
        checks=[each.check for each in group],
        label=label,
        wanted=wanted_span(checks[first.check]) if first.check in checks else "",
        interpolated=first.interpolated,
        edge=any(each.check in edges for each in group),
        lines=[_rounded(line, trade) for line in first.lines],
    )


def _both(label: str, heads: list[str]) -> str:
    rest = label.rpartition(": ")[2]
    return f"{' and '.join(dict.fromkeys(heads))}: {rest}" if any(heads) else f"left and right {_bare(label)}"


def _bare(label: str) -> str:
    return " ".join(word for word in label.split() if word not in ("left", "right"))


def _alike(one: Boundary, other: Boundary, trade: TradeMap) -> bool:
    """Whether two limits are of the same kind, left and right or the like, and lie on the same lines."""
    kinds = [_bare(each.label.rpartition(": ")[2]) for each in (one, other)]
    if kinds[0] != kinds[1] or len(one.lines) != len(other.lines):
        return False
    pairs = zip(one.lines, other.lines, strict=True)
    return all(_scaled(a, trade).hausdorff_distance(_scaled(b, trade)) < SAME for a, b in pairs)


def _scaled(line: Floats, trade: TradeMap) -> LineString:
    return LineString((line - [trade.x[0], trade.y[0]]) / [np.ptp(trade.x), np.ptp(trade.y)])


def _edges(trade: TradeMap) -> set[str]:
    """Checks that are broken least just outside what passes."""
    passes = trade.passes
    beside = np.zeros_like(passes)
    beside[1:] |= passes[:-1]
    beside[:-1] |= passes[1:]
    beside[:, 1:] |= passes[:, :-1]
    beside[:, :-1] |= passes[:, 1:]
    return {trade.checks[at] for at in np.unique(trade.tightest[beside & ~passes])} if trade.checks else set()


def _rounded(line: Sequence[XY] | Floats, trade: TradeMap) -> list[tuple[float, float]]:
    """A line with no more points than its shape needs, kept inside the map."""
    span = np.array([np.ptp(trade.x), np.ptp(trade.y)])
    thin = LineString(np.asarray(line) / span).simplify(FINE) if len(line) > 2 else None
    points = np.asarray(line) if thin is None else np.asarray(thin.coords) * span
    inside = np.clip(points, [trade.x[0], trade.y[0]], [trade.x[-1], trade.y[-1]])
    return [(float(x), float(y)) for x, y in np.round(inside, 2)]


def _nearest(values: Floats, value: float) -> int:
    return int(np.argmin(np.abs(values - value)))
