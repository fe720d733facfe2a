"""Every check with its limits and their sources, and the rules that are ticked by hand."""

from fitcalc.checks.limits_table import QuantityUse, every_set, limits_table
from fitcalc.present.tables import Table


def limits_tables() -> list[Table]:
    """One table of all quantities, then one of each set's rules to tick by hand and of what was not found."""
    sets = every_set()
    rules = [
        Table(
            f"{each.title} ({each.id}): to be ticked by hand",
            ("rule", "from"),
            tuple((rule.text, str(rule.source)) for rule in each.checklist),
        )
        for each in sets
    ]
    missing = tuple((each.id, lack) for each in sets for lack in each.missing)
    return [quantities_table(), *rules, Table("Looked for and not found", ("set", "what"), missing)]


def quantities_table() -> Table:
    """What is measured, between which points, and what limits it in which set."""
    rows = tuple(row for use in limits_table(every_set()) for row in _rows(use))
    return Table("Checks and their limits", ("check", "what", "points", "set", "limit", "source"), rows)


def _rows(use: QuantityUse) -> list[tuple[str, ...]]:
    what = (use.quantity.id, use.quantity.label, use.quantity.points)
    limits = [(each.rules, each.bounds, str(each.limit.source)) for each in use.uses]
    first, *more = limits or [("-", "for information", "")]
    return [(*what, *first), *(("", "", "", *other) for other in more)]
