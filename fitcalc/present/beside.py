"""Two limit sets side by side on the same figures."""

from fitcalc.present.record import CheckRecord, ResultRecord
from fitcalc.present.tables import Table
from fitcalc.present.wording import MARKS, amount, span


def beside_table(one: ResultRecord, other: ResultRecord) -> Table:
    """Every figure that either set limits, with what each set says of it; the always-on set is left out."""
    left, right = _by_figure(one), _by_figure(other)
    rows = tuple(_row(id, left.get(id), right.get(id)) for id in left | right)
    sets = (one.car.rules, other.car.rules)
    return Table(f"{sets[0]} beside {sets[1]}", ("check", "value", *sets), rows)


def _by_figure(record: ResultRecord) -> dict[str, CheckRecord]:
    """The first check of each figure that the record's own set limits, worst first."""
    own = [check for check in record.checks if check.rules == record.car.rules]
    return {check.id.split("@")[0]: check for check in reversed(own)}


def _row(id: str, left: CheckRecord | None, right: CheckRecord | None) -> tuple[str, ...]:
    known = left or right
    value = "-" if known is None else amount(known.value, known.unit)
    return (id, value, _said(left), _said(right))


def _said(check: CheckRecord | None) -> str:
    if check is None:
        return "no limit"
    if check.status == "not assessed":
        return f"{MARKS[check.status]} {check.status}"
    must = span(check.low, check.high, check.unit)
    should = span(check.recommended_low, check.recommended_high, check.unit)
    return f"{MARKS[check.status]} {check.status}: {must if must != '-' else f'advised {should}'}"
