"""The certainty record as tables for a person."""

from collections.abc import Sequence

from fitcalc.present.bench_parts import bench_number
from fitcalc.present.certainty_record import CertaintyRecord, IntervalRecord
from fitcalc.present.tables import Table
from fitcalc.present.wanted import unmade_text
from fitcalc.present.wording import amount, number

SURE = 0.995
"""A check that passes with more than this is not listed singly."""
MOST_AGAIN = 8
HALF = 0.5


def certainty_heading(record: CertaintyRecord) -> str:
    """Who, where, and how sure on the whole."""
    lines = [
        f"{record.driver} in {record.car}; rules: {record.rules}",
        f"All that the measurements leave open holds together with {percent(record.all_hold)}"
        f" ({record.few} drawn cars and bodies; single checks from up to {record.draws}).",
    ]
    if record.never:
        lines.append(f"Broken in every draw: {'; '.join(each.label for each in record.never)}.")
    if record.unmade:
        lines.append(unmade_text(record.unmade))
    if not record.complete:
        lines.append("Stopped before its end: these figures rest on fewer draws than were asked for.")
    return "\n".join(lines)


def certainty_tables(record: CertaintyRecord) -> list[Table]:
    """Lengths, odds, angles, and what to measure again."""
    return [
        lengths_table(record),
        needed_table(record),
        odds_table(record),
        angles_table(record.angles),
        again_table(record),
    ]


def lengths_table(record: CertaintyRecord) -> Table:
    """Every length to cut with its interval."""
    rows = tuple(
        (
            each.title,
            each.size,
            bench_number(each.value),
            f"{bench_number(each.low)} to {bench_number(each.high)}",
        )
        for each in record.lengths
    )
    header = ("part", "size", "cut", "right one, 9 of 10")
    return Table("Lengths to cut, mm", header, rows, lengths=(2, 3))


def needed_table(record: CertaintyRecord) -> Table:
    """What stand-off each pedal really needs."""
    rows = tuple(
        (each.label, f"{each.value:g} mm", f"{number(each.low, 'mm')} to {amount(each.high, 'mm')}")
        for each in record.needed
    )
    return Table("Stand-off that just bends the knee enough", ("pedal", "chosen", "needed, 9 of 10"), rows)


def odds_table(record: CertaintyRecord) -> Table:
    """Checks that may come out either way."""
    open_ones = [each for each in record.odds if each.passes < SURE]
    rows = tuple((percent(each.passes), each.label, each.wanted, f"{each.draws}") for each in open_ones)
    rest = len(record.odds) - len(open_ones)
    title = f"How likely each check passes, least likely first ({rest} more pass with over {100 * SURE:g} %)"
    return Table(title, ("passes", "what", "wanted", "draws"), rows)


def angles_table(angles: Sequence[IntervalRecord]) -> Table:
    """Every angle with its interval."""
    rows = tuple(
        (
            each.label,
            amount(each.value, "deg"),
            f"{number(each.low, 'deg')} to {amount(each.high, 'deg')}",
            each.wanted or "-",
        )
        for each in angles
    )
    return Table("Angles", ("what", "as measured", "9 of 10", "wanted"), rows)


def again_table(record: CertaintyRecord) -> Table:
    """What to measure again."""
    rows = tuple(
        (each.title, percent(each.share), f"{percent(each.most)} of {each.most_in}")
        for each in record.again[:MOST_AGAIN]
    )
    return Table(again_title(record), ("measurement", "of all that is open", "most"), rows)


def again_title(record: CertaintyRecord) -> str:
    """How much measuring again can settle at all."""
    title = "Worth measuring again, the most telling first: its share of what is open"
    if sum(each.share for each in record.again) < HALF:
        return f"{title} (most of it is how bodies of the same size differ: try it on in the car)"
    return title


def percent(share: float) -> str:
    """A probability or a share in words, never quite sure of what is only very likely."""
    if 0.0 < share < 0.01:
        return "under 1 %"
    return "over 99 %" if 0.99 < share < 1.0 else f"{100 * share:.0f} %"
