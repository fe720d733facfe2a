"""The shared car's record as tables for a person."""

from fitcalc.present.change_words import WORKS, title_of
from fitcalc.present.shared_car_record import SharedCarRecord
from fitcalc.present.solve_tables import broken_table
from fitcalc.present.tables import Table
from fitcalc.present.wanted import unmade_text

ONE = "Only one driver: `fitcalc solve` looks closer at what one driver needs."


def shared_car_heading(record: SharedCarRecord) -> str:
    """Which car, for whom, and how it came out."""
    names = ", ".join(each.driver for each in record.drivers)
    quick = ", ".join(title_of(path) for path in record.quick) or "nothing"
    lines = [
        f"{record.car} shared by {names}; rules: {record.rules}",
        record.verdict,
        f"Each driver sets for himself: {quick}.",
    ]
    lines += [unmade_text(record.unmade)] if record.unmade else []
    return "\n".join([*lines, *([ONE] if len(record.drivers) == 1 else [])])


def shared_car_tables(record: SharedCarRecord) -> list[Table]:
    """What is fixed, what each sets, what is left broken for whom."""
    return [
        fixed_table(record),
        drivers_table(record),
        *(broken_table(each.broken, f"Broken for {each.driver}") for each in record.drivers),
    ]


def fixed_table(record: SharedCarRecord) -> Table:
    """What is made once, for all."""
    rows = tuple((each.words, WORKS[each.work], f"{each.minutes:.0f} min") for each in record.fixed)
    if not rows:
        rows = (("nothing: leave holes and bars as found", "", ""),)
    return Table("Fixed for all", ("change", "work", "effort"), rows)


def drivers_table(record: SharedCarRecord) -> Table:
    """What each driver sets."""
    rows = tuple(
        (
            each.driver,
            "; ".join(each.words) or "nothing to set",
            "passes" if each.passes else f"breaks {len(each.broken)}",
        )
        for each in record.drivers
    )
    return Table("Set by each driver", ("driver", "sets", "outcome"), rows)
