"""The solver's record as tables for a person."""

from collections.abc import Sequence

from fitcalc.present.certainty_record import OddsRecord
from fitcalc.present.certainty_tables import percent
from fitcalc.present.change_words import WORKS
from fitcalc.present.solve_record import AllowedRecord, ReworkRecord, SolveRecord
from fitcalc.present.tables import Table
from fitcalc.present.wanted import BrokenRecord, lacking_text, named, unmade_text
from fitcalc.present.wording import amount


def solve_heading(record: SolveRecord) -> str:
    """Who, where, and how it came out."""
    lines = [f"{record.driver} in {record.car}; rules: {record.rules}", record.verdict]
    if record.chance is not None:
        lines.append(_chance(record))
    if not record.complete:
        lines.append("The search was stopped before its end: a better rework may be left.")
    unmade = [unmade_text(record.unmade)] if record.unmade else []
    return "\n".join([*lines, *unmade, *record.conflict, *record.ways])


def solve_tables(record: SolveRecord) -> list[Table]:
    """The work, what it leaves broken, the next best, and what was allowed."""
    return [
        changes_table(record.best, "What to do" if record.best.passes else "The nearest to passing"),
        broken_table([each for each in record.best.broken if each.movable], "What it leaves broken"),
        broken_table(
            [each for each in record.best.broken if not each.movable],
            "Broken whatever is changed: no allowed change moves it",
        ),
        uncertain_table(record.uncertain),
        others_table(record.others),
        allowed_table(record.allowed),
    ]


def changes_table(rework: ReworkRecord, title: str) -> Table:
    """The changes of one rework."""
    rows = tuple((each.words, WORKS[each.work], f"{each.minutes:.0f} min") for each in rework.changes)
    total = (("all together", "", f"{rework.minutes:.0f} min"),) if len(rows) > 1 else ()
    return Table(title, ("change", "work", "effort"), (*rows, *total))


def broken_table(broken: Sequence[BrokenRecord], title: str) -> Table:
    """Checks that must hold and do not."""
    rows = tuple(
        (
            each.label,
            amount(each.value, each.unit),
            each.wanted,
            lacking_text(each),
            each.remedy,
        )
        for each in broken
    )
    return Table(title, ("what", "value", "wanted", "lacking", "remedy"), rows)


def uncertain_table(uncertain: Sequence[OddsRecord]) -> Table:
    """What is least sure with the best rework."""
    rows = tuple((percent(each.passes), each.label, each.wanted) for each in uncertain)
    return Table("What is least sure with it", ("passes", "what", "wanted"), rows)


def others_table(others: Sequence[ReworkRecord]) -> Table:
    """The next best reworks, one to a row."""
    rows = tuple(
        (
            "; ".join(change.words for change in each.changes) or "leave the car as found",
            f"{each.minutes:.0f} min",
            "passes" if each.passes else _leaves(each),
        )
        for each in others
    )
    return Table("Next best, each of another kind", ("changes", "effort", "outcome"), rows)


def allowed_table(allowed: Sequence[AllowedRecord]) -> Table:
    """What might be changed, and what it would cost."""
    rows = tuple(
        (
            each.title,
            f"{each.low:g} to {each.high:g} {each.unit}",
            f"{each.step:g} {each.unit}",
            WORKS[each.work],
            f"{each.fixed:g} min + {each.per_unit:g} for each {each.unit}",
        )
        for each in allowed
    )
    title = "What may be changed (yours to edit: fitcalc effort CAR > my_effort.toml, then --effort my_effort.toml)"
    return Table(title, ("change", "span", "step", "work", "effort"), rows)


def _leaves(rework: ReworkRecord) -> str:
    first = ", ".join(f"{named(each.label)} by {lacking_text(each)}" for each in rework.broken[:2])
    more = f" and {len(rework.broken) - 2} more" if len(rework.broken) > 2 else ""
    return f"breaks {first}{more}"


def _chance(record: SolveRecord) -> str:
    chance = record.chance
    assert chance is not None
    reached = percent(chance.reached)
    if chance.enough:
        return f"It passes with a probability of {reached}; {percent(chance.asked)} were asked for."
    wish = f"No rework was found that passes with {percent(chance.asked)}"
    return f"{wish}; this one, the likeliest, does with {reached}. Measure again what `fitcalc certainty` names first."
