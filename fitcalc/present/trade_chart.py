"""The trade map as a plot: what passes, each limit's line with its number, and the points of interest."""

from collections.abc import Iterator, Sequence

import numpy as np

from fitcalc.present.chart import Axis, Chart, ChartLegend, Shape, Side, Spot, even_ticks, ticks_at
from fitcalc.present.picture import XY, Area, Line, Style
from fitcalc.present.trade_record import AxisRecord, LineRecord, PointRecord, TradeRecord
from fitcalc.present.wanted import unmade_text

ASPECT = 0.72
HAIR, HAIR_GAP = 0.012, 0.035
"""Length of the hairs on a line's broken side and from one to the next, as parts of the plot's width."""
FEW = 12
"""So many places that can be set stand at an axis each."""
APART = 0.06
"""Numbers keep this part of the plot from each other where they can."""
WORDS = 0.12
"""Half the width of a point's words, as a part of the plot."""
PLACES = np.array([0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.05, 0.95])
SHAPES: dict[str, tuple[Shape, Side]] = {
    "as found": ("cross", "right"),
    "recommended": ("ring", "above"),
    "chosen": ("dot", "below"),
}


def trade_chart(record: TradeRecord) -> Chart:
    """The map."""
    return Chart(
        title=f"{record.x.title.capitalize()} against {record.y.title}",
        x=_axis(record.x),
        y=_axis(record.y),
        marks=(*_regions(record), *_limits(record), *_numbers(record), *_points(record.points)),
        legend=tuple(_legend(record)),
        notes=trade_notes(record),
        aspect=ASPECT,
    )


def trade_notes(record: TradeRecord) -> tuple[str, ...]:
    """What the map does not show."""
    return tuple(_notes(record))


def _notes(record: TradeRecord) -> Iterator[str]:
    if not record.region:
        yield "No combination of the two passes."
    if not record.complete:
        yield "Stopped before its end: part of the map was not worked out."
    for told, broken in (
        ("Broken all over this map, so nothing on it passes as a whole", record.everywhere),
        ("Broken as well, and moved by neither of the two", record.elsewhere),
    ):
        if broken:
            yield f"{told}: {'; '.join(f'{each.label}, {each.wanted}' for each in broken)}."
    if record.unmade:
        yield unmade_text(record.unmade)
    if record.without:
        owners = " and the ".join(f"{name}'s" for name in record.without)
        yield f"The {owners} own limits are left off: each pedal has its own bar."
    if any(line.interpolated for line in record.limits):
        yield "Lines marked ~ are worked out on a coarse mesh: check a point near them with `fitcalc check --setup`."


def _axis(axis: AxisRecord) -> Axis:
    count = (axis.high - axis.low) / axis.step
    places = [axis.low + axis.step * at for at in range(round(count) + 1)]
    ticks = ticks_at(places) if count + 1 <= FEW else even_ticks(axis.low, axis.high)
    label = f"{axis.title}, {axis.unit} ({axis.sense})"
    return Axis(label, axis.low, axis.high, ticks, unit=axis.unit)


def _regions(record: TradeRecord) -> Iterator[Area]:
    for at, outline in enumerate(record.region):
        yield Area(f"passes.{at}", "limit area", "", tuple(outline))


def _limits(record: TradeRecord) -> Iterator[Line]:
    for limit in reversed(record.limits):
        for at, line in enumerate(limit.lines):
            yield Line(f"limit.{limit.number}.{at}", _style(limit), limit.checks[0], tuple(line))
            yield Line(f"broken.{limit.number}.{at}", "note", limit.checks[0], _hairs(line, record))


def _hairs(line: Sequence[XY], record: TradeRecord) -> tuple[XY, ...]:
    """The line with hairs to its right, where the limit is broken; evenly along it on the plot."""
    points = np.array([_unit(point, record) for point in line]) * (1.0, ASPECT)
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    places = np.arange(HAIR_GAP / 2, along[-1], HAIR_GAP)
    feet = np.stack([np.interp(places, along, axis) for axis in points.T], axis=1)
    way = np.diff(points, axis=0)[np.clip(np.searchsorted(along, places) - 1, 0, len(points) - 2)]
    size = np.maximum(np.hypot(*way.T), 1e-9)[:, None]
    tips = feet + HAIR * np.stack([way[:, 1], -way[:, 0]], axis=1) / size
    comb = np.stack([feet, tips, feet], axis=1).reshape(-1, 2) / (1.0, ASPECT)
    return tuple(_place(each, record) for each in comb) or tuple(line)


def _style(limit: LineRecord) -> Style:
    return "outline" if limit.edge else "thin outline"


def _numbers(record: TradeRecord) -> Iterator[Spot]:
    """The number of each limit on its longest line, as far from the others as it can be."""
    taken = [place for point in record.points for place in _words_at(point, record)]
    for limit in record.limits:
        at = _free_place(max(limit.lines, key=len), taken, record)
        taken.append(_unit(at, record))
        text = f"{limit.number}{'~' if limit.interpolated else ''}"
        yield Spot(f"number.{limit.number}", "note", limit.checks[0], at, "none", text, "centre", framed=True)


def _words_at(point: PointRecord, record: TradeRecord) -> Iterator[np.ndarray]:
    """A point and where its words stand, as parts of the plot."""
    at = _unit((point.x, point.y), record)
    yield at
    middle = np.clip(at[0], WORDS, 1.0 - WORDS)
    for aside in (-WORDS, -WORDS / 2, 0.0, WORDS / 2, WORDS):
        yield np.array([middle + aside, at[1] - APART / 2])


def _free_place(line: Sequence[XY], taken: Sequence[np.ndarray], record: TradeRecord) -> XY:
    points = np.array([_unit(point, record) for point in line])
    along = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    tries = np.stack([np.interp(PLACES * along[-1], along, axis) for axis in points.T], axis=1)
    gaps = np.array(
        [min((float(np.hypot(*(each - other))) for other in taken), default=1.0) for each in tries]
    )
    far = np.flatnonzero(gaps >= APART)
    best = tries[int(far[0]) if len(far) else int(np.argmax(gaps))]
    return _place(best, record)


def _place(part: np.ndarray, record: TradeRecord) -> XY:
    """A place in the axes' units, of its parts of the plot."""
    return (
        float(record.x.low + part[0] * (record.x.high - record.x.low)),
        float(record.y.low + part[1] * (record.y.high - record.y.low)),
    )


def _unit(place: XY, record: TradeRecord) -> np.ndarray:
    x, y = record.x, record.y
    return np.array([(place[0] - x.low) / (x.high - x.low), (place[1] - y.low) / (y.high - y.low)])


def _points(points: Sequence[PointRecord]) -> Iterator[Spot]:
    """Each point; those that fall together share their words."""
    placed: dict[XY, list[PointRecord]] = {}
    for point in points:
        placed.setdefault((point.x, point.y), []).append(point)
    for place, several in placed.items():
        shape, side = SHAPES[several[-1].name]
        text = ", ".join(each.name for each in several)
        style: Style = "rework" if several[-1].name != "as found" else "as found"
        yield Spot(f"point.{several[-1].name}", style, "setup", place, shape, text, side)


def _legend(record: TradeRecord) -> Iterator[ChartLegend]:
    if record.region:
        broken = record.everywhere or record.elsewhere
        told = "would pass, but for what is named below" if broken else "passes"
        yield ChartLegend("limit area", told, "area")
    if record.limits:
        yield ChartLegend("note", "hairs stand on the side where a limit is broken")
    for limit in record.limits:
        mark = "~" if limit.interpolated else ""
        edge = " - bounds what passes" if limit.edge else ""
        yield ChartLegend(_style(limit), f"{limit.number}{mark}  {limit.label}, {limit.wanted}{edge}")
