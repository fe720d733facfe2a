"""Joint angles against what is comfortable, as found and after the rework, as a plot."""

from collections.abc import Iterator, Sequence

from fitcalc.present.chart import Axis, Chart, ChartLegend, ChartMark, Spot, even_ticks, row_axis
from fitcalc.present.picture import Area, Line, Style
from fitcalc.present.record import CheckRecord
from fitcalc.present.wording import amount, number, span

THICK = 0.32
ABOUT = 8.0
"""Room left and right of all that is shown, deg."""


def posture_chart(after: Sequence[CheckRecord], found: Sequence[CheckRecord]) -> Chart:
    """One row for each joint angle.

    Args:
        after: checks after the rework.
        found: checks as found; empty where there is nothing to compare with.
    """
    rows = sorted((each for each in after if _is_angle(each)), key=lambda each: each.id)
    before = {each.id: each.value for each in found}
    ends = [end for each in rows for end in _ends(each, before.get(each.id))]
    low, high = min(ends, default=0.0) - ABOUT, max(ends, default=180.0) + ABOUT
    return Chart(
        title="Joint angles against what is comfortable",
        x=Axis("deg", low, high, even_ticks(low, high, 10)),
        y=row_axis([_name(each) for each in rows]),
        marks=tuple(
            mark for at, each in enumerate(rows) for mark in _row(at, each, before.get(each.id), (low, high))
        ),
        legend=tuple(_legend(bool(before))),
    )


def _is_angle(check: CheckRecord) -> bool:
    return check.id.startswith("posture.") and check.unit == "deg" and check.value is not None


def _ends(check: CheckRecord, found: float | None) -> list[float]:
    every = (check.value, found, check.low, check.high, check.recommended_low, check.recommended_high)
    return [each for each in every if each is not None]


def _name(check: CheckRecord) -> str:
    return f"{check.label}, {span(check.recommended_low, check.recommended_high, 'deg')}"


def _row(at: int, check: CheckRecord, found: float | None, ends: tuple[float, float]) -> Iterator[ChartMark]:
    y = -float(at)
    if check.low is not None or check.high is not None:
        yield _band(f"must.{check.id}", check, (check.low, check.high), y, ends)
    if check.recommended_low is not None or check.recommended_high is not None:
        yield _band(f"comfort.{check.id}", check, (check.recommended_low, check.recommended_high), y, ends)
    if found is not None:
        yield Line(f"moved.{check.id}", "as found", check.id, ((found, y), (check.value or 0.0, y)))
        yield Spot(f"found.{check.id}", "as found", check.id, (found, y), "cross")
    yield Spot(f"after.{check.id}", "rework", check.id, (check.value or 0.0, y), "dot")
    words = (
        amount(check.value, "deg")
        if found is None
        else f"{number(found, 'deg')} -> {number(check.value or 0.0, 'deg')}"
    )
    yield Spot(f"words.{check.id}", "note", check.id, (ends[1], y), "none", words, "right")


def _band(
    key: str,
    check: CheckRecord,
    bounds: tuple[float | None, float | None],
    y: float,
    ends: tuple[float, float],
) -> Area:
    left = ends[0] if bounds[0] is None else bounds[0]
    right = ends[1] if bounds[1] is None else bounds[1]
    style: Style = "pass" if key.startswith("comfort") else "limit area"
    thick = THICK if key.startswith("comfort") else 1.35 * THICK
    corners = ((left, y - thick), (right, y - thick), (right, y + thick), (left, y + thick))
    return Area(key, style, check.id, corners)


def _legend(compared: bool) -> Iterator[ChartLegend]:
    yield ChartLegend("pass", "comfortable (a knee must lie there)", "area")
    yield ChartLegend("limit area", "must hold at the least", "area")
    if compared:
        yield ChartLegend("as found", "as found", "spot", "cross")
    yield ChartLegend("rework", "after the rework" if compared else "now", "spot", "dot")
