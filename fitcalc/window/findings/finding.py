"""A check in words, in the units that the person reads."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from fitcalc.checks.check import Check, Status
from fitcalc.checks.quantities import quantities
from fitcalc.fit.result import Result
from fitcalc.present.wording import MARKS
from fitcalc.units import Floats
from fitcalc.window.shown import Shown

NO_ODDS: Mapping[str, float] = MappingProxyType({})


@dataclass(frozen=True)
class Finding:
    """One line of the list and what it opens to.

    Attributes:
        figure: id of what was measured, which several limits may share.
        points: what it is measured between.
        source: where the limit comes from, with how well it is known.
        missing: ref of the measurement that is lacking; empty when nothing is.
        compared: the same figure under the second rules, in words; empty when there are none.
        odds: how likely it passes, in words; empty where nobody asked.
    """

    id: str
    figure: str
    status: Status
    what: str
    value: str
    limit: str
    margin: str
    rules: str
    points: str
    source: str
    remedy: str
    missing: str
    compared: str
    odds: str = ""

    @property
    def verdict(self) -> str:
        """Status as mark and word."""
        return f"{MARKS[self.status]} {self.status}"

    @property
    def figures(self) -> str:
        """Value, limit and margin in one line."""
        parts = (self.value, self.limit, f"margin {self.margin}" if self.margin else "", self.odds)
        return "  ·  ".join(filter(None, parts))

    @property
    def sentence(self) -> str:
        """The line read out."""
        margin = f"margin {self.margin}" if self.margin else ""
        return ", ".join(filter(None, (self.status, self.what, self.value, self.limit, margin, self.odds)))


def findings_of(
    result: Result, compared: Result | None, shown: Shown, odds: Mapping[str, float] = NO_ODDS
) -> tuple[Finding, ...]:
    """Every check of a result, worst first."""
    second = _by_figure(compared) if compared else {}
    return tuple(
        _finding(check, second.get(check.figure.id, ()), shown, odds) for check in result.worst_first()
    )


def _finding(check: Check, second: Iterable[Check], shown: Shown, odds: Mapping[str, float]) -> Finding:
    figure = check.figure
    margin = check.margin if check.margin is not None else check.comfort_margin
    return Finding(
        id=check.id,
        figure=figure.id,
        status=check.status,
        what=check.label,
        value="" if figure.value is None else shown.amount(float(figure.value[0]), figure.unit),
        limit=_limit(check, shown),
        margin="" if margin is None else shown.signed(float(margin[0]), figure.unit),
        rules=check.rules,
        points=quantities()[figure.quantity].points,
        source="" if check.source is None else str(check.source),
        remedy=shown.words(check.remedy),
        missing=f"car.{figure.missing.split(',')[0].split(' ')[0]}" if figure.missing else "",
        compared="\n".join(_under_other_rules(each, shown) for each in second),
        odds=_odds_text(odds.get(check.id)),
    )


def _odds_text(odds: float | None) -> str:
    if odds is None:
        return ""
    from fitcalc.present.certainty_tables import percent

    return f"passes with {percent(odds)}"


def _under_other_rules(check: Check, shown: Shown) -> str:
    return f"{check.rules}: {MARKS[check.status]} {check.status}  ·  {_limit(check, shown)}"


def _by_figure(result: Result) -> dict[str, list[Check]]:
    found: dict[str, list[Check]] = {}
    for check in result.checks:
        if check.rules == result.rules.id and check.limit:
            found.setdefault(check.figure.id, []).append(check)
    return found


def _limit(check: Check, shown: Shown) -> str:
    must = _span(check.low, check.high, check, shown)
    should = _span(check.recommended_low, check.recommended_high, check, shown)
    advised = f"advised {should}" if should else ""
    return f"{must} ({advised})" if must and advised else must or advised or "no limit"


def _span(low: Floats | None, high: Floats | None, check: Check, shown: Shown) -> str:
    words = shown.span(_first(low), _first(high), check.figure.unit)
    return "" if words == "-" else words


def _first(bound: Floats | None) -> float | None:
    return None if bound is None else float(bound.ravel()[0])
