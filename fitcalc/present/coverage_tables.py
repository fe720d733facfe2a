"""The coverage record as tables for a person, and as plots."""

from collections.abc import Iterator

from fitcalc.present.certainty_tables import percent
from fitcalc.present.chart import Axis, Chart, ChartLegend, ChartMark, Spot, even_ticks, row_axis
from fitcalc.present.coverage_record import CoverageRecord, GroupRecord, adjustments_text
from fitcalc.present.picture import Area
from fitcalc.present.tables import Table
from fitcalc.present.wanted import unmade_text
from fitcalc.present.wording import amount, number

PEOPLE = {"female": "women", "male": "men"}
THICK = 0.3
MOST = 14
"""At most so many limits on a plot."""


def coverage_heading(record: CoverageRecord) -> str:
    """Which car, what is set for each body, and who fits."""
    lines = [f"{record.car}; rules: {record.rules}", f"Set for each body: {adjustments_text(record)}."]
    lines += [unmade_text(record.unmade)] if record.unmade else []
    return "\n".join([*lines, *(line for group in record.groups for line in _told(group))])


def coverage_tables(record: CoverageRecord) -> list[Table]:
    """By stature, and what turns whom away."""
    return [table for group in record.groups for table in (classes_table(group), turned_away_table(group))]


def classes_table(group: GroupRecord) -> Table:
    """Who fits by stature."""
    rows = tuple(
        (f"{number(each.low, 'mm')} to {amount(each.high, 'mm')}", f"{each.bodies}", percent(each.fits))
        for each in group.classes
    )
    title = f"{PEOPLE[group.sex].capitalize()} by stature"
    return Table(title, ("stature", "drawn", "fit"), rows)


def turned_away_table(group: GroupRecord) -> Table:
    """Which limit turns away whom."""
    rows = tuple(
        (
            percent(each.share),
            percent(each.alone),
            each.label,
            each.wanted or "-",
            f"{number(each.stature[0], 'mm')} to {amount(each.stature[2], 'mm')}, middle {amount(each.stature[1], 'mm')}",
        )
        for each in group.turned_away
    )
    title = f"What turns {PEOPLE[group.sex]} away"
    return Table(title, ("turned away", "by it alone", "limit", "wanted", "stature of 9 in 10 of them"), rows)


def coverage_charts(record: CoverageRecord) -> list[Chart]:
    """For each sex: who fits by stature, and what turns the others away."""
    return [
        chart
        for group in record.groups
        for chart in (_stature_chart(group), _limits_chart(group))
        if chart.marks
    ]


def _told(group: GroupRecord) -> Iterator[str]:
    people = PEOPLE[group.sex]
    who = (
        ""
        if group.stature is None
        else f", of {number(group.stature[0], 'mm')} to {amount(group.stature[1], 'mm')}"
    )
    yield f"{percent(group.fits)} of {people} fit{who} ({group.bodies} drawn from the survey)."
    if group.regardless:
        yield f"Broken for all {people} alike, and left out of that: {'; '.join(group.regardless)}."
    if not group.complete:
        yield "Stopped before its end: fewer bodies were looked at than were asked for."


def _stature_chart(group: GroupRecord) -> Chart:
    every = group.classes
    low, high = every[0].low, every[-1].high
    most = max((each.bodies for each in every), default=1)
    return Chart(
        title=f"Who fits: {PEOPLE[group.sex]} by stature",
        x=Axis("stature, mm", low, high, even_ticks(low, high, 12), unit="mm"),
        y=Axis("bodies drawn", 0.0, 1.15 * most, even_ticks(0.0, 1.15 * most, 6)),
        marks=tuple(mark for each in every for mark in _columns(each.low, each.high, each.bodies, each.fits)),
        legend=(ChartLegend("pass", "fit", "area"), ChartLegend("limit area", "turned away", "area")),
        notes=tuple(_told(group)),
        aspect=0.4,
    )


def _columns(low: float, high: float, bodies: int, fits: float) -> Iterator[ChartMark]:
    inside = 0.06 * (high - low)
    left, right = low + inside, high - inside
    for key, style, top in (("all", "limit area", float(bodies)), ("fit", "pass", fits * bodies)):
        corners = ((left, 0.0), (right, 0.0), (right, top), (left, top))
        yield Area(f"{key}.{low:g}", "pass" if style == "pass" else "limit area", "", corners)
    place = ((low + high) / 2, float(bodies))
    yield Spot(f"share.{low:g}", "note", "", place, "none", percent(fits), "above")


def _limits_chart(group: GroupRecord) -> Chart:
    shown = group.turned_away[:MOST]
    return Chart(
        title=f"What turns {PEOPLE[group.sex]} away",
        x=Axis("turned away, of 100", 0.0, 100.0, even_ticks(0.0, 100.0, 11)),
        y=row_axis([f"{each.label}{f', {each.wanted}' if each.wanted else ''}" for each in shown]),
        marks=tuple(
            mark
            for at, each in enumerate(shown)
            for mark in _bars(-float(at), 100.0 * each.share, 100.0 * each.alone, each.id)
        ),
        legend=(
            ChartLegend("fail", "turned away by this limit alone", "area"),
            ChartLegend("advise", "by this limit among others", "area"),
        ),
        aspect=0.4,
    )


def _bars(y: float, share: float, alone: float, id: str) -> Iterator[ChartMark]:
    for key, length in (("share", share), ("alone", alone)):
        corners = ((0.0, y - THICK), (length, y - THICK), (length, y + THICK), (0.0, y + THICK))
        yield Area(f"{key}.{id}", "advise" if key == "share" else "fail", id, corners)
    yield Spot(f"words.{id}", "note", id, (100.0, y), "none", percent(share / 100.0), "right")
