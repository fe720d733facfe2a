"""What geometry cannot judge: rules to tick by hand, each with its clause."""

from dataclasses import dataclass

from fitcalc.checks.limit_rows import Rule
from fitcalc.checks.limits import LimitSet


@dataclass(frozen=True)
class Tick:
    """One rule to tick.

    Attributes:
        rules: id of the limit set.
    """

    rules: str
    rule: Rule


def checklist(*sets: LimitSet) -> tuple[Tick, ...]:
    """Every rule to tick of the given sets, in their order."""
    return tuple(Tick(each.id, rule) for each in sets for rule in each.checklist)
