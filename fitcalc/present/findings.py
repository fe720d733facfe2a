"""Findings for paper and spreadsheets: every check with its limit's source, and what would mend it."""

from collections.abc import Sequence
from dataclasses import dataclass

from fitcalc.present.record import CheckRecord, ResultRecord
from fitcalc.present.tables import Table
from fitcalc.present.wording import MARKS, amount, signed, span

OPEN = ("fail", "advise", "not assessed")


@dataclass(frozen=True)
class FindingRow:
    """One check, worst first; numbers as in the record."""

    status: str
    what: str
    value: float | None
    unit: str
    low: float | None
    high: float | None
    recommended_low: float | None
    recommended_high: float | None
    margin: float | None
    source: str
    remedy: str
    id: str


def finding_rows(record: ResultRecord) -> tuple[FindingRow, ...]:
    """Every check of a record."""
    return tuple(
        FindingRow(
            status=check.status,
            what=check.label,
            value=check.value,
            unit=check.unit,
            low=check.low,
            high=check.high,
            recommended_low=check.recommended_low,
            recommended_high=check.recommended_high,
            margin=check.margin,
            source=check.source,
            remedy=check.remedy,
            id=check.id,
        )
        for check in record.checks
    )


def findings_table(checks: Sequence[CheckRecord], title: str) -> Table:
    """Status, value and limit with its source, for a person."""
    header = ("status", "what", "value", "allowed", "margin", "limit from")
    return Table(title, header, tuple(_line(check) for check in checks))


def mending_table(record: ResultRecord) -> Table:
    """What would mend what does not pass."""
    rows = tuple(
        (status_word(c.status), c.label, c.remedy) for c in record.checks if c.status in OPEN and c.remedy
    )
    return Table("What would mend it", ("status", "what", "remedy"), rows)


def status_word(status: str) -> str:
    """Status as mark and word."""
    return f"{MARKS.get(status, '')} {status}".strip()


def allowed_text(check: CheckRecord) -> str:
    """The bounds of a check in words, the recommended ones named so."""
    must = span(check.low, check.high, check.unit)
    should = span(check.recommended_low, check.recommended_high, check.unit)
    if should == "-":
        return must
    return f"advised {should}" if must == "-" else f"{must} (advised {should})"


def _line(check: CheckRecord) -> tuple[str, ...]:
    margin = "-" if check.margin is None else signed(check.margin, check.unit)
    value = amount(check.value, check.unit)
    return (status_word(check.status), check.label, value, allowed_text(check), margin, check.source or "-")
