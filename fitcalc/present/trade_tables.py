"""The trade map's record as tables for a person."""

from fitcalc.present.tables import Table
from fitcalc.present.trade_chart import trade_notes
from fitcalc.present.trade_record import AxisRecord, RangeRecord, TradeRecord


def trade_heading(record: TradeRecord) -> str:
    """Who, where, what against what, and how much of it passes."""
    pair = f"{record.x.title} ({record.x.sense}) against {record.y.title} ({record.y.sense})"
    lines = [f"{record.driver} in {record.car}; rules: {record.rules}", pair]
    return "\n".join([*lines, *_verdict(record), *trade_notes(record)])


def trade_tables(record: TradeRecord) -> list[Table]:
    """Points, ranges and limits."""
    return [points_table(record), ranges_table(record), limits_table(record)]


def points_table(record: TradeRecord) -> Table:
    """The points of interest."""
    rows = tuple(
        (
            point.name,
            place_text(point.x, record.x),
            place_text(point.y, record.y),
            "passes" if point.passes else "breaks",
            point.tightest,
        )
        for point in record.points
    )
    return Table("Points", ("point", record.x.title, record.y.title, "on this map", "tightest limit"), rows)


def ranges_table(record: TradeRecord) -> Table:
    """What passes of the second change, by places of the first."""
    rows = tuple(
        (place_text(each.x, record.x), _range(each, record.y), each.below or "-", each.above or "-")
        if each.low is not None
        else (place_text(each.x, record.x), "nothing", each.nearest, "")
        for each in record.ranges
    )
    return Table(
        "What passes", (record.x.title, record.y.title, "limit below, or nearest", "limit above"), rows
    )


def limits_table(record: TradeRecord) -> Table:
    """The numbers on the map."""
    rows = tuple(
        (
            f"{limit.number}{'~' if limit.interpolated else ''}",
            limit.label,
            limit.wanted,
            "yes" if limit.edge else "-",
        )
        for limit in record.limits
    )
    return Table(
        "Limits that cross the map, by their numbers on it", ("no.", "what", "wanted", "bounds"), rows
    )


def place_text(value: float, axis: AxisRecord) -> str:
    """A place on an axis."""
    return "as found" if value == 0.0 else f"{value:+g} {axis.unit}"


def _range(each: RangeRecord, axis: AxisRecord) -> str:
    assert each.low is not None
    assert each.high is not None
    if each.low == each.high:
        return f"{each.low:g} {axis.unit}"
    return f"{each.low:g} to {each.high:g} {axis.unit}"


def _verdict(record: TradeRecord) -> tuple[str, ...]:
    if not record.region:
        return ()
    if record.everywhere or record.elsewhere:
        return ("Part of the map would pass, but for limits that the two cannot mend:",)
    return (f"{_percent(record.share)} of all combinations pass.",)


def _percent(share: float) -> str:
    return "Under 1 %" if share < 0.01 else f"{100 * share:.0f} %"
